//! What an extraction site heals to. A *teaching model*: it is shown as one, and no verdict says that
//! what was drawn proves a choice right or wrong.
//!
//! Time runs as 1 - exp(-t / tau), tau 2.0 months for width and 1.5 for height: two thirds of the width
//! that goes is gone after 2.2 months (Schropp 2003, confirmed (secondary)). What goes in the end:
//!
//! - Width: normal, 3.6 +/- 1.1 mm, of molars 4.6 +/- 1.3. Means of 3.79 (Tan 2012, confirmed) and 3.87
//!   mm (Van der Weijden 2009, confirmed); the spread between patients is ours.
//! - Facial height: lognormal about 1.3 exp(1.1 (1 - b)) mm, b the facial plate in mm 1 mm below the
//!   crest, none where the wall is lost; logarithmic spread 0.45 (ours). Means of 1.24 (Tan 2012,
//!   confirmed) and 1.71 mm (Couso-Queiruga 2021, confirmed). Upper front teeth with a plate under
//!   1 mm lose far more in 4 of 10 (ours): 6.5 +/- 1.5 mm (7.5 in Chappuis 2013, confirmed by its
//!   successor of 2015).
//! - A grafted socket keeps 1.7 +/- 0.6 mm of that width (1.86: Bassir 2018, confirmed) and
//!   1.5 +/- 0.8 mm of that height (1.47: Vignoletti 2012, confirmed); the spreads are ours.
//! - Orally as much height goes as facially, and no more than 1.44 mm (Couso-Queiruga 2021, confirmed).
//! - Two thirds of the width go on the facial side (56 against 30 % beside implants: Botticelli 2004,
//!   from memory), evenly to 1 mm below the crest and then less and less down to the apex (ours).
//! - Bone fills the socket as 1 - exp(-t / 1.5 months) (ours); gum closes over it by four weeks
//!   (timing classes, Hammerle 2004, confirmed).

mod ridge;

use crate::anatomy::{Jaw, Kind, Lesion, RootBody, Socket, Wall};
use crate::chart::Case;
use crate::events::{Chance, Matter};
use crate::measure::Measurements;
use crate::units::Mm;

/// Weeks in a month.
const WEEKS: f64 = 4.345;

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

/// What goes in time, mm: width, facial height, oral height.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Loss {
    width: f64,
    facial: f64,
    oral: f64,
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
    let filled = share(months, 1.5);
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

/// The share of a change that has happened.
fn share(months: f64, tau: f64) -> f64 {
    1.0 - libm::exp(-months / tau)
}

fn loss(m: &Measurements<'_>, months: f64) -> Loss {
    let tooth = m.case.site.tooth;
    let plate = m.facial_plate().map_or(0.0, Mm::get);
    let mut chance = Chance::of(m.case, Matter::Healing);
    let mut normal = |mean: f64, spread: f64| mean + spread * chance.standard();
    let molar = tooth.kind() == Kind::Molar;
    let mut width = if molar { normal(4.6, 1.3) } else { normal(3.6, 1.1) };
    let median = 1.3 * libm::exp(1.1 * (1.0 - plate));
    let mut height = (median * libm::exp(normal(0.0, 0.45))).clamp(0.3, 8.0);
    let collapsed = normal(6.5, 1.5);
    let kept = [normal(1.7, 0.6), normal(1.5, 0.8)];
    let front = tooth.jaw() == Jaw::Maxilla && tooth.kind() <= Kind::Canine;
    if front && plate < 1.0 && chance.unit() < 0.4 {
        height = collapsed;
    }
    if m.plan.graft_laid().is_some() {
        width -= kept[0].max(0.0);
        height -= kept[1].max(0.0);
    }
    let facial = height.clamp(0.2, 8.0) * share(months, 1.5);
    Loss {
        width: width.max(0.2) * share(months, 2.0),
        facial,
        oral: facial.min(1.44 * share(months, 1.5)),
    }
}

#[cfg(test)]
mod tests;
