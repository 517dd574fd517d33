//! Flap: reflect the flap beyond the membrane on every side.

use crate::rules::prelude::*;
use crate::rules::regeneration;
use crate::units::Mm;

pub(super) static RULE: Rule = Rule {
    id: "flap-short-of-membrane",
    ledger: "flap-edges-on-bone",
    family: Family::Flap,
    step: Step::Graft,
    skill: Skill::FlapDesign,
    statement: long!("Reflect the flap beyond the membrane on every side."),
    why: long!(
        "A membrane that has to be forced under the edge wrinkles, lifts and lets gum grow in behind it."
    ),
    mend: long!(
        "Reflect further where the membrane reaches the edge of the flap, or trim the membrane if its margin allows."
    ),
    scale: Scale::Bands(Bands {
        quantity: "reflected bone beyond the membrane",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::past(0.0, Zone::Acceptable), Cut::from(2.0, Zone::Ideal).published(2.0, 3.0)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::FlapDesign,
        Decision::FlapOutline,
        Decision::OralElevation,
        Decision::Membrane,
        Decision::MembraneOutline,
        Decision::Fold,
        Decision::SocketSeal,
    ],
    rests_on: &[],
    causes: &[Cause::FlapTooSmall],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "flap reflected well beyond the defect",
            "The flap lies outside the membrane mesially, distally and apically; forcing the membrane in is the usual error.",
        ),
        says(
            Source::Textbook,
            Status::Confirmed,
            "Hupp textbook, flap edges",
            "Edges rest on intact bone.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "comfortable seat",
            "2 mm of reflected bone beyond the membrane and more counts as ideal.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.membrane()?;
    j.plan.raised()?;
    let beyond = j.m.flap_beyond_membrane()?;
    let raised_orally = j.plan.flap.as_ref()?.oral.get() > 0.0;
    // A margin that was never raised has a rule of its own.
    let oral = beyond.oral.filter(|_| raised_orally);
    let least = [beyond.least(), oral].into_iter().flatten().reduce(Mm::min)?;
    Some(regeneration::millimetres(least))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (-0.001, Zone::Compromising),
            (0.0, Zone::Compromising),
            (0.001, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_plan_without_a_membrane_or_a_flap_is_not_judged() {
        assert_eq!(Trial::plain().zone(&RULE), None);
        let mut trial = repaired();
        trial.keys(&[("membrane", "none")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn a_flap_that_ends_at_the_membranes_edge_is_outside() {
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-110, 0], [110, 0], [130, 95], [-130, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-110, 0], [110, 0], [130, 96], [-130, 96]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-110, 0], [110, 0], [130, 115], [-130, 115]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn the_raised_oral_margin_must_reach_beyond_it_too() {
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 31);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 32);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }
}
