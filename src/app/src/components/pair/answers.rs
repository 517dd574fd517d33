//! Answers to one question of a pair, and the button that closes it.

use super::Shown;
use crate::components::hold::{Held, use_held};
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
        html! {
            <>
                { row(&name, label, answers, self.of(place), *self.closed, &choose) }
                if *self.closed { { remark(right, so) } }
            </>
        }
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
        html! {
            <p class="row"><button type="button" disabled={!ready} onclick={close}>{ words }</button></p>
        }
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
    html! {
        <fieldset class="asked">
            <legend>{ label }</legend>
            { for answers.iter().enumerate().map(answer) }
        </fieldset>
    }
}

/// Whether an answer was right, with what is so.
fn remark(right: bool, so: &str) -> Html {
    let (sign, word) = if right { ("●", "Right") } else { ("▲", "Not so") };
    html! {
        <p class={classes!("remark", right.then_some("right"))}>
            <span aria-hidden="true">{ sign }</span>{ format!(" {word}: {so}") }
        </p>
    }
}
