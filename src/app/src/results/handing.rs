//! Hands in as the room goes on, and says above the page where that fails.

use super::told::results;
use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::plain::{said, with};
use crate::library::Library;
use crate::store::Room;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct HandingProps {
    /// The room.
    pub room: UseReducerHandle<Room>,
}

/// The sentence; nothing while all goes well.
#[component]
pub fn Handing(props: &HandingProps) -> Html {
    let room = props.room.clone();
    let says = use_held(String::new);
    let done = room.bench.as_ref().map(|bench| {
        let session = &bench.session;
        (bench.serial, session.done().len(), session.weighing().is_some(), session.is_over())
    });
    let changed = (done, room.kept.clone(), matches!(room.library, Library::Here(_)));
    {
        let says = says.clone();
        use_changed(changed, move |_| {
            spawn_local(async move {
                if let Some(now) = results().hand_in(room).await.filter(|now| *now != *says) {
                    says.set(now);
                }
            });
        });
    }
    if says.is_empty() {
        return Html::default();
    }
    let attributes = [("class", "not-kept"), ("role", "status")];
    with("div", &attributes, vec![said("p", "", says.to_string())])
}
