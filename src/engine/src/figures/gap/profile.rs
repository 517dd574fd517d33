//! The gap profile: how far it is to bone along the implant, facially and orally.

use crate::figures::lit::Part;
use crate::figures::scene::{Scene, mm};
use crate::figures::sheet::{Layout, Sheet};
use crate::figures::{Anchor, Figure, Ink, Show, Window, grain};
use crate::geometry::{Cone, P2};
use crate::measure::Opening;
use crate::units::{Deg, Mm};

/// Half the width with which the implant is drawn: a band, because only gaps are to scale across.
const BAND: f64 = 1.1;
/// The widest gap that is drawn.
const WIDEST: f64 = 6.0;
/// Depths are this far apart.
const STEP: f64 = 0.1;

/// The gap at one depth, facially and orally.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Facing {
    /// Below the platform along the implant.
    pub depth: Mm,
    /// Facially.
    pub facial: Opening,
    /// Orally.
    pub oral: Opening,
}

/// The gap at every tenth of a millimetre along the implant that is shown; nothing without one.
#[must_use]
pub fn gap_rows(show: &Show<'_>) -> Vec<Facing> {
    let scene = Scene::of(show);
    scene.body().map_or_else(Vec::new, |body| rows(&scene, &body))
}

fn rows(scene: &Scene<'_>, body: &Cone) -> Vec<Facing> {
    // One row for each tenth of a millimetre, both ends included; lengths are whole tenths.
    let count = libm::round(body.length / STEP).clamp(1.0, 1000.0) as u32 + 1;
    let m = scene.measured();
    let oral = m.gap_profile(Deg::new(180.0), count);
    m.gap_profile(Deg::ZERO, count)
        .into_iter()
        .zip(oral)
        .map(|((depth, facial), (_, oral))| Facing { depth, facial, oral })
        .collect()
}

struct Plotting<'a, 'b> {
    scene: &'b Scene<'a>,
    sheet: Sheet,
    down: f64,
}

/// The gap profile.
#[must_use]
pub fn gap_profile(show: &Show<'_>) -> Figure {
    let scene = Scene::of(show);
    let down = scene.down();
    let body = scene.body();
    let length = body.map_or(12.0, |body| body.length);
    let (a, b) = (-3.0 * down, (length + 2.2) * down);
    let half = BAND + WIDEST + 2.6;
    let window = Window { least: P2::new(-half, a.min(b)), most: P2::new(half, a.max(b)) };
    let mut plotting = Plotting { scene: &scene, sheet: Sheet::new(window, show.px), down };
    let rows = body.map_or_else(Vec::new, |body| rows(&scene, &body));
    match body {
        Some(body) => plotting.plot(&body, &rows),
        None => {
            let at = P2::new(0.0, 0.5 * (window.least.y + window.most.y));
            plotting.sheet.words(at, Anchor::Middle, "No implant yet", Ink::Quiet);
        }
    }
    let says = plotting.says(&rows);
    let layout = Layout { left: half, right: half, from: 0.0, to: 0.0, scale_bar: None };
    plotting.sheet.finish("gap-profile", scene.title("Gap profile"), says, layout)
}

impl Plotting<'_, '_> {
    /// A place by its distance from the implant's surface on a side (1 facial, -1 oral) and depth.
    fn put(&self, side: f64, gap: f64, depth: f64) -> P2 {
        P2::new(side * (BAND + gap), self.down * depth)
    }

    fn plot(&mut self, body: &Cone, rows: &[Facing]) {
        let facial: Vec<(f64, Opening)> =
            rows.iter().map(|row| (row.depth.get(), row.facial)).collect();
        let oral: Vec<(f64, Opening)> =
            rows.iter().map(|row| (row.depth.get(), row.oral)).collect();
        self.side(1.0, &facial);
        self.side(-1.0, &oral);
        let band = [(-1.0, 0.0), (1.0, 0.0), (1.0, body.length), (-1.0, body.length)]
            .map(|(side, depth)| self.put(side, 0.0, depth))
            .to_vec();
        self.sheet.area(vec![band], Ink::Implant);
        self.axes(body.length);
        self.fill_level(body);
    }

