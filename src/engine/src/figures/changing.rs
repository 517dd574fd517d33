//! A case of which one thing is to be changed: drawn as it truly is, and where that thing can be taken
//! hold of.

use super::scene::Scene;
use super::together::tooth_out;
use super::{Figure, Show, Window, map, section};
use crate::anatomy::{Map, Site, Wall};
use crate::cases::defect_of;
use crate::chart::{Aspect, Case};
use crate::geometry::{P2, polyline};
use crate::plan::Draft;
use crate::rules::Known;

/// The level at which a plate is measured, millimetres apical of the crest.
const PLATE_AT: f64 = 1.0;

/// Where something is taken hold of, millimetres of the figure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hold {
    /// Where it is.
    pub at: P2,
    /// How far it goes with one step more of its aspect's scale.
    pub step: P2,
}

impl Hold {
    /// How many steps of its scale a way on the figure makes, millimetres to the right and down: that
    /// part of it which goes along its own way.
    #[must_use]
    pub fn steps(&self, right: f64, down: f64) -> i32 {
        let P2 { x, y } = self.step;
        let steps = libm::round((right * x + down * y) / (x * x + y * y));
        // No figure is a thousand millimetres wide.
        steps.clamp(-1e4, 1e4) as i32
    }

    /// How many steps so many presses of keys to the right and down make.
    #[must_use]
    pub fn presses(&self, right: i32, down: i32) -> i32 {
        let size = libm::hypot(self.step.x, self.step.y);
        self.steps(f64::from(right) * size, f64::from(down) * size)
    }
}

/// The figure on which an aspect of a case shows best, the tooth taken out: the facial map for defects,
/// the section for all else; and where it is taken hold of, if it shows there. `px` as in [`Show`].
#[must_use]
pub fn changing(case: &Case, aspect: Aspect, px: f64) -> (Figure, Option<Hold>) {
    let (plan, draft) = (tooth_out(), Draft::empty());
    let known = Known::of(case, &plan);
    let show =
        Show { case, plan: &plan, draft: &draft, known: &known, reveal: true, lit: None, px };
    let scene = Scene::of(&show);
    let on_map = matches!(aspect, Aspect::FacialLoss | Aspect::FacialLossWidth | Aspect::OralLoss);
    let (figure, hold, right) = if on_map {
        (map::facial_map(&show), held_on_map(&case.site, aspect), scene.right())
    } else {
        (section(&show), held_in_section(&case.site, aspect), 1.0)
    };
    let put = |of: P2| P2::new(right * of.x, scene.down() * of.y);
    let hold = hold.map(|[at, step]| Hold { at: put(at), step: put(step) });
    // A floor or a canal may lie beyond what is drawn.
    let Window { least, most } = figure.window;
    let drawn = |hold: &Hold| {
        (least.x..=most.x).contains(&hold.at.x) && (least.y..=most.y).contains(&hold.at.y)
    };
    (figure, hold.filter(drawn))
}

/// Place and step as (s, t) of the map.
fn held_on_map(site: &Site, aspect: Aspect) -> Option<[P2; 2]> {
    let wall = if aspect == Aspect::OralLoss { Wall::Oral } else { Wall::Facial };
    let corners = defect_of(site, wall).map(|one| one.outline.points()).unwrap_or_default();
    // What counts grows this way: down a wall, or distally.
    let way = match aspect {
        Aspect::FacialLossWidth => P2::new(1.0, 0.0),
        Aspect::OralLoss => P2::new(0.0, -1.0),
        _ => P2::new(0.0, 1.0),
    };
    let along = |at: &P2| at.x * way.x + at.y * way.y;
    let most = corners.iter().map(along).fold(f64::NEG_INFINITY, f64::max);
    // Of a flat end its middle.
    let ends: Vec<P2> = corners.into_iter().filter(|at| along(at) > most - 0.05).collect();
    let share = 1.0 / ends.len() as f64;
    let mean = |part: fn(&P2) -> f64| ends.iter().map(part).sum::<f64>() * share;
    let farthest = (!ends.is_empty()).then(|| P2::new(mean(|at| at.x), mean(|at| at.y)));
    match (farthest, aspect) {
        // It widens to both sides, so that each goes half as far.
        (at, Aspect::FacialLossWidth) => Some([at?, P2::new(0.05, 0.0)]),
        (at, Aspect::OralLoss) => {
            let crest = P2::new(0.0, -Map::of(&site.ridge).across());
            Some([at.unwrap_or(crest), P2::new(0.0, -0.1)])
        }
        (at, _) => Some([at.unwrap_or(P2::new(0.0, 0.0)), P2::new(0.0, 0.1)]),
    }
}

