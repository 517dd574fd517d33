//! Where the page's sources are.

use std::env;
use std::path::{Path, PathBuf};

use crate::{Fault, Why};

/// The repository that holds the page's sources.
#[derive(Debug, Clone)]
pub struct Workspace {
    root: PathBuf,
}

impl Workspace {
    /// The repository that this program was compiled from, or else the one around the current
    /// folder: an installed program outlives the folder that it was built in.
    pub fn find() -> Result<Self, Fault> {
        let compiled_from = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let here = env::current_dir().why(|| "cannot tell the current folder".to_owned())?;
        std::iter::once(compiled_from.as_path())
            .chain(here.ancestors())
            .find(|root| root.join("src/app/Cargo.toml").is_file() && root.join("www").is_dir())
            .and_then(|root| root.canonicalize().ok())
            .map(|root| Self { root })
            .ok_or_else(|| {
                Fault::new(format!(
                    "found no page sources in {} or above it, expected a folder with src/app and www",
                    here.display()
                ))
                .hint("run this inside a clone of the repository")
                .hint("or serve a folder that is built already: `wallwise serve --no-build --folder DIR`")
            })
    }

    /// The repository itself.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The hand-written part of the page.
    pub fn www(&self) -> PathBuf {
        self.root.join("www")
    }

    /// The shipped sets.
    pub fn scenarios(&self) -> PathBuf {
        self.root.join("scenarios")
    }

    /// Where the page is built unless somebody says otherwise.
    pub fn default_site(&self) -> PathBuf {
        self.root.join("target/site")
    }

    /// Where the page that packages carry is built unless somebody says otherwise.
    pub fn package_site(&self) -> PathBuf {
        self.root.join("target/package-site")
    }

    /// A folder for the build's own use.
    pub fn scratch(&self, name: &str) -> PathBuf {
        self.root.join("target/wallwise").join(name)
    }
}
