//! Flap, membrane, the margins between the outlines, and the vertices that can be dragged.

use super::Mapping;
use crate::anatomy::Side;
use crate::figures::scene::mm;
use crate::figures::sheet::Margin;
use crate::figures::{Handle, Ink};
use crate::geometry::{Outline, P2};
use crate::measure::{Margins, Measurements};
use crate::plan::choices::ReleaseSide;
use crate::plan::{Decision, Releases};
use crate::units::Mm;

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

    fn words(self, oral: &str) -> String {
        match self {
            Self::Mesial => "mesially".to_owned(),
            Self::Distal => "distally".to_owned(),
            Self::Apical => "apically".to_owned(),
            Self::Oral => format!("to the {oral} side"),
        }
    }

    /// How far a place lies towards this side.
    fn reach(self, at: P2) -> f64 {
        match self {
            Self::Mesial => -at.x,
            Self::Distal => at.x,
            Self::Apical => at.y,
            Self::Oral => -at.y,
        }
    }
}

impl Mapping<'_, '_> {
    /// The area that is laid bare, its incisions, and the raised oral margin.
    pub(super) fn flap(&mut self) {
        let Some(flap) = self.scene.plan.flap.clone() else { return };
        let ink = self.scene.ink(&[Decision::FlapOutline], Ink::Flap);
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
        let half = site.root().half_md.get() + 2.0;
        let (from, to) = match self.scene.plan.raised() {
            Some(flap) => span(&flap.outline.points()),
            None => (-half, half),
        };
        let t = -self.scene.solid.map.across();
        [(from, t), (to, t), (to, t - raised), (from, t - raised)]
            .map(|(s, t)| self.put(s, t))
            .to_vec()
    }

    /// The membrane.
    pub(super) fn membrane(&mut self) {
        let Some(membrane) = self.scene.plan.membrane() else { return };
        let ring = self.ring(&membrane.outline);
        self.sheet.area(vec![ring.clone()], Ink::Membrane);
        if self.scene.ink(&[Decision::MembraneOutline], Ink::Membrane) == Ink::Fault {
            self.sheet.area(vec![ring], Ink::Fault);
        }
    }

    /// How far the membrane reaches past the hole, and the flap past the membrane.
    pub(super) fn margins(&mut self) {
        let Some(membrane) = self.scene.plan.membrane().cloned() else { return };
        let m = Measurements::of(&self.scene.case, &self.scene.plan);
        let membrane_edge = membrane.outline.points();
        if let Some(margins) = m.membrane_margin() {
            let hole = self.hole();
            self.margin_lines(
                &margins,
                &hole,
                &membrane_edge,
                "membrane",
                Decision::MembraneOutline,
            );
        }
        if let (Some(margins), Some(flap)) = (m.flap_beyond_membrane(), self.scene.plan.raised()) {
            let flap_edge = flap.outline.points();
            self.margin_lines(
                &margins,
                &[membrane_edge],
                &flap_edge,
                "flap",
                Decision::FlapOutline,
            );
        }
    }

    /// Rings of what the membrane has to cover, in (s, t).
    fn hole(&self) -> Vec<Vec<P2>> {
        let site = self.scene.site();
        let mut rings: Vec<Vec<P2>> =
            site.defects.iter().map(|defect| defect.outline.points()).collect();
        rings.extend(self.scene.solid.root().map(|root| self.scene.solid.map.orifice(root)));
        rings
    }

    /// Draws each margin where the edges are as far apart as was measured.
    fn margin_lines(
        &mut self,
        margins: &Margins,
        inner: &[Vec<P2>],
        outer: &[P2],
        what: &str,
        decision: Decision,
    ) {
        let oral = self.scene.oral();
        let base = if what == "flap" { "beyond the membrane" } else { "on bone" };
        for toward in Toward::ALL {
            let Some(margin) = toward.of(margins) else { continue };
            let Some((from, to)) = nearest(inner, outer, toward, margin.get().abs()) else {
                continue;
            };
            let short = margin.get() < 0.0;
            let ink = if short { Ink::Fault } else { self.scene.ink(&[decision], Ink::Dimension) };
            let (a, b) = (self.put(from.x, from.y), self.put(to.x, to.y));
            self.sheet.dimension(a, b, ink);
            let way = toward.words(oral);
            let words = if short {
                format!("{what} {} short {way}", mm(margin.abs()))
            } else {
                format!("{what} {} {base} {way}", mm(margin))
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

    /// A handle on each vertex of an outline that is still being drawn.
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
            for (vertex, at) in outline.points().iter().enumerate() {
                self.sheet.handle(Handle {
                    at: self.put(at.x, at.y),
                    label: format!("{name}, corner {}", vertex + 1),
                    across: Some((decision, 10.0 * self.right)),
                    down: Some((decision, 10.0 * self.down)),
                    vertex: Some((decision, vertex)),
                });
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

/// The pair of places, one on an inner ring and the nearest to it on the outer, whose distance is
/// what was measured; among such pairs the one farthest towards the side.
fn nearest(inner: &[Vec<P2>], outer: &[P2], toward: Toward, length: f64) -> Option<(P2, P2)> {
    const PARTS: u32 = 24;
    let mut best: Option<(f64, P2, P2)> = None;
    for ring in inner {
        for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            for k in 0..PARTS {
                let part = f64::from(k) / f64::from(PARTS);
                let from = P2::new(a.x + part * (b.x - a.x), a.y + part * (b.y - a.y));
                let Some(to) = nearest_on(outer, from) else { continue };
                let gone = libm::hypot(to.x - from.x, to.y - from.y);
                let off = (gone - length).abs() + 0.02 * (20.0 - toward.reach(from));
                if best.is_none_or(|(least, _, _)| off < least) {
                    best = Some((off, from, to));
                }
            }
        }
    }
    best.map(|(_, from, to)| (from, to))
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
