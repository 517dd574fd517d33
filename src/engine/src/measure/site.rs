//! Measurements of the site, whatever the plan.

use super::{Measurements, mm, mm3, volume};
use crate::anatomy::{Beside, Bone, Solid, Wall};
use crate::geometry::{Interval, Intervals, P2, P3, Ray, V3, polygon, polyline};
use crate::units::{Mm, Mm3};

/// Plate thickness is taken this far apical of the crest, mm (1 mm below the crest is where the
/// confirmed series of `evidence: anatomy A2.1` measure).
const PLATE_LEVEL: f64 = 1.0;

/// How far rays look, mm: past every jaw.
pub(super) const FAR: f64 = 60.0;

impl Measurements<'_> {
    /// Facial plate at x = 0, along y, 1 mm apical of the present facial crest (of the reference crest
    /// where a defect has taken the wall there); 0 where no wall. Where that level lies below the
    /// furcation, the least over the roots against the wall, each at its axis. Millimetres.
    #[must_use]
    pub fn facial_plate(&self) -> Option<Mm> {
        self.plate(Wall::Facial)
    }

    /// Oral plate, the same, below the oral crest.
    #[must_use]
    pub fn oral_plate(&self) -> Option<Mm> {
        self.plate(Wall::Oral)
    }

    fn plate(&self, wall: Wall) -> Option<Mm> {
        let solid = &self.ground().solid;
        let level = solid.crest(Bone::Now, wall, 0.0) + PLATE_LEVEL;
        let over = solid.socket.over(wall, level).into_iter();
        mm(over.map(|x| plate_at(solid, Bone::Now, wall, x, level)).reduce(f64::min)?)
    }

    /// Faciooral width of the socket at the reference crest, through the axis of root or trunk.
    /// Millimetres.
    #[must_use]
    pub fn socket_width(&self) -> Option<Mm> {
        let body = self.ground().solid.socket.coronal()?;
        let ray = Ray { origin: body.frame.origin, direction: V3::FACIAL };
        mm(body.ray(&ray).length())
    }

    /// Mesiodistal room at the level of the reference crest between the neighbours' surfaces, each
    /// taken along x through its own axis; to the end of the crest's line where there is none.
    /// Millimetres.
    #[must_use]
    pub fn mesiodistal_room(&self) -> Option<Mm> {
        let solid = &self.ground().solid;
        let crest = &self.case.site.ridge.crest.knots;
        let ends = [crest.first()?.x, crest.last()?.x];
        let mesial = at_crest(&solid.beside[0]).map_or(ends[0], |body| body.to);
        let distal = at_crest(&solid.beside[1]).map_or(ends[1], |body| body.from);
        mm((distal - mesial).max(0.0))
    }

    /// Bone beyond the socket's apex along the root's axis: the length of the first stretch of bone,
    /// which begins at the apex (beyond an apical lesion, where there is one) and ends at the first
    /// surface or structure, or at the level down to which the ridge is drawn. Of several roots the
    /// least ([`Self::bone_beyond_apices`] tells each). Millimetres; 0 when an apex stands outside
    /// bone.
    #[must_use]
    pub fn bone_beyond_apex(&self) -> Option<Mm> {
        self.bone_beyond_apices().into_iter().reduce(Mm::min)
    }

    /// The same of each root, in the order of [`Socket::names`](crate::anatomy::Socket::names).
    #[must_use]
    pub fn bone_beyond_apices(&self) -> Vec<Mm> {
        let solid = &self.ground().solid;
        let roots = solid.socket.roots().iter();
        roots
            .filter_map(|root| mm(bone_from(solid, Bone::Now, root.apex(), root.frame.along)))
            .collect()
    }

    /// How far the facial defects reach apically of the reference crest on the map: their greatest t.
    /// `None` without a facial defect. Millimetres.
    #[must_use]
    pub fn facial_defect_depth(&self) -> Option<Mm> {
        let cuts = self.ground().solid.cuts.iter().filter(|cut| cut.wall == Wall::Facial);
        let reach = cuts.filter_map(|cut| polygon::extent(&cut.outline, |p| p.y));
        mm(reach.map(|extent| extent.to).reduce(f64::max)?)
    }

    /// Width of the widest facial defect: its extent along s on the map. `None` without one.
    /// Millimetres.
    #[must_use]
    pub fn facial_defect_width(&self) -> Option<Mm> {
        let cuts = self.ground().solid.cuts.iter().filter(|cut| cut.wall == Wall::Facial);
        let reach = cuts.filter_map(|cut| polygon::extent(&cut.outline, |p| p.x));
        mm(reach.map(|extent| extent.to - extent.from).reduce(f64::max)?)
    }

    /// Mid-facial crest as it is now below the reference crest, dehiscence included, along z at
    /// x = 0. Millimetres; 0 without loss.
    #[must_use]
    pub fn crest_loss(&self) -> Option<Mm> {
        mm(present_crest(&self.ground().solid).max(0.0))
    }

    /// Deepest lingual undercut: how far the oral profile draws back, along y, from its most lingual
    /// point above, apical of the oral crest. Millimetres; 0 without one.
    #[must_use]
    pub fn lingual_undercut(&self) -> Option<Mm> {
        mm(draw_back(&self.ground().solid, Wall::Oral))
    }

    /// Deepest facial concavity: the most by which the facial profile draws back, along y, from a
    /// straight line between its point at the reference crest and any of its points further apical.
    /// Millimetres; 0 where it nowhere does.
    #[must_use]
    pub fn facial_concavity(&self) -> Option<Mm> {
        let knots = self.ground().solid.face_knots(Wall::Facial);
        let crest = P2::new(0.0, polyline::value(knots, 0.0));
        let below = knots.iter().filter(|knot| knot.x > 0.0);
        // Every later knot may end the line; the deepest hollow under any of the lines counts.
        let mut deepest: f64 = 0.0;
        for (end, knot) in below.clone().enumerate() {
            for hollow in below.clone().take(end) {
                let line = crest.y + (knot.y - crest.y) * (hollow.x / knot.x);
                deepest = deepest.max(line - hollow.y);
            }
        }
        mm(deepest)
    }

    /// Volume of the whole socket apical of the level of the reference crest. Cubic millimetres.
    #[must_use]
    pub fn socket_volume(&self) -> Option<Mm3> {
        let ground = self.ground();
        mm3(*ground.socket_volume.get_or_init(|| volume::socket_beyond(&ground.solid, 0.0)))
    }

    /// Volume of the bone that the wall defects have removed (loss of crest height is not part of
    /// it). Cubic millimetres.
    #[must_use]
    pub fn wall_volume(&self) -> Option<Mm3> {
        let ground = self.ground();
        mm3(*ground.wall_volume.get_or_init(|| volume::removed(&ground.solid)))
    }

    /// The same of one wall; the two sum to the whole. Cubic millimetres.
    #[must_use]
    pub fn wall_volume_of(&self, wall: Wall) -> Option<Mm3> {
        mm3(volume::removed_from(&self.ground().solid, wall))
    }
}

