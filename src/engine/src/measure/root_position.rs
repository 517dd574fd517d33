//! Where the root stands between the two cortices.

use super::Measurements;
use crate::anatomy::{Solid, Wall};
use crate::geometry::{P3, Ray, V3};
use crate::units::Ratio;

/// A root touches a cortex where this much bone or less, in mm, lies between it and the outer face:
/// the cortex itself with next to nothing behind it (our own figure; no source gives one).
pub const TOUCHES: f64 = 1.5;
/// Least share of its length over which a root touches both cortices in class IV (Kan 2011, from
/// memory).
const BOTH: f64 = 2.0 / 3.0;
/// Least share over which it touches one of them in classes I and III (ours; the source's words are
/// *against the cortex*).
const ONE: f64 = 1.0 / 3.0;

/// Sagittal position of a root (`ledger: class-kan-root`).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum RootClass {
    /// Against the facial cortex.
    I,
    /// Centred.
    II,
    /// Against the oral cortex.
    III,
    /// At least two thirds of it touch both.
    IV,
}

/// Levels that are looked at, evenly spread from the reference crest to the apex.
const LEVELS: u32 = 90;

impl Measurements<'_> {
    /// Share of the root's length, from the reference crest to the apex, at which both outer faces
    /// lie within `TOUCHES` of it, looking along y from its axis. Defects of the walls do not
    /// count: the faces are those of the ridge before any defect. `None` of several roots: the classes
    /// of sagittal position are those of a single one. Exact to one level in 90.
    #[must_use]
    pub fn root_between_cortices(&self) -> Option<Ratio> {
        let [_, _, both] = self.root_touches()?;
        Ratio::checked(both).ok()
    }

    /// Shares of the root's length over which it touches the facial cortex, the oral one, and both, as
    /// [`Self::root_between_cortices`] looks for it. `None` of several roots.
    pub(crate) fn root_touches(&self) -> Option<[f64; 3]> {
        let ground = self.ground();
        if ground.solid.socket.furcation().is_some() {
            return None;
        }
        *ground.touching.get_or_init(|| touching(&ground.solid))
    }

    /// Class of the root's sagittal position, by the shares of its length over which it touches either
    /// cortex, as [`Self::root_between_cortices`] looks for it. `None` of several roots.
    #[must_use]
    pub fn root_class(&self) -> Option<RootClass> {
        let [facial, oral, both] = self.root_touches()?;
        Some(if both >= BOTH {
            RootClass::IV
        } else if facial.max(oral) < ONE {
            RootClass::II
        } else if facial >= oral {
            RootClass::I
        } else {
            RootClass::III
        })
    }
}

/// Shares of the root's length over which it touches the facial cortex, the oral one, and both.
fn touching(solid: &Solid) -> Option<[f64; 3]> {
    let root = solid.socket.coronal()?;
    let apex = root.last_level();
    let touched = |wall: Wall, at: P3| {
        let out = if wall == Wall::Facial { 1.0 } else { -1.0 };
        let ray = Ray { origin: at, direction: V3::new(0.0, out, 0.0) };
        let surface = root.ray(&ray).last().map_or(0.0, |span| span.to.max(0.0));
        let face = out * (solid.face(wall, at.z) - at.y);
        face - surface <= TOUCHES
    };
    let mut counts = [0_u32; 3];
    for level in 0..LEVELS {
        let along = apex * (f64::from(level) + 0.5) / f64::from(LEVELS);
        let at = root.frame.point(V3::new(0.0, 0.0, along));
        let [facial, oral] = [Wall::Facial, Wall::Oral].map(|wall| touched(wall, at));
        for (count, met) in counts.iter_mut().zip([facial, oral, facial && oral]) {
            *count += u32::from(met);
        }
    }
    Some(counts.map(|count| f64::from(count) / f64::from(LEVELS)))
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
        of(level, [4.0, 4.0], |m| m.root_between_cortices().unwrap().get())
    }

    /// The same with faces that stand so far out facially and orally, and what is asked of it.
    fn of<T>(level: f64, outs: [f64; 2], ask: fn(&Measurements<'_>) -> T) -> T {
        let mut trial = Trial::plain();
        let site = &mut trial.case.site;
        let root = site.socket.only_mut().unwrap();
        (root.length, root.half_fo, root.taper) = (Mm::new(10.0), Mm::new(3.0), 0.0);
        let face = |sign: f64, out: f64| {
            [(-8.0, out), (level, out), (level + 0.01, 9.0), (30.0, 9.0)]
                .map(|(z, y)| P2::new(z, sign * y))
                .to_vec()
        };
        site.ridge.facial.knots = face(1.0, outs[0]);
        site.ridge.oral.knots = face(-1.0, outs[1]);
        let plan = trial.plan();
        ask(&Measurements::of(&trial.case, &plan))
    }

    #[test]
    fn a_root_is_classed_by_the_cortex_it_touches() {
        use crate::measure::RootClass::{I, II, III, IV};
        for (level, outs, class) in [
            (8.0, [4.0, 8.0], I),
            (8.0, [8.0, 4.0], III),
            (8.0, [8.0, 8.0], II),
            (2.0, [4.0, 8.0], II),
            (8.0, [4.0, 4.0], IV),
            (6.0, [4.0, 4.0], I),
        ] {
            assert_eq!(of(level, outs, |m| m.root_class()), Some(class), "{level} {outs:?}");
        }
        let molar = Trial::molar();
        let plan = molar.plan();
        assert_eq!(Measurements::of(&molar.case, &plan).root_class(), None);
    }

    #[test]
    fn a_narrow_ridge_touches_as_far_as_it_is_narrow() {
        assert!((share(6.0) - 0.6).abs() < 0.02, "{}", share(6.0));
        assert!((share(3.0) - 0.3).abs() < 0.02, "{}", share(3.0));
        assert!(share(-7.0) < 1e-9);
    }
}
