//! The ordinary room: what is done in it stays in this browser.

use super::Part;
use crate::keep::db::Db;
use crate::store::Room;
use yew::prelude::*;

/// Whether this page was packed with one set, for a host.
pub const fn is_packaged() -> bool {
    false
}

/// The name of the database where this page keeps what is done.
pub fn store() -> String {
    "wallwise".to_owned()
}

/// Puts what a host kept where the room keeps its attempts.
pub async fn resume(_: &Db) {}

/// What the results put into a part of the room.
pub fn shown(_: Part, _: UseReducerHandle<Room>) -> Html {
    Html::default()
}
