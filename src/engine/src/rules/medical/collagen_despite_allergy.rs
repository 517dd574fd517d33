//! No collagen for a patient who does not tolerate it.

use crate::chart::Allergy;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "collagen-despite-allergy",
    ledger: "graft-origin-consent",
    family: Family::Medical,
    step: Step::Graft,
    skill: Skill::Patient,
    statement: long!(
        "Lay no collagen membrane or plug in a patient with an allergy to bovine collagen."
    ),
    why: long!("What is laid in cannot be rinsed out. The reaction comes under a closed flap."),
    mend: long!("Choose a membrane or seal without collagen."),
    scale: Scale::Situations(&[
        when("none-laid", "no collagen was laid in a patient allergic to it", Zone::Ideal),
        when(
            "laid",
            "a collagen membrane or plug was laid in a patient allergic to it",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Membrane, Decision::SocketSeal],
    rests_on: &[Fact::Allergies],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "habit of the trade",
            "ask about allergies before choosing",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "an allergy on record rules the material out",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !judging.case.patient.allergies.contains(&Allergy::Collagen) {
        return None;
    }
    let laid = ask::lays_collagen(judging.plan.graft.as_ref()?);
    situation(if laid { "laid" } else { "none-laid" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_collagen_plug_in_an_allergic_patient_is_unsafe() {
        let mut trial = Trial::plain();
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.allergies.push(Allergy::Collagen);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.keys(&[("socket-seal", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