/// The present mid-facial crest: z at which facial bone begins at x = 0, below any defect that is
/// open there; negative above the reference crest.
pub(super) fn present_crest(solid: &Solid) -> f64 {
    let mut level = solid.crest(Bone::Now, Wall::Facial, 0.0);
    let line = |cut: &crate::anatomy::solid::Cut| {
        polygon::line_within(&cut.shadow, P2::new(0.0, 0.0), P2::new(0.0, 1.0))
    };
    let facial = solid.cuts.iter().filter(|cut| cut.wall == Wall::Facial);
    let gone = facial.map(line).fold(Intervals::empty(), |all, one| all.union(&one));
    for part in gone.as_slice() {
        if part.from <= level + 1e-9 && level < part.to {
            level = part.to;
        }
    }
    level
}

/// Length of the stretch of bone that begins at a point, or where a hollow about it ends, along a
/// direction; nothing where none begins there.
pub(super) fn bone_from(solid: &Solid, bone: Bone, origin: P3, direction: V3) -> f64 {
    const HAIR: f64 = 1e-6;
    let ray = Ray { origin, direction };
    let start = solid.hollows.iter().find_map(|hollow| {
        hollow.ray(&ray).filter(|(from, to)| *from <= HAIR && 0.0 < *to).map(|(_, to)| to)
    });
    let drawn = [Wall::Facial, Wall::Oral].map(|wall| solid.face_knots(wall).last().copied());
    let bottom = drawn.into_iter().flatten().map(|knot| knot.x).fold(0.0, f64::max);
    let end = (bottom - ray.origin.z) / ray.direction.z.max(1e-3);
    let first = solid.bone(bone, &ray, 0.0, end.clamp(0.0, FAR)).as_slice().first().copied();
    let reaches = first.filter(|part| part.from <= start.unwrap_or(0.0) + HAIR);
    reaches.map_or(0.0, |part| part.to - part.from)
}

