//! The facial plate at extraction: a piece of it may break away with the root.
//!
//! *Teaching model.* That damage at extraction decides on what can be placed is published (7th
//! consensus conference, group 5, 2023; confirmed), how often a technique costs the plate is not, so
//! every number here is ours; only their order follows the sources: force on a thin plate breaks it,
//! luxating on the other faces and sectioning spares it.
//!
//! - By technique, at a plate of 1 mm: luxating and rotating 0.02, rocking 0.25, cutting facial bone
//!   away 0.35, levering against the plate 0.50.
//! - By thickness 1 mm below the crest: times 2.2 - 1.2 per millimetre, within 0.2 and 1.6; so 1 at
//!   1.0 mm, 1.6 at 0.5 mm, 0.4 at 1.5 mm.
//! - By the root: several roots taken out whole times 1.5; more than 13 mm below the crest times 1.25;
//!   sectioned times 0.5.
//! - A wall that is missing in part already does not break again.
//!
//! Half of the pieces hang on their periosteum, the others are loose (ours). Pressed back and kept, a
//! piece that hangs holds as wall; else the wall is gone over 0.8 to 0.95 of the root's width and 0.35
//! to 0.6 of its length (ours; inside the range in which dehiscences are drawn).

use super::{Chance, Matter};
use crate::anatomy::{Defect, DefectKind, Map, Site, Wall};
use crate::cases::{on_map, u_form};
use crate::chart::{Case, Fragment};
use crate::measure::Measurements;
use crate::plan::choices::{PlateRescue, Sectioning, Technique};
use crate::plan::{Draft, Extraction, Plan};

/// How the tooth was taken out, as far as the plate feels it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pulled {
    /// How.
    pub technique: Technique,
    /// Whether it was cut.
    pub sectioning: Sectioning,
}

impl Pulled {
    /// What a draft has chosen; `None` while a part of it is open.
    #[must_use]
    pub fn in_draft(draft: &Draft) -> Option<Self> {
        use crate::plan::Decision;
        Some(Self {
            technique: draft.one(Decision::Technique)?,
            sectioning: draft.one(Decision::Sectioning)?,
        })
    }
}

/// The most that thickness and root can multiply a technique's hazard by.
const MOST: f64 = 1.6 * 1.5 * 1.25;

/// Probability, 0 to 1, that a piece of a facial plate of this thickness (mm, 1 mm below the crest)
/// breaks away. A teaching model: see the head of this file.
#[must_use]
pub fn hazard(site: &Site, thickness: f64, pulled: Pulled) -> f64 {
    let thin = (2.2 - 1.2 * thickness).clamp(0.2, 1.6);
    let root = match (pulled.sectioning, site.socket.names().len()) {
        (Sectioning::Sectioned, _) => 0.5,
        (Sectioning::Whole, 1) => 1.0,
        (Sectioning::Whole, _) => 1.5,
    };
    let long = if site.socket.as_one().length.get() > 13.0 { 1.25 } else { 1.0 };
    (by_technique(pulled.technique) * thin * root * long).min(0.95)
}

const fn by_technique(technique: Technique) -> f64 {
    match technique {
        Technique::LuxateAndRotate => 0.02,
        Technique::RockFacially => 0.25,
        Technique::BoneRemoval => 0.35,
        Technique::LeverOnFacialPlate => 0.5,
    }
}

/// The piece that breaks off the facial plate of this case; `None` when the plate stays whole, or
/// was not whole before.
#[must_use]
pub fn broken_plate(case: &Case, pulled: Pulled) -> Option<Fragment> {
    if case.broken.is_some() {
        return case.broken;
    }
    let mut chance = Chance::of(case, Matter::Plate);
    let drawn = chance.unit();
    // Most plates are spared whatever their thickness, and nothing is measured then.
    if drawn >= by_technique(pulled.technique) * MOST {
        return None;
    }
    if case.site.defects_of(Wall::Facial).next().is_some() {
        return None;
    }
    let untouched = Plan::default();
    let thickness = Measurements::of(case, &untouched).facial_plate()?.get();
    if thickness <= 0.0 || drawn >= hazard(&case.site, thickness, pulled) {
        return None;
    }
    Some(if chance.unit() < 0.5 { Fragment::OnPeriosteum } else { Fragment::Loose })
}

/// The case once its tooth is out, if that broke the plate.
pub(super) fn after(case: &Case, done: &Extraction) -> Option<Case> {
    if case.broken.is_some() {
        return None;
    }
    let pulled = Pulled { technique: done.technique, sectioning: done.sectioning };
    let fragment = broken_plate(case, pulled)?;
    let mut after = case.clone();
    after.broken = Some(fragment);
    let answer = done.plate.unwrap_or(PlateRescue::Keep);
    if (fragment, answer) != (Fragment::OnPeriosteum, PlateRescue::Keep) {
        after.site.defects.extend(gone(case));
    }
    Some(after)
}

