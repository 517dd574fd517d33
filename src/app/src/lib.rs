//! The room: views over the engine, and the calls that the page's worker answers.
//!
//! One module serves two places. On the page, [`start`] mounts the room; in a worker there is no
//! window to mount it in, so the module only stands ready to answer exported calls.

mod amount;
mod bench;
mod components;
mod drag;
mod effects;
mod files;
mod guide;
mod handout;
mod judging;
mod keep;
mod library;
mod pages;
pub mod parity;
mod prose;
mod reading;
mod results;
mod room;
mod route;
mod sat;
mod seal;
mod shelf;
mod sitting;
mod squeeze;
mod store;
mod terms;

use wasm_bindgen::prelude::wasm_bindgen;

/// The element that the room is mounted in; `www/index.html` has it.
const PLACE: &str = "room";

/// Mounts the room where there is a window, and does nothing where there is none.
pub fn start() {
    // Before anything can go wrong, and in the worker too: a panic says where it was.
    console_error_panic_hook::set_once();
    let window = web_sys::window();
    let Some(place) =
        window.and_then(|window| window.document()).and_then(|page| page.get_element_by_id(PLACE))
    else {
        return;
    };
    yew::Renderer::<room::Room>::with_root(place).render();
}

/// The digest of [`parity::digest`], for the page and the worker to compute in the browser.
///
/// # Errors
/// A sentence, where the judge cannot be fetched.
#[wasm_bindgen]
pub async fn parity(first: u32, count: u32) -> Result<String, String> {
    let judging = judging::judging().await.map_err(|fault| fault.to_string())?;
    Ok((judging.parity)(first, count))
}
