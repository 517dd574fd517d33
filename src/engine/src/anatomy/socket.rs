//! The room that the roots of a tooth leave: one root, or a trunk that parts into two or three.
//!
//! A tooth with several roots has its frame by its trunk: the trunk stands along z about the origin.
//! It ends at the *furcation*, a level of z; each root begins there with an axis of its own. A root
//! body runs on a little way coronally, inside the trunk, so that a leaning root leaves no wedge
//! between; the socket is the union of them all.

use super::Wall;
use super::body::ROOT_KNOTS;
use crate::geometry::{Frame, Knot, P3, Stack, V3, convex};
use crate::units::{Deg, Mm};
use core::f64::consts::TAU;
use serde::{Deserialize, Serialize};

/// Least bone between two roots of one tooth, mm (ours): a border, no measurement.
const LEAST_BETWEEN: f64 = 0.2;
/// How far coronally of the furcation the lowest point of a root body's end lies, mm (ours).
const INSIDE_TRUNK: f64 = 0.02;

/// The union of root bodies, with a trunk where there are several.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Socket {
    /// One root from neck to apex: a list of one, as packed cases have always had it.
    #[serde(rename = "roots")]
    One([RootBody; 1]),
    /// A trunk that parts.
    #[serde(rename = "parted")]
    Parted(Parted),
}

/// A root: a stack of elliptic frusta on a straight axis, closed by a half ellipsoid.
///
/// Half-widths follow r(u) = r0 (1 - u)^q with u = depth below the reference crest / length (the
/// taper law of `evidence: anatomy A8.2`), taken at fixed knots u; above the crest (to the neck of
/// the tooth) the widths of the crest go on unchanged.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RootBody {
    /// Where the axis crosses the level of the reference crest (z = 0).
    pub x: Mm,
    /// The same, facially.
    pub y: Mm,
    /// Apex facially positive.
    pub tilt: Deg,
    /// Apex distally positive.
    pub tip: Deg,
    /// From the reference crest to the apex, along the axis.
    pub length: Mm,
    /// From the reference crest up to the neck of the tooth, along the axis.
    pub neck: Mm,
    /// Half the mesiodistal width at the crest.
    pub half_md: Mm,
    /// Half the faciooral width at the crest.
    pub half_fo: Mm,
    /// Exponent q of the taper, 0 to 1.
    pub taper: f64,
}

/// A trunk and the two or three roots that leave it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Parted {
    /// From the neck to the furcation.
    pub trunk: Trunk,
    /// From the furcation on.
    pub roots: Roots,
}

/// The undivided part: an elliptic frustum about z from the neck to the furcation.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Trunk {
    /// From the reference crest up to the neck.
    pub neck: Mm,
    /// From the reference crest down to the furcation.
    pub furcation: Mm,
    /// Half the mesiodistal width at the neck.
    pub half_md: Mm,
    /// Half the faciooral width at the neck.
    pub half_fo: Mm,
    /// Widths at the furcation over those at the neck, above 0 to 1.
    pub narrowing: f64,
}

/// The roots of one trunk, each in its place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Roots {
    /// Facial, palatal: upper premolars.
    FacialPalatal([Branch; 2]),
    /// Mesial, distal: lower molars.
    MesialDistal([Branch; 2]),
    /// Mesiofacial, distofacial, palatal: upper molars.
    Three([Branch; 3]),
}

/// One of several roots: the body of [`RootBody`] with the furcation in place of the crest, and no
/// neck of its own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Branch {
    /// Where the axis crosses the level of the furcation.
    pub x: Mm,
    /// The same, facially.
    pub y: Mm,
    /// Apex facially positive.
    pub tilt: Deg,
    /// Apex distally positive.
    pub tip: Deg,
    /// From the furcation to the apex, along the axis.
    pub length: Mm,
    /// Half the mesiodistal width at the furcation.
    pub half_md: Mm,
    /// Half the faciooral width at the furcation.
    pub half_fo: Mm,
    /// Exponent q of the taper, 0 to 1.
    pub taper: f64,
}

