//! Finding cases: what they must have, and a sample of what that yields.

use super::Desk;
use super::asked::{Asked, fields};
use crate::components::fields::words;
use crate::components::hold::use_held;
use crate::components::plain::{button, el, press, said, section, status, table};
use crate::effects::{self, Breath};
use engine::cases;
use engine::chart::{Address, BadAddress};
use learning::desk::Tested;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// How many cases are drawn at a time.
const SAMPLE: u64 = 5;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct FindProps {
    /// The desk.
    pub desk: Desk,
}

/// The part of the desk.
#[component]
pub fn Find(props: &FindProps) -> Html {
    let asked = use_held(|| Asked::ANY);
    let desk = &props.desk;
    let sample = {
        let (desk, asked) = (desk.clone(), asked.clone());
        Callback::from(move |_: MouseEvent| spawn_local(draw(desk.clone(), (*asked).clone())))
    };
    let typed = {
        let desk = desk.clone();
        Callback::from(move |text: String| {
            let read = text.trim().parse().map_err(|why: BadAddress| why.to_string());
            let found = read.and_then(|at: Address| Tested::at(at).map_err(|why| why.to_string()));
            match found {
                Ok(one) => desk.add(&one),
                Err(why) => desk.says.set(why),
            }
        })
    };
    let mut parts = fields(&asked);
    let sample = press(&[("class", "main")], format!("Draw {SAMPLE} such cases"), sample);
    parts.push(el("p", "row", vec![sample]));
    parts.push(words("desk-address", "or add one by its address", "", typed));
    parts.push(status((*desk.says).clone()));
    if !desk.found.is_empty() {
        let rows = desk.found.iter().map(|one| drawn(desk, one)).collect();
        let heads = ["Case", "What decides it", "Difficulty", "In the set"];
        parts.push(table("drawn", &heads, el("tbody", "", rows)));
    }
    section("desk-find", "Find cases", parts)
}

/// Draws some cases, one after the other, and shows each as it comes.
async fn draw(desk: Desk, asked: Asked) {
    let constraints = asked.constraints();
    let first = effects::fresh_seed();
    let mut found = Vec::new();
    let mut breath = Breath::now();
    desk.found.set(Rc::default());
    for seed in first..first + SAMPLE {
        desk.says.set(format!("Drawing: {} of {SAMPLE}.", found.len()));
        breath.take_now().await;
        match cases::generate_as(asked.spread, seed, &constraints) {
            Ok(case) => {
                breath.take_now().await;
                found.extend(case.address.map(|address| Tested::of(address, &case)));
                desk.found.set(Rc::new(found.clone()));
            }
            // The next would fail alike where conditions contradict each other.
            Err(why) => return desk.says.set(why.to_string()),
        }
    }
    desk.says.set(format!("{SAMPLE} cases. Draw again for others."));
}

fn drawn(desk: &Desk, one: &Tested) -> Html {
    let cells = [one.title.clone(), one.about_words().to_owned(), one.hard_words()];
    let mut line: Vec<Html> = cells.into_iter().map(|words| said("td", "", words)).collect();
    line.push(if desk.set.addresses.contains(&one.address) {
        said("td", "from", "yes".to_owned())
    } else {
        let (desk, one) = (desk.clone(), one.clone());
        let add = Callback::from(move |_: MouseEvent| desk.add(&one));
        el("td", "", vec![button("Add", add)])
    });
    el("tr", "", line)
}
