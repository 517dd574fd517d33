//! Counts and millimetres: in words, and out of what somebody typed.

use engine::anatomy::Tooth;
use engine::debrief::with_unit;
use engine::geometry::Outline;
use engine::plan::NumberKind;
use engine::units::decimal;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlInputElement};

/// Where stepping starts: nothing where that is allowed, else the least.
#[must_use]
pub fn start(kind: &NumberKind) -> i32 {
    if kind.allows(0) { 0 } else { kind.least }
}

/// A count in words, with its direction at this tooth and never with a bare sign.
#[must_use]
pub fn directed(kind: &NumberKind, count: i32, tooth: Tooth) -> String {
    let size = with_unit(&kind.words(count.abs()), kind.unit);
    // *apex to the palate* takes the amount after its first word.
    let leading = |way: &str| match way.strip_prefix("apex ") {
        Some(rest) => format!("apex {size} {rest}"),
        None => format!("{size} {way}"),
    };
    match (count.signum(), kind.ways_at(tooth)) {
        (-1, [less, _]) if !less.is_empty() => leading(&less),
        (1, [_, more]) if !more.is_empty() => leading(&more),
        (-1, _) => format!("−{size}"),
        _ => size,
    }
}

/// A count out of what somebody typed.
///
/// # Errors
/// A sentence with what was found and what was expected.
pub fn read(kind: &NumberKind, text: &str) -> Result<i32, String> {
    let expected = || {
        format!(
            "found \"{}\", expected {} to {} {} in steps of {}",
            text.chars().take(20).collect::<String>(),
            kind.words(kind.least),
            kind.words(kind.most),
            kind.unit,
            kind.words(kind.by)
        )
    };
    let plain = text.trim().replace(['−', '–'], "-").replace(',', ".");
    let value = decimal(&plain).ok_or_else(expected)?;
    let count = value * f64::from(kind.per_unit);
    if !count.is_finite() || count.abs() > 1e6 || (count - count.round()).abs() > 1e-6 {
        return Err(expected());
    }
    #[expect(clippy::cast_possible_truncation, reason = "checked to be small and whole")]
    let count = count.round() as i32;
    if kind.allows(count) { Ok(count) } else { Err(expected()) }
}

/// What stands in the field that the event came from.
pub fn text_of(event: &Event) -> String {
    event
        .target()
        .and_then(|target| target.dyn_into::<HtmlInputElement>().ok())
        .map(|field| field.value())
        .unwrap_or_default()
}

/// Least and greatest value of one part of an outline's corners, tenths of a millimetre.
#[must_use]
pub fn span(outline: &Outline, part: usize) -> [i32; 2] {
    let values = outline.tenths().iter().map(|at| at[part]);
    [values.clone().min().unwrap_or(0), values.max().unwrap_or(0)]
}

/// Corners stretched in one part so that its old span becomes the new one.
#[must_use]
pub fn stretched(
    vertices: &[[i32; 2]],
    part: usize,
    old: [i32; 2],
    new: [i32; 2],
) -> Vec<[i32; 2]> {
    let width = (old[1] - old[0]).max(1);
    vertices
        .iter()
        .map(|at| {
            let mut at = *at;
            at[part] =
                new[0] + ((at[part] - old[0]) * (new[1] - new[0]) + width / 2).div_euclid(width);
            at
        })
        .collect()
}

/// Tenths of a millimetre as a field shows them: with the way in which they lie, never with a sign.
#[must_use]
pub fn in_words(tenths: i32, [less, more]: [&str; 2]) -> String {
    let way = match tenths.signum() {
        -1 => less,
        1 => more,
        _ => "",
    };
    format!("{:.1} {way}", f64::from(tenths.abs()) / 10.0).trim_end().to_owned()
}

