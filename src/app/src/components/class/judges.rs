//! A pass mark by what judges expect of somebody who can just be let pass.

use super::judged::{Hard, result, save, sheet};
use super::typed::{Typed, at};
use crate::components::changed::use_changed;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{button, el, line, said, unfolding};
use crate::effects::Breath;
use learning::class::{OfCase, Report};
use learning::desk::Tested;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// More cases and judges than this are for the tool.
const MOST: usize = 30;

/// What it needs.
#[derive(Properties)]
pub struct JudgesProps {
    /// The report on the class.
    pub report: Rc<Report>,
}

impl PartialEq for JudgesProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.report, &other.report)
    }
}

/// The part of the report.
#[component]
pub fn Judges(props: &JudgesProps) -> Html {
    let (cells, judges) = (use_held(Typed::new), use_held(|| 2_u8));
    let (open, hard) = (use_held(|| false), use_held(Hard::new));
    let cases = &props.report.cases;
    let names: Vec<String> = cases.iter().map(|one| one.case.name.clone()).collect();
    {
        // More files may bring more cases while it is unfolded.
        let hard = hard.clone();
        use_changed((*open, names.clone()), move |(open, names)| {
            if *open && names.len() <= MOST {
                spawn_local(look(names.clone(), hard));
            }
        });
    }
    let unfold = {
        let open = open.clone();
        Callback::from(move |is| open.set(is))
    };
    let parts = match (*open, names.len() > MOST) {
        (false, _) => Vec::new(),
        (true, true) => vec![said(
            "p",
            "",
            format!(
                "There are more than {MOST} cases here: wallwise standard judges takes any number, from a table."
            ),
        )],
        (true, false) => judging(cases, &names, &hard, &cells, &judges),
    };
    unfolding("", "By what judges expect (Angoff)".to_owned(), parts, unfold)
}

/// The fields, and what follows from them.
fn judging(
    cases: &[OfCase],
    names: &[String],
    hard: &Hard,
    cells: &Held<Typed>,
    judges: &Held<u8>,
) -> Vec<Html> {
    let of_judge = |judge: u8| names.iter().map(|case| at(cells, case, judge).to_owned()).collect();
    let typed: Vec<Vec<String>> = (1..=**judges).map(of_judge).collect();
    let another = {
        let judges = judges.clone();
        Callback::from(move |_: MouseEvent| judges.set(judges.saturating_add(1)))
    };
    let mut acts = vec![save(names.to_vec(), typed.clone())];
    if usize::from(**judges) < MOST {
        acts.insert(0, button("Another judge", another));
    }
    vec![
        line(
            "p",
            "",
            "For each case a judge types the chance, 0 to 1, that somebody who can just be let pass would pass it. How hard the case is stands beside it as this room computes it, and who of the class passed.",
        ),
        sheet(cases, hard, cells, **judges),
        el("div", "choosing", vec![el("p", "row", acts)]),
        result(names, &typed),
    ]
}

/// Works out how hard each case is, and tells each as it comes.
async fn look(names: Vec<String>, hard: Held<Hard>) {
    let mut breath = Breath::now();
    for name in names {
        if hard.iter().any(|one| one.0 == name) {
            continue;
        }
        breath.take_now().await;
        let case = name.parse().ok().and_then(|address| Tested::at(address).ok());
        let words = case.map_or_else(|| "not known".to_owned(), |case| case.hard_words());
        let mut all = (*hard).clone();
        all.push((name, words));
        hard.set(all);
    }
}
