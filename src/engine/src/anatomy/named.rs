//! The oral side named for its jaw. Rules, decisions and reports are written once for both jaws and
//! say *oral*; whoever reads them beside a case reads *palatal* or *lingual*.

use super::tooth::{Jaw, Tooth};
use crate::casing::is_latin;
use std::borrow::Cow;

/// What *oral* means when it does not mean a side: by mouth, or of the mouth as a whole.
const NOT_A_SIDE: &[&str] = &[
    "anticoagulant",
    "anticoagulants",
    "antibiotic",
    "antibiotics",
    "antiresorptive",
    "antiresorptives",
    "bisphosphonate",
    "bisphosphonates",
    "cavity",
    "dose",
    "doses",
    "drug",
    "drugs",
    "health",
    "hygiene",
    "medicine",
    "mucosa",
    "surgeon",
    "surgeons",
    "surgery",
    "tablets",
];

impl Tooth {
    /// What the oral side is called on screen in this jaw.
    #[must_use]
    pub const fn oral_word(self) -> &'static str {
        match self.jaw() {
            Jaw::Maxilla => "palatal",
            Jaw::Mandible => "lingual",
        }
    }

    /// Where the oral side lies: "to the palate", "to the tongue".
    #[must_use]
    pub const fn towards_oral(self) -> &'static str {
        match self.jaw() {
            Jaw::Maxilla => "to the palate",
            Jaw::Mandible => "to the tongue",
        }
    }

    /// The words with *oral* and *orally* said for this tooth's jaw: *palatal* and *palatally* in the
    /// upper, *lingual* and *lingually* in the lower; a capital stays one.
    ///
    /// Only whole words that name a side: keys (*oral-slope*), drugs and care (*oral anticoagulant*,
    /// *oral hygiene*) and the titles of journals (*J Oral Sci*) stay as they are.
    #[must_use]
    pub fn named(self, words: &str) -> Cow<'_, str> {
        let mut named = String::new();
        let mut from = 0;
        for (at, end, adverb) in sides(words) {
            let word = match (self.jaw(), words[at..].starts_with('O')) {
                (Jaw::Maxilla, true) => "Palatal",
                (Jaw::Maxilla, false) => "palatal",
                (Jaw::Mandible, true) => "Lingual",
                (Jaw::Mandible, false) => "lingual",
            };
            named.push_str(&words[from..at]);
            named.push_str(word);
            named.push_str(if adverb { "ly" } else { "" });
            from = end;
        }
        if from == 0 {
            return Cow::Borrowed(words);
        }
        named.push_str(&words[from..]);
        Cow::Owned(named)
    }
}

/// Where *oral* or *orally* names a side: first byte, byte past the end, whether the adverb.
fn sides(words: &str) -> impl Iterator<Item = (usize, usize, bool)> + '_ {
    words.match_indices("ral").filter_map(|(place, _)| {
        let at = place.checked_sub(1)?;
        let capital = match words.as_bytes()[at] {
            b'o' => false,
            b'O' => true,
            _ => return None,
        };
        let adverb = words[place + 3..].starts_with("ly");
        let end = place + if adverb { 5 } else { 3 };
        if words[..at].ends_with(in_a_word) || words[end..].starts_with(in_a_word) {
            return None;
        }
        let next = words[end..].strip_prefix(' ').unwrap_or("");
        let next = next.split(|letter| !in_a_word(letter)).next().unwrap_or("");
        let title = capital && next.starts_with(|first: char| first.is_ascii_uppercase());
        (adverb || !title && !NOT_A_SIDE.contains(&next)).then_some((at, end, adverb))
    })
}

/// A hyphen belongs to the word: keys are written with them.
fn in_a_word(letter: char) -> bool {
    is_latin(letter) || letter == '-' || letter == '_'
}

#[cfg(test)]
mod tests {
    use super::*;

    fn upper(words: &str) -> String {
        Tooth::new(11).unwrap().named(words).into_owned()
    }

    fn lower(words: &str) -> String {
        Tooth::new(44).unwrap().named(words).into_owned()
    }

    #[test]
    fn the_oral_side_is_named_for_its_jaw() {
        let words = "Oral margin: facially, then orally; bone on the oral side, facial or oral.";
        assert_eq!(
            upper(words),
            "Palatal margin: facially, then palatally; bone on the palatal side, facial or palatal."
        );
        assert_eq!(
            lower(words),
            "Lingual margin: facially, then lingually; bone on the lingual side, facial or lingual."
        );
    }

    #[test]
    fn what_names_no_side_stays_as_it_is() {
        for words in [
            "Takes a direct oral anticoagulant, once a day.",
            "oral hygiene",
            "Clin Oral Implants Res",
            "Med Oral Patol Oral Cir Bucal",
            "Hupp, textbook of oral surgery",
            "oral-slope",
            "temporal, orals, morally, floral",
            "räoral ⊥oralé",
            "",
        ] {
            assert_eq!(upper(words), words);
            assert!(matches!(Tooth::new(31).unwrap().named(words), Cow::Borrowed(_)));
        }
    }
}
