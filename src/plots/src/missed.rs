//! How many of a class miss each rule.

use crate::backend::figure;
use crate::pen::{CAPITAL, END, MIDDLE, Pen, START, laid_out};
use engine::figures::{Figure, Ink, text};
use learning::class::{OfRule, told};
use learning::tables;

/// From row to row, and how much of it is bar, pixels.
const ROW: f64 = 23.0;
const BAR: f64 = 12.0;
/// Blank above, at the edges and beside bars, pixels.
const ABOVE: f64 = 6.0;
const EDGE: f64 = 6.0;
/// A plot narrower than this names rules by their numbers alone, pixels.
const WIDE: f64 = 480.0;

/// One bar for each rule, `px` CSS pixels wide: the share of learners that missed it, with a line over
/// where that share may lie in truth. Rows have the numbers of the list beside them.
#[must_use]
pub fn missed_plot(rules: &[&OfRule], px: f64) -> Figure {
    let px = laid_out(px);
    let bottom = rules.iter().fold(ABOVE, |y, _| y + ROW);
    let size = [px, bottom + 20.0];
    let mut items = Vec::new();
    draw(&Pen::on(&mut items, size), rules, bottom, px);
    let title = "Learners who missed a rule, %".to_owned();
    // The hatchings are those of the bands, held once for all plots of a page.
    figure("bands", title, tables::missed(rules).says(), size, items)
}

fn draw(pen: &Pen<'_>, rules: &[&OfRule], bottom: f64, px: f64) {
    let label = |(place, one): (usize, &&OfRule)| match px < WIDE {
        true => format!("{}", place + 1),
        false => format!("{}  {}", place + 1, one.rule.id.replace('-', " ")),
    };
    let labels: Vec<String> = rules.iter().enumerate().map(label).collect();
    let count = |one: &&OfRule| format!("{} of {}", one.learners.wrong, one.learners.all());
    let counts: Vec<String> = rules.iter().map(count).collect();
    let widest =
        |words: &[String]| words.iter().map(|one| text::width(one, CAPITAL)).fold(0.0, f64::max);
    let left = EDGE + widest(&labels) + EDGE;
    let right = px - EDGE - widest(&counts) - 2.0 * EDGE;
    let x = |percent: f64| left + percent / 100.0 * (right - left);
    let mut y = ABOVE;
    for ((one, label), count) in rules.iter().zip(&labels).zip(&counts) {
        let middle = y + 0.5 * ROW;
        let share = 100.0 * one.learners.value().map_or(0.0, |right| 1.0 - right);
        pen.words(label, [EDGE, middle], Ink::Words, START);
        let [from, to] = [middle - 0.5 * BAR, middle + 0.5 * BAR];
        pen.area([x(0.0), from], [x(share), to], Ink::BandSuboptimal);
        if let Some(ends) = told::missing(one.learners).map(|ends| ends.map(x)) {
            pen.line(&[[ends[0], middle], [ends[1], middle]], Ink::Outline);
            for end in ends {
                pen.line(&[[end, middle - 4.0], [end, middle + 4.0]], Ink::Outline);
            }
        }
        pen.words(count, [px - EDGE, middle], Ink::Words, END);
        y += ROW;
    }
    pen.line(&[[x(0.0), bottom], [x(100.0), bottom]], Ink::Fine);
    for percent in [0.0, 50.0, 100.0] {
        pen.line(&[[x(percent), bottom], [x(percent), bottom + 3.0]], Ink::Fine);
        pen.words(&format!("{percent}"), [x(percent), bottom + 11.0], Ink::Quiet, MIDDLE);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pen::tests::words_apart;
    use engine::figures::Item;
    use engine::rules;
    use learning::class::Share;

    fn planted() -> Vec<OfRule> {
        let of = |(rule, wrong)| {
            let learners = Share { right: 12 - wrong, wrong };
            OfRule { rule, attempts: learners, learners, notion: None }
        };
        rules::all().zip([8, 4, 1]).map(of).collect()
    }

    #[test]
    fn a_bar_is_as_long_as_the_share_and_its_line_lies_over_the_interval() {
        let planted = planted();
        let plot = missed_plot(&planted.iter().collect::<Vec<_>>(), 600.0);
        let of = |wanted: Ink| {
            let rings = plot.items.iter().filter_map(move |item| match item {
                Item::Path { rings, ink, .. } if *ink == wanted => Some(&rings[0]),
                _ => None,
            });
            rings.map(|ring| {
                let along = ring.iter().map(|point| point.x);
                [along.clone().fold(f64::MAX, f64::min), along.fold(f64::MIN, f64::max)]
            })
        };
        let bars: Vec<[f64; 2]> = of(Ink::BandSuboptimal).collect();
        assert_eq!(bars.len(), 3);
        let long = |bar: [f64; 2]| bar[1] - bar[0];
        assert!((long(bars[0]) / long(bars[1]) - 2.0).abs() < 0.02, "{bars:?}");
        // The longer line of each row is its interval: it holds the end of its bar.
        let lines: Vec<[f64; 2]> = of(Ink::Outline).filter(|line| long(*line) > 1.0).collect();
        for (bar, line) in bars.iter().zip(&lines) {
            assert!(line[0] < bar[1] && bar[1] < line[1], "{bar:?} {line:?}");
        }
    }

    #[test]
    fn every_word_stands_on_the_plot_and_on_no_other_at_every_width() {
        let planted = planted();
        let rules: Vec<&OfRule> = planted.iter().collect();
        for px in [240.0, 318.0, 720.0] {
            let words = words_apart(&missed_plot(&rules, px));
            for one in ["8 of 12", "50"] {
                assert!(words.iter().any(|word| word == one), "{one}: {words:?}");
            }
            let named =
                words.iter().any(|word| word.ends_with(&planted[0].rule.id.replace('-', " ")));
            assert_eq!(named, px > 480.0);
        }
    }

    #[test]
    fn it_says_its_numbers() {
        let planted = planted();
        let says = missed_plot(&planted.iter().take(1).collect::<Vec<_>>(), 360.0).says;
        let numbers = "8 learners missed it, 12 learners met it, 66.7 percent, 43.";
        assert!(says.contains(numbers), "{says}");
    }
}
