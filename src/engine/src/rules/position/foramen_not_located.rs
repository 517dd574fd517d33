//! Drilling in the lower premolar region without knowing where the nerve comes out.

use crate::anatomy::{Jaw, Kind};
use crate::plan::choices::Examination;
use crate::rules::prelude::*;
use crate::units::comparable;

/// Locate the mental foramen and its loop on sections before you drill at a lower canine or premolar.
pub(super) static RULE: Rule = Rule {
    id: "foramen-not-located",
    ledger: "pos-mental-foramen",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Locate the mental foramen and its loop on sections before you drill at a lower canine or premolar."
    ),
    why: long!(
        "You cannot keep away from what you have not found, and the film does not show how far the loop comes forward."
    ),
    mend: long!("Take sections with that question before the operation."),
    scale: Scale::Situations(&[
        when("located", "sections were taken before drilling near the foramen", Zone::Ideal),
        when(
            "kept-far",
            "no sections were taken, and the drill stays 7 mm or more away",
            Zone::Debated,
        ),
        when(
            "not-located",
            "no sections were taken, and the drill comes within 7 mm",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Measured distance: sections before every site near the foramen."),
        other: long!("Fixed distance: 7 mm from the foramen makes up for what was not measured."),
    }),
    reads: &[Decision::Examinations, Decision::Length, Decision::OffsetDistal, Decision::Depth],
    rests_on: &[Fact::Foramen],
    causes: &[],
    evidence: &[
        says(
            Source::Anatomy,
            Status::Confirmed,
            "surveys of the anterior loop, J Oral Implantol 2015 and 2019",
            "No fixed distance is safe; the loop is present in 85 % with a mean of 1.46 mm.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "fixed distance",
            "5 mm for the loop and 2 mm to spare make 7 mm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant.as_ref()?;
    let tooth = j.case.site.tooth;
    let beside = matches!(tooth.kind(), Kind::Canine | Kind::FirstPremolar | Kind::SecondPremolar);
    if tooth.jaw() != Jaw::Mandible || !beside {
        return None;
    }
    let distance = j.m.to_foramen()?.get();
    let seen =
        j.plan.examined.as_ref().is_some_and(|it| it.examinations.has(Examination::Sections));
    situation(reading(distance, seen))
}

fn reading(distance: f64, seen: bool) -> &'static str {
    match (seen, comparable(distance) >= 7.0) {
        (true, _) => "located",
        (false, true) => "kept-far",
        (false, false) => "not-located",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::P3;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::Trial;

    #[test]
    fn seven_millimetres_are_the_fixed_distance() {
        assert_eq!(reading(6.999, false), "not-located");
        assert_eq!(reading(7.0, false), "kept-far");
        assert_eq!(reading(7.001, false), "kept-far");
        assert_eq!(reading(3.0, true), "located");
    }

    #[test]
    fn the_upper_jaw_is_not_asked() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn a_film_alone_does_not_locate_it() {
        let mut trial = lower(Trial::plain());
        trial.case.site.vital.foramen = Some(P3::new(4.0, 4.0, 15.0));
        trial.number(Decision::OffsetFacial, 0).number(Decision::Tilt, 0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("examinations", "look film")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
