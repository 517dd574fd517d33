//! One decision of the sheet, by the kind of its answers.

use super::choice::{ClosedList, any_of, one_of};
use super::number::{Number, number};
use super::sheet::Sheet;
use crate::store::Action;
use engine::plan::{Kind, Value};
use engine::session::{DecisionView, Event};
use yew::prelude::*;

/// The decision.
pub fn decision(view: &DecisionView, props: &Sheet<'_>) -> Html {
    let entry = view.entry;
    let frame = props.frame(entry);
    let decision = entry.decision;
    let on_choose = props.act.reform(move |value| Action::Do(Event::Choose(decision, Some(value))));
    let value = view.value.clone();
    match entry.kind {
        Kind::One(options) => {
            one_of(&ClosedList { frame, options, value: value.as_ref(), on_choose })
        }
        Kind::Many(options) => {
            let on_turn = props.act.reform(move |bit| Action::Turn(decision, bit));
            let list = ClosedList { frame, options, value: value.as_ref(), on_choose };
            any_of(&list, &on_turn)
        }
        Kind::Number(kind) => {
            let count = match value {
                Some(Value::Number(count)) => Some(count),
                _ => None,
            };
            number(&Number { entry, kind, count, sheet: props, on_choose })
        }
        Kind::Outline => {
            let outline = match &value {
                Some(Value::Outline(outline)) => Some(outline),
                _ => None,
            };
            props.outline.map(|field| field(entry, outline, props)).unwrap_or_default()
        }
    }
}
