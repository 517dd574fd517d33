//! What the learner writes down of the findings: a line each, as much of it as they like.

use super::dial::field;
use crate::store::{Action, Bench};
use engine::anatomy::Tooth;
use engine::chart::{Answers, Finding, Noted};
use engine::session::Event as Done;
use std::rc::Rc;
use yew::prelude::*;

/// The form while it can be filled in, and what was written down afterwards; nothing where nothing was.
pub fn notes(bench: &Rc<Bench>, act: &Callback<Action>) -> Html {
    let session = &bench.session;
    let tooth = session.case().site.tooth;
    let noted =
        |finding| session.notes().iter().find(|(one, _)| *one == finding).map(|(_, noted)| *noted);
    if session.may_note() {
        let line = |finding: Finding| line(finding, noted(finding), tooth, act);
        return html! {
            <section class="notes" aria-labelledby="notes-title">
                <h3 id="notes-title">{ "What I read" }</h3>
                <p class="ask">{ "Write down what you found, as much of it as you like. No mark hangs on it: the debrief sets it beside what is there, and beside what your examinations could show." }</p>
                { for Finding::ALL.into_iter().filter(|finding| finding.applies(&session.opened().site)).map(line) }
            </section>
        };
    }
    if session.notes().is_empty() {
        return Html::default();
    }
    let written = session.notes().iter().map(|(finding, noted)| {
        html! { <li>{ format!("{}: {}", tooth.named(finding.words()), finding.noted_words(*noted)) }</li> }
    });
    html! { <section class="notes"><h3>{ "What I read" }</h3><ul>{ for written }</ul></section> }
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
    html! {
        <div class="note" key={finding.key()}>
            <span>{ name.clone() }</span>
            <span class="row">{ answer }{ unit }
                if noted.is_some() && unit.is_some() { <button type="button" class="quiet" aria-label={format!("{name}: take it back")} onclick={away}>{ "take back" }</button> }
            </span>
        </div>
    }
}

fn tenths(note: &Callback<Option<Noted>>) -> Callback<f64> {
    note.reform(|mm: f64| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within 25 mm")]
        let tenths = (mm * 10.0).round() as Noted;
        Some(tenths)
    })
}
