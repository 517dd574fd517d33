//! Answers to one question of a pair, and the button that closes it.

use yew::prelude::*;

/// One row of radio buttons: a name, the answers, which is chosen.
pub fn row(
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
pub fn remark(right: bool, so: &str) -> Html {
    let (sign, word) = if right { ("●", "Right") } else { ("▲", "Not so") };
    html! {
        <p class={classes!("remark", right.then_some("right"))}>
            <span aria-hidden="true">{ sign }</span>{ format!(" {word}: {so}") }
        </p>
    }
}

/// The button that closes a question once all of it is answered.
pub fn closing(
    words: &'static str,
    ready: bool,
    closed: bool,
    close: Callback<MouseEvent>,
) -> Html {
    if closed {
        return Html::default();
    }
    html! {
        <p class="row"><button type="button" disabled={!ready} onclick={close}>{ words }</button></p>
    }
}
