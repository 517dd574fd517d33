//! Rules of practice: one per file, named for the fault.
//!
//! A rule is data, one measuring function, prose and evidence. Judging (which zone a value falls in)
//! and wording happen once, outside the rules. Each family folder lists its rules; [`FAMILIES`] lists
//! the families; tests police both lists against the files on disk.

mod bands;
mod evidence;
mod known;
mod rule;
#[cfg(any(test, feature = "trial"))]
pub mod trial;

pub use bands::{Bands, Belongs, Cut, Zone};
pub use evidence::{Evidence, Source, Status};
pub use known::{Knowledge, Known};
pub use rule::{
    Agreement, Cause, Family, Judging, Positions, Reading, Rule, Scale, Situation, Skill,
};

/// The families in the order of the ledger, each with its rules in the order of care.
pub static FAMILIES: &[(Family, &[&Rule])] = &[];

/// Every rule, family by family.
pub fn all() -> impl Iterator<Item = &'static Rule> {
    FAMILIES.iter().flat_map(|(_, rules)| rules.iter().copied())
}

/// The rule with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Rule> {
    all().find(|rule| rule.id == id)
}
