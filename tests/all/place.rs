//! Where everything is.

use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The repository, and the folders that runs write to.
#[derive(Debug)]
pub struct Place {
    pub root: PathBuf,
}

impl Place {
    /// The repository that this program was compiled from.
    pub fn here() -> Self {
        let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
        Self { root: tests.parent().unwrap_or(tests).to_owned() }
    }

    /// A folder under `tests`.
    pub fn tests(&self, name: &str) -> PathBuf {
        self.root.join("tests").join(name)
    }

    /// Where tools are installed: never outside `target`.
    pub fn tools(&self, name: &str) -> PathBuf {
        self.root.join("target/tools").join(name)
    }

    /// Where the page is built.
    pub fn site(&self) -> PathBuf {
        self.root.join("target/site")
    }

    /// Where the page that packages carry is built.
    pub fn package_site(&self) -> PathBuf {
        self.root.join("target/package-site")
    }

    /// The tool, which cargo puts beside this program.
    pub fn wallwise(&self) -> PathBuf {
        let here = env::current_exe().unwrap_or_default();
        here.with_file_name(format!("wallwise{}", env::consts::EXE_SUFFIX))
    }

    /// A program run at the root, without what cargo tells the programs that it runs: a cargo
    /// below would take this package's name and version for its own.
    pub fn command(&self, program: impl Into<OsString>) -> Command {
        let mut command = Command::new(program.into());
        command.current_dir(&self.root);
        for (name, _) in env::vars_os() {
            let name = name.to_string_lossy().into_owned();
            if name.starts_with("CARGO_PKG_") || name.starts_with("CARGO_MANIFEST_") {
                command.env_remove(name);
            }
        }
        command
    }

    /// The cargo that runs this.
    pub fn cargo(&self) -> Command {
        self.command(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
    }

    /// A program that checks the pages and the tool: it finds them, and the tools, by these names.
    pub fn checker(&self, program: impl Into<OsString>) -> Command {
        let mut command = self.command(program);
        command
            .env("WALLWISE", self.wallwise())
            .env("WALLWISE_SITE", self.site())
            .env("WALLWISE_PACKAGE_SITE", self.package_site())
            .env("WALLWISE_TOOLS", self.root.join("target/tools"));
        command
    }
}
