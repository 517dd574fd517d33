//! No penicillin for a patient who does not tolerate it.

use crate::chart::Allergy;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "penicillin-despite-allergy",
    ledger: "antibiotic-prophylaxis",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Give no penicillin to a patient with an allergy to it."),
    why: long!("The second dose can bring shock. Another drug or none does the same for a socket."),
    mend: long!("Choose a drug that is no penicillin, or none."),
    scale: Scale::Situations(&[
        when(
            "other-or-none",
            "a patient allergic to penicillin got another drug or none",
            Zone::Ideal,
        ),
        when("given", "a penicillin is given to a patient who is allergic to it", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::AntibioticBefore],
    rests_on: &[Fact::Allergies],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Greenstein & Tarnow 2020, Compendium",
            "amoxicillin 2 g one hour before, in patients without an allergy",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Esposito 2013, Cochrane",
            "the dose of 2 g before the operation, not in the allergic",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !judging.case.patient.allergies.contains(&Allergy::Penicillin) {
        return None;
    }
    let given = judging.plan.intention.as_ref()?.antibiotic?;
    situation(if given == c::AntibioticBefore::Amoxicillin { "given" } else { "other-or-none" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn penicillin_into_an_allergy_is_unsafe_and_another_drug_is_not() {
        let mut trial = Trial::plain();
        trial.keys(&[("antibiotic-before", "amoxicillin-2g")]);
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.allergies.push(Allergy::Penicillin);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.keys(&[("antibiotic-before", "non-penicillin")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
