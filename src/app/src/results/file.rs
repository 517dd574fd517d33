//! Results as a file of statements, saved by the learner.

use super::told::results;
use crate::effects;
use crate::store::Room;
use learning::handing::xapi::{self, NOWHERE};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Saves what came of the set of this package.
pub fn saving(room: UseReducerHandle<Room>) -> Callback<MouseEvent> {
    Callback::from(move |_| {
        let room = room.clone();
        spawn_local(async move {
            let Ok(told) = results().outcome(&room).await else { return };
            let here = effects::address_of("");
            let base = here.split('?').next().unwrap_or_default().trim_end_matches("index.html");
            let base = base.trim_end_matches('/');
            let base = if base.starts_with("http") { base } else { NOWHERE };
            if let Ok(text) = xapi::file(&[told], base, effects::now()) {
                effects::save("wallwise-results.json", &text);
            }
        });
    })
}
