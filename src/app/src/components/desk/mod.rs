//! The desk: where a set is written, case by case.

pub mod about;
pub mod again;
pub mod asked;
mod change;
mod conditions;
pub mod find;
pub mod key;
mod keyed;
mod limits;
pub mod line;
pub mod listed;
mod missing;
pub mod out;
pub mod scan;
mod taken;
pub mod tests;

use crate::components::hold::Held;
use crate::components::plain::line;
use crate::handout;
use crate::library::ShippedSet;
use engine::chart::Address;
use learning::desk::Tested;
use std::rc::Rc;
use yew::prelude::Html;

/// What lies on the desk.
#[derive(Clone, PartialEq)]
pub struct Desk {
    /// The set as it stands.
    pub set: Held<ShippedSet>,
    /// Its cases as far as they have been looked at, in any order.
    pub tested: Held<Rc<Vec<Tested>>>,
    /// Cases that were drawn to choose from.
    pub found: Held<Rc<Vec<Tested>>>,
    /// What is said of the search.
    pub says: Held<String>,
}

impl Desk {
    /// Changes the set, and keeps it as it then is.
    pub fn change(&self, change: impl FnOnce(&mut ShippedSet)) {
        let mut set = (*self.set).clone();
        // One for each case, so that a question goes with its case wherever that is moved.
        set.asks.resize(set.addresses.len(), String::new());
        change(&mut set);
        handout::keep_on_desk(&set);
        self.set.set(set);
    }

    /// Adds a case that has been looked at.
    pub fn add(&self, one: &Tested) {
        let mut tested = (**self.tested).clone();
        if tested.iter().all(|other| other.address != one.address) {
            tested.push(one.clone());
        }
        self.tested.set(Rc::new(tested));
        self.change(|set| {
            set.addresses.push(one.address);
            set.cases.push(one.title.clone());
            set.asks.push(String::new());
        });
    }

    /// The cases of the set in its order, as far as they have been looked at.
    pub fn in_order(&self) -> Vec<Tested> {
        let find =
            |address: &Address| self.tested.iter().find(|one| one.address == *address).cloned();
        self.set.addresses.iter().filter_map(find).collect()
    }
}

/// What stands over the whole desk: no patient belongs here.
pub fn no_patient() -> Html {
    line(
        "p",
        "caution",
        "Do not enter a real patient. Cases are drawn by number; there is no field for who anybody is.",
    )
}