/// Where a root stands in its tooth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum RootName {
    /// The only one.
    Single,
    /// Of a lower molar.
    Mesial,
    /// Of a lower molar.
    Distal,
    /// Of an upper premolar.
    Facial,
    /// Of an upper molar.
    Mesiofacial,
    /// Of an upper molar.
    Distofacial,
    /// Of upper premolars and molars.
    Palatal,
}

/// What crosses the reference crest: the root, or the trunk of several.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coronal {
    /// Where its axis crosses the level of the crest.
    pub x: Mm,
    /// The same, facially.
    pub y: Mm,
    /// From the crest up to the neck of the tooth.
    pub neck: Mm,
    /// Half the mesiodistal width at the crest.
    pub half_md: Mm,
    /// Half the faciooral width at the crest.
    pub half_fo: Mm,
}

impl RootName {
    /// As files and words give it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Single => "single",
            Self::Mesial => "mesial",
            Self::Distal => "distal",
            Self::Facial => "facial",
            Self::Mesiofacial => "mesiofacial",
            Self::Distofacial => "distofacial",
            Self::Palatal => "palatal",
        }
    }
}

impl Roots {
    /// All of them, in the order of [`Self::names`].
    #[must_use]
    pub const fn as_slice(&self) -> &[Branch] {
        match self {
            Self::FacialPalatal(two) | Self::MesialDistal(two) => two,
            Self::Three(three) => three,
        }
    }

    /// What they are called.
    #[must_use]
    pub const fn names(&self) -> &'static [RootName] {
        match self {
            Self::FacialPalatal(_) => &[RootName::Facial, RootName::Palatal],
            Self::MesialDistal(_) => &[RootName::Mesial, RootName::Distal],
            Self::Three(_) => &[RootName::Mesiofacial, RootName::Distofacial, RootName::Palatal],
        }
    }

    /// Which of them stand against a wall.
    fn against(&self, wall: Wall) -> core::ops::Range<usize> {
        match (self, wall) {
            (Self::MesialDistal(_), _) => 0..2,
            (Self::FacialPalatal(_), Wall::Facial) => 0..1,
            (Self::FacialPalatal(_), Wall::Oral) => 1..2,
            (Self::Three(_), Wall::Facial) => 0..2,
            (Self::Three(_), Wall::Oral) => 2..3,
        }
    }
}

impl Trunk {
    /// The trunk as a body; it ends flat.
    #[must_use]
    pub fn stack(&self) -> Stack {
        let frame = Frame::on_axis(P3::new(0.0, 0.0, 0.0), V3::APICAL);
        let (neck, furcation) = (self.neck.get(), self.furcation.get().max(1e-3));
        let knots =
            [(-neck, 1.0), (furcation, self.narrowing)].map(|(at, share)| Knot { at, share });
        Stack::new(frame, self.half_md.get(), self.half_fo.get(), knots.to_vec(), 0.0)
    }
}

impl Branch {
    /// The body, its frame's origin where the axis crosses the furcation.
    #[must_use]
    pub fn stack(&self, furcation: Mm) -> Stack {
        let origin = P3::new(self.x.get(), self.y.get(), furcation.get());
        let frame = Frame::leaning(origin, self.tilt, self.tip);
        let (half_md, half_fo) = (self.half_md.get(), self.half_fo.get());
        // How far the lowest point of a section lies apical of its middle.
        let lean = libm::hypot(half_md * frame.across.z, half_fo * frame.facial.z);
        let runs_on = (lean + INSIDE_TRUNK) / frame.along.z.max(0.1);
        tapered(frame, runs_on, self.length, [half_md, half_fo], self.taper)
    }

    /// The same as a root of its own, its widths and its length counted from the furcation.
    #[must_use]
    pub fn as_root(&self) -> RootBody {
        RootBody {
            x: self.x,
            y: self.y,
            tilt: self.tilt,
            tip: self.tip,
            length: self.length,
            neck: Mm::ZERO,
            half_md: self.half_md,
            half_fo: self.half_fo,
            taper: self.taper,
        }
    }
}

