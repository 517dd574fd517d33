//! Outside checks: other people's programs judge what ours made. `tests/outside/check_*.py`, and
//! `*.test.mjs` for what is at home in node.

use super::site;
use crate::counts::Counts;
use crate::place::Place;
use crate::shell::{self, run};
use crate::suite::Suite;
use crate::tools;
use std::path::PathBuf;

pub const OUTSIDE: Suite = Suite {
    name: "outside",
    says: "other people's programs agree with what ours made",
    run: outside,
};

fn outside(place: &Place) -> Result<Counts, String> {
    let python = tools::python(place)?;
    if !site::build(place)? {
        return Err("the page does not build".to_owned());
    }
    site::build_for_packages(place)?;
    let pairs = pairs(place)?;
    let learning = written(place, "learning")?;
    let class = written(place, "class")?;
    let handing = written(place, "handing")?;
    packages(place, &handing)?;
    tools::node_outside(place)?;
    let node = run(
        place
            .checker("node")
            .args(["--test", "--test-timeout=600000", "--test-reporter=spec"])
            .arg(place.tests("outside").join("handing.test.mjs"))
            .env("WALLWISE_HANDING", &handing),
        shell::all,
    )?;
    let mut command = place.checker(python);
    command
        .env("WALLWISE_PAIRS", pairs)
        .env("WALLWISE_LEARNING", learning)
        .env("WALLWISE_CLASS", class)
        .env("WALLWISE_HANDING", handing)
        .args(["-m", "unittest", "discover", "--start-directory"])
        .arg(place.tests("outside"))
        .args(["--pattern", "check_*.py"])
        // Compiled files would litter the repository.
        .env("PYTHONDONTWRITEBYTECODE", "1");
    let ran = run(&mut command, shell::all)?;
    let counts = [
        Counts::of_node(&node.text).and_exit(node.succeeded),
        Counts::of_unittest(&ran.text).and_exit(ran.succeeded),
    ];
    Ok(counts.into_iter().sum())
}

/// Has `export-NAME` write what is checked into a folder of that name, and returns where it is.
fn written(place: &Place, name: &str) -> Result<PathBuf, String> {
    let writer = example(place, &format!("export-{name}"))?;
    let folder = place.root.join("target/outside").join(name);
    shell::must(
        place.command(writer).arg(&folder),
        &format!("writing what the outside checks read of {name}"),
    )?;
    Ok(folder)
}

/// Has the tool pack a shipped set for both editions, beside what else is handed in.
fn packages(place: &Place, folder: &std::path::Path) -> Result<(), String> {
    for edition in ["1.2", "2004"] {
        let mut pack = place.command(place.wallwise());
        pack.arg("package")
            .arg(place.root.join("scenarios/1-the-intact-wall.set.toml"))
            .args(["--edition", edition, "--pass", "60", "--site"])
            .arg(place.package_site())
            .arg("--out")
            .arg(folder.join(format!("package-{edition}.zip")));
        shell::must(&mut pack, "packing a set")?;
    }
    Ok(())
}

/// Builds an example of the tests, and returns where it is.
fn example(place: &Place, name: &str) -> Result<PathBuf, String> {
    let build = ["build", "--release", "--workspace", "--example", name];
    shell::must(place.cargo().args(build), "building a writer of what the outside checks read")?;
    Ok(place.wallwise().with_file_name("examples").join(name))
}

/// Sites and plans to measure; the checks ask for 200 at least.
const PAIRS: &str = "210";

/// Writes the export folders that the checks measure again, and returns where they are.
fn pairs(place: &Place) -> Result<PathBuf, String> {
    let writer = example(place, "export-pairs")?;
    let folder = place.root.join("target/outside/pairs");
    // What an earlier run left there may have other names.
    let _ = std::fs::remove_dir_all(&folder);
    shell::must(
        place.command(writer).arg(&folder).arg(PAIRS),
        "writing sites and plans for the outside checks",
    )?;
    Ok(folder)
}
