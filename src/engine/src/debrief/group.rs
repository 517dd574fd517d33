//! Faults with one cause are one group: it costs once, and the debrief names the cause first.

use super::verdict::Verdict;
use crate::anatomy::Tooth;
use crate::chart::Fact;
use crate::geometry::order;
use crate::rules::Cause;
use core::cmp::Reverse;

/// Why faults belong together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GroupKey {
    /// A fact that was not looked for: charged once, to what would have shown it.
    Missed(Fact),
    /// One cause that several rules see.
    Cause(Cause),
    /// A fault of its own.
    Alone,
}

/// Faults with one cause.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// What they share.
    pub key: GroupKey,
    /// Places in the list of verdicts, the heaviest first.
    pub faults: Vec<usize>,
    /// What the group costs: the heaviest of its faults, once.
    pub cost: u32,
}

impl Group {
    /// The cause as a sentence, its sides named for this tooth; `None` for a fault of its own.
    #[must_use]
    pub fn cause(&self, tooth: Tooth) -> Option<String> {
        let named = |words: &str| tooth.named(words).into_owned();
        match self.key {
            GroupKey::Missed(fact) => Some(format!("Not looked for: {}.", named(fact.words()))),
            GroupKey::Cause(cause) => Some(named(cause.words())),
            GroupKey::Alone => None,
        }
    }
}

/// Groups the faults among verdicts; the worst group first, then in the order of care.
pub(super) fn groups(verdicts: &[Verdict]) -> Vec<Group> {
    let faults: Vec<usize> =
        (0..verdicts.len()).filter(|place| verdicts[*place].is_fault()).collect();
    let mut groups: Vec<Group> = Vec::new();
    for &place in &faults {
        let key = key_of(&verdicts[place], verdicts, &faults);
        let cost = verdicts[place].weight_of_fault();
        let joined = groups.iter_mut().find(|group| key != GroupKey::Alone && group.key == key);
        match joined {
            Some(group) => {
                group.faults.push(place);
                group.cost = group.cost.max(cost);
            }
            None => groups.push(Group { key, faults: vec![place], cost }),
        }
    }
    for group in &mut groups {
        order::sort_short_by_key(&mut group.faults, |place| {
            (Reverse(verdicts[*place].zone), *place)
        });
        if group.faults.len() == 1 && matches!(group.key, GroupKey::Cause(_)) {
            group.key = GroupKey::Alone;
        }
    }
    order::sort_short_by_key(&mut groups, |group| {
        let worst = group.faults.first().map(|place| verdicts[*place].zone);
        (Reverse(worst), group.faults.first().copied())
    });
    groups
}

/// What was not seen comes first; then the cause that most faults share among those the rule names.
fn key_of(verdict: &Verdict, verdicts: &[Verdict], faults: &[usize]) -> GroupKey {
    if let Some(fact) = verdict.missed {
        return GroupKey::Missed(fact);
    }
    let sharers = |cause: &Cause| {
        let shares = |place: &&usize| {
            let other = &verdicts[**place];
            other.missed.is_none() && other.rule.causes.contains(cause)
        };
        faults.iter().filter(shares).count()
    };
    // The first of equals wins: a rule lists its most telling cause first.
    let mut best: Option<(Cause, usize)> = None;
    for cause in verdict.rule.causes {
        let count = sharers(cause);
        if best.is_none_or(|(_, most)| count > most) {
            best = Some((*cause, count));
        }
    }
    best.map_or(GroupKey::Alone, |(cause, _)| GroupKey::Cause(cause))
}
