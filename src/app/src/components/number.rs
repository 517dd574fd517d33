//! A decision with a number: slider, field and steps, all of the same count.

use super::choice::asked_at;
use crate::amount::{directed, read, start, text_of};
use engine::anatomy::Tooth;
use engine::plan::{Entry, NumberKind, Value};
use yew::prelude::*;

/// What a number needs.
#[derive(Properties)]
pub struct NumberProps {
    /// The decision.
    pub entry: &'static Entry,
    /// The tooth: it names the sides.
    pub tooth: Tooth,
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
        self.entry.key == other.entry.key && self.tooth == other.tooth && self.count == other.count
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
    let step = |by: i32| {
        let (choose, count) = (choose.clone(), props.count);
        Callback::from(move |_: MouseEvent| {
            let next =
                count.map_or(start(&kind), |count| (count + by).clamp(kind.least, kind.most));
            choose.emit(next);
        })
    };
    let shown = props.count.map(|count| kind.words(count)).unwrap_or_default();
    let name = props.tooth.named(props.entry.label);
    let answers = html! {
        <>
            <div class="number">
                <button type="button" class="step" aria-label={format!("{name}: less")} onclick={step(-kind.by)}>{ "−" }</button>
                { slider(props, &choose) }
                <button type="button" class="step" aria-label={format!("{name}: more")} onclick={step(kind.by)}>{ "+" }</button>
                <label class="field">
                    <span class="visually-hidden">{ format!("{name} in {}", kind.unit) }</span>
                    <input type="text" inputmode="decimal" size="6" value={shown} placeholder="—" onchange={on_field} aria-invalid={wrong.is_some().to_string()} />
                    <span>{ kind.unit }</span>
                </label>
            </div>
            <p class="reading">{ props.count.map(|count| directed(&kind, count, props.tooth)).unwrap_or_default() }</p>
            if let Some(why) = &*wrong { <p class="wrong" role="alert">{ why.clone() }</p> }
        </>
    };
    asked_at(props.entry, props.tooth, props.count.is_some(), answers)
}

/// The slider: it tries counts while it moves, and chooses where it stops.
fn slider(props: &NumberProps, choose: &Callback<i32>) -> Html {
    let kind = props.kind;
    let name = props.tooth.named(props.entry.label);
    let slider = props.count.unwrap_or_else(|| start(&kind));
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
    html! {
                <input type="range" class="slider" min={kind.least.to_string()} max={kind.most.to_string()}
                    step={kind.by.to_string()} value={slider.to_string()} aria-label={format!("{name}, slider")}
                    aria-valuetext={props.count.map_or("undecided".to_owned(), |count| directed(&kind, count, props.tooth))}
                    oninput={on_slide} onchange={on_slid} />
    }
}
