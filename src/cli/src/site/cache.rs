//! Results of slow steps, kept under the hash of what went in.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use super::asset::sha256;
use crate::{Fault, Why};

/// A folder of results. What one build does not use is forgotten at its end.
#[derive(Debug)]
pub struct Cache {
    folder: PathBuf,
    used: BTreeSet<String>,
}

impl Cache {
    /// Opens or makes the folder.
    pub fn open(folder: PathBuf) -> Result<Self, Fault> {
        fs::create_dir_all(&folder)
            .why(|| format!("cannot make the folder {}", folder.display()))?;
        Ok(Self { folder, used: BTreeSet::new() })
    }

    /// The result of `step` on `input`: the one that is kept, or a new one.
    pub fn get(
        &mut self,
        step: &str,
        input: &[u8],
        make: impl FnOnce(&[u8]) -> Result<Vec<u8>, Fault>,
    ) -> Result<Vec<u8>, Fault> {
        let name = sha256(format!("{step} {}", sha256(input)).as_bytes());
        let place = self.folder.join(&name);
        self.used.insert(name);
        // A result that cannot be read is made again.
        if let Ok(kept) = fs::read(&place) {
            return Ok(kept);
        }
        let made = make(input)?;
        // Written aside and moved: a build that is stopped halfway leaves no half result behind.
        let aside = self.folder.join(format!("{}.part", std::process::id()));
        fs::write(&aside, &made)
            .and_then(|()| fs::rename(&aside, &place))
            .why(|| format!("cannot write {}", place.display()))?;
        Ok(made)
    }

    /// Removes what this build did not use. A file that will not go costs only its space.
    pub fn forget_unused(&self) {
        for entry in fs::read_dir(&self.folder).into_iter().flatten().flatten() {
            if !entry.file_name().to_str().is_some_and(|name| self.used.contains(name)) {
                let _ = fs::remove_file(entry.path());
            }
        }
    }
}
