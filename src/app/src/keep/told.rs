//! What keeps things tells the room.

use super::Kept;
use super::key::Key;
use super::trouble::Trouble;
use crate::bench::Restored;
use learning::record::Head;
use std::rc::Rc;

/// One thing that is told.
#[derive(Debug, Clone, PartialEq)]
pub enum Told {
    /// Whether anything is kept, and what.
    Known(Kept),
    /// The browser does not answer whether it keeps anything.
    NoAnswer,
    /// It is asked once more.
    AskAgain,
    /// An attempt has its head.
    Begun(u32, Rc<Head>),
    /// So many events of a case on the bench are kept.
    Stored(u32, usize),
    /// What was done on the bench cannot be kept; the room goes on without.
    NotStored(Trouble),
    /// A kept attempt was fetched, or why not.
    Fetched(Key, Result<Rc<Restored>, String>),
    /// Another tab has written in the attempt on the bench.
    Elsewhere {
        /// Which case on the bench.
        serial: u32,
        /// The attempt as it is there.
        there: Rc<Restored>,
        /// How many events of this tab's were kept before.
        kept: usize,
    },
    /// Everything that was kept has been erased.
    Erased {
        /// By this tab, not by another.
        here: bool,
    },
}