/// What is missing where the piece was.
fn gone(case: &Case) -> Option<Defect> {
    let mut chance = Chance::of(case, Matter::Plate);
    let _ = (chance.unit(), chance.unit());
    let (wide, deep) = (chance.between(0.8, 0.95), chance.between(0.35, 0.6));
    let root = case.site.socket.as_one();
    let length = Map::of(&case.site.ridge).t(Wall::Facial, root.length.get());
    let outline = on_map(&u_form(root.x.get(), wide * root.half_md.get(), deep * length), |t| t)?;
    Some(Defect { wall: Wall::Facial, kind: DefectKind::DehiscenceU, outline })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::defect;
    use crate::rules::trial::Trial;

    const WHOLE: Pulled =
        Pulled { technique: Technique::LuxateAndRotate, sectioning: Sectioning::Whole };

    /// The plain case with a title under which its plate breaks by this technique.
    pub(crate) fn breaking(technique: Technique) -> Case {
        let case = Trial::plain().case;
        (0..10_000)
            .map(|title| Case { title: title.to_string(), ..case.clone() })
            .find(|case| broken_plate(case, Pulled { technique, ..WHOLE }).is_some())
            .expect("one in ten thousand")
    }

    #[test]
    fn force_thinness_and_roots_raise_the_hazard_and_sectioning_lowers_it() {
        let site = Trial::plain().case.site;
        let by = |technique, thickness| hazard(&site, thickness, Pulled { technique, ..WHOLE });
        assert!((by(Technique::LuxateAndRotate, 1.0) - 0.02).abs() < 1e-12);
        assert!((by(Technique::LeverOnFacialPlate, 0.5) - 0.8).abs() < 1e-12);
        assert!((by(Technique::RockFacially, 1.5) - 0.1).abs() < 1e-12);
        assert!((by(Technique::BoneRemoval, 3.0) - 0.07).abs() < 1e-12);
        let cut = Pulled { sectioning: Sectioning::Sectioned, ..WHOLE };
        assert!((hazard(&site, 1.0, cut) - 0.01).abs() < 1e-12);
        let mut long = site.clone();
        long.socket.only_mut().unwrap().length = crate::units::Mm::new(13.1);
        assert!((hazard(&long, 1.0, WHOLE) - 0.025).abs() < 1e-12);
    }

    #[test]
    fn a_thousand_cases_break_as_often_as_the_hazard_says() {
        let case = Trial::plain().case;
        let pulled = Pulled { technique: Technique::LeverOnFacialPlate, ..WHOLE };
        let plan = Plan::default();
        let thickness = Measurements::of(&case, &plan).facial_plate().unwrap().get();
        let expected = 1000.0 * hazard(&case.site, thickness, pulled);
        let broke = (0..1000)
            .filter(|n| {
                broken_plate(&Case { title: n.to_string(), ..case.clone() }, pulled).is_some()
            })
            .count();
        // Four standard deviations of a count near 400.
        assert!((broke as f64 - expected).abs() < 65.0, "{broke} against {expected}");
    }

    #[test]
    fn what_breaks_under_a_gentle_hand_breaks_under_a_rough_one() {
        let case = breaking(Technique::LuxateAndRotate);
        for technique in [Technique::RockFacially, Technique::LeverOnFacialPlate] {
            assert!(broken_plate(&case, Pulled { technique, ..WHOLE }).is_some());
        }
    }

    #[test]
    fn a_wall_that_is_missing_already_does_not_break_again() {
        let mut case = breaking(Technique::LuxateAndRotate);
        case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceV));
        assert_eq!(broken_plate(&case, WHOLE), None);
    }

    #[test]
    fn the_wall_is_gone_unless_a_hanging_piece_was_pressed_back_and_kept() {
        let case = breaking(Technique::LeverOnFacialPlate);
        let mut trial = Trial { case, ..Trial::plain() };
        trial.keys(&[("technique", "lever-on-facial-plate")]);
        for (answer, kept) in [("keep", true), ("remove", false), ("leave", false)] {
            trial.keys(&[("broken-plate", answer)]);
            let plan = trial.plan();
            let now = super::super::after(&trial.case, &plan);
            let hangs = now.broken == Some(Fragment::OnPeriosteum);
            assert_eq!(now.site.defects.is_empty(), kept && hangs, "{answer}");
            // What an event has changed is not changed again.
            assert_eq!(super::super::after(&now, &plan), now);
        }
    }
}
