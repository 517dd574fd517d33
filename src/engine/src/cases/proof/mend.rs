//! Mending a candidate: the decisions that a faulty rule reads are given their other answers, one
//! at a time, and the best change is kept, until nothing is outside or nothing helps.

use super::{Workshop, badness, pruned};
use crate::plan::{Decision, Draft, Kind, Value, is_asked};

/// Decisions that turn one course into another.
const COURSE: [Decision; 5] = [
    Decision::Course,
    Decision::AfterExtraction,
    Decision::AfterFlap,
    Decision::SeatingAct,
    Decision::SecondAct,
];
/// How many changes are made before a candidate is given up.
const MOST_CHANGES: usize = 8;
/// A candidate with this many faults to begin with is not worth mending.
const MOST_FAULTS: usize = 8;

/// The draft, mended until no rule faults it; `None` when that fails.
pub(super) fn mended(site: &Workshop<'_>, draft: Draft) -> Option<Draft> {
    let case = site.case;
    let mut draft = pruned(case, &draft);
    let mut wrong = site.faults(&draft)?;
    if wrong.len() > MOST_FAULTS {
        return None;
    }
    for _ in 0..MOST_CHANGES {
        if wrong.is_empty() {
            return Some(draft);
        }
        let before = badness(&wrong);
        let mut tried: Vec<Decision> = Vec::new();
        let mut best: Option<(u32, Draft)> = None;
        for decision in wrong.iter().flat_map(|fault| fault.rule.reads).copied() {
            if tried.contains(&decision) || !is_asked(decision, &draft, case) {
                continue;
            }
            tried.push(decision);
            for value in others(decision, &draft) {
                let mut changed = draft.clone();
                if changed.choose(decision, value).is_err() {
                    continue;
                }
                let Some(left) = site.faults(&changed) else { continue };
                let after = badness(&left);
                if after < best.as_ref().map_or(before, |(least, _)| *least) {
                    best = Some((after, changed));
                }
            }
        }
        let (_, better) = best?;
        draft = pruned(case, &better);
        wrong = site.faults(&draft)?;
    }
    wrong.is_empty().then_some(draft)
}

/// The other answers worth trying for a decision.
fn others(decision: Decision, draft: &Draft) -> Vec<Value> {
    let now = draft.value(decision);
    let all: Vec<Value> = match (decision.entry().kind, now) {
        // Another course is another candidate.
        _ if COURSE.contains(&decision) => Vec::new(),
        (Kind::One(options), _) => (0..options.len())
            .filter_map(|place| u8::try_from(place).ok())
            .map(Value::One)
            .collect(),
        (Kind::Many(options), Some(Value::Many(bits))) => {
            (0..options.len()).map(|place| Value::Many(bits ^ (1 << place))).collect()
        }
        (Kind::Number(kind), Some(Value::Number(count))) => [1, -1, 2, -2, 4, -4, 8, -8]
            .into_iter()
            .map(|steps| count + steps * kind.by)
            .filter(|count| kind.allows(*count))
            .map(Value::Number)
            .collect(),
        _ => Vec::new(),
    };
    all.into_iter().filter(|value| now != Some(value)).collect()
}
