//! An axis in a healed ridge that does not meet the planned crown.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-axis-off-the-crown",
    ledger: "pos-axis",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Aim an implant in a healed ridge at the planned crown, within 25 to 30 degrees."
    ),
    why: long!(
        "A ridge that has shrunk from the facial side draws the drill along its slope, and the screw comes out through the lip side of the crown."
    ),
    mend: long!(
        "Lean the implant towards the axis of the crown, with a contour graft where that leaves too little bone."
    ),
    scale: super::axis_off_the_crown::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: super::axis_off_the_crown::RULE.positions,
    reads: &[Decision::LateTilt],
    rests_on: &[],
    causes: &[Cause::ImplantTilted],
    evidence: super::axis_off_the_crown::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late()?.to_crown?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn between_twenty_five_and_thirty_the_sources_differ() {
        for (value, zone) in [
            (24.999, Zone::Ideal),
            (25.0, Zone::Ideal),
            (25.001, Zone::Debated),
            (29.999, Zone::Debated),
            (30.0, Zone::Debated),
            (30.001, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_lean_away_from_the_crown_is_read_as_it_is() {
        let mut trial = Trial::late();
        for (tilt, zone) in
            [(0, Zone::Ideal), (25, Zone::Ideal), (-28, Zone::Debated), (32, Zone::Compromising)]
        {
            trial.number(Decision::LateTilt, tilt);
            assert_eq!(trial.zone(&RULE), Some(zone), "{tilt}");
        }
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
