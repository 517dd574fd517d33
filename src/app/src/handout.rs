//! A set as it is handed out: written, squeezed into a link, opened, and kept among the sets.

use crate::components::decided::decides;
use crate::effects::{self, Breath};
use crate::library::{Library, ShippedSet};
use crate::route::Route;
use crate::sat::conditions;
use crate::squeeze::{LONGEST, squeeze, unsqueeze};
use engine::cases;
use engine::chart::Address;
use engine::hash::Fnv;
use engine::rules::Local;
use engine::scenario::{Conditions, Listed, MOST_CASES, write_set};
use std::rc::Rc;

/// The version of the link's form, before its letters; and that of one that opens with a code.
const VERSION: &str = "1.";
const SEALED: &str = "2.";
/// The name of a file is not made longer than this.
const LONGEST_NAME: usize = 48;
/// How the name of a set that came by link begins: no shipped one begins so.
const GIVEN: &str = "given-";
/// Where this browser keeps the sets that came by link, and the set that is being written.
const SETS: &str = "wallwise-sets";
const DESK: &str = "wallwise-desk";
/// The most sets that are kept; the oldest goes.
const MOST_SETS: usize = 20;

/// The set that was being written in this browser.
pub fn on_desk() -> ShippedSet {
    let kept = effects::kept_text(DESK);
    kept.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_else(|| ShippedSet {
        level: "student".to_owned(),
        mode: "study".to_owned(),
        ..ShippedSet::default()
    })
}

/// Keeps the set that is being written, as it is.
pub fn keep_on_desk(set: &ShippedSet) {
    effects::keep_text(DESK, &text(set));
}

fn text(set: &ShippedSet) -> String {
    // Texts, numbers and addresses: nothing that could fail.
    serde_json::to_string(set).unwrap_or_default()
}

/// The link of a set: its fragment. What an instructor wants to ask, the word that verdicts wait for, and the
/// code that it opens with, stay behind.
///
/// # Errors
/// A sentence.
pub async fn link(set: &ShippedSet) -> Result<String, String> {
    let (name, word, code) = (String::new(), String::new(), String::new());
    let bare = ShippedSet { name, word, code, asks: Vec::new(), ..set.clone() };
    let code = set.code.trim();
    let version = if code.is_empty() { VERSION } else { SEALED };
    Ok(Route::Given(format!("{version}{}", squeeze(&text(&bare), code).await?)).fragment())
}

/// The set of a link, under the name that it has here.
///
/// # Errors
/// A sentence: of a later version, cut off, not a set, one without cases or with too many, or one that
/// another code opens.
pub async fn read(given: &str, code: &str) -> Result<ShippedSet, String> {
    let version = if code.is_empty() { VERSION } else { SEALED };
    let Some(letters) = given.strip_prefix(version) else {
        return Err("the link is of another version, expected one that begins with 1.: load the page again for the newest room".to_owned());
    };
    if letters.len() > LONGEST {
        return Err(format!(
            "found a link of {} characters, expected at most {LONGEST}",
            letters.len()
        ));
    }
    let text = unsqueeze(letters, code).await?;
    let set = held_in(&text)?;
    Ok(ShippedSet { name: named(&text), ..set })
}

/// The set that a text holds, once it is one that may be handed out.
fn held_in(text: &str) -> Result<ShippedSet, String> {
    let mut set: ShippedSet =
        serde_json::from_str(text).map_err(|why| format!("the link holds no set: {why}"))?;
    if set.mode.is_empty() {
        // A file has to say what a link leaves out.
        "study".clone_into(&mut set.mode);
    }
    Conditions::of_line(&set.conditions)?;
    let local = Local { level: Some(set.whom()), protocol: decides(&set.protocol) };
    local
        .check()
        .map_err(|(rule, why)| format!("the link decides what no set may: {rule}: {why}"))?;
    let count = set.addresses.len();
    if count == 0 || count > MOST_CASES || set.cases.len() != count {
        return Err(format!(
            "found a set of {count} cases, expected 1 to {MOST_CASES}, each with its title"
        ));
    }
    Ok(set)
}

/// Whether a link opens with a code only.
pub fn is_sealed(given: &str) -> bool {
    given.starts_with(SEALED)
}

/// The set with a learner's own cases in place of its models, found from the learner's code.
///
/// # Errors
/// A sentence: no code, or a case without a form.
pub async fn own_form(set: &ShippedSet, code: &str) -> Result<ShippedSet, String> {
    if code.trim().is_empty() {
        return Err("expected a code: the one that you hand in under".to_owned());
    }
    let mut own = ShippedSet { forms: false, ..set.clone() };
    let mut breath = Breath::now();
    for (address, title) in own.addresses.iter_mut().zip(&mut own.cases) {
        breath.take_now().await;
        let form = cases::form(*address, code).map_err(|why| why.to_string())?;
        if let Some(found) = form.address {
            (*address, *title) = (found, form.title);
        }
    }
    own.name = named(&text(&own));
    Ok(own)
}

