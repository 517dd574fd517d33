//! Flap, membrane, the margins between the outlines, and the vertices that can be dragged.

use super::Mapping;
use crate::anatomy::{Side, Wall};
use crate::figures::lit::Part;
use crate::figures::scene::mm;
use crate::figures::sheet::Margin;
use crate::figures::{Handle, Ink};
use crate::geometry::{Outline, P2, polygon};
use crate::measure::Margins;
use crate::plan::choices::{Fold, ReleaseSide, SocketSeal};
use crate::plan::{Decision, Releases};
use crate::units::Mm;

/// The shortest edge that has a handle of its own, CSS pixels: those at its ends take about as much.
const EDGE_ROOM: f64 = 34.0;

/// One side on which a margin is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Toward {
    Mesial,
    Distal,
    Apical,
    Oral,
}

impl Toward {
    const ALL: [Self; 4] = [Self::Mesial, Self::Distal, Self::Apical, Self::Oral];

    fn of(self, margins: &Margins) -> Option<Mm> {
        match self {
            Self::Mesial => margins.mesial,
            Self::Distal => margins.distal,
            Self::Apical => margins.apical,
            Self::Oral => margins.oral,
        }
    }

    /// Whether this is the side towards which a vector leans most.
    fn faces(self, s: f64, t: f64) -> bool {
        let sideways = s.abs() >= t.abs();
        match self {
            Self::Mesial => sideways && s < 0.0,
            Self::Distal => sideways && s >= 0.0,
            Self::Apical => !sideways && t > 0.0,
            Self::Oral => !sideways && t <= 0.0,
        }
    }
}

impl Mapping<'_, '_> {
    /// The area that is laid bare, its incisions, and the raised oral margin.
    pub(super) fn flap(&mut self) {
        let Some(flap) = self.scene.plan.flap.clone() else { return };
        let ink = self.scene.ink(Part::Flap, Ink::Flap);
        if let Some(raised) = &flap.raised {
            let ring = self.ring(&raised.outline);
            self.sheet.area(vec![ring.clone()], Ink::Flap);
            if ink == Ink::Fault {
                self.sheet.area(vec![ring], ink);
            }
            let cuts: Vec<Vec<P2>> = incisions(&raised.outline, raised.releases)
                .into_iter()
                .map(|[a, b]| self.put_all(&[a, b]))
                .collect();
            self.sheet.lines(&cuts, Ink::Incision);
        }
        if flap.oral.get() > 0.0 {
            let ring = self.oral_margin(flap.oral.get());
            self.sheet.area(vec![ring], Ink::Flap);
        }
    }

    /// The raised oral margin: below the oral crest, as wide as the facial flap, or as the orifice
    /// and 2 mm where there is none [ours].
    fn oral_margin(&self, raised: f64) -> Vec<P2> {
        let site = self.scene.site();
        let half = site.coronal().half_md.get() + 2.0;
        let (from, to) = match self.scene.plan.raised() {
            Some(flap) => span(&flap.outline.points()),
            None => (-half, half),
        };
        let t = -self.scene.ground.solid.map.across();
        [(from, t), (to, t), (to, t - raised), (from, t - raised)]
            .map(|(s, t)| self.put(s, t))
            .to_vec()
    }

    /// The membrane.
    pub(super) fn membrane(&mut self) {
        let Some(membrane) = self.scene.plan.membrane() else { return };
        let ring = self.ring(&membrane.outline);
        self.sheet.area(vec![ring.clone()], Ink::Membrane);
        if self.scene.ink(Part::Membrane, Ink::Membrane) == Ink::Fault {
            self.sheet.area(vec![ring], Ink::Fault);
        }
    }

