//! A papilla that is likely to be lost, and a patient who was not told.

use crate::plan::choices::{ConsentPoint, Course};
use crate::rules::prelude::*;
use crate::units::comparable;

/// Tell the patient when a papilla is likely not to fill.
pub(super) static RULE: Rule = Rule {
    id: "papilla-risk-not-told",
    ledger: "papilla-contact-crest",
    family: Family::Position,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Tell the patient when a papilla is likely not to fill."),
    why: long!(
        "A dark triangle that you announced is understood as a limit; one that you kept to yourself looks like a fault."
    ),
    mend: long!("Go through the risks with the patient before consent."),
    scale: Scale::Situations(&[
        when("told", "a papilla is at risk and consent covers the risks", Zone::Ideal),
        when(
            "untold",
            "a papilla is at risk and consent does not cover the risks",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Consent],
    rests_on: &[Fact::CrestLevel, Fact::SmileLine],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Tarnow 1992, contact point to crest and the papilla, J Periodontol",
            "The papilla fills almost always up to 5 mm from contact to crest, in 56 % at 6 mm and in 27 % or less from 7 mm, in 288 sites.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Tarnow 2003, tissue between implants, J Periodontol",
            "Between two implants expect 3.4 mm of tissue above the crest, from 1 to 7 mm, in 136 papillae.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let intention = j.plan.intention.as_ref()?;
    let soft = &j.case.site.soft;
    let replaced = !matches!(
        intention.course,
        Course::KeepTooth | Course::SecondOpinion | Course::Postpone | Course::Refer
    );
    let at_risk = soft.contact_to_crest.iter().any(|height| comparable(height.get()) > 5.0);
    if !replaced || !at_risk || !j.case.site.is_aesthetic() {
        return None;
    }
    let told = intention.consent.has(ConsentPoint::Risks);
    Some(Reading::Situation(if told { "told" } else { "untold" }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn five_millimetres_fill_and_more_are_a_risk() {
        let mut trial = Trial::plain();
        let mut zone = |height| {
            trial.case.site.soft.contact_to_crest[1] = Mm::new(height);
            trial.zone(&RULE)
        };
        assert_eq!(zone(4.999), None);
        assert_eq!(zone(5.0), None);
        assert_eq!(zone(5.001), Some(Zone::Ideal));
    }

    #[test]
    fn leaving_the_risk_out_of_consent_is_outside() {
        let mut trial = Trial::plain();
        trial.case.site.soft.contact_to_crest[0] = Mm::new(6.5);
        trial.keys(&[("consent", "options stop-conditions")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
