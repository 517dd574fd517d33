//! What numbers in a kept state stand for: decisions and their alternatives by place, in the order of
//! the catalogue as it was when a version of the form was made.
//!
//! What the catalogue gains later is written down in [`ADDED`] with the version that first knows it:
//! an older state is then read by the places that it was written with, and nothing else changes. A
//! catalogue that loses or reorders something needs its old order spelt out here; a test holds a hash
//! of the order for each version.

use engine::plan::{Decision, Entry, Kind};

/// Something that the catalogue gained.
#[derive(Debug)]
pub struct Added {
    /// The version that first knows it.
    pub since: u32,
    /// Key of the decision.
    pub decision: &'static str,
    /// Key of the alternative; none where the whole decision came.
    pub alternative: Option<&'static str>,
}

/// Everything that the catalogue gained since version 1.
pub const ADDED: &[Added] = &[];

/// Decisions, and the places of their alternatives, that a version knows.
#[derive(Debug)]
pub struct Alphabet(Vec<(&'static Entry, Vec<usize>)>);

impl Alphabet {
    /// Of a version.
    pub fn of(version: u32, added: &[Added]) -> Self {
        let knows = |entry: &Entry, alternative: Option<&str>| {
            let names = |one: &&Added| one.decision == entry.key && one.alternative == alternative;
            added.iter().find(names).is_none_or(|one| one.since <= version)
        };
        let places = |entry: &Entry| match entry.kind {
            Kind::One(options) | Kind::Many(options) => options
                .iter()
                .enumerate()
                .filter(|(_, option)| knows(entry, Some(option.key)))
                .map(|(place, _)| place)
                .collect(),
            Kind::Number(_) | Kind::Outline => Vec::new(),
        };
        let entries = Decision::ALL.iter().filter(|entry| knows(entry, None));
        Self(entries.map(|entry| (entry, places(entry))).collect())
    }

    /// How many decisions it knows.
    pub const fn count(&self) -> usize {
        self.0.len()
    }

    /// The decision at a place, with the places of its alternatives.
    pub fn at(&self, place: usize) -> Option<(&'static Entry, &[usize])> {
        self.0.get(place).map(|(entry, places)| (*entry, places.as_slice()))
    }

    /// The place of a decision.
    pub fn place(&self, decision: Decision) -> Option<usize> {
        self.0.iter().position(|(entry, _)| entry.decision == decision)
    }
}

#[cfg(test)]
mod tests {
    use super::super::FORMAT;
    use super::*;
    use engine::chart::{Answers, Finding};
    use engine::hash::Fnv;
    use engine::plan::Step;
    use engine::session::SURENESS;

    /// A hash of everything whose order a version writes down.
    fn order(version: u32) -> u64 {
        let mut hash = Fnv::new();
        let alphabet = Alphabet::of(version, ADDED);
        for (entry, places) in (0..alphabet.count()).filter_map(|place| alphabet.at(place)) {
            hash.text(entry.key);
            match entry.kind {
                Kind::One(options) | Kind::Many(options) => {
                    places.iter().for_each(|place| hash.text(options[*place].key));
                }
                Kind::Number(kind) => {
                    hash.text(&format!("{} {} {}", kind.least, kind.most, kind.by));
                }
                Kind::Outline => hash.text("outline"),
            }
        }
        Step::ALL.iter().for_each(|step| hash.text(step.key()));
        for finding in Finding::ALL {
            hash.text(finding.key());
            match finding.answers() {
                Answers::OneOf(list) => list.iter().for_each(|(key, _)| hash.text(key)),
                Answers::UpTo(most) => hash.text(&most.to_string()),
            }
        }
        SURENESS.iter().for_each(|percent| hash.bytes(&[*percent]));
        hash.value()
    }

    #[test]
    fn the_order_of_every_version_stays_as_it_was() {
        // A difference here means that what learners handed to hosts would be read as something
        // else. Write what was added into ADDED under a new FORMAT, and add its order here.
        // Version 2 added to heads only.
        let orders = [ORDER_1, ORDER_1];
        assert_eq!(orders.len(), usize::try_from(FORMAT).unwrap());
        for (version, expected) in (1..).zip(orders) {
            assert_eq!(order(version), expected, "version {version}: {:#018x}", order(version));
        }
    }

    const ORDER_1: u64 = 0xcaff_570b_fc1f_d4a5;

    #[test]
    fn what_a_later_catalogue_gained_is_unknown_to_an_earlier_version() {
        let added = [
            Added { since: 2, decision: "drugs", alternative: None },
            Added { since: 3, decision: "course", alternative: Some("refer") },
        ];
        let [one, two, three] = [1, 2, 3].map(|version| Alphabet::of(version, &added));
        assert_eq!(one.place(Decision::Drugs), None);
        assert_eq!(two.place(Decision::Drugs), Some(1));
        assert_eq!((one.count() + 1, two.count()), (two.count(), Decision::ALL.len()));
        let choices = |alphabet: &Alphabet| {
            alphabet.at(alphabet.place(Decision::Course).unwrap()).unwrap().1.to_vec()
        };
        let all = choices(&three);
        assert_eq!(all, (0..all.len()).collect::<Vec<_>>());
        assert_eq!(choices(&two).len(), all.len() - 1, "the places of the others stay theirs");
        let gone = all.iter().find(|place| !choices(&two).contains(place)).unwrap();
        assert!(choices(&two).iter().all(|place| place != gone && all.contains(place)));
    }
}
