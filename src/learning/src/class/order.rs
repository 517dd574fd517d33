//! Putting in order, compiled once for whatever is put in order: the library's own weighs several
//! kilobytes for each type, and the page pays for it.

use core::cmp::Ordering;

/// Puts in order; what is equal stays in the order in which it came.
pub fn by<T>(all: &mut Vec<T>, compare: &dyn Fn(&T, &T) -> Ordering) {
    let behind = |one: usize, other: usize| match (all.get(one), all.get(other)) {
        (Some(one), Some(other)) => compare(one, other) == Ordering::Greater,
        _ => false,
    };
    let places = places(all.len(), &behind);
    let mut old: Vec<Option<T>> = core::mem::take(all).into_iter().map(Some).collect();
    all.extend(places.into_iter().filter_map(|place| old.get_mut(place).and_then(Option::take)));
}

/// The places of so many things, in order: runs of twice the length are merged from two.
fn places(count: usize, behind: &dyn Fn(usize, usize) -> bool) -> Vec<usize> {
    let mut now: Vec<usize> = (0..count).collect();
    let mut run = 1;
    while run < count {
        let mut next = Vec::with_capacity(count);
        for two in now.chunks(2 * run) {
            let (mut one, mut other) = two.split_at(run.min(two.len()));
            loop {
                let first = match (one.first(), other.first()) {
                    (Some(a), Some(b)) if behind(*a, *b) => &mut other,
                    (Some(_), _) => &mut one,
                    (None, Some(_)) => &mut other,
                    (None, None) => break,
                };
                if let Some((place, rest)) = first.split_first() {
                    next.push(*place);
                    *first = rest;
                }
            }
        }
        now = next;
        run *= 2;
    }
    now
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_is_the_order_of_the_library_whatever_comes() {
        // A generator of numbers of little quality: any will do.
        let mut state = 7_u32;
        for count in 0..70_u32 {
            let mut all: Vec<(u32, u32)> = (0..count)
                .map(|place| {
                    state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    ((state >> 24) % 9, place)
                })
                .collect();
            let mut expected = all.clone();
            expected.sort_by_key(|one| one.0);
            by(&mut all, &|one, other| one.0.cmp(&other.0));
            assert_eq!(all, expected);
        }
    }
}
