//! Time per step.

use crate::backend::figure;
use crate::pen::{CAPITAL, END, MIDDLE, Pen, laid_out};
use engine::figures::{Figure, Ink, text};
use learning::date::clock;
use learning::review::StepTime;
use learning::tables;

/// From row to row, and how much of it is bar, pixels.
const ROW: f64 = 22.0;
const BAR: f64 = 12.0;
/// Blank above, at the edges and beside bars, pixels.
const ABOVE: f64 = 6.0;
const EDGE: f64 = 6.0;

/// One bar for each step, `px` CSS pixels wide: to the middle of the times, with a line from the
/// shortest to the longest.
#[must_use]
pub fn time_plot(times: &[StepTime], px: f64) -> Figure {
    let px = laid_out(px);
    let bottom = times.iter().fold(ABOVE, |y, _| y + ROW);
    let size = [px, bottom + 20.0];
    let mut items = Vec::new();
    draw(&Pen::on(&mut items, size), times, bottom, px);
    figure("bands", "Time per step".to_owned(), tables::times(times).says(), size, items)
}

/// Between ticks, seconds: a round number that makes at most five of them.
fn tick(longest: f64) -> f64 {
    let round = [10.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0, 3600.0];
    round.into_iter().find(|tick| longest / tick <= 5.0).unwrap_or(longest / 4.0)
}

fn draw(pen: &Pen<'_>, times: &[StepTime], bottom: f64, px: f64) {
    let longest = times.iter().map(|one| one.range[1]).fold(10.0, f64::max);
    let widest = |words: &mut dyn Iterator<Item = String>| {
        words.map(|one| text::width(&one, CAPITAL)).fold(0.0, f64::max)
    };
    let left = EDGE + widest(&mut times.iter().map(|one| one.step.label().to_owned())) + EDGE;
    let right = px - 2.0 * EDGE - widest(&mut times.iter().map(|one| clock(one.median)));
    let x = |seconds: f64| left + seconds / longest * (right - left);
    let mut y = ABOVE;
    for one in times {
        let middle = y + 0.5 * ROW;
        pen.words(one.step.label(), [left - EDGE, middle], Ink::Words, END);
        let [from, to] = [middle - 0.5 * BAR, middle + 0.5 * BAR];
        pen.area([x(0.0), from], [x(one.median), to], Ink::BandSuboptimal);
        let ends = one.range.map(x);
        pen.line(&[[ends[0], middle], [ends[1], middle]], Ink::Outline);
        for end in ends {
            pen.line(&[[end, middle - 4.0], [end, middle + 4.0]], Ink::Outline);
        }
        pen.words(&clock(one.median), [px - EDGE, middle], Ink::Words, END);
        y += ROW;
    }
    pen.line(&[[x(0.0), bottom], [x(longest), bottom]], Ink::Fine);
    let (by, mut at) = (tick(longest), 0.0);
    let mut free = f64::NEG_INFINITY;
    while at <= longest {
        let label = clock(at);
        let half = 0.5 * text::width(&label, CAPITAL);
        pen.line(&[[x(at), bottom], [x(at), bottom + 3.0]], Ink::Fine);
        if x(at) - half > free {
            pen.words(&label, [x(at), bottom + 11.0], Ink::Quiet, MIDDLE);
            free = x(at) + half + 6.0;
        }
        at += by;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pen::tests::words_apart;
    use engine::figures::Item;
    use engine::plan::Step;

    fn planted() -> Vec<StepTime> {
        let of = |(place, step): (u32, &Step)| StepTime {
            step: *step,
            count: 6,
            median: 20.0 + 15.0 * f64::from(place),
            range: [10.0, 60.0 + 30.0 * f64::from(place)],
        };
        (0..).zip(Step::ALL).map(of).collect()
    }

    #[test]
    fn a_bar_ends_at_the_middle_and_its_line_at_the_shortest_and_longest() {
        let plot = time_plot(&planted(), 360.0);
        let bars: Vec<f64> = plot
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Path { rings, closed: true, ink: Ink::BandSuboptimal } => {
                    Some((rings[0][0].x - rings[0][2].x).abs())
                }
                _ => None,
            })
            .collect();
        assert_eq!(bars.len(), Step::ALL.len());
        assert!((bars[1] / bars[0] - 35.0 / 20.0).abs() < 0.02, "{bars:?}");
        let line = plot.items.iter().find_map(|item| match item {
            Item::Path { rings, closed: false, ink: Ink::Outline } => {
                Some(rings[0][1].x - rings[0][0].x)
            }
            _ => None,
        });
        assert!((line.unwrap() / bars[0] - 50.0 / 20.0).abs() < 0.02);
    }

    #[test]
    fn every_word_stands_on_the_plot_and_on_no_other_at_every_width() {
        for px in [240.0, 318.0, 720.0] {
            let words = words_apart(&time_plot(&planted(), px));
            for one in ["Graft and membrane", "0:35", "0:00"] {
                assert!(words.iter().any(|word| word == one), "{one}: {words:?}");
            }
        }
    }

    #[test]
    fn it_says_its_numbers() {
        let says = time_plot(&planted()[..1], 360.0).says;
        assert_eq!(
            says,
            "Chart: 6 attempts, 20 seconds in the middle, 10 seconds at the shortest, 60 seconds at the longest. "
        );
    }
}
