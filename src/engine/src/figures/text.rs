//! How wide words come out, without asking a browser.
//!
//! A label is laid out before anybody draws it, on a server or in a test as well as on the page, so
//! widths come from a fixed table. Whoever draws it is told the width and fits the letters to it.

/// Advance widths of the printable ASCII characters in thousandths of the type size: Liberation Serif
/// 2 (SIL Open Font License), read from its `hmtx` table; they are those of the common Roman type.
const ADVANCES: [u16; 95] = [
    250, 333, 408, 500, 500, 833, 778, 180, 333, 333, 500, 564, 250, 333, 250, 278, 500, 500, 500,
    500, 500, 500, 500, 500, 500, 500, 278, 278, 564, 564, 564, 444, 921, 722, 667, 667, 722, 611,
    556, 722, 722, 333, 389, 722, 611, 889, 722, 722, 556, 722, 667, 556, 611, 722, 722, 944, 722,
    722, 611, 333, 278, 333, 469, 500, 333, 444, 500, 444, 500, 444, 333, 500, 500, 278, 278, 500,
    278, 778, 500, 500, 500, 500, 333, 389, 278, 500, 500, 722, 500, 500, 444, 480, 200, 480, 541,
];

/// Type size over the height of a capital, of the same face (`OS/2` cap height 1341 of 2048).
pub const SIZE_OVER_CAPITAL: f64 = 2048.0 / 1341.0;

/// Letters are set a little wider than the table, because small type is easier to read so.
const SPREAD: f64 = 1.05;

/// Width of words whose capitals are `height` tall, in the unit of `height`. A character outside
/// ASCII counts as a digit.
#[must_use]
pub fn width(text: &str, height: f64) -> f64 {
    let thousandths: u32 = text
        .chars()
        .map(|letter| {
            let place = u32::from(letter).checked_sub(32).and_then(|p| usize::try_from(p).ok());
            u32::from(place.and_then(|p| ADVANCES.get(p)).copied().unwrap_or(500))
        })
        .sum();
    f64::from(thousandths) / 1000.0 * SIZE_OVER_CAPITAL * SPREAD * height
}

/// Breaks words into lines no wider than `most`; a single longer word stands alone, and a number
/// keeps its unit.
#[must_use]
pub fn wrap(text: &str, height: f64, most: f64) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match words.last_mut() {
            Some(before) if word.starts_with("mm") => {
                before.push(' ');
                before.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    let mut lines: Vec<String> = Vec::new();
    for word in words {
        match lines.last_mut() {
            Some(line)
                if width(line, height) + width(" ", height) + width(&word, height) <= most =>
            {
                line.push(' ');
                line.push_str(&word);
            }
            _ => lines.push(word),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wide_letter_is_wider_than_a_narrow_one_and_widths_grow_with_the_type() {
        assert!(width("m", 1.0) > 2.0 * width("i", 1.0));
        assert!((width("crest", 2.0) - 2.0 * width("crest", 1.0)).abs() < 1e-12);
    }

    #[test]
    fn a_unit_stays_with_its_number() {
        assert_eq!(wrap("palatal plate 1.7 mm", 1.0, 11.0).last().unwrap(), "1.7 mm");
    }

    #[test]
    fn no_line_is_wider_than_asked_unless_it_is_one_word() {
        let lines = wrap("distance from the planned margin", 1.0, 14.0);
        assert!(lines.len() > 1);
        assert!(lines.iter().all(|line| width(line, 1.0) <= 14.0), "{lines:?}");
        assert_eq!(wrap("interproximal", 1.0, 2.0), ["interproximal"]);
        assert_eq!(lines.join(" "), "distance from the planned margin");
    }
}
