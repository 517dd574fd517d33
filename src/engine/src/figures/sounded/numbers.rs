//! Where the numbers of readings stand: in a row or two, each near its probe and none over another.

use super::Place;
use crate::figures::sheet::spread;
use crate::figures::text;

/// One number.
#[derive(Debug)]
pub(super) struct Number {
    /// Where its probe stands and where the number does, on the sheet.
    pub x: f64,
    pub at: f64,
    /// In which row, the first nearest to the gum.
    pub row: f64,
    /// How deep the probe went.
    pub deepest: f64,
    pub words: String,
}

/// All of one side, from left to right.
#[derive(Debug)]
pub(super) struct Numbers {
    pub all: Vec<Number>,
    pub letter: f64,
    rows: f64,
}

/// How far from the cut the rows keep on its side, mm: words stand below it.
const CLEAR: f64 = 0.8;
/// Height of a row over that of a capital.
const ROW: f64 = 1.9;

impl Numbers {
    /// Of places, on a sheet on which an x of the site is drawn at `right` times it and the view ends
    /// at `half` to either side.
    pub(super) fn of(here: &[Place], letter: f64, right: f64, half: f64) -> Self {
        let mut all: Vec<Number> = here
            .iter()
            .map(|place| {
                let x = right * place.spot.along();
                let deepest = place.deepest();
                Number { x, at: x, row: 0.0, deepest, words: format!("{deepest:.1}") }
            })
            .collect();
        if right < 0.0 {
            all.reverse();
        }
        let widest = all.iter().map(|one| text::width(&one.words, letter)).fold(0.0, f64::max);
        let gap = 0.5 * letter;
        let room = 2.0 * half - CLEAR - 0.5 * widest;
        let (one_row, two_rows) = (widest + gap, 0.5 * widest + gap);
        while count(&all) * two_rows > room {
            let least = crowded(&all);
            all.remove(least);
        }
        let in_one = count(&all) * one_row <= room;
        let pitch = if in_one { one_row } else { two_rows };
        let wanted: Vec<f64> = all.iter().map(|one| one.x - 0.5 * pitch).collect();
        let talls = vec![pitch; all.len()];
        // In two rows a number is wider than its share of the row.
        let over = 0.25 * widest;
        let starts = spread(&wanted, &talls, over - half, half - CLEAR - over);
        for (place, (one, start)) in all.iter_mut().zip(starts).enumerate() {
            one.at = start + 0.5 * pitch;
            one.row = if in_one || place % 2 == 0 { 0.0 } else { 1.0 };
        }
        let rows = if all.is_empty() {
            0.0
        } else if in_one {
            1.0
        } else {
            2.0
        };
        Self { all, letter, rows }
    }

    /// How deep the rows are, mm.
    pub(super) fn depth(&self) -> f64 {
        // Without any, what is said of the cut still needs its room.
        if self.rows == 0.0 { 1.8 * self.letter } else { (self.rows * ROW + 1.2) * self.letter }
    }

    /// How far from the shelf the middle of a row lies, mm.
    pub(super) fn middle(&self, row: f64) -> f64 {
        (2.0 + row * ROW) * self.letter
    }
}

/// The number that can be spared: of the two probes that stand closest, the shallower one's.
fn crowded(all: &[Number]) -> usize {
    let mut closest = (f64::INFINITY, 0);
    for (place, pair) in all.windows(2).enumerate() {
        let apart = pair[1].x - pair[0].x;
        if apart < closest.0 {
            closest = (apart, if pair[0].deepest < pair[1].deepest { place } else { place + 1 });
        }
    }
    closest.1
}

fn count(all: &[Number]) -> f64 {
    all.iter().map(|_| 1.0).sum()
}