/// Place and step as (y, z) of the section.
fn held_in_section(site: &Site, aspect: Aspect) -> Option<[P2; 2]> {
    let vital = &site.vital;
    let apical = P2::new(0.0, 0.1);
    match aspect {
        Aspect::FacialPlate => {
            let y = polyline::value(&site.ridge.facial.knots, PLATE_AT);
            Some([P2::new(y, PLATE_AT), P2::new(0.1, 0.0)])
        }
        Aspect::OralPlate => {
            let y = polyline::value(&site.ridge.oral.knots, PLATE_AT);
            Some([P2::new(y, PLATE_AT), P2::new(-0.1, 0.0)])
        }
        Aspect::BoneToFloor => {
            vital.floor.as_ref().map(|floor| [P2::new(0.0, floor.z.get()), apical])
        }
        Aspect::BoneToCanal => vital.canal.as_ref().map(|canal| {
            let end = if canal.from.z <= canal.to.z { canal.from } else { canal.to };
            [P2::new(end.y, end.z - canal.radius.get()), apical]
        }),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{changed, generate, value_of};
    use crate::chart::Change;

    #[test]
    fn what_is_taken_hold_of_goes_as_far_as_its_step_says() {
        let mut seen = [0; 7];
        let aspects = [
            Aspect::FacialLoss,
            Aspect::FacialLossWidth,
            Aspect::OralLoss,
            Aspect::FacialPlate,
            Aspect::OralPlate,
            Aspect::BoneToFloor,
            Aspect::BoneToCanal,
        ];
        for seed in 0..24 {
            let case = generate(seed).unwrap();
            // Most walls are whole: half of them lose something first.
            let lost = Change { aspect: Aspect::FacialLoss, to: 45 };
            let case = if seed % 2 == 0 { changed(&case, lost).unwrap_or(case) } else { case };
            for (place, aspect) in aspects.into_iter().enumerate() {
                let Some(now) = value_of(&case, aspect) else { continue };
                // From nothing to a defect is no way that one goes.
                if now == 0 {
                    continue;
                }
                let Ok(other) = changed(&case, Change { aspect, to: now + 6 }) else { continue };
                let [one, two] = [&case, &other].map(|of| changing(of, aspect, 300.0));
                let (Some(before), Some(after)) = (one.1, two.1) else { continue };
                let went = [after.at.x - before.at.x, after.at.y - before.at.y];
                let asked = [6.0 * before.step.x, 6.0 * before.step.y];
                // Corners lie on tenths of a millimetre.
                for (went, asked) in went.into_iter().zip(asked) {
                    assert!((went - asked).abs() < 0.1, "{seed} {aspect:?}: {went}, not {asked}");
                }
                assert!(one.0 != two.0, "{seed} {aspect:?} does not show");
                seen[place] += 1;
            }
        }
        assert!(seen.iter().all(|count| *count >= 1), "{seen:?}");
    }

    #[test]
    fn of_two_defects_of_a_wall_the_one_is_held_that_is_changed() {
        let case = (0..24).find_map(|seed| {
            let lost = Change { aspect: Aspect::FacialLoss, to: 45 };
            changed(&generate(seed).ok()?, lost).ok().filter(|case| case.site.defects.len() == 1)
        });
        let one = case.expect("a case with one defect");
        let mut two = one.clone();
        // Shallower, and distal of all that the first reaches.
        let mut other = one.site.defects[0].clone();
        let beside = [[60, 0], [75, 0], [75, 20], [60, 20]];
        other.outline = crate::geometry::Outline::new(beside.to_vec()).unwrap();
        two.site.defects.push(other);
        for aspect in [Aspect::FacialLoss, Aspect::FacialLossWidth] {
            let [alone, beside] = [&one, &two].map(|case| changing(case, aspect, 300.0).1);
            assert!(alone.is_some() && alone == beside, "{aspect:?}: {alone:?}, {beside:?}");
        }
    }

    #[test]
    fn a_way_counts_as_far_as_it_goes_along_its_own() {
        let half = Hold { at: P2::new(0.0, 0.0), step: P2::new(-0.05, 0.0) };
        assert_eq!(half.steps(-0.5, 9.0), 10);
        assert_eq!([half.presses(1, 0), half.presses(0, 10), half.presses(-10, 0)], [-1, 0, 10]);
        assert_eq!(half.steps(1e9, 0.0), -10_000);
    }

    #[test]
    fn where_nothing_is_lost_yet_the_crest_is_taken_hold_of_and_an_age_is_nowhere() {
        let whole = (0..40).map(|seed| generate(seed).unwrap());
        let whole = whole.into_iter().find(|case| case.site.defects.is_empty()).unwrap();
        let hold = |aspect| changing(&whole, aspect, 300.0).1;
        assert_eq!(hold(Aspect::FacialLoss).unwrap().at, P2::new(0.0, 0.0));
        assert!(hold(Aspect::OralLoss).unwrap().at.y != 0.0);
        assert_eq!([Aspect::FacialLossWidth, Aspect::Age].map(hold), [None, None]);
    }
}
