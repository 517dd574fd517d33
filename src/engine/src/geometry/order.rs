//! Putting lists in order, most of them short.
//!
//! What a ray, a level or an outline crosses is a handful of places. The standard library's sort is
//! built for long lists, and the page would carry a copy of it, of some five kilobytes, for each type
//! of entry: insertion does as well here, in a hundredth of the code.

use core::cmp::Ordering;
use std::collections::BTreeSet;

/// Puts a short list in order; what compares equal keeps its order.
pub fn sort_short<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    for end in 1..list.len() {
        let mut at = end;
        while at > 0 && compare(&list[at - 1], &list[at]).is_gt() {
            list.swap(at - 1, at);
            at -= 1;
        }
    }
}

/// Puts a short list in the order of its keys; what has equal keys keeps its order.
pub fn sort_short_by_key<T, K: Ord>(list: &mut [T], key: impl Fn(&T) -> K) {
    sort_short(list, |a, b| key(a).cmp(&key(b)));
}

/// A set, entry by entry: to be collected, it would be sorted as a list first.
pub fn set_of<T: Ord>(entries: impl IntoIterator<Item = T>) -> BTreeSet<T> {
    let mut set = BTreeSet::new();
    set.extend(entries);
    set
}

/// Puts a short list of numbers in order.
pub fn ascend(values: &mut [f64]) {
    sort_short(values, f64::total_cmp);
}

/// Puts a short list of numbers in order, each of them once.
pub fn ascend_once(values: &mut Vec<f64>) {
    ascend(values);
    values.dedup();
}

/// Puts a long list of numbers in order: a heap is small in code too, and thousands are few to it.
pub fn ascend_many(values: &mut [f64]) {
    let count = values.len();
    for root in (0..count / 2).rev() {
        sink(values, root);
    }
    for end in (1..count).rev() {
        values.swap(0, end);
        sink(&mut values[..end], 0);
    }
}

/// Lets a number sink in a heap until none below it is greater.
fn sink(heap: &mut [f64], mut at: usize) {
    loop {
        let below = [2 * at + 1, 2 * at + 2].into_iter().filter(|place| *place < heap.len());
        let greatest = below.reduce(|a, b| if heap[b].total_cmp(&heap[a]).is_gt() { b } else { a });
        let Some(place) = greatest.filter(|place| heap[*place].total_cmp(&heap[at]).is_gt()) else {
            return;
        };
        heap.swap(at, place);
        at = place;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    #[test]
    fn each_short_list_comes_out_as_the_standard_library_sorts_it() {
        // Every list of up to six keys of three: what compares equal is told apart by where it stood.
        for length in 0..=6 {
            for code in 0..3_u32.pow(length) {
                let mut list: Vec<(u32, u32)> =
                    (0..length).map(|place| (code / 3_u32.pow(place) % 3, place)).collect();
                let mut expected = list.clone();
                expected.sort_by_key(|(key, _)| *key);
                sort_short(&mut list, |a, b| a.0.cmp(&b.0));
                assert_eq!(list, expected);
            }
        }
    }

    #[test]
    fn numbers_stand_in_their_total_order_and_once_where_that_is_asked() {
        let mut values = vec![2.0, -1.0, 0.0, -0.0, 2.0, f64::INFINITY];
        ascend(&mut values);
        assert_eq!(values, [-1.0, -0.0, 0.0, 2.0, 2.0, f64::INFINITY]);
        assert!(values[1].is_sign_negative() && values[2].is_sign_positive());
        ascend_once(&mut values);
        assert_eq!(values, [-1.0, 0.0, 2.0, f64::INFINITY]);
    }

    #[test]
    fn a_long_list_comes_out_as_the_standard_library_sorts_it() {
        let mut state = 1_u32;
        for length in [0, 1, 2, 3, 10, 1000] {
            let mut list: Vec<f64> = (0..length)
                .map(|_| {
                    state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    f64::from(state >> 24) - 100.0
                })
                .collect();
            let mut expected = list.clone();
            expected.sort_by(f64::total_cmp);
            ascend_many(&mut list);
            assert_eq!(list, expected);
        }
    }
}
