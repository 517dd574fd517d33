//! Sorted lists of intervals on a ray: what a ray meets, where it enters and where it leaves.

/// From where to where, in millimetres along a ray; `from < to`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Where the ray enters.
    pub from: f64,
    /// Where it leaves.
    pub to: f64,
}

/// Disjoint intervals in rising order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Intervals(Vec<Interval>);

impl Intervals {
    /// The empty list.
    #[must_use]
    pub const fn empty() -> Self {
        Self(Vec::new())
    }

    /// One interval; empty when `to <= from`.
    #[must_use]
    pub fn one(from: f64, to: f64) -> Self {
        if from < to { Self(vec![Interval { from, to }]) } else { Self::empty() }
    }

    /// Joins intervals in any order, overlapping or touching, into a sorted disjoint list.
    #[must_use]
    pub fn union_of(mut parts: Vec<Interval>) -> Self {
        parts.retain(|part| part.from < part.to);
        parts.sort_by(|a, b| a.from.total_cmp(&b.from));
        let mut joined: Vec<Interval> = Vec::with_capacity(parts.len());
        for part in parts {
            match joined.last_mut() {
                Some(last) if part.from <= last.to => last.to = last.to.max(part.to),
                _ => joined.push(part),
            }
        }
        Self(joined)
    }

    /// The intervals, in rising order.
    #[must_use]
    pub fn as_slice(&self) -> &[Interval] {
        &self.0
    }

    /// Whether nothing is met.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The first interval that ends beyond `t`.
    #[must_use]
    pub fn first_beyond(&self, t: f64) -> Option<Interval> {
        self.0.iter().copied().find(|part| part.to > t)
    }

    /// Whether `t` lies in one of them.
    #[must_use]
    pub fn contains(&self, t: f64) -> bool {
        self.0.iter().any(|part| part.from <= t && t <= part.to)
    }

    /// Their joint length.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.0.iter().map(|part| part.to - part.from).sum()
    }

    /// What lies in either.
    #[must_use]
    pub fn union(&self, other: &Self) -> Self {
        Self::union_of(self.0.iter().chain(&other.0).copied().collect())
    }

    /// What lies in both.
    #[must_use]
    pub fn intersection(&self, other: &Self) -> Self {
        let mut common = Vec::new();
        for a in &self.0 {
            for b in &other.0 {
                let (from, to) = (a.from.max(b.from), a.to.min(b.to));
                if from < to {
                    common.push(Interval { from, to });
                }
            }
        }
        Self::union_of(common)
    }

    /// What lies in this one and not in the other.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        let mut left = Vec::new();
        for part in &self.0 {
            let mut from = part.from;
            for hole in &other.0 {
                if hole.to <= from || part.to <= hole.from {
                    continue;
                }
                if from < hole.from {
                    left.push(Interval { from, to: hole.from });
                }
                from = from.max(hole.to);
            }
            if from < part.to {
                left.push(Interval { from, to: part.to });
            }
        }
        Self(left)
    }
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
    }

    #[test]
    fn taking_away_and_keeping_the_common_part_add_up_to_the_whole() {
        let (a, b) =
            (list(&[(0.0, 4.0), (6.0, 9.0)]), list(&[(1.0, 2.0), (3.0, 7.0), (8.0, 12.0)]));
        let parts = a.minus(&b).length() + a.intersection(&b).length();
        assert!((parts - a.length()).abs() < 1e-15);
        assert_eq!(a.minus(&b).as_slice().len(), 3);
    }
}
