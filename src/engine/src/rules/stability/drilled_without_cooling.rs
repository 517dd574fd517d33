//! Heat at the bed of the implant.

use crate::plan::choices::Drilling;
use crate::rules::prelude::*;

/// Drill with sharp drills, cooled, at a moderate speed.
pub(super) static RULE: Rule = Rule {
    id: "drilled-without-cooling",
    ledger: "drilling-heat",
    family: Family::Stability,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Drill with sharp drills, cooled, at a moderate speed."),
    why: long!(
        "Bone that is heated past its limit dies, and you find out only weeks later when the implant comes loose."
    ),
    mend: long!("Irrigate, take sharp drills, keep to 800 to 1500 turns a minute and pump."),
    scale: Scale::Situations(&[
        when("cooled", "the bed is drilled cooled at a moderate speed", Zone::Ideal),
        when("fast", "the bed is drilled cooled but above 2000 turns a minute", Zone::Suboptimal),
        when("dry", "the bed is drilled without cooling", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Drilling],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Eriksson and Albrektsson 1983, J Prosthet Dent",
            "Bone is harmed from 47 degrees Celsius for 1 minute, in rabbits.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "usual drilling speeds",
            "About 800 to 1500 turns a minute.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    Some(Reading::Situation(match j.plan.implant.as_ref()?.drilling {
        Drilling::CooledModerate => "cooled",
        Drilling::CooledFast => "fast",
        Drilling::Dry => "dry",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn dry_drilling_is_worse_than_fast_drilling() {
        let mut trial = Trial::plain();
        let mut zone = |drilling| trial.keys(&[("drilling", drilling)]).zone(&RULE);
        assert_eq!(zone("cooled-moderate"), Some(Zone::Ideal));
        assert_eq!(zone("cooled-fast"), Some(Zone::Suboptimal));
        assert_eq!(zone("dry"), Some(Zone::Compromising));
    }

    #[test]
    fn taking_the_implant_out_again_does_not_cool_the_bone() {
        let mut trial = Trial::plain();
        trial
            .keys(&[("drilling", "dry"), ("seating-act", "remove-and-heal")])
            .number(Decision::PlaceAfter, 16);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
