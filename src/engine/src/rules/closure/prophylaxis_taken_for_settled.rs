//! Closure and follow-up: weigh a single dose of antibiotic before the operation; neither habit is settled.

use crate::chart::Allergy;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "prophylaxis-taken-for-settled",
    ledger: "antibiotic-prophylaxis",
    family: Family::Closure,
    step: Step::Intention,
    skill: Skill::FollowingUp,
    statement: long!(
        "Weigh a single dose of antibiotic before the operation; neither habit is settled."
    ),
    why: long!(
        "One dose may spare you an early failure, and every dose has its price in resistance and side effects."
    ),
    mend: long!(
        "Nothing needs mending: say why you give it or leave it, and follow your local guideline."
    ),
    scale: Scale::Situations(&[
        when("given", "a single dose was given before the operation", Zone::Debated),
        when("none", "no antibiotic was given before the operation", Zone::Debated),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("One dose before the operation for everyone without an allergy."),
        other: long!("None in simple cases: the gain is small and resistance is real."),
    }),
    reads: &[Decision::AntibioticBefore],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Esposito 2013, Cochrane review",
            "2 g of amoxicillin one hour before may cut early failure.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Greenstein and Tarnow 2020, Compendium",
            "The practice is called controversial.",
        ),
        says(
            Source::SystematicReview,
            Status::FromMemory,
            "Esposito 2013, Cochrane review",
            "About 25 patients are treated for one implant saved.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let antibiotic = j.plan.intention.as_ref()?.antibiotic?;
    let allergic = j.case.patient.allergies.contains(&Allergy::Penicillin);
    situation(match antibiotic {
        c::AntibioticBefore::None => "none",
        // An allergy that was passed over has a rule of its own.
        c::AntibioticBefore::Amoxicillin if allergic => return None,
        c::AntibioticBefore::Amoxicillin | c::AntibioticBefore::NonPenicillin => "given",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn both_habits_are_debated() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.keys(&[("antibiotic-before", "amoxicillin-2g")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.keys(&[("antibiotic-before", "non-penicillin")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }

    #[test]
    fn a_penicillin_for_an_allergic_patient_is_another_matter() {
        let mut trial = Trial::plain();
        trial.case.patient.allergies.push(Allergy::Penicillin);
        trial.keys(&[("antibiotic-before", "amoxicillin-2g")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
