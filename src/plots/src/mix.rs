//! How verdicts divide, over time.

use crate::backend::figure;
use crate::bands::ink_of;
use crate::pen::{CAPITAL, END, MIDDLE, Pen, START, laid_out};
use engine::figures::{Figure, Ink, text};
use learning::review::{Mix, ZONES};
use learning::tables;

/// From row to row, and how much of it is bar, pixels.
const ROW: f64 = 23.0;
const BAR: f64 = 15.0;
/// From row to row of the key, and a sample of it, pixels.
const KEY: f64 = 17.0;
const SAMPLE: f64 = 18.0;
/// Blank at the edges and beside bars, pixels.
const EDGE: f64 = 6.0;

/// One bar for each attempt, day, week or month, `px` CSS pixels wide, divided into zones, each in its
/// own hatching, best to worst; how many verdicts stands at its end.
#[must_use]
pub fn mix_plot(mix: &Mix, px: f64) -> Figure {
    let px = laid_out(px);
    let key = key(mix, px);
    let rows = key.iter().map(|(_, [_, y])| *y).fold(0.0, f64::max);
    let top = rows + 1.4 * KEY;
    let bottom = mix.bars.iter().fold(top, |y, _| y + ROW);
    let mut items = Vec::new();
    let size = [px, bottom + 18.0];
    draw(&Pen::on(&mut items, size), mix, &key, [top, bottom], px);
    // The hatchings are those of the bands, held once for all plots of a page.
    figure("bands", format!("Verdicts {}", mix.by.words()), tables::mix(mix).says(), size, items)
}

/// Places of the zones that come up, in rows no wider than the plot.
fn key(mix: &Mix, px: f64) -> Vec<(usize, [f64; 2])> {
    let comes_up = |zone: &usize| mix.bars.iter().any(|bar| bar.counts[*zone] > 0);
    let mut at = [EDGE, KEY];
    let mut placed = Vec::new();
    for zone in (0..ZONES.len()).filter(comes_up) {
        let wide = SAMPLE + 5.0 + text::width(ZONES[zone].word(), CAPITAL) + 14.0;
        if at[0] > EDGE && at[0] + wide > px {
            at = [EDGE, at[1] + KEY];
        }
        placed.push((zone, at));
        at[0] += wide;
    }
    placed
}

fn draw(pen: &Pen<'_>, mix: &Mix, key: &[(usize, [f64; 2])], [top, bottom]: [f64; 2], px: f64) {
    for (zone, [x, y]) in key {
        let ink = ink_of(ZONES[*zone]);
        pen.area([*x, y - 5.0], [x + SAMPLE, y + 5.0], ink);
        pen.words(ZONES[*zone].word(), [x + SAMPLE + 5.0, *y], Ink::Words, START);
    }
    let widest = |words: &mut dyn Iterator<Item = String>| {
        words.map(|one| text::width(&one, CAPITAL)).fold(0.0, f64::max)
    };
    let left = EDGE + widest(&mut mix.bars.iter().map(|bar| bar.label.clone())) + EDGE;
    let right = px - EDGE - widest(&mut mix.bars.iter().map(|bar| bar.all().to_string())) - EDGE;
    let x = |share: f64| left + share * (right - left);
    let mut y = top;
    for bar in &mix.bars {
        let middle = y + 0.5 * ROW;
        pen.words(&bar.label, [left - EDGE, middle], Ink::Words, END);
        let all = f64::from(bar.all()).max(1.0);
        let mut before = 0.0;
        for (count, zone) in bar.counts.iter().zip(ZONES) {
            let after = before + f64::from(*count);
            if *count > 0 {
                let [from, to] = [middle - 0.5 * BAR, middle + 0.5 * BAR];
                pen.area([x(before / all), from], [x(after / all), to], ink_of(zone));
            }
            before = after;
        }
        pen.words(&bar.all().to_string(), [px - EDGE, middle], Ink::Quiet, END);
        y += ROW;
    }
    pen.line(&[[x(0.0), bottom], [x(1.0), bottom]], Ink::Fine);
    for (share, label) in [(0.0, "0"), (0.5, "50 %"), (1.0, "100 %")] {
        pen.line(&[[x(share), bottom], [x(share), bottom + 3.0]], Ink::Fine);
        pen.words(label, [x(share), bottom + 10.0], Ink::Quiet, MIDDLE);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pen::tests::words_apart;
    use engine::figures::Item;
    use learning::review::{Bar, Span};

    fn planted() -> Mix {
        let bar = |label: &str, counts| Bar { label: label.to_owned(), attempts: 1, counts };
        let bars = vec![bar("26 Nov", [3, 0, 0, 0, 1, 0]), bar("27 Nov", [40, 10, 5, 20, 10, 15])];
        Mix { by: Span::Attempt, bars, older: 0 }
    }

    #[test]
    fn bars_are_divided_as_the_verdicts_are_and_each_zone_has_its_hatching() {
        let plot = mix_plot(&planted(), 360.0);
        let mut areas = plot.items.iter().filter_map(|item| match item {
            Item::Path { rings, closed: true, ink } if *ink != Ink::Ground => {
                Some((*ink, rings[0][0], rings[0][2]))
            }
            _ => None,
        });
        let samples: Vec<Ink> = areas.by_ref().take(6).map(|(ink, ..)| ink).collect();
        assert_eq!(samples, ZONES.map(ink_of));
        let bars: Vec<_> = areas.map(|(ink, a, b)| (ink, (a.x - b.x).abs())).collect();
        assert_eq!((bars[0].0, bars[1].0), (Ink::BandIdeal, Ink::BandOutside));
        assert!((bars[0].1 / bars[1].1 - 3.0).abs() < 0.02, "{bars:?}");
        let whole: f64 = bars[2..].iter().map(|(_, wide)| wide).sum();
        for ((_, wide), count) in bars[2..].iter().zip([40.0, 10.0, 5.0, 20.0, 10.0, 15.0]) {
            assert!((wide / whole - count / 100.0).abs() < 0.002, "{wide} of {whole}");
        }
    }

    #[test]
    fn every_word_stands_on_the_plot_and_on_no_other_at_every_width() {
        for px in [240.0, 318.0, 720.0] {
            let words = words_apart(&mix_plot(&planted(), px));
            for one in ["26 Nov", "100", "outside: likely to compromise", "50 %"] {
                assert!(words.iter().any(|word| word == one), "{one}: {words:?}");
            }
        }
    }

    #[test]
    fn it_says_its_numbers() {
        assert!(
            mix_plot(&planted(), 360.0)
                .says
                .starts_with("26 Nov: 1 attempts, 3 ideal, 1 outside: likely to compromise. 27 Nov: 1 attempts, 40 ideal")
        );
    }
}
