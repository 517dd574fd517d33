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
const STEPS: u32 = 8;

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
        let crest = solid.crest(Bone::Now, Wall::Oral, cone.frame.origin.x) + BELOW_ORAL_CREST;
        let along = cone.frame.along.z;
        let from = if along > 1e-9 {
            ((crest - cone.frame.origin.z) / along).clamp(0.0, cone.length)
        } else {
            0.0
        };
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
        let from = cone.length * (2.0 / 3.0);
        mm(least_beside(&self.ground().solid, cone, wall, from, cone.length)?)
    }
}

/// The least thickness on one side between two depths. On the straight lines of implant and face it
/// is least at an end or where the face bends, so those depths are looked at, and even steps between
/// for what else may stand in bone.
fn least_beside(solid: &Solid, cone: &Cone, wall: Wall, from: f64, to: f64) -> Option<f64> {
    let along = cone.frame.along.z;
    let bends = solid.face_knots(wall).iter().filter(|_| along.abs() > 1e-9);
    let bends = bends.map(|knot| (knot.x - cone.frame.origin.z) / along);
    let bends = bends.filter(|depth| from < *depth && *depth < to);
    let even = (0..=STEPS).map(|i| from + (to - from) * (f64::from(i) / f64::from(STEPS)));
    even.chain(bends).map(|depth| beside(solid, cone, wall, depth)).reduce(f64::min)
}

/// Thickness on one side at one depth, or minus how far the implant stands out there. Socket space
/// between implant and wall counts with the wall: an implant that stands clear of a thin wall has not
/// thinned it. Where no wall stands there is nothing.
fn beside(solid: &Solid, cone: &Cone, wall: Wall, depth: f64) -> f64 {
    let side = if wall == Wall::Facial { 1.0 } else { -1.0 };
    let axis = cone.axis_at(depth);
    // The point of the facial or oral generator at that depth.
    let surface: P3 = axis + cone.frame.facial * (side * cone.radius(depth));
    let face = solid.face(wall, surface.z);
    let room = side * (face - surface.y);
    if room <= 0.0 {
        return room;
    }
    let ray = Ray { origin: surface, direction: V3::FACIAL * side };
    let wall_there = solid.bone(Bone::Now, &ray, 0.0, room + 1.0);
    if wall_there.is_empty() {
        return 0.0;
    }
    let gap = socket_on(solid, &ray).intersection(&Intervals::one(0.0, room));
    wall_there.union(&gap).length()
}

#[cfg(test)]
mod tests {
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
}
