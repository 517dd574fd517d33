//! The sheet on which a figure is put together: clips what is drawn, sets words, measures out.

use super::curve;
use super::text;
use super::{Anchor, Figure, Handle, Ink, Item, Window};
use crate::geometry::{P2, order};

/// A figure in the making.
#[derive(Debug)]
pub(super) struct Sheet {
    window: Window,
    pixel: f64,
    letter: f64,
    items: Vec<Item>,
    handles: Vec<Handle>,
    notes: [Vec<Note>; 2],
}

/// On which side of the drawing a label stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Margin {
    /// In the left margin, its lines ending at the drawing.
    Left,
    /// In the right margin, its lines beginning at the drawing.
    Right,
}

/// A label with a fine line to what it names.
#[derive(Debug, Clone)]
struct Note {
    target: P2,
    text: String,
    ink: Ink,
}

impl Sheet {
    /// An empty sheet that will be drawn `px` CSS pixels wide.
    pub(super) fn new(window: Window, px: f64) -> Self {
        let px = if px.is_finite() { px.clamp(160.0, 4000.0) } else { 360.0 };
        let pixel = window.width() / px;
        // Capitals of 7.4 px on a phone, which is type of 11.3 px, and of 9 px on a wide page.
        let capital = (7.4 + (px - 360.0) / 540.0 * 1.6).clamp(7.4, 9.0);
        let mut sheet = Self {
            window,
            pixel,
            letter: capital * pixel,
            items: Vec::new(),
            handles: Vec::new(),
            notes: [Vec::new(), Vec::new()],
        };
        sheet.area(vec![corners(window)], Ink::Ground);
        sheet
    }

    /// Height of a capital, millimetres.
    pub(super) const fn letter(&self) -> f64 {
        self.letter
    }

    /// Millimetres in a pixel.
    pub(super) const fn pixel(&self) -> f64 {
        self.pixel
    }

    /// The part of the plane that is drawn.
    pub(super) const fn window(&self) -> Window {
        self.window
    }

    /// An area of rings (even-odd).
    pub(super) fn area(&mut self, rings: Vec<Vec<P2>>, ink: Ink) {
        let rings: Vec<_> = rings
            .iter()
            .map(|ring| curve::clip_ring(ring, self.window))
            .filter(|ring| ring.len() > 2)
            .collect();
        if !rings.is_empty() {
            self.items.push(Item::Path { rings, closed: true, ink });
        }
    }

    /// An open line.
    pub(super) fn line(&mut self, points: &[P2], ink: Ink) {
        let rings = curve::clip_line(points, self.window);
        if !rings.is_empty() {
            self.items.push(Item::Path { rings, closed: false, ink });
        }
    }

    /// Several open lines of one ink, as one item.
    pub(super) fn lines(&mut self, lines: &[Vec<P2>], ink: Ink) {
        let rings: Vec<_> =
            lines.iter().flat_map(|line| curve::clip_line(line, self.window)).collect();
        if !rings.is_empty() {
            self.items.push(Item::Path { rings, closed: false, ink });
        }
    }

    /// Dots, as one item.
    pub(super) fn dots(&mut self, dots: &[P2], ink: Ink) {
        let rings: Vec<_> =
            dots.iter().filter(|dot| self.holds(**dot)).map(|dot| vec![*dot]).collect();
        if !rings.is_empty() {
            self.items.push(Item::Path { rings, closed: false, ink });
        }
    }

    /// A circle, if it lies in the window whole; otherwise what of it does.
    pub(super) fn circle(&mut self, middle: P2, radius: f64, ink: Ink) {
        let reach = P2::new(radius, radius);
        let corners = [
            P2::new(middle.x - reach.x, middle.y - reach.y),
            P2::new(middle.x + reach.x, middle.y + reach.y),
        ];
        if corners.iter().all(|corner| self.holds(*corner)) {
            self.items.push(Item::Circle { middle, radius, ink });
        } else {
            self.area(vec![curve::ellipse(middle, radius, radius)], ink);
        }
    }

