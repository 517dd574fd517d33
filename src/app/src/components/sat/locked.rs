//! A set that opens with a code, before it is said.

use crate::components::caution::caution;
use crate::components::fields::words;
use crate::components::hold::Held;
use crate::components::plain::{line, status};
use yew::prelude::*;

/// Asks for the code that opens the set.
pub fn locked(code: &Held<String>, why: &str) -> Vec<Html> {
    let told = {
        let code = code.clone();
        Callback::from(move |typed: String| code.set(typed.trim().to_owned()))
    };
    vec![
        line("h1", "", "A set for a sitting"),
        line("p", "", "It opens with a code that your instructor says."),
        words("given-release", "The code", code, told),
        status(why.to_owned()),
        caution(),
    ]
}
