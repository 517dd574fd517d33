//! The tool and the page, built as a user builds them.

use crate::counts::Counts;
use crate::place::Place;
use crate::shell::{self, run};
use crate::suite::Suite;
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::OnceLock;

pub const SITE: Suite = Suite {
    name: "site",
    says: "`wallwise build` makes the page, makes the same page twice, and its worker lists every file",
    run: |place| {
        let checks = [build(place)?, build_again(place)?, lists_every_file(place)];
        Ok(checks.into_iter().map(Counts::check).sum())
    },
};

/// Builds the tool and then, with it, the page.
pub fn build(place: &Place) -> Result<bool, String> {
    // The whole workspace is selected so that what the Rust tests compiled is not compiled anew:
    // with one package alone, its dependencies would have other features.
    let tool = ["build", "--release", "--workspace", "--bin", "wallwise"];
    let tool = run(place.cargo().args(tool), shell::all)?;
    if !tool.succeeded {
        return Ok(false);
    }
    let mut command = place.command(place.wallwise());
    Ok(run(command.arg("build").arg("--out").arg(place.site()), shell::all)?.succeeded)
}

/// Builds the page that packages carry, once in a run, whoever asks: nothing but the app's own crate is
/// compiled for it that the page was not compiled of. The tool must be built.
pub fn build_for_packages(place: &Place) -> Result<(), String> {
    static BUILT: OnceLock<Result<(), String>> = OnceLock::new();
    let build = || {
        let mut command = place.command(place.wallwise());
        command.args(["build", "--for-packages", "--out"]).arg(place.package_site());
        shell::must(&mut command, "building the page that packages carry")
    };
    BUILT.get_or_init(build).clone()
}

/// Builds the page elsewhere and compares the two lists of names and hashes.
fn build_again(place: &Place) -> Result<bool, String> {
    let elsewhere = place.root.join("target/tests/site-again");
    let mut command = place.command(place.wallwise());
    let ran = run(command.arg("build").arg("--out").arg(&elsewhere), |_| false)?;
    let list = |folder: &Path| std::fs::read(folder.join("site.json")).ok();
    let same = list(&elsewhere).is_some() && list(&elsewhere) == list(&place.site());
    if !same {
        shell::say("the second build differs from the first, expected the same names and hashes");
    }
    Ok(ran.succeeded && same)
}

/// Whether the worker that keeps the page offline lists every file of the folder and no other.
fn lists_every_file(place: &Place) -> bool {
    let worker = std::fs::read_to_string(place.site().join("sw.js")).unwrap_or_default();
    let list = worker.lines().find(|line| line.starts_with("const FILES = ")).unwrap_or_default();
    // Paths and hashes, each in quotation marks.
    let quoted = list.split('"').skip(1).step_by(2);
    let listed: BTreeSet<String> =
        quoted.filter(|text| !text.starts_with("sha256-")).map(str::to_owned).collect();
    let mut files = BTreeSet::new();
    gather(&place.site(), "", &mut files);
    files.retain(|path| !path.ends_with(".br") && path != "site.json" && path != "sw.js");
    for path in listed.symmetric_difference(&files) {
        shell::say(&format!(
            "{path} is either in the folder or in the worker's list, expected both"
        ));
    }
    !files.is_empty() && listed == files
}

/// Every file under a folder, by its path with `/` between the parts.
fn gather(folder: &Path, prefix: &str, files: &mut BTreeSet<String>) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.path().is_dir() {
            gather(&entry.path(), &format!("{path}/"), files);
        } else {
            files.insert(path);
        }
    }
}