fn named(text: &str) -> String {
    let mut hash = Fnv::new();
    hash.text(text);
    format!("{GIVEN}{:016x}", hash.value())
}

/// Keeps a set that came by link.
pub fn keep(set: &ShippedSet) {
    let mut sets = kept();
    sets.retain(|one| one.name != set.name);
    sets.insert(0, set.clone());
    sets.truncate(MOST_SETS);
    effects::keep_text(SETS, &serde_json::to_string(&sets).unwrap_or_default());
}

fn kept() -> Vec<ShippedSet> {
    let text = effects::kept_text(SETS).unwrap_or_default();
    serde_json::from_str(&text).unwrap_or_default()
}

/// The sets that came by link before those that ship with the room.
pub fn with_given(mut shipped: Vec<ShippedSet>) -> Library {
    let mut all = kept();
    all.append(&mut shipped);
    Library::Here(Rc::new(all))
}

/// Forgets the sets that came by link, and the one that is being written.
pub fn forget() {
    [SETS, DESK].into_iter().for_each(effects::forget_text);
}

/// Before the letters by which the desk opens a file of its own: a comment, which every reader of files
/// passes over.
const OWN: &str = "\n# The desk opens this file by the next line, as long as the rest stands as it was saved.\n# ";

/// The set as a file, with everything that lies on the desk.
///
/// # Errors
/// A sentence, where this browser has no compressor.
pub async fn file(set: &ShippedSet) -> Result<String, String> {
    let bare = ShippedSet { name: String::new(), ..set.clone() };
    let letters = squeeze(&text(&bare), "").await?;
    Ok(format!("{}{OWN}{VERSION}{letters}\n", written(set)))
}

/// What the file of a set of this title is called: by it several are told apart, also once they are packed.
pub fn file_name(title: &str) -> String {
    let plain = title.to_ascii_lowercase();
    let words = plain.split(|letter: char| !letter.is_ascii_alphanumeric());
    let mut name = String::new();
    for word in words.filter(|word| !word.is_empty()) {
        if name.len() + word.len() > LONGEST_NAME {
            break;
        }
        if !name.is_empty() {
            name.push('-');
        }
        name.push_str(word);
    }
    let name = if name.is_empty() { "wallwise" } else { &name };
    format!("{name}.set.toml")
}

/// The set of a file that a desk has saved, whole.
///
/// # Errors
/// A sentence: a desk did not write it, or somebody has changed it since.
pub async fn reopened(file: &str) -> Result<ShippedSet, String> {
    const BY_TOOL: &str = "wallwise set link makes a link of any set file, which opens above, and says what it leaves behind";
    let file = file.trim_start_matches('\u{feff}').replace("\r\n", "\n");
    let Some((body, letters)) = file.rsplit_once(OWN) else {
        return Err(format!("This file was not saved at a desk: {BY_TOOL}."));
    };
    let letters = letters.trim().strip_prefix(VERSION).unwrap_or_default();
    let set = held_in(&unsqueeze(letters, "").await?)?;
    if written(&set) == body {
        Ok(set)
    } else {
        Err(format!("This file was changed after it was saved, and that would be lost: {BY_TOOL}."))
    }
}

fn written(set: &ShippedSet) -> String {
    let asks = set.asks.iter().map(String::as_str).chain(core::iter::repeat(""));
    let cases: Vec<(Address, &str)> = set.addresses.iter().copied().zip(asks).collect();
    let ShippedSet { title, aim, level, mode, forms, .. } = set;
    let conditions = (&conditions(set), set.word.as_str());
    let (protocol, forms) = (&decides(&set.protocol), *forms);
    write_set(&Listed { title, aim, level, mode, forms, protocol, conditions, cases: &cases })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_called_by_its_title_as_a_package_may_be() {
        let names = [
            ("The intact wall", "the-intact-wall.set.toml"),
            ("Walls, \"thick\" & <thin>", "walls-thick-thin.set.toml"),
            ("../../etc", "etc.set.toml"),
            ("Zähne", "z-hne.set.toml"),
            ("歯", "wallwise.set.toml"),
        ];
        for (title, name) in names {
            assert_eq!(file_name(title), name);
        }
        let long = file_name(&"wall ".repeat(40));
        assert!(long.starts_with("wall-wall") && !long.contains("-."), "{long}");
        assert!(long.len() <= LONGEST_NAME + ".set.toml".len() + 1, "{long}");
    }
}
