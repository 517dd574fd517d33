//! From measurements to verdicts, and from verdicts to a debrief: grouped by cause, weighed, worded.

mod compared;
mod debate;
mod group;
mod local;
mod long;
mod mark;
#[cfg(test)]
mod sides;
mod verdict;
mod words;

pub use compared::{Compared, Remark, compared};
pub use debate::{Debate, debates};
pub use group::{Group, GroupKey};
pub use local::{Line, allowed, decided, protocol};
pub use long::{LongText, read as read_long};
pub use mark::{Lost, Mark, PlanWord};
pub use verdict::{Verdict, hash_of, judge, judge_by};
pub use words::{
    Explanation, asked, counted, differ, explain, number_that_agrees, plain, sources, with_unit,
};

use crate::chart::Case;
use crate::plan::Plan;

/// Number of the rule set: what a stored attempt was judged by.
pub const RULE_SET: &str = "1";

/// When the evidence behind the rule set was last reviewed.
pub const EVIDENCE_REVIEWED: &str = "2026-11-24";

/// What stands beside every verdict.
pub const CAUTION: &str = "Synthetic case, for teaching. Not clinical advice: follow your local guidelines and licensed practice.";

/// Everything that is said about a plan.
#[derive(Debug, Clone)]
pub struct Debrief {
    /// In the order of care.
    pub verdicts: Vec<Verdict>,
    /// Faults by cause, the heaviest first.
    pub groups: Vec<Group>,
    /// The word for the whole plan.
    pub word: PlanWord,
    /// The mark with its parts.
    pub mark: Mark,
}

/// Judges everything carried out and weighs it.
///
/// `reference` is a sound plan of the case (its proof); the case's full weight is what the rules that
/// apply to it weigh. Without one, the rules that apply to the plan itself make up the full weight.
#[must_use]
pub fn debrief(case: &Case, plan: &Plan, reference: Option<&Plan>) -> Debrief {
    let verdicts = judge(case, plan);
    let groups = group::groups(&verdicts);
    let full = reference.map(|sound| judge(case, sound));
    let mark = mark::mark(&verdicts, &groups, full.as_deref());
    let word = PlanWord::of(&verdicts);
    Debrief { verdicts, groups, word, mark }
}
