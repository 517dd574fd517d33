//! A number that is turned: slider and field of the same value.

use crate::amount::text_of;
use crate::components::plain::{el, line, said};
use engine::units::decimal;
use yew::prelude::*;

/// What a dial needs.
#[derive(Debug)]
pub struct Dial {
    /// What it sets.
    pub name: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// Least, most and step.
    pub range: [f64; 3],
    /// Where it stands.
    pub value: f64,
    /// What that means, in words.
    pub words: String,
    /// Told where it is turned to, inside its range.
    pub on_turn: Callback<f64>,
}

/// A dial.
pub fn dial(props: &Dial) -> Html {
    let [least, most, step] = props.range;
    let slid = {
        let (on_turn, range) = (props.on_turn.clone(), props.range);
        Callback::from(move |event: InputEvent| {
            value_of(&text_of(&event), range).into_iter().for_each(|value| on_turn.emit(value));
        })
    };
    let shown = worded(props.value, step);
    let name = format!("{} in {}", props.name, props.unit);
    let slider = html! {
        <input type="range" class="slider" min={least.to_string()} max={most.to_string()} step={step.to_string()} value={shown}
            aria-label={format!("{}, slider", props.name)} aria-valuetext={props.words.clone()} oninput={slid} />
    };
    let parts = vec![
        line("span", "dial-name", props.name),
        slider,
        field(name, props.range, Some(props.value), props.on_turn.clone()),
        line("span", "", props.unit),
        said("span", "reading", props.words.clone()),
    ];
    el("div", "dial", parts)
}

/// A field for a number in a range of least, most and step. What is typed and is none leaves it as it
/// is.
pub fn field(name: String, range: [f64; 3], value: Option<f64>, on_turn: Callback<f64>) -> Html {
    let typed = Callback::from(move |event: Event| {
        value_of(&text_of(&event), range).into_iter().for_each(|value| on_turn.emit(value));
    });
    html! { <input type="text" inputmode="decimal" size="5" value={value.map(|value| worded(value, range[2])).unwrap_or_default()} placeholder="—" aria-label={name} onchange={typed} /> }
}

fn value_of(text: &str, [least, most, step]: [f64; 3]) -> Option<f64> {
    let value = decimal(&text.trim().replace(',', ".").replace('−', "-"))?;
    let value = (value / step).round() * step;
    (least..=most).contains(&value).then_some(value)
}

fn worded(value: f64, step: f64) -> String {
    if step < 1.0 { format!("{value:.1}") } else { format!("{value:.0}") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_falls_on_the_nearest_step_and_others_are_no_value() {
        let range = [-4.0, 24.0, 0.2];
        assert_eq!(
            value_of(" 2,31 ", range).map(|value| worded(value, 0.2)),
            Some("2.4".to_owned())
        );
        assert_eq!(value_of("−4", range), Some(-4.0));
        for text in ["", "NaN", "24.2", "inf", "two"] {
            assert_eq!(value_of(text, range), None, "{text}");
        }
    }
}
