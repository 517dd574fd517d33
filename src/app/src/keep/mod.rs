//! What the room keeps in this browser, as it happens: each event in a transaction of its own, before
//! the room goes on to the next step.
//!
//! What writes and reads comes with the judge: until it is here what is done waits in the page, and the
//! room does not go on past a step.

pub mod channel;
pub mod db;
pub mod file;
pub mod keeper;
pub mod key;
pub mod restore;
pub mod shelf;
pub mod told;
pub mod trouble;

use key::Key;
use std::rc::Rc;
use trouble::Trouble;

/// Whether the room keeps what is done in it.
#[derive(Debug, Clone, PartialEq)]
pub enum Kept {
    /// The database is being opened.
    Opening,
    /// It does; what attempts there are.
    Here(Rc<Vec<Key>>),
    /// It cannot, and why.
    Without(Trouble),
}

impl Kept {
    /// The latest attempt begun at this place of the room.
    pub fn latest_at(&self, at: &str) -> Option<Key> {
        self.keys().iter().rev().find(|key| key.is_at(at)).cloned()
    }

    /// The attempt of this name.
    pub fn named(&self, id: &str) -> Option<Key> {
        self.keys().iter().find(|key| key.id() == id).cloned()
    }

    /// All attempts.
    pub fn keys(&self) -> &[Key] {
        match self {
            Self::Here(keys) => keys,
            Self::Opening | Self::Without(_) => &[],
        }
    }
}
