//! What the plots about learners draw with: lines, areas, dots and words at places in pixels.

use crate::backend::{FINE, Plate, filled, style, words};
use engine::figures::{Ink, Item};
use plotters::coord::Shift;
use plotters::prelude::*;
use plotters_backend::text_anchor::{HPos, VPos};

/// Height of a capital, pixels.
pub(crate) const CAPITAL: f64 = 7.6;

/// A width that can be laid out for: what is asked, within reason.
pub(crate) fn laid_out(px: f64) -> f64 {
    if px.is_finite() { px.clamp(240.0, 4000.0) } else { 360.0 }
}

/// Which point of some words lies at their place.
pub(crate) type Held = (HPos, VPos);
/// Their middle.
pub(crate) const MIDDLE: Held = (HPos::Center, VPos::Center);
/// The middle of their beginning.
pub(crate) const START: Held = (HPos::Left, VPos::Center);
/// The middle of their end.
pub(crate) const END: Held = (HPos::Right, VPos::Center);

/// Draws on a plate. The backend cannot fail; what plotters itself refuses would leave the plot without
/// a part.
pub(crate) struct Pen<'a>(DrawingArea<Plate<'a>, Shift>);

impl<'a> Pen<'a> {
    /// On a plate of so many pixels that adds to `items`.
    pub(crate) fn on(items: &'a mut Vec<Item>, [wide, tall]: [f64; 2]) -> Self {
        Self(Plate::new(items, wide, tall).into_drawing_area())
    }

    /// A line through places.
    pub(crate) fn line(&self, places: &[[f64; 2]], ink: Ink) {
        let places: Vec<_> = places.iter().map(|place| units(*place)).collect();
        let _ = self.0.draw(&PathElement::new(places, style(ink)));
    }

    /// A rectangle between two corners, filled as its ink says.
    pub(crate) fn area(&self, from: [f64; 2], to: [f64; 2], ink: Ink) {
        let _ = self.0.draw(&Rectangle::new([units(from), units(to)], filled(ink)));
    }

    /// A dot.
    pub(crate) fn dot(&self, at: [f64; 2], radius: f64) {
        let radius = (radius * FINE) as u32;
        let _ = self.0.draw(&Circle::new(units(at), radius, filled(Ink::Mark)));
    }

    /// Words.
    pub(crate) fn words(&self, said: &str, at: [f64; 2], ink: Ink, (across, along): Held) {
        let style = words(ink, CAPITAL, across, along);
        let _ = self.0.draw(&Text::new(said.to_owned(), units(at), style));
    }
}

fn units([x, y]: [f64; 2]) -> (i32, i32) {
    ((x * FINE) as i32, (y * FINE) as i32)
}

#[cfg(test)]
pub(crate) mod tests {
    use engine::figures::{Anchor, Figure, Item, text};

    /// Every word of a plot, and that each stands on the plot and on no other.
    pub(crate) fn words_apart(plot: &Figure) -> Vec<String> {
        let mut boxes: Vec<([f64; 4], &str)> = Vec::new();
        for item in &plot.items {
            let Item::Words { at, anchor, height, text, .. } = item else { continue };
            let wide = text::width(text, *height);
            let left = match anchor {
                Anchor::Start => at.x,
                Anchor::Middle => at.x - 0.5 * wide,
                Anchor::End => at.x - wide,
            };
            let one = [left, at.y - height, left + wide, at.y + 0.25 * height];
            let most = plot.window.most;
            assert!(one[0] >= 0.0 && one[2] <= most.x, "{text} in {}: {one:?}", most.x);
            assert!(one[1] >= 0.0 && one[3] <= most.y, "{text} in {}: {one:?}", most.y);
            for (other, word) in &boxes {
                let apart = one[2] <= other[0]
                    || other[2] <= one[0]
                    || one[3] <= other[1]
                    || other[3] <= one[1];
                assert!(apart, "{text} on {word} at {}", most.x);
            }
            boxes.push((one, text));
        }
        boxes.into_iter().map(|(_, word)| word.to_owned()).collect()
    }
}
