//! The drawing backend: what plotters draws becomes items of a figure.

use engine::figures::{Anchor, Figure, Ink, Item, Window, text};
use engine::geometry::P2;
use plotters::style::{FontDesc, FontFamily, FontStyle, RGBColor, ShapeStyle, TextStyle};
use plotters_backend::text_anchor::{HPos, Pos, VPos};
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind,
};

/// Backend units in a CSS pixel: plotters counts in whole units, and a tenth of a pixel is finer
/// than the eye.
pub(crate) const FINE: f64 = 10.0;

/// Collects what plotters draws.
#[derive(Debug)]
pub(crate) struct Plate<'a> {
    items: &'a mut Vec<Item>,
    size: (u32, u32),
}

/// Nothing that this backend does can fail.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Never {}

impl core::fmt::Display for Never {
    fn fmt(&self, _: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match *self {}
    }
}

impl core::error::Error for Never {}

type Done = Result<(), DrawingErrorKind<Never>>;

/// A style whose colour names an ink: plotters hands colours through untouched, so the ink's place
/// in the list travels as the red part.
pub(crate) fn style(ink: Ink) -> ShapeStyle {
    ShapeStyle { color: color(ink).into(), filled: false, stroke_width: 1 }
}

/// The same, filled.
pub(crate) fn filled(ink: Ink) -> ShapeStyle {
    ShapeStyle { filled: true, ..style(ink) }
}

fn color(ink: Ink) -> RGBColor {
    let place = Ink::ALL.iter().position(|one| *one == ink).unwrap_or(0);
    RGBColor(u8::try_from(place).unwrap_or(0), 0, 0)
}

fn ink_of(color: BackendColor) -> Ink {
    Ink::ALL.get(usize::from(color.rgb.0)).copied().unwrap_or(Ink::Fine)
}

/// Words in an ink, with capitals of `height` pixels, held at the given point of themselves.
pub(crate) fn words<'a>(ink: Ink, height: f64, across: HPos, along: VPos) -> TextStyle<'a> {
    let size = height * text::SIZE_OVER_CAPITAL * FINE;
    let font = FontDesc::new(FontFamily::Serif, size, FontStyle::Normal);
    let RGBColor(r, g, b) = color(ink);
    let color = BackendColor { alpha: 1.0, rgb: (r, g, b) };
    TextStyle { font, color, pos: Pos::new(across, along) }
}

fn capital(size: f64) -> f64 {
    size / text::SIZE_OVER_CAPITAL / FINE
}

fn put((x, y): BackendCoord) -> P2 {
    P2::new(f64::from(x) / FINE, f64::from(y) / FINE)
}

impl<'a> Plate<'a> {
    /// A plate of so many pixels that adds to `items`.
    pub(crate) fn new(items: &'a mut Vec<Item>, wide: f64, tall: f64) -> Self {
        let units = |pixels: f64| (pixels.clamp(1.0, 10_000.0) * FINE) as u32;
        Self { items, size: (units(wide), units(tall)) }
    }

    fn path(&mut self, points: Vec<P2>, closed: bool, ink: Ink) {
        if points.len() > 1 {
            self.items.push(Item::Path { rings: vec![points], closed, ink });
        }
    }
}

