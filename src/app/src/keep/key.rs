//! Under what an attempt is kept: `ADDRESS AT ID`, so that all attempts at one case, and all at one
//! place of the room, stand together, the latest last.

use engine::chart::Address;

/// The key of an attempt.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Key(String);

/// What stands for the address of a case that has none.
const WRITTEN: &str = "-";

impl Key {
    /// From its parts.
    pub fn new(address: Option<Address>, at: &str, id: &str) -> Self {
        let address = address.map_or_else(|| WRITTEN.to_owned(), |address| address.to_string());
        Self(format!("{address} {} {id}", at.replace(' ', "+")))
    }

    /// As the database has it.
    pub fn read(text: String) -> Self {
        Self(text)
    }

    /// As the database has it.
    pub fn text(&self) -> &str {
        &self.0
    }

    /// The attempt's own name.
    pub fn id(&self) -> &str {
        self.0.rsplit(' ').next().unwrap_or_default()
    }

    /// Whether it is an attempt at the case of this address.
    pub fn is_of(&self, address: Address) -> bool {
        self.0.split(' ').next() == Some(&address.to_string())
    }

    /// Whether it was opened at this place of the room.
    pub fn is_at(&self, at: &str) -> bool {
        self.0.split(' ').nth(1).is_some_and(|found| *found == at.replace(' ', "+"))
    }
}

/// The name of an attempt that begins now: names sort by time, and two tabs never choose the same.
pub fn fresh_id(now: u64, chance: u32) -> String {
    format!("{now:011x}-{chance:08x}")
}

/// Under what an event is kept.
pub fn event_key(id: &str, place: usize) -> String {
    format!("{}{place:05}", events_of(id))
}

/// How the keys of an attempt's events begin.
pub fn events_of(id: &str) -> String {
    format!("{id}/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_says_at_which_case_where_and_under_which_name() {
        let address = "1.1.2024.0".parse().unwrap();
        let id = fresh_id(1_764_265_000_000, 7);
        let key = Key::new(Some(address), "#/set/a set/2?assessment", &id);
        assert!(key.is_of(address) && key.is_at("#/set/a set/2?assessment"));
        assert!(!key.is_of("1.1.2024.1".parse().unwrap()) && !key.is_at("#/set/a"));
        assert_eq!(key.id(), id);
        assert_eq!(Key::read(key.text().to_owned()), key);
    }

    #[test]
    fn names_sort_by_time_and_events_by_place() {
        assert!(fresh_id(999, 9) < fresh_id(1_764_265_000_000, 1));
        assert!(event_key("a", 9) < event_key("a", 10));
        assert!(event_key("a", 99).starts_with(&events_of("a")));
    }
}
