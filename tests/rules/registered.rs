//! Every rule file is registered, and every registered rule has its file.

use engine::rules::FAMILIES;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The folder of all families.
pub(crate) fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../src/engine/src/rules")
}

/// The folder of a family: its name in lower case.
pub(crate) fn family_folder(family: engine::rules::Family) -> PathBuf {
    folder().join(format!("{family:?}").to_lowercase())
}

/// Names without ending of the files in a folder that have this ending, `mod` left out.
fn stems(folder: &Path, ending: &str) -> BTreeSet<String> {
    fs::read_dir(folder)
        .unwrap_or_else(|fault| panic!("{}: {fault}", folder.display()))
        .map(|entry| entry.expect("a readable folder").path())
        .filter(|path| path.extension().is_some_and(|found| found == ending))
        .filter_map(|path| Some(path.file_stem()?.to_str()?.to_owned()))
        .filter(|stem| stem != "mod")
        .collect()
}

#[test]
fn every_rule_file_is_registered_and_every_rule_has_its_file_and_its_text() {
    for (family, rules) in FAMILIES {
        let registered: BTreeSet<String> =
            rules.iter().map(|rule| rule.id.replace('-', "_")).collect();
        for ending in ["rs", "md"] {
            let found = stems(&family_folder(*family), ending);
            assert_eq!(found, registered, "{family:?}, *.{ending}");
        }
    }
}

#[test]
fn every_folder_is_a_family() {
    let families: BTreeSet<PathBuf> =
        FAMILIES.iter().map(|(family, _)| family_folder(*family)).collect();
    let folders: BTreeSet<PathBuf> = fs::read_dir(folder())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.is_dir())
        .collect();
    assert_eq!(folders, families);
}
