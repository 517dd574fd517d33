//! A root tip breaks off and is pushed out of sight: into the sinus, or towards the canal.
//!
//! *Teaching model*; every number is ours. That it happens beside sinus and nerve, and that a root in
//! one piece under force breaks more often than one that was luxated or cut, is widely taught (from
//! memory, `ledger: rescue-root-fragment-drop`).
//!
//! - By technique: luxating and rotating 0.02, cutting facial bone away 0.08, rocking 0.12, levering
//!   against the plate 0.15; several roots taken out whole times 1.5; sectioned times 0.5; more than
//!   13 mm below the crest times 1.25.
//! - Times, by the bone between the nearest apex and sinus or canal: none 0.5, less than 1 mm 0.3, less
//!   than 2 mm 0.1, from 2 mm on nothing.

use super::{Chance, Matter, Pulled};
use crate::anatomy::FloorKind;
use crate::chart::Case;
use crate::measure::Measurements;
use crate::plan::Plan;
use crate::plan::choices::{Sectioning, Technique};
use crate::units::{Mm, comparable};

/// Where a lost root tip lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lost {
    /// In the maxillary sinus.
    Sinus,
    /// Beside the inferior alveolar canal.
    Canal,
}

/// More than any hazard here: above it nothing is measured.
const MOST: f64 = 0.15 * 1.5 * 1.25 * 0.5;

/// Probability, 0 to 1, that a tip of this tooth breaks and is pushed over a bone of this thickness.
fn hazard(case: &Case, pulled: Pulled, bone: Mm) -> f64 {
    let socket = &case.site.socket;
    let broken = match pulled.technique {
        Technique::LuxateAndRotate => 0.02,
        Technique::BoneRemoval => 0.08,
        Technique::RockFacially => 0.12,
        Technique::LeverOnFacialPlate => 0.15,
    };
    let root = match (pulled.sectioning, socket.names().len()) {
        (Sectioning::Sectioned, _) => 0.5,
        (Sectioning::Whole, 1) => 1.0,
        (Sectioning::Whole, _) => 1.5,
    };
    let long = if socket.as_one().length.get() > 13.0 { 1.25 } else { 1.0 };
    let pushed = match comparable(bone.get()) {
        bone if bone <= 0.0 => 0.5,
        bone if bone < 1.0 => 0.3,
        bone if bone < 2.0 => 0.1,
        _ => 0.0,
    };
    broken * root * long * pushed
}

/// Where a tip of the root was lost; `None` when the tooth came out as it should.
#[must_use]
pub fn lost_tip(case: &Case, pulled: Pulled) -> Option<Lost> {
    let drawn = Chance::of(case, Matter::Tip).unit();
    if drawn >= MOST {
        return None;
    }
    let untouched = Plan::default();
    let m = Measurements::of(case, &untouched);
    let floor = case.site.vital.floor.as_ref().filter(|floor| floor.kind == FloorKind::Sinus);
    let sinus = floor.and_then(|_| m.apex_to_floor()).map(|bone| (Lost::Sinus, bone));
    let canal = m.apex_to_canal().map(|bone| (Lost::Canal, bone));
    // No jaw has both.
    let (whither, bone) = sinus.or(canal)?;
    (drawn < hazard(case, pulled, bone)).then_some(whither)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, Tube};
    use crate::geometry::P3;
    use crate::rules::trial::Trial;

    const RAISED: Pulled =
        Pulled { technique: Technique::LeverOnFacialPlate, sectioning: Sectioning::Whole };

    fn under_a_floor(kind: FloorKind, z: f64) -> Case {
        let mut case = Trial::plain().case;
        case.site.vital.floor = Some(Floor { kind, z: Mm::new(z), rise: 0.0 });
        case
    }

    fn lost(case: &Case, pulled: Pulled) -> Vec<Lost> {
        (0..2000)
            .filter_map(|n| lost_tip(&Case { title: n.to_string(), ..case.clone() }, pulled))
            .collect()
    }

    #[test]
    fn it_falls_with_the_bone_between_and_with_care() {
        let case = Trial::plain().case;
        let of = |pulled, bone| hazard(&case, pulled, Mm::new(bone));
        for (bone, hazarded) in [
            (-1.0, 0.075),
            (0.0, 0.075),
            (0.001, 0.045),
            (0.999, 0.045),
            (1.0, 0.015),
            (1.999, 0.015),
            (2.0, 0.0),
        ] {
            assert!((of(RAISED, bone) - hazarded).abs() < 1e-12, "{bone}");
        }
        let gentle = Pulled { technique: Technique::LuxateAndRotate, ..RAISED };
        let cut = Pulled { sectioning: Sectioning::Sectioned, ..RAISED };
        assert!((of(gentle, 0.0) - 0.01).abs() < 1e-12);
        assert!((of(cut, 0.0) - 0.0375).abs() < 1e-12);
        let molar = Trial::molar().case;
        assert!((hazard(&molar, RAISED, Mm::ZERO) - 0.1125).abs() < 1e-12);
        assert!(of(RAISED, 0.0) <= MOST);
    }

    #[test]
    fn a_tip_is_lost_into_a_sinus_and_not_into_a_nose_and_not_far_from_either() {
        // The root ends at 11 mm.
        let found = lost(&under_a_floor(FloorKind::Sinus, 10.5), RAISED);
        // 2000 x 0.075; four standard deviations are 47.
        assert!(found.len().abs_diff(150) < 47, "{}", found.len());
        assert!(found.iter().all(|whither| *whither == Lost::Sinus));
        assert!(lost(&under_a_floor(FloorKind::Nose, 10.5), RAISED).is_empty());
        assert!(lost(&under_a_floor(FloorKind::Sinus, 13.0), RAISED).is_empty());
        assert!(lost(&Trial::plain().case, RAISED).is_empty());
    }

    #[test]
    fn what_a_gentle_hand_loses_a_rough_one_loses_too() {
        let mut case = Trial::plain().case;
        let (from, to) = (P3::new(-20.0, 0.0, 12.0), P3::new(20.0, 0.0, 12.0));
        case.site.vital.canal = Some(Tube { from, to, radius: Mm::new(1.5) });
        let gentle = Pulled { technique: Technique::LuxateAndRotate, ..RAISED };
        let mut some = 0;
        for n in 0..2000 {
            let case = Case { title: n.to_string(), ..case.clone() };
            if let Some(whither) = lost_tip(&case, gentle) {
                some += 1;
                assert_eq!((whither, lost_tip(&case, RAISED)), (Lost::Canal, Some(Lost::Canal)));
            }
        }
        assert!(some > 3, "{some}");
    }
}
