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
    let folders = [
        ("WALLWISE_PAIRS", pairs),
        ("WALLWISE_LEARNING", learning),
        ("WALLWISE_CLASS", class),
        ("WALLWISE_HANDING", handing),
    ];
    let check = |names: Vec<String>| {
        let mut command = place.checker(&python);
        command
            .envs(folders.iter().map(|(name, folder)| (name, folder)))
            .args(["-m", "unittest"])
            .args(names)
            .env("PYTHONPATH", place.tests("outside"))
            // Compiled files would litter the repository.
            .env("PYTHONDONTWRITEBYTECODE", "1");
        run(&mut command, shell::all)
    };
    // Each is one long computation: two at a time on two cores.
    let (long, others) = checks(place)?;
    let (long, others) = std::thread::scope(|scope| {
        let long = scope.spawn(|| check(long));
        let others = check(others);
        (long.join().unwrap_or_else(|_| Err("the long check was cut short".to_owned())), others)
    });
    let (long, others) = (long?, others?);
    let counts = [
        Counts::of_node(&node.text).and_exit(node.succeeded),
        Counts::of_unittest(&long.text).and_exit(long.succeeded),
        Counts::of_unittest(&others.text).and_exit(others.succeeded),
    ];
    Ok(counts.into_iter().sum())
}

/// The check that takes as long as all the others together.
const LONGEST: &str = "check_measures";

/// The checks by their modules: the longest, and the others in order of name.
fn checks(place: &Place) -> Result<(Vec<String>, Vec<String>), String> {
    let folder = place.tests("outside");
    let entries = std::fs::read_dir(&folder)
        .map_err(|error| format!("cannot read {}: {error}", folder.display()))?;
    let names = entries.flatten().filter_map(|entry| entry.file_name().into_string().ok());
    let names = names.filter_map(|name| Some(name.strip_suffix(".py")?.to_owned()));
    let mut names: Vec<String> = names.filter(|name| name.starts_with("check_")).collect();
    names.sort();
    Ok(names.into_iter().partition(|name| name == LONGEST))
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
