//! The tool and the page, built as a user builds them.

use crate::counts::Counts;
use crate::place::Place;
use crate::shell::{self, run};
use crate::suite::Suite;

pub const SITE: Suite = Suite {
    name: "site",
    says: "`wallwise build` makes the page, and makes the same page twice",
    run: |place| {
        let (built, again) = (build(place)?, build_again(place)?);
        Ok([Counts::check(built), Counts::check(again)].into_iter().sum())
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

/// Builds the page elsewhere and compares the two lists of names and hashes.
fn build_again(place: &Place) -> Result<bool, String> {
    let elsewhere = place.root.join("target/tests/site-again");
    let mut command = place.command(place.wallwise());
    let ran = run(command.arg("build").arg("--out").arg(&elsewhere), |_| false)?;
    let list = |folder: &std::path::Path| std::fs::read(folder.join("site.json")).ok();
    let same = list(&elsewhere).is_some() && list(&elsewhere) == list(&place.site());
    if !same {
        shell::say("the second build differs from the first, expected the same names and hashes");
    }
    Ok(ran.succeeded && same)
}
