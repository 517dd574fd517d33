//! What bone sounding has read: one side of the tooth with its gum, and each reading as a probe.
//!
//! Nothing of the bone is drawn but what a probe has met.

use super::scene::mm;
use super::sheet::{Layout, Margin, Sheet};
use super::{Anchor, Figure, Ink, Window};
use crate::anatomy::{Jaw, Site, Wall};
use crate::cases::gum_margin;
use crate::chart::Readings;
use crate::geometry::P2;
use crate::session::{Sounded, Spot};
use crate::units::Mm;

/// Half the width between the columns of labels, how far coronally and apically of the crest line the
/// drawing goes, and the columns, mm.
const HALF: f64 = 8.0;
const CORONAL: f64 = 8.0;
const APICAL: f64 = 14.0;
const COLUMN: f64 = 6.0;
/// How near two readings may stand and both be numbered, mm.
const NUMBERED: f64 = 1.6;

/// The figure of one side, to be drawn `px` CSS pixels wide; `at` is where the probe stands now.
#[must_use]
pub fn sounded(site: &Site, all: &[Sounded], at: Spot, px: f64) -> Figure {
    let (right, down) = ways(site);
    let (a, b) = (down * -CORONAL, down * APICAL);
    let window =
        Window { least: P2::new(-HALF - COLUMN, a.min(b)), most: P2::new(HALF + COLUMN, a.max(b)) };
    let mut drawn = Drawn { site, right, down, sheet: Sheet::new(window, px) };
    drawn.tooth();
    drawn.gum();
    let here: Vec<&Sounded> = all.iter().filter(|one| one.spot.wall == at.wall).collect();
    drawn.readings(&here);
    drawn.standing(at);
    drawn.sides();
    let letter = drawn.sheet.letter();
    let layout = Layout {
        left: COLUMN - letter,
        right: COLUMN - letter,
        from: window.least.y + 2.0 * letter,
        to: window.most.y - 3.0 * letter,
        scale_bar: Some(5.0),
    };
    let side = match at.wall {
        Wall::Facial => "facial",
        Wall::Oral => site.tooth.oral_word(),
    };
    let title = format!("What the probe met, {side} side");
    drawn.sheet.finish("sounded", title, says(side, &here, at), layout)
}

/// The place of the probe at which a point of that figure lies, held to the neck of the tooth.
#[must_use]
pub fn sounded_at(site: &Site, wall: Wall, x: f64) -> Spot {
    let reach = f64::from(Spot::reach(site));
    let x = if x.is_finite() { x } else { 0.0 };
    #[expect(clippy::cast_possible_truncation, reason = "held to the tooth")]
    let tenths = libm::round(ways(site).0 * x * 10.0).clamp(-reach, reach) as i8;
    Spot { wall, tenths }
}

/// 1 where distal is to the right, and where apical is down; -1 where not.
const fn ways(site: &Site) -> (f64, f64) {
    let down = match site.tooth.jaw() {
        Jaw::Maxilla => -1.0,
        Jaw::Mandible => 1.0,
    };
    (if site.tooth.is_mirrored() { -down } else { down }, down)
}

struct Drawn<'a> {
    site: &'a Site,
    right: f64,
    down: f64,
    sheet: Sheet,
}

impl Drawn<'_> {
    fn put(&self, x: f64, z: f64) -> P2 {
        P2::new(self.right * x, self.down * z)
    }

    /// The gum's margin, and a line as far below it.
    fn along_the_gum(&self, below: f64) -> Vec<P2> {
        let places = (-32..=32).map(|step| f64::from(step) * HALF / 32.0);
        places.map(|x| self.put(x, gum_margin(self.site, x) + below)).collect()
    }

    /// The crown, as wide as the neck and a little wider at its edge.
    fn tooth(&mut self) {
        let half = self.site.coronal().half_md.get();
        let line = [(-half, 1.0), (-half - 0.4, -4.0), (-half - 0.2, -CORONAL)];
        let mut ring: Vec<P2> = line.iter().map(|(x, z)| self.put(*x, *z)).collect();
        ring.extend(line.iter().rev().map(|(x, z)| self.put(-x, *z)));
        self.sheet.area(vec![ring], Ink::Tooth);
    }

    fn gum(&mut self) {
        let mut ring = self.along_the_gum(0.0);
        ring.push(self.put(HALF, APICAL - 2.2));
        ring.push(self.put(-HALF, APICAL - 2.2));
        self.sheet.area(vec![ring], Ink::Gum);
        let normal = self.along_the_gum(Readings::NORMAL_SOUNDING);
        self.sheet.line(&normal, Ink::Dashed);
        let end = self.put(-self.right * HALF, 0.0);
        let level = gum_margin(self.site, -HALF * self.right) + Readings::NORMAL_SOUNDING;
        let target = P2::new(end.x, self.down * level);
        self.sheet.note(Margin::Left, target, "3.5 mm below the margin", Ink::Quiet);
    }

    /// Each reading from the margin to where the probe stopped, with its depth where there is room.
    fn readings(&mut self, here: &[&Sounded]) {
        let mut numbered: Vec<f64> = Vec::new();
        for one in here.iter().rev() {
            let x = one.spot.along();
            let from = gum_margin(self.site, x);
            let (a, b) = (self.put(x, from), self.put(x, from + one.depth.get()));
            let ink = if one.chosen { Ink::Mark } else { Ink::Dimension };
            self.sheet.dimension(a, b, ink);
            self.sheet.circle(b, 1.6 * self.sheet.pixel(), Ink::Words);
            if numbered.iter().all(|taken| (taken - x).abs() >= NUMBERED) {
                numbered.push(x);
                let words = format!("{:.1}", one.depth.get());
                // Past the deepest of those beside it, so that no probe runs through the number.
                let beside = here.iter().filter(|near| (near.spot.along() - x).abs() < NUMBERED);
                let ends =
                    beside.map(|near| gum_margin(self.site, near.spot.along()) + near.depth.get());
                let end = self.put(x, ends.fold(from, f64::max));
                let off = if self.down > 0.0 { 2.0 } else { -1.0 } * self.sheet.letter();
                let at = P2::new(end.x, end.y + off);
                self.sheet.words(at, Anchor::Middle, &words, Ink::Words);
            }
        }
    }

    /// The probe as it stands, on the margin.
    fn standing(&mut self, at: Spot) {
        let x = at.along();
        let tip = self.put(x, gum_margin(self.site, x));
        let end = P2::new(tip.x, self.down * (0.5 - CORONAL));
        self.sheet.line(&[end, tip], Ink::Incision);
        let up = -self.down * 0.7;
        for aside in [-0.35, 0.35] {
            self.sheet.line(&[tip, P2::new(tip.x + aside, tip.y + up)], Ink::Incision);
        }
    }

    fn sides(&mut self) {
        let low = self.down * (APICAL - 1.0);
        let letter = self.sheet.letter();
        for (sign, words) in [(-1.0, "mesial"), (1.0, "distal")] {
            let at = P2::new(self.right * sign * (HALF - 1.5), low + 0.5 * letter);
            self.sheet.words(at, Anchor::Middle, words, Ink::Quiet);
        }
    }
}