/// Tenths of a millimetre out of what somebody typed: *2.5 mesial*, *2,5 m*, *−2.5*. Without a word or
/// a sign it lies the way in which it lay `before`.
#[must_use]
pub fn placed(text: &str, before: i32, [less, more]: [&str; 2]) -> Option<i32> {
    let text = text.trim().to_ascii_lowercase().replace(['−', '–'], "-").replace(',', ".");
    let end = text.find(|letter: char| letter.is_ascii_alphabetic()).unwrap_or(text.len());
    let tenths = decimal(text[..end].trim())? * 10.0;
    if !(tenths.is_finite() && tenths.abs() < 1e4 && (tenths - tenths.round()).abs() < 1e-6) {
        return None;
    }
    #[expect(clippy::cast_possible_truncation, reason = "checked to be small and whole")]
    let tenths = tenths.round() as i32;
    let word = text[end..].trim_start_matches("mm").trim();
    let oral = if more == "apical" { "oral" } else { less };
    // A minus and a word would say it twice.
    match word {
        "" => Some(if before < 0 && tenths > 0 { -tenths } else { tenths }),
        _ if tenths < 0 => None,
        _ if less.starts_with(word) || oral.starts_with(word) => Some(-tenths),
        _ => more.starts_with(word).then_some(tenths),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::plan::{Decision, Kind};

    fn kind(decision: Decision) -> NumberKind {
        match decision.entry().kind {
            Kind::Number(kind) => kind,
            _ => panic!("no number"),
        }
    }

    #[test]
    fn a_field_takes_a_comma_and_a_typographic_minus() {
        let depth = kind(Decision::Depth);
        assert_eq!(read(&depth, "1,5"), Ok(15));
        assert_eq!(read(&depth, "−0.5"), Ok(-5));
    }

    #[test]
    fn a_field_refuses_what_is_no_step_of_its_range() {
        let diameter = kind(Decision::Diameter);
        for text in ["4.2", "9", "NaN", "inf", "", "four"] {
            assert!(read(&diameter, text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_direction_is_said_in_words() {
        let [upper, lower] = [11, 41].map(|iso| Tooth::new(iso).unwrap());
        assert_eq!(directed(&kind(Decision::OffsetFacial), -10, upper), "1.0 mm to the palate");
        assert_eq!(directed(&kind(Decision::OffsetFacial), -10, lower), "1.0 mm to the tongue");
        assert_eq!(directed(&kind(Decision::Depth), 15, upper), "1.5 mm apical of the crest");
    }

    const SQUARE: [[i32; 2]; 8] =
        [[-20, -10], [0, -10], [20, -10], [20, 10], [20, 30], [0, 30], [-20, 30], [-20, 10]];

    #[test]
    fn moving_an_edge_keeps_the_opposite_edge_where_it_is() {
        let moved = stretched(&SQUARE, 1, [-10, 30], [-10, 90]);
        assert_eq!(moved[0], [-20, -10]);
        assert_eq!(moved[4], [20, 90]);
        assert!(Outline::new(moved).is_ok());
    }

    const ALONG: [&str; 2] = ["mesial", "distal"];
    const DOWN: [&str; 2] = ["palatal", "apical"];

    #[test]
    fn a_place_is_shown_in_words_and_read_back_from_them() {
        for tenths in [-400, -25, -1, 0, 7, 130] {
            for ways in [ALONG, DOWN] {
                let shown = in_words(tenths, ways);
                assert!(!shown.contains(['-', '−', '+']), "{shown}");
                assert_eq!(placed(&shown, 5, ways), Some(tenths), "{shown}");
            }
        }
        assert_eq!(in_words(-25, DOWN), "2.5 palatal");
        assert_eq!(in_words(0, ALONG), "0.0");
    }

    #[test]
    fn a_place_is_read_in_tenths_with_a_word_a_sign_or_the_way_it_lay() {
        assert_eq!(placed("3,2 m", 5, ALONG), Some(-32));
        assert_eq!(placed("3.2 mm Distal", -5, ALONG), Some(32));
        assert_eq!(placed("1 oral", 5, DOWN), Some(-10));
        assert_eq!(placed("−0.5", 5, DOWN), Some(-5));
        assert_eq!((placed("2", -5, ALONG), placed("2", 5, ALONG)), (Some(-20), Some(20)));
        for text in ["0.55", "inf", "", "2 oral", "-2 mesial", "2 up", "mesial"] {
            assert_eq!(placed(text, 5, ALONG), None, "{text}");
        }
    }
}
