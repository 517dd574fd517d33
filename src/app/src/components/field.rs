//! A field for a number.

use super::hold::use_held;
use crate::amount::text_of;
use yew::prelude::*;

/// What a field needs.
#[derive(Properties, PartialEq)]
pub struct FieldProps {
    /// What is chosen, in words; empty for nothing.
    pub shown: String,
    /// Whether what was typed last cannot be.
    pub invalid: bool,
    /// Told when something else stands in it.
    pub told: Callback<Event>,
}

/// The field. What is being typed stays until it is entered or left: the sheet is drawn anew whenever
/// something has been kept, and that may be while somebody types.
#[component]
pub fn Field(props: &FieldProps) -> Html {
    let typed = use_held(|| None::<String>);
    let oninput = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| typed.set(Some(text_of(&event))))
    };
    let onchange = {
        let (typed, told) = (typed.clone(), props.told.clone());
        Callback::from(move |event: Event| {
            told.emit(event);
            typed.set(None);
        })
    };
    let onblur = {
        let typed = typed.clone();
        Callback::from(move |_: FocusEvent| typed.set(None))
    };
    let value = (*typed).clone().unwrap_or_else(|| props.shown.clone());
    html! {
        <input type="text" inputmode="decimal" size="6" {value} placeholder="—" aria-invalid={props.invalid.to_string()}
            {oninput} {onchange} {onblur} />
    }
}