fn says(side: &str, here: &[&Sounded], at: Spot) -> String {
    let mut said = vec![format!(
        "The {side} side of the tooth with its gum. The probe stands {}.",
        at.words()
    )];
    let told: Vec<String> = here
        .iter()
        .map(|one| format!("{} {}", mm(Mm::new(one.depth.get())), one.spot.words()))
        .collect();
    said.push(if told.is_empty() {
        "Nothing has been read here yet.".to_owned()
    } else {
        format!("From the margin to the bone: {}.", told.join(", "))
    });
    said.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Tooth;
    use crate::figures::Item;
    use crate::rules::trial::Trial;

    fn at(tenths: i8, depth: f64) -> Sounded {
        let spot = Spot { wall: Wall::Facial, tenths };
        Sounded { spot, depth: Mm::new(depth), chosen: true }
    }

    fn lengths(figure: &Figure) -> Vec<f64> {
        let lines = figure.items.iter().filter_map(|item| match item {
            Item::Path { rings, ink: Ink::Mark, .. } => Some((rings[0][0].y - rings[0][1].y).abs()),
            _ => None,
        });
        lines.collect()
    }

    #[test]
    fn each_reading_of_the_side_is_drawn_as_long_as_it_was_read() {
        let site = Trial::plain().case.site;
        let oral = Sounded { spot: Spot { wall: Wall::Oral, tenths: 0 }, ..at(0, 9.0) };
        let all = [at(0, 3.5), at(-20, 6.0), oral];
        let figure = sounded(&site, &all, Spot { wall: Wall::Facial, tenths: 5 }, 400.0);
        let mut found = lengths(&figure);
        found.sort_by(f64::total_cmp);
        assert!((found[0] - 3.5).abs() < 1e-9 && (found[1] - 6.0).abs() < 1e-9, "{found:?}");
        assert_eq!(found.len(), 2);
        assert!(figure.says.contains("6.0 mm 2.0 mm mesially"), "{}", figure.says);
        let oral = sounded(&site, &all, oral.spot, 400.0);
        assert_eq!(lengths(&oral).len(), 1);
    }

    #[test]
    fn a_point_of_the_figure_is_the_place_it_is_drawn_at_in_every_quadrant() {
        for iso in [11, 21, 31, 41] {
            let site = Site { tooth: Tooth::new(iso).unwrap(), ..Trial::plain().case.site };
            let figure = sounded(&site, &[at(13, 3.0)], at(0, 0.0).spot, 400.0);
            let x = figure.items.iter().find_map(|item| match item {
                Item::Path { rings, ink: Ink::Mark, .. } => Some(rings[0][0].x),
                _ => None,
            });
            assert_eq!(sounded_at(&site, Wall::Facial, x.unwrap()), at(13, 3.0).spot, "{iso}");
            assert_eq!(sounded_at(&site, Wall::Oral, f64::NAN).tenths, 0);
            let far = sounded_at(&site, Wall::Facial, 900.0);
            assert_eq!(far.tenths.abs(), Spot::reach(&site));
        }
    }

    #[test]
    fn what_no_probe_has_met_is_not_drawn() {
        use crate::anatomy::DefectKind;
        use crate::rules::regeneration::defect;
        let whole = Trial::plain().case.site;
        let mut lost = whole.clone();
        lost.defects.push(defect(Wall::Facial, DefectKind::LostWall));
        let spot = at(0, 0.0).spot;
        let [a, b] = [whole, lost].map(|site| sounded(&site, &[at(10, 4.0)], spot, 400.0));
        assert_eq!(a, b);
    }
}
