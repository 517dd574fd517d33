//! A set that is sat under conditions: before it begins, its clock, and verdicts that wait.

mod clock;
mod here;
pub mod locked;
mod over;
mod start;
mod waiting;

use super::view::{keyed, view};
use crate::route::Route;
use crate::sat;
use crate::store::{Bench, Room};
use over::{Over, OverProps};
use start::{Start, StartProps};
use std::rc::Rc;
use waiting::{Waiting, WaitingProps};
use yew::prelude::*;

/// What stands in place of the case: before its set is begun, and after its end while verdicts wait.
pub fn instead(bench: &Rc<Bench>, room: &UseReducerHandle<Room>) -> Option<Html> {
    let set = sat::set_of(bench, room)?;
    if sat::is_new(set) {
        return Some(keyed::<Start>(
            &set.name,
            StartProps { set: set.clone(), room: room.clone() },
        ));
    }
    let props = || WaitingProps { bench: bench.clone(), set: set.clone(), room: room.clone() };
    (bench.session.is_over() && sat::waits(set)).then(|| view::<Waiting>(props()))
}

/// Whether the set of a case offers another attempt at it.
pub fn may_again(bench: &Bench, room: &Room) -> bool {
    let most = sat::set_of(bench, room).and_then(|set| sat::conditions(set).attempts);
    let at = Route::Case(bench.asked.clone()).fragment();
    let had = room.kept.keys().iter().filter(|key| key.is_at(&at)).count();
    most.is_none_or(|most| had < usize::from(most))
}

/// What stands over the case: the clock of its set, where it has one. That it is there at all tells
/// that its case has been opened.
pub fn over(bench: &Bench, room: &Room) -> Html {
    let limit = sat::set_of(bench, room).and_then(|set| sat::limit(&set.name));
    let address = bench.session.opened().address;
    view::<Over>(OverProps { limit, serial: bench.serial, address })
}
