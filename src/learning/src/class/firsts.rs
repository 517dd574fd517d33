//! The attempts that count: of each learner and case the first that the learner did alone.

use super::gathered::Row;
use super::order;

/// Learner and case, by their numbers.
type Of = (u32, u32);

/// The attempts that count, in the order of learners, then of cases. A list and no map: the page carries
/// a map's code once for each kind of key.
pub(super) struct Firsts<'a>(Vec<(Of, &'a Row)>);

impl<'a> Firsts<'a> {
    /// Of all attempts.
    pub(super) fn of(rows: &'a [Row]) -> Self {
        let own = rows.iter().filter(|row| row.own);
        let mut all: Vec<(Of, &Row)> = own.map(|row| ((row.learner, row.case), row)).collect();
        // What was begun at the same moment stays in the order in which it came.
        order::by(&mut all, &|(one, first), (other, second)| {
            one.cmp(other).then(first.order.cmp(&second.order))
        });
        all.dedup_by_key(|(of, _)| *of);
        Self(all)
    }

    pub(super) const fn len(&self) -> usize {
        self.0.len()
    }

    /// The attempts without whose they are.
    pub(super) fn values(&self) -> impl Iterator<Item = &'a Row> {
        self.0.iter().map(|(_, row)| *row)
    }

    pub(super) fn get(&self, of: Of) -> Option<&'a Row> {
        let place = self.0.binary_search_by(|(one, _)| one.cmp(&of)).ok()?;
        self.0.get(place).map(|(_, row)| *row)
    }
}

impl<'a> IntoIterator for &'a Firsts<'_> {
    type Item = &'a (Of, &'a Row);
    type IntoIter = core::slice::Iter<'a, (Of, &'a Row)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}
