//! What stands out: the one remark, and the faults that came back.

use crate::prose::Prose;
use crate::shelf::{Shelf, kept};
use learning::review::{Recurring, Review};
use yew::prelude::*;

/// How many faults are told at once, and how many attempts of each.
const FAULTS: usize = 5;
const ATTEMPTS: usize = 4;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct StandsOutProps {
    /// The attempts.
    pub shelf: Shelf,
    /// What they say.
    pub review: std::rc::Rc<Review>,
}

/// What stands out.
#[component]
pub fn StandsOut(props: &StandsOutProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let review = &*props.review;
    let fault = |one: &Recurring| fault(one, &props.shelf, &prose);
    let (first, rest) = review.recurring.split_at(FAULTS.min(review.recurring.len()));
    html! {
        <section aria-labelledby="stands-out">
            <h2 id="stands-out">{ "What stands out" }</h2>
            { remark(review) }
            <h3>{ "Faults that came back" }</h3>
            if first.is_empty() { <p>{ "No fault has been charged twice." }</p> }
            <ol class="told">{ for first.iter().map(fault) }</ol>
            if !rest.is_empty() {
                <details>
                    <summary>{ format!("{} more", rest.len()) }</summary>
                    <ol class="told">{ for rest.iter().map(fault) }</ol>
                </details>
            }
        </section>
    }
}

fn remark(review: &Review) -> Html {
    match (&review.remark, review.compared) {
        (Some(remark), _) => html! {
            <>
                <p class="lead">{ remark.says() }</p>
                <p class="from">{ format!("{} Which comparisons are made, and when one is worth telling, is ours.", remark.says_of_chance()) }</p>
            </>
        },
        (None, 0) => html! {
            <p>{ "Too little to compare yet. From some ten attempts on, this place says where your faults gather, if they do: at one jaw, at front or back teeth, in steps that you hurry, where you are sure." }</p>
        },
        (None, count) => html! {
            <p>{ format!("Nothing that chance would not do as well: {count} comparisons had enough to go on, of jaws, front and back teeth, pace and how sure you were.") }</p>
        },
    }
}

fn fault(one: &Recurring, shelf: &Shelf, prose: &Prose) -> Html {
    let link = |place: &usize| {
        let past = &shelf.pasts[*place];
        let href = kept(&past.head.id, Some(one.rule.id));
        html! { <li><a {href}>{ format!("{}: {}", shelf.day(past), shelf.title(past)) }</a></li> }
    };
    let (first, rest) = one.at.split_at(ATTEMPTS.min(one.at.len()));
    html! {
        <li>
            <p><strong>{ prose.statement(one.rule) }</strong></p>
            <p class="from">{ format!("{}: charged in {} of the {} attempts that asked for it", one.rule.skill.words(), one.at.len(), one.asked) }</p>
            <ul class="moments">{ for first.iter().map(link) }</ul>
            if !rest.is_empty() {
                <details>
                    <summary>{ format!("{} earlier", rest.len()) }</summary>
                    <ul class="moments">{ for rest.iter().map(link) }</ul>
                </details>
            }
        </li>
    }
}