    /// How far the membrane reaches past the hole, and the flap past the membrane.
    pub(super) fn margins(&mut self) {
        let Some(membrane) = self.scene.plan.membrane().cloned() else { return };
        let m = self.scene.measured();
        let (on_bone, beyond) = (m.membrane_margin(), m.flap_beyond_membrane());
        let edge = membrane.outline.points();
        if let Some(margins) = on_bone {
            let over = membrane.fold != Fold::FacialOnly
                || self.scene.plan.graft.as_ref().and_then(|graft| graft.seal)
                    == Some(SocketSeal::ByMembrane);
            let lines = self.hole_lines(over, &edge);
            self.margin_lines(&margins, &lines, "membrane", Part::Membrane);
        }
        if let (Some(margins), Some(flap)) = (beyond, self.scene.plan.flap.clone()) {
            let raised_to = -self.scene.ground.solid.map.across() - flap.oral.get();
            let mut lines = Vec::new();
            if let Some(raised) = &flap.raised {
                let on_wall = polygon::clipped(&edge, |at| at.y);
                let bare = raised.outline.points();
                let sides = [Toward::Mesial, Toward::Distal, Toward::Apical];
                lines.extend(
                    sides
                        .into_iter()
                        .filter_map(|toward| Some((toward, shortest(&on_wall, &bare, toward)?))),
                );
            }
            let far = edge.iter().copied().min_by(|a, b| a.y.total_cmp(&b.y));
            lines.extend(far.map(|at| (Toward::Oral, (at, P2::new(at.x, raised_to)))));
            self.margin_lines(&margins, &lines, "flap", Part::Flap);
        }
    }

    /// Where the membrane's margins lie, part by part of the hole.
    fn hole_lines(&self, over: bool, cover: &[P2]) -> Vec<(Toward, Line)> {
        let ground = &self.scene.ground;
        let crest = -ground.solid.map.across();
        let mut lines = Vec::new();
        let mut add = |toward, part: &[P2], along| {
            lines.extend(shortest(part, cover, along).map(|line| (toward, line)));
        };
        for cut in &ground.solid.cuts {
            let (part, apical) = match cut.wall {
                Wall::Facial => (polygon::clipped(&cut.outline, |at| at.y), Toward::Apical),
                Wall::Oral => (polygon::clipped(&cut.outline, |at| crest - at.y), Toward::Oral),
            };
            add(Toward::Mesial, &part, Toward::Mesial);
            add(Toward::Distal, &part, Toward::Distal);
            add(Toward::Apical, &part, apical);
        }
        if over {
            let orifice = ground.orifice();
            for toward in [Toward::Mesial, Toward::Distal, Toward::Apical] {
                add(toward, orifice, toward);
            }
            if let Some(reach) = polygon::extent(orifice, |at| at.x) {
                let line = [P2::new(reach.from, crest), P2::new(reach.to, crest)];
                add(Toward::Oral, &line, Toward::Oral);
            }
        }
        lines
    }

    /// Draws each margin where it was measured: of the lines on its side, the one as long as it.
    fn margin_lines(
        &mut self,
        margins: &Margins,
        lines: &[(Toward, Line)],
        what: &str,
        part: Part,
    ) {
        for toward in Toward::ALL {
            let Some(margin) = toward.of(margins) else { continue };
            let off = |(from, to): &Line| {
                (libm::hypot(to.x - from.x, to.y - from.y) - margin.get().abs()).abs()
            };
            let line = lines
                .iter()
                .filter(|(side, _)| *side == toward)
                .map(|(_, line)| *line)
                .min_by(|a, b| off(a).total_cmp(&off(b)));
            let Some((from, to)) = line else { continue };
            let short = margin.get() < 0.0;
            let ink = if short { Ink::Fault } else { self.scene.ink(part, Ink::Dimension) };
            let (a, b) = (self.put(from.x, from.y), self.put(to.x, to.y));
            self.sheet.dimension(a, b, ink);
            let words = if short {
                format!("{what} {} short", mm(margin.abs()))
            } else {
                format!("{what} {} past", mm(margin))
            };
            let side = match toward {
                Toward::Mesial => self.margin_of(Side::Mesial),
                Toward::Distal => self.margin_of(Side::Distal),
                Toward::Apical | Toward::Oral if what == "flap" => Margin::Left,
                Toward::Apical | Toward::Oral => Margin::Right,
            };
            let words_ink = if ink == Ink::Fault { Ink::Fault } else { Ink::Words };
            let middle = P2::new(0.5 * (a.x + b.x), 0.5 * (a.y + b.y));
            self.sheet.note(side, middle, words, words_ink);
        }
    }

