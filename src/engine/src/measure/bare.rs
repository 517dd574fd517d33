//! What a raised flap lets the eye see.

use super::bound::Corners;
use crate::anatomy::{Map, Wall};
use crate::chart::{Case, Fact};
use crate::geometry::{P2, polygon};
use crate::plan::Plan;

/// The stretch of facial plate that has to lie bare to be judged, as half of the root's width to
/// either side and from just below the crest to this far apically, mm (ours).
const PLATE_TO: f64 = 5.0;
/// Thickness is seen on the edge of the crest: down to here, mm (ours).
const EDGE_TO: f64 = 1.0;
/// Just below the crest, mm: the flap's own edge runs along it.
const JUST_BELOW: f64 = 0.5;

/// Whether a raised flap lays bare the bone that would show the fact.
///
/// The facial wall shows when the flap's outline covers every facial defect apical of the crest, or,
/// on an intact wall, the plate over the root from the crest down to 5 mm. Facial thickness shows at
/// the edge of the crest over the root. The oral wall shows when the oral margin was raised: at all,
/// or, with an oral defect, as far as the defect reaches.
#[must_use]
pub fn is_laid_bare(case: &Case, plan: &Plan, fact: Fact) -> bool {
    match fact {
        Fact::FacialWall => covers(plan, &facial_evidence(case)),
        Fact::FacialThickness => covers(plan, &plate(case, EDGE_TO)),
        Fact::OralWall => oral_is_bare(case, plan),
        _ => false,
    }
}

/// Whether the facial flap's outline holds all these points.
fn covers(plan: &Plan, points: &[P2]) -> bool {
    /// Half a step of the map's grid: an outline may run along the edge itself.
    const EDGE: f64 = -0.05;
    let Some(raised) = plan.raised() else {
        return false;
    };
    let outline = Corners::of(&raised.outline);
    points.iter().all(|point| polygon::signed_distance(outline.as_slice(), *point) >= EDGE)
}

fn facial_evidence(case: &Case) -> Vec<P2> {
    let mut points = Vec::new();
    for defect in case.site.defects_of(Wall::Facial) {
        let below = polygon::clipped(&defect.outline.points(), |p| p.y - JUST_BELOW);
        points.extend(below);
    }
    if points.is_empty() { plate(case, PLATE_TO) } else { points }
}

/// Corners of the plate over the root, from just below the crest down.
fn plate(case: &Case, to: f64) -> Vec<P2> {
    let root = case.site.coronal();
    let (middle, half) = (root.x.get(), 0.5 * root.half_md.get());
    let corner = |side: f64, t: f64| P2::new(middle + side * half, t);
    vec![corner(-1.0, JUST_BELOW), corner(1.0, JUST_BELOW), corner(1.0, to), corner(-1.0, to)]
}

fn oral_is_bare(case: &Case, plan: &Plan) -> bool {
    let raised = plan.flap.as_ref().map_or(0.0, |flap| flap.oral.get());
    let crest = -Map::of(&case.site.ridge).across();
    let depth = case
        .site
        .defects_of(Wall::Oral)
        .filter_map(|defect| polygon::extent(&defect.outline.points(), |p| crest - p.y))
        .map(|reach| reach.to)
        .fold(0.0, f64::max);
    raised > 0.0 && raised >= depth - 0.05
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::geometry::Outline;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;

    fn flap(outline: &[[i32; 2]]) -> Trial {
        let mut trial = Trial::plain();
        trial.keys(&[
            ("flap-design", "envelope"),
            ("papillae", "left"),
            ("periosteal-release", "no"),
        ]);
        trial.number(Decision::ContourLayer, 0);
        trial.outline(Decision::FlapOutline, outline);
        trial
    }

    fn bare(trial: &Trial, fact: Fact) -> bool {
        is_laid_bare(&trial.case, &trial.plan(), fact)
    }

    #[test]
    fn a_flap_shows_what_lies_under_it_and_nothing_beyond() {
        let mut trial = flap(&[[-60, 0], [60, 0], [60, 60], [-60, 60]]);
        assert!(bare(&trial, Fact::FacialWall) && bare(&trial, Fact::FacialThickness));
        assert!(!bare(&trial, Fact::OralWall) && !bare(&trial, Fact::Canal));
        let window = Outline::new(vec![[-20, 40], [20, 40], [20, 70], [-20, 70]]).unwrap();
        let kind = DefectKind::Fenestration;
        trial.case.site.defects.push(Defect { wall: Wall::Facial, kind, outline: window });
        assert!(!bare(&trial, Fact::FacialWall));
        trial.outline(Decision::FlapOutline, &[[-60, 0], [60, 0], [60, 70], [-60, 70]]);
        assert!(bare(&trial, Fact::FacialWall));
    }

    #[test]
    fn nothing_is_bare_without_a_flap() {
        let trial = Trial::plain();
        assert!(Fact::ALL.iter().all(|fact| !bare(&trial, *fact)));
    }

    #[test]
    fn the_oral_wall_shows_as_far_as_its_margin_was_raised() {
        let mut trial = Trial::plain();
        trial.number(Decision::OralElevation, 20);
        assert!(bare(&trial, Fact::OralWall));
        let outline = Outline::new(vec![[-15, -124], [15, -124], [15, -84], [-15, -84]]).unwrap();
        let kind = DefectKind::DehiscenceU;
        trial.case.site.defects.push(Defect { wall: Wall::Oral, kind, outline });
        assert!(!bare(&trial, Fact::OralWall));
        trial.number(Decision::OralElevation, 40);
        assert!(bare(&trial, Fact::OralWall));
    }

    #[test]
    fn a_flap_too_narrow_or_too_short_for_the_plate_does_not_show_it_over_a_sweep() {
        for half in 5..60 {
            let trial = flap(&[[-half, 0], [half, 0], [half, 60], [-half, 60]]);
            assert_eq!(bare(&trial, Fact::FacialWall), half >= 16, "{half}");
        }
    }
}