/// A body whose widths follow the taper from its frame's origin on, and go on unchanged `before` it.
pub(super) fn tapered(
    frame: Frame,
    before: f64,
    length: Mm,
    halves: [f64; 2],
    taper: f64,
) -> Stack {
    let length = length.get().max(0.1);
    let mut knots = Vec::with_capacity(ROOT_KNOTS.len() + 1);
    if before > 0.0 {
        knots.push(Knot { at: -before, share: 1.0 });
    }
    knots.extend(ROOT_KNOTS.map(|u| Knot { at: u * length, share: share(taper, u) }));
    let cap = (1.0 - ROOT_KNOTS[ROOT_KNOTS.len() - 1]) * length;
    Stack::new(frame, halves[0], halves[1], knots, cap)
}

/// Half-width at the depth `u` (share of the length) over the half-width where the taper begins:
/// `(1 - u)^q`.
pub(super) fn share(taper: f64, u: f64) -> f64 {
    libm::pow((1.0 - u).clamp(0.0, 1.0), taper.clamp(0.0, 1.0))
}

impl Socket {
    /// Of one root.
    #[must_use]
    pub const fn one(root: RootBody) -> Self {
        Self::One([root])
    }

    /// The only root; `None` of several.
    #[must_use]
    pub const fn only(&self) -> Option<&RootBody> {
        match self {
            Self::One([root]) => Some(root),
            Self::Parted(_) => None,
        }
    }

    /// The same, to be changed.
    pub const fn only_mut(&mut self) -> Option<&mut RootBody> {
        match self {
            Self::One([root]) => Some(root),
            Self::Parted(_) => None,
        }
    }

    /// The bodies whose union is the socket: the one that crosses the crest first.
    #[must_use]
    pub fn bodies(&self) -> Vec<Stack> {
        match self {
            Self::One([root]) => vec![root.stack()],
            Self::Parted(Parted { trunk, roots }) => {
                let roots = roots.as_slice().iter().map(|root| root.stack(trunk.furcation));
                core::iter::once(trunk.stack()).chain(roots).collect()
            }
        }
    }

    /// The roots, each with the level at which its axis, widths and length begin.
    #[must_use]
    pub fn roots(&self) -> Vec<(f64, RootBody)> {
        match self {
            Self::One([root]) => vec![(0.0, root.clone())],
            Self::Parted(Parted { trunk, roots }) => {
                let at = trunk.furcation.get();
                roots.as_slice().iter().map(|root| (at, root.as_root())).collect()
            }
        }
    }

