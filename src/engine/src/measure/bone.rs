//! Bone beside the implant.

use super::site::FAR;
use super::volume::{contour_at, socket_on};
use super::{Measurements, mm};
use crate::anatomy::{Bone, Solid, Wall};
use crate::geometry::{Cone, Intervals, P2, P3, Ray, V3};
use crate::units::Mm;

/// Oral bone counts from this far apical of the oral crest, mm (ours).
const BELOW_ORAL_CREST: f64 = 1.0;
/// Facial bone after grafting is taken this far below the platform, along the implant's axis, mm
/// (ours; `ledger: facial-bone-target` gives no level).
const BELOW_PLATFORM: f64 = 2.0;
/// Even steps between the depths at which a least thickness is looked for, beside the depths at which
/// the face bends.
pub(super) const STEPS: u32 = 8;
/// How often a step is halved towards the least thickness where something stands in the bone.
const HALVINGS: u32 = 5;

impl Measurements<'_> {
    /// Facial bone once graft has turned to bone: along +y from the implant's surface 2 mm below its
    /// platform. Bone counts; the gap and a lost wall count where they are grafted (a graft is laid and
    /// its fill reaches that level), and then the contour layer as thick as it lies there. An ungrafted
    /// gap ends it. `None` without an implant in place. Millimetres, 0 or more.
    #[must_use]
    pub fn facial_bone_after_grafting(&self) -> Option<Mm> {
        let cone = self.seated()?;
        let solid = &self.ground().solid;
        let axis = cone.axis_at(BELOW_PLATFORM.min(cone.length));
        let ray = Ray { origin: axis, direction: V3::FACIAL };
        let surface = cone.ray(&ray).last().map_or(0.0, |part| part.to);
        let filled = self.plan.graft_laid().is_some_and(|graft| axis.z >= -graft.fill.get());
        if !filled {
            let met = solid.bone(Bone::Now, &ray, surface, surface + FAR);
            let first = met.as_slice().first().filter(|part| part.from <= surface + 1e-6);
            return mm(first.map_or(0.0, |part| part.to - surface));
        }
        // Whatever lies between the implant and the outer face is bone or will be, as far as it was
        // wall or socket: crest and neighbours still end it.
        let mut will_be = solid.bone(Bone::WallsWhole, &ray, -FAR, FAR);
        will_be = will_be.union(&socket_on(solid, &ray));
        let reached =
            will_be.as_slice().iter().find(|part| part.from <= surface + 1e-6 && surface < part.to);
        let Some(part) = reached else {
            return mm(0.0);
        };
        let face = solid.face(Wall::Facial, axis.z) - axis.y;
        let end = part.to.min(face.max(surface));
        let place = P2::new(axis.x, solid.map.t(Wall::Facial, axis.z));
        mm(end - surface + contour_at(self, place))
    }

    /// Least thickness of wall orally of the implant, gap included, along y, from 1 mm below the oral crest to its
    /// apex; negative when the implant stands out of the oral face, by how far. `None` without an
    /// implant drilled for, or where none of it reaches that deep. Millimetres.
    #[must_use]
    pub fn oral_bone(&self) -> Option<Mm> {
        let cone = self.drilled()?;
        let solid = &self.ground().solid;
        let crest = oral_start(solid, cone.frame.origin.x);
        let from = depth_of(cone, crest);
        let reaches = cone.end().z >= crest;
        mm(least_beside(solid, cone, Wall::Oral, from, cone.length).filter(|_| reaches)?)
    }

    /// Least thickness of wall facially of the implant's apical third, gap included, along y; negative when it
    /// stands out of the facial face. `None` without an implant drilled for. Millimetres.
    #[must_use]
    pub fn apical_facial_bone(&self) -> Option<Mm> {
        self.apical_bone(Wall::Facial)
    }

    /// The same orally.
    #[must_use]
    pub fn apical_oral_bone(&self) -> Option<Mm> {
        self.apical_bone(Wall::Oral)
    }

    fn apical_bone(&self, wall: Wall) -> Option<Mm> {
        let cone = self.drilled()?;
        mm(least_beside(&self.ground().solid, cone, wall, apical_third(cone), cone.length)?)
    }
}

/// Level from which oral bone counts at an x.
pub(super) fn oral_start(solid: &Solid, x: f64) -> f64 {
    solid.crest(Bone::Now, Wall::Oral, x) + BELOW_ORAL_CREST
}

