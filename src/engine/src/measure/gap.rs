//! The gap between the implant and the walls of the socket.

use super::site::FAR;
use super::{FacialGap, Measurements, Opening, mm};
use crate::anatomy::{Bone, Solid, Wall};
use crate::geometry::{Cone, P3, Ray, V3};
use crate::plan::choices::GrainSize;
use crate::units::{Deg, Mm, Ratio};

/// The wall counts as present when bone is met this far apical of the crest or deeper, mm (ours):
/// exactly at the crest there is nothing yet.
const BELOW_CREST: f64 = 0.1;

impl Measurements<'_> {
    /// Facial gap. `None` without an implant in place. The crest is the mid-facial crest as it is
    /// now, wall defects filled in; the wall's inner face is the socket's.
    #[must_use]
    pub fn facial_gap(&self) -> Option<FacialGap> {
        *self.kept.facial_gap.get_or_init(|| facial_gap(&self.ground().solid, self.seated()?))
    }

    /// Largest grain of the graft against the facial gap. `None` without graft, implant or gap.
    #[must_use]
    pub fn grain_to_gap(&self) -> Option<Ratio> {
        let graft = self.plan.graft_laid()?;
        let largest = match graft.grains {
            GrainSize::Dust => 0.1,
            GrainSize::Small => 1.0,
            GrainSize::Large => 2.0,
        };
        let gap = self.facial_gap()?.width.get();
        if gap > 0.0 { Ratio::checked(largest / gap).ok() } else { None }
    }

    /// Gap in one direction: in the plane across the implant's axis, `depth` below its platform along
    /// the axis, from the outer thread cone to the first bone. Direction from facial (0) over distal
    /// (90) and oral (180) to mesial (270 degrees). `None` without an implant in place or beyond its
    /// ends.
    #[must_use]
    pub fn gap(&self, direction: Deg, depth: Mm) -> Option<Opening> {
        let cone = self.seated()?;
        let depth = depth.get();
        let within = 0.0 <= depth && depth <= cone.length;
        within.then(|| opening(&self.ground().solid, cone, cone.frame.radial(direction), depth))?
    }

    /// Gap all round at one depth, in `count` even steps from facial over distal.
    #[must_use]
    pub fn gap_around(&self, depth: Mm, count: u32) -> Vec<(Deg, Opening)> {
        (0..count)
            .filter_map(|turn| {
                let direction = Deg::new(360.0 * f64::from(turn) / f64::from(count));
                Some((direction, self.gap(direction, depth)?))
            })
            .collect()
    }

    /// Gap in one direction from the platform to the apex, at `count` (two or more) even depths.
    #[must_use]
    pub fn gap_profile(&self, direction: Deg, count: u32) -> Vec<(Mm, Opening)> {
        let Some(cone) = self.seated() else {
            return Vec::new();
        };
        let last = f64::from(count.max(2) - 1);
        (0..count.max(2))
            .filter_map(|step| {
                let depth = Mm::new(cone.length * (f64::from(step) / last));
                Some((depth, self.gap(direction, depth)?))
            })
            .collect()
    }
}

fn opening(solid: &Solid, cone: &Cone, side: V3, depth: f64) -> Option<Opening> {
    let ray = Ray { origin: cone.axis_at(depth), direction: side };
    let surface = cone.radius(depth);
    let met = solid.bone(Bone::Now, &ray, surface, surface + FAR);
    Some(match met.as_slice().first() {
        Some(part) => Opening::Bone(mm((part.from - surface).max(0.0))?),
        None if passes_above(solid, &ray, surface) => Opening::AboveCrest,
        None => Opening::Open,
    })
}