    /// Words at their usual height; moved sideways as far as needed to stay on the sheet.
    pub(super) fn words(&mut self, at: P2, anchor: Anchor, text: &str, ink: Ink) {
        self.words_of(at, anchor, text, ink, self.letter);
    }

    /// Words of another height.
    pub(super) fn words_of(&mut self, at: P2, anchor: Anchor, text: &str, ink: Ink, height: f64) {
        let width = text::width(text, height);
        let edge = self.pixel * 2.0;
        let (least, most) = (self.window.least.x + edge, self.window.most.x - edge);
        let before = match anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => 0.5,
            Anchor::End => 1.0,
        } * width;
        let start = (at.x - before).min(most - width).max(least);
        let y = at.y.clamp(self.window.least.y + height + edge, self.window.most.y - edge);
        self.items.push(Item::Words {
            at: P2::new(start + before, y),
            anchor,
            height,
            text: text.to_owned(),
            ink,
        });
    }

    /// A measured distance: a line with a stroke across at either end.
    pub(super) fn dimension(&mut self, from: P2, to: P2, ink: Ink) {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let length = libm::hypot(dx, dy);
        let mut lines = vec![vec![from, to]];
        if length > 0.0 {
            let half = 3.5 * self.pixel / length;
            for end in [from, to] {
                lines.push(vec![
                    P2::new(end.x - dy * half, end.y + dx * half),
                    P2::new(end.x + dy * half, end.y - dx * half),
                ]);
            }
        }
        self.lines(&lines, ink);
    }

    /// A label in a margin for what lies at `target`; a line feed begins a new line.
    /// Nothing is said of what lies outside the window.
    pub(super) fn note(&mut self, side: Margin, target: P2, text: impl Into<String>, ink: Ink) {
        if !self.holds(target) {
            return;
        }
        let place = usize::from(side == Margin::Right);
        self.notes[place].push(Note { target, text: text.into(), ink });
    }

    /// Something that can be taken hold of.
    pub(super) fn handle(&mut self, handle: Handle) {
        if self.holds(handle.at) {
            self.handles.push(handle);
        }
    }

    /// Whether a point lies in the window.
    pub(super) fn holds(&self, at: P2) -> bool {
        let Window { least, most } = self.window;
        (least.x..=most.x).contains(&at.x) && (least.y..=most.y).contains(&at.y)
    }

    /// The labels of one margin from top to bottom: the lines of each, broken to a column of `width`,
    /// and how tall it stands.
    fn broken(&self, side: Margin, width: f64) -> Vec<(&Note, Vec<String>, f64)> {
        let mut notes: Vec<&Note> = self.notes[usize::from(side == Margin::Right)].iter().collect();
        order::sort_short(&mut notes, |a, b| a.target.y.total_cmp(&b.target.y));
        let set = notes.into_iter().map(|note| {
            let parts = note.text.lines();
            let lines: Vec<String> =
                parts.flat_map(|part| text::wrap(part, self.letter, width)).collect();
            let tall = 1.62 * self.letter * lines.iter().map(|_| 1.0).sum::<f64>();
            (note, lines, tall + 0.85 * self.letter)
        });
        set.collect()
    }

    /// Makes the sheet taller where a margin has more to say than it has room for.
    fn make_room(&mut self, layout: &mut Layout) {
        let tall =
            |side, width| -> f64 { self.broken(side, width).iter().map(|(_, _, tall)| tall).sum() };
        let tallest = tall(Margin::Left, layout.left).max(tall(Margin::Right, layout.right));
        let more = tallest - (layout.to - layout.from);
        if more > 0.0 {
            layout.to += more;
            self.window.most.y += more;
            let ground =
                Item::Path { rings: vec![corners(self.window)], closed: true, ink: Ink::Ground };
            self.items[0] = ground;
        }
    }

    /// Sets the labels of one margin: each as near to the height of its target as its neighbours
    /// allow, within `from..to`, in the column of `width` at the sheet's edge.
    fn set_notes(&mut self, side: Margin, width: f64, from: f64, to: f64) {
        let set: Vec<(Note, Vec<String>, f64)> = self
            .broken(side, width)
            .into_iter()
            .map(|(note, lines, tall)| (note.clone(), lines, tall))
            .collect();
        let talls: Vec<f64> = set.iter().map(|(_, _, tall)| *tall).collect();
        let wanted: Vec<f64> =
            set.iter().map(|(note, _, tall)| note.target.y - 0.5 * tall).collect();
        let tops = spread(&wanted, &talls, from, to);
        for ((note, lines, _), top) in set.iter().zip(tops) {
            self.set_note(side, width, note, lines, top);
        }
    }

    fn set_note(&mut self, side: Margin, width: f64, note: &Note, lines: &[String], top: f64) {
        let (letter, edge) = (self.letter, 3.0 * self.pixel);
        let leading = 1.62 * letter;
        let (x, anchor, outward) = match side {
            Margin::Left => (self.window.least.x + edge + width, Anchor::End, -1.0),
            Margin::Right => (self.window.most.x - edge - width, Anchor::Start, 1.0),
        };
        let mut baseline = top + 1.25 * letter;
        let first = baseline - 0.5 * letter;
        for line in lines {
            self.words(P2::new(x, baseline), anchor, line, note.ink);
            baseline += leading;
        }
        // The line leaves the words level, turns once, and ends in a dot on what it names.
        let start = P2::new(x - outward * 0.5 * letter, first);
        let knee = P2::new(start.x - outward * 0.7 * letter, first);
        self.line(&[start, knee, note.target], Ink::Fine);
        self.circle(note.target, 1.2 * self.pixel, Ink::Words);
    }

    /// Finishes: sets labels and the scale bar.
    pub(super) fn finish(
        mut self,
        name: &'static str,
        title: String,
        says: String,
        mut layout: Layout,
    ) -> Figure {
        self.make_room(&mut layout);
        self.set_notes(Margin::Left, layout.left, layout.from, layout.to);
        self.set_notes(Margin::Right, layout.right, layout.from, layout.to);
        if let Some(length) = layout.scale_bar {
            self.scale_bar(length);
        }
        Figure {
            name,
            title,
            says,
            window: self.window,
            pixel: self.pixel,
            items: self.items,
            handles: self.handles,
            scale_bar: layout.scale_bar,
        }
    }

    /// A bar of `length` millimetres in the lower left corner, halved by a stroke, its length above it.
    fn scale_bar(&mut self, length: f64) {
        let edge = 8.0 * self.pixel;
        let (x, y) = (self.window.least.x + edge, self.window.most.y - edge);
        let tick = 4.0 * self.pixel;
        let up = |at: f64, by: f64| vec![P2::new(x + at, y), P2::new(x + at, y - by)];
        self.lines(
            &[
                vec![P2::new(x, y), P2::new(x + length, y)],
                up(0.0, tick),
                up(0.5 * length, 0.6 * tick),
                up(length, tick),
            ],
            Ink::Dimension,
        );
        let words = format!("{length:.0} mm");
        let at = P2::new(x + 0.5 * length, y - tick - 0.5 * self.letter);
        self.words(at, Anchor::Middle, &words, Ink::Quiet);
    }
}