/// Depth at which an implant's axis comes to a level, between its ends.
pub(super) fn depth_of(cone: &Cone, level: f64) -> f64 {
    let along = cone.frame.along.z;
    if along > 1e-9 { ((level - cone.frame.origin.z) / along).clamp(0.0, cone.length) } else { 0.0 }
}

/// Depth at which an implant's apical third begins.
pub(super) fn apical_third(cone: &Cone) -> f64 {
    cone.length * (2.0 / 3.0)
}

/// Depths at which a face bends beside an implant's line, between two of its depths.
pub(super) fn bends_beside(
    solid: &Solid,
    line: Ray,
    wall: Wall,
    (from, to): (f64, f64),
) -> impl Iterator<Item = f64> {
    let bends = solid.face_knots(wall).iter().filter(move |_| line.direction.z.abs() > 1e-9);
    let bends = bends.map(move |knot| (knot.x - line.origin.z) / line.direction.z);
    bends.filter(move |depth| from < *depth && *depth < to)
}

/// The sign of the way to a face along y.
pub(super) const fn outward(wall: Wall) -> f64 {
    match wall {
        Wall::Facial => 1.0,
        Wall::Oral => -1.0,
    }
}

/// The least thickness on one side between two depths. On the straight lines of implant and face it
/// is least at an end or where the face bends beside the implant's line, so those depths are looked
/// at, and even steps between, the least of them closer, for what else may stand in bone.
pub(super) fn least_beside(
    solid: &Solid,
    cone: &Cone,
    wall: Wall,
    from: f64,
    to: f64,
) -> Option<f64> {
    let side = outward(wall);
    let line = cone.generator(cone.frame.facial * side);
    let bends = bends_beside(solid, line, wall, (from, to));
    let step = (to - from) / f64::from(STEPS);
    let even = (0..=STEPS).map(|i| from + step * f64::from(i));
    let at = |depth: f64| (depth, beside(solid, cone, wall, depth));
    // The lesser thickness and its depth, and whether the way is whole at both.
    let lesser = |(a, one): (f64, (f64, bool)), (b, other): (f64, (f64, bool))| {
        let whole = one.1 && other.1;
        if other.0 < one.0 { (b, (other.0, whole)) } else { (a, (one.0, whole)) }
    };
    let mut least = even.chain(bends).map(at).reduce(lesser)?;
    let rounds = if least.1.1 { 0 } else { HALVINGS };
    let mut step = step;
    for _ in 0..rounds {
        step *= 0.5;
        let both = [least.0 - step, least.0 + step].map(|depth| depth.clamp(from, to));
        least = both.into_iter().map(at).fold(least, lesser);
    }
    Some(least.1.0)
}

/// Thickness on one side at one depth, or minus how far the implant stands out there. Socket space
/// between implant and wall counts with the wall: an implant that stands clear of a thin wall has not
/// thinned it. Where no wall stands there is nothing. Also whether nothing else stands or is missing on
/// the way to the face.
fn beside(solid: &Solid, cone: &Cone, wall: Wall, depth: f64) -> (f64, bool) {
    let side = outward(wall);
    let axis = cone.axis_at(depth);
    // The point of the facial or oral generator at that depth.
    let surface: P3 = axis + cone.frame.facial * (side * cone.radius(depth));
    let face = solid.face(wall, surface.z);
    let room = side * (face - surface.y);
    if room <= 0.0 {
        return (room, true);
    }
    let ray = Ray { origin: surface, direction: V3::FACIAL * side };
    let wall_there = solid.bone(Bone::Now, &ray, 0.0, room + 1.0);
    if wall_there.is_empty() {
        return (0.0, false);
    }
    let gap = socket_on(solid, &ray).intersection(&Intervals::one(0.0, room));
    let thickness = wall_there.union(&gap).length();
    (thickness, thickness > room - 1e-6)
}

