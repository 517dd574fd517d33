//! Decisions with a closed list of answers: one of them, or any number, none included.

use engine::plan::choices::Choice;
use engine::plan::{Entry, Value};
use yew::prelude::*;

/// What a closed list needs.
#[derive(Properties)]
pub struct ChoiceProps {
    /// The decision.
    pub entry: &'static Entry,
    /// Its alternatives.
    pub options: &'static [Choice],
    /// The answer so far.
    pub value: Option<Value>,
    /// Told when an answer is given.
    pub on_choose: Callback<Value>,
}

impl PartialEq for ChoiceProps {
    fn eq(&self, other: &Self) -> bool {
        self.entry.key == other.entry.key && self.value == other.value
    }
}

/// One of a closed list.
#[component]
pub fn OneOf(props: &ChoiceProps) -> Html {
    let options = props.options.iter().enumerate().map(|(place, option)| {
        let place = u8::try_from(place).unwrap_or(u8::MAX);
        let checked = props.value == Some(Value::One(place));
        let on_choose = props.on_choose.clone();
        let onchange = Callback::from(move |_: Event| on_choose.emit(Value::One(place)));
        html! {
            <label class="option">
                <input type="radio" name={props.entry.key} value={option.key} {checked} {onchange} />
                <span>{ option.label }</span>
            </label>
        }
    });
    html! { <Asked entry={props.entry} decided={props.value.is_some()}>{ for options }</Asked> }
}

/// Any number of a closed list. *None of these* is an answer of its own, so that leaving the list
/// alone stays undecided.
#[component]
pub fn AnyOf(props: &ChoiceProps) -> Html {
    let bits = match props.value {
        Some(Value::Many(bits)) => Some(bits),
        _ => None,
    };
    let options = props.options.iter().enumerate().map(|(place, option)| {
        let bit = 1_u32 << place;
        let chosen = bits.unwrap_or(0);
        let checked = chosen & bit != 0;
        let on_choose = props.on_choose.clone();
        let onchange = Callback::from(move |_: Event| on_choose.emit(Value::Many(chosen ^ bit)));
        html! {
            <label class="option">
                <input type="checkbox" name={props.entry.key} value={option.key} {checked} {onchange} />
                <span>{ option.label }</span>
            </label>
        }
    });
    let on_choose = props.on_choose.clone();
    let none = Callback::from(move |_: Event| on_choose.emit(Value::Many(0)));
    html! {
        <Asked entry={props.entry} decided={bits.is_some()}>
            { for options }
            <label class="option option-none">
                <input type="checkbox" name={props.entry.key} value="none-of-these" checked={bits == Some(0)} onchange={none} />
                <span>{ "none of these" }</span>
            </label>
        </Asked>
    }
}

/// What every decision's frame needs.
#[derive(Properties)]
pub struct AskedProps {
    /// The decision.
    pub entry: &'static Entry,
    /// Whether it has an answer.
    pub decided: bool,
    /// The answers.
    pub children: Html,
}

impl PartialEq for AskedProps {
    fn eq(&self, other: &Self) -> bool {
        self.entry.key == other.entry.key
            && self.decided == other.decided
            && self.children == other.children
    }
}

/// A decision's frame: its name, its question, and that it is undecided while it is.
#[component]
pub fn Asked(props: &AskedProps) -> Html {
    html! {
        <fieldset class={classes!("decision", (!props.decided).then_some("undecided"))} id={format!("decision-{}", props.entry.key)}>
            <legend>
                <span class="decision-name">{ props.entry.label }</span>
                if !props.decided { <span class="undecided-mark">{ "undecided" }</span> }
            </legend>
            <p class="ask">{ props.entry.ask }</p>
            <div class="options">{ props.children.clone() }</div>
        </fieldset>
    }
}