fn corners(Window { least, most }: Window) -> Vec<P2> {
    vec![least, P2::new(most.x, least.y), most, P2::new(least.x, most.y)]
}

/// How the margins of a finished figure are set.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layout {
    /// Width of the column of labels on the left, millimetres.
    pub left: f64,
    /// The same on the right.
    pub right: f64,
    /// Where labels may begin.
    pub from: f64,
    /// Where they must end.
    pub to: f64,
    /// Length of the scale bar.
    pub scale_bar: Option<f64>,
}

/// Tops of blocks of given heights: near where they are wanted, in order, none over another, between
/// `from` and `to` as far as they fit.
pub(super) fn spread(wanted: &[f64], talls: &[f64], from: f64, to: f64) -> Vec<f64> {
    let mut tops: Vec<f64> = wanted.to_vec();
    // Blocks that run into each other move as one group about their common middle.
    let mut groups: Vec<(f64, f64, usize)> = Vec::new();
    for (want, tall) in wanted.iter().zip(talls) {
        let mut group = (want.clamp(from, (to - tall).max(from)), *tall, 1_usize);
        while let Some(&(top, height, count)) = groups.last() {
            if top + height <= group.0 {
                break;
            }
            groups.pop();
            let (a, b) = (count_of(count), count_of(group.2));
            let middle = (a * (top + 0.5 * height) + b * (group.0 + 0.5 * group.1)) / (a + b);
            let joined = height + group.1;
            group = (
                (middle - 0.5 * joined).clamp(from, (to - joined).max(from)),
                joined,
                count + group.2,
            );
        }
        groups.push(group);
    }
    let mut next = 0;
    for (top, _, count) in groups {
        let mut y = top;
        for _ in 0..count {
            tops[next] = y;
            y += talls[next];
            next += 1;
        }
    }
    tops
}

