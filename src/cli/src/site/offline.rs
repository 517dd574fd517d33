//! What the page's worker has to know: the version of the page, and every file of it.

use super::HASH_DIGITS;
use super::asset::{Asset, sha256, sri};
use crate::{Fault, Why};

/// The worker that keeps the page, and its entry, which says which version it is.
const WORKER: &str = "sw.js";
const ENTRY: &str = "index.html";
/// What the sources hold where the build writes.
const VERSION: &str = "const VERSION = \"\";";
const FILES: &str = "const FILES = [];";
const RUNS: &str = "data-version=\"\"";

/// Writes version and files into the worker, and the version into the entry. Every file is named by
/// then: the version stands for all of them, the worker's own source included.
pub fn write(mut assets: Vec<Asset>) -> Result<Vec<Asset>, Fault> {
    let all: String =
        assets.iter().map(|asset| format!("{} {}\n", asset.path, sha256(&asset.bytes))).collect();
    let version = &sha256(all.as_bytes())[..HASH_DIGITS];
    fill(&mut assets, ENTRY, RUNS, &format!("data-version=\"{version}\""))?;
    let files: Vec<(&str, String)> = assets
        .iter()
        .filter(|asset| asset.path != WORKER)
        .map(|asset| (asset.path.as_str(), sri(&asset.bytes)))
        .collect();
    let files = serde_json::to_string(&files).why(|| "cannot list the page's files".to_owned())?;
    fill(&mut assets, WORKER, VERSION, &format!("const VERSION = \"{version}\";"))?;
    fill(&mut assets, WORKER, FILES, &format!("const FILES = {files};"))?;
    Ok(assets)
}

/// Replaces the one place in a file where the build writes.
fn fill(assets: &mut [Asset], path: &str, place: &str, with: &str) -> Result<(), Fault> {
    let mut found = 0;
    for asset in assets.iter_mut().filter(|asset| asset.path == path) {
        if let Ok(text) = std::str::from_utf8(&asset.bytes) {
            found += text.matches(place).count();
            asset.bytes = text.replace(place, with).into_bytes();
        }
    }
    if found == 1 {
        return Ok(());
    }
    Err(Fault::new(format!("found `{place}` {found} times in {path}, expected it once"))
        .hint("the build writes the version and the list of files there"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    fn asset(path: &str, text: &str) -> Asset {
        Asset { path: path.to_owned(), bytes: text.as_bytes().to_vec() }
    }

    fn site(leaf: &str) -> Vec<Asset> {
        write(vec![
            asset("icons/leaf-1.svg", leaf),
            asset("index.html", &format!("<html {RUNS}>")),
            asset("sw.js", &format!("{VERSION}\n{FILES}\n")),
        ])
        .unwrap()
    }

    fn text<'a>(site: &'a [Asset], path: &str) -> &'a str {
        let asset = site.iter().find(|asset| asset.path == path).unwrap();
        std::str::from_utf8(&asset.bytes).unwrap()
    }

    #[test]
    fn the_worker_lists_every_file_but_itself_as_it_is() {
        let site = site("a");
        let list = text(&site, "sw.js").lines().nth(1).unwrap();
        let list = list.strip_prefix("const FILES = ").unwrap().strip_suffix(';').unwrap();
        let list: BTreeSet<(String, String)> = serde_json::from_str(list).unwrap();
        let files = site.iter().filter(|asset| asset.path != WORKER);
        assert_eq!(list, files.map(|asset| (asset.path.clone(), sri(&asset.bytes))).collect());
    }

    #[test]
    fn worker_and_entry_say_one_version_which_changes_with_any_file() {
        let (one, other) = (site("a"), site("b"));
        assert_eq!(one, site("a"));
        let version = text(&one, "index.html").split('"').nth(1).unwrap();
        assert_eq!(version.len(), HASH_DIGITS);
        assert!(text(&one, "sw.js").starts_with(&format!("const VERSION = \"{version}\";")));
        assert_ne!(text(&one, "index.html"), text(&other, "index.html"));
    }

    #[test]
    fn a_worker_without_a_place_for_the_list_is_refused() {
        let site = vec![asset("index.html", RUNS), asset("sw.js", VERSION)];
        let fault = write(site).unwrap_err().to_string();
        assert!(fault.contains("0 times in sw.js"), "{fault}");
    }

    #[test]
    fn the_shipped_worker_knows_a_name_that_stands_for_content() {
        let worker = include_str!("../../../../www/sw.js");
        assert!(worker.contains(&format!("-[0-9a-f]{{{HASH_DIGITS}}}")));
        for fixed in super::super::names::FIXED.iter().filter(|fixed| **fixed != WORKER) {
            assert!(worker.contains(&format!("\"{fixed}\"")), "{fixed}");
        }
    }

    #[test]
    fn the_manifest_has_the_tones_of_the_stylesheet() {
        let style = include_str!("../../../../www/style.css");
        let manifest = include_str!("../../../../www/manifest.webmanifest");
        let manifest: serde_json::Value = serde_json::from_str(manifest).unwrap();
        for (key, name) in [("theme_color", "--ink"), ("background_color", "--ivory")] {
            let tone = manifest[key].as_str().unwrap();
            assert!(style.contains(&format!("{name}: {tone};")), "{key} {tone}");
        }
    }
}
