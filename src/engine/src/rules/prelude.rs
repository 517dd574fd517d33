//! What every rule file needs.

pub(super) use super::{
    Agreement, Bands, Cause, Cut, Evidence, Family, Judging, Positions, Reading, Rule, Scale,
    Situation, Skill, Source, Status, Zone, ask,
};
pub(super) use crate::chart::Fact;
pub(super) use crate::plan::choices as c;
pub(super) use crate::plan::{Decision, Step};

/// A situation of a closed list.
pub(super) const fn when(key: &'static str, words: &'static str, zone: Zone) -> Situation {
    Situation { key, words, zone }
}

/// A source of a rule.
pub(super) const fn says(
    source: Source,
    status: Status,
    cite: &'static str,
    says: &'static str,
) -> Evidence {
    if cfg!(feature = "prose") {
        Evidence { cite, source, status, says }
    } else {
        // Left out of the page's module; the page fetches these texts after the first case.
        Evidence { cite: "", source, status, says: "" }
    }
}

/// Reads a situation.
#[expect(clippy::unnecessary_wraps, reason = "a measuring function answers with an option")]
pub(super) const fn situation(key: &'static str) -> Option<Reading> {
    Some(Reading::Situation(key))
}

/// Reads a number.
#[expect(clippy::unnecessary_wraps, reason = "a measuring function answers with an option")]
pub(super) const fn number(value: f64) -> Option<Reading> {
    Some(Reading::Number(value))
}
