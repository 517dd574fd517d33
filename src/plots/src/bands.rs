//! A reading against the bands of its rule.

use crate::backend::{FINE, Plate, figure, filled, style, words};
use engine::casing::capital;
use engine::debrief::{number_that_agrees, with_unit};
use engine::figures::{Figure, Ink, Item, text};
use engine::rules::{Bands, Reading, Zone};
use plotters::coord::types::RangedCoordf64;
use plotters::prelude::*;
use plotters_backend::text_anchor::{HPos, VPos};

/// Height of a capital, pixels.
const CAPITAL: f64 = 7.6;
/// From row to row of words.
const ROW: f64 = 15.0;
/// Blank beside the band.
const EDGE: f64 = 10.0;
/// Upper and lower edge of the band.
const BAND: [f64; 2] = [32.0, 52.0];

/// A reading on the scale that it is judged by, `px` CSS pixels wide: each zone in its own hatching and named,
/// limits with their units, the reading marked. `None` where the reading is not a number.
#[must_use]
pub fn band_plot(bands: &Bands<'_>, reading: Reading, px: f64) -> Option<Figure> {
    let Reading::Number(value) = reading else { return None };
    let px = if px.is_finite() { px.clamp(160.0, 4000.0) } else { 360.0 };
    let range = range_of(bands, value);
    let names = place_names(bands, range, px);
    let rows = names.iter().map(|name| name.row).fold(0.0, f64::max);
    let tall = BAND[1] + 2.0 * ROW + rows * ROW + 12.0;
    let mut items = Vec::new();
    // The backend cannot fail; what plotters itself refuses would leave the plot without a part.
    let _ = draw(&mut items, bands, value, range, &names, [px, tall]);
    let says = says(bands, value);
    Some(figure("bands", capital(bands.quantity), says, [px, tall], items))
}

/// What is drawn: all limits and the reading, with room at both ends; never below nothing where
/// nothing is.
fn range_of(bands: &Bands<'_>, value: f64) -> [f64; 2] {
    let ends = bands.cuts.iter().map(|cut| cut.at).chain([value]);
    let (least, most) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), at| {
        (least.min(at), most.max(at))
    });
    let span = (most - least).max(0.25 * most.abs()).max(0.5);
    let from = least - 0.45 * span;
    let from = if least >= 0.0 { from.max(0.0) } else { from };
    // A first zone needs some room even where the first limit is nothing.
    let from = if least - from < 0.12 * span { least - 0.25 * span } else { from };
    [from, most + 0.45 * span]
}

/// A zone's name with its place below the band.
struct Name {
    zone: Zone,
    middle: f64,
    row: f64,
}

fn at(range: [f64; 2], px: f64, value: f64) -> f64 {
    EDGE + (value - range[0]) / (range[1] - range[0]) * (px - 2.0 * EDGE)
}

/// Names stand under their zones, a row lower where they would run into each other.
fn place_names(bands: &Bands<'_>, range: [f64; 2], px: f64) -> Vec<Name> {
    let mut ends: Vec<f64> = Vec::new();
    bands
        .zones()
        .map(|(from, to, zone)| {
            let (a, b) = (from.unwrap_or(range[0]), to.unwrap_or(range[1]));
            let half = 0.5 * text::width(zone.word(), CAPITAL);
            let middle = 0.5 * (at(range, px, a) + at(range, px, b));
            let middle = middle.min(px - 4.0 - half).max(4.0 + half);
            let row = ends.iter().position(|end| *end + 6.0 <= middle - half).unwrap_or(ends.len());
            match ends.get_mut(row) {
                Some(end) => *end = middle + half,
                None => ends.push(middle + half),
            }
            Name { zone, middle, row: (0..row).map(|_| 1.0).sum() }
        })
        .collect()
}

pub(crate) const fn ink_of(zone: Zone) -> Ink {
    match zone {
        Zone::Ideal => Ink::BandIdeal,
        Zone::Acceptable => Ink::BandAcceptable,
        Zone::Debated => Ink::BandDebated,
        Zone::Suboptimal => Ink::BandSuboptimal,
        Zone::Compromising => Ink::BandOutside,
        Zone::Unsafe => Ink::BandUnsafe,
    }
}

type Refused = Box<dyn core::error::Error>;