/// Thickness of a wall along y: bone between the socket's axis and the outer face, mm.
pub(super) fn plate_at(solid: &Solid, bone: Bone, wall: Wall, x: f64, z: f64) -> f64 {
    let middle = solid.socket.middle(wall, z);
    let direction = if wall == Wall::Facial { V3::FACIAL } else { -V3::FACIAL };
    let ray = Ray { origin: P3::new(x, middle, z), direction };
    solid.bone(bone, &ray, 0.0, FAR).length()
}

/// x between which a neighbour lies at z = 0, along x through its axis.
fn at_crest(beside: &Beside) -> Option<Interval> {
    let through = |origin: P3, along: V3| {
        let way = if along.z.abs() > 1e-9 { -origin.z / along.z } else { 0.0 };
        Ray { origin: origin + along * way, direction: V3::DISTAL }
    };
    let (ray, met) = match beside {
        Beside::Root(root) => {
            let ray = through(root.frame.origin, root.frame.along);
            (ray, root.ray(&ray).last())
        }
        Beside::Implant(cone) => {
            // An implant may stand below the crest; then its platform is what counts.
            let mut ray = through(cone.frame.origin, cone.frame.along);
            if cone.ray(&ray).is_empty() {
                ray = Ray { origin: cone.axis_at(1e-6), direction: V3::DISTAL };
            }
            (ray, cone.ray(&ray).last())
        }
        Beside::Absent => return None,
    };
    met.map(|part| Interval { from: ray.origin.x + part.from, to: ray.origin.x + part.to })
}

/// How far a face draws back towards the middle from its most prominent point above, apical of its
/// crest.
fn draw_back(solid: &Solid, wall: Wall) -> f64 {
    let outward = if wall == Wall::Facial { 1.0 } else { -1.0 };
    let crest = solid.crest(Bone::Unharmed, wall, 0.0);
    let mut most = outward * solid.face(wall, crest);
    let mut deepest: f64 = 0.0;
    for knot in solid.face_knots(wall).iter().filter(|knot| knot.x > crest) {
        most = most.max(outward * knot.y);
        deepest = deepest.max(most - outward * knot.y);
    }
    deepest
}