/// Whether a line that meets no bone leaves the ridge above its crest: walls that were whole would not
/// stop it either, it begins between the faces, and it is coronal of the crest where it begins or where
/// it comes to the face. Beside the implant the ridge is followed for as far as a neighbour may stand.
fn passes_above(solid: &Solid, ray: &Ray, surface: f64) -> bool {
    const BESIDE: f64 = 12.0;
    if !solid.bone(Bone::WallsWhole, ray, surface, surface + FAR).is_empty() {
        return false;
    }
    let start = ray.at(surface);
    let [facial, oral] = [Wall::Facial, Wall::Oral].map(|wall| solid.face(wall, start.z));
    if !(oral <= start.y && start.y <= facial) {
        return false;
    }
    let (wall, face) =
        if ray.direction.y < 0.0 { (Wall::Oral, oral) } else { (Wall::Facial, facial) };
    let away = (face - start.y) / ray.direction.y;
    let end = ray.at(surface + if away.is_finite() { away.clamp(0.0, BESIDE) } else { BESIDE });
    let crest = |wall, at: P3| solid.crest(Bone::Now, wall, at.x);
    start.z < crest(Wall::Facial, start).max(crest(Wall::Oral, start)) || end.z < crest(wall, end)
}

fn facial_gap(solid: &Solid, cone: &Cone) -> Option<FacialGap> {
    let crest = solid.crest(Bone::Now, Wall::Facial, 0.0);
    // The facial generator is the implant's outermost line; where a tilt carries its coronal end above
    // the crest it is taken at the crest.
    let line = cone.generator(cone.frame.facial);
    let rise = line.direction.z;
    let depth =
        if rise > 1e-9 { ((crest - line.origin.z) / rise).clamp(0.0, cone.length) } else { 0.0 };
    let surface = line.at(depth);
    let ray = Ray { origin: surface, direction: V3::FACIAL };
    let wall = solid.socket.as_slice().iter().filter_map(|body| body.ray(&ray).last());
    let wall = wall.map(|part| part.to).reduce(f64::max);
    // Beside the socket there is no gap: the implant stands in what was its wall.
    let width = wall.map_or(0.0, |wall| wall.max(0.0));
    let seen = P3::new(surface.x, surface.y, surface.z.max(crest + BELOW_CREST));
    let outward = Ray { origin: seen, direction: V3::FACIAL };
    let wall_present = !solid.bone(Bone::Now, &outward, 0.0, FAR).is_empty();
    Some(FacialGap { width: mm(width)?, wall_present })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::geometry::Outline;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;

    /// An upright implant of 4 mm in the middle of the plain socket, its platform at the crest.
    fn upright() -> Trial {
        let mut trial = Trial::plain();
        for (decision, count) in [
            (Decision::OffsetFacial, 0),
            (Decision::Depth, 0),
            (Decision::Tilt, 0),
            (Decision::Diameter, 40),
        ] {
            trial.number(decision, count);
        }
        trial
    }

    fn gap_of(trial: &Trial) -> FacialGap {
        let plan = trial.plan();
        Measurements::of(&trial.case, &plan).facial_gap().unwrap()
    }

    #[test]
    fn an_implant_in_the_middle_leaves_half_of_what_it_does_not_fill() {
        let gap = gap_of(&upright());
        assert!((gap.width.get() - 1.0).abs() < 1e-9 && gap.wall_present, "{gap:?}");
    }

    #[test]
    fn leaning_either_way_the_gap_begins_at_the_facial_rim_or_where_the_crest_cuts_the_surface() {
        for degrees in [-20, -8, -1, 0, 1, 8, 20] {
            let mut trial = upright();
            trial.number(Decision::Tilt, degrees);
            let (sin, cos) = libm::sincos(Deg::new(f64::from(degrees)).radians());
            let slope = -0.6 / 13.0;
            // The rim lies at y = 2 cos, z = -2 sin; above the crest the surface runs on to z = 0.
            let depth = (2.0 * sin / (cos - slope * sin)).max(0.0);
            let y = 2.0 * cos + depth * (sin + slope * cos);
            let z = -2.0 * sin + depth * (cos - slope * sin);
            let wall = 3.0 * (1.0 - (1.0 - libm::pow(0.8, 0.3)) / 2.2 * z);
            let gap = gap_of(&trial).width.get();
            assert!((gap - (wall - y)).abs() < 1e-9, "{degrees}: {gap}");
        }
    }

    #[test]
    fn the_gap_closes_as_the_platform_moves_facially_and_never_turns_negative() {
        let mut trial = upright();
        let mut last = Mm::new(9.0);
        for tenths in -30..=40 {
            trial.number(Decision::OffsetFacial, tenths);
            let gap = gap_of(&trial);
            let expected = (1.0 - f64::from(tenths) / 10.0).max(0.0);
            assert!((gap.width.get() - expected).abs() < 1e-9, "{tenths} {gap:?}");
            assert!(gap.width <= last);
            last = gap.width;
        }
    }

    #[test]
    fn a_lost_wall_leaves_the_width_and_takes_the_wall() {
        let mut trial = upright();
        trial.case.site.defects.push(Defect {
            wall: Wall::Facial,
            kind: DefectKind::DehiscenceU,
            outline: Outline::new(vec![[-20, 0], [20, 0], [20, 60], [-20, 60]]).unwrap(),
        });
        let gap = gap_of(&trial);
        assert!((gap.width.get() - 1.0).abs() < 1e-9 && !gap.wall_present, "{gap:?}");
    }

    #[test]
    fn a_platform_above_the_crest_is_measured_at_the_crest() {
        let mut trial = upright();
        trial.number(Decision::Depth, -20);
        // At the crest the cone has tapered by 2 mm of its 13.
        let expected = 3.0 - (2.0 - 0.6 * 2.0 / 13.0);
        assert!((gap_of(&trial).width.get() - expected).abs() < 1e-9);
    }

    #[test]
    fn the_gap_clock_reads_facially_what_the_facial_gap_reads() {
        let mut trial = upright();
        trial.number(Decision::Depth, 5);
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        let clock = m.gap_around(Mm::ZERO, 12);
        assert_eq!(clock.len(), 12);
        let Opening::Bone(facial) = clock[0].1 else { panic!("{clock:?}") };
        assert!((facial - m.facial_gap().unwrap().width).abs() < Mm::new(1e-9));
        let profile = m.gap_profile(Deg::ZERO, 14);
        assert_eq!(profile[0].1, clock[0].1);
        // The apex stands in bone.
        assert_eq!(profile[13].1, Opening::Bone(Mm::ZERO));
    }

    #[test]
    fn a_rim_above_the_oral_crest_is_told_from_a_lost_wall() {
        let mut trial = upright();
        trial.number(Decision::Depth, 2);
        let rim = |trial: &Trial, direction: f64| {
            let plan = trial.plan();
            Measurements::of(&trial.case, &plan).gap(Deg::new(direction), Mm::ZERO).unwrap()
        };
        assert!(matches!(rim(&trial, 180.0), Opening::Bone(_)));
        // The oral crest deeper than the facial one: the rim passes over it.
        trial.case.site.ridge.crest.oral_offset = Mm::new(0.8);
        assert_eq!(rim(&trial, 180.0), Opening::AboveCrest);
        assert!(matches!(rim(&trial, 0.0), Opening::Bone(_)));
        // Deep enough, it meets the wall; with that wall gone it is open.
        trial.number(Decision::Depth, 12);
        assert!(matches!(rim(&trial, 180.0), Opening::Bone(_)));
        trial
            .case
            .site
            .defects
            .push(crate::rules::regeneration::defect(Wall::Oral, DefectKind::DehiscenceU));
        assert_eq!(rim(&trial, 180.0), Opening::Open);
        // Wholly above the ridge no side meets bone, and none is missing.
        trial.number(Decision::Depth, -40);
        for direction in [0.0, 90.0, 180.0, 270.0] {
            assert_eq!(rim(&trial, direction), Opening::AboveCrest, "{direction}");
        }
    }

    #[test]
    fn an_implant_past_the_face_of_the_ridge_is_open_and_not_above() {
        let mut trial = upright();
        trial.number(Decision::OffsetFacial, 60).number(Decision::Depth, 40);
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        assert_eq!(m.gap(Deg::ZERO, Mm::ZERO), Some(Opening::Open));
    }

    #[test]
    fn a_grain_is_weighed_against_the_gap() {
        let trial = upright();
        let plan = trial.plan();
        let ratio = Measurements::of(&trial.case, &plan).grain_to_gap().unwrap();
        assert!((ratio.get() - 1.0).abs() < 1e-9);
    }
}
