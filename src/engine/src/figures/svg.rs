//! A figure as an SVG file, and the parts that a page needs to draw the same.

use super::style::{HATCHINGS, Hatching, hatching_of, stylesheet, tone_of_words};
use super::text;
use super::{Anchor, Figure, Item};
use crate::geometry::P2;

/// A figure as one self-contained SVG file: its own stylesheet, no `style` attribute, nothing
/// fetched. `width` is that for which the figure was laid out, in CSS pixels.
#[must_use]
pub fn to_svg(figure: &Figure) -> String {
    let window = figure.window;
    let (wide, tall) = (window.width() / figure.pixel, window.height() / figure.pixel);
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"plate\" role=\"img\" \
         aria-labelledby=\"{name}-title {name}-says\" viewBox=\"{}\" width=\"{}\" height=\"{}\">\n\
         <title id=\"{name}-title\">{}</title>\n<desc id=\"{name}-says\">{}</desc>\n<style>\n{}</style>\n<defs>\n",
        view_box(figure),
        number(wide),
        number(tall),
        escaped(&figure.title),
        escaped(&format!("{} Synthetic, not for treatment.", figure.says)),
        stylesheet(".plate"),
        name = figure.name,
    );
    for hatching in HATCHINGS {
        svg.push_str(&pattern(figure, hatching));
    }
    svg.push_str("</defs>\n");
    for item in &figure.items {
        svg.push_str(&element(figure, item));
    }
    svg.push_str("</svg>\n");
    svg
}

/// The `viewBox` of a figure.
#[must_use]
pub fn view_box(figure: &Figure) -> String {
    let window = figure.window;
    [window.least.x, window.least.y, window.width(), window.height()].map(number).join(" ")
}

/// The id under which a figure holds a hatching.
#[must_use]
pub fn hatching_id(figure: &Figure, hatching: &Hatching) -> String {
    format!("{}-hatch-{}", figure.name, hatching.name)
}

/// The `patternTransform` of a hatching in a figure: pixels to millimetres, and its turn.
#[must_use]
pub fn hatching_transform(figure: &Figure, hatching: &Hatching) -> String {
    format!("scale({}) rotate({})", number_of(figure.pixel, 5), number(hatching.turn))
}

/// The `fill` attribute of a path or circle; `None` where the stylesheet's class decides.
#[must_use]
pub fn fill(figure: &Figure, item: &Item) -> Option<String> {
    let (ink, closed) = match item {
        Item::Path { closed, ink, .. } => (*ink, *closed),
        Item::Circle { ink, .. } => (*ink, true),
        Item::Words { .. } => return None,
    };
    let hatching = hatching_of(ink)?;
    Some(if closed {
        format!("url(#{})", hatching_id(figure, hatching))
    } else {
        "none".to_owned()
    })
}

/// The `class` attribute of an item.
#[must_use]
pub fn class(item: &Item) -> String {
    match item {
        Item::Path { closed: false, ink, .. } => format!("{} open", ink.class()),
        Item::Path { ink, .. } | Item::Circle { ink, .. } => ink.class().to_owned(),
        Item::Words { ink, .. } => tone_of_words(*ink).to_owned(),
    }
}

/// Path data of rings, in millimetres. A ring of one point is a dot: a stroke of no length.
#[must_use]
pub fn path_data(rings: &[Vec<P2>], closed: bool) -> String {
    let mut data = String::new();
    for ring in rings {
        for (place, at) in ring.iter().enumerate() {
            data.push_str(if place == 0 { "M" } else { "L" });
            data.push_str(&number(at.x));
            data.push(' ');
            data.push_str(&number(at.y));
        }
        if ring.len() == 1 {
            data.push_str("h0");
        } else if closed {
            data.push('Z');
        }
    }
    data
}

/// Type size for capitals of this height, and the length to which the words are set.
#[must_use]
pub fn type_of(words: &str, height: f64) -> (f64, f64) {
    (height * text::SIZE_OVER_CAPITAL, text::width(words, height))
}

/// The `text-anchor` of an anchor.
#[must_use]
pub const fn text_anchor(anchor: Anchor) -> &'static str {
    match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    }
}

