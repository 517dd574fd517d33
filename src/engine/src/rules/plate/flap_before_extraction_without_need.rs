//! A flap raised before the tooth is out, with nothing that asks for one.

use crate::plan::choices::WallReading;
use crate::rules::prelude::*;

/// Take the tooth out without a flap where nothing asks for one.
pub(super) static RULE: Rule = Rule {
    id: "flap-before-extraction-without-need",
    ledger: "extraction-plate-protection",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Extracting,
    statement: long!("Take the tooth out without a flap where nothing asks for one."),
    why: long!(
        "You can raise a flap once you know what the wall needs; raised before, it strips the facial plate of the periosteum that feeds it."
    ),
    mend: long!("Extract first, probe the walls, then decide on a flap."),
    scale: Scale::Situations(&[
        when("none-first", "the tooth comes out before any flap", Zone::Ideal),
        when(
            "first-with-reason",
            "a flap is raised first where a facial defect was found",
            Zone::Acceptable,
        ),
        when(
            "first-without-reason",
            "a flap is raised first although nothing found asks for one",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::FlapFirst, Decision::WallReading],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Levine 2017, ten keys for immediate placement, Compendium",
            "Extract without facial luxation and, where possible, without a flap.",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023",
            "Damage during extraction is among the factors that decide on immediate placement, in 59 studies.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "summary of a systematic review of flapless placement, 2023",
            "The gain of working flapless is small: about 0.14 mm of crest in 5 trials of 140 implants.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let done = j.plan.extraction.as_ref()?;
    let found = j.plan.examined.as_ref().is_some_and(|seen| seen.wall == WallReading::Defect);
    Some(Reading::Situation(match (done.flap_first, found) {
        (false, _) => "none-first",
        (true, true) => "first-with-reason",
        (true, false) => "first-without-reason",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_flap_first_needs_a_finding() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("flap-first", "yes")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("wall-reading", "defect")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }
}
