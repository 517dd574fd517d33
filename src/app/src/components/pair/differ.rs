//! The first question of a pair: what is alike, and what differs.

use super::Shown;
use super::answers::{closing, remark, row};
use engine::chart::Change;
use engine::search::Against;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct DifferProps {
    /// The pair.
    pub shown: Shown,
    /// Told once it is answered.
    pub done: Callback<()>,
}

/// The question.
#[component]
pub fn Differ(props: &DifferProps) -> Html {
    let rows = use_memo(props.shown.clone(), |shown| shown.0.rows());
    let chosen = use_state(|| vec![None::<usize>; rows.len()]);
    let closed = use_state(|| false);
    let tooth = props.shown.0.base.site.tooth;
    let answers = Against::ALL.map(Against::words);
    let one = |(place, (first, second, against)): (usize, &(Change, Change, Against))| {
        let choose = {
            let chosen = chosen.clone();
            Callback::from(move |answer| {
                let mut all = (*chosen).clone();
                all[place] = Some(answer);
                chosen.set(all);
            })
        };
        let label = tooth.named(first.aspect.scaled().words).into_owned();
        let right = chosen[place].map(|answer| Against::ALL[answer] == *against);
        let so = match against {
            Against::Alike => format!("{} in both.", first.words()),
            _ => format!("{} in the first, {} in the second.", first.words(), second.words()),
        };
        html! {
            <>
                { row(&format!("differ-{place}"), label, &answers, chosen[place], *closed, &choose) }
                if *closed { { remark(right == Some(true), &so) } }
            </>
        }
    };
    let ready = chosen.iter().all(Option::is_some);
    let close = {
        let (closed, done) = (closed.clone(), props.done.clone());
        Callback::from(move |_: MouseEvent| {
            closed.set(true);
            done.emit(());
        })
    };
    html! {
        <section aria-labelledby="differ-title">
            <h2 id="differ-title">{ "What is alike, and what differs?" }</h2>
            { for rows.iter().enumerate().map(one) }
            { closing("Compare", ready, *closed, close) }
        </section>
    }
}
