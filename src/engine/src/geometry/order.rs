//! Putting short lists in order.
//!
//! What a ray, a level or an outline crosses is a handful of places. The standard library's sort is
//! built for long lists, and the page would carry a copy of it, of some five kilobytes, for each type
//! of entry: insertion does as well here, in a hundredth of the code.

use core::cmp::Ordering;

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

/// Puts a short list of numbers in order.
pub fn ascend(values: &mut [f64]) {
    sort_short(values, f64::total_cmp);
}

/// Puts a short list of numbers in order, each of them once.
pub fn ascend_once(values: &mut Vec<f64>) {
    ascend(values);
    values.dedup();
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
}
