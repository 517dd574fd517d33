//! Flap: keep vertical cuts at least 3 mm from a small contained graft.

use crate::plan::Releases;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "incision-over-small-graft",
    ledger: "flap-edges-on-bone",
    family: Family::Flap,
    step: Step::Graft,
    skill: Skill::FlapDesign,
    statement: long!("Keep vertical cuts at least 3 mm from a small contained graft."),
    why: long!(
        "A suture line over graft or membrane has nothing under it, opens, and lets the mouth in."
    ),
    mend: long!("Move the release further from the defect, onto intact bone."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the edge of the defect to the nearest release",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(3.0, Zone::Acceptable).published(3.0, 6.0),
            Cut::from(6.0, Zone::Ideal).published(6.0, 8.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::FlapDesign,
        Decision::ReleaseSide,
        Decision::FlapOutline,
        Decision::GraftMaterial,
    ],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::FlapTooSmall],
    evidence: &[
        says(
            Source::Textbook,
            Status::FromMemory,
            "Hupp textbook, flap edges",
            "3 mm for small contained grafts.",
        ),
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "Creating a flap, summary of the Hupp textbook",
            "Edges lie over intact bone, 6 to 8 mm from the planned bone edge.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.graft_laid()?;
    let released = j.plan.raised()?.releases != Releases::None;
    let small = regeneration::has_wall_defect(j.case) && regeneration::is_contained(j.case);
    if released && small { j.m.incision_to_defect().map(regeneration::millimetres) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (2.999, Zone::Compromising),
            (3.0, Zone::Acceptable),
            (3.001, Zone::Acceptable),
            (5.999, Zone::Acceptable),
            (6.0, Zone::Ideal),
            (6.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_lost_wall_is_judged_by_the_larger_figure() {
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn an_envelope_has_no_vertical_cut() {
        let mut trial = repaired();
        trial.keys(&[("flap-design", "envelope")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn the_edge_of_this_defect_lies_2_mm_from_the_middle() {
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-49, 0], [49, 0], [49, 130], [-49, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-50, 0], [50, 0], [50, 130], [-50, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-79, 0], [79, 0], [79, 130], [-79, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.outline(Decision::FlapOutline, &[[-80, 0], [80, 0], [80, 130], [-80, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
