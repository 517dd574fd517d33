//! Flap: cut vertical releases at line angles, never on a root prominence or through a papilla.

use crate::plan::Releases;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "release-on-root-prominence",
    ledger: "flap-vertical-site",
    family: Family::Flap,
    step: Step::Flap,
    skill: Skill::FlapDesign,
    statement: long!(
        "Cut vertical releases at line angles, never on a root prominence or through a papilla."
    ),
    why: long!(
        "Over a prominence the gum is thin and the bone may be missing, and a split papilla does not grow back."
    ),
    mend: long!("Move the release to the line angle of the tooth beyond the site."),
    scale: Scale::Bands(Bands {
        quantity: "distance of a release from the nearest prominence or papilla middle",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[Cut::from(1.0, Zone::Ideal)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::FlapDesign, Decision::ReleaseSide, Decision::FlapOutline],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Triangular flap, teaching page",
            "Place the release 1 to 2 teeth from the site.",
        ),
        says(
            Source::Textbook,
            Status::Partly,
            "Principles of flap design, textbook",
            "Never on a root prominence, never through a papilla.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "line-angle zone",
            "Less than 1 mm from a prominence or from the middle of a papilla counts as on it.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.raised()?.releases == Releases::None {
        return None;
    }
    j.m.release_to_prominence().map(regeneration::millimetres)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [(0.999, Zone::Suboptimal), (1.0, Zone::Ideal), (1.001, Zone::Ideal)] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn an_envelope_has_no_release() {
        let mut trial = repaired();
        trial.keys(&[("flap-design", "envelope")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn the_distal_neighbours_prominence_lies_7_7_mm_away_and_its_papilla_4_25() {
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-77, 0], [77, 0], [90, 130], [-90, 130]]);
        trial.keys(&[("flap-design", "triangular"), ("release-side", "distal")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-86, 0], [86, 0], [99, 130], [-99, 130]]);
        trial.keys(&[("flap-design", "triangular"), ("release-side", "distal")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-87, 0], [87, 0], [99, 130], [-99, 130]]);
        trial.keys(&[("flap-design", "triangular"), ("release-side", "distal")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-42, 0], [42, 0], [99, 130], [-99, 130]]);
        trial.keys(&[("flap-design", "triangular"), ("release-side", "distal")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
