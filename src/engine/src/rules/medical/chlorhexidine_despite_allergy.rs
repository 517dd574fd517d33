//! No chlorhexidine for a patient who does not tolerate it.

use crate::chart::Allergy;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "chlorhexidine-despite-allergy",
    ledger: "antiseptic-hygiene",
    family: Family::Medical,
    step: Step::Closure,
    skill: Skill::Patient,
    statement: long!("Give no chlorhexidine to a patient with an allergy to it."),
    why: long!("The allergy is rare and can bring shock at home, where nobody helps."),
    mend: long!("Choose salt water."),
    scale: Scale::Situations(&[
        when(
            "another-rinse",
            "a patient allergic to chlorhexidine got another rinse or none",
            Zone::Ideal,
        ),
        when("given", "chlorhexidine is given to a patient who is allergic to it", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Antiseptic],
    rests_on: &[Fact::Allergies],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "habit of the trade",
            "ask about allergies before choosing",
        ),
        says(Source::Ours, Status::Ours, "this project", "an allergy on record rules the drug out"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !judging.case.patient.allergies.contains(&Allergy::Chlorhexidine) {
        return None;
    }
    let given = judging.plan.closure.as_ref()?.antiseptic == c::Antiseptic::Chlorhexidine;
    situation(if given { "given" } else { "another-rinse" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn chlorhexidine_into_an_allergy_is_unsafe_and_salt_water_is_not() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.allergies.push(Allergy::Chlorhexidine);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.keys(&[("antiseptic", "saline-rinse")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
