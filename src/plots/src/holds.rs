//! How far something about a case can be otherwise before a plan's verdicts change.

use crate::backend::{FINE, Plate, figure, filled, style, words};
use engine::anatomy::Tooth;
use engine::figures::{Figure, Ink, Item, text};
use engine::rules::Zone;
use engine::search::{End, Holds};
use plotters::prelude::*;
use plotters_backend::text_anchor::{HPos, VPos};

/// Height of a capital, blank beside the bar, its upper and lower edge, and the whole, pixels.
const CAPITAL: f64 = 7.6;
const EDGE: f64 = 10.0;
const BAR: [f64; 2] = [28.0, 42.0];
const TALL: f64 = 66.0;

/// A bar `px` CSS pixels wide: what the thing is, from where to where the verdicts stay, and what they
/// become on either side.
#[must_use]
pub fn holds_plot(holds: &Holds, tooth: Tooth, px: f64) -> Figure {
    let px = if px.is_finite() { px.clamp(160.0, 4000.0) } else { 360.0 };
    let mut items = Vec::new();
    // The backend cannot fail; what plotters itself refuses would leave the plot without a part.
    let _ = draw(&mut items, holds, px);
    // The hatchings are those of the bands, held once for all plots of a page.
    let title = tooth.named(holds.aspect.scaled().words).into_owned();
    figure("bands", title, holds.stays(tooth), [px, TALL], items)
}

/// What is drawn, in steps: what is, both ends, and a third of that on either side, within what is met.
fn range_of(holds: &Holds) -> [f64; 2] {
    let turned = holds.ends.iter().filter_map(|end| match end {
        End::Turns { first, .. } => Some(*first),
        End::Open { .. } => None,
    });
    let told = turned.chain([holds.now]);
    let (low, high) =
        told.fold((i32::MAX, i32::MIN), |(low, high), at| (low.min(at), high.max(at)));
    let room = ((f64::from(high) - f64::from(low)) / 3.0).max(6.0);
    let [least, most] = holds.aspect.scaled().range.map(f64::from);
    let (low, high) = (f64::from(low), f64::from(high));
    [(low - room).max(least.min(low - 1.0)), (high + room).min(most.max(high + 1.0))]
}

const fn ink_of(zone: Option<Zone>) -> Ink {
    match zone {
        None | Some(Zone::Ideal | Zone::Acceptable) => Ink::BandIdeal,
        Some(Zone::Debated) => Ink::BandDebated,
        Some(Zone::Suboptimal) => Ink::BandSuboptimal,
        Some(Zone::Compromising) => Ink::BandOutside,
        Some(Zone::Unsafe) => Ink::BandUnsafe,
    }
}

type Refused = DrawingAreaErrorKind<crate::backend::Never>;

fn draw(items: &mut Vec<Item>, holds: &Holds, px: f64) -> Result<(), Refused> {
    let range = range_of(holds);
    let at = |step: f64| EDGE + (step - range[0]) / (range[1] - range[0]) * (px - 2.0 * EDGE);
    let units = |pixels: f64| (pixels * FINE) as i32;
    let flat = Plate::new(items, px, TALL).into_drawing_area();
    let bar = |from: f64, to: f64, ink| {
        let corners = [(units(from), units(BAR[0])), (units(to), units(BAR[1]))];
        Rectangle::new(corners, filled(ink))
    };
    // The edge lies between the last step that keeps the verdicts and the first that does not.
    let edges = [0, 1].map(|side| match &holds.ends[side] {
        End::Turns { last, first, .. } => at(f64::midpoint(f64::from(*last), f64::from(*first))),
        End::Open { .. } => at(range[side]),
    });
    flat.draw(&bar(edges[0], edges[1], Ink::BandAcceptable))?;
    let mut free = 0.0;
    for (side, end) in holds.ends.iter().enumerate() {
        let End::Turns { last, words: [_, becomes], .. } = end else { continue };
        let (from, to) =
            if side == 0 { (at(range[0]), edges[0]) } else { (edges[1], at(range[1])) };
        flat.draw(&bar(from, to, ink_of(*becomes)))?;
        let line =
            [(units(edges[side]), units(BAR[0] - 4.0)), (units(edges[side]), units(BAR[1] + 4.0))];
        flat.draw(&PathElement::new(line, style(Ink::Outline)))?;
        let label = holds.value(*last);
        let half = 0.5 * text::width(&label, CAPITAL);
        let middle = edges[side].min(px - 4.0 - half).max(4.0 + half);
        if middle - half > free {
            let quiet = words(Ink::Words, CAPITAL, HPos::Center, VPos::Top);
            flat.draw(&Text::new(label, (units(middle), units(BAR[1] + 8.0)), quiet))?;
            free = middle + half + 5.0;
        }
    }
    let x = at(f64::from(holds.now));
    let wedge = [(x - 4.5, 18.0), (x + 4.5, 18.0), (x, 27.0)].map(|(x, y)| (units(x), units(y)));
    flat.draw(&Polygon::new(wedge, filled(Ink::Mark)))?;
    let label = holds.value(holds.now);
    let half = 0.5 * text::width(&label, CAPITAL);
    let middle = x.min(px - 4.0 - half).max(4.0 + half);
    let plain = words(Ink::Words, CAPITAL, HPos::Center, VPos::Bottom);
    flat.draw(&Text::new(label, (units(middle), units(14.0)), plain))
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::chart::Aspect;
    use engine::rules;

    fn planted() -> Holds {
        let rule = rules::all().next().unwrap();
        let turns = |last, first| End::Turns {
            last,
            first,
            rule,
            words: [None, Some(Zone::Compromising)],
            returns: false,
        };
        Holds { aspect: Aspect::MesialRoom, now: 20, ends: [turns(15, 14), End::Open { last: 60 }] }
    }

    #[test]
    fn the_bar_ends_between_the_last_step_that_holds_and_the_first_that_does_not() {
        let plot = holds_plot(&planted(), Tooth::new(11).unwrap(), 320.0);
        let bars = plot.items.iter().filter_map(|item| match item {
            Item::Path { rings, closed: true, ink } => Some((*ink, rings[0][0].x, rings[0][1].x)),
            _ => None,
        });
        let of = |wanted: Ink| bars.clone().find(|(ink, ..)| *ink == wanted).unwrap();
        let (kept, broken) = (of(Ink::BandAcceptable), of(Ink::BandOutside));
        assert!((kept.1 - broken.2).abs() < 0.2, "{kept:?} {broken:?}");
        // Drawn from 8 to 26 steps: 14.5 lies 6.5 of 18 along 300 pixels.
        assert!((kept.1 - (10.0 + 300.0 * 6.5 / 18.0)).abs() < 0.2, "{kept:?}");
        assert!((kept.2 - 310.0).abs() < 0.2, "{kept:?}");
    }

    #[test]
    fn every_word_stands_on_the_plot() {
        for px in [160.0, 320.0, 720.0] {
            let plot = holds_plot(&planted(), Tooth::new(11).unwrap(), px);
            let mut words = 0;
            for item in &plot.items {
                let Item::Words { at, height, text, .. } = item else { continue };
                let half = 0.5 * text::width(text, *height);
                assert!(at.x - half > 0.0 && at.x + half < px && at.y < TALL, "{text}");
                words += 1;
            }
            assert_eq!(words, 2);
        }
    }
}
