//! A decision with a number: slider, field and steps, all of the same count.

use super::choice::asked;
use super::field::{Field, FieldProps};
use super::plain::{el, line, press, said, together};
use super::sheet::Sheet;
use super::view::keyed;
use crate::amount::{directed, read, start, text_of};
use crate::store::Action;
use engine::plan::{Entry, NumberKind, Value};
use engine::session::Event as Choice;
use yew::prelude::*;

/// What a number needs.
#[derive(Debug)]
pub struct Number<'a> {
    /// The decision.
    pub entry: &'static Entry,
    /// Its range and steps.
    pub kind: NumberKind,
    /// The count so far.
    pub count: Option<i32>,
    /// The sheet that it stands on.
    pub sheet: &'a Sheet<'a>,
    /// Told when an answer is given.
    pub on_choose: Callback<Value>,
}

/// A number.
pub fn number(props: &Number<'_>) -> Html {
    let (kind, tooth) = (props.kind, props.sheet.view.tooth);
    let decision = props.entry.decision;
    let choose = props.on_choose.reform(Value::Number);
    let on_field = {
        let (choose, wrong) = (choose.clone(), props.sheet.wrong(decision));
        Callback::from(move |event: Event| match read(&kind, &text_of(&event)) {
            Ok(count) => choose.emit(count),
            Err(why) => wrong.emit(why),
        })
    };
    let wrong = props.sheet.said_of(decision, Some("alert"));
    let invalid = wrong != Html::default();
    let step = |by: i32| {
        let (choose, count) = (choose.clone(), props.count);
        Callback::from(move |_: MouseEvent| {
            let next =
                count.map_or(start(&kind), |count| (count + by).clamp(kind.least, kind.most));
            choose.emit(next);
        })
    };
    let shown = props.count.map(|count| kind.words(count)).unwrap_or_default();
    let name = tooth.named(props.entry.label);
    let button = |sign: &str, way: &str, by: i32| {
        let name = format!("{name}: {way}");
        press(&[("class", "step"), ("aria-label", &name)], sign.to_owned(), step(by))
    };
    let field = FieldProps { shown, invalid, told: on_field };
    let field = keyed::<Field>(props.entry.key, field);
    let field = vec![
        said("span", "visually-hidden", format!("{name} in {}", kind.unit)),
        field,
        line("span", "", kind.unit),
    ];
    let row = vec![
        button("−", "less", -kind.by),
        slider(props, &choose),
        button("+", "more", kind.by),
        el("label", "field", field),
    ];
    let reading = props.count.map(|count| directed(&kind, count, tooth)).unwrap_or_default();
    let answers = together(vec![el("div", "number", row), said("p", "reading", reading), wrong]);
    asked(&props.sheet.frame(props.entry), props.count.is_some(), answers)
}

/// The slider: it tries counts while it moves, and chooses where it stops.
fn slider(props: &Number<'_>, choose: &Callback<i32>) -> Html {
    let (kind, tooth) = (props.kind, props.sheet.view.tooth);
    let name = tooth.named(props.entry.label);
    let slider = props.count.unwrap_or_else(|| start(&kind));
    let on_slide = {
        let (act, decision) = (props.sheet.act.clone(), props.entry.decision);
        Callback::from(move |event: InputEvent| {
            if let Ok(count) = text_of(&event).parse() {
                let tried = Choice::Choose(decision, Some(Value::Number(count)));
                act.emit(Action::Try(vec![tried]));
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
                    aria-valuetext={props.count.map_or("undecided".to_owned(), |count| directed(&kind, count, tooth))}
                    oninput={on_slide} onchange={on_slid} />
    }
}
