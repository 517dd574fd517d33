//! Roots and implants as bodies.

use super::socket::{share, tapered};
use super::{Implanted, Neighbour, RootBody};
use crate::geometry::{Cone, Frame, P3, Stack};
use crate::units::{Deg, Mm};

/// Depths, as shares of the root's length below the reference crest, at which the sections of a root
/// body follow the taper exactly; between them it runs straight. The half ellipsoid begins at the
/// last. The depths are those at which `evidence: anatomy A8.2` states the law, and two between.
pub const ROOT_KNOTS: [f64; 6] = [0.0, 0.2, 0.5, 0.7, 0.8, 0.9];

/// Apical diameter of an implant over its platform diameter (ours: no maker's shape).
pub const APICAL_SHARE: f64 = 0.7;

/// Depth of an implant's thread, mm (ours). The bodies of this project are outer cones: the thread
/// lies within them.
pub const THREAD_DEPTH: Mm = Mm::new(0.4);

impl RootBody {
    /// Half-width at the depth `u` (share of the length below the reference crest) over the
    /// half-width at the crest: `(1 - u)^q`.
    #[must_use]
    pub fn share(&self, u: f64) -> f64 {
        share(self.taper, u)
    }

    /// The body: its frame's origin is the crossing of the axis with z = 0, local z runs along the
    /// axis apically, local x is the site's x made perpendicular to the axis and carries `half_md`,
    /// local y carries `half_fo`.
    #[must_use]
    pub fn stack(&self) -> Stack {
        let origin = P3::new(self.x.get(), self.y.get(), 0.0);
        let frame = Frame::leaning(origin, self.tilt, self.tip);
        let halves = [self.half_md.get(), self.half_fo.get()];
        tapered(frame, self.neck.get(), self.length, halves, self.taper)
    }

    /// y of the plane through the axis and parallel to x, at a level z, as (value at z = 0, slope).
    #[must_use]
    pub fn axis_plane(&self) -> (f64, f64) {
        (self.y.get(), libm::tan(self.tilt.radians()))
    }
}

/// The outer cone of an implant: platform diameter at its platform, 0.7 of it at its apex.
#[must_use]
pub fn implant_cone(platform: P3, diameter: Mm, length: Mm, tilt: Deg, tip: Deg) -> Cone {
    let near = 0.5 * diameter.get();
    Cone {
        frame: Frame::leaning(platform, tilt, tip),
        near,
        far: near * APICAL_SHARE,
        length: length.get(),
    }
}

impl Implanted {
    /// Its outer cone.
    #[must_use]
    pub fn cone(&self) -> Cone {
        implant_cone(self.platform, self.diameter, self.length, self.tilt, self.tip)
    }
}

/// A neighbour as a body.
#[derive(Debug, Clone, PartialEq)]
pub enum Beside {
    /// A root.
    Root(Stack),
    /// An implant.
    Implant(Cone),
    /// Nothing.
    Absent,
}

impl Beside {
    /// The body of a neighbour.
    #[must_use]
    pub fn of(neighbour: &Neighbour) -> Self {
        match neighbour {
            Neighbour::Root(root) => Self::Root(root.stack()),
            Neighbour::Implant(implant) => Self::Implant(implant.cone()),
            Neighbour::Absent => Self::Absent,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::ellipse;

    fn root(half_md: f64, half_fo: f64, length: f64, taper: f64) -> RootBody {
        RootBody {
            x: Mm::ZERO,
            y: Mm::ZERO,
            tilt: Deg::ZERO,
            tip: Deg::ZERO,
            length: Mm::new(length),
            neck: Mm::new(2.0),
            half_md: Mm::new(half_md),
            half_fo: Mm::new(half_fo),
            taper,
        }
    }

    #[test]
    fn half_widths_follow_the_taper_at_every_knot() {
        // evidence: anatomy A8.2, q 0.25: 0.95, 0.84, 0.67, 0.56 at 0.2, 0.5, 0.8, 0.9 (engineering,
        // two places).
        let stack = root(3.2, 3.2, 13.0, 0.25).stack();
        for (u, stated) in [(0.2, 0.95), (0.5, 0.84), (0.8, 0.67), (0.9, 0.56)] {
            assert!((stack.share(u * 13.0) - stated).abs() < 0.006, "{u}");
        }
    }

    #[test]
    fn a_root_without_taper_is_a_cylinder_with_half_an_ellipsoid() {
        let volume = root(2.0, 3.0, 10.0, 0.0).stack().volume_beyond(0.0);
        let expected = ellipse::area(2.0, 3.0) * (9.0 + 2.0 / 3.0);
        assert!((volume - expected).abs() < 1e-9);
    }

    #[test]
    fn root_areas_lie_near_the_classical_table() {
        // Classical areas in mm2 (Jepsen 1963, from memory) with the tooth widths and root lengths of
        // the handbook table (from memory) and q by kind; evidence: anatomy A8.1 and A8.2 ask for
        // within 20 % for a default root.
        for (md, bl, length, q, table) in [
            (6.4, 6.4, 13.0, 0.30, 204.0),
            (4.7, 5.8, 13.4, 0.30, 179.0),
            (5.6, 7.6, 16.5, 0.22, 273.0),
            (4.7, 8.1, 14.0, 0.25, 220.0),
            (5.2, 7.5, 15.9, 0.22, 268.0),
        ] {
            let area = root(md / 2.0, bl / 2.0, length, q).stack().area_beyond(0.0);
            assert!((area / table - 1.0).abs() < 0.2, "{area} {table}");
        }
    }

    #[test]
    fn the_body_of_a_neighbouring_implant_tapers_to_seven_tenths() {
        let implant = Implanted {
            platform: P3::new(8.0, 0.0, 1.0),
            diameter: Mm::new(4.0),
            length: Mm::new(10.0),
            tilt: Deg::ZERO,
            tip: Deg::ZERO,
        };
        let Beside::Implant(cone) = Beside::of(&Neighbour::Implant(implant)) else {
            panic!("an implant is an implant");
        };
        assert!((cone.radius(10.0) - 1.4).abs() < 1e-12);
        assert_eq!(Beside::of(&Neighbour::Absent), Beside::Absent);
    }
}
