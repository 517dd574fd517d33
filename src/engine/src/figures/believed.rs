//! The site as the learner may imagine it: what has been seen is true, everything else is a plain
//! supposition that owes nothing to the truth.
//!
//! Figures draw this site and never the true one, so that an outline cannot give away what nobody
//! has looked at.

use super::Show;
use crate::anatomy::{
    Density, DensityClass, Lesion, Neighbour, Profile, RootBody, Side, Site, Socket, Solid, Wall,
};
use crate::chart::Fact;
use crate::geometry::{P2, P3, polyline};
use crate::plan::choices::Examination;
use crate::units::{Deg, Mm};
use std::borrow::Cow;

/// Whether a part is drawn as it is or as it is supposed to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sight {
    /// Seen: drawn firmly, to measure.
    Seen,
    /// Not seen: drawn dashed, from what everybody knows of such a tooth.
    Supposed,
}

impl Sight {
    fn of(seen: bool) -> Self {
        if seen { Self::Seen } else { Self::Supposed }
    }

    /// Whether it has been seen.
    pub(super) fn is_seen(self) -> bool {
        self == Self::Seen
    }
}

/// A site to draw, and what of it has been seen.
#[derive(Debug)]
pub(super) struct Believed<'a> {
    /// The site to draw.
    pub site: Cow<'a, Site>,
    /// Outer form of the ridge.
    pub ridge: Sight,
    /// Whether the facial wall is whole.
    pub facial_wall: Sight,
    /// How thick the facial plate is.
    pub facial_plate: Sight,
    /// Whether the oral wall is whole.
    pub oral_wall: Sight,
    /// Root, or the socket that it left.
    pub root: Sight,
    /// Level of the crest.
    pub crest: Sight,
    /// Roots of the neighbours.
    pub neighbours: Sight,
    /// Thickness of the gum.
    pub gum: Sight,
}

/// Suppositions: round figures of ours for a tooth about which nothing is known.
const HALF_DEPTH: f64 = 3.2;
const LENGTH: f64 = 13.0;
const PLATE: f64 = 1.0;
const PEAK: f64 = 2.5;
const GUM: f64 = 1.5;
/// Share of a crown's width that its neck has.
const NECK: f64 = 0.38;

impl<'a> Believed<'a> {
    /// What may be drawn of the case that is shown.
    pub(super) fn of(show: &Show<'a>) -> Self {
        let truth = &show.case.site;
        let seen = |fact| Sight::of(show.reveal || show.known.is_seen(fact));
        let mut believed = Self {
            site: Cow::Borrowed(truth),
            ridge: seen(Fact::RidgeForm),
            facial_wall: seen(Fact::FacialWall),
            facial_plate: seen(Fact::FacialThickness),
            oral_wall: seen(Fact::OralWall),
            root: seen(Fact::RootForm),
            crest: seen(Fact::CrestLevel),
            neighbours: seen(Fact::NeighbourRoots),
            gum: seen(Fact::GumThickness),
        };
        if show.reveal {
            return believed;
        }
        // A film shows how long the root is, not how it leans in the section.
        let in_hand = show.plan.extraction.is_some();
        let in_section = show
            .plan
            .examined
            .as_ref()
            .is_some_and(|done| done.examinations.has(Examination::Sections));
        let film_only = believed.root.is_seen() && !in_hand && !in_section;
        let length = film_only.then_some(show.case.readings.film_root_length);
        if film_only {
            believed.root = Sight::Supposed;
        }
        let mut site = truth.clone();
        if !believed.root.is_seen() {
            site.socket = Socket::one(supposed_root(truth, length));
        }
        if !believed.ridge.is_seen() {
            let plate = believed.facial_plate.is_seen().then(|| plate_of(truth)).flatten();
            suppose_ridge(&mut site, plate.unwrap_or(PLATE));
        }
        if believed.ridge.is_seen() && !believed.facial_plate.is_seen() {
            suppose_plate(&mut site);
        }
        site.defects.retain(|defect| match defect.wall {
            Wall::Facial => believed.facial_wall.is_seen(),
            Wall::Oral => believed.oral_wall.is_seen(),
        });
        if !believed.crest.is_seen() {
            suppose_crest(&mut site);
        }
        if !believed.neighbours.is_seen() {
            suppose_neighbours(&mut site);
        }
        if !believed.gum.is_seen() {
            site.soft.thickness = Mm::new(GUM);
        }
        hide_structures(&mut site, |fact| show.known.is_seen(fact));
        believed.site = Cow::Owned(site);
        believed
    }
}

/// Thickness of the facial plate 1 mm below the reference crest, where there is one.
fn plate_of(truth: &Site) -> Option<f64> {
    let solid = Solid::of(truth);
    let root = super::cut::roots_at(&solid, 0.0, 1.0).as_slice().last()?.to;
    Some((solid.face(Wall::Facial, 1.0) - root).max(0.0))
}

