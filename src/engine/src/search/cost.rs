//! How far one plan is from another: decisions changed, then the sum of their steps.

use crate::chart::Case;
use crate::geometry::{Outline, P2, polygon};
use crate::plan::{Decision, Draft, Kind, Value, is_asked};

/// One decision that another plan answers otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// Which.
    pub decision: Decision,
    /// The answer as it was; `None` where it was not asked.
    pub from: Option<Value>,
    /// The answer now.
    pub to: Value,
    /// How far that is: one stock size, 0.5 mm, 5 degrees, one category, 1 mm of the largest shift of an
    /// outline and one step of any other number each count 1. 1 where it was not asked before.
    pub steps: u32,
}

impl Change {
    /// Whether it only moves a number by less than one of its steps: too little to be told from chance.
    #[must_use]
    pub fn is_small(&self) -> bool {
        match (&self.from, &self.to) {
            (Some(Value::Number(a)), Value::Number(b)) => a.abs_diff(*b) < step_of(self.decision),
            _ => false,
        }
    }
}

/// What a plan costs as a change of another: the fewest changes first, then the smallest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cost {
    /// Decisions changed.
    pub changed: u32,
    /// Sum of their steps.
    pub steps: u32,
}

/// What `to` answers otherwise than `from`, in the order of care. What it no longer asks is no change of
/// its own: it falls with the choice that it hung on.
#[must_use]
pub fn changes(case: &Case, from: &Draft, to: &Draft) -> Vec<Change> {
    to.iter()
        .filter(|(decision, value)| {
            from.value(*decision) != Some(value) && is_asked(*decision, to, case)
        })
        .map(|(decision, value)| {
            let before = from.value(decision).cloned();
            let steps = before.as_ref().map_or(1, |before| steps(decision, before, value));
            Change { decision, from: before, to: value.clone(), steps }
        })
        .collect()
}

impl Cost {
    /// Of these changes.
    #[must_use]
    pub fn of(changes: &[Change]) -> Self {
        let changed = u32::try_from(changes.len()).unwrap_or(u32::MAX);
        Self { changed, steps: changes.iter().map(|change| change.steps).sum() }
    }
}

/// How far one answer is from another, at least 1.
fn steps(decision: Decision, from: &Value, to: &Value) -> u32 {
    let far = match (from, to) {
        (Value::Many(a), Value::Many(b)) => (a ^ b).count_ones(),
        (Value::Number(a), Value::Number(b)) => a.abs_diff(*b).div_ceil(step_of(decision)),
        (Value::Outline(a), Value::Outline(b)) => shift(a, b),
        _ => 1,
    };
    far.max(1)
}

/// Counts of a number decision that make one step.
fn step_of(decision: Decision) -> u32 {
    let Kind::Number(kind) = decision.entry().kind else { return 1 };
    let counts = match (kind.unit, decision) {
        (_, Decision::Diameter | Decision::Length) => kind.by,
        ("mm", _) => kind.per_unit / 2,
        ("degrees", _) => 5,
        _ => kind.by,
    };
    counts.max(1).unsigned_abs()
}

/// The largest shift between two outlines, in whole millimetres rounded up: the farthest that a corner
/// of one lies from the edge of the other.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "an outline is small")]
fn shift(a: &Outline, b: &Outline) -> u32 {
    let (a, b) = (a.points(), b.points());
    let farthest = |from: &[P2], to: &[P2]| {
        from.iter().map(|at| polygon::signed_distance(to, *at).abs()).fold(0.0, f64::max)
    };
    libm::ceil(farthest(&a, &b).max(farthest(&b, &a)) - 1e-9).max(0.0) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steps_between(decision: Decision, from: i32, to: i32) -> u32 {
        steps(decision, &Value::Number(from), &Value::Number(to))
    }

    #[test]
    fn a_stock_size_half_a_millimetre_and_five_degrees_are_one_step_each() {
        assert_eq!(steps_between(Decision::Diameter, 40, 35), 1);
        assert_eq!(steps_between(Decision::Length, 100, 120), 2);
        assert_eq!(steps_between(Decision::OffsetFacial, 0, -5), 1);
        assert_eq!(steps_between(Decision::OffsetFacial, 0, -6), 2);
        assert_eq!(steps_between(Decision::Depth, 0, 3), 1);
        assert_eq!(steps_between(Decision::Tilt, -2, 3), 1);
        assert_eq!(steps_between(Decision::Tilt, -2, 4), 2);
        assert_eq!(steps_between(Decision::GraftAmount, 5, 25), 4);
    }

    #[test]
    fn an_outline_is_as_far_as_its_farthest_corner() {
        let square = |half: i32| {
            let corners = [[-half, 0], [half, 0], [half, 80], [-half, 80]];
            Value::Outline(Outline::new(corners.to_vec()).unwrap())
        };
        let apart = |a, b| steps(Decision::MembraneOutline, &square(a), &square(b));
        assert_eq!(apart(40, 50), 1);
        assert_eq!(apart(40, 51), 2);
        assert_eq!(apart(51, 40), 2);
    }

    #[test]
    fn each_box_of_a_list_is_a_step_and_any_other_alternative_is_one() {
        assert_eq!(steps(Decision::Examinations, &Value::Many(0b011), &Value::Many(0b110)), 2);
        assert_eq!(steps(Decision::Drilling, &Value::One(0), &Value::One(2)), 1);
    }
}
