//! What a class chose, case by case and decision by decision.

use super::alternative;
use super::firsts::Firsts;
use engine::plan::{Decision, Kind};

/// What was chosen for a decision of a case.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chosen {
    /// The decision.
    pub decision: Decision,
    /// Attempts in which something was chosen for it.
    pub of: u32,
    /// Of each alternative, in the order of its list, in how many it was chosen. Where several can be
    /// ticked these add up to more than there are.
    pub counts: Vec<u32>,
}

impl Chosen {
    /// What the alternatives say, with how many chose each, the most chosen first.
    #[must_use]
    pub fn each(&self) -> Vec<(&'static str, u32)> {
        let all = self.counts.iter().zip(0_u8..);
        let mut all: Vec<(&'static str, u32)> =
            all.map(|(count, place)| (alternative(self.decision, place), *count)).collect();
        super::order::by(&mut all, &|one, other| other.1.cmp(&one.1));
        all
    }

    /// Whether all who answered chose the same.
    #[must_use]
    pub fn is_agreed(&self) -> bool {
        self.counts.iter().all(|count| *count == 0 || *count == self.of)
    }
}

/// Of each of so many cases, what was chosen, in the order of care.
pub(super) fn chosen(rows: &Firsts<'_>, cases: usize) -> Vec<Vec<Chosen>> {
    let mut found: Vec<Vec<Chosen>> = vec![Vec::new(); cases];
    for ((_, case), row) in rows {
        let Some(of_case) = found.get_mut(*case as usize) else { continue };
        let mut last = None;
        for (decision, place) in &row.chosen {
            let at = of_case.iter().position(|one| one.decision >= *decision);
            let at = at.unwrap_or(of_case.len());
            if of_case.get(at).is_none_or(|one| one.decision != *decision) {
                let counts = none(*decision);
                of_case.insert(at, Chosen { decision: *decision, of: 0, counts });
            }
            let Some(one) = of_case.get_mut(at) else { continue };
            // An attempt's choices stand decision by decision.
            one.of += u32::from(last != Some(*decision));
            last = Some(*decision);
            if let Some(count) = one.counts.get_mut(usize::from(*place)) {
                *count += 1;
            }
        }
    }
    found
}

fn none(decision: Decision) -> Vec<u32> {
    match decision.entry().kind {
        Kind::One(choices) | Kind::Many(choices) => vec![0; choices.len()],
        Kind::Number(_) | Kind::Outline => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_most_chosen_comes_first_and_agreement_is_all_or_none() {
        let counts = none(Decision::Instructions);
        let mut one = Chosen { decision: Decision::Instructions, of: 3, counts };
        one.counts[1] = 3;
        assert!(one.is_agreed());
        one.counts[2] = 1;
        assert!(!one.is_agreed());
        let each = one.each();
        assert_eq!((each[0].1, each[1].1, each.len()), (3, 1, one.counts.len()));
        assert_eq!(each[0].0, alternative(Decision::Instructions, 1));
    }
}
