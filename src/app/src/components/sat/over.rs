//! What stands over every case.

use super::clock::{Clock, ClockProps};
use crate::components::changed::use_changed;
use crate::components::view::view;
use crate::keep::keeper::keeper;
use crate::sat;
use engine::chart::Address;
use learning::record::Limit;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct OverProps {
    /// The time of the set.
    pub limit: Option<Limit>,
    /// Which case on the bench it is.
    pub serial: u32,
    /// The case.
    pub address: Option<Address>,
}

/// The clock, if there is one; and a note that the case was opened.
#[component]
pub fn Over(props: &OverProps) -> Html {
    use_changed((props.serial, props.address), |(serial, address)| {
        let before = address.is_some_and(|case| sat::open(&case.to_string()));
        keeper().opened(*serial, before);
    });
    props.limit.map(|limit| view::<Clock>(ClockProps { limit })).unwrap_or_default()
}
