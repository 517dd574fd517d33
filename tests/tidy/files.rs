//! The repository's own files.

use std::fs;
use std::path::{Path, PathBuf};

/// Folders that are made, not written.
const MADE: &[&str] = &["target", "node_modules", "__pycache__", ".git"];

/// A file of text.
#[derive(Debug)]
pub struct File {
    /// From the root, with `/` between the parts.
    pub path: String,
    pub text: String,
}

impl File {
    /// Whether it lies in `folder` and ends in `ending`.
    pub fn is(&self, folder: &str, ending: &str) -> bool {
        self.path.starts_with(folder) && self.path.ends_with(ending)
    }
}

/// The repository's root.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Every text file that somebody wrote, in order of path.
pub fn all() -> Vec<File> {
    let mut files = Vec::new();
    gather(&root(), "", &mut files);
    files.sort_by(|one, other| one.path.cmp(&other.path));
    assert!(files.len() > 20, "found only {} files under {}", files.len(), root().display());
    files
}

/// Every Rust file.
pub fn rust() -> Vec<File> {
    all().into_iter().filter(|file| file.is("", ".rs")).collect()
}

/// Fails with every fault, one a line, if there is any.
pub fn assert_none(faults: &[String], what: &str) {
    assert!(faults.is_empty(), "{what}:\n{}", faults.join("\n"));
}

fn gather(folder: &Path, prefix: &str, files: &mut Vec<File>) {
    for entry in fs::read_dir(folder).expect("the folder can be read") {
        let entry = entry.expect("the entry can be read");
        let name = entry.file_name().to_string_lossy().into_owned();
        if MADE.contains(&name.as_str()) {
            continue;
        }
        let path = format!("{prefix}{name}");
        if entry.path().is_dir() {
            gather(&entry.path(), &format!("{path}/"), files);
        } else if let Ok(text) = fs::read_to_string(entry.path()) {
            files.push(File { path, text });
        }
    }
}
