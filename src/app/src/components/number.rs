//! A decision with a number: slider, field and steps, all of the same count.

use super::choice::Asked;
use engine::plan::{Entry, NumberKind, Value};
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// What a number needs.
#[derive(Properties)]
pub struct NumberProps {
    /// The decision.
    pub entry: &'static Entry,
    /// Its range and steps.
    pub kind: NumberKind,
    /// The count so far.
    pub count: Option<i32>,
    /// Told while a slider moves; nothing when it lets go without a change.
    pub on_try: Callback<Value>,
    /// Told when an answer is given.
    pub on_choose: Callback<Value>,
}

impl PartialEq for NumberProps {
    fn eq(&self, other: &Self) -> bool {
        self.entry.key == other.entry.key && self.count == other.count
    }
}

/// A number.
#[component]
pub fn Number(props: &NumberProps) -> Html {
    let kind = props.kind;
    let wrong = use_state(|| None::<String>);
    let choose = {
        let (on_choose, wrong) = (props.on_choose.clone(), wrong.clone());
        Callback::from(move |count: i32| {
            wrong.set(None);
            on_choose.emit(Value::Number(count));
        })
    };
    let on_field = {
        let (choose, wrong) = (choose.clone(), wrong.clone());
        Callback::from(move |event: Event| match read(&kind, &text_of(&event)) {
            Ok(count) => choose.emit(count),
            Err(why) => wrong.set(Some(why)),
        })
    };
    let on_slide = {
        let on_try = props.on_try.clone();
        Callback::from(move |event: InputEvent| {
            if let Ok(count) = text_of(&event).parse() {
                on_try.emit(Value::Number(count));
            }
        })
    };
    let on_slid = {
        let choose = choose.clone();
        Callback::from(move |event: Event| {
            if let Ok(count) = text_of(&event).parse() {
                choose.emit(count);
            }
        })
    };
    let step = |by: i32| {
        let (choose, count) = (choose.clone(), props.count);
        Callback::from(move |_: MouseEvent| {
            let next =
                count.map_or(start(&kind), |count| (count + by).clamp(kind.least, kind.most));
            choose.emit(next);
        })
    };
    let shown = props.count.map(|count| kind.words(count)).unwrap_or_default();
    let name = props.entry.label;
    let slider = props.count.unwrap_or_else(|| start(&kind));
    html! {
        <Asked entry={props.entry} decided={props.count.is_some()}>
            <div class="number">
                <button type="button" class="step" aria-label={format!("{name}: less")} onclick={step(-kind.by)}>{ "−" }</button>
                <input type="range" class="slider" min={kind.least.to_string()} max={kind.most.to_string()}
                    step={kind.by.to_string()} value={slider.to_string()} aria-label={format!("{name}, slider")}
                    aria-valuetext={props.count.map_or("undecided".to_owned(), |count| directed(&kind, count))}
                    oninput={on_slide} onchange={on_slid} />
                <button type="button" class="step" aria-label={format!("{name}: more")} onclick={step(kind.by)}>{ "+" }</button>
                <label class="field">
                    <span class="visually-hidden">{ format!("{name} in {}", kind.unit) }</span>
                    <input type="text" inputmode="decimal" size="6" value={shown} placeholder="—" onchange={on_field} aria-invalid={wrong.is_some().to_string()} />
                    <span>{ kind.unit }</span>
                </label>
            </div>
            <p class="reading">{ props.count.map(|count| directed(&kind, count)).unwrap_or_default() }</p>
            if let Some(why) = &*wrong { <p class="wrong" role="alert">{ why.clone() }</p> }
        </Asked>
    }
}

/// Where stepping starts: nothing where that is allowed, else the least.
fn start(kind: &NumberKind) -> i32 {
    if kind.allows(0) { 0 } else { kind.least }
}

/// A count in words, with its direction and never with a bare sign.
#[must_use]
pub fn directed(kind: &NumberKind, count: i32) -> String {
    let size = format!("{} {}", kind.words(count.abs()), kind.unit);
    match (count.signum(), kind.ways) {
        (-1, [less, _]) if !less.is_empty() => format!("{size} {less}"),
        (1, [_, more]) if !more.is_empty() => format!("{size} {more}"),
        (-1, _) => format!("−{size}"),
        _ => size,
    }
}

fn read(kind: &NumberKind, text: &str) -> Result<i32, String> {
    let expected = || {
        format!(
            "found \"{}\", expected {} to {} {} in steps of {}",
            text.chars().take(20).collect::<String>(),
            kind.words(kind.least),
            kind.words(kind.most),
            kind.unit,
            kind.words(kind.by)
        )
    };
    let value: f64 =
        text.trim().replace(['−', '–'], "-").replace(',', ".").parse().map_err(|_| expected())?;
    let count = value * f64::from(kind.per_unit);
    if !count.is_finite() || count.abs() > 1e6 || (count - count.round()).abs() > 1e-6 {
        return Err(expected());
    }
    #[expect(clippy::cast_possible_truncation, reason = "checked to be small and whole")]
    let count = count.round() as i32;
    if kind.allows(count) { Ok(count) } else { Err(expected()) }
}

/// What stands in the field that the event came from.
pub fn text_of(event: &Event) -> String {
    event
        .target()
        .and_then(|target| target.dyn_into::<HtmlInputElement>().ok())
        .map(|field| field.value())
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::plan::{Decision, Kind};

    fn kind(decision: Decision) -> NumberKind {
        match decision.entry().kind {
            Kind::Number(kind) => kind,
            _ => panic!("no number"),
        }
    }

    #[test]
    fn a_field_takes_a_comma_and_a_typographic_minus() {
        let depth = kind(Decision::Depth);
        assert_eq!(read(&depth, "1,5"), Ok(15));
        assert_eq!(read(&depth, "−0.5"), Ok(-5));
    }

    #[test]
    fn a_field_refuses_what_is_no_step_of_its_range() {
        let diameter = kind(Decision::Diameter);
        for text in ["4.2", "9", "NaN", "inf", "", "four"] {
            assert!(read(&diameter, text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_direction_is_said_in_words() {
        assert_eq!(directed(&kind(Decision::OffsetFacial), -10), "1.0 mm to the oral side");
        assert_eq!(directed(&kind(Decision::Depth), 15), "1.5 mm apical of the crest");
    }
}
