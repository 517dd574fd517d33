//! What a film can be read for, by how it was aimed: geometry alone, before any contrast.

use super::aim::{Aim, View};
use crate::anatomy::{Neighbour, Site};
use crate::geometry::V3;

/// Bone beyond the apex that a film has to show to be read there, mm (common practice, no source).
const BEYOND: f64 = 2.0;

/// What the geometry of a film leaves to be read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Legible {
    /// Whether every apex lies on the receptor, with 2 mm beyond it.
    pub apex: bool,
    /// Length of the root on the film against what the ratio of distances makes of it: 1 where it is
    /// drawn true, below it foreshortened, above it elongated.
    pub length: f64,
    /// Whether the beam passes between the neck and the necks beside it: more than half of the gap.
    pub between: bool,
}

/// Judges an aim at a site. Lengths go from the level of the crest to the apex of the root, of several
/// that of their shared trunk's axis; necks are ellipses seen along the middle of the beam.
#[must_use]
pub fn legible(site: &Site, aim: &Aim) -> Legible {
    let view = View::of(site, aim);
    let stack = site.socket.as_one().stack();
    let [columns, rows] = view.pixels.map(f64::from);
    let lies_on = |place: [f64; 2]| {
        let within = |at: f64, most: f64| (-0.5..=most - 0.5).contains(&at);
        within(place[0], columns) && within(place[1], rows)
    };
    let beyond = stack.apex() + stack.frame.along * BEYOND;
    let apex = view.place(beyond).is_some_and(lies_on);
    let neck = stack.frame.point(V3::new(0.0, 0.0, 0.0));
    let shown = match (view.place(neck), view.place(stack.apex())) {
        (Some(from), Some(to)) => view.straight(from, to).get(),
        _ => 0.0,
    };
    let grown = aim.source.get() / (aim.source.get() - aim.object.get()).max(1.0);
    let true_length = (stack.apex() - neck).length().max(0.1);
    let middle = view.ray(columns / 2.0, rows / 2.0).0.direction;
    let between = apart(site, middle);
    Legible { apex, length: shown / (true_length * grown), between }
}

/// Whether a beam finds, on either side of the neck, more than half of the gap that one square to the
/// arch would (ours).
fn apart(site: &Site, beam: V3) -> bool {
    let square = gaps(site, V3::FACIAL);
    gaps(site, beam).iter().zip(square).all(|(found, whole)| *found > 0.5 * whole || whole <= 0.0)
}

/// The gaps to the necks of the roots beside it, mm: shadows of ellipses across a beam.
fn gaps(site: &Site, beam: V3) -> Vec<f64> {
    let far = libm::hypot(beam.x, beam.y).max(1e-9);
    let (along, aside) = (beam.y / far, -beam.x / far);
    let shadow = |x: f64, y: f64, half_md: f64, half_fo: f64| {
        (x * along + y * aside, libm::hypot(half_md * along, half_fo * aside))
    };
    let own = site.coronal();
    let (at, half) = shadow(own.x.get(), own.y.get(), own.half_md.get(), own.half_fo.get());
    let sides = [&site.neighbours.mesial, &site.neighbours.distal].into_iter();
    let roots = sides.filter_map(|neighbour| match neighbour {
        Neighbour::Root(root) => Some(root),
        _ => None,
    });
    roots
        .map(|root| {
            let (beside, wide) =
                shadow(root.x.get(), root.y.get(), root.half_md.get(), root.half_fo.get());
            (beside - at).abs() - half - wide
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::imaging::Size;
    use crate::rules::trial::Trial;
    use crate::units::Deg;

    fn of(change: fn(&mut Aim)) -> Legible {
        let site = Trial::plain().case.site;
        let mut aim = Aim::usual(&site);
        change(&mut aim);
        legible(&site, &aim)
    }

    #[test]
    fn the_paralleling_technique_shows_all_and_a_true_length() {
        let well = of(|_| ());
        assert!(well.apex && well.between && (well.length - 1.0).abs() < 1e-6, "{well:?}");
    }

    #[test]
    fn a_leaning_receptor_under_a_steep_tube_shortens_and_under_a_flat_one_lengthens() {
        let lean =
            |aim: &mut Aim| (aim.lean, aim.object) = (Deg::new(35.0), crate::units::Mm::new(5.0));
        let site = Trial::plain().case.site;
        let with = |vertical: f64| {
            let mut aim = Aim { vertical: Deg::new(vertical), ..Aim::usual(&site) };
            lean(&mut aim);
            legible(&site, &aim).length
        };
        assert!(with(40.0) < 0.95 && with(0.0) > 1.05, "{} {}", with(40.0), with(0.0));
    }

    #[test]
    fn a_tube_from_far_aside_lays_necks_over_each_other() {
        assert!(of(|aim| aim.horizontal = Deg::new(8.0)).between);
        assert!(!of(|aim| aim.horizontal = Deg::new(40.0)).between);
    }

    #[test]
    fn a_receptor_that_lies_too_far_coronal_misses_the_apex() {
        assert!(!of(|aim| aim.short = crate::units::Mm::new(14.0)).apex);
        assert!(of(|aim| aim.size = Size::Zero).apex);
    }
}
