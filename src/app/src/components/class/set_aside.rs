//! A verdict that a class sets aside, with why.

use crate::components::hold::{Held, use_held};
use crate::components::plain::{el, items, line, said, text, together, typed, with};
use crate::components::portfolio::tick_where;
use crate::prose::Prose;
use engine::rules::Rule;
use learning::class::SetAside;
use yew::prelude::*;

/// A note is no longer than this.
const LONGEST: &str = "300";

/// What setting a verdict aside needs.
#[derive(Properties, PartialEq)]
pub struct AsideProps {
    /// The case, by its name.
    pub case: String,
    /// The rule.
    pub rule: &'static Rule,
    /// Whether somebody's verdict is unsafe.
    pub grave: bool,
    /// Everything that is set aside.
    pub aside: Held<Vec<SetAside>>,
}

/// A note, and a tick that takes it.
#[component]
pub fn Aside(props: &AsideProps) -> Html {
    let note = use_held(String::new);
    if props.grave {
        return line(
            "p",
            "from",
            "Somebody's verdict here is unsafe: what can hurt a patient does so in every class, and is set aside for none.",
        );
    }
    let (case, rule, aside) = (props.case.clone(), props.rule, props.aside.clone());
    let is = move |one: &SetAside| one.case == case && one.rule == rule;
    let now = aside.iter().find(|one| is(one)).cloned();
    let id = format!("note-{}", rule.id);
    let why = match &now {
        Some(now) => said("p", "", format!("Set aside for this class: {}", now.note)),
        None => {
            let label =
                with("label", &[("for", &id)], vec![text("Why it is set aside ".to_owned())]);
            let told = note.clone();
            let then = Callback::from(move |words: String| told.set(words));
            el(
                "p",
                "choosing",
                vec![label, typed(&[("id", &id), ("maxlength", LONGEST)], &note, then)],
            )
        }
    };
    let on = now.is_some();
    let blank = note.trim().is_empty();
    let (case, kept) = (props.case.clone(), props.aside.clone());
    let turn = Callback::from(move |_: Event| {
        let mut all: Vec<SetAside> = kept.iter().filter(|one| !is(one)).cloned().collect();
        if !on {
            all.push(SetAside { case: case.clone(), rule, note: note.trim().to_owned() });
        }
        kept.set(all);
    });
    let says = line("span", "", "Set aside for this class");
    let ticked = tick_where(says, on, !on && blank, turn);
    el("div", "", vec![why, el("div", "choosing", vec![ticked])])
}

/// What was set aside, case by case, with the notes.
pub fn set_aside(aside: &[SetAside], prose: &Prose) -> Html {
    if aside.is_empty() {
        return Html::default();
    }
    let one = |one: &SetAside| {
        let says = prose.statement(one.rule);
        format!("Case {}: {} Note: {}", one.case, says, one.note)
    };
    let says = "Set aside for this class; computed results stand beside adjusted ones, and no file is changed.";
    together(vec![line("p", "", says), items("", aside.iter().map(one).collect())])
}
