//! Too little bone between an implant in a healed ridge and a neighbouring root.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "late-implant-near-a-root",
    ledger: "pos-adjacent-tooth",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Keep 1.5 mm of bone between an implant in a healed ridge and the neighbouring roots."
    ),
    why: long!("Roots stand where they stood; healing makes no room between them."),
    mend: long!("Choose a narrower or shorter implant."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the late implant to the nearer root",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[
            Cut::past(0.0, Zone::Compromising),
            Cut::from(1.5, Zone::Acceptable),
            Cut::from(2.0, Zone::Ideal),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::LateDiameter, Decision::LateLength],
    rests_on: &[Fact::NeighbourRoots],
    causes: &[Cause::ImplantTooNearNeighbour, Cause::ImplantTooWide],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "1.5 mm or more stay between implant and tooth, at platform and apex.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "narrow implants in tight sites",
            "1.0 mm is tolerated for narrow implants in tight sites only.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late_to_root()?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    fn late() -> Trial {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("healed-act", "place")]);
        trial
    }
    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (-0.1, Zone::Unsafe),
            (0.0, Zone::Unsafe),
            (0.001, Zone::Compromising),
            (1.499, Zone::Compromising),
            (1.5, Zone::Acceptable),
            (1.501, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_wider_implant_comes_nearer() {
        let distance = |count| {
            let mut trial = late();
            trial.number(Decision::LateDiameter, count);
            match trial.reading(&RULE) {
                Some(Reading::Number(value)) => value,
                other => panic!("{other:?}"),
            }
        };
        assert!((distance(30) - distance(40) - 0.5).abs() < 0.05);
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
