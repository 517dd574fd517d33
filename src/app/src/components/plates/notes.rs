//! What the learner writes down of the findings: a line each, as much of it as they like.

use super::dial::field;
use crate::components::plain::{self, el, heading, items, labelled, press, said, text};
use crate::store::{Action, Bench};
use engine::anatomy::Tooth;
use engine::chart::{Answers, Finding, Noted};
use engine::session::Event as Done;
use std::rc::Rc;
use yew::prelude::*;

/// What is asked for.
const ASKED: &str = "Write down what you found, as much of it as you like. No mark hangs on it: the debrief sets it beside what is there, and beside what your examinations could show.";

/// The form while it can be filled in, and what was written down afterwards; nothing where nothing was.
pub fn notes(bench: &Rc<Bench>, act: &Callback<Action>) -> Html {
    let session = &bench.session;
    let tooth = session.case().site.tooth;
    let noted =
        |finding| session.notes().iter().find(|(one, _)| *one == finding).map(|(_, noted)| *noted);
    if session.may_note() {
        let line = |finding: Finding| line(finding, noted(finding), tooth, act);
        let applying = Finding::ALL.into_iter();
        let applying = applying.filter(|finding| finding.applies(&session.opened().site));
        let mut parts = vec![plain::line("p", "ask", ASKED)];
        parts.extend(applying.map(line));
        let heading = heading("h3", "notes-title", "What I read".to_owned());
        return labelled("notes", "notes-title", heading, parts);
    }
    if session.notes().is_empty() {
        return Html::default();
    }
    let written = session.notes().iter().map(|(finding, noted)| {
        format!("{}: {}", tooth.named(finding.words()), finding.noted_words(*noted))
    });
    let parts = vec![plain::line("h3", "", "What I read"), items("", written.collect())];
    el("section", "notes", parts)
}

fn line(finding: Finding, noted: Option<Noted>, tooth: Tooth, act: &Callback<Action>) -> Html {
    let name = tooth.named(finding.words()).into_owned();
    let note = act.reform(move |noted| Action::Do(Done::Note(finding, noted)));
    let answer = match finding.answers() {
        Answers::OneOf(list) => {
            let chosen = {
                let note = note.clone();
                Callback::from(move |event: Event| {
                    let key = super::chosen(&event);
                    let place = list.iter().position(|(one, _)| *one == key);
                    note.emit(place.and_then(|place| Noted::try_from(place).ok()));
                })
            };
            let option = |(place, (key, words)): (usize, &(&'static str, &'static str))| {
                let selected = noted.is_some_and(|noted| usize::from(noted) == place);
                html! { <option value={*key} {selected}>{ *words }</option> }
            };
            html! {
                <select aria-label={name.clone()} onchange={chosen}>
                    <option value="" selected={noted.is_none()}>{ "not written down" }</option>
                    { for list.iter().enumerate().map(option) }
                </select>
            }
        }
        Answers::UpTo(most) => {
            let range = [0.0, f64::from(most) / 10.0, 0.1];
            field(
                format!("{name}, mm"),
                range,
                noted.map(|noted| f64::from(noted) / 10.0),
                tenths(&note),
            )
        }
    };
    let unit = matches!(finding.answers(), Answers::UpTo(_)).then_some("mm");
    let away = note.reform(|_: MouseEvent| None);
    let mut row = vec![answer];
    if let Some(unit) = unit {
        row.push(text(unit.to_owned()));
        if noted.is_some() {
            let label = format!("{name}: take it back");
            let attributes = [("class", "quiet"), ("aria-label", label.as_str())];
            row.push(press(&attributes, "take back".to_owned(), away));
        }
    }
    let parts = vec![said("span", "", name), el("span", "row", row)];
    html! { <div class="note" key={finding.key()}>{ for parts }</div> }
}

fn tenths(note: &Callback<Option<Noted>>) -> Callback<f64> {
    note.reform(|mm: f64| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within 25 mm")]
        let tenths = (mm * 10.0).round() as Noted;
        Some(tenths)
    })
}
