//! The finished folder, and the list of what is in it.

use std::fs;
use std::path::Path;

use serde_json::{Value, json};

use super::asset::sha256;
use super::press::Pressed;
use crate::{Fault, Why};

/// The list that a build leaves, by which the next one knows what it may remove.
const LIST: &str = "site.json";

/// Bytes in all, as they are and as they are sent.
#[derive(Debug, Default)]
pub struct Size {
    pub raw: usize,
    pub sent: usize,
}

/// Refuses a folder that holds something which no build of ours put there.
pub fn refuse_foreign(folder: &Path) -> Result<(), Fault> {
    if folder.exists() && !folder.is_dir() {
        return Err(Fault::new(format!("found a file at {}, expected a folder", folder.display()))
            .hint("pick another place with `--out DIR`"));
    }
    let empty = fs::read_dir(folder).map_or(true, |mut entries| entries.next().is_none());
    if empty || folder.join(LIST).is_file() {
        return Ok(());
    }
    Err(Fault::new(format!(
        "found files in {} but no {LIST}, so they are not an earlier build",
        folder.display()
    ))
    .hint("pick an empty folder, or empty this one yourself"))
}

/// Writes the files, and removes those of the build before that are not among them.
pub fn write(folder: &Path, files: &[Pressed]) -> Result<Size, Fault> {
    let mut old = listed(folder);
    let mut size = Size::default();
    let mut list = Vec::with_capacity(files.len());
    for file in files {
        let (path, bytes) = (&file.asset.path, &file.asset.bytes);
        let sent = file.brotli.as_ref().unwrap_or(bytes).len();
        size.raw += bytes.len();
        size.sent += sent;
        put(folder, path, bytes)?;
        old.retain(|name| name != path);
        if let Some(brotli) = &file.brotli {
            let path = format!("{path}.br");
            put(folder, &path, brotli)?;
            old.retain(|name| *name != path);
        }
        list.push(json!({
            "path": path,
            "bytes": bytes.len(),
            "brotli": file.brotli.as_ref().map(Vec::len),
            "sha256": sha256(bytes),
        }));
    }
    let list = format!("{:#}\n", json!({ "files": list }));
    put(folder, LIST, list.as_bytes())?;
    for name in old {
        // Nobody refers to it any more, so one that will not go does no harm.
        let _ = fs::remove_file(folder.join(name));
    }
    Ok(size)
}

/// The files of the build before.
fn listed(folder: &Path) -> Vec<String> {
    let list: Option<Value> =
        fs::read(folder.join(LIST)).ok().and_then(|bytes| serde_json::from_slice(&bytes).ok());
    let files = list.as_ref().and_then(|list| list["files"].as_array());
    files
        .into_iter()
        .flatten()
        .filter_map(|file| file["path"].as_str())
        // The list is a file like any other: what it says may not reach outside the folder.
        .filter(|path| path.split('/').all(|part| !part.is_empty() && part != ".."))
        .flat_map(|path| [path.to_owned(), format!("{path}.br")])
        .collect()
}

fn put(folder: &Path, path: &str, bytes: &[u8]) -> Result<(), Fault> {
    let place = folder.join(path);
    let parent = place.parent().unwrap_or(folder);
    fs::create_dir_all(parent)
        .and_then(|()| fs::write(&place, bytes))
        .why(|| format!("cannot write {}", place.display()))
}

#[cfg(test)]
mod tests {
    use super::super::asset::Asset;
    use super::*;

    fn scratch(name: &str) -> std::path::PathBuf {
        let folder = std::env::temp_dir().join(format!("wallwise-{}-{name}", std::process::id()));
        let _ = fs::remove_dir_all(&folder);
        folder
    }

    fn file(path: &str) -> Pressed {
        let asset = Asset { path: path.to_owned(), bytes: path.as_bytes().to_vec() };
        Pressed { asset, brotli: Some(b"small".to_vec()) }
    }

    #[test]
    fn a_second_build_removes_what_the_first_one_left_and_nothing_else() {
        let folder = scratch("rebuild");
        write(&folder, &[file("index.html"), file("old-1.js")]).unwrap();
        fs::write(folder.join("mine.txt"), "kept").unwrap();
        refuse_foreign(&folder).unwrap();
        write(&folder, &[file("index.html"), file("sub/new-2.js")]).unwrap();
        let exists = |name: &str| folder.join(name).exists();
        assert!(exists("index.html.br") && exists("sub/new-2.js.br") && exists("mine.txt"));
        assert!(!exists("old-1.js") && !exists("old-1.js.br"));
        fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn a_folder_with_somebody_s_files_is_refused() {
        let folder = scratch("foreign");
        refuse_foreign(&folder).unwrap();
        fs::create_dir_all(&folder).unwrap();
        refuse_foreign(&folder).unwrap();
        fs::write(folder.join("thesis.txt"), "years").unwrap();
        let fault = refuse_foreign(&folder).unwrap_err().to_string();
        assert!(fault.contains("not an earlier build"), "{fault}");
        fs::remove_dir_all(folder).unwrap();
    }
}