    /// What the roots are called.
    #[must_use]
    pub const fn names(&self) -> &'static [RootName] {
        match self {
            Self::One(_) => &[RootName::Single],
            Self::Parted(parted) => parted.roots.names(),
        }
    }

    /// Which of the roots stand against a wall, as places in [`Self::names`].
    #[must_use]
    pub fn against(&self, wall: Wall) -> core::ops::Range<usize> {
        match self {
            Self::One(_) => 0..1,
            Self::Parted(parted) => parted.roots.against(wall),
        }
    }

    /// Level of the furcation; `None` of one root.
    #[must_use]
    pub const fn furcation(&self) -> Option<Mm> {
        match self {
            Self::One(_) => None,
            Self::Parted(parted) => Some(parted.trunk.furcation),
        }
    }

    /// What crosses the crest.
    #[must_use]
    pub fn coronal(&self) -> Coronal {
        match self {
            Self::One([root]) => Coronal {
                x: root.x,
                y: root.y,
                neck: root.neck,
                half_md: root.half_md,
                half_fo: root.half_fo,
            },
            Self::Parted(Parted { trunk, .. }) => {
                let (neck, below) = (trunk.neck.get(), trunk.furcation.get());
                let share = 1.0 - (1.0 - trunk.narrowing) * neck / (neck + below).max(1e-3);
                Coronal {
                    x: Mm::ZERO,
                    y: Mm::ZERO,
                    neck: trunk.neck,
                    half_md: trunk.half_md * share,
                    half_fo: trunk.half_fo * share,
                }
            }
        }
    }

    /// One root in place of several, for drawings that know of one: as wide as the trunk at the crest,
    /// as long as the longest.
    #[must_use]
    pub fn as_one(&self) -> RootBody {
        match self {
            Self::One([root]) => root.clone(),
            Self::Parted(_) => {
                let Coronal { x, y, neck, half_md, half_fo } = self.coronal();
                let ends = self.roots().into_iter().map(|(from, root)| root.length + Mm::new(from));
                let length = ends.fold(Mm::ZERO, |most, one| if one > most { one } else { most });
                let (tilt, tip, taper) = (Deg::ZERO, Deg::ZERO, 0.25);
                RootBody { x, y, tilt, tip, length, neck, half_md, half_fo, taper }
            }
        }
    }

    /// y of the plane parallel to x through the axes of the roots against a wall (their mean), as
    /// (value at z = 0, slope): as far inwards as a defect of that wall takes bone where it meets no
    /// root.
    #[must_use]
    pub fn plane(&self, wall: Wall) -> (f64, f64) {
        match self {
            Self::One([root]) => root.axis_plane(),
            Self::Parted(Parted { trunk, roots }) => {
                let (mut level, mut slope, mut count) = (0.0, 0.0, 0.0);
                for root in &roots.as_slice()[roots.against(wall)] {
                    let lean = libm::tan(root.tilt.radians());
                    level += root.y.get() - lean * trunk.furcation.get();
                    slope += lean;
                    count += 1.0;
                }
                (level / count, slope / count)
            }
        }
    }
}

impl Parted {
    /// Why this is no tooth: a root that leaves the trunk through its side, or two that meet. `None`
    /// where all is well.
    #[must_use]
    pub fn fault(&self) -> Option<&'static str> {
        let trunk = self.trunk.stack();
        let bodies: Vec<Stack> =
            self.roots.as_slice().iter().map(|root| root.stack(self.trunk.furcation)).collect();
        if bodies.iter().any(|root| !begins_within(root, &trunk)) {
            return Some("a root would begin beside its trunk");
        }
        let meet = |a: &Stack, b: &Stack| {
            let gaps = [
                convex::distance(&a.frusta(), &b.frusta()),
                convex::distance(&a.frusta(), &b.cap()),
                convex::distance(&a.cap(), &b.frusta()),
                convex::distance(&a.cap(), &b.cap()),
            ];
            gaps.into_iter().any(|gap| gap < LEAST_BETWEEN)
        };
        let pairs = bodies.iter().enumerate();
        let meet = pairs.flat_map(|(i, a)| bodies[..i].iter().map(move |b| meet(a, b)));
        meet.into_iter().any(|meets| meets).then_some("two roots of the tooth would meet")
    }
}

/// Whether what a root has coronal of the furcation lies in the trunk: its end and its section with
/// the furcation, and so all between.
fn begins_within(root: &Stack, trunk: &Stack) -> bool {
    const CORNERS: u32 = 48;
    const HAIR: f64 = 1e-4;
    let furcation = trunk.knots().last().map_or(0.0, |knot| knot.at);
    let first = root.first_level();
    let along = root.frame.along;
    (0..CORNERS).all(|corner| {
        let (sin, cos) = libm::sincos(TAU * f64::from(corner) / f64::from(CORNERS));
        let side =
            root.frame.across * (root.across * cos) + root.frame.facial * (root.facial * sin);
        let end = root.frame.point(V3::new(0.0, 0.0, first)) + side;
        // Above the origin the body is a cylinder: its lines run along the axis.
        let down = end + along * ((furcation - HAIR - end.z) / along.z);
        trunk.contains(end) && trunk.contains(down)
    })
}
