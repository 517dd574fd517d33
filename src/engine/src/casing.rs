//! Capitals at the head of a text, and letters within it.
//!
//! The room's words are plain English: what begins with a letter of another alphabet stays as it is,
//! and the tables of all alphabets stay out of the page.

/// A text that begins with a capital.
#[must_use]
pub fn capital(text: &str) -> String {
    begun(text, str::make_ascii_uppercase)
}

/// A text that begins with a small letter.
#[must_use]
pub fn small(text: &str) -> String {
    begun(text, str::make_ascii_lowercase)
}

/// Whether it is a digit or a letter of a language that is written in Latin letters.
#[must_use]
pub const fn is_latin(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || matches!(letter, 'À'..='ɏ')
}

fn begun(text: &str, with: fn(&mut str)) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        with(first);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_first_letter_changes() {
        assert_eq!(
            (capital("the Plate"), small("The Plate")),
            ("The Plate".into(), "the Plate".into())
        );
        assert_eq!((capital(""), small("")), (String::new(), String::new()));
        assert_eq!((capital("µm"), small("Ähre")), ("µm".into(), "Ähre".into()));
    }
}
