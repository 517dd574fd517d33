//! What came of a set, case after case: the page has its turn before each is done again.

use crate::components::decided::local_of;
use crate::effects::{self, Breath};
use crate::library::{Library, ShippedSet};
use core::cell::RefCell;
use learning::handing::compact::Kept;
use learning::handing::outcome::Outcome;
use learning::handing::sat::Sat;

/// Marks of attempts that came to their end, by their names: a mark takes a search.
pub type Marks = RefCell<Vec<(String, Option<f64>)>>;

/// What came of a set whose cases are opened by their places in it.
pub async fn of_set(
    set: &ShippedSet,
    library: &Library,
    learner: &str,
    attempts: &[Kept],
    marks: &Marks,
) -> Outcome {
    let local = local_of(Some(&set.name), library).unwrap_or_default();
    let sat = Sat {
        name: &set.name,
        title: &set.title,
        addresses: &set.addresses,
        local: &local,
        assessed: effects::entry("data-assessment").is_some(),
    };
    let mut cases = Vec::new();
    for place in 0..set.addresses.len() {
        let chosen = sat.chosen(place, attempts);
        if chosen.is_some() {
            Breath::now().take_now().await;
        }
        let name = chosen.map(|one| one.head.id.clone()).unwrap_or_default();
        let known = marks.borrow().iter().find(|(id, _)| *id == name).map(|(_, mark)| *mark);
        let case = sat.case(place, chosen, known);
        if case.is_over && known.is_none() {
            marks.borrow_mut().push((name, case.mark));
        }
        cases.push(case);
    }
    Outcome::new(learner, &set.name, &set.title).with(cases)
}
