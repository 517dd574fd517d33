//! How inks look: one table for the stylesheet of a file and for that of the page.
//!
//! Plates of an anatomical atlas: ink line on ivory, bone in stipple, meaning in hatching. A tint
//! never carries a meaning that line or hatching does not carry too.

use super::Ink;

/// A hatching: a tile of lines, in pixels, turned by an angle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hatching {
    /// Its name; the element that holds it is `hatch-` and the name.
    pub name: &'static str,
    /// Width and height of the tile, pixels.
    pub tile: [f64; 2],
    /// By how much the tile is turned, degrees clockwise.
    pub turn: f64,
    /// What is drawn in the tile, as path data in pixels. A stroke of no length is a dot.
    pub path: &'static str,
    /// Width of its lines, pixels.
    pub line: f64,
    /// Tone of its lines.
    pub tone: &'static str,
    /// Tone under them; empty where what lies behind shows through.
    pub under: &'static str,
}

/// Every hatching.
pub const HATCHINGS: &[Hatching] = &[
    Hatching {
        name: "defect",
        tile: [5.0, 5.0],
        turn: 45.0,
        path: "M0 2.5h5M2.5 0v5",
        line: 0.7,
        tone: "ink",
        under: "ivory",
    },
    Hatching {
        name: "membrane",
        tile: [7.0, 7.0],
        turn: -45.0,
        path: "M0 3.5h7",
        line: 0.8,
        tone: "ink",
        under: "",
    },
    Hatching {
        name: "flap",
        tile: [14.0, 9.0],
        turn: 90.0,
        path: "M1 2.2h5M8 6.7h5",
        line: 0.6,
        tone: "ink",
        under: "",
    },
    Hatching {
        name: "vital",
        tile: [4.0, 4.0],
        turn: 0.0,
        path: "M0 2h4",
        line: 0.8,
        tone: "ink",
        under: "vital",
    },
    Hatching {
        name: "socket",
        tile: [6.0, 3.0],
        turn: 0.0,
        path: "M0 1.5h6",
        line: 0.45,
        tone: "ink",
        under: "hollow",
    },
    Hatching {
        name: "gum",
        tile: [9.0, 6.0],
        turn: -20.0,
        path: "M1 1.5h2.4M5.5 4.5h2.4",
        line: 0.55,
        tone: "ink",
        under: "gum",
    },
    Hatching {
        name: "acceptable",
        tile: [7.0, 7.0],
        turn: 0.0,
        path: "M1.7 1.7h0M5.2 5.2h0",
        line: 1.3,
        tone: "ink",
        under: "ivory",
    },
    Hatching {
        name: "debated",
        tile: [5.0, 5.0],
        turn: 90.0,
        path: "M0 2.5h5",
        line: 0.6,
        tone: "ink",
        under: "ivory",
    },
    Hatching {
        name: "suboptimal",
        tile: [9.0, 9.0],
        turn: 45.0,
        path: "M0 4.5h9",
        line: 0.6,
        tone: "ink",
        under: "ivory",
    },
    Hatching {
        name: "outside",
        tile: [5.0, 5.0],
        turn: 45.0,
        path: "M0 2.5h5",
        line: 0.8,
        tone: "ink",
        under: "ivory",
    },
    Hatching {
        name: "unsafe",
        tile: [4.2, 4.2],
        turn: 45.0,
        path: "M0 2.1h4.2M2.1 0v4.2",
        line: 1.1,
        tone: "fault",
        under: "ivory",
    },
];

/// Tones of the stylesheet: name, by day, in the dark.
pub const TONES: &[(&str, &str, &str)] = &[
    ("ink", "#1d1a16", "#e9e1cf"),
    ("quiet", "#655d50", "#a89e8a"),
    ("ivory", "#f8f3e6", "#191713"),
    ("bone", "#efe3c6", "#3a3427"),
    ("cortex", "#e2d1a8", "#4a4231"),
    ("enamel", "#fdfbf4", "#57524a"),
    ("hollow", "#e6d9cb", "#241f1b"),
    ("gum", "#ecd0c2", "#4c3229"),
    ("vital", "#ead9a6", "#5a4b20"),
    ("metal", "#cfd1cd", "#5d6164"),
    ("grain", "#fbf7ea", "#8d8470"),
    ("fault", "#98291a", "#ee8f77"),
];

/// Fill, line, width of the line in pixels, dashes in pixels.
struct Look {
    fill: &'static str,
    stroke: &'static str,
    width: &'static str,
    dash: &'static str,
}

