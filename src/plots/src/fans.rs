//! Bands of what a site loses over months, one for each treatment.

use crate::backend::{FINE, Never, Plate, figure, filled, style, words};
use engine::figures::{Figure, Ink, Item, text};
use engine::healing::{Arm, Fan, Illustration, Quantity, Whose};
use engine::units::Mm;
use plotters::prelude::*;
use plotters_backend::text_anchor::{HPos, VPos};

/// Height of a capital, and from row to row of words, pixels.
const CAPITAL: f64 = 7.6;
const ROW: f64 = 13.0;
/// Blank above the months, beside the millimetres, below, and between a band and its label, pixels.
const ABOVE: f64 = 46.0;
const BEFORE: f64 = 26.0;
const BELOW: f64 = 10.0;
const BESIDE: f64 = 8.0;
/// Steps of a curve in a month.
const FINENESS: i32 = 4;

/// Bands of a quantity over twelve months, `px` CSS pixels wide: what is lost goes down from the level
/// of the extraction. Each treatment has a hatching and a line of its own and is named where it ends.
/// Both quantities of a picture have one scale.
#[must_use]
pub fn fan_plot(shown: &Illustration, quantity: Quantity, px: f64) -> Figure {
    let px = if px.is_finite() { px.clamp(240.0, 4000.0) } else { 360.0 };
    let tall = (0.62 * px).clamp(210.0, 340.0);
    let mut items = Vec::new();
    // The backend cannot fail; what plotters itself refuses would leave the plot without a part.
    let _ = draw(&mut items, shown, quantity, [px, tall]);
    // The hatchings are those of the bands, held once for all plots of a page.
    figure("bands", quantity.title().to_owned(), shown.says(quantity), [px, tall], items)
}

type Refused = DrawingAreaErrorKind<Never>;

/// How a treatment is drawn: its band, its line. What lies lowest covers what is under it and is drawn
/// first; the others let it show.
const fn inks(whose: Whose) -> [Ink; 2] {
    match whose {
        Whose::Untreated => [Ink::BandAcceptable, Ink::Drill],
        Whose::Nearest => [Ink::SpreadBroken, Ink::Dashed],
        Whose::Yours => [Ink::SpreadSlanted, Ink::Incision],
    }
}

/// The most that any treatment loses, up to a whole millimetre.
fn deepest(shown: &Illustration) -> f64 {
    let fans = shown.arms.iter().filter_map(|arm| arm.fan.ok());
    let lost = fans.flat_map(|fan| {
        Quantity::ALL.into_iter().flat_map(move |one| fan.lost(one, fan.last()).map(Mm::get))
    });
    lost.fold(3.0, f64::max).ceil()
}

fn draw(
    items: &mut Vec<Item>,
    shown: &Illustration,
    quantity: Quantity,
    [px, tall]: [f64; 2],
) -> Result<(), Refused> {
    let known: Vec<(&Arm, Fan)> =
        shown.arms.iter().filter_map(|arm| Some((arm, arm.fan.ok()?))).collect();
    let names = known.iter().flat_map(|(arm, _)| shown.labels(arm));
    let widest = names.map(|name| text::width(name, CAPITAL)).fold(0.0, f64::max);
    let most = deepest(shown);
    let right = px - widest - BESIDE - 6.0;
    let x = |months: f64| BEFORE + months / 12.0 * (right - BEFORE);
    let y = |lost: f64| ABOVE + lost / most * (tall - BELOW - ABOVE);
    let units = |pixels: f64| (pixels * FINE) as i32;
    let at = |months: f64, lost: f64| (units(x(months)), units(y(lost)));
    let flat = Plate::new(items, px, tall).into_drawing_area();
    for (arm, fan) in known.iter().rev() {
        let [band, line] = inks(arm.whose.first().copied().unwrap_or(Whose::Untreated));
        let months = moments(fan);
        let edge = |place: usize| {
            let lost = |months: &f64| at(*months, fan.lost(quantity, *months)[place].get());
            months.iter().map(lost).collect::<Vec<_>>()
        };
        let around: Vec<_> = edge(0).into_iter().chain(edge(2).into_iter().rev()).collect();
        flat.draw(&Polygon::new(around, filled(band)))?;
        flat.draw(&PathElement::new(edge(1), style(line)))?;
    }
    for (_, fan) in &known {
        let end = at(fan.last(), fan.lost(quantity, fan.last())[1].get());
        flat.draw(&Circle::new(end, (2.2 * FINE) as u32, filled(Ink::Mark)))?;
    }
    axes(&flat, most, [right, tall], &at)?;
    for (name, (from, row)) in labels(shown, &known, quantity, &|months| x(months), &|lost| y(lost))
    {
        let quiet = words(Ink::Words, CAPITAL, HPos::Left, VPos::Center);
        flat.draw(&Text::new(name, (units(from), units(row)), quiet))?;
    }
    Ok(())
}

