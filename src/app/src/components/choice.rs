//! Decisions with a closed list of answers: one of them, or any number, none included.

use super::plain::{el, line, said, text};
use engine::anatomy::Tooth;
use engine::plan::choices::Choice;
use engine::plan::{Entry, Value};
use yew::prelude::*;

/// A decision with a closed list of answers.
#[derive(Debug)]
pub struct ClosedList<'a> {
    /// The decision, and what stands about it.
    pub frame: Frame,
    /// Its alternatives.
    pub options: &'static [Choice],
    /// The answer so far.
    pub value: Option<&'a Value>,
    /// Told when an answer is given.
    pub on_choose: Callback<Value>,
}

/// One of a closed list.
pub fn one_of(props: &ClosedList<'_>) -> Html {
    let options = props.options.iter().enumerate().map(|(place, option)| {
        let place = u8::try_from(place).unwrap_or(u8::MAX);
        let checked = props.value == Some(&Value::One(place));
        let on_choose = props.on_choose.clone();
        let onchange = Callback::from(move |_: Event| on_choose.emit(Value::One(place)));
        html! {
            <label class="option">
                <input type="radio" name={props.frame.entry.key} value={option.key} {checked} {onchange} />
                <span>{ props.frame.tooth.named(option.label) }</span>
            </label>
        }
    });
    asked(&props.frame, props.value.is_some(), html! { <>{ for options }</> })
}

/// Any number of a closed list. *None of these* is an answer of its own, so that leaving the list
/// alone stays undecided. `on_turn` is told which bit to turn over: what the others are is the room's
/// to know, for the next may be turned before this one is drawn.
pub fn any_of(props: &ClosedList<'_>, on_turn: &Callback<u32>) -> Html {
    let bits = match props.value {
        Some(Value::Many(bits)) => Some(*bits),
        _ => None,
    };
    let options = props.options.iter().enumerate().map(|(place, option)| {
        let bit = 1_u32 << place;
        let checked = bits.unwrap_or(0) & bit != 0;
        let onchange = on_turn.reform(move |_: Event| bit);
        html! {
            <label class="option">
                <input type="checkbox" name={props.frame.entry.key} value={option.key} {checked} {onchange} />
                <span>{ props.frame.tooth.named(option.label) }</span>
            </label>
        }
    });
    let on_choose = props.on_choose.clone();
    let none = Callback::from(move |_: Event| on_choose.emit(Value::Many(0)));
    let answers = html! {
        <>
            { for options }
            <label class="option option-none">
                <input type="checkbox" name={props.frame.entry.key} value="none-of-these" checked={bits == Some(0)} onchange={none} />
                <span>{ "none of these" }</span>
            </label>
        </>
    };
    asked(&props.frame, bits.is_some(), answers)
}

/// Lets the terms in a text explain themselves.
pub type Explain = fn(&str) -> Html;

/// What stands about a decision's answers.
#[derive(Debug, Clone, Copy)]
pub struct Frame {
    /// The decision.
    pub entry: &'static Entry,
    /// The tooth: it names the sides.
    pub tooth: Tooth,
    /// What lets its terms explain themselves: it comes with the judge.
    pub explain: Option<Explain>,
}

/// A decision's frame: its name, its question, and that it is undecided while it is.
pub fn asked(frame: &Frame, decided: bool, answers: Html) -> Html {
    let Frame { entry, tooth, explain } = frame;
    let ask = tooth.named(entry.ask);
    let ask = explain.map_or_else(|| text(ask.to_string()), |explain| explain(&ask));
    let mark = if decided { Html::default() } else { line("span", "undecided-mark", "undecided") };
    let name = said("span", "decision-name", tooth.named(entry.label).into_owned());
    let class = if decided { "decision" } else { "decision undecided" };
    let parts = vec![
        el("legend", "", vec![name, mark]),
        el("p", "ask with-terms", vec![ask]),
        el("div", "options", vec![answers]),
    ];
    html! { <fieldset key={entry.key} {class} id={format!("decision-{}", entry.key)}>{ for parts }</fieldset> }
}