fn draw(
    items: &mut Vec<Item>,
    bands: &Bands<'_>,
    value: f64,
    range: [f64; 2],
    names: &[Name],
    [px, tall]: [f64; 2],
) -> Result<(), Refused> {
    let area = Plate::new(items, px, tall).into_drawing_area();
    let units = |pixels: f64| (pixels * FINE) as i32;
    let coord = Cartesian2d::<RangedCoordf64, RangedCoordf64>::new(
        range[0]..range[1],
        0.0..1.0,
        (units(EDGE)..units(px - EDGE), units(BAND[1])..units(BAND[0])),
    );
    let area = area.apply_coord_spec(coord);
    for (from, to, zone) in bands.zones() {
        let ends = [from.unwrap_or(range[0]), to.unwrap_or(range[1])];
        area.draw(&Rectangle::new([(ends[0], 0.0), (ends[1], 1.0)], filled(ink_of(zone))))?;
    }
    let row = |rows: f64| units(BAND[1] + 7.0 + rows * ROW);
    for cut in bands.cuts {
        // Where published figures differ, their spread stands under the limit.
        let [least, most] = cut.published;
        if least < most {
            let clip = |x: f64| x.clamp(range[0], range[1]);
            area.draw(&PathElement::new(
                [(clip(least), -0.12), (clip(most), -0.12)],
                style(Ink::Mark),
            ))?;
        }
        area.draw(&PathElement::new([(cut.at, -0.22), (cut.at, 1.0)], style(Ink::Outline)))?;
    }
    let flat = area.strip_coord_spec();
    for (middle, limit) in limits(bands, range, px) {
        let label = words(Ink::Words, CAPITAL, HPos::Center, VPos::Top);
        flat.draw(&Text::new(limit, (units(middle), row(0.0)), label))?;
    }
    for name in names {
        let label = words(Ink::Quiet, CAPITAL, HPos::Center, VPos::Top);
        let at = (units(name.middle), row(1.0 + name.row));
        flat.draw(&Text::new(name.zone.word(), at, label))?;
    }
    mark(&flat, bands, value, at(range, px, value), px)
}

/// Labels of limits with their places, left out where two would run into each other.
fn limits(bands: &Bands<'_>, range: [f64; 2], px: f64) -> Vec<(f64, String)> {
    let mut end = f64::NEG_INFINITY;
    let mut placed = Vec::new();
    for cut in bands.cuts {
        let words = with_unit(&trimmed(cut.at), bands.unit);
        let half = 0.5 * text::width(&words, CAPITAL);
        let middle = at(range, px, cut.at).min(px - 4.0 - half).max(4.0 + half);
        if middle - half > end + 5.0 {
            end = middle + half;
            placed.push((middle, words));
        }
    }
    placed
}

/// The reading: a wedge that points at its place, a stroke through the band, its value above.
fn mark(
    flat: &DrawingArea<Plate<'_>, plotters::coord::Shift>,
    bands: &Bands<'_>,
    value: f64,
    x: f64,
    px: f64,
) -> Result<(), Refused> {
    let units = |pixels: f64| (pixels * FINE) as i32;
    let wedge = [(x - 4.5, 22.0), (x + 4.5, 22.0), (x, 31.0)].map(|(x, y)| (units(x), units(y)));
    flat.draw(&Polygon::new(wedge, filled(Ink::Mark)))?;
    let stroke = [(units(x), units(BAND[0])), (units(x), units(BAND[1]))];
    flat.draw(&PathElement::new(stroke, style(Ink::Mark)))?;
    let fault = bands.zone_of(value).is_fault();
    let ink = if fault { Ink::Fault } else { Ink::Words };
    let text = with_unit(&number_that_agrees(bands, value), bands.unit);
    let half = 0.5 * text::width(&text, CAPITAL);
    let middle = x.min(px - 4.0 - half).max(4.0 + half);
    let label = words(ink, CAPITAL, HPos::Center, VPos::Bottom);
    flat.draw(&Text::new(text, (units(middle), units(17.0)), label))?;
    Ok(())
}