    /// Bone on one side, and its edge; where no bone is met the side stays blank and says so.
    fn side(&mut self, side: f64, rows: &[(f64, Opening)]) {
        let width = |opening: &Opening| match opening {
            Opening::Bone(length) => Some(length.get().min(WIDEST)),
            Opening::AboveCrest | Opening::Open => None,
        };
        let lit = self.scene.show.lights(Part::Gap) && side > 0.0;
        for run in rows.split(|(_, opening)| width(opening).is_none()) {
            let edge: Vec<P2> = run
                .iter()
                .filter_map(|(depth, opening)| Some(self.put(side, width(opening)?, *depth)))
                .collect();
            let (Some(first), Some(last)) = (run.first(), run.last()) else { continue };
            let mut ring = edge.clone();
            ring.push(self.put(side, WIDEST, last.0));
            ring.push(self.put(side, WIDEST, first.0));
            self.sheet.area(vec![ring.clone()], Ink::Marrow);
            let finer = (0.06 / self.sheet.pixel()).clamp(0.6, 2.6);
            let dots = grain::stipple(&[ring], 12.0 * finer, |_| 12.0 * finer);
            self.sheet.dots(&dots, Ink::Stipple);
            self.sheet.line(&edge, if lit { Ink::Fault } else { Ink::Outline });
        }
        for run in rows.split(|(_, opening)| *opening != Opening::Open) {
            let Some(ring) = self.stretch(side, run) else { continue };
            self.sheet.area(vec![ring], Ink::Lost);
            self.name(side, run, "open: no bone", Ink::Fault);
        }
        // Above the crest nothing is missing: the ground stays blank there.
        for run in rows.split(|(_, opening)| *opening != Opening::AboveCrest) {
            self.name(side, run, "above the bone", Ink::Quiet);
        }
    }

    /// All that lies beside the implant over a run of depths.
    fn stretch(&self, side: f64, run: &[(f64, Opening)]) -> Option<Vec<P2>> {
        let (first, last) = (run.first()?.0, run.last()?.0);
        let corners = [(0.0, first), (WIDEST, first), (WIDEST, last), (0.0, last)];
        Some(corners.map(|(gap, depth)| self.put(side, gap, depth)).to_vec())
    }

    /// Says what a run of depths is, where there is room for it.
    fn name(&mut self, side: f64, run: &[(f64, Opening)], words: &str, ink: Ink) {
        let (Some(first), Some(last)) = (run.first(), run.last()) else { return };
        if last.0 - first.0 > 2.0 * self.sheet.letter() {
            let middle = self.put(side, 0.5 * WIDEST, 0.5 * (first.0 + last.0));
            self.plate(middle, words, ink);
        }
    }

    /// Words on a ground of their own, so that they read over a hatching.
    fn plate(&mut self, middle: P2, words: &str, ink: Ink) {
        let letter = self.sheet.letter();
        let half = 0.5 * crate::figures::text::width(words, letter) + 0.5 * letter;
        let ring = [(-half, -letter), (half, -letter), (half, letter), (-half, letter)]
            .map(|(x, y)| P2::new(middle.x + x, middle.y + y))
            .to_vec();
        self.sheet.area(vec![ring], Ink::Ground);
        let at = P2::new(middle.x, middle.y + 0.5 * letter);
        self.sheet.words(at, Anchor::Middle, words, ink);
    }

