//! The cases of the set: their order, what to ask after each, a look at each as a learner has it.

use super::Desk;
use super::change::{ChangePart, ChangeProps};
use super::taken::kind_of;
use crate::components::fields::words;
use crate::components::plain::{el, line, link, press, said, section};
use crate::components::view::keyed;
use crate::library::ShippedSet;
use crate::route::{CaseRoute, From, Route};
use engine::chart::Address;
use engine::debrief::with_unit;
use yew::prelude::*;

/// The part of the desk.
pub fn listed(desk: &Desk) -> Html {
    let set = &*desk.set;
    let mut parts = Vec::new();
    if set.addresses.is_empty() {
        parts.push(line("p", "from", "No case yet: draw some above, and add those that you want."));
    }
    let cases = (0..set.addresses.len()).map(|place| case(desk, set, place)).collect();
    parts.push(el("ol", "desk-cases", cases));
    section("desk-cases", "Its cases, in order", parts)
}

fn case(desk: &Desk, set: &ShippedSet, place: usize) -> Html {
    let address = set.addresses[place];
    let title = set.cases.get(place).map_or("", String::as_str);
    let tested = desk.tested.iter().find(|one| one.address == address);
    let about = tested.map_or_else(
        || "being looked at".to_owned(),
        |one| {
            let (about, hard) = (one.about_words(), one.hard_words());
            let about = changed(address)
                .map_or_else(|| about.to_owned(), |changed| format!("drawn as {about}; {changed}"));
            format!("{about} · difficulty {hard} · {} rules in play", one.rules.len())
        },
    );
    let ask = {
        let desk = desk.clone();
        Callback::from(move |text: String| desk.change(|set| set.asks[place] = text))
    };
    let asked = set.asks.get(place).map_or("", String::as_str);
    let look = CaseRoute { mode: set.when(), ..CaseRoute::study(From::Address(address)) };
    let look = link(Route::Case(look).fragment(), "Do it as a learner".to_owned());
    let last = set.addresses.len() - 1;
    // The same part whatever is changed of the case, so that what has the focus keeps it.
    let drawn = Address { changed: None, ..address };
    let ways = vec![
        look,
        moved(desk, place, "Earlier", place > 0, |set, place| swap(set, place, place - 1)),
        moved(desk, place, "Later", place < last, |set, place| swap(set, place, place + 1)),
        moved(desk, place, "Take out", true, |set, place| {
            set.addresses.remove(place);
            set.cases.remove(place);
            set.asks.remove(place);
        }),
    ];
    let parts = vec![
        said("strong", "", title.to_owned()),
        said("p", "from", format!("{about} · {address}")),
        words(&format!("desk-ask-{place}"), "What to ask after it", asked, ask),
        el("p", "row", ways),
        keyed::<ChangePart>(&drawn.to_string(), ChangeProps { desk: desk.clone(), place }),
    ];
    el("li", "", parts)
}

/// What was changed of the case of an address.
fn changed(address: Address) -> Option<String> {
    let change = address.changed?;
    let kind = kind_of(change.aspect);
    let value = with_unit(&kind.words(change.to), kind.unit);
    Some(format!("changed: {}, {value}", change.aspect.scaled().words))
}

fn swap(set: &mut ShippedSet, one: usize, other: usize) {
    set.addresses.swap(one, other);
    set.cases.swap(one, other);
    set.asks.swap(one, other);
}

/// A button that changes something about the case at this place; it names the case for who cannot see
/// where it stands.
fn moved(
    desk: &Desk,
    place: usize,
    name: &'static str,
    can: bool,
    change: fn(&mut ShippedSet, usize),
) -> Html {
    let desk = desk.clone();
    let act = Callback::from(move |_: MouseEvent| desk.change(|set| change(set, place)));
    let label = format!("{name}: case {}", place + 1);
    let mut attributes = vec![("class", "quiet"), ("aria-label", label.as_str())];
    attributes.extend((!can).then_some(("disabled", "disabled")));
    press(&attributes, name.to_owned(), act)
}
