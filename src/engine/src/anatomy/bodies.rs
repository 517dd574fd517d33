//! The bodies of the socket within the solid site, by what is asked of them.

use super::{Map, Socket, Wall};
use crate::geometry::{Frame, Interval, Knot, P2, P3, Stack, V3, polygon};

/// The socket's bodies. Apical of the furcation they do not meet; coronal of it the roots lie within
/// the trunk.
#[derive(Debug, Clone, PartialEq)]
pub struct Bodies {
    /// The body that crosses the crest, then the roots of a trunk.
    all: Vec<Stack>,
    /// x between which each lies.
    pub(super) reach: Vec<Interval>,
    /// y between which each lies.
    depth: Vec<Interval>,
    /// Level of the furcation; `None` of one root.
    furcation: Option<f64>,
    /// Where the facial and the oral wall are looked at from.
    middles: [Middle; 2],
    /// Which roots stand against the facial and the oral wall.
    against: [core::ops::Range<usize>; 2],
}

/// A plane parallel to x: y = `y` + `slope` (z - `z`).
#[derive(Debug, Clone, Copy, PartialEq)]
struct Middle {
    y: f64,
    slope: f64,
    z: f64,
}

impl Middle {
    fn of(socket: &Socket, all: &[Stack], wall: Wall) -> Self {
        match (socket, all.first()) {
            (Socket::One(_), Some(root)) => {
                let (origin, along) = (root.frame.origin, root.frame.along);
                Self { y: origin.y, slope: along.y / along.z, z: origin.z }
            }
            _ => {
                let (y, slope) = socket.plane(wall);
                Self { y, slope, z: 0.0 }
            }
        }
    }
}

impl Bodies {
    /// Of a socket.
    #[must_use]
    pub fn of(socket: &Socket) -> Self {
        let all = socket.bodies();
        Self {
            reach: all.iter().map(|body| super::solid::reach_of(body, V3::DISTAL)).collect(),
            depth: all.iter().map(|body| super::solid::reach_of(body, V3::FACIAL)).collect(),
            furcation: socket.furcation().map(crate::units::Mm::get),
            middles: [Wall::Facial, Wall::Oral].map(|wall| Middle::of(socket, &all, wall)),
            against: [Wall::Facial, Wall::Oral].map(|wall| socket.against(wall)),
            all,
        }
    }

    /// All of them.
    #[must_use]
    pub fn as_slice(&self) -> &[Stack] {
        &self.all
    }

    /// x and y between which each lies.
    pub fn reaches(&self) -> impl Iterator<Item = [Interval; 2]> + '_ {
        self.reach.iter().zip(&self.depth).map(|(x, y)| [*x, *y])
    }

    /// All of them, each with the level from which on it counts where none may count twice.
    pub fn apart(&self) -> impl Iterator<Item = (&Stack, f64)> {
        let furcation = self.furcation.unwrap_or(f64::NEG_INFINITY);
        self.all
            .iter()
            .enumerate()
            .map(move |(i, body)| (body, if i == 0 { f64::NEG_INFINITY } else { furcation }))
    }

    /// The body that crosses the crest: the root of a tooth with one, otherwise the trunk. A site
    /// without any is refused at the border.
    #[must_use]
    pub fn coronal(&self) -> Option<&Stack> {
        self.all.first()
    }

    /// The roots, each with an apex of its own.
    #[must_use]
    pub fn roots(&self) -> &[Stack] {
        &self.all[usize::from(self.furcation.is_some() && !self.all.is_empty())..]
    }

    /// Level of the furcation; `None` of one root.
    #[must_use]
    pub const fn furcation(&self) -> Option<f64> {
        self.furcation
    }

    /// Level of the deepest apex; `None` of nothing.
    #[must_use]
    pub fn deepest(&self) -> Option<f64> {
        self.roots().iter().map(|root| root.apex().z).reduce(f64::max)
    }

    /// y at a level from which a wall is looked at: in the axis of the root, of several in the plane
    /// of the axes of those against that wall.
    #[must_use]
    pub fn middle(&self, wall: Wall, z: f64) -> f64 {
        let Middle { y, slope, z: at } = self.middles[usize::from(wall == Wall::Oral)];
        y + slope * (z - at)
    }

    /// x of the places at which the thickness of a wall is looked at: 0, but below the furcation the
    /// axes of the roots against that wall.
    #[must_use]
    pub fn over(&self, wall: Wall, z: f64) -> Vec<f64> {
        if self.furcation.is_none_or(|furcation| z < furcation) {
            return vec![0.0];
        }
        let against = self.against[usize::from(wall == Wall::Oral)].clone();
        let x = |root: &Stack| {
            let (origin, along) = (root.frame.origin, root.frame.along);
            origin.x + along.x / along.z * (z - origin.z)
        };
        self.roots()[against].iter().map(x).collect()
    }

    /// The socket seen from the facial side, on the map, down to half of its depth there: of several
    /// roots the trunk's and the facial roots' outlines with what lies between them.
    #[must_use]
    pub fn facial_outline(&self, map: &Map) -> Vec<P2> {
        let facial = &self.roots()[self.against[0].clone()];
        let deepest =
            facial.iter().map(|root| root.frame.origin.z + root.last_level() * root.frame.along.z);
        let half = 0.5 * deepest.fold(0.0, f64::max);
        let outline = match self.furcation {
            None => self.coronal().map_or_else(Vec::new, |root| map.root_outline(root)),
            Some(_) => {
                let seen = self.coronal().into_iter().chain(facial);
                polygon::hull(seen.flat_map(|body| map.root_outline(body)).collect())
            }
        };
        let end = map.t(Wall::Facial, half);
        polygon::clipped(&polygon::clipped(&outline, |p| p.y), |p| end - p.y)
    }

    /// What stands under the trunk: its section with the furcation, carried on along z to the level of
    /// the shallowest apex. Bone in it is the septum. `None` of one root.
    #[must_use]
    pub fn under_trunk(&self) -> Option<Stack> {
        let (from, trunk) = (self.furcation?, self.coronal()?);
        let to = self.roots().iter().map(|root| root.apex().z).reduce(f64::min)?;
        let share = trunk.share(from);
        let knots = [from, to.max(from)].map(|at| Knot { at, share });
        let frame = Frame::on_axis(P3::new(0.0, 0.0, 0.0), V3::APICAL);
        Some(Stack::new(frame, trunk.across, trunk.facial, knots.to_vec(), 0.0))
    }

    /// Middle of the roots' axes at a level; `None` of one root.
    #[must_use]
    pub fn between(&self, z: f64) -> Option<P3> {
        self.furcation?;
        let (mut x, mut y, mut count) = (0.0, 0.0, 0.0);
        for root in self.roots() {
            let (origin, along) = (root.frame.origin, root.frame.along);
            let way = (z - origin.z) / along.z;
            x += origin.x + along.x * way;
            y += origin.y + along.y * way;
            count += 1.0;
        }
        Some(P3::new(x / count, y / count, z))
    }
}