impl DrawingBackend for Plate<'_> {
    type ErrorType = Never;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }

    fn ensure_prepared(&mut self) -> Done {
        Ok(())
    }

    fn present(&mut self) -> Done {
        Ok(())
    }

    fn draw_pixel(&mut self, point: BackendCoord, color: BackendColor) -> Done {
        let rings = vec![vec![put(point)]];
        self.items.push(Item::Path { rings, closed: false, ink: ink_of(color) });
        Ok(())
    }

    fn draw_line<S: BackendStyle>(
        &mut self,
        from: BackendCoord,
        to: BackendCoord,
        style: &S,
    ) -> Done {
        self.path(vec![put(from), put(to)], false, ink_of(style.color()));
        Ok(())
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        upper_left: BackendCoord,
        bottom_right: BackendCoord,
        style: &S,
        fill: bool,
    ) -> Done {
        let (a, b) = (put(upper_left), put(bottom_right));
        let mut ring = vec![a, P2::new(b.x, a.y), b, P2::new(a.x, b.y)];
        if !fill {
            ring.push(a);
        }
        self.path(ring, fill, ink_of(style.color()));
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Done {
        self.path(path.into_iter().map(put).collect(), false, ink_of(style.color()));
        Ok(())
    }

    fn draw_circle<S: BackendStyle>(
        &mut self,
        center: BackendCoord,
        radius: u32,
        style: &S,
        _fill: bool,
    ) -> Done {
        self.items.push(Item::Circle {
            middle: put(center),
            radius: f64::from(radius) / FINE,
            ink: ink_of(style.color()),
        });
        Ok(())
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        corners: I,
        style: &S,
    ) -> Done {
        self.path(corners.into_iter().map(put).collect(), true, ink_of(style.color()));
        Ok(())
    }

    fn draw_text<S: BackendTextStyle>(&mut self, words: &str, style: &S, at: BackendCoord) -> Done {
        let height = capital(style.size());
        let place = put(at);
        let drop = match style.anchor().v_pos {
            VPos::Top => height,
            VPos::Center => 0.5 * height,
            VPos::Bottom => 0.0,
        };
        let anchor = match style.anchor().h_pos {
            HPos::Left => Anchor::Start,
            HPos::Center => Anchor::Middle,
            HPos::Right => Anchor::End,
        };
        self.items.push(Item::Words {
            at: P2::new(place.x, place.y + drop),
            anchor,
            height,
            text: words.to_owned(),
            ink: ink_of(style.color()),
        });
        Ok(())
    }

    fn estimate_text_size<S: BackendTextStyle>(
        &self,
        words: &str,
        style: &S,
    ) -> Result<(u32, u32), DrawingErrorKind<Never>> {
        let height = capital(style.size());
        let units = |pixels: f64| (pixels * FINE).clamp(0.0, 1e6) as u32;
        Ok((units(text::width(words, height)), units(1.3 * height)))
    }
}

/// A finished plot.
pub(crate) fn figure(
    name: &'static str,
    title: String,
    says: String,
    size: [f64; 2],
    items: Vec<Item>,
) -> Figure {
    let window = Window { least: P2::new(0.0, 0.0), most: P2::new(size[0], size[1]) };
    let corners = [(0.0, 0.0), (size[0], 0.0), (size[0], size[1]), (0.0, size[1])];
    let ground = Item::Path {
        rings: vec![corners.map(|(x, y)| P2::new(x, y)).to_vec()],
        closed: true,
        ink: Ink::Ground,
    };
    let items = core::iter::once(ground).chain(items).collect();
    Figure { name, title, says, window, pixel: 1.0, items, handles: vec![], scale_bar: None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plotters::prelude::*;

    #[test]
    fn every_ink_comes_back_from_the_colour_that_carries_it() {
        for ink in Ink::ALL {
            let RGBColor(r, g, b) = color(*ink);
            assert_eq!(ink_of(BackendColor { alpha: 1.0, rgb: (r, g, b) }), *ink);
        }
    }

    #[test]
    fn what_plotters_draws_lands_where_it_was_told_in_its_ink() {
        let mut items = Vec::new();
        {
            let area = Plate::new(&mut items, 100.0, 50.0).into_drawing_area();
            area.draw(&Rectangle::new([(100, 100), (300, 200)], filled(Ink::BandOutside))).unwrap();
            area.draw(&Text::new(
                "2 mm",
                (500, 250),
                words(Ink::Quiet, 8.0, HPos::Center, VPos::Top),
            ))
            .unwrap();
            area.draw(&Circle::new((500, 250), 40, style(Ink::Mark))).unwrap();
        }
        let Item::Path { rings, closed: true, ink: Ink::BandOutside } = &items[0] else {
            panic!("{:?}", items[0]);
        };
        assert_eq!(rings[0][2], P2::new(30.0, 20.0));
        let Item::Words { at, height, .. } = &items[1] else { panic!("{:?}", items[1]) };
        assert!((at.y - (25.0 + height)).abs() < 1e-9 && (height - 8.0).abs() < 0.05);
        assert!(matches!(items[2], Item::Circle { radius: 4.0, ink: Ink::Mark, .. }));
    }
}
