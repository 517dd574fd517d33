//! The portfolio: attempts that the learner chooses, to be printed or handed on.

use crate::components::caution::caution;
use crate::components::portfolio::{Choose, Record, With, is_in, tick};
use crate::effects;
use crate::shelf::Shelf;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct PortfolioProps {
    /// The attempts.
    pub shelf: Shelf,
    /// Told the ids of the attempts that are to be saved.
    pub on_save: Callback<Vec<String>>,
}

/// The portfolio.
#[component]
pub fn PortfolioPage(props: &PortfolioProps) -> Html {
    let out = use_state(|| Rc::new(Vec::<bool>::new()));
    let with = use_state(|| With { notes: false, objections: false });
    let name = use_state(String::new);
    let shelf = &props.shelf;
    if shelf.pasts.is_empty() {
        return empty();
    }
    let chosen: Vec<usize> = (0..shelf.pasts.len()).filter(|place| is_in(&out, *place)).collect();
    let on_change = {
        let out = out.clone();
        Callback::from(move |now| out.set(Rc::new(now)))
    };
    let save = {
        let ids: Vec<String> =
            chosen.iter().map(|place| shelf.pasts[*place].head.id.clone()).collect();
        props.on_save.reform(move |_: MouseEvent| ids.clone())
    };
    let print = Callback::from(|_: MouseEvent| effects::print());
    let none = chosen.is_empty();
    let records = chosen.iter().map(|place| {
        let id = &shelf.pasts[*place].head.id;
        html! { <tr key={id.as_str()}><td><Record shelf={shelf.clone()} place={*place} with={*with} /></td></tr> }
    });
    html! {
        <article class="page portfolio">
            <h1>{ "Portfolio" }</h1>
            <div class="choosing">
                <p class="lead">{ "A record of attempts, to print or to hand on. What is in it is yours to choose." }</p>
                <h2>{ "What is in it" }</h2>
                <Choose shelf={shelf.clone()} out={(*out).clone()} {on_change} />
                { beside(&with, &name) }
                <p class="row">
                    <button type="button" onclick={print} disabled={none}>{ "Print" }</button>
                    <button type="button" onclick={save} disabled={none}>{ "Save these attempts" }</button>
                    <span role="status">{ format!("{} of {} chosen.", chosen.len(), shelf.pasts.len()) }</span>
                </p>
                <p class="from">{ "The file holds choices, never marks: who opens it sees the same verdicts on the same cases." }</p>
            </div>
            if !name.is_empty() { <p class="whose">{ &*name }</p> }
            <p class="from">{ format!("{} attempts at synthetic cases, as they stood on {}.", chosen.len(), shelf.clock.date(shelf.now).words()) }</p>
            // The head of a table is printed anew on each page: so is the caution.
            <table class="records" role="presentation">
                <thead><tr><td>{ caution() }</td></tr></thead>
                <tbody>{ for records }</tbody>
            </table>
        </article>
    }
}

/// What is printed beside the records: notes, objections, a name.
fn beside(with: &UseStateHandle<With>, name: &UseStateHandle<String>) -> Html {
    let set = |now: With| {
        let with = with.clone();
        Callback::from(move |()| with.set(now))
    };
    let notes = set(With { notes: !with.notes, ..**with });
    let objections = set(With { objections: !with.objections, ..**with });
    let oninput = {
        let name = name.clone();
        Callback::from(move |event: InputEvent| {
            name.set(event.target_unchecked_into::<HtmlInputElement>().value());
        })
    };
    let says = |words: &'static str| html! { <span>{ words }</span> };
    html! {
        <>
            <h2>{ "Printed with it" }</h2>
            { tick(says("Your own notes"), with.notes, notes) }
            { tick(says("What you held against verdicts"), with.objections, objections) }
            <p><label for="whose">{ "A name, if you like" }</label></p>
            <p><input id="whose" type="text" maxlength="120" autocomplete="off" aria-describedby="whose-says" {oninput} value={(**name).clone()} /></p>
            <p id="whose-says" class="from">{ "It is printed and never kept: it is gone when you leave this page, and is in no file. Do not enter a patient." }</p>
        </>
    }
}

fn empty() -> Html {
    html! {
        <article class="page portfolio">
            <h1>{ "Portfolio" }</h1>
            <p class="lead">{ "No attempt is kept yet." }</p>
            <p>{ "Each case that you work on will stand here with what was chosen well and what was not, to be printed or handed on." }</p>
            <p><a href="#/">{ "To the first case" }</a></p>
        </article>
    }
}