    /// A handle on each vertex of an outline that is still being drawn, and under them one on each
    /// edge that is long enough to be taken hold of between its ends.
    pub(super) fn vertices(&mut self) {
        let show = self.scene.show;
        let flap = self.scene.plan.raised().map(|flap| flap.outline.clone());
        let membrane = self.scene.plan.membrane().map(|membrane| membrane.outline.clone());
        let drawn = [
            (flap, Decision::FlapOutline, show.plan.flap.is_none(), "reflected area"),
            (membrane, Decision::MembraneOutline, show.plan.graft.is_none(), "membrane"),
        ];
        for (outline, decision, open, name) in drawn {
            let (Some(outline), true) = (outline, open) else { continue };
            let points = outline.points();
            let handle = |vertex: usize, at: P2, makes: bool| Handle {
                at: self.put(at.x, at.y),
                label: format!("{name}, corner {}", vertex + 1),
                across: Some((decision, 10.0 * self.right)),
                down: Some((decision, 10.0 * self.down)),
                vertex: Some((decision, vertex)),
                makes,
            };
            let room = EDGE_ROOM * self.sheet.pixel();
            let long = |(a, b): &(P2, P2)| libm::hypot(b.x - a.x, b.y - a.y) >= room;
            let edges = polygon::edges(&points).enumerate().filter(|(_, edge)| long(edge));
            let middle = |(a, b): (P2, P2)| P2::new(0.5 * (a.x + b.x), 0.5 * (a.y + b.y));
            let mut handles: Vec<Handle> =
                edges.map(|(vertex, edge)| handle(vertex, middle(edge), true)).collect();
            handles
                .extend(points.iter().enumerate().map(|(vertex, at)| handle(vertex, *at, false)));
            for handle in handles {
                self.sheet.handle(handle);
            }
        }
    }
}

fn span(points: &[P2]) -> (f64, f64) {
    points.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), at| {
        (least.min(at.x), most.max(at.x))
    })
}

/// The edges of an outline that are vertical releases: at the mesial or distal end of the flap,
/// steeper than level.
fn incisions(outline: &Outline, releases: Releases) -> Vec<[P2; 2]> {
    let points = outline.points();
    let (least, most) = span(&points);
    let middle = 0.5 * (least + most);
    let edges = points.iter().zip(points.iter().cycle().skip(1));
    edges
        .map(|(a, b)| [*a, *b])
        .filter(|[a, b]| (b.y - a.y).abs() > (b.x - a.x).abs())
        .filter(|[a, b]| {
            let mesial = 0.5 * (a.x + b.x) < middle;
            match releases {
                Releases::None => false,
                Releases::One(ReleaseSide::Mesial) => mesial,
                Releases::One(ReleaseSide::Distal) => !mesial,
                Releases::Two => true,
            }
        })
        .collect()
}

/// Two places on the map.
type Line = (P2, P2);

/// Where the margin of one side lies: from what is covered to the nearest edge of the cover that
/// faces the side; where what is covered sticks out, from the cover to what sticks out farthest.
fn shortest(covered: &[P2], cover: &[P2], toward: Toward) -> Option<Line> {
    let length = |(from, to): &Line| libm::hypot(to.x - from.x, to.y - from.y);
    let bare = covered
        .iter()
        .filter(|at| !polygon::contains(cover, **at))
        .filter_map(|at| Some((nearest_on(cover, *at)?, *at)))
        .filter(|line| {
            length(line) > 1e-9 && toward.faces(line.1.x - line.0.x, line.1.y - line.0.y)
        })
        .max_by(|a, b| length(a).total_cmp(&length(b)));
    if bare.is_some() {
        return bare;
    }
    let mut lines: Vec<Line> = Vec::new();
    for (a, b) in polygon::edges(cover).filter(|(a, b)| toward.faces(b.y - a.y, a.x - b.x)) {
        let edge = [a, b];
        lines.extend(covered.iter().filter_map(|at| Some((*at, nearest_on(&edge, *at)?))));
        lines.extend(edge.iter().filter_map(|at| Some((nearest_on(covered, *at)?, *at))));
    }
    lines.into_iter().min_by(|a, b| length(a).total_cmp(&length(b)))
}

fn nearest_on(ring: &[P2], at: P2) -> Option<P2> {
    let edges = ring.iter().zip(ring.iter().cycle().skip(1));
    edges
        .map(|(a, b)| {
            let (dx, dy) = (b.x - a.x, b.y - a.y);
            let square = (dx * dx + dy * dy).max(1e-12);
            let part = (((at.x - a.x) * dx + (at.y - a.y) * dy) / square).clamp(0.0, 1.0);
            P2::new(a.x + part * dx, a.y + part * dy)
        })
        .min_by(|p, q| {
            libm::hypot(p.x - at.x, p.y - at.y).total_cmp(&libm::hypot(q.x - at.x, q.y - at.y))
        })
}
