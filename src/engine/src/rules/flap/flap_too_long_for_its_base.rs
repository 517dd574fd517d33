//! Flap: keep a flap no longer than twice its base, better shorter than the base.

use crate::plan::Releases;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "flap-too-long-for-its-base",
    ledger: "flap-base-ratio",
    family: Family::Flap,
    step: Step::Flap,
    skill: Skill::FlapDesign,
    statement: long!("Keep a flap no longer than twice its base, better shorter than the base."),
    why: long!(
        "Perfusion falls along the flap, and beyond twice its base you may lose the edge that is to cover the graft."
    ),
    mend: long!("Widen the flap or end it further coronally."),
    scale: Scale::Bands(Bands {
        quantity: "length of the flap, for each mm of its base",
        unit: "mm",
        lowest: Zone::Ideal,
        cuts: &[
            Cut::from(1.0, Zone::Acceptable).published(1.0, 2.0),
            Cut::past(2.0, Zone::Compromising).published(1.0, 2.0),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::FlapDesign, Decision::FlapOutline],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "Principles of surgery and flap designing, teaching page",
            "Length at most twice the base.",
        ),
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "Creating a flap, summary of the Hupp textbook",
            "Ideally the length is less than the base.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.raised()?.releases == Releases::None {
        return None;
    }
    Some(Reading::Number(j.m.flap_length_ratio()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.999, Zone::Ideal),
            (1.0, Zone::Acceptable),
            (1.001, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Acceptable),
            (2.001, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn an_envelope_is_not_measured() {
        let mut trial = repaired();
        trial.keys(&[("flap-design", "envelope")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn thirteen_millimetres_are_long_for_a_narrow_flap() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-65, 0], [65, 0], [65, 130], [-65, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-33, 0], [33, 0], [33, 130], [-33, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-32, 0], [32, 0], [32, 130], [-32, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