const fn look(
    fill: &'static str,
    stroke: &'static str,
    width: &'static str,
    dash: &'static str,
) -> Look {
    Look { fill, stroke, width, dash }
}

const fn look_of(ink: Ink) -> Look {
    match ink {
        Ink::Outline => look("", "ink", "1.5", ""),
        Ink::Fine => look("", "ink", ".55", ""),
        Ink::Dashed => look("", "ink", ".95", "4 3"),
        Ink::Former => look("", "fault", "1.9", "6 4"),
        Ink::OfMany => look("", "fault", "1.3", ""),
        Ink::Cortex => look("cortex", "", "", ""),
        Ink::Marrow => look("bone", "", "", ""),
        Ink::Stipple => look("", "ink", "1.05", ""),
        Ink::Tooth => look("enamel", "ink", "1.3", ""),
        Ink::Socket => look("", "", "", ""),
        Ink::Gum => look("", "ink", ".9", ""),
        Ink::Defect => look("", "ink", "1.5", ""),
        Ink::Lost => look("", "", "", ""),
        Ink::Vital => look("", "ink", "1.1", ""),
        Ink::Crown => look("", "ink", ".95", "9 3"),
        Ink::Implant => look("metal", "ink", "1.1", ""),
        Ink::Thread => look("", "ink", "1.1", ""),
        Ink::ThreadFacing => look("", "ink", ".6", ""),
        Ink::ThreadExposed => look("", "fault", "2.1", ""),
        Ink::Drill => look("", "ink", ".9", "2 2"),
        Ink::Grain => look("grain", "ink", ".65", ""),
        Ink::Membrane => look("", "ink", "1.9", ""),
        Ink::Flap => look("", "ink", "1.1", "11 3 2 3"),
        Ink::Incision => look("", "ink", "2.2", ""),
        Ink::Mark => look("ink", "ink", "1.4", ""),
        Ink::BandIdeal => look("ivory", "ink", ".6", ""),
        Ink::BandAcceptable => look("", "ink", ".6", ""),
        Ink::BandDebated => look("", "ink", ".6", ""),
        Ink::BandSuboptimal => look("", "ink", ".6", ""),
        Ink::BandOutside => look("", "ink", ".6", ""),
        Ink::BandUnsafe => look("", "ink", ".6", ""),
        Ink::SpreadSlanted => look("", "ink", ".6", ""),
        Ink::SpreadBroken => look("", "ink", ".6", ""),
        Ink::Fault => look("", "fault", "2", ""),
        Ink::Dimension => look("", "ink", ".85", ""),
        Ink::Words => look("ink", "", "", ""),
        Ink::Quiet => look("quiet", "", "", ""),
        Ink::Ground => look("ivory", "", "", ""),
    }
}

/// Type of the plates: faces that systems carry.
pub const TYPEFACE: &str = "'Iowan Old Style','Palatino Linotype',Palatino,'Book Antiqua',Georgia,'Liberation Serif','Times New Roman',serif";

/// The stylesheet of the figures: tones as custom properties (by day and in the dark), one class for
/// each ink, one for each hatching. `scope` is the selector under which it holds.
#[must_use]
pub fn stylesheet(scope: &str) -> String {
    let tones = |column: fn(&(&str, &str, &str)) -> String| -> String {
        TONES.iter().map(column).collect::<Vec<_>>().join(";")
    };
    let day = tones(|(name, day, _)| format!("--{name}:{day}"));
    let dark = tones(|(name, _, dark)| format!("--{name}:{dark}"));
    let mut sheet = format!(
        "{scope}{{{day}}}\n@media screen and (prefers-color-scheme:dark){{{scope}{{{dark}}}}}\n\
         {scope} path,{scope} circle{{stroke-linejoin:round;stroke-linecap:round;\
         vector-effect:non-scaling-stroke;fill-rule:evenodd}}\n\
         {scope} text{{font-family:{TYPEFACE};paint-order:stroke;stroke:var(--ivory);\
         stroke-width:.24em;stroke-linejoin:round}}\n\
         {scope} .ink-quiet{{font-style:italic}}\n"
    );
    for ink in Ink::ALL {
        sheet.push_str(&rule_of(scope, *ink));
    }
    for Hatching { name, line, tone, under, .. } in HATCHINGS {
        sheet.push_str(&format!(
            "{scope} .hatch-{name}{{stroke:var(--{tone});stroke-width:{line};vector-effect:none}}\n"
        ));
        if !under.is_empty() {
            sheet.push_str(&format!("{scope} .under-{name}{{fill:var(--{under})}}\n"));
        }
    }
    sheet.push_str(&format!(
        "{scope} .open{{fill:none}}\n{scope} .words-fault{{fill:var(--fault)}}\n"
    ));
    sheet
}

