//! Names that stand for content: `boot.js` becomes `boot-0123456789abcdef.js`.
//!
//! A file refers to another as `./path`, relative to its own folder. The reference is rewritten
//! before the file itself is hashed, so a name changes whenever anything below it changes.

use std::collections::BTreeMap;

use super::HASH_DIGITS;
use super::asset::{Asset, sha256};
use crate::Fault;

/// Files whose address must not change: the entry, and the script that owns the page's scope.
pub const FIXED: &[&str] = &["index.html", "sw.js"];
/// Files that may refer to others.
const TEXT: &[&str] = &["css", "html", "js", "json", "svg", "webmanifest"];

/// Names every file for its content and mends the references between them.
pub fn name(assets: Vec<Asset>) -> Result<Vec<Asset>, Fault> {
    let mut waiting = assets;
    waiting.sort_by(|one, other| one.path.cmp(&other.path));
    let mut names = BTreeMap::new();
    let mut named = Vec::with_capacity(waiting.len());
    while !waiting.is_empty() {
        let paths: Vec<String> = waiting.iter().map(|asset| asset.path.clone()).collect();
        let (ready, rest): (Vec<_>, Vec<_>) = waiting
            .into_iter()
            .partition(|asset| !paths.iter().any(|other| must_wait(asset, other)));
        if ready.is_empty() {
            return Err(Fault::new(format!(
                "found files that refer to each other in a circle: {}",
                paths.join(", ")
            ))
            .hint("a name stands for content, so one of them must find the other some other way"));
        }
        for asset in ready {
            let finished = finish(asset, &mut names);
            named.push(finished);
        }
        waiting = rest;
    }
    named.sort_by(|one, other| one.path.cmp(&other.path));
    Ok(named)
}

/// Whether `asset` refers to a file whose name is still to come.
fn must_wait(asset: &Asset, other: &str) -> bool {
    !FIXED.contains(&other)
        && reference(&asset.path, other).is_some_and(|reference| {
            text(asset).is_some_and(|text| places(text, &reference).next().is_some())
        })
}

/// Mends the references in `asset`, then names it.
fn finish(mut asset: Asset, names: &mut BTreeMap<String, String>) -> Asset {
    if let Some(old) = text(&asset) {
        let mut new = old.to_owned();
        for (before, after) in &*names {
            let (Some(from), Some(to)) =
                (reference(&asset.path, before), reference(&asset.path, after))
            else {
                continue;
            };
            new = replace(&new, &from, &to);
        }
        asset.bytes = new.into_bytes();
    }
    if !FIXED.contains(&asset.path.as_str()) {
        let after = hashed(&asset);
        names.insert(std::mem::replace(&mut asset.path, after.clone()), after);
    }
    asset
}

fn hashed(asset: &Asset) -> String {
    let hash = &sha256(&asset.bytes)[..HASH_DIGITS];
    match asset.path.rsplit_once('.') {
        Some((stem, extension)) => format!("{stem}-{hash}.{extension}"),
        None => format!("{}-{hash}", asset.path),
    }
}

fn text(asset: &Asset) -> Option<&str> {
    TEXT.contains(&asset.extension()).then_some(())?;
    std::str::from_utf8(&asset.bytes).ok()
}

/// How the file at `from` writes the address of `to`, if that is in its own folder or below.
fn reference(from: &str, to: &str) -> Option<String> {
    let folder = from.rfind('/').map_or("", |end| &from[..=end]);
    to.strip_prefix(folder).map(|rest| format!("./{rest}"))
}

/// Where `reference` stands in `text` as a whole: `./app.js` is not in `./app.json`, nor in `../app.js`.
/// A key (`"./later.js": …`) is what a module calls something, not where it is, and stays.
fn places<'a>(text: &'a str, reference: &'a str) -> impl Iterator<Item = usize> + 'a {
    let part_of_name =
        |character: char| character.is_ascii_alphanumeric() || "._-/".contains(character);
    text.match_indices(reference).map(|(at, _)| at).filter(move |&at| {
        let after = &text[at + reference.len()..];
        !text[..at].ends_with(part_of_name)
            && !after.starts_with(part_of_name)
            && !after.starts_with("\":")
    })
}

fn replace(text: &str, from: &str, to: &str) -> String {
    let mut new = String::with_capacity(text.len());
    let mut end = 0;
    for at in places(text, from) {
        new.push_str(&text[end..at]);
        new.push_str(to);
        end = at + from.len();
    }
    new.push_str(&text[end..]);
    new
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asset(path: &str, text: &str) -> Asset {
        Asset { path: path.to_owned(), bytes: text.as_bytes().to_vec() }
    }

    fn site(leaf: &str) -> Vec<Asset> {
        name(vec![
            asset("index.html", r#"<script src="./boot.js">"#),
            asset("boot.js", r#"import "./glue.js"; new URL("./icons/leaf.svg")"#),
            asset("glue.js", r#"const module = "./glue.json";"#),
            asset("icons/leaf.svg", leaf),
        ])
        .unwrap()
    }

    #[test]
    fn a_name_changes_when_anything_below_it_changes_and_only_then() {
        let (one, same, other) = (site("a"), site("a"), site("b"));
        assert_eq!(one, same);
        let moved: Vec<_> = one.iter().filter(|asset| !other.contains(asset)).collect();
        let paths: Vec<_> = moved.iter().map(|asset| &asset.path[..4]).collect();
        assert_eq!(paths, ["boot", "icon", "inde"]);
    }

    #[test]
    fn references_follow_the_names_and_the_entry_keeps_its_own() {
        let named = site("a");
        let find = |start: &str| named.iter().find(|asset| asset.path.starts_with(start)).unwrap();
        let (entry, boot) = (find("index.html"), find("boot-"));
        assert_eq!(text(entry).unwrap(), format!(r#"<script src="./{}">"#, boot.path));
        assert!(text(boot).unwrap().contains(&format!("./{}", find("icons/leaf-").path)));
        assert_eq!(text(find("glue-")).unwrap(), r#"const module = "./glue.json";"#);
    }

    #[test]
    fn files_that_refer_to_each_other_in_a_circle_are_refused() {
        let circle = vec![asset("one.js", "\"./two.js\""), asset("two.js", "\"./one.js\"")];
        let fault = name(circle).unwrap_err().to_string();
        assert!(fault.contains("in a circle: one.js, two.js"), "{fault}");
    }

    #[test]
    fn a_file_in_a_folder_refers_to_its_neighbours() {
        assert_eq!(reference("icons/a.svg", "icons/b.svg").as_deref(), Some("./b.svg"));
        assert_eq!(reference("icons/a.svg", "boot.js"), None);
        assert_eq!(replace("../a.js ./a.js", "./a.js", "./b.js"), "../a.js ./b.js");
    }

    #[test]
    fn what_a_module_calls_another_stays_while_its_address_follows() {
        let glue = r#"import * as it from "./a.js"; return { "./a.js": it };"#;
        let after = r#"import * as it from "./b.js"; return { "./a.js": it };"#;
        assert_eq!(replace(glue, "./a.js", "./b.js"), after);
    }
}
