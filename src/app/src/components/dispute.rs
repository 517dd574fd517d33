//! What a learner holds against a verdict: kept with the attempt, no verdict is changed by it.

use super::plain::{button, el, folded, live, text, with};
use crate::store::{Action, Bench, Room};
use engine::session::Event;
use engine::session::LONGEST_REASON;
use wasm_bindgen::JsCast;
use web_sys::HtmlTextAreaElement;
use yew::prelude::*;

/// What has been written so far, and whom to tell; there is none where no attempt is.
#[derive(Clone, PartialEq)]
pub struct Disputing {
    /// By rule.
    pub kept: Vec<(String, String)>,
    /// Told the rule and the reason.
    pub keep: Callback<(String, String)>,
}

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct DisputeProps {
    /// Id of the rule.
    pub rule: &'static str,
}

/// The place where a reason is written.
#[component]
pub fn Dispute(props: &DisputeProps) -> Html {
    let field = use_node_ref();
    let Some(disputing) = use_context::<Disputing>() else { return Html::default() };
    let rule = props.rule;
    let kept = disputing.kept.iter().find(|(other, _)| other == rule);
    let kept = kept.map(|(_, reason)| reason.clone());
    let summary = if kept.is_some() { "Your objection" } else { "I see it otherwise" };
    let id = format!("dispute-{rule}");
    let keep = {
        let (field, keep) = (field.clone(), disputing.keep.clone());
        Callback::from(move |_: MouseEvent| {
            let written = field.get().and_then(|node| node.dyn_into::<HtmlTextAreaElement>().ok());
            if let Some(written) = written {
                keep.emit((rule.to_owned(), written.value()));
            }
        })
    };
    let says = if kept.is_some() { "Kept. An empty reason takes it back." } else { "" };
    let reason =
        "Your reason. It stays with this attempt, for whoever reads it; the verdict stands.";
    let label = with("label", &[("for", &id)], vec![text(reason.to_owned())]);
    let field = html! { <textarea {id} ref={field} rows="3" maxlength={LONGEST_REASON.to_string()} value={kept.unwrap_or_default()} /> };
    let says = live(says.to_owned());
    let row = el("p", "row", vec![button("Keep this reason", keep), says]);
    folded("dispute", summary.to_owned(), vec![label, field, row])
}

/// Verdicts beside which a reason can be written: it goes to the attempt on the bench.
pub fn disputable(bench: &Bench, room: &UseReducerHandle<Room>, verdicts: Html) -> Html {
    let keep = {
        let room = room.clone();
        Callback::from(move |(rule, reason)| {
            room.dispatch(Action::Do(Event::Dispute(rule, reason)));
        })
    };
    let context = Disputing { kept: bench.session.disputes().to_vec(), keep };
    html! { <ContextProvider<Disputing> {context}>{ verdicts }</ContextProvider<Disputing>> }
}
