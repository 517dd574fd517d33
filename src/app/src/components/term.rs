//! Terms of the trade that explain themselves in their sentence, by pointer, touch and key.

use super::plain::{self, el, together, with};
use crate::terms::terms;
use engine::casing::is_latin;
use engine::geometry::order;
use engine::plan::Step;
use std::sync::OnceLock;
use yew::prelude::*;

/// A text in which the first use of each term explains itself.
pub fn with_terms(text: &str) -> Html {
    let pieces = pieces(text).into_iter().map(|piece| match piece {
        Piece::Plain(text) => plain::text(text.to_owned()),
        Piece::Term(text, means) => term(text, means),
    });
    together(pieces.collect())
}

fn term(text: &str, means: &'static str) -> Html {
    // Gone again by Escape as well, without a move of the pointer.
    let leave = Callback::from(|event: KeyboardEvent| {
        if event.key() == "Escape"
            && let Some(word) = event.target_dyn_into::<web_sys::HtmlElement>()
        {
            let _ = word.blur();
        }
    });
    let word = html! { <button type="button" class="term-word" aria-description={means} onkeydown={leave}>{ text.to_owned() }</button> };
    let means = plain::text(means.to_owned());
    let attributes = [("class", "term-means"), ("aria-hidden", "true")];
    el("span", "term", vec![word, with("span", &attributes, vec![means])])
}

#[derive(Debug, PartialEq, Eq)]
enum Piece<'a> {
    Plain(&'a str),
    Term(&'a str, &'static str),
}

/// Every term, the longest first, so that *connective tissue graft* is not taken for a *graft*; each
/// in small letters and with what it means. Put in order once: every text is searched for all of them.
fn every() -> &'static [(String, &'static str)] {
    static EVERY: OnceLock<Vec<(String, &'static str)>> = OnceLock::new();
    EVERY.get_or_init(|| {
        let all = Step::ALL.iter().flat_map(|step| terms(*step));
        let mut every: Vec<(String, &'static str)> =
            all.map(|(name, means)| (name.to_ascii_lowercase(), *means)).collect();
        order::sort_short(&mut every, |(a, _), (b, _)| b.len().cmp(&a.len()).then(a.cmp(b)));
        every.dedup_by(|(a, _), (b, _)| a == b);
        every
    })
}

/// The text cut at the first use of each term.
fn pieces(text: &str) -> Vec<Piece<'_>> {
    // Letters keep their places: what is not ASCII is never a term.
    let lower = text.to_ascii_lowercase();
    let mut found: Vec<(usize, usize, &'static str)> = Vec::new();
    for (name, means) in every() {
        let free = |at: usize, end: usize| found.iter().all(|(a, b, _)| end <= *a || *b <= at);
        let place = lower.match_indices(name.as_str()).map(|(at, _)| (at, at + name.len()));
        let place = place.map(|(at, end)| (at, end + usize::from(lower[end..].starts_with('s'))));
        let mut place = place.filter(|(at, end)| is_whole(&lower, *at, *end) && free(*at, *end));
        if let Some((at, end)) = place.next() {
            found.push((at, end, *means));
        }
    }
    order::sort_short_by_key(&mut found, |one| (one.0, one.1));
    let mut pieces = Vec::new();
    let mut done = 0;
    for (at, end, means) in found {
        if done < at {
            pieces.push(Piece::Plain(&text[done..at]));
        }
        pieces.push(Piece::Term(&text[at..end], means));
        done = end;
    }
    if done < text.len() {
        pieces.push(Piece::Plain(&text[done..]));
    }
    pieces
}

/// Whether no letter or hyphen stands on either side.
fn is_whole(text: &str, at: usize, end: usize) -> bool {
    let joined = |one: char| is_latin(one) || one == '-';
    !text[..at].ends_with(joined) && !text[end..].starts_with(joined)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(text: &str) -> Vec<&str> {
        let of = |piece: &Piece<'_>| matches!(piece, Piece::Term(..));
        let found = pieces(text).into_iter().filter(of);
        found.map(|piece| if let Piece::Term(text, _) = piece { text } else { "" }).collect()
    }

    #[test]
    fn whole_words_are_terms_whatever_their_letters_and_once_each() {
        assert_eq!(named("Lay the Membrane; a membrane holds."), ["Membrane"]);
        assert_eq!(named("Two membranes and dehiscences."), ["membranes", "dehiscences"]);
        assert!(named("Submembrane, membrane-like.").is_empty());
        assert_eq!(named("A connective tissue graft thickens it."), ["connective tissue graft"]);
    }

    #[test]
    fn the_pieces_are_the_text() {
        for text in ["", "Nothing.", "The platform lies 3 mm below — under the crest’s platform."]
        {
            let all = pieces(text).into_iter().map(|piece| match piece {
                Piece::Plain(text) | Piece::Term(text, _) => text,
            });
            assert_eq!(all.collect::<String>(), text);
        }
    }
}