/// Where curves bend: quarters of months, and the end.
fn moments(fan: &Fan) -> Vec<f64> {
    let quarters = (0..=12 * FINENESS).map(|step| f64::from(step) / f64::from(FINENESS));
    let last = fan.last();
    quarters.filter(|months| *months < last).chain([last]).collect()
}

/// Months along the level of the extraction, millimetres down.
fn axes(
    flat: &DrawingArea<Plate<'_>, plotters::coord::Shift>,
    most: f64,
    [right, tall]: [f64; 2],
    at: &dyn Fn(f64, f64) -> (i32, i32),
) -> Result<(), Refused> {
    let units = |pixels: f64| (pixels * FINE) as i32;
    let quiet = |across, along| words(Ink::Quiet, CAPITAL, across, along);
    flat.draw(&PathElement::new(vec![at(0.0, 0.0), at(12.0, 0.0)], style(Ink::Outline)))?;
    let foot = (units(BEFORE), units(tall - BELOW));
    flat.draw(&PathElement::new(vec![at(0.0, 0.0), foot], style(Ink::Fine)))?;
    for month in [0, 1, 2, 3, 6, 9, 12] {
        let (across, down) = at(f64::from(month), 0.0);
        let tick = vec![(across, down - units(4.0)), (across, down)];
        flat.draw(&PathElement::new(tick, style(Ink::Fine)))?;
        let label = quiet(HPos::Center, VPos::Bottom);
        flat.draw(&Text::new(month.to_string(), (across, down - units(7.0)), label))?;
    }
    let mut lost = 1;
    while f64::from(lost) <= most {
        let (across, down) = at(0.0, f64::from(lost));
        let tick = vec![(across - units(4.0), down), (across, down)];
        flat.draw(&PathElement::new(tick, style(Ink::Fine)))?;
        let label = quiet(HPos::Right, VPos::Center);
        flat.draw(&Text::new(lost.to_string(), (across - units(7.0), down), label))?;
        lost += 1;
    }
    let head = units(14.0);
    flat.draw(&Text::new("mm lost", (units(4.0), head), quiet(HPos::Left, VPos::Bottom)))?;
    let months = quiet(HPos::Right, VPos::Bottom);
    flat.draw(&Text::new("months", (units(right), head), months))
}

