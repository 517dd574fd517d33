//! Outside checks: other people's programs judge what ours made. `tests/outside/check_*.py`.

use super::site;
use crate::counts::Counts;
use crate::place::Place;
use crate::shell::{self, run};
use crate::suite::Suite;
use crate::tools;

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
    let mut command = place.checker(python);
    command
        .args(["-m", "unittest", "discover", "--start-directory"])
        .arg(place.tests("outside"))
        .args(["--pattern", "check_*.py"])
        // Compiled files would litter the repository.
        .env("PYTHONDONTWRITEBYTECODE", "1");
    let ran = run(&mut command, shell::all)?;
    Ok(Counts::of_unittest(&ran.text).and_exit(ran.succeeded))
}