    fn axes(&mut self, length: f64) {
        let letter = self.sheet.letter();
        let tick = 4.0 * self.sheet.pixel();
        let mut ticks = Vec::new();
        let base = -self.down * tick;
        for side in [1.0, -1.0] {
            let mut gap = 0.0;
            while gap <= WIDEST {
                let at = self.put(side, gap, 0.0);
                ticks.push(vec![at, P2::new(at.x, at.y + base)]);
                if libm::fmod(gap, 2.0) == 0.0 {
                    let below = if base > 0.0 { base + 1.5 * letter } else { base - 0.5 * letter };
                    let at = P2::new(at.x, at.y + below);
                    self.sheet.words(at, Anchor::Middle, &format!("{gap:.0}"), Ink::Quiet);
                }
                gap += 1.0;
            }
            ticks.push(vec![self.put(side, 0.0, 0.0), self.put(side, WIDEST, 0.0)]);
        }
        let mut depth = 0.0;
        while depth <= length {
            let at = self.put(-1.0, WIDEST, depth);
            ticks.push(vec![at, P2::new(at.x - tick, at.y)]);
            let words = P2::new(at.x - tick - 0.5 * letter, at.y + 0.5 * letter);
            self.sheet.words(words, Anchor::End, &format!("{depth:.0}"), Ink::Quiet);
            depth += 2.0;
        }
        ticks.push(vec![self.put(-1.0, WIDEST, 0.0), self.put(-1.0, WIDEST, length)]);
        self.sheet.lines(&ticks, Ink::Fine);
        let height = 1.1 * letter;
        let line = self.put(1.0, 0.5 * WIDEST, -2.0);
        let oral = format!("{} gap, mm", self.scene.oral());
        let y = line.y + 0.5 * letter;
        self.sheet.words_of(
            P2::new(line.x, y),
            Anchor::Middle,
            "facial gap, mm",
            Ink::Quiet,
            height,
        );
        self.sheet.words_of(P2::new(-line.x, y), Anchor::Middle, &oral, Ink::Quiet, height);
        let end = self.put(0.0, 0.0, length + 1.0);
        let at = P2::new(0.0, end.y + 0.5 * letter);
        self.sheet.words(at, Anchor::Middle, "depth below the platform, mm", Ink::Quiet);
    }

    /// The level to which the gap is filled.
    fn fill_level(&mut self, body: &Cone) {
        let Some(graft) = self.scene.plan.graft_laid() else { return };
        let depth = (-graft.fill.get() - body.frame.origin.z) / body.frame.along.z.max(1e-9);
        if !(0.0..=body.length).contains(&depth) {
            return;
        }
        let line = [self.put(1.0, 0.0, depth), self.put(1.0, WIDEST, depth)];
        self.sheet.line(&line, self.scene.ink(Part::Fill, Ink::Crown));
        let at = P2::new(line[1].x, line[1].y - 0.5 * self.sheet.letter());
        self.sheet.words(at, Anchor::End, "filled to here", Ink::Quiet);
    }

    fn says(&self, rows: &[Facing]) -> String {
        let Some(first) = rows.first() else {
            return "No implant yet.".to_owned();
        };
        let at = |opening: Opening| match opening {
            Opening::Bone(length) => mm(length),
            Opening::AboveCrest => "none, it stands above the bone,".to_owned(),
            Opening::Open => "open".to_owned(),
        };
        let open = rows.iter().filter(|row| row.facial == Opening::Open).map(|_| STEP).sum::<f64>();
        let widest = rows
            .iter()
            .filter_map(|row| match row.facial {
                Opening::Bone(length) => Some(length),
                Opening::AboveCrest | Opening::Open => None,
            })
            .fold(Mm::ZERO, Mm::max);
        let mut said = format!(
            "From platform to apex: the gap at the platform is {} facially and {} on the {} side; the widest facial gap with a wall is {}.",
            at(first.facial),
            at(first.oral),
            self.scene.oral(),
            mm(widest)
        );
        if open > 0.0 {
            said.push_str(&format!(" Facially no bone is met along {}.", mm(Mm::new(open))));
        }
        said
    }
}
