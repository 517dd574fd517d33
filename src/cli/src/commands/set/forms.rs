//! `wallwise set forms FILE CODE…`: which cases each learner has in a set that gives everybody their own.

use crate::{Fault, Status, Streams};
use engine::cases::{self, AS_HARD};
use engine::chart::Case;
use engine::debrief::CAUTION;
use engine::scenario::Set;
use learning::desk::Tested;

/// Prints them; a case without a form is a finding.
pub fn run(set: &Set, codes: &[String], streams: &mut Streams<'_>) -> Result<Status, Fault> {
    if !set.forms {
        return Err(Fault::new(format!("\"{}\" gives everybody the same cases", set.title))
            .hint("forms = true, beside mode, gives each learner cases of their own"));
    }
    let local = set.local();
    let models: Vec<_> = set.cases.iter().map(|entry| entry.case(local.clone())).collect();
    streams.print(&format!(
        "{}\n{CAUTION}\nEach case is about the same as its model, and as hard within {AS_HARD}.\n",
        set.title
    ))?;
    let mut status = Status::Done;
    for code in codes {
        streams.print(&format!("\nCode {code}\n"))?;
        for (model, place) in models.iter().zip(1..) {
            let line =
                model.as_ref().map_err(ToString::to_string).and_then(|case| told(case, code));
            if line.is_err() {
                status = Status::Findings;
            }
            streams.print(&format!("  {place}. {}\n", line.unwrap_or_else(|why| why)))?;
        }
    }
    Ok(status)
}

/// The case that takes the model's place: its address, its title, how hard it is.
fn told(model: &Case, code: &str) -> Result<String, String> {
    let address = model.address.ok_or_else(|| {
        format!("{}: written out in full, expected a drawn case: no other is like it", model.title)
    })?;
    let form = cases::form(address, code).map_err(|why| why.to_string())?;
    let form = Tested::of(form.address.unwrap_or(address), &form);
    Ok(format!("{}: {}, difficulty {}", form.address, form.title, form.hard_words()))
}
