//! The cut where the probe stands: tooth, gum, and the probe between them.
//!
//! Of the root nobody has seen anything here, and of the bone only where the probe stopped.

use super::{CORONAL, CUT, Drawn, GAP, Place};
use crate::anatomy::Wall;
use crate::cases::gum_margin;
use crate::chart::Readings;
use crate::figures::grain::stipple;
use crate::figures::{Anchor, Ink, curve};
use crate::geometry::P2;
use crate::session::Spot;
use crate::units::Mm;

/// How much of the tooth is drawn, from its surface inwards, mm.
const TOOTH: f64 = 2.1;
/// Thickness of gum that nobody has tested, mm: the round figure of the other drawings.
const SUPPOSED: f64 = 1.5;

/// The cut with its own axes: out from the tooth's surface, and the level.
struct Beside {
    /// Where the tooth's surface lies on the sheet, and which way is out.
    middle: f64,
    out: f64,
    down: f64,
}

impl Beside {
    fn put(&self, out: f64, z: f64) -> P2 {
        P2::new(self.middle + self.out * out, self.down * z)
    }

    fn put_all(&self, points: &[(f64, f64)]) -> Vec<P2> {
        points.iter().map(|(out, z)| self.put(*out, *z)).collect()
    }
}

impl Drawn<'_> {
    /// The cut from facial to oral at the probe, facial to the right as in every section.
    pub(super) fn cut(&mut self, at: Spot, here: &[Place], gum: Option<Mm>) {
        let left = self.half + GAP;
        let (middle, out) = match at.wall {
            Wall::Facial => (left + TOOTH + 0.1, 1.0),
            Wall::Oral => (left + CUT - TOOTH - 0.1, -1.0),
        };
        let beside = Beside { middle, out, down: self.down };
        let margin = gum_margin(self.site, at.along());
        let thick = gum.map_or(SUPPOSED, Mm::get);
        self.cut_gum(&beside, margin, gum, thick);
        self.cut_tooth(&beside, margin);
        let expected = margin + Readings::NORMAL_SOUNDING;
        let level = [beside.put(0.0, expected), beside.put(thick + 0.9, expected)];
        self.sheet.line(&level, Ink::Dashed);
        let met = here.iter().find(|place| place.spot == at).map(Place::deepest);
        if let Some(deepest) = met {
            self.cut_bone(&beside, margin + deepest);
        }
        let depth = met.unwrap_or(0.0);
        let lean = 0.09;
        let tip = beside.put(0.28, margin + depth);
        let top = beside.put(0.28 + lean * (margin + depth + CORONAL + 1.0), -CORONAL - 1.0);
        self.probe([top, tip]);
        if let Some(deepest) = met {
            let aside = thick + 0.9;
            self.sheet.dimension(
                beside.put(aside, margin),
                beside.put(aside, margin + deepest),
                Ink::Dimension,
            );
            let letter = self.sheet.letter();
            let at = beside.put(aside + 0.6 * letter, margin + 0.5 * deepest);
            let anchor = if out > 0.0 { Anchor::Start } else { Anchor::End };
            let at = P2::new(at.x, at.y + 0.5 * letter);
            self.sheet.words(at, anchor, &format!("{deepest:.1}"), Ink::Words);
        }
        self.cut_words(left, gum);
    }

    /// Gum from its margin over the neck down to where its drawing ends; dashed where nobody has
    /// tested how thick it is.
    fn cut_gum(&mut self, beside: &Beside, margin: f64, gum: Option<Mm>, thick: f64) {
        let outer = [
            (0.0, margin),
            (0.42 * thick, margin + 0.25),
            (0.9 * thick, margin + 1.6),
            (thick, margin + 3.2),
            (thick + 0.1, self.end),
        ];
        let outer = curve::smooth_line(&beside.put_all(&outer), 6);
        if gum.is_none() {
            self.sheet.line(&outer, Ink::Dashed);
            return;
        }
        let mut ring = outer;
        ring.extend(beside.put_all(&[(0.5 * thick, self.end - 0.25), (-0.05, self.end)]));
        self.sheet.area(vec![ring], Ink::Gum);
    }

    /// The crown as it stands out of the gum; the root below as a dashed line.
    fn cut_tooth(&mut self, beside: &Beside, margin: f64) {
        let top = -CORONAL - 1.0;
        let surface = [
            (-0.05, margin + 0.9),
            (0.0, margin),
            (0.34, margin - 1.8),
            (0.3, margin - 3.6),
            (-0.15, top),
        ];
        // Where the drawing leaves the tooth it breaks off.
        let broken = [
            (-0.95 * TOOTH, top),
            (-TOOTH, 0.6 * top + 0.4 * margin),
            (-0.94 * TOOTH, 0.3 * top + 0.7 * margin),
            (-TOOTH, margin),
            (-0.85 * TOOTH, margin + 0.7),
            (-0.45 * TOOTH, margin + 0.55),
            (-0.05, margin + 0.9),
        ];
        let mut ring = curve::smooth_line(&beside.put_all(&surface), 6);
        ring.extend(curve::smooth_line(&beside.put_all(&broken), 6));
        self.sheet.area(vec![ring], Ink::Tooth);
        let root = beside.put_all(&[(-0.05, margin + 0.9), (-0.35, self.end)]);
        self.sheet.line(&root, Ink::Dashed);
    }

    /// Bone where the probe stopped, and no further than it tells.
    fn cut_bone(&mut self, beside: &Beside, level: f64) {
        let patch = [(-0.1, level), (0.75, level), (0.6, level + 0.8), (0.1, level + 1.0)];
        let ring = beside.put_all(&patch);
        self.sheet.area(vec![ring.clone()], Ink::Marrow);
        let dense = 26.0;
        let dots = stipple(&[ring], dense, |_| dense);
        self.sheet.dots(&dots, Ink::Stipple);
        let line = beside.put_all(&[(-0.1, level), (0.75, level)]);
        self.sheet.line(&line, Ink::Outline);
    }

    /// What the cut is, and how thick the gum in it where that was tested.
    fn cut_words(&mut self, left: f64, gum: Option<Mm>) {
        let letter = self.sheet.letter();
        let thick = gum.map(|thick| format!("gum {:.1} mm", thick.get()));
        let rows = [(1.1, Some("cut here".to_owned())), (2.8, thick)];
        for (up, words) in rows.into_iter().filter_map(|(up, words)| words.map(|it| (up, it))) {
            let y = self.down * (self.apical - up * letter) + 0.5 * letter;
            self.sheet.words(P2::new(left + 0.5 * CUT, y), Anchor::Middle, &words, Ink::Quiet);
        }
    }
}
