//! A socket behind a thin plate, in a site that shows, left to heal empty.

use crate::plan::choices::Course;
use crate::rules::prelude::*;
use crate::units::comparable;

/// Do not leave the socket behind a thin facial plate empty for months where the margin shows.
pub(super) static RULE: Rule = Rule {
    id: "thin-plate-left-to-heal",
    ledger: "plate-thin-resorption",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Course,
    statement: long!(
        "Do not leave the socket behind a thin facial plate empty for months where the margin shows."
    ),
    why: long!(
        "A plate of 1 mm or less loses most of its height within weeks once the tooth is out, and the ridge you come back to is another one."
    ),
    mend: long!("Preserve the ridge with a graft, or return in four to eight weeks."),
    scale: Scale::Situations(&[
        when("preserved", "the socket behind the thin plate is grafted", Zone::Ideal),
        when("early", "you return within weeks, before the bone has settled", Zone::Acceptable),
        when(
            "left",
            "the socket behind the thin plate is left empty for months",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Graft the socket whenever the implant is delayed and the plate is thin."),
        other: long!("Placing early with contour graft makes a graft at extraction unnecessary."),
    }),
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
    ],
    rests_on: &[Fact::FacialThickness, Fact::SmileLine],
    causes: &[Cause::Underfilled],
    evidence: &[
        says(
            Source::Cohort,
            Status::Partly,
            "Chappuis 2013, ridge alterations, J Dent Res",
            "Plates of 1 mm or less lost a median of 7.5 mm of mid-facial height in 8 weeks, thicker ones 1.1 mm; the cut at 1 mm was read, the millimetres of loss were not.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Couso-Queiruga 2023",
            "The direction was found again: thinner plates lose more.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Tan 2012, Clin Oral Implants Res",
            "An untreated socket lost 3.79 mm of width and 1.24 mm of facial height in 6 months.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.extraction.as_ref()?;
    if !j.case.site.is_aesthetic() {
        return None;
    }
    situation(j.m.facial_plate()?.get(), j.plan.course()?)
}

/// `None` for a lost or a thick plate, and for courses that do not return to this socket.
fn situation(plate: f64, course: Course) -> Option<Reading> {
    let plate = comparable(plate);
    if plate <= 0.0 || plate > 1.0 {
        return None;
    }
    match course {
        Course::GraftAndReturn => Some(Reading::Situation("preserved")),
        Course::ReturnEarly => Some(Reading::Situation("early")),
        Course::LetHeal => Some(Reading::Situation("left")),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn one_millimetre_is_thin_and_more_is_not() {
        let left = Some(Reading::Situation("left"));
        assert_eq!(situation(0.999, Course::LetHeal), left);
        assert_eq!(situation(1.0, Course::LetHeal), left);
        assert_eq!(situation(1.001, Course::LetHeal), None);
        assert_eq!(situation(0.0, Course::LetHeal), None);
    }

    #[test]
    fn a_graft_or_an_early_return_keeps_it() {
        let zone = |course| RULE.zone_of(situation(0.6, course).unwrap());
        assert_eq!(zone(Course::GraftAndReturn), Some(Zone::Ideal));
        assert_eq!(zone(Course::ReturnEarly), Some(Zone::Acceptable));
        assert_eq!(zone(Course::LetHeal), Some(Zone::Compromising));
    }

    #[test]
    fn the_plate_is_read_off_the_site() {
        let mut trial = Trial::plain();
        trial.keys(&[("after-extraction", "to-let-heal")]).number(Decision::PlaceAfter, 16);
        assert_eq!(trial.zone(&RULE), None, "1.2 mm is not thin");
        for knot in &mut trial.case.site.ridge.facial.knots {
            knot.y -= 0.5;
        }
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
