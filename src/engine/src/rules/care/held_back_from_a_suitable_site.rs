//! A site that every position finds suitable for an implant today gets one.

use crate::anatomy::Lesion;
use crate::chart::Complaint;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "held-back-from-a-suitable-site",
    ledger: "care-both-ways",
    family: Family::Care,
    step: Step::Review,
    skill: Skill::Course,
    statement: long!(
        "Place today where every published position finds the site and the patient suitable."
    ),
    why: long!("Caution without a reason costs the patient months, another operation, and bone."),
    mend: long!("Place the implant today."),
    scale: Scale::Situations(&[
        when("placed", "an implant was placed at a suitable site", Zone::Ideal),
        when("waited-for-a-reason", "there was a reason to wait and the plan waited", Zone::Ideal),
        when(
            "held-back",
            "the site allows an implant today by every position, and the plan staged, postponed or referred",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::AfterExtraction, Decision::AfterFlap],
    rests_on: &[
        Fact::FacialWall,
        Fact::FacialThickness,
        Fact::GumThickness,
        Fact::ApicalBone,
        Fact::History,
    ],
    causes: &[Cause::HeldBack],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023-24, \"Implant placement and loading protocols\"",
            "at low risk immediate placement is reasonable",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "suitable means past the strict end of every criterion",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Tan 2012, COIR",
            "an untreated socket loses 3.79 +/- 0.23 mm of width in six months",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    use c::Course;
    let Judging { case, plan, .. } = *judging;
    plan.returns.as_ref()?;
    let intended = plan.intention.as_ref()?.course;
    let course = plan.course()?;
    let [systolic, diastolic] = case.patient.pressure;
    let reason = ask::is_gate_shut(&case.patient)
        || !case.patient.growth_complete
        || systolic >= 160
        || diastolic >= 100
        || ask::is_acute(&case.site.lesion);
    situation(match course {
        // Whoever keeps the tooth or wants another replacement is judged elsewhere.
        Course::KeepTooth | Course::Bridge | Course::Removable | Course::NoReplacement => {
            return None;
        }
        _ if reason => {
            return if ask::goes_beyond_extraction(course) {
                None
            } else {
                situation("waited-for-a-reason")
            };
        }
        _ if !is_suitable(judging) => return None,
        _ if plan.implant.is_some() => "placed",
        // Revising on new findings is never marked down.
        _ if intended == Course::PlaceToday => return None,
        _ => "held-back",
    })
}

/// Past the strict end of every criterion that any source names.
fn is_suitable(judging: &Judging<'_>) -> bool {
    let Judging { case, m, .. } = *judging;
    let site = &case.site;
    ask::is_gate_open(&case.patient)
        && case.patient.complaint != Complaint::Restorable
        && site.defects.is_empty()
        && site.lesion == Lesion::None
        && site.soft.thickness.get() > 2.0
        && site.soft.keratinised.get() >= 4.0
        && site.soft.margin_below_twin.get() <= 0.0
        && m.facial_plate().is_some_and(|plate| plate.get() > 1.0)
        && m.oral_plate().is_some_and(|plate| plate.get() >= 1.0)
        && ask::holds_by_every_position(judging)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn a_reason_to_wait_makes_waiting_ideal() {
        let mut trial = Trial::plain();
        trial.case.patient.pressure = [184, 104];
        trial.course("postpone");
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn staging_a_site_that_every_position_finds_suitable_is_holding_back() {
        let mut trial = Trial::plain();
        trial.case.site.soft.thickness = Mm::new(2.001);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        for course in ["graft-and-return", "return-early", "let-heal", "postpone", "refer"] {
            trial.course(course);
            assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal), "{course}");
        }
        trial.course("bridge");
        assert_eq!(trial.zone(&RULE), None);
        trial.course("place-today").keys(&[("after-extraction", "to-let-heal")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn gum_of_two_millimetres_is_not_suitable_by_every_position() {
        let mut trial = Trial::plain();
        trial.case.site.soft.thickness = Mm::new(2.0);
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), None);
    }
}