fn rule_of(scope: &str, ink: Ink) -> String {
    let Look { fill, stroke, width, dash } = look_of(ink);
    let mut body = match (hatching_of(ink), fill) {
        // Set where it is drawn: the hatching's name differs from figure to figure.
        (Some(_), _) => String::new(),
        (None, "") => "fill:none;".to_owned(),
        (None, tone) => format!("fill:var(--{tone});"),
    };
    if !stroke.is_empty() {
        body.push_str(&format!("stroke:var(--{stroke});stroke-width:{width};"));
    }
    if !dash.is_empty() {
        body.push_str(&format!("stroke-dasharray:{dash};"));
    }
    if ink == Ink::OfMany {
        body.push_str("stroke-opacity:.6;");
    }
    format!("{scope} .{}{{{}}}\n", ink.class(), body.trim_end_matches(';'))
}

/// The hatching with which an ink fills what it closes.
#[must_use]
pub fn hatching_of(ink: Ink) -> Option<&'static Hatching> {
    let name = match ink {
        Ink::Socket => "socket",
        Ink::Gum => "gum",
        Ink::Defect | Ink::Lost => "defect",
        Ink::Vital => "vital",
        Ink::Membrane | Ink::SpreadSlanted => "membrane",
        Ink::Flap | Ink::SpreadBroken => "flap",
        Ink::BandAcceptable => "acceptable",
        Ink::BandDebated => "debated",
        Ink::BandSuboptimal => "suboptimal",
        Ink::BandOutside => "outside",
        Ink::BandUnsafe => "unsafe",
        _ => return None,
    };
    HATCHINGS.iter().find(|hatching| hatching.name == name)
}

/// Class of words in an ink: an ink of lines still sets words in its tone.
#[must_use]
pub const fn tone_of_words(ink: Ink) -> &'static str {
    match ink {
        Ink::Fault | Ink::ThreadExposed | Ink::Former => "words-fault",
        Ink::Quiet | Ink::Fine | Ink::Dashed => "ink-quiet",
        _ => "ink-words",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_ink_has_a_class_of_its_own_and_shows() {
        let sheet = stylesheet(".plate");
        for ink in Ink::ALL {
            let class = format!(".{}{{", ink.class());
            assert!(sheet.contains(&class), "{class}");
        }
        let classes: std::collections::BTreeSet<_> =
            Ink::ALL.iter().map(|ink| ink.class()).collect();
        assert_eq!(classes.len(), Ink::ALL.len());
    }

    #[test]
    fn every_tone_and_hatching_that_is_used_exists() {
        let sheet = stylesheet(".plate");
        for part in sheet.split("var(--").skip(1) {
            let name = part.split(')').next().unwrap();
            assert!(TONES.iter().any(|(tone, _, _)| *tone == name), "{name}");
        }
        for hatching in HATCHINGS {
            assert!(
                Ink::ALL.iter().any(|ink| hatching_of(*ink) == Some(hatching)),
                "{}",
                hatching.name
            );
        }
    }

    #[test]
    fn ink_on_ivory_and_on_dark_has_the_contrast_that_small_text_needs() {
        // WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1.
        for (dark, column) in [(false, 1), (true, 2)] {
            let tone = |name: &str| {
                let (_, day, night) = TONES.iter().find(|(tone, _, _)| *tone == name).unwrap();
                luminance(if column == 1 { day } else { night })
            };
            for name in ["ink", "quiet", "fault"] {
                let (a, b) = (tone(name), tone("ivory"));
                let contrast = (a.max(b) + 0.05) / (a.min(b) + 0.05);
                assert!(contrast >= 4.5, "{name} (dark: {dark}): {contrast:.1}");
            }
        }
    }

    /// Relative luminance as WCAG 2.2 defines it.
    fn luminance(hex: &str) -> f64 {
        let part = |from: usize| {
            let byte = u8::from_str_radix(&hex[from..from + 2], 16).unwrap();
            let share = f64::from(byte) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { libm::pow((share + 0.055) / 1.055, 2.4) }
        };
        0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
    }
}
