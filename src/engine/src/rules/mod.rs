//! Rules of practice: one per file, named for the fault.
//!
//! A rule is data, one measuring function, prose and evidence. Judging (which zone a value falls in)
//! and wording happen once, outside the rules. Each family folder lists its rules; [`FAMILIES`] lists
//! the families; tests police both lists against the files on disk.

pub(crate) mod ask;
mod bands;
#[macro_use]
mod evidence;
mod known;
pub mod ledger;
mod local;
mod movable;
mod prelude;
pub(crate) mod regeneration;
mod rule;
mod septum;

mod care;
mod closure;
mod defects;
mod diagnostics;
mod flap;
mod gap;
mod graft;
mod medical;
mod membrane;
mod plate;
mod position;
mod stability;
mod timing;

#[cfg(test)]
mod local_tests;
#[cfg(test)]
mod tests;
#[cfg(any(test, feature = "trial"))]
pub mod trial;

pub use bands::{Bands, Belongs, Cut, Zone};
pub use evidence::{Evidence, Source, Status};
pub use known::{Knowledge, Known};
pub use local::{Debated, Given, Held, Here, Level, Local, Moved, Protocol, Side, Worth};
pub use movable::{Movable, Unfit, check_move, check_order, check_side, movable};
pub use rule::{
    Agreement, Cause, Family, Judging, Positions, Reading, Rule, Scale, Situation, Skill, weight_of,
};

/// The families in the order of the ledger, each with its rules in the order of care.
pub static FAMILIES: &[(Family, &[&Rule])] = &[
    (Family::Timing, timing::RULES),
    (Family::Medical, medical::RULES),
    (Family::Defects, defects::RULES),
    (Family::Plate, plate::RULES),
    (Family::Gap, gap::RULES),
    (Family::Position, position::RULES),
    (Family::Stability, stability::RULES),
    (Family::Flap, flap::RULES),
    (Family::Graft, graft::RULES),
    (Family::Membrane, membrane::RULES),
    (Family::Closure, closure::RULES),
    (Family::Diagnostics, diagnostics::RULES),
    (Family::Care, care::RULES),
];

/// Every rule, family by family.
pub fn all() -> impl Iterator<Item = &'static Rule> {
    FAMILIES.iter().flat_map(|(_, rules)| rules.iter().copied())
}

/// The rule with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Rule> {
    all().find(|rule| rule.id == id)
}

/// The long text of the rule with this id: what it asks, why, how it is measured, evidence, where
/// sources differ, limits.
#[cfg(feature = "prose")]
#[must_use]
pub fn prose(id: &str) -> Option<&'static str> {
    let families: [&[(&str, &'static str)]; 13] = [
        timing::PROSE,
        medical::PROSE,
        defects::PROSE,
        plate::PROSE,
        gap::PROSE,
        position::PROSE,
        stability::PROSE,
        flap::PROSE,
        graft::PROSE,
        membrane::PROSE,
        closure::PROSE,
        diagnostics::PROSE,
        care::PROSE,
    ];
    families.into_iter().flatten().find(|(rule, _)| *rule == id).map(|(_, text)| *text)
}
