//! The Rust code by itself: its form, its lints, its tests, its documentation.

use crate::counts::Counts;
use crate::place::Place;
use crate::shell::{self, run};
use crate::suite::Suite;

pub const FORMAT: Suite = Suite {
    name: "format",
    says: "every Rust file is laid out by rustfmt",
    run: |place| {
        let ran = run(place.cargo().args(["fmt", "--all", "--check"]), shell::all)?;
        Ok(Counts::of_compiler(&ran.text, ran.succeeded))
    },
};

pub const LINTS: Suite = Suite {
    name: "lints",
    says: "clippy has nothing to say, natively or for WebAssembly",
    run: |place| {
        let native = ["--workspace", "--all-targets"].as_slice();
        let page = ["-p", "app", "-p", "engine", "--target", "wasm32-unknown-unknown"].as_slice();
        // What only the page of a package is compiled with.
        let packaged = ["-p", "app", "--features", "package", "--target", "wasm32-unknown-unknown"];
        let mut counts = Vec::new();
        for selection in [native, page, &packaged] {
            let deny = ["--", "-D", "warnings"];
            let mut command = place.cargo();
            let ran = run(command.arg("clippy").args(selection).args(deny), shell::all)?;
            counts.push(Counts::of_compiler(&ran.text, ran.succeeded));
        }
        Ok(counts.into_iter().sum())
    },
};

pub const RUST: Suite = Suite {
    name: "rust",
    says: "the Rust tests of every member, in release, as the page is built",
    run: |place| cargo_test(place, &["--lib", "--bins", "--tests", "--examples"]),
};

pub const DOCS: Suite = Suite {
    name: "docs",
    says: "the examples in the documentation run, and its links lead somewhere",
    run: |place| {
        let examples = cargo_test(place, &["--doc"])?;
        let mut command = place.cargo();
        command.args(["doc", "--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings");
        let ran = run(&mut command, shell::all)?;
        let links = Counts::of_compiler(&ran.text, ran.succeeded);
        Ok([examples, links].into_iter().sum())
    },
};

fn cargo_test(place: &Place, targets: &[&str]) -> Result<Counts, String> {
    let all = ["test", "--workspace", "--release", "--no-fail-fast"];
    // Thousands of tests pass: what is worth a line is the one that does not.
    let show = |line: &str| !line.ends_with(" ... ok") && !line.trim().is_empty();
    let ran = run(place.cargo().args(all).args(targets), show)?;
    Ok(Counts::of_cargo(&ran.text).and_exit(ran.succeeded))
}
