//! The key of the set: what each case hides, worked out only once it is unfolded.

use super::Desk;
use super::keyed::case;
use crate::components::changed::use_changed;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{button, el, heading, labelled, line, said, status, unfolding};
use crate::effects::{self, Breath};
use crate::prose::Prose;
use engine::chart::Address;
use learning::desk::key::{Key, NOT_FOR_LEARNERS};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Keys as far as they are worked out, in any order.
type Keys = Rc<Vec<(Address, Rc<Result<Key, String>>)>>;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct KeyProps {
    /// What the rules say.
    pub prose: Prose,
    /// The desk.
    pub desk: Desk,
}

/// The part of the desk.
#[component]
pub fn KeyPart(props: &KeyProps) -> Html {
    let keys = use_held(Keys::default);
    let open = use_held(|| false);
    let set = &*props.desk.set;
    {
        let (keys, open) = (keys.clone(), open.clone());
        let asked = open.then(|| set.addresses.clone());
        use_changed(asked, move |asked| {
            let asked = asked.clone().unwrap_or_default();
            spawn_local(work(asked, keys, open));
        });
    }
    let mut parts = Vec::new();
    if *open {
        parts.extend([
            line("p", "caution", NOT_FOR_LEARNERS),
            line("p", "from", "While it is open, the key goes on paper and nothing else does."),
            el("p", "row", vec![button("Print the key", Callback::from(|_| effects::print()))]),
            said("p", "key-title", format!("{}. {}", set.title, set.aim)),
        ]);
        let mut missing = 0;
        for (place, address) in set.addresses.iter().enumerate() {
            match keys.iter().find(|(of, _)| of == address) {
                Some((_, key)) => {
                    let ask = set.asks.get(place).map(String::as_str);
                    parts.extend(case(place, key, ask, &props.prose));
                }
                None => missing += 1,
            }
        }
        let says = format!("{missing} cases are still being worked out.");
        parts.push(status(if missing > 0 { says } else { String::new() }));
    }
    let summary = "What each case hides, one sound plan, the usual faults, what to ask".to_owned();
    let folded = unfolding("key", summary, parts, Callback::from(move |is| open.set(is)));
    let title = heading("h2", "desk-key", "The key, for you alone".to_owned());
    labelled("key-part", "desk-key", title, vec![folded])
}

/// Works out what is not worked out yet, one case after the other, as long as it is unfolded.
async fn work(addresses: Vec<Address>, keys: Held<Keys>, open: Held<bool>) {
    let mut breath = Breath::now();
    let has = |address: Address| keys.iter().any(|(of, _)| *of == address);
    for address in addresses {
        if has(address) {
            continue;
        }
        breath.take_now().await;
        // Meanwhile it may have been folded, or worked out by who began before.
        if !*open || has(address) {
            continue;
        }
        let mut now = (**keys).clone();
        now.push((address, Rc::new(Key::at(address).map_err(|why| why.to_string()))));
        keys.set(Rc::new(now));
    }
}
