//! Clearance from what must not be hurt.

use super::{Measurements, NeighbourDistance, mm};
use crate::anatomy::{Beside, Neighbour, Tube};
use crate::geometry::convex::{Convex, distance, overlap_along};
use crate::geometry::{Cone, Drilled, P3, Stack, V3, point_to_segment};
use crate::units::Mm;

/// How far a drill's tip reaches beyond the implant's apex, mm (ours; `practice` section 3 shows it as
/// a parameter).
pub const DRILL_OVERSHOOT: Mm = Mm::new(1.0);

/// A move that parts any two bodies of one site, mm.
const APART: f64 = 60.0;

impl Measurements<'_> {
    /// Least distance between the surfaces of the implant and of the mesial neighbour, along the whole
    /// length of both. `None` without an implant drilled for, or without a neighbour. Millimetres.
    #[must_use]
    pub fn to_mesial_neighbour(&self) -> Option<NeighbourDistance> {
        self.to_neighbour(0)
    }

    /// The same distally.
    #[must_use]
    pub fn to_distal_neighbour(&self) -> Option<NeighbourDistance> {
        self.to_neighbour(1)
    }

    fn to_neighbour(&self, side: usize) -> Option<NeighbourDistance> {
        *self.kept.beside[side].get_or_init(|| {
            let cone = self.drilled()?;
            let away = if side == 0 { V3::DISTAL } else { -V3::DISTAL };
            let apart = match &self.ground().solid.beside[side] {
                Beside::Root(root) => to_root(cone, root, away),
                Beside::Implant(other) => apart(cone, other, away),
                Beside::Absent => return None,
            };
            let neighbours = &self.case.site.neighbours;
            let neighbour = if side == 0 { &neighbours.mesial } else { &neighbours.distal };
            let to_implant = matches!(neighbour, Neighbour::Implant(_));
            Some(NeighbourDistance { distance: mm(apart)?, to_implant })
        })
    }

    /// The bed as it was drilled: the implant's body and the drill's point, 1 mm beyond its apex.
    fn bed(&self) -> Option<Drilled> {
        self.drilled().map(bed)
    }

    /// From the drilled bed, its tip 1 mm beyond the implant's apex, to the wall of the inferior
    /// alveolar canal; negative inside, by how deep. `None` without canal or drilling. Millimetres.
    #[must_use]
    pub fn to_canal(&self) -> Option<Mm> {
        mm(to_tube(&self.bed()?, self.case.site.vital.canal.as_ref()?))
    }

    /// From the drilled bed to the middle of the mental foramen or to the wall of its loop, whichever
    /// is nearer; negative inside the loop. `None` where there is neither, or without drilling.
    /// Millimetres.
    #[must_use]
    pub fn to_foramen(&self) -> Option<Mm> {
        let bed = self.bed()?;
        let vital = &self.case.site.vital;
        let foramen = vital.foramen.map(|middle| distance(&bed, &middle));
        let turn = vital.loop_.as_ref().map(|tube| to_tube(&bed, tube));
        mm([foramen, turn].into_iter().flatten().reduce(f64::min)?)
    }

    /// From the implant to the floor of sinus or nose, square to the floor; negative beyond it. `None`
    /// where no floor is near, or without drilling. Millimetres.
    #[must_use]
    pub fn to_floor(&self) -> Option<Mm> {
        mm(self.ground().solid.to_floor(self.drilled()?)?)
    }

    /// From the implant to the wall of the nasopalatine canal; negative inside. `None` where there is
    /// none, or without drilling. Millimetres.
    #[must_use]
    pub fn to_nasopalatine(&self) -> Option<Mm> {
        mm(to_tube(self.drilled()?, self.case.site.vital.nasopalatine.as_ref()?))
    }
}

/// The bed as it is drilled for a body.
pub(super) fn bed(body: &Cone) -> Drilled {
    Drilled { body: *body, tip: body.axis_at(body.length + DRILL_OVERSHOOT.get()) }
}

/// From a body to a tube's wall: to its middle line less its radius. Where the body has reached the
/// middle line itself, minus the radius.
fn to_tube(body: &impl Convex, tube: &Tube) -> f64 {
    distance(body, &[tube.from, tube.to]) - tube.radius.get()
}

fn to_root(cone: &Cone, root: &Stack, away: V3) -> f64 {
    let along_frusta = apart(cone, &root.frusta(), away);
    // The cap counts only where it could be nearer than the frusta.
    let base = root.frame.point(V3::new(0.0, 0.0, root.knots().last().map_or(0.0, |k| k.at)));
    let share = root.knots().last().map_or(0.0, |knot| knot.share);
    let height = root.last_level() - root.knots().last().map_or(0.0, |knot| knot.at);
    let reach = (share * root.across.max(root.facial)).max(height) + cone.near.max(cone.far);
    let axis: [P3; 2] = [cone.frame.origin, cone.end()];
    if point_to_segment(base, axis) - reach > along_frusta {
        return along_frusta;
    }
    along_frusta.min(apart(cone, &root.cap(), away))
}

