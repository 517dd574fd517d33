//! What is known of a site whatever the plan: its solids, its map, and volumes and outlines that are
//! worth keeping.

use super::bound::Towards;
use crate::anatomy::{Beside, Site, Solid, Wall};
use crate::geometry::{P2, polygon};
use core::cell::OnceCell;

/// Directions round an implant in which its surface is followed.
pub(super) const AROUND: usize = 24;

/// Places of an implant's section at which its volume is followed.
const SECTION: usize = 320;

fn section() -> [(f64, f64); SECTION] {
    /// (sin, cos) of the golden angle, a full turn over the square of the golden ratio.
    const TURN: (f64, f64) = (0.675_490_294_261_523_6, -0.737_368_878_078_319_8);
    let mut places = [(0.0, 0.0); SECTION];
    let (mut sin, mut cos) = (0.0, 1.0);
    let mut area = 0.5 / SECTION as f64;
    for place in &mut places {
        let out = libm::sqrt(area);
        *place = (out * cos, out * sin);
        (sin, cos) = (sin * TURN.1 + cos * TURN.0, cos * TURN.1 - sin * TURN.0);
        area += 1.0 / SECTION as f64;
    }
    places
}

/// Something on the map that is to be covered.
#[derive(Debug)]
pub(super) struct OpeningOnMap {
    /// Its outline; of a defect, what lies apical of the crest.
    pub(super) outline: Vec<P2>,
    /// The direction that is apical for it.
    pub(super) apical: Towards,
    /// Whether it is the socket's orifice.
    pub(super) is_orifice: bool,
    /// Bone between it and the mesial or distal neighbouring root, mm; `None` where there is no root.
    pub(super) room: [Option<f64>; 2],
}

/// A site, prepared once for any number of plans.
#[derive(Debug)]
pub struct Ground {
    /// The bodies and the map.
    pub solid: Solid,
    /// (sin, cos) of the directions round an implant, from facial over distal.
    pub(super) around: [(f64, f64); AROUND],
    /// Places of a disc of radius 1, as (facial, across), each standing for the same area: spread by
    /// the golden angle, so that no edge falls along a row of them.
    pub(super) section: [(f64, f64); SECTION],
    pub(super) socket_volume: OnceCell<f64>,
    pub(super) wall_volume: OnceCell<f64>,
    pub(super) touching: OnceCell<Option<[f64; 3]>>,
    orifice: OnceCell<Vec<P2>>,
    openings: OnceCell<Vec<OpeningOnMap>>,
    beside: [OnceCell<Vec<Vec<P2>>>; 2],
}

impl Ground {
    /// Of a site.
    #[must_use]
    pub fn of(site: &Site) -> Self {
        let mut around = [(0.0, 1.0); AROUND];
        let mut angle = 0.0;
        for turn in &mut around {
            *turn = libm::sincos(angle);
            angle += core::f64::consts::TAU / AROUND as f64;
        }
        Self {
            solid: Solid::of(site),
            around,
            section: section(),
            socket_volume: OnceCell::new(),
            wall_volume: OnceCell::new(),
            touching: OnceCell::new(),
            orifice: OnceCell::new(),
            openings: OnceCell::new(),
            beside: [OnceCell::new(), OnceCell::new()],
        }
    }

    /// The orifice of the socket on the map: where root or trunk crosses the crest; nothing where none
    /// does.
    pub fn orifice(&self) -> &[P2] {
        self.orifice.get_or_init(|| {
            self.solid.socket.coronal().map_or_else(Vec::new, |body| self.solid.map.orifice(body))
        })
    }

    /// The wall defects, then the orifice.
    pub(super) fn openings(&self) -> &[OpeningOnMap] {
        self.openings.get_or_init(|| {
            let crest = -self.solid.map.across();
            let defects = self.solid.cuts.iter().map(|cut| match cut.wall {
                Wall::Facial => (polygon::clipped(&cut.outline, |p| p.y), Towards::Apical, false),
                Wall::Oral => {
                    (polygon::clipped(&cut.outline, |p| crest - p.y), Towards::Coronal, false)
                }
            });
            let orifice = (self.orifice().to_vec(), Towards::Apical, true);
            defects
                .chain([orifice])
                .filter(|(outline, ..)| outline.len() > 2)
                .map(|(outline, apical, is_orifice)| {
                    let room = [0, 1].map(|side| {
                        let roots = self.root_beside(side).iter();
                        roots.map(|root| polygon::distance(&outline, root)).reduce(f64::min)
                    });
                    OpeningOnMap { outline, apical, is_orifice, room }
                })
                .collect()
        })
    }

    /// The outlines on the map of the mesial (0) or distal (1) neighbouring root: as seen from the
    /// facial side, and where it crosses the crest. Nothing for an implant or none.
    pub fn root_beside(&self, side: usize) -> &[Vec<P2>] {
        self.beside[side].get_or_init(|| match &self.solid.beside[side] {
            Beside::Root(root) => {
                vec![self.solid.map.root_outline(root), self.solid.map.orifice(root)]
            }
            Beside::Implant(_) | Beside::Absent => Vec::new(),
        })
    }
}