fn supposed_root(truth: &Site, length: Option<Mm>) -> RootBody {
    RootBody {
        x: Mm::ZERO,
        y: Mm::ZERO,
        tilt: Deg::ZERO,
        tip: Deg::ZERO,
        length: length.unwrap_or(Mm::new(LENGTH)),
        neck: Mm::new(2.0),
        half_md: truth.crown.width * NECK,
        half_fo: Mm::new(HALF_DEPTH),
        taper: 0.3,
    }
}

/// A ridge that runs straight down, a plate of ordinary thickness outside the root.
fn suppose_ridge(site: &mut Site, plate: f64) {
    let root = site.coronal();
    let half = root.half_fo.get() + PLATE;
    let facial = root.half_fo.get() + plate;
    let middle = root.y.get();
    let straight = |out: f64, lean: f64| Profile {
        knots: vec![
            P2::new(-8.0, middle + out),
            P2::new(0.0, middle + out),
            P2::new(30.0, middle + out + lean),
        ],
    };
    site.ridge.facial = straight(facial, 0.0);
    site.ridge.oral = straight(-half, -6.0);
}

/// Sections were taken but the facial plate does not show in them: beside the root its outer face is
/// supposed, beyond the apex it is true.
fn suppose_plate(site: &mut Site) {
    let root = site.socket.as_one();
    let length = root.length.get();
    let slope = libm::tan(root.tilt.radians());
    let outer = |z: f64| {
        let share = (1.0 - (z / length).clamp(0.0, 0.8)).max(0.0);
        root.y.get() + slope * z + root.half_fo.get() * libm::pow(share, root.taper) + 0.5 * PLATE
    };
    let mut knots: Vec<P2> = [-8.0, 0.0, 0.25 * length, 0.5 * length, 0.75 * length]
        .into_iter()
        .map(|z: f64| P2::new(z, outer(z.max(0.0))))
        .collect();
    knots.extend(site.ridge.facial.knots.iter().filter(|knot| knot.x > length + 1.0));
    let far = P2::new(40.0, polyline::value(&site.ridge.facial.knots, 40.0));
    if knots.last().is_none_or(|last| last.x < far.x) {
        knots.push(far);
    }
    site.ridge.facial = Profile { knots };
}

fn suppose_crest(site: &mut Site) {
    let peak = 0.5 * site.crown.width.get() + 0.4;
    let knots: Vec<P2> =
        [(-2.0 * peak, 0.0), (-peak, -PEAK), (0.0, 0.0), (peak, -PEAK), (2.0 * peak, 0.0)]
            .map(|(x, z)| P2::new(x, z))
            .to_vec();
    site.ridge.crest.knots.clone_from(&knots);
    site.ridge.crest.unharmed = knots;
    site.ridge.crest.oral_offset = Mm::ZERO;
}

/// Whether something stands beside the gap is plain to see; how its root runs is not.
fn suppose_neighbours(site: &mut Site) {
    let width = site.crown.width.get();
    let middle = 0.5 * width + 4.0;
    let suppose = |neighbour: &mut Neighbour, side: Side| {
        let x = if side == Side::Mesial { -middle } else { middle };
        match neighbour {
            Neighbour::Root(root) => {
                *root = RootBody {
                    x: Mm::new(x),
                    y: Mm::ZERO,
                    tilt: Deg::ZERO,
                    tip: Deg::ZERO,
                    length: Mm::new(LENGTH),
                    neck: Mm::new(2.0),
                    half_md: Mm::new(2.8),
                    half_fo: Mm::new(HALF_DEPTH),
                    taper: 0.3,
                };
            }
            Neighbour::Implant(implanted) => {
                implanted.platform = P3::new(x, 0.0, 0.0);
                implanted.diameter = Mm::new(4.0);
                implanted.length = Mm::new(11.0);
                implanted.tilt = Deg::ZERO;
                implanted.tip = Deg::ZERO;
            }
            Neighbour::Absent => {}
        }
    };
    suppose(&mut site.neighbours.mesial, Side::Mesial);
    suppose(&mut site.neighbours.distal, Side::Distal);
}

fn hide_structures(site: &mut Site, seen: impl Fn(Fact) -> bool) {
    if !seen(Fact::Canal) {
        site.vital.canal = None;
    }
    if !seen(Fact::Foramen) {
        site.vital.foramen = None;
        site.vital.loop_ = None;
    }
    if !seen(Fact::Floor) {
        site.vital.floor = None;
    }
    if !seen(Fact::Nasopalatine) {
        site.vital.nasopalatine = None;
    }
    if !seen(Fact::ApicalLesion) {
        site.lesion = Lesion::None;
    }
    if !seen(Fact::Density) {
        site.density = Density { hu: 500.0, class: DensityClass::D3 };
    }
}
