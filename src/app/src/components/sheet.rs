//! The sheet of decisions: the step that is due, what it is for, and its choices.

use super::choice::{Explain, Frame};
use super::decision::decision;
use super::known::report;
use super::outline::OutlineField;
use super::plain::{alert, disabled, el, landing, line, press, said, text, with};
use super::words::{undecided, words_of_step};
use crate::store::{Action, Said};
use crate::terms::Term;
use engine::plan::{Decision, Entry};
use engine::session::{Event, Report, View};
use yew::prelude::*;

/// What the sheet needs.
#[derive(Debug)]
pub struct Sheet<'a> {
    /// What there is to show.
    pub view: &'a View,
    /// Terms of the step that is due.
    pub terms: &'static [Term],
    /// What examinations and acts have reported.
    pub reports: &'a [Report],
    /// What is said of the step before.
    pub last: Html,
    /// Why the last thing was refused.
    pub refusal: Option<String>,
    /// What is said beside the step in a guided case.
    pub note: Option<&'static str>,
    /// Where the learner says how sure they are.
    pub sure: Html,
    /// What is said of the last thing that was done to an outline.
    pub said: Option<&'a Said>,
    /// What lets terms explain themselves.
    pub explain: Option<Explain>,
    /// What asks for an outline: it comes with the judge, before any is asked for.
    pub outline: Option<OutlineField>,
    /// Told what the learner does and tries out.
    pub act: &'a Callback<Action>,
}

impl Sheet<'_> {
    /// What stands about a decision.
    pub fn frame(&self, entry: &'static Entry) -> Frame {
        Frame { entry, tooth: self.view.tooth, explain: self.explain }
    }

    /// Told what is wrong with an answer to a decision.
    pub fn wrong(&self, about: Decision) -> Callback<String> {
        self.act.reform(move |words| Action::Say(Said { about, wrong: true, words }))
    }

    /// What is wrong with the last answer to a decision. What a figure says aloud has no role here.
    pub fn said_of(&self, about: Decision, role: Option<&'static str>) -> Html {
        let said = self.said.filter(|said| said.wrong && said.about == about);
        let attributes = [("class", "wrong"), ("role", role.unwrap_or_default())];
        said.map(|said| with("p", &attributes, vec![text(said.words.clone())])).unwrap_or_default()
    }
}

/// The sheet.
pub fn sheet(props: &Sheet<'_>) -> Html {
    let Some(step) = props.view.due else {
        return Html::default();
    };
    let decisions =
        props.view.decisions.iter().filter(|view| view.entry.step == step && !view.settled);
    // What was found stands where it has to be weighed: in its own step, once the acts are done.
    let found = props
        .reports
        .iter()
        .filter(|report| report.weighed_in == step && (report.step != step || props.view.weighing));
    let act = if props.view.weighing { "Conclude" } else { "Carry out" };
    let carry_out = {
        let act = props.act.clone();
        Callback::from(move |_: MouseEvent| act.emit(Action::Do(Event::CarryOut(step))))
    };
    let attributes = [("class", "main"), disabled(!props.view.missing.is_empty())];
    let press = press(&attributes, format!("{act}: {}", step.label()), carry_out);
    let note = props.note.map(|note| said("p", "guide", props.view.tooth.named(note).into_owned()));
    // What is not there has its place all the same: the framework matches a list from its end.
    let mut parts = vec![
        props.last.clone(),
        landing("sheet-title", step.label()),
        line("p", "aim", step.aim()),
        note.unwrap_or_default(),
        words_of_step(props.terms),
    ];
    parts.extend(found.map(report));
    // A list of their own: what comes and goes by its key leaves the focus where it is.
    parts.push(el("div", "decisions", decisions.map(|view| decision(view, props)).collect()));
    parts.push(props.sure.clone());
    parts.push(el("div", "carry-out", closing(props, press)));
    let attributes = [("class", "sheet"), ("aria-labelledby", "sheet-title")];
    with("section", &attributes, parts)
}

/// The button, and what keeps it from being pressed or came of pressing it.
fn closing(props: &Sheet<'_>, press: Html) -> Vec<Html> {
    let missing = &props.view.missing;
    let undecided = undecided(missing, props.view.tooth);
    let undecided =
        if missing.is_empty() { Html::default() } else { said("p", "missing", undecided) };
    let refusal = props.refusal.as_ref().map(|refusal| alert("wrong", refusal.clone()));
    vec![undecided, refusal.unwrap_or_default(), press]
}
