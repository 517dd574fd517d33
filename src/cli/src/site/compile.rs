//! The page's Rust, compiled to WebAssembly by the same cargo that runs this.

use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use super::{Page, Workspace};
use crate::{Fault, Streams, Why};

const TARGET: &str = "wasm32-unknown-unknown";
/// The package and the binary of the page.
const PAGE: &str = "app";
/// What stands between flags in cargo's encoded form.
const SEPARATOR: &str = "\u{1f}";

/// Makes sure that the compiler can make WebAssembly.
pub fn ensure_target(streams: &mut Streams<'_>) -> Result<(), Fault> {
    let sysroot = Command::new(program("RUSTC", "rustc"))
        .args(["--print", "sysroot"])
        .output()
        .why(|| "cannot run rustc".to_owned())
        .map_err(|fault| fault.hint("install Rust, or name the compiler in $RUSTC"))?;
    let sysroot = PathBuf::from(String::from_utf8_lossy(&sysroot.stdout).trim());
    if sysroot.join("lib/rustlib").join(TARGET).join("lib").is_dir() {
        return Ok(());
    }
    streams.say(&format!("adding the {TARGET} target to the Rust toolchain"));
    let added =
        Command::new("rustup").args(["target", "add", TARGET]).stdout(Stdio::null()).status();
    match added {
        Ok(status) if status.success() => Ok(()),
        _ => Err(Fault::new(format!(
            "found no {TARGET} target in {}, and `rustup target add {TARGET}` could not add it",
            sysroot.display()
        ))
        .hint("install that target the way this Rust was installed (a package manager names it rust-std or libstd-rust-dev-wasm32)")),
    }
}

/// Compiles a page and says where its module is. Both pages stand on the same crates, compiled once.
pub fn page(workspace: &Workspace, which: Page) -> Result<PathBuf, Fault> {
    let cargo = program("CARGO", "cargo");
    let built = Command::new(&cargo)
        .current_dir(workspace.root())
        .args(["build", "-p", PAGE, "--bin", PAGE, "--profile", "web", "--target", TARGET])
        .args(which.features())
        .args(["--message-format", "json-render-diagnostics"])
        .env("CARGO_ENCODED_RUSTFLAGS", flags(workspace))
        .stderr(Stdio::inherit())
        .output()
        .why(|| format!("cannot run {}", Path::new(&cargo).display()))
        .map_err(|fault| fault.hint("install cargo, or name it in $CARGO"))?;
    if !built.status.success() {
        return Err(Fault::new(format!("the page does not compile ({})", built.status))
            .hint("what cargo said above names the place"));
    }
    module_among(&String::from_utf8_lossy(&built.stdout)).ok_or_else(|| {
        Fault::new(format!(
            "found no {PAGE}.wasm among what cargo built, expected the binary of package {PAGE}"
        ))
        .hint("look at src/app/Cargo.toml: it must have a binary of that name")
    })
}

/// The flags that the caller's environment asks for, and those that keep this machine's paths out
/// of the page: a panic names its source, and the same sources must give the same bytes anywhere.
fn flags(workspace: &Workspace) -> String {
    let given = env::var("CARGO_ENCODED_RUSTFLAGS").or_else(|_| {
        env::var("RUSTFLAGS")
            .map(|flags| flags.split_whitespace().collect::<Vec<_>>().join(SEPARATOR))
    });
    let cargo_home = env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| env::home_dir().map(|home| home.join(".cargo")));
    let mut flags: Vec<String> = given.into_iter().filter(|flags| !flags.is_empty()).collect();
    // The split has to know every place in the module that names another.
    flags.push("-Clink-arg=--emit-relocs".to_owned());
    // Half of the usual stack: what lies behind it then has addresses that take a byte less each.
    flags.push("-Clink-arg=-zstack-size=524288".to_owned());
    let mut hide = |path: &Path, name: &str| {
        flags.push(format!("--remap-path-prefix={}={name}", path.display()));
    };
    hide(workspace.root(), "wallwise");
    if let Some(home) = cargo_home {
        // Crates lie in `registry/src/<host>`, and the host's name belongs to the machine too.
        let sources = home.join("registry/src");
        for folder in std::fs::read_dir(sources).into_iter().flatten().flatten() {
            hide(&folder.path(), "crates");
        }
    }
    flags.join(SEPARATOR)
}

/// The page's module among cargo's messages, one JSON object a line.
fn module_among(messages: &str) -> Option<PathBuf> {
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok())
        .filter(|message| {
            message["reason"] == "compiler-artifact"
                && message["target"]["name"] == PAGE
                && message["target"]["kind"][0] == "bin"
        })
        .filter_map(|message| message["filenames"].as_array().cloned())
        .flatten()
        .filter_map(|name| name.as_str().map(PathBuf::from))
        .find(|path| path.extension().is_some_and(|extension| extension == "wasm"))
}

/// The program that the environment names, or the usual one.
fn program(variable: &str, usual: &str) -> OsString {
    env::var_os(variable).filter(|value| !value.is_empty()).unwrap_or_else(|| usual.into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_module_is_found_among_cargo_s_messages() {
        let messages = r#"
            {"reason":"compiler-artifact","target":{"name":"app","kind":["lib"]},"filenames":["libapp.rlib"]}
            {"reason":"compiler-artifact","target":{"name":"app","kind":["bin"]},"filenames":["app.d","w/app.wasm"]}
            {"reason":"build-finished","success":true}"#;
        assert_eq!(module_among(messages), Some(PathBuf::from("w/app.wasm")));
        assert_eq!(module_among(""), None);
    }
}
