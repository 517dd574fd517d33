//! Where the root stands between the two cortices.

use super::Measurements;
use crate::anatomy::{Solid, Wall};
use crate::geometry::{P3, Ray, V3};
use crate::units::Ratio;

/// A root touches a cortex where this much bone or less, in mm, lies between it and the outer face:
/// the cortex itself with next to nothing behind it (our own figure; no source gives one).
pub const TOUCHES: f64 = 1.5;
/// Levels that are looked at, evenly spread from the reference crest to the apex.
const LEVELS: u32 = 90;

impl Measurements<'_> {
    /// Share of the root's length, from the reference crest to the apex, at which both outer faces
    /// lie within `TOUCHES` of it, looking along y from its axis. Defects of the walls do not
    /// count: the faces are those of the ridge before any defect. `None` of several roots: the classes
    /// of sagittal position are those of a single one. Exact to one level in 90.
    #[must_use]
    pub fn root_between_cortices(&self) -> Option<Ratio> {
        let ground = self.ground();
        if ground.solid.socket.furcation().is_some() {
            return None;
        }
        let share = ground.between_cortices.get_or_init(|| share_between(&ground.solid));
        Ratio::checked((*share)?).ok()
    }
}

fn share_between(solid: &Solid) -> Option<f64> {
    let root = solid.socket.coronal()?;
    let apex = root.last_level();
    let touched = |wall: Wall, at: P3| {
        let out = if wall == Wall::Facial { 1.0 } else { -1.0 };
        let ray = Ray { origin: at, direction: V3::new(0.0, out, 0.0) };
        let surface = root.ray(&ray).last().map_or(0.0, |span| span.to.max(0.0));
        let face = out * (solid.face(wall, at.z) - at.y);
        face - surface <= TOUCHES
    };
    let both = (0..LEVELS)
        .map(|level| apex * (f64::from(level) + 0.5) / f64::from(LEVELS))
        .map(|along| root.frame.point(V3::new(0.0, 0.0, along)))
        .filter(|at| touched(Wall::Facial, *at) && touched(Wall::Oral, *at))
        .count();
    let both = u32::try_from(both).unwrap_or(LEVELS);
    Some(f64::from(both) / f64::from(LEVELS))
}

#[cfg(test)]
mod tests {
    use crate::geometry::P2;
    use crate::measure::Measurements;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    /// Share of a straight root of 10 mm, 3 mm to either side, in a ridge whose faces stand 4 mm out
    /// down to this level and 9 mm out below it.
    fn share(level: f64) -> f64 {
        let mut trial = Trial::plain();
        let site = &mut trial.case.site;
        let root = site.socket.only_mut().unwrap();
        (root.length, root.half_fo, root.taper) = (Mm::new(10.0), Mm::new(3.0), 0.0);
        let face = |out: f64| {
            [(-8.0, 4.0), (level, 4.0), (level + 0.01, 9.0), (30.0, 9.0)]
                .map(|(z, y)| P2::new(z, out * y))
                .to_vec()
        };
        site.ridge.facial.knots = face(1.0);
        site.ridge.oral.knots = face(-1.0);
        let plan = trial.plan();
        Measurements::of(&trial.case, &plan).root_between_cortices().unwrap().get()
    }

    #[test]
    fn a_narrow_ridge_touches_as_far_as_it_is_narrow() {
        assert!((share(6.0) - 0.6).abs() < 0.02, "{}", share(6.0));
        assert!((share(3.0) - 0.3).abs() < 0.02, "{}", share(3.0));
        assert!(share(-7.0) < 1e-9);
    }
}
