//! A revision does not open a gate that the patient does not pass.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "revised-past-a-gate",
    ledger: "care-both-ways",
    family: Family::Care,
    step: Step::Flap,
    skill: Skill::Patient,
    statement: long!(
        "Do not revise into an implant or graft in a patient who should not have elective surgery today."
    ),
    why: long!("The reason to wait at the start of the visit is still there in the middle of it."),
    mend: long!("Close, let heal, and come back when the gate is open."),
    scale: Scale::Situations(&[when(
        "revised-past-it",
        "the course was revised into elective surgery that the patient is not fit for today",
        Zone::Compromising,
    )]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::AfterExtraction],
    rests_on: &[
        Fact::History,
        Fact::Pressure,
        Fact::Inr,
        Fact::Hba1c,
        Fact::Counts,
        Fact::RadiationDose,
    ],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Wagner 2022, Int J Implant Dent",
            "above an HbA1c of 8 % elective surgery waits; the other gates have sources in their own rules",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "a revision is judged by the same gates as an intention",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    plan.flap.as_ref()?;
    if ask::is_elective(plan)? || !ask::is_gate_shut(&case.patient) {
        return None;
    }
    // A flap step without elective intention means that the extraction step revised into one.
    situation("revised-past-it")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Sugar;
    use crate::rules::trial::Trial;

    #[test]
    fn extracting_first_and_grafting_after_all_does_not_pass_the_gate() {
        let mut trial = Trial::plain();
        trial.case.patient.sugar = Some(Sugar { hba1c: 9.1 });
        trial.course("let-heal");
        assert_eq!(trial.zone(&RULE), None);
        trial.keys(&[("after-extraction", "to-graft-and-return")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn revising_in_a_healthy_patient_is_free() {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("after-extraction", "to-graft-and-return")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
