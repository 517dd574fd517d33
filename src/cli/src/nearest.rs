//! The nearest name to one that does not exist.

/// The name among `names` that is fewest edits away, when it is near enough to be meant.
#[must_use]
pub fn nearest<'a>(found: &str, names: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let most = (found.chars().count() / 3).max(2);
    names
        .into_iter()
        .map(|name| (edits(found, name), name))
        .filter(|(edits, _)| *edits <= most)
        .min_by_key(|(edits, _)| *edits)
        .map(|(_, name)| name)
}

/// Levenshtein's distance.
fn edits(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, from) in a.chars().enumerate() {
        let mut corner = row[0];
        row[0] = i + 1;
        for (j, to) in b.iter().enumerate() {
            let keep = corner + usize::from(from != *to);
            corner = row[j + 1];
            row[j + 1] = keep.min(corner + 1).min(row[j] + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_name_is_offered_and_a_far_one_is_not() {
        let names = ["gap-too-narrow", "gap-too-wide", "membrane-short"];
        assert_eq!(nearest("gap-to-narow", names), Some("gap-too-narrow"));
        assert_eq!(nearest("lunch", names), None);
        assert_eq!(edits("kitten", "sitting"), 3);
    }
}
