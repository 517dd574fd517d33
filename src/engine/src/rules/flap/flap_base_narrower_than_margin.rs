//! Flap: make the base of a released flap at least as wide as its free margin.

use crate::plan::Releases;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "flap-base-narrower-than-margin",
    ledger: "flap-base-ratio",
    family: Family::Flap,
    step: Step::Flap,
    skill: Skill::FlapDesign,
    statement: long!("Make the base of a released flap at least as wide as its free margin."),
    why: long!(
        "The margin lives on what comes through the base; a flap that narrows towards it dies at the edge."
    ),
    mend: long!("Let the releases diverge apically."),
    scale: Scale::Bands(Bands {
        quantity: "base of the flap, for each mm of its free margin",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(1.0, Zone::Ideal)],
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
            "Creating a flap, summary of the Hupp textbook",
            "The base is at least as wide as the free margin.",
        ),
        says(
            Source::Textbook,
            Status::Partly,
            "Principles of flap design, teaching page",
            "A broad base.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.raised()?.releases == Releases::None {
        return None;
    }
    Some(Reading::Number(j.m.flap_base_ratio()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [(0.999, Zone::Compromising), (1.0, Zone::Ideal), (1.001, Zone::Ideal)]
        {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn an_envelope_has_no_base_to_narrow() {
        let mut trial = repaired();
        trial.keys(&[("flap-design", "envelope")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn parallel_releases_just_pass_and_converging_ones_do_not() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-110, 0], [110, 0], [110, 130], [-110, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-110, 0], [110, 0], [109, 130], [-109, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
