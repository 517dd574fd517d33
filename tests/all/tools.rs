//! The programs that the checks need beside Rust: installed if missing, and a sentence if that fails.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use crate::place::Place;
use crate::shell::{must, say};

/// The oldest node that the browser tests run on.
const OLDEST_NODE: u32 = 20;

/// What the browser tests need of node, as `tests/browser/package-lock.json` pins it.
pub fn node(place: &Place) -> Result<(), String> {
    packages(place, "node", "browser")
}

/// What the outside checks need of node, as `tests/outside/package-lock.json` pins it.
pub fn node_outside(place: &Place) -> Result<(), String> {
    packages(place, "outside-node", "outside")
}

/// The packages that the lists in a folder under `tests` pin, in a folder of the tools.
fn packages(place: &Place, name: &str, lists: &str) -> Result<(), String> {
    let said = place.command("node").arg("--version").output();
    let said = said.map(|output| String::from_utf8_lossy(&output.stdout).trim().to_owned());
    let found = said.as_deref().unwrap_or("no node at all");
    let major = found.trim_start_matches('v').split('.').next().and_then(|word| word.parse().ok());
    if major.is_none_or(|major: u32| major < OLDEST_NODE) {
        return Err(format!(
            "found {found}, expected node {OLDEST_NODE} or newer with npm; install it and try again"
        ));
    }
    let home = place.tools(name);
    let lists = ["package.json", "package-lock.json"].map(|name| place.tests(lists).join(name));
    install(&home, &lists, || {
        must(
            place
                .command("npm")
                .current_dir(&home)
                // No package's own script is needed, and some would fetch a browser.
                .args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"])
                .env("PUPPETEER_SKIP_DOWNLOAD", "1"),
            "`npm ci`, which installs what tests need of node,",
        )
    })
}

/// Python with the packages that `tests/outside/requirements.txt` pins.
pub fn python(place: &Place) -> Result<PathBuf, String> {
    let home = place.tools("python");
    let list = place.tests("outside").join("requirements.txt");
    let python = home.join("bin/python");
    install(&home, &[list], || {
        let make = || {
            must(
                place.command("python3").args(["-m", "venv", "--clear", "."]).current_dir(&home),
                "`python3 -m venv`, which makes a place for the outside checks' packages,",
            )
        };
        make().or_else(|_| apt(place, &["python3", "python3-venv"]).and_then(|()| make()))?;
        must(
            place
                .command(&python)
                .args(["-m", "pip", "install", "--disable-pip-version-check", "-r"])
                .arg(place.tests("outside").join("requirements.txt")),
            "`pip install`, which installs the outside checks' packages,",
        )
    })?;
    Ok(python)
}

/// A Chromium.
pub fn chromium(place: &Place) -> Result<PathBuf, String> {
    let find = || {
        let named = env::var_os("CHROMIUM").map(PathBuf::from);
        let usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
        named.into_iter().chain(usual.map(PathBuf::from)).find(|path| path.is_file())
    };
    if let Some(found) = find() {
        return Ok(found);
    }
    // Without its recommendations a browser may come without a single letter to draw.
    apt(place, &["chromium", "fonts-dejavu-core"])?;
    find().ok_or_else(|| {
        "found no chromium after installing it; name one in the variable CHROMIUM".to_owned()
    })
}

/// Runs `make` in an empty `home` with copies of `lists`, unless it did so before for the same lists.
fn install(
    home: &Path,
    lists: &[PathBuf],
    make: impl FnOnce() -> Result<(), String>,
) -> Result<(), String> {
    let wanted = lists
        .iter()
        .map(|list| fs::read_to_string(list).map_err(|error| trouble("read", list, &error)))
        .collect::<Result<Vec<_>, _>>()?;
    let stamp = home.join("installed");
    if fs::read_to_string(&stamp).is_ok_and(|made| made == wanted.concat()) {
        return Ok(());
    }
    say(&format!("installing into {}", home.display()));
    if home.exists() {
        fs::remove_dir_all(home).map_err(|error| trouble("empty", home, &error))?;
    }
    fs::create_dir_all(home).map_err(|error| trouble("make", home, &error))?;
    for (list, text) in lists.iter().zip(&wanted) {
        let copy = home.join(list.file_name().unwrap_or_default());
        fs::write(&copy, text).map_err(|error| trouble("write", &copy, &error))?;
    }
    make()?;
    fs::write(&stamp, wanted.concat()).map_err(|error| trouble("write", &stamp, &error))
}

fn apt(place: &Place, packages: &[&str]) -> Result<(), String> {
    let list = packages.join(" ");
    say(&format!("installing {list} with apt-get"));
    // An old list names versions that are gone.
    must(place.command("apt-get").arg("update"), "`apt-get update`")?;
    must(
        place
            .command("apt-get")
            .args(["install", "--yes", "--no-install-recommends"])
            .args(packages)
            .env("DEBIAN_FRONTEND", "noninteractive"),
        &format!("`apt-get install {list}`"),
    )
}

fn trouble(verb: &str, path: &Path, error: &std::io::Error) -> String {
    format!("cannot {verb} {}: {error}", path.display())
}