/// Names beside the ends of their lines, pushed down where one would lie on another.
fn labels(
    shown: &Illustration,
    known: &[(&Arm, Fan)],
    quantity: Quantity,
    x: &dyn Fn(f64) -> f64,
    y: &dyn Fn(f64) -> f64,
) -> Vec<(&'static str, (f64, f64))> {
    let mut blocks: Vec<(f64, f64, Vec<&'static str>)> = known
        .iter()
        .map(|(arm, fan)| {
            let names: Vec<&str> = shown.labels(arm).collect();
            let middle = y(fan.lost(quantity, fan.last())[1].get());
            let above = names.iter().skip(1).fold(0.0, |above, _| above + 0.5 * ROW);
            (x(fan.last()) + BESIDE, middle - above, names)
        })
        .collect();
    let mut free = f64::NEG_INFINITY;
    let mut placed = Vec::new();
    // From the uppermost down.
    while let Some(place) =
        (0..blocks.len()).reduce(|a, b| if blocks[b].1 < blocks[a].1 { b } else { a })
    {
        let (from, top, names) = blocks.remove(place);
        let mut row = top.max(free);
        for name in names {
            placed.push((name, (from, row)));
            row += ROW;
        }
        free = row;
    }
    placed
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::healing::illustration;
    use engine::plan::Decision;
    use engine::rules::trial::Trial;

    /// Three treatments: an implant with an empty gap, one with a grafted gap, none.
    fn three() -> Illustration {
        let (mut mine, nearest) = (Trial::plain(), Trial::plain());
        mine.keys(&[("graft-material", "no-graft")]);
        illustration(&mine.case, &mine.plan(), Some(&nearest.plan()))
    }

    fn bands(plot: &Figure) -> Vec<(Ink, &Vec<engine::geometry::P2>)> {
        let band = |item| match item {
            &Item::Path { ref rings, closed: true, ink } if ink != Ink::Ground => {
                Some((ink, &rings[0]))
            }
            _ => None,
        };
        plot.items.iter().filter_map(band).collect()
    }

    #[test]
    fn each_treatment_has_a_band_of_its_own_hatching_and_what_covers_lies_lowest() {
        for quantity in Quantity::ALL {
            let plot = fan_plot(&three(), quantity, 360.0);
            let inks: Vec<Ink> = bands(&plot).into_iter().map(|(ink, _)| ink).collect();
            assert_eq!(inks, [Ink::BandAcceptable, Ink::SpreadBroken, Ink::SpreadSlanted]);
            let hatching = |ink: &Ink| engine::figures::style::hatching_of(*ink).unwrap();
            // Only the lowest hides what it lies on.
            assert!(inks[1..].iter().all(|ink| hatching(ink).under.is_empty()));
        }
    }

    #[test]
    fn a_line_lies_within_its_band_and_ends_where_the_fan_says() {
        let shown = three();
        let plot = fan_plot(&shown, Quantity::Width, 360.0);
        let fan = shown.arms[0].fan.unwrap();
        let (_, ring) =
            bands(&plot).into_iter().find(|(ink, _)| *ink == Ink::SpreadSlanted).unwrap();
        let line = plot.items.iter().find_map(|item| match item {
            Item::Path { rings, closed: false, ink: Ink::Incision } => Some(&rings[0]),
            _ => None,
        });
        let (line, half) = (line.unwrap(), ring.len() / 2);
        for (at, (upper, lower)) in
            line.iter().zip(ring[..half].iter().zip(ring[half..].iter().rev()))
        {
            assert!(upper.y <= at.y && at.y <= lower.y, "{upper:?} {at:?} {lower:?}");
        }
        let last = |points: &[engine::geometry::P2]| points[points.len() - 1].y;
        let [low, middle, high] = fan.lost(Quantity::Width, 12.0).map(Mm::get);
        let ratio = (last(line) - ring[half - 1].y) / (ring[half].y - ring[half - 1].y);
        assert!((ratio - (middle - low) / (high - low)).abs() < 0.01, "{ratio}");
    }

    #[test]
    fn every_word_stands_on_the_plot_and_on_no_other_at_every_width() {
        let mut early = Trial::plain();
        early.course("let-heal").keys(&[("healed-act", "place")]);
        early.number(Decision::PlaceAfter, 6);
        let early = illustration(&early.case, &early.plan(), Some(&Trial::plain().plan()));
        for (shown, px) in
            [&three(), &early].into_iter().flat_map(|one| [240.0, 318.0, 420.0].map(|px| (one, px)))
        {
            for quantity in Quantity::ALL {
                let plot = fan_plot(shown, quantity, px);
                let mut boxes: Vec<([f64; 4], &str)> = Vec::new();
                for item in &plot.items {
                    let Item::Words { at, anchor, height, text, .. } = item else { continue };
                    let wide = text::width(text, *height);
                    let left = match anchor {
                        engine::figures::Anchor::Start => at.x,
                        engine::figures::Anchor::Middle => at.x - 0.5 * wide,
                        engine::figures::Anchor::End => at.x - wide,
                    };
                    let one = [left, at.y - height, left + wide, at.y + 0.25 * height];
                    assert!(one[0] >= 0.0 && one[2] <= px, "{text} at {px}: {one:?}");
                    assert!(one[1] >= 0.0 && one[3] <= plot.window.most.y, "{text}: {one:?}");
                    for (other, word) in &boxes {
                        let apart = one[2] <= other[0]
                            || other[2] <= one[0]
                            || one[3] <= other[1]
                            || other[3] <= one[1];
                        assert!(apart, "{text} on {word} at {px}");
                    }
                    boxes.push((one, text));
                }
                for name in ["yours", "nearest sound", "untreated"] {
                    assert!(boxes.iter().any(|(_, word)| *word == name), "{name}");
                }
            }
        }
    }
}