#[cfg(test)]
mod tests {
    use super::{beside, least_beside};
    use crate::anatomy::{Tube, Wall};
    use crate::geometry::{P2, P3};
    use crate::measure::Measurements;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn measured<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
        let plan = trial.plan();
        read(&Measurements::of(&trial.case, &plan))
    }

    fn upright() -> Trial {
        let mut trial = Trial::plain();
        trial.number(Decision::OffsetFacial, -12).number(Decision::Tilt, 0);
        trial.number(Decision::Depth, 10).number(Decision::Length, 100);
        trial
    }

    #[test]
    fn a_graft_carries_the_facial_bone_to_the_outer_face_and_an_empty_gap_ends_it() {
        let mut trial = upright();
        // 2 mm below the platform: z = 3; the face stands at 4.2 - 0.7 * 3 / 5.5, the implant's surface
        // at -1.2 + 2.0 - 0.6 * 2 / 10.
        let expected = 4.2 - 0.7 * 3.0 / 5.5 - (-1.2 + 1.88);
        let grafted = measured(&trial, |m| m.facial_bone_after_grafting()).unwrap();
        assert!((grafted.get() - expected).abs() < 1e-9, "{grafted} {expected}");
        trial.number(Decision::FillLevel, -35);
        let below = measured(&trial, |m| m.facial_bone_after_grafting()).unwrap();
        assert_eq!(below, Mm::ZERO);
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(measured(&trial, |m| m.facial_bone_after_grafting()), Some(Mm::ZERO));
    }

    #[test]
    fn oral_bone_thins_step_by_step_and_turns_negative_through_the_cortex() {
        let mut trial = upright();
        let mut last = f64::MAX;
        for tenths in (-60..=-20).rev() {
            trial.number(Decision::OffsetFacial, tenths);
            let bone = measured(&trial, |m| m.oral_bone()).unwrap().get();
            assert!(bone <= last + 1e-9, "{tenths} {bone} {last}");
            last = bone;
        }
        // At 6 mm orally the platform, 1 mm below the crest, reaches to -6.0 - 2.0; the face stands at
        // -4.2 - 2 / 5.5 there.
        let expected = -(6.0 + 2.0 - (4.2 + 2.0 / 5.5));
        assert!((last - expected).abs() < 1e-9, "{last} {expected}");
    }

    #[test]
    fn a_thin_wall_that_the_implant_stands_clear_of_is_not_thinned() {
        let mut trial = upright();
        // The apical third of this implant stands in the socket, in front of a plate of 0.4 mm.
        for knot in &mut trial.case.site.ridge.facial.knots {
            knot.y -= 0.8;
        }
        let read = |trial: &Trial| measured(trial, |m| m.apical_facial_bone()).unwrap().get();
        let clear = read(&trial);
        assert!(clear > 1.0, "{clear}");
        trial.number(Decision::OffsetFacial, -2);
        assert!((clear - read(&trial) - 1.0).abs() < 1e-6);
    }

    #[test]
    fn a_facial_lean_brings_the_apex_out_of_the_concavity() {
        let mut trial = upright();
        let mut last = f64::MAX;
        // From here on the apical third has left the socket.
        for tilt in 14..=30 {
            trial.number(Decision::Tilt, tilt);
            let bone = measured(&trial, |m| m.apical_facial_bone()).unwrap().get();
            assert!(bone <= last + 1e-9, "{tilt} {bone}");
            last = bone;
        }
        assert!(last < 0.0, "{last}");
        let oral = measured(&trial, |m| m.apical_oral_bone()).unwrap();
        assert!(oral > Mm::new(3.0));
    }

    #[test]
    fn the_least_is_that_of_four_thousand_depths_beside_a_bend_and_beside_a_canal() {
        let mut trial = upright();
        trial.case.site.ridge.oral.knots =
            [(-8.0, -5.5), (4.0, -6.5), (6.3, -4.8), (9.0, -6.5), (30.0, -7.0)]
                .map(|(z, y)| P2::new(z, y))
                .to_vec();
        for crossing in [None, Some(3.1), Some(5.7), Some(8.4)] {
            trial.case.site.vital.nasopalatine = crossing.map(|z| Tube {
                from: P3::new(-9.0, -4.2, z),
                to: P3::new(9.0, -4.2, z),
                radius: Mm::new(0.8),
            });
            for tilt in [-25, -11, 0, 17] {
                trial.number(Decision::Tilt, tilt);
                let plan = trial.plan();
                let m = Measurements::of(&trial.case, &plan);
                let (solid, cone) = (&m.ground().solid, m.drilled().unwrap());
                let (from, to) = (2.0, cone.length);
                let found = least_beside(solid, cone, Wall::Oral, from, to).unwrap();
                let marched = (0..=4000)
                    .map(|i| from + (to - from) * f64::from(i) / 4000.0)
                    .map(|depth| beside(solid, cone, Wall::Oral, depth).0)
                    .fold(f64::MAX, f64::min);
                assert!((found - marched).abs() < 0.005, "{crossing:?} {tilt} {found} {marched}");
            }
        }
    }
}
