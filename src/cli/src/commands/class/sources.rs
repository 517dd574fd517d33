//! Where files of attempts come from: files, folders, zip files. Nothing in them is trusted.

use crate::{Fault, Why};
use learning::class::told::{code_of, plain};
use learning::file::LONGEST_FILE;
use std::fs::{self, File};
use std::io::{Read, Seek};
use std::path::{Path, PathBuf};

/// Folders are followed this far down.
const DEEPEST: usize = 8;
/// A zip file with more entries than this is not read.
const MOST_ENTRIES: usize = 20_000;
/// More than this a zip file may not unfold to, bytes.
const MOST_UNFOLDED: u64 = 4 << 30;

/// A file of attempts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Source {
    /// On the disk.
    File(PathBuf),
    /// The entry of this number in a zip file.
    Entry(PathBuf, usize, String),
}

impl Source {
    /// What a person knows it by.
    pub fn name(&self) -> String {
        match self {
            Self::File(path) => path.display().to_string(),
            Self::Entry(zip, _, name) => format!("{} in {}", plain(name), zip.display()),
        }
    }

    /// The learner's code where the file names none: what the file is called.
    pub fn code(&self) -> String {
        match self {
            Self::File(path) => code_of(&path.to_string_lossy()),
            Self::Entry(_, _, name) => code_of(name),
        }
    }

    /// Its text.
    pub fn text(&self) -> Result<String, String> {
        match self {
            Self::File(path) => {
                let file = File::open(path).map_err(|why| format!("cannot be read: {why}"))?;
                whole(file)
            }
            Self::Entry(zip, place, _) => {
                let unread = |why: &dyn std::fmt::Display| format!("cannot be unfolded: {why}");
                let file = File::open(zip).map_err(|why| unread(&why))?;
                let mut archive = zip::ZipArchive::new(file).map_err(|why| unread(&why))?;
                let entry = archive.by_index(*place).map_err(|why| unread(&why))?;
                whole(entry)
            }
        }
    }
}

/// All of it, as text, if it is no longer than a file of attempts may be.
fn whole(from: impl Read) -> Result<String, String> {
    let mut bytes = Vec::new();
    from.take(LONGEST_FILE as u64 + 1)
        .read_to_end(&mut bytes)
        .map_err(|why| format!("cannot be read: {why}"))?;
    if bytes.len() > LONGEST_FILE {
        return Err(format!(
            "found more than {} MB, expected a file of attempts",
            LONGEST_FILE >> 20
        ));
    }
    String::from_utf8(bytes).map_err(|_| "found no text, expected a file of attempts".to_owned())
}

/// Every file below the paths, in the order of the paths and of their names; what cannot be one is told.
pub fn all(paths: &[PathBuf], aside: &mut Vec<String>) -> Result<Vec<Source>, Fault> {
    let mut found = Vec::new();
    for path in paths {
        // A path that a person wrote must be there; what lies below may be anything.
        fs::metadata(path)
            .why(|| format!("cannot read {}", path.display()))
            .map_err(|fault| fault.hint("give a file, a zip file or a folder that exists"))?;
        add(path, 0, &mut found, aside);
    }
    Ok(found)
}

fn add(path: &Path, depth: usize, found: &mut Vec<Source>, aside: &mut Vec<String>) {
    let mut tell = |why: &str| aside.push(format!("{}: {why}", path.display()));
    if path.is_dir() {
        if depth > 0 && path.is_symlink() {
            return tell("a link to another folder, which is not followed");
        }
        if depth >= DEEPEST {
            return tell("lies too deep, and was not opened");
        }
        let Ok(entries) = fs::read_dir(path) else { return tell("cannot be opened") };
        let mut paths: Vec<PathBuf> = entries.flatten().map(|entry| entry.path()).collect();
        paths.sort();
        paths.iter().for_each(|path| add(path, depth + 1, found, aside));
        return;
    }
    let ending = path.extension().map(|ending| ending.to_ascii_lowercase());
    match ending.as_deref().and_then(|ending| ending.to_str()) {
        Some("zip") => {
            if let Err(why) = unfold(path, found, aside) {
                aside.push(format!("{}: {why}", path.display()));
            }
        }
        // What a person named is read whatever it is called.
        Some("json") => found.push(Source::File(path.to_owned())),
        _ if depth == 0 => found.push(Source::File(path.to_owned())),
        _ => tell("found another kind of file, expected .json or .zip"),
    }
}

/// The entries of a zip file that can be files of attempts. Nothing is written to the disk, so that a
/// path in a name leads nowhere.
fn unfold(path: &Path, found: &mut Vec<Source>, aside: &mut Vec<String>) -> Result<(), String> {
    let file = File::open(path).map_err(|why| format!("cannot be read: {why}"))?;
    let mut archive = zip::ZipArchive::new(file)
        .map_err(|why| format!("is no zip file that can be read: {why}"))?;
    if archive.len() > MOST_ENTRIES {
        return Err(format!("found {} entries, expected at most {MOST_ENTRIES}", archive.len()));
    }
    let unfolded = sizes(&mut archive)?;
    if unfolded > MOST_UNFOLDED {
        return Err(format!(
            "would unfold to {} MB, expected at most {}",
            unfolded >> 20,
            MOST_UNFOLDED >> 20
        ));
    }
    for place in 0..archive.len() {
        let entry = archive.by_index_raw(place).map_err(|why| why.to_string())?;
        let name = entry.name().map_err(|why| why.to_string())?.into_owned();
        if entry.is_dir() {
            continue;
        }
        if name.to_ascii_lowercase().ends_with(".json") {
            found.push(Source::Entry(path.to_owned(), place, name));
        } else {
            let name = plain(&name);
            aside.push(format!(
                "{name} in {}: found another kind of file, expected .json",
                path.display()
            ));
        }
    }
    Ok(())
}

/// What all entries say that they unfold to; what they really do is bounded as they are read.
fn sizes(archive: &mut zip::ZipArchive<impl Read + Seek>) -> Result<u64, String> {
    let mut sum = 0_u64;
    for place in 0..archive.len() {
        let entry = archive.by_index_raw(place).map_err(|why| why.to_string())?;
        sum = sum.saturating_add(entry.size());
    }
    Ok(sum)
}
