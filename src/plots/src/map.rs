//! Rules against the learners of a class.

use crate::backend::figure;
use crate::pen::{CAPITAL, MIDDLE, Pen, START, laid_out};
use engine::figures::{Figure, Ink, text};
use learning::class::{Cell, Map};

/// From row to row, and the most from column to column, pixels.
const ROW: f64 = 20.0;
const COLUMN: f64 = 24.0;
/// Row of the key, a sample of it, and the row of learners' numbers, pixels.
const KEY: f64 = 19.0;
const SAMPLE: f64 = 16.0;
/// Blank at the edges and beside words, pixels.
const EDGE: f64 = 6.0;
/// A plot narrower than this names rules by their numbers alone, pixels.
const WIDE: f64 = 480.0;

/// One row for each rule and one column for each learner, `px` CSS pixels wide: what was kept is an
/// empty box, what was missed is hatched, what can hurt somebody is hatched crosswise, what was never
/// met is a short line. Rows and columns have the numbers of the lists beside them.
#[must_use]
pub fn map_plot(map: &Map<'_>, px: f64) -> Figure {
    let px = laid_out(px);
    let key = key(px);
    let top = key.iter().map(|(_, [_, y])| *y).fold(0.0, f64::max) + 1.6 * KEY;
    let bottom = map.rows.iter().fold(top, |y, _| y + ROW);
    let size = [px, bottom + EDGE];
    let mut items = Vec::new();
    draw(&Pen::on(&mut items, size), map, &key, top, px);
    // The hatchings are those of the bands, held once for all plots of a page.
    figure("bands", "Rules against learners".to_owned(), map.says(), size, items)
}

/// Places of the key, in rows no wider than the plot.
fn key(px: f64) -> Vec<(Cell, [f64; 2])> {
    let mut at = [EDGE, 0.6 * KEY];
    let mut placed = Vec::new();
    for cell in Cell::ALL {
        let wide = SAMPLE + 5.0 + text::width(cell.words(), CAPITAL) + 14.0;
        if at[0] > EDGE && at[0] + wide > px {
            at = [EDGE, at[1] + KEY];
        }
        placed.push((cell, at));
        at[0] += wide;
    }
    placed
}

fn draw(pen: &Pen<'_>, map: &Map<'_>, key: &[(Cell, [f64; 2])], top: f64, px: f64) {
    for (one, [x, y]) in key {
        cell(pen, *one, [*x, y - 6.0], [x + SAMPLE, y + 6.0]);
        pen.words(one.words(), [x + SAMPLE + 5.0, *y], Ink::Words, START);
    }
    let label = |(place, (rule, _)): (usize, &(&engine::rules::Rule, Vec<Cell>))| match px < WIDE {
        true => format!("{}", place + 1),
        false => format!("{}  {}", place + 1, rule.id.replace('-', " ")),
    };
    let labels: Vec<String> = map.rows.iter().enumerate().map(label).collect();
    let widest = labels.iter().map(|one| text::width(one, CAPITAL)).fold(0.0, f64::max);
    let left = EDGE + widest + EDGE;
    let columns = map.learners.iter().fold(0.0, |count, _| count + 1.0_f64).max(1.0);
    let column = ((px - EDGE - left) / columns).min(COLUMN);
    // So many columns that a number of two digits has room.
    let every = if column < 14.0 { 5 } else { 1 };
    let mut y = top;
    for ((_, cells), label) in map.rows.iter().zip(&labels) {
        pen.words(label, [EDGE, y + 0.5 * ROW], Ink::Words, START);
        let mut x = left;
        for one in cells {
            let blank = (0.1 * column).min(2.0);
            cell(pen, *one, [x + blank, y + 2.0], [x + column - blank, y + ROW - 2.0]);
            x += column;
        }
        y += ROW;
    }
    let mut x = left + 0.5 * column;
    for number in 1..=map.learners.len() {
        if number % every == 0 || number == 1 {
            pen.words(&number.to_string(), [x, top - 8.0], Ink::Quiet, MIDDLE);
        }
        x += column;
    }
}

fn cell(pen: &Pen<'_>, cell: Cell, from: [f64; 2], to: [f64; 2]) {
    match cell {
        Cell::Kept => pen.area(from, to, Ink::BandIdeal),
        Cell::Missed => pen.area(from, to, Ink::BandOutside),
        Cell::Grave => pen.area(from, to, Ink::BandUnsafe),
        Cell::NotReached => {
            let (middle, quarter) = (0.5 * (from[1] + to[1]), 0.3 * (to[0] - from[0]));
            pen.line(&[[from[0] + quarter, middle], [to[0] - quarter, middle]], Ink::Fine);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pen::tests::words_apart;
    use engine::figures::Item;
    use engine::rules::all;
    use learning::class::{Class, OfLearner, Report, Share};

    /// So many learners: nobody handed anything in.
    fn learners(count: usize) -> Report {
        let mut report = Report::of(&Class::default());
        let one = |place: usize| OfLearner {
            code: place.to_string(),
            cases: Share::default(),
            adjusted: Share::default(),
            rules: Vec::new(),
            recurring: Vec::new(),
            grave: 0,
            unfinished: 0,
            opened_before: 0,
            late: 0,
        };
        report.learners = (0..count).map(one).collect();
        report
    }

    fn planted(report: &Report) -> Map<'_> {
        let mut map = Map::of(report, [60, 0]);
        let cells = |(place, rule)| {
            let cell = |learner: usize| Cell::ALL[(learner + place) % 4];
            (rule, (0..report.learners.len()).map(cell).collect())
        };
        map.rows = all().take(12).enumerate().map(cells).collect();
        map
    }

    #[test]
    fn every_cell_is_drawn_in_the_ink_of_what_became_of_it() {
        let report = learners(8);
        let plot = map_plot(&planted(&report), 600.0);
        let count = |wanted: Ink| {
            let of = |item: &&Item| matches!(item, Item::Path { ink, .. } if *ink == wanted);
            plot.items.iter().filter(of).count()
        };
        // Twelve rows of two each, and the sample of the key.
        let inks = [Ink::BandIdeal, Ink::BandOutside, Ink::BandUnsafe, Ink::Fine];
        assert_eq!(inks.map(count), [25; 4]);
    }

    #[test]
    fn every_word_stands_on_the_plot_and_on_no_other_however_many_learners_there_are() {
        for count in [1, 12, 30, 60] {
            let report = learners(count);
            for px in [240.0, 336.0, 648.0, 1000.0] {
                let words = words_apart(&map_plot(&planted(&report), px));
                assert!(words.iter().any(|word| word == "unsafe"), "{words:?}");
            }
        }
    }
}
