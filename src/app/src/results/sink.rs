//! The sinks. Whoever adds one adds an arm here.

use super::file::saving;
use super::package::Package;
use crate::components::plain::{button, el, line};
use crate::room::FOOT;
use crate::store::Room;
use learning::handing::outcome::Outcome;
use std::rc::Rc;
use yew::prelude::*;

/// What stands under everything where a host is told.
const FOOT_OF_PACKAGE: &str = "Synthetic cases, for teaching. Never clinical advice. What you do goes to the host of this package, and nowhere else.";

/// One way of handing in.
pub enum Sink {
    /// Nothing is handed in: this is no package, or its host only looks back.
    None,
    /// The learner saves a file of statements.
    File,
    /// The host of the package is told.
    Package(Rc<Package>),
}

impl Sink {
    /// Tells what came of the set so far.
    ///
    /// # Errors
    /// A sentence.
    pub fn tell(&self, outcome: Outcome) -> Result<(), String> {
        match self {
            Self::Package(package) => package.tell(outcome),
            Self::None | Self::File => Ok(()),
        }
    }

    /// How many characters it keeps of the attempts themselves; nothing where it keeps none.
    pub fn most_kept(&self) -> Option<usize> {
        match self {
            Self::Package(package) => Some(package.edition().most_kept()),
            Self::None | Self::File => None,
        }
    }

    /// What the learner is asked to do for it, under the set.
    pub fn acts(&self, room: &UseReducerHandle<Room>) -> Vec<Html> {
        match self {
            Self::None | Self::Package(_) => Vec::new(),
            Self::File => vec![
                line(
                    "p",
                    "",
                    "No host keeps the results of this package: save them and hand the file on.",
                ),
                el("p", "row", vec![button("Save the results as a file", saving(room.clone()))]),
            ],
        }
    }

    /// Where what is done goes, in words.
    pub const fn foot(&self) -> &'static str {
        match self {
            Self::Package(_) => FOOT_OF_PACKAGE,
            Self::None | Self::File => FOOT,
        }
    }
}
