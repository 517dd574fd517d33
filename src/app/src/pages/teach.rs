//! Pages for whoever teaches, and what they hand out.

use super::class::ClassPage;
use super::desk::{DeskPage, DeskProps};
use super::given::{GivenPage, GivenProps};
use super::guide::guide;
use crate::components::view::{keyed, view};
use crate::route::Route;
use crate::store::Room;
use yew::prelude::*;

/// The page that the address asks for.
pub fn teach(room: UseReducerHandle<Room>) -> Html {
    match &room.route {
        Route::Class => view::<ClassPage>(()),
        Route::Desk => view::<DeskPage>(DeskProps {}),
        Route::Given(set) => {
            keyed::<GivenPage>(set, GivenProps { given: set.clone(), room: room.clone() })
        }
        _ => guide(),
    }
}
