//! What a set is: title, aim, for whom, whose cases.

use super::Desk;
use super::conditions::sat;
use crate::components::fields::{one_of, words};
use crate::components::plain::section;
use crate::library::ShippedSet;
use yew::prelude::*;

/// Which text of a set a field is of.
type Of = fn(&mut ShippedSet) -> &mut String;

/// The part of the desk.
pub fn about(desk: &Desk) -> Html {
    let told = |of: Of| {
        let desk = desk.clone();
        Callback::from(move |text: String| desk.change(|set| *of(set) = text))
    };
    let set = &*desk.set;
    let levels = [("student", "students"), ("resident", "residents")];
    let same = [("", "the same for everybody"), ("own", "each learner's own, from their code")];
    let forms = {
        let desk = desk.clone();
        Callback::from(move |key: String| desk.change(|set| set.forms = key == "own"))
    };
    let mut parts = vec![
        words("desk-title", "Title", &set.title, told(|set| &mut set.title)),
        words(
            "desk-aim",
            "Aim: what a learner can do afterwards, in one sentence",
            &set.aim,
            told(|set| &mut set.aim),
        ),
        one_of("desk-level", "For", &levels, &set.level, told(|set| &mut set.level)),
        one_of("desk-forms", "Cases are", &same, if set.forms { "own" } else { "" }, forms),
    ];
    parts.extend(sat(desk));
    section("desk-about", "What it is", parts)
}
