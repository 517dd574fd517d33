//! Sorted lists of intervals on a ray: what a ray meets, where it enters and where it leaves.

use super::order;
use core::fmt;

/// From where to where, in millimetres along a ray; `from < to`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Where the ray enters.
    pub from: f64,
    /// Where it leaves.
    pub to: f64,
}

/// How many intervals are held without asking for memory. A ray through a jaw seldom meets more.
const INLINE: usize = 4;

const NOTHING: Interval = Interval { from: 0.0, to: 0.0 };

/// Disjoint intervals in rising order. The first four live in place, because rays are cast by the
/// thousand and most meet one or two.
#[derive(Clone)]
pub struct Intervals {
    count: usize,
    inline: [Interval; INLINE],
    spill: Vec<Interval>,
}

impl Default for Intervals {
    fn default() -> Self {
        Self::empty()
    }
}

impl fmt::Debug for Intervals {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.as_slice()).finish()
    }
}

impl PartialEq for Intervals {
    fn eq(&self, other: &Self) -> bool {
        self.as_slice() == other.as_slice()
    }
}

impl Intervals {
    /// The empty list.
    #[must_use]
    pub const fn empty() -> Self {
        Self { count: 0, inline: [NOTHING; INLINE], spill: Vec::new() }
    }

    /// One interval; empty when `to <= from`.
    #[must_use]
    pub fn one(from: f64, to: f64) -> Self {
        let mut list = Self::empty();
        list.append(from, to);
        list
    }

    /// Joins intervals in any order, overlapping or touching, into a sorted disjoint list.
    #[must_use]
    pub fn union_of(mut parts: Vec<Interval>) -> Self {
        order::sort_short(&mut parts, |a, b| a.from.total_cmp(&b.from));
        let mut joined = Self::empty();
        for part in parts {
            joined.append(part.from, part.to);
        }
        joined
    }

    /// Adds an interval that does not begin before the last one begins; joins it with the last one
    /// where they touch. What is empty or not a number adds nothing.
    #[inline]
    pub fn append(&mut self, from: f64, to: f64) {
        let proper = from < to;
        if !proper {
            return;
        }
        if let Some(last) = self.last_mut()
            && from <= last.to
        {
            last.to = last.to.max(to);
            return;
        }
        let next = Interval { from, to };
        if !self.spill.is_empty() {
            self.spill.push(next);
        } else if self.count < INLINE {
            self.inline[self.count] = next;
            self.count += 1;
        } else {
            self.spill.extend_from_slice(&self.inline);
            self.spill.push(next);
        }
    }

    fn last_mut(&mut self) -> Option<&mut Interval> {
        if self.spill.is_empty() {
            self.inline[..self.count].last_mut()
        } else {
            self.spill.last_mut()
        }
    }

    /// The intervals, in rising order.
    #[must_use]
    pub fn as_slice(&self) -> &[Interval] {
        if self.spill.is_empty() { &self.inline[..self.count] } else { &self.spill }
    }

    /// Whether nothing is met.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.count == 0
    }

    /// The first interval that ends beyond `t`.
    #[must_use]
    pub fn first_beyond(&self, t: f64) -> Option<Interval> {
        self.as_slice().iter().copied().find(|part| part.to > t)
    }

    /// The last interval.
    #[must_use]
    pub fn last(&self) -> Option<Interval> {
        self.as_slice().last().copied()
    }

    /// Whether `t` lies in one of them.
    #[must_use]
    pub fn contains(&self, t: f64) -> bool {
        self.as_slice().iter().any(|part| part.from <= t && t <= part.to)
    }

    /// Their joint length.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.as_slice().iter().map(|part| part.to - part.from).sum()
    }

    /// The joint length of what lies between `from` and `to`.
    #[must_use]
    pub fn length_within(&self, from: f64, to: f64) -> f64 {
        self.as_slice().iter().map(|part| (part.to.min(to) - part.from.max(from)).max(0.0)).sum()
    }

    /// What lies in either.
    #[must_use]
    pub fn union(&self, other: &Self) -> Self {
        let (mut a, mut b) = (self.as_slice(), other.as_slice());
        let mut joined = Self::empty();
        while let Some(next) = match (a.first(), b.first()) {
            (Some(one), Some(two)) if two.from < one.from => take_first(&mut b),
            (Some(_), _) => take_first(&mut a),
            (None, _) => take_first(&mut b),
        } {
            joined.append(next.from, next.to);
        }
        joined
    }

    /// What lies in both.
    #[must_use]
    pub fn intersection(&self, other: &Self) -> Self {
        let (a, b) = (self.as_slice(), other.as_slice());
        let (mut i, mut j) = (0, 0);
        let mut common = Self::empty();
        while i < a.len() && j < b.len() {
            common.append(a[i].from.max(b[j].from), a[i].to.min(b[j].to));
            if a[i].to < b[j].to {
                i += 1;
            } else {
                j += 1;
            }
        }
        common
    }

    /// What lies in this one and not in the other.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        let mut left = self.clone();
        for hole in other.as_slice() {
            left.cut(hole.from, hole.to);
        }
        left
    }

    /// Takes away what lies between `from` and `to`.
    pub fn cut(&mut self, from: f64, to: f64) {
        let proper = from < to;
        if !proper || !self.as_slice().iter().any(|part| part.from < to && from < part.to) {
            return;
        }
        let before = core::mem::take(self);
        for part in before.as_slice() {
            self.append(part.from, part.to.min(from));
            self.append(part.from.max(to), part.to);
        }
    }
}

fn take_first(list: &mut &[Interval]) -> Option<Interval> {
    let (first, rest) = list.split_first()?;
    *list = rest;
    Some(*first)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn list(parts: &[(f64, f64)]) -> Intervals {
        Intervals::union_of(parts.iter().map(|&(from, to)| Interval { from, to }).collect())
    }

    #[test]
    fn a_union_joins_what_overlaps_or_touches_and_drops_what_is_empty() {
        assert_eq!(list(&[(3.0, 4.0), (0.0, 1.0), (1.0, 2.0), (5.0, 5.0)]).as_slice().len(), 2);
        assert!((list(&[(0.0, 2.0), (1.0, 3.0)]).length() - 3.0).abs() < 1e-15);
        let both = list(&[(0.0, 1.0), (4.0, 6.0)]).union(&list(&[(0.5, 2.0), (5.0, 7.0)]));
        assert_eq!(both, list(&[(0.0, 2.0), (4.0, 7.0)]));
    }

    #[test]
    fn taking_away_and_keeping_the_common_part_add_up_to_the_whole() {
        let (a, b) =
            (list(&[(0.0, 4.0), (6.0, 9.0)]), list(&[(1.0, 2.0), (3.0, 7.0), (8.0, 12.0)]));
        let parts = a.minus(&b).length() + a.intersection(&b).length();
        assert!((parts - a.length()).abs() < 1e-15);
        assert_eq!(a.minus(&b).as_slice().len(), 3);
    }

    #[test]
    fn more_intervals_than_fit_in_place_are_kept_all_the_same() {
        let many: Vec<_> = (0..40).map(|i| (f64::from(2 * i), f64::from(2 * i + 1))).collect();
        let mut all = list(&many);
        assert_eq!(all.as_slice().len(), 40);
        all.cut(10.5, 20.5);
        assert!((all.length() - 35.0).abs() < 1e-12, "{all:?}");
        assert!((all.length_within(0.5, 2.5) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn what_is_not_a_number_is_not_taken_in() {
        let mut list = Intervals::one(f64::NAN, 1.0);
        list.append(0.0, f64::NAN);
        assert!(list.is_empty());
    }
}
