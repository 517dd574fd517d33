//! The septum: what bone is left between the roots of one tooth.
//!
//! The septum is the bone that stands under the trunk: within the trunk's section at the furcation,
//! carried on along z to the level of the shallowest apex.

use super::site::{FAR, bone_from};
use super::threads::areas_of;
use super::{Measurements, SeptumClass, SeptumHold, mm, mm2};
use crate::anatomy::Bone;
use crate::geometry::{Intervals, Ray, V3};
use crate::units::{Mm, Mm2};

/// The implant stands wholly in bone when no more than this share of its surface apical of the
/// furcation does not (ours: what measuring leaves in doubt, and no more).
const WHOLLY: f64 = 0.99;
/// The septum holds next to nothing of the implant below this share of that surface (ours; the
/// ledger's classes are words).
const NEXT_TO_NOTHING: f64 = 0.1;

/// Width of a usual molar implant (4.5 to 6 mm, from memory: the narrowest), and the level below the
/// furcation at which room for it is looked for, mm (ours).
const USUAL: f64 = 4.5;
const LEVEL: f64 = 2.0;
/// Room below which a septum is next to nothing to such an implant, mm (ours).
const NO_ROOM: f64 = 1.5;

impl Measurements<'_> {
    /// Class of the septum before an implant is chosen: for the narrowest usual one, by the room 2 mm
    /// apical of the furcation. `None` of one root.
    #[must_use]
    pub fn septum_class_for_usual(&self) -> Option<SeptumClass> {
        self.ground().solid.socket.furcation()?;
        let room = self.septum_room(Mm::new(LEVEL)).map_or(0.0, Mm::get);
        Some(match crate::units::comparable(room) {
            room if room >= USUAL => SeptumClass::A,
            room if room >= NO_ROOM => SeptumClass::B,
            _ => SeptumClass::C,
        })
    }

    /// Mesiodistal width of the septum: along x through the middle of the roots' axes, so far apical of
    /// the furcation, wall defects filled in. Millimetres; 0 where no bone stands there. `None` of one
    /// root, and deeper than the shallowest apex.
    #[must_use]
    pub fn septum_mesiodistal(&self, depth: Mm) -> Option<Mm> {
        self.septum_along(V3::DISTAL, depth)
    }

    /// Faciooral width of the septum: the same along y.
    #[must_use]
    pub fn septum_faciooral(&self, depth: Mm) -> Option<Mm> {
        self.septum_along(V3::FACIAL, depth)
    }

    fn septum_along(&self, way: V3, depth: Mm) -> Option<Mm> {
        let solid = &self.ground().solid;
        let under = solid.socket.under_trunk()?;
        let level = solid.socket.furcation()? + depth.get();
        if depth < Mm::ZERO || under.last_level() < level {
            return None;
        }
        let ray = Ray { origin: solid.socket.between(level)?, direction: way };
        let bone = solid.bone(Bone::WallsWhole, &ray, -FAR, FAR).intersection(&under.ray(&ray));
        let part = bone.as_slice().iter().find(|part| part.from <= 0.0 && 0.0 <= part.to);
        mm(part.map_or(0.0, |part| part.to - part.from))
    }

    /// Room in the septum: the width of the widest disc about the middle of the roots' axes, so far apical
    /// of the furcation and square to z, that stands in bone alone, wall defects filled in; looked for in
    /// 24 directions. Millimetres; 0 where no bone stands in the middle. `None` as for
    /// [`Self::septum_mesiodistal`].
    #[must_use]
    pub fn septum_room(&self, depth: Mm) -> Option<Mm> {
        let ground = self.ground();
        let solid = &ground.solid;
        let under = solid.socket.under_trunk()?;
        let level = solid.socket.furcation()? + depth.get();
        if depth < Mm::ZERO || under.last_level() < level {
            return None;
        }
        let origin = solid.socket.between(level)?;
        let reach = |(sin, cos): &(f64, f64)| {
            let ray = Ray { origin, direction: V3::FACIAL * *cos + V3::DISTAL * *sin };
            let bone = solid.bone(Bone::WallsWhole, &ray, -1e-6, FAR);
            bone.as_slice().first().filter(|part| part.from <= 0.0).map_or(0.0, |part| part.to)
        };
        mm(2.0 * ground.around.iter().map(reach).fold(FAR, f64::min).max(0.0))
    }

    /// Height of bone under the furcation: from it apically along z, through the middle of the roots'
    /// axes there, wall defects filled in, to the first surface or structure, or to the level down to
    /// which the ridge is drawn. Millimetres; 0 where no bone begins there. `None` of one root.
    #[must_use]
    pub fn bone_under_furcation(&self) -> Option<Mm> {
        let solid = &self.ground().solid;
        let origin = solid.socket.between(solid.socket.furcation()?)?;
        mm(bone_from(solid, Bone::WallsWhole, origin, V3::APICAL))
    }

    /// How the septum holds the implant that was drilled for: areas of its side. `None` of one root,
    /// and where none of the implant lies apical of the furcation. Square millimetres.
    #[must_use]
    pub fn septum_hold(&self) -> Option<SeptumHold> {
        *self.kept.septum.get_or_init(|| self.hold())
    }

    fn hold(&self) -> Option<SeptumHold> {
        let ground = self.ground();
        let socket = &ground.solid.socket;
        let (furcation, under) = (socket.furcation()?, socket.under_trunk()?);
        let (cone, grip) = (self.drilled()?, self.grip()?);
        let below = |line: &Ray| {
            let to_furcation = (furcation - line.origin.z) / line.direction.z;
            let ends =
                if line.direction.z > 0.0 { [to_furcation, FAR] } else { [0.0, to_furcation] };
            Intervals::one(ends[0].max(0.0), ends[1].min(cone.length))
        };
        let [all, in_bone, in_septum] = areas_of(ground, cone, grip, |line, bone| {
            let below = below(line);
            let in_bone = bone.intersection(&below);
            let in_septum = bone.intersection(&under.ray(line));
            [below, in_bone, in_septum]
        });
        // Rounding must not make a part exceed its whole.
        let (below, in_bone) = (mm2(all)?, mm2(in_bone.min(all))?);
        let hold = SeptumHold { below, in_bone, in_septum: mm2(in_septum)?.min(in_bone) };
        (hold.below.get() > 1e-6).then_some(hold)
    }

    /// How much of the implant that was drilled for the septum holds, as the length over which a body of
    /// its platform's width would have the same area all round. `None` of one root, and where none of
    /// the implant lies apical of the furcation. Millimetres.
    #[must_use]
    pub fn septum_engagement(&self) -> Option<Mm> {
        let round = 2.0 * core::f64::consts::PI * self.drilled()?.near;
        mm(self.septum_hold()?.in_septum.get() / round)
    }

    /// Distance, square to z, between the implant's axis and the middle of the roots' axes at the level
    /// of the furcation. `None` of one root, or without an implant in place. Millimetres.
    #[must_use]
    pub fn off_the_septum(&self) -> Option<Mm> {
        let socket = &self.ground().solid.socket;
        let frame = &self.seated()?.frame;
        let middle = socket.between(socket.furcation()?)?;
        let way = (middle.z - frame.origin.z) / frame.along.z;
        mm((frame.origin + frame.along * way - middle).length())
    }

    /// Class of the septum for the implant that was drilled for (`ledger: class-molar-septum`). `None`
    /// as for [`Self::septum_hold`].
    #[must_use]
    pub fn septum_class(&self) -> Option<SeptumClass> {
        let hold = self.septum_hold()?;
        let share = |area: Mm2| area.get() / hold.below.get();
        Some(if share(hold.in_bone) >= WHOLLY {
            SeptumClass::A
        } else if share(hold.in_septum) >= NEXT_TO_NOTHING {
            SeptumClass::B
        } else {
            SeptumClass::C
        })
    }
}
