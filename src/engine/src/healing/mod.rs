//! What an extraction site heals to. A *teaching model*: it is shown as one, and no verdict says that
//! what was drawn proves a choice right or wrong.
//!
//! [`healed`] draws one course for a case, the one that re-entry finds; [`illustration`] shows how far
//! courses of a site like it lie apart. Both take every number from `model`.

mod fan;
mod model;
mod ridge;
mod told;

pub use fan::{Arm, Fan, Illustration, PATIENTS, Quantity, Unknown, Whose, illustration};
pub use model::{Lost, Patient, Reads, Treatment};
pub use told::{LABEL, LIMITS, SOURCES, csv};

use crate::anatomy::{Lesion, RootBody, Socket, Wall};
use crate::chart::Case;
use crate::events::{Chance, Matter};
use crate::measure::Measurements;
use crate::units::Mm;
use model::{SOCKET, WEEKS, share};

/// A site as it has healed.
#[derive(Debug, Clone, PartialEq)]
pub struct Healed {
    /// The case with the ridge that is left; no wall is missing in it, and no socket open.
    pub case: Case,
    /// Width of the ridge 1 mm below its facial crest at the extraction, then now. Millimetres.
    pub width: [Mm; 2],
    /// How far the facial crest has come down. Millimetres, 0 or more.
    pub lowered: Mm,
    /// Level of the mid-facial crest that is left, along z from the reference crest of the extraction.
    /// Millimetres, positive apically.
    pub crest: Mm,
    /// Level down to which the old socket is still open: bone comes from its apex up. Along z as the
    /// crest. Millimetres.
    pub front: Mm,
    /// How much of the socket bone fills, 0 to 1.
    pub filled: f64,
    /// Whether gum has closed over it.
    pub closed: bool,
}

/// The site of this plan so many weeks after the extraction: of the case as the plan's own events left
/// it. The same case and the same choices always heal the same way, and more time never gives back.
#[must_use]
pub fn healed(m: &Measurements<'_>, weeks: i32) -> Option<Healed> {
    let months = f64::from(weeks) / WEEKS;
    let site = &m.case.site;
    let loss = loss(m, months);
    let level = m.crest_level(Wall::Facial);
    let before = m.ridge_width_at(level + 1.0)?;
    let apex = site.socket.as_one().length.get().max(4.0);
    let mut case = m.case.clone();
    case.site.ridge =
        ridge::shrunk(&site.ridge, loss, level, apex, site.socket.as_one().half_md.get());
    case.site.defects.clear();
    case.site.lesion = Lesion::None;
    // What is measured in a healed ridge meets no socket: a dimple stands for it.
    let one = site.socket.as_one();
    let dimple =
        RootBody { length: Mm::new(0.2), half_md: Mm::new(0.1), half_fo: Mm::new(0.1), ..one };
    case.site.socket = Socket::One([dimple]);
    let nothing = crate::plan::Plan::default();
    let after = Measurements::of(&case, &nothing);
    let crest = after.crest_level(Wall::Facial);
    let now = after.ridge_width_at(crest + 1.0)?;
    let filled = share(months, SOCKET);
    // Of the socket as it was, what lies apical of all that is left of the crest.
    let top = crest.max(after.crest_level(Wall::Oral));
    let deepest = m.ground().solid.socket.deepest()?.max(top);
    Some(Healed {
        crest: Mm::checked(crest).ok()?,
        front: Mm::checked(top + (1.0 - filled) * (deepest - top)).ok()?,
        width: [before, now],
        lowered: Mm::checked(loss.facial).ok()?,
        filled,
        closed: weeks >= 4,
        case,
    })
}

fn loss(m: &Measurements<'_>, months: f64) -> Lost {
    let reads = Reads::of(m);
    let patient = Patient::drawn(reads, &mut Chance::of(m.case, Matter::Healing));
    // At re-entry no implant stands in the site.
    let grafted = m.plan.graft_laid().is_some();
    let treatment = if grafted { Treatment::Preserved } else { Treatment::Nothing };
    patient.lost(reads, treatment).after(months)
}

#[cfg(test)]
mod tests;
