//! Answers to one question of a pair, and the button that closes it.

use super::Shown;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{disabled, el, press, said, text, together, with};
use yew::prelude::*;

/// What a question of a pair needs.
#[derive(Properties, PartialEq)]
pub struct AskedProps {
    /// The pair.
    pub shown: Shown,
    /// Told once it is answered.
    pub done: Callback<()>,
}

/// What has been answered so far of one question's rows, and whether it is closed.
#[derive(Clone)]
pub struct Answers {
    chosen: Held<Vec<Option<usize>>>,
    closed: Held<bool>,
}

/// The answers of a question with so many rows.
#[hook]
pub fn use_answers(rows: usize) -> Answers {
    Answers { chosen: use_held(move || vec![None; rows]), closed: use_held(|| false) }
}

impl Answers {
    /// What was chosen in a row.
    pub fn of(&self, place: usize) -> Option<usize> {
        self.chosen[place]
    }

    /// A row by its name, and once the question is closed whether it is right, and what is so.
    pub fn row(
        &self,
        (name, place): (&str, usize),
        label: String,
        answers: &[&'static str],
        (right, so): (bool, &str),
    ) -> Html {
        let choose = {
            let chosen = self.chosen.clone();
            Callback::from(move |answer| {
                let mut all = (*chosen).clone();
                all[place] = Some(answer);
                chosen.set(all);
            })
        };
        let name = format!("{name}-{place}");
        let closed = *self.closed;
        let remark = if closed { remark(right, so) } else { Html::default() };
        together(vec![row(&name, label, answers, self.of(place), closed, &choose), remark])
    }

    /// The button that closes the question once all of it is answered, and tells that it is.
    pub fn closing(&self, words: &'static str, done: &Callback<()>) -> Html {
        if *self.closed {
            return Html::default();
        }
        let ready = self.chosen.iter().all(Option::is_some);
        let close = {
            let (closed, done) = (self.closed.clone(), done.clone());
            Callback::from(move |_: MouseEvent| {
                closed.set(true);
                done.emit(());
            })
        };
        el("p", "row", vec![press(&[disabled(!ready)], words.to_owned(), close)])
    }
}

/// One row of radio buttons: a name, the answers, which is chosen.
fn row(
    name: &str,
    label: String,
    answers: &[&'static str],
    chosen: Option<usize>,
    closed: bool,
    choose: &Callback<usize>,
) -> Html {
    let answer = |(place, words): (usize, &&'static str)| {
        let choose = choose.clone();
        let onchange = Callback::from(move |_: Event| choose.emit(place));
        html! {
            <label class="option">
                <input type="radio" name={name.to_owned()} checked={chosen == Some(place)} disabled={closed} {onchange} />
                { *words }
            </label>
        }
    };
    let mut parts = vec![said("legend", "", label)];
    parts.extend(answers.iter().enumerate().map(answer));
    el("fieldset", "asked", parts)
}

/// Whether an answer was right, with what is so.
fn remark(right: bool, so: &str) -> Html {
    let (sign, word) = if right { ("●", "Right") } else { ("▲", "Not so") };
    let sign = with("span", &[("aria-hidden", "true")], vec![text(sign.to_owned())]);
    let class = if right { "remark right" } else { "remark" };
    el("p", class, vec![sign, text(format!(" {word}: {so}"))])
}