fn trimmed(limit: f64) -> String {
    let text = format!("{limit:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn says(bands: &Bands<'_>, value: f64) -> String {
    let with = |number: f64| with_unit(&trimmed(number), bands.unit);
    let zones: Vec<String> = bands
        .zones()
        .map(|(from, to, zone)| match (from, to) {
            (None, None) => zone.word().to_owned(),
            (None, Some(to)) => format!("below {} {}", with(to), zone.word()),
            (Some(from), Some(to)) => format!("{} to {} {}", with(from), with(to), zone.word()),
            (Some(from), None) => format!("beyond {} {}", with(from), zone.word()),
        })
        .collect();
    format!(
        "{}: {}, {}. The scale: {}.",
        capital(bands.quantity),
        with_unit(&number_that_agrees(bands, value), bands.unit),
        bands.zone_of(value).word(),
        zones.join("; ")
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::rules::{self, Cut};

    const MARGIN: Bands<'_> = Bands {
        quantity: "membrane margin",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(2.0, Zone::Acceptable).published(1.0, 2.0),
            Cut::from(3.0, Zone::Ideal),
            Cut::past(4.0, Zone::Acceptable),
        ],
    };

    fn plot(value: f64, px: f64) -> Figure {
        band_plot(&MARGIN, Reading::Number(value), px).unwrap()
    }

    fn bands_drawn(figure: &Figure) -> Vec<(Ink, f64, f64)> {
        let zones = [
            Ink::BandIdeal,
            Ink::BandAcceptable,
            Ink::BandDebated,
            Ink::BandSuboptimal,
            Ink::BandOutside,
            Ink::BandUnsafe,
        ];
        figure
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Path { rings, closed: true, ink } if zones.contains(ink) => {
                    Some((*ink, rings[0][0].x.min(rings[0][1].x), rings[0][0].x.max(rings[0][1].x)))
                }
                _ => None,
            })
            .collect()
    }

    #[test]
    fn zones_lie_end_to_end_in_the_order_of_the_bands() {
        let figure = plot(1.4, 360.0);
        let drawn = bands_drawn(&figure);
        let inks: Vec<Ink> = drawn.iter().map(|(ink, _, _)| *ink).collect();
        assert_eq!(
            inks,
            [Ink::BandOutside, Ink::BandAcceptable, Ink::BandIdeal, Ink::BandAcceptable]
        );
        assert!(drawn.windows(2).all(|pair| (pair[0].2 - pair[1].1).abs() <= 0.11), "{drawn:?}");
        assert!((drawn[3].2 - 350.0).abs() <= 0.11);
    }

    #[test]
    fn the_reading_is_marked_inside_the_zone_that_it_falls_in() {
        for value in [0.0, 1.999, 2.0, 2.001, 3.5, 4.0, 4.001, 9.0] {
            let figure = plot(value, 640.0);
            let wedge = figure.items.iter().find_map(|item| match item {
                Item::Path { rings, closed: true, ink: Ink::Mark } => Some(rings[0][2].x),
                _ => None,
            });
            let x = wedge.unwrap();
            let place = MARGIN
                .zones()
                .position(|(from, to, _)| {
                    from.is_none_or(|f| f <= value)
                        && to.is_none_or(|t| value < t || (t == 4.0 && value == 4.0))
                })
                .unwrap();
            let (_, from, to) = bands_drawn(&figure)[place];
            assert!(from - 0.2 <= x && x <= to + 0.2, "{value}: {x} in {from}..{to}");
        }
    }

    #[test]
    fn every_limit_stands_there_with_its_unit_and_every_zone_by_name() {
        let figure = plot(1.4, 360.0);
        let said: Vec<&str> = figure
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Words { text, .. } => Some(text.as_str()),
                _ => None,
            })
            .collect();
        for words in [
            "1.4 mm",
            "2 mm",
            "3 mm",
            "4 mm",
            "ideal",
            "acceptable",
            "outside: likely to compromise",
        ] {
            assert!(said.contains(&words), "{words}: {said:?}");
        }
        assert!(figure.says.starts_with("Membrane margin: 1.4 mm, outside: likely to compromise."));
    }

    #[test]
    fn names_of_zones_never_run_into_each_other_nor_off_the_plot() {
        for px in [200.0, 360.0, 900.0] {
            for value in [-3.0, 0.2, 3.1, 25.0] {
                let figure = plot(value, px);
                let boxes: Vec<(f64, f64, f64)> = figure
                    .items
                    .iter()
                    .filter_map(|item| match item {
                        Item::Words { at, height, text: words, .. } => {
                            let half = 0.5 * text::width(words, *height);
                            Some((at.y, at.x - half, at.x + half))
                        }
                        _ => None,
                    })
                    .collect();
                for (place, a) in boxes.iter().enumerate() {
                    assert!(a.1 >= -0.2 && a.2 <= px + 0.2 && a.0 <= figure.window.most.y, "{a:?}");
                    for b in &boxes[place + 1..] {
                        let apart = (a.0 - b.0).abs() > 8.0 || a.2 <= b.1 || b.2 <= a.1;
                        assert!(apart, "{px} {value}: {a:?} {b:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn the_published_spread_of_a_limit_is_drawn_where_figures_differ() {
        let figure = plot(2.5, 360.0);
        let lines = figure.items.iter().filter(|item| {
            matches!(item, Item::Path { closed: false, ink: Ink::Mark, rings } if rings[0][0].y > BAND[1])
        });
        assert_eq!(lines.count(), 1);
    }

    #[test]
    fn a_situation_stands_on_no_scale() {
        assert!(band_plot(&MARGIN, Reading::Situation("left"), 360.0).is_none());
    }

    #[test]
    fn every_rule_with_bands_can_be_plotted_at_each_of_its_limits() {
        for rule in rules::all() {
            let Some(bands) = rule.bands() else { continue };
            for cut in bands.cuts {
                let figure = band_plot(bands, Reading::Number(cut.at), 360.0).unwrap();
                assert_eq!(bands_drawn(&figure).len(), bands.cuts.len() + 1, "{}", rule.id);
                let finite = figure.items.iter().all(|item| match item {
                    Item::Path { rings, .. } => {
                        rings.iter().flatten().all(|at| at.x.is_finite() && at.y.is_finite())
                    }
                    _ => true,
                });
                assert!(finite, "{}", rule.id);
            }
        }
    }
}