fn count_of(count: usize) -> f64 {
    u32::try_from(count).map_or(1.0, f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_that_want_the_same_place_stand_one_under_the_other() {
        let tops = spread(&[5.0, 5.0, 5.1, 20.0], &[2.0, 2.0, 2.0, 2.0], 0.0, 30.0);
        assert!(tops.windows(2).all(|pair| pair[1] - pair[0] >= 2.0 - 1e-9), "{tops:?}");
        assert_eq!(tops[3], 20.0);
        assert!((tops[1] - 5.03).abs() < 0.5, "the group keeps its middle: {tops:?}");
    }

    #[test]
    fn labels_stay_between_the_ends_of_their_column() {
        let tops = spread(&[-3.0, -2.0, 29.0, 40.0], &[2.0; 4], 0.0, 30.0);
        assert!(tops[0] >= 0.0 && tops[3] <= 28.0, "{tops:?}");
    }

    #[test]
    fn a_margin_with_much_to_say_makes_the_sheet_taller_and_one_with_little_does_not() {
        let window = Window { least: P2::new(0.0, 0.0), most: P2::new(30.0, 12.0) };
        let finished = |labels: u32| {
            let mut sheet = Sheet::new(window, 300.0);
            for _ in 0..labels {
                sheet.note(Margin::Left, P2::new(15.0, 6.0), "palatal plate 1.7 mm", Ink::Words);
            }
            let layout = Layout { left: 6.0, right: 6.0, from: 0.7, to: 9.0, scale_bar: Some(5.0) };
            sheet.finish("trial", String::new(), String::new(), layout)
        };
        assert_eq!(finished(1).window, window);
        let tall = finished(9).window;
        assert!(tall.most.y > window.most.y && tall.most.x == window.most.x, "{tall:?}");
        let lowest = |figure: &Figure| {
            let baselines = figure.items.iter().filter_map(|item| match item {
                Item::Words { at, text, .. } if text == "1.7 mm" => Some(at.y),
                _ => None,
            });
            baselines.fold(0.0, f64::max)
        };
        assert!(lowest(&finished(9)) < tall.most.y - 2.0, "the scale bar keeps its room");
    }

    #[test]
    fn words_never_leave_the_sheet() {
        let window = Window { least: P2::new(0.0, 0.0), most: P2::new(30.0, 30.0) };
        let mut sheet = Sheet::new(window, 360.0);
        sheet.words(P2::new(29.9, 50.0), Anchor::Start, "planned margin", Ink::Words);
        let Some(Item::Words { at, height, .. }) = sheet.items.last() else {
            panic!("no words");
        };
        assert!(at.x + text::width("planned margin", *height) <= 30.0 && at.y <= 30.0);
    }
}