/// A length in millimetres as attributes hold it: to a thousandth, nothing trailing.
#[must_use]
pub fn number(value: f64) -> String {
    number_of(value, 3)
}

fn number_of(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn pattern(figure: &Figure, hatching: &Hatching) -> String {
    let Hatching { name, tile: [wide, tall], path, under, .. } = hatching;
    let ground = if under.is_empty() {
        String::new()
    } else {
        format!(
            "<rect class=\"under-{name}\" width=\"{}\" height=\"{}\"/>",
            number(*wide),
            number(*tall)
        )
    };
    format!(
        "<pattern id=\"{}\" patternUnits=\"userSpaceOnUse\" width=\"{}\" height=\"{}\" patternTransform=\"{}\">{ground}<path class=\"hatch-{name}\" d=\"{path}\"/></pattern>\n",
        hatching_id(figure, hatching),
        number(*wide),
        number(*tall),
        hatching_transform(figure, hatching),
    )
}

fn element(figure: &Figure, item: &Item) -> String {
    let class = class(item);
    let fill = fill(figure, item).map(|fill| format!(" fill=\"{fill}\"")).unwrap_or_default();
    match item {
        Item::Path { rings, closed, .. } => {
            format!("<path class=\"{class}\"{fill} d=\"{}\"/>\n", path_data(rings, *closed))
        }
        Item::Circle { middle, radius, .. } => format!(
            "<circle class=\"{class}\"{fill} cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n",
            number(middle.x),
            number(middle.y),
            number(*radius)
        ),
        Item::Words { at, anchor, height, text, .. } => {
            let (size, length) = type_of(text, *height);
            format!(
                "<text class=\"{class}\" x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\" textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\">{}</text>\n",
                number(at.x),
                number(at.y),
                number(size),
                text_anchor(*anchor),
                number(length),
                escaped(text)
            )
        }
    }
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::super::{Ink, Window};
    use super::*;

    fn figure(items: Vec<Item>) -> Figure {
        Figure {
            name: "trial",
            title: "A <trial> & more".to_owned(),
            says: "Two parts.".to_owned(),
            window: Window { least: P2::new(0.0, 0.0), most: P2::new(36.0, 18.0) },
            pixel: 0.1,
            items,
            handles: vec![],
            scale_bar: None,
        }
    }

    #[test]
    fn a_ring_closes_a_line_stays_open_and_one_point_is_a_dot() {
        let ring = vec![P2::new(0.0, 0.0), P2::new(1.0, -0.0001), P2::new(1.0, 1.5)];
        assert_eq!(path_data(std::slice::from_ref(&ring), true), "M0 0L1 0L1 1.5Z");
        assert_eq!(path_data(&[ring], false), "M0 0L1 0L1 1.5");
        assert_eq!(path_data(&[vec![P2::new(2.0, 3.25)]], false), "M2 3.25h0");
    }

    #[test]
    fn an_open_line_in_a_hatched_ink_is_not_filled() {
        let line = |closed| Item::Path {
            rings: vec![vec![P2::new(1.0, 1.0), P2::new(2.0, 2.0)]],
            closed,
            ink: Ink::Membrane,
        };
        let plate = figure(vec![]);
        assert_eq!(fill(&plate, &line(false)).as_deref(), Some("none"));
        assert_eq!(fill(&plate, &line(true)).as_deref(), Some("url(#trial-hatch-membrane)"));
    }

    #[test]
    fn a_file_says_what_it_shows_carries_the_caution_and_has_no_style_attribute() {
        let words = Item::Words {
            at: P2::new(1.0, 2.0),
            anchor: Anchor::Start,
            height: 0.8,
            text: "gap < 2 mm".to_owned(),
            ink: Ink::Words,
        };
        let svg = to_svg(&figure(vec![words]));
        assert!(svg.contains("<title id=\"trial-title\">A &lt;trial&gt; &amp; more</title>"));
        assert!(svg.contains("Synthetic, not for treatment."));
        assert!(svg.contains("gap &lt; 2 mm"));
        assert!(!svg.contains(" style=") && !svg.contains("href"));
        assert!(svg.contains("width=\"360\" height=\"180\""));
    }
}