#[cfg(test)]
mod tests {
    use crate::anatomy::{Defect, DefectKind, Lesion, Neighbour, Wall};
    use crate::geometry::{Outline, P2};
    use crate::measure::Measurements;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn measured<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
        let plan = trial.plan();
        read(&Measurements::of(&trial.case, &plan))
    }

    fn close(found: Option<Mm>, expected: f64) -> bool {
        found.is_some_and(|found| (found.get() - expected).abs() < 1e-6)
    }

    fn facial_defect(trial: &mut Trial, tenths: &[[i32; 2]]) {
        trial.case.site.defects.push(Defect {
            wall: Wall::Facial,
            kind: DefectKind::DehiscenceU,
            outline: Outline::new(tenths.to_vec()).unwrap(),
        });
    }

    #[test]
    fn the_plain_site_has_the_lengths_it_was_drawn_with() {
        let trial = Trial::plain();
        assert!(close(measured(&trial, |m| m.socket_width()), 6.0));
        // From the mesial root's distal face at -5.5 to the distal root's mesial face at 5.3.
        assert!(close(measured(&trial, |m| m.mesiodistal_room()), 10.8));
        assert!(close(measured(&trial, |m| m.crest_loss()), 0.0));
        assert!(close(measured(&trial, |m| m.lingual_undercut()), 0.0));
        assert_eq!(measured(&trial, |m| m.facial_defect_depth()), None);
        // Facial face y = 4.2 - 0.7 z / 5.5; root 3.0 (1 - 0.0646...) at 1 mm, on its first frustum.
        let share = 1.0 - (1.0 - libm::pow(0.8, 0.3)) / 2.2;
        let plate = 4.2 - 0.7 / 5.5 - 3.0 * share;
        assert!(close(measured(&trial, |m| m.facial_plate()), plate));
    }

    #[test]
    fn a_dehiscence_takes_plate_and_crest_and_a_window_only_what_lies_under_it() {
        let mut trial = Trial::plain();
        facial_defect(&mut trial, &[[-20, 0], [20, 0], [20, 50], [-20, 50]]);
        assert!(close(measured(&trial, |m| m.facial_plate()), 0.0));
        let loss = measured(&trial, |m| m.crest_loss()).unwrap().get();
        assert!(loss < 5.0 && loss > 4.9, "{loss}");
        assert!(close(measured(&trial, |m| m.facial_defect_depth()), 5.0));
        assert!(close(measured(&trial, |m| m.facial_defect_width()), 4.0));

        let mut trial = Trial::plain();
        facial_defect(&mut trial, &[[-20, 30], [20, 30], [20, 50], [-20, 50]]);
        assert!(close(measured(&trial, |m| m.crest_loss()), 0.0));
        assert!(measured(&trial, |m| m.facial_plate()).unwrap() > Mm::new(1.0));
    }

    #[test]
    fn loss_of_crest_height_moves_the_level_at_which_the_plate_is_taken() {
        let mut trial = Trial::plain();
        for knot in &mut trial.case.site.ridge.crest.knots {
            knot.y += 3.0;
        }
        assert!(close(measured(&trial, |m| m.crest_loss()), 3.0));
        assert!(measured(&trial, |m| m.facial_plate()).unwrap() > Mm::new(0.9));
    }

    #[test]
    fn an_undercut_is_the_way_back_from_the_most_lingual_point() {
        let mut trial = Trial::plain();
        trial.case.site.ridge.oral.knots =
            vec![P2::new(-8.0, -4.2), P2::new(6.0, -7.0), P2::new(12.0, -4.5), P2::new(30.0, -6.0)];
        assert!(close(measured(&trial, |m| m.lingual_undercut()), 2.5));
    }

    #[test]
    fn a_concavity_is_measured_under_the_line_from_the_crest() {
        let trial = Trial::plain();
        // Line from (0, 4.2) to (30, 6.0); the face stands at 2.6 at z = 11.
        let line = 4.2 + 1.8 * 11.0 / 30.0;
        assert!(close(measured(&trial, |m| m.facial_concavity()), line - 2.6));
    }

    #[test]
    fn bone_beyond_the_apex_begins_beyond_a_lesion_and_ends_at_a_floor() {
        let mut trial = Trial::plain();
        trial.case.site.vital.floor = Some(crate::anatomy::Floor {
            kind: crate::anatomy::FloorKind::Nose,
            z: Mm::new(20.0),
            rise: 0.0,
        });
        assert!(close(measured(&trial, |m| m.bone_beyond_apex()), 9.0));
        trial.case.site.lesion = Lesion::Chronic { diameter: Mm::new(4.0) };
        assert!(close(measured(&trial, |m| m.bone_beyond_apex()), 7.0));
    }

    #[test]
    fn room_ends_at_the_crests_line_where_nothing_stands() {
        let mut trial = Trial::plain();
        trial.case.site.neighbours.distal = Neighbour::Absent;
        assert!(close(measured(&trial, |m| m.mesiodistal_room()), 17.5));
    }

    #[test]
    fn the_plate_agrees_with_a_march_over_the_sweep_of_levels() {
        let trial = Trial::plain();
        let solid = crate::anatomy::Solid::of(&trial.case.site);
        for i in 1..25 {
            let z = f64::from(i) * 0.4;
            let exact = super::plate_at(&solid, crate::anatomy::Bone::Now, Wall::Facial, 0.7, z);
            let marched = (0..8000)
                .filter(|j| solid.is_bone(crate::geometry::P3::new(0.7, f64::from(*j) * 1e-3, z)))
                .count();
            #[allow(clippy::cast_precision_loss)]
            let marched = marched as f64 * 1e-3;
            assert!((exact - marched).abs() < 3e-3, "{z} {exact} {marched}");
        }
    }
}
