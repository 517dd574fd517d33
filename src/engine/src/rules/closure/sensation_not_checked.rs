//! Closure and follow-up: after surgery in the lower jaw, check sensation the next day.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "sensation-not-checked",
    ledger: "rescue-nerve",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("After surgery in the lower jaw, check sensation the next day."),
    why: long!(
        "An implant that presses on a nerve can be backed out with hope only within about a day."
    ),
    mend: long!("Call the patient between 6 and 24 hours after the operation."),
    scale: Scale::Situations(&[
        when("checked", "sensation is checked the next day", Zone::Ideal),
        when(
            "unchecked-no-implant",
            "sensation is not checked after an operation without an implant",
            Zone::Compromising,
        ),
        when(
            "unchecked",
            "an implant was placed in the lower jaw, and sensation is not checked",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::SensationCheck],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Implant-induced inferior alveolar nerve neuropathy (Renton)",
            "Removal within 30 hours; the evidence is called weak.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Juodzbalys 2011, COIR",
            "Early treatment fares better.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Shavit 2014",
            "Early treatment fares better.",
        ),
        says(
            Source::Cohort,
            Status::FromMemory,
            "Khawaja and Renton 2009, Br Dent J",
            "Sources give 24 to 36 hours.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let checked = j.plan.closure.as_ref()?.sensation?;
    situation(match (checked, j.plan.implant.is_some()) {
        (true, _) => "checked",
        (false, true) => "unchecked",
        (false, false) => "unchecked-no-implant",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::Trial;

    #[test]
    fn with_an_implant_leaving_it_out_is_unsafe() {
        assert_eq!(lower(Trial::plain()).zone(&RULE), Some(Zone::Ideal));
        let mut trial = lower(Trial::plain());
        trial.keys(&[("sensation-check", "no")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }

    #[test]
    fn without_an_implant_it_is_likely_to_compromise() {
        let mut trial = lower(Trial::plain());
        trial.number(Decision::PlaceAfter, 20);
        trial.keys(&[("course", "let-heal"), ("sensation-check", "no")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn in_the_upper_jaw_it_is_not_asked() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
