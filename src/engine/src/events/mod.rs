//! What happens to a plan by chance: one event per file, each with its hazard and what it does.
//!
//! A hazard is a probability read off the site and the choices made so far; it is a *teaching model*
//! and says where each number comes from. Against it stands one number between 0 and 1 that belongs
//! to the case ([`Chance`]) and to nothing else: the same case and the same choices always meet the
//! same events, and a choice that lowers the hazard below that number avoids the event.
//!
//! Chance is never marked. The choices that raise a hazard have rules, and so has the answer to what
//! happened; this room holds neither. What an event changes about a case is applied in one place,
//! [`after`], and whatever is measured, drawn or judged from then on takes the case from there.

mod asked;
mod bleed;
mod chance;
mod exposure;
mod floor;
mod infection;
mod numbness;
mod plate;
mod sinus;
mod tip;
mod torque;

pub use asked::{bleeding_in, exposure_in, floor_in, infection_in, lining_in, numbness_in, tip_in};
pub use bleed::bleeds_again;
pub use chance::{Chance, Matter, chance_of};
pub use exposure::{Exposure, exposed_membrane};
pub use floor::floor_swells;
pub use infection::{Infection, infected};
pub use numbness::stays_numb;
pub use plate::{Pulled, broken_plate, hazard as plate_hazard};
pub use sinus::{Tear, torn_lining};
pub use tip::{Lost, lost_tip};
pub use torque::{Turn, shown_torque};

use crate::chart::Case;
use crate::plan::Plan;
use std::borrow::Cow;

/// The case as the plan's own events have left it; the case itself where none has changed it. A case
/// that an event has already changed stays as it is.
#[must_use]
pub fn after<'a>(case: &'a Case, plan: &Plan) -> Cow<'a, Case> {
    match plan.extraction.as_ref().and_then(|done| plate::after(case, done)) {
        Some(case) => Cow::Owned(case),
        None => Cow::Borrowed(case),
    }
}