/// Signed distance of two convex bodies: when they overlap, minus the least move of the first along
/// `away` that parts them.
fn apart(cone: &Cone, other: &impl Convex, away: V3) -> f64 {
    let gap = distance(cone, other);
    if gap > 0.0 { gap } else { -overlap_along(other, cone, away, APART) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, FloorKind, Implanted};
    use crate::plan::Decision;
    use crate::rules::trial::Trial;
    use crate::units::Deg;

    fn measured<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
        let plan = trial.plan();
        read(&Measurements::of(&trial.case, &plan))
    }

    fn upright(distal: i32) -> Trial {
        let mut trial = Trial::plain();
        trial.number(Decision::OffsetFacial, 0).number(Decision::Tilt, 0);
        trial.number(Decision::OffsetDistal, distal).number(Decision::Depth, 0);
        trial
    }

    #[test]
    fn upright_bodies_in_a_row_are_apart_by_what_lies_between_them() {
        let trial = upright(0);
        // Mesial root: axis at -8.7, half-width 3.2 at the crest; the implant's radius is 2 there.
        let mesial = measured(&trial, |m| m.to_mesial_neighbour()).unwrap();
        assert!((mesial.distance.get() - (8.7 - 3.2 - 2.0)).abs() < 1e-4, "{mesial:?}");
        let distal = measured(&trial, |m| m.to_distal_neighbour()).unwrap();
        assert!((distal.distance.get() - (7.7 - 2.4 - 2.0)).abs() < 1e-4 && !distal.to_implant);
    }

    #[test]
    fn distance_falls_as_the_platform_moves_and_turns_into_overlap_without_a_jump() {
        let mut last = 99.0;
        for tenths in -40..=40 {
            let found = measured(&upright(tenths), |m| m.to_distal_neighbour()).unwrap();
            let found = found.distance.get();
            let expected = 7.7 - 2.4 - 2.0 - f64::from(tenths) / 10.0;
            assert!((found - expected).abs() < 1e-3, "{tenths} {found} {expected}");
            assert!(found < last);
            last = found;
        }
        assert!(last < 0.0);
    }

    #[test]
    fn the_distance_to_a_leaning_root_agrees_with_the_least_over_both_surfaces() {
        let mut trial = Trial::plain();
        let Neighbour::Root(root) = &mut trial.case.site.neighbours.distal else {
            panic!("the plain neighbour is a root");
        };
        root.tip = Deg::new(-9.0);
        root.tilt = Deg::new(6.0);
        let stack = root.stack();
        trial.number(Decision::Tip, 6);
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        let cone = m.seated().unwrap();
        let ours = m.to_distal_neighbour().unwrap().distance.get();
        let mut least = f64::MAX;
        for i in 0..=260 {
            let level = -2.0 + f64::from(i) * 0.05;
            let [x, y] = stack.radii(stack.share(level));
            for j in 0..180 {
                let (sin, cos) = libm::sincos(f64::from(j) * core::f64::consts::PI / 90.0);
                let point = stack.frame.point(V3::new(0.0, 0.0, level)) + x * cos + y * sin;
                let local = cone.frame.local(point);
                let depth = local.z.clamp(0.0, cone.length);
                let aside = libm::hypot(local.x, local.y) - cone.radius(depth);
                let beyond = local.z - depth;
                least = least.min(libm::hypot(aside.max(0.0), beyond));
            }
        }
        assert!((ours - least).abs() < 0.01, "{ours} {least}");
    }

    #[test]
    fn a_drill_above_a_canal_is_as_far_as_the_levels_say() {
        let mut trial = upright(0);
        let canal = Tube {
            from: P3::new(-20.0, 0.0, 18.0),
            to: P3::new(20.0, 0.0, 18.0),
            radius: Mm::new(1.5),
        };
        trial.case.site.vital.canal = Some(canal.clone());
        trial.case.site.vital.loop_ = Some(canal);
        trial.case.site.vital.foramen = Some(P3::new(0.0, 0.0, 20.0));
        // Apex at 13, tip at 14, roof of the canal at 16.5.
        let (canal, foramen) = measured(&trial, |m| (m.to_canal(), m.to_foramen()));
        for found in [canal.unwrap(), foramen.unwrap()] {
            assert!((found.get() - 2.5).abs() < 1e-5, "{found}");
        }
        trial.number(Decision::Depth, 60);
        let inside = measured(&trial, |m| m.to_canal()).unwrap();
        assert!((inside.get() + 1.5).abs() < 1e-5, "{inside}");
    }

    #[test]
    fn a_level_floor_is_as_far_as_the_apex_is_above_it() {
        let mut trial = upright(0);
        for depth in [-60, 0, 30, 60] {
            trial.number(Decision::Depth, depth);
            trial.case.site.vital.floor =
                Some(Floor { kind: FloorKind::Sinus, z: Mm::new(15.0), rise: 0.0 });
            let found = measured(&trial, |m| m.to_floor()).unwrap().get();
            assert!((found - (2.0 - f64::from(depth) / 10.0)).abs() < 1e-9, "{depth} {found}");
        }
    }

    #[test]
    fn a_neighbouring_implant_is_named_as_one() {
        let mut trial = upright(0);
        trial.case.site.neighbours.mesial = Neighbour::Implant(Implanted {
            platform: P3::new(-7.5, 0.0, 0.0),
            diameter: Mm::new(4.0),
            length: Mm::new(13.0),
            tilt: Deg::ZERO,
            tip: Deg::ZERO,
        });
        let found = measured(&trial, |m| m.to_mesial_neighbour()).unwrap();
        assert!(found.to_implant && (found.distance.get() - 3.5).abs() < 1e-4);
        trial.case.site.neighbours.mesial = Neighbour::Absent;
        assert_eq!(measured(&trial, |m| m.to_mesial_neighbour()), None);
    }
}
