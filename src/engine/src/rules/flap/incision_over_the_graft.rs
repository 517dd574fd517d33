//! Flap: keep vertical cuts at least 6 mm from a larger regeneration.

use crate::plan::Releases;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "incision-over-the-graft",
    ledger: "flap-edges-on-bone",
    family: Family::Flap,
    step: Step::Graft,
    skill: Skill::FlapDesign,
    statement: long!("Keep vertical cuts at least 6 mm from a larger regeneration."),
    why: long!(
        "A large graft swells and settles; a suture line close to it opens, and an open barrier costs you the gain."
    ),
    mend: long!("Move the release one tooth further."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the edge of the defect to the nearest release",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(6.0, Zone::Acceptable).published(6.0, 8.0),
            Cut::from(8.0, Zone::Ideal).published(6.0, 8.0),
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
            Status::ConfirmedSecondary,
            "Creating a flap, summary of the Hupp textbook",
            "Edges lie over intact bone, 6 to 8 mm from the planned bone edge.",
        ),
        says(
            Source::Textbook,
            Status::Confirmed,
            "Triangular flap, teaching page",
            "Release 1 to 2 teeth from the site.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.graft_laid()?;
    let released = j.plan.raised()?.releases != Releases::None;
    let large = !regeneration::is_contained(j.case);
    if released && large { j.m.incision_to_defect().map(regeneration::millimetres) } else { None }
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
            (5.999, Zone::Compromising),
            (6.0, Zone::Acceptable),
            (6.001, Zone::Acceptable),
            (7.999, Zone::Acceptable),
            (8.0, Zone::Ideal),
            (8.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_contained_defect_is_judged_by_the_smaller_figure() {
        assert_eq!(repaired().zone(&RULE), None);
    }

    #[test]
    fn without_a_graft_there_is_no_edge_to_keep_from() {
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn the_edge_of_this_defect_lies_2_mm_from_the_middle() {
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.outline(Decision::FlapOutline, &[[-79, 0], [79, 0], [79, 130], [-79, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.outline(Decision::FlapOutline, &[[-80, 0], [80, 0], [80, 130], [-80, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.outline(Decision::FlapOutline, &[[-100, 0], [100, 0], [100, 130], [-100, 130]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
