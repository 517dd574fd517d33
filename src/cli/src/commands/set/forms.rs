//! `wallwise set forms FILE CODE…`: which cases each learner has in a set that gives everybody their own.

use crate::{Fault, Status, Streams};
use engine::cases::{self, AS_HARD};
use engine::chart::{Address, Case};
use engine::debrief::CAUTION;
use engine::scenario::Set;

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
            let line = match model.as_ref().map_err(ToString::to_string).and_then(addressed) {
                Ok(address) => match cases::form(address, code) {
                    Ok(form) => told(&form),
                    Err(why) => Err(why.to_string()),
                },
                Err(why) => Err(why),
            };
            if line.is_err() {
                status = Status::Findings;
            }
            let line = line.unwrap_or_else(|why| why);
            streams.print(&format!("  {place}. {line}\n"))?;
        }
    }
    Ok(status)
}

/// The address of a model: a case that is written out has none.
fn addressed(case: &Case) -> Result<Address, String> {
    case.address.ok_or_else(|| {
        format!("{}: written out in full, expected a drawn case: no other is like it", case.title)
    })
}

fn told(form: &Case) -> Result<String, String> {
    let sound = cases::proof(form);
    let hard = sound.and_then(|sound| cases::difficulty(form, &sound.draft));
    let address = addressed(form)?;
    let hard = hard.map_or(0.0, |hard| hard.value());
    Ok(format!("{address}: {}, difficulty {hard:.2}", form.title))
}
