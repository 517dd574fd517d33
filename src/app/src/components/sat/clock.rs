//! How much of a set's time is left: told calmly, and folded away by who would rather not see it.

use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::plain::{folded, live, said};
use crate::effects;
use learning::record::Limit;
use std::rc::Rc;
use yew::prelude::*;

/// How often it looks, milliseconds.
const OFTEN: i32 = 5000;
const MINUTE: u64 = 60_000;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct ClockProps {
    /// The time.
    pub limit: Limit,
}

/// The clock.
#[component]
pub fn Clock(props: &ClockProps) -> Html {
    let now = use_held(effects::now);
    let here = use_held(|| Rc::new(()));
    {
        let now = now.clone();
        use_changed((), move |()| {
            // It goes for as long as it is on the page.
            let here = Rc::downgrade(&here);
            wasm_bindgen_futures::spawn_local(async move {
                while here.strong_count() > 0 {
                    effects::after(OFTEN).await;
                    if here.strong_count() > 0 {
                        now.set(effects::now());
                    }
                }
            });
        });
    }
    let limit = props.limit;
    let left = limit.end().saturating_sub(*now).div_ceil(MINUTE);
    let parts = vec![
        said("p", "from", told(limit, left)),
        // Said aloud at these moments only.
        live(announced(limit, left).to_owned()),
    ];
    folded("sat-clock", "Time".to_owned(), parts)
}

fn told(limit: Limit, left: u64) -> String {
    let until = time_of_day(limit.end());
    match left {
        0 => format!(
            "The time was over at {until}. Finish what you are at: what is done now says that it came later."
        ),
        left => format!("{} left of {}, until {until}.", minutes(left), limit.minutes),
    }
}

fn announced(limit: Limit, left: u64) -> &'static str {
    match left {
        0 => "The time is over. You can finish what you are at.",
        1 => "One minute is left.",
        2..=5 => "Five minutes are left.",
        left if 2 * left <= u64::from(limit.minutes) => "Half of the time is over.",
        _ => "",
    }
}

fn minutes(count: u64) -> String {
    if count == 1 { "1 minute".to_owned() } else { format!("{count} minutes") }
}

/// Hours and minutes on the clock of this place.
fn time_of_day(at: u64) -> String {
    let east = i64::from(effects::minutes_east());
    let minutes = i64::try_from(at / MINUTE).unwrap_or(0).saturating_add(east).rem_euclid(24 * 60);
    format!("{}:{:02}", minutes / 60, minutes % 60)
}
