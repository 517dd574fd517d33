//! A smaller module, where the shrinking tool happens to be installed.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::asset::Asset;
use super::{Cache, Workspace};
use crate::{Fault, Streams, Why};

/// Where `cargo all-tests` installs npm's `binaryen` with its other tools.
const TOOL: &str = "target/tools/node/node_modules/.bin/wasm-opt";
/// No feature flags: the tool reads the module's own list. With every feature switched on it
/// writes a module that browsers refuse.
const FLAGS: &[&str] = &["-Oz"];

/// Shrinks every module among `assets`, or leaves them as they are: no build needs this.
pub fn shrink(
    assets: &mut [Asset],
    workspace: &Workspace,
    cache: &mut Cache,
    streams: &mut Streams<'_>,
) -> Result<(), Fault> {
    let tool = workspace.root().join(TOOL);
    let Some(version) = version(&tool) else { return Ok(()) };
    streams.say("shrinking the module");
    let scratch = workspace.scratch("shrink");
    fs::create_dir_all(&scratch).why(|| format!("cannot make the folder {}", scratch.display()))?;
    for asset in assets.iter_mut().filter(|asset| asset.extension() == "wasm") {
        asset.bytes = cache.get(&format!("{version} {FLAGS:?}"), &asset.bytes, |bytes| {
            let (from, to) = (scratch.join("in.wasm"), scratch.join("out.wasm"));
            fs::write(&from, bytes).why(|| format!("cannot write {}", from.display()))?;
            run(&tool, &from, &to)?;
            fs::read(&to).why(|| format!("cannot read {}", to.display()))
        })?;
    }
    Ok(())
}

/// What the tool says it is, if it is there and runs.
fn version(tool: &PathBuf) -> Option<String> {
    let said = Command::new(tool).arg("--version").output().ok()?;
    said.status.success().then(|| String::from_utf8_lossy(&said.stdout).trim().to_owned())
}

fn run(tool: &Path, from: &Path, to: &Path) -> Result<(), Fault> {
    let done = Command::new(tool)
        .args(FLAGS)
        .arg(from)
        .arg("-o")
        .arg(to)
        .output()
        .why(|| format!("cannot run {}", tool.display()))?;
    if done.status.success() {
        return Ok(());
    }
    let said = String::from_utf8_lossy(&done.stderr);
    Err(Fault::new(format!("{} failed ({}): {}", tool.display(), done.status, said.trim()))
        .hint("remove the folder target/tools to build without shrinking"))
}
