//! Two cases that differ in one thing: seen side by side, asked about, then told.

mod answers;
mod decide;
mod differ;
mod sides;
mod told;

use crate::components::caution::caution;
use crate::components::decided::Decided;
use crate::effects;
use crate::prose::Prose;
use decide::Decide;
use differ::Differ;
use engine::chart::Address;
use engine::rules::Local;
use engine::search::{self, Pair};
use sides::sides;
use std::rc::Rc;
use told::told;
use yew::prelude::*;

/// What the page needs.
#[derive(Properties, PartialEq)]
pub struct PairProps {
    /// The address of the second case, or of a case that one is to be found for.
    pub address: Address,
    /// How the set has them judged that sent here.
    pub local: Local,
    /// Its name.
    pub set: Option<String>,
}

/// A pair; the same only as itself.
#[derive(Clone)]
pub struct Shown(Rc<Pair>);

impl PartialEq for Shown {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// How far the learner has come.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Stage {
    Differ,
    Decide,
    Told,
}

/// The page of a pair.
#[component]
pub fn PairPage(props: &PairProps) -> Html {
    let found = use_state(|| None::<Result<Shown, String>>);
    let stage = use_state(|| Stage::Differ);
    {
        let (found, stage) = (found.clone(), stage.clone());
        use_effect_with((props.address, props.local.clone()), move |(address, local)| {
            let (address, local) = (*address, local.clone());
            found.set(None);
            stage.set(Stage::Differ);
            wasm_bindgen_futures::spawn_local(async move {
                effects::after_painting().await;
                let pair = search::pair(address, &local).map(|pair| Shown(Rc::new(pair)));
                found.set(Some(pair.map_err(|why| why.to_string())));
            });
        });
    }
    let body = match &*found {
        None => html! { <p role="status">{ "The two cases are on their way." }</p> },
        Some(Err(why)) => html! { <p role="alert">{ why }</p> },
        Some(Ok(shown)) => html! { <Compared shown={shown.clone()} stage={stage.clone()} /> },
    };
    html! {
        <article class="page pair-page">
            <h1>{ "Two cases, one difference" }</h1>
            if !props.local.protocol.is_empty() { <Decided local={props.local.clone()} /> }
            { body }
            <p><a href="#/">{ "To the sets" }</a></p>
        </article>
    }
}

#[derive(Properties, PartialEq)]
struct ComparedProps {
    shown: Shown,
    stage: UseStateHandle<Stage>,
}

#[component]
fn Compared(props: &ComparedProps) -> Html {
    let ComparedProps { shown, stage } = props;
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    // The button that was pressed goes: keyboard and screen reader go on at what comes instead.
    let to = |next: Stage, title: &'static str| {
        let stage = stage.clone();
        Callback::from(move |()| {
            stage.set((*stage).max(next));
            effects::focus_soon(title.to_owned());
        })
    };
    html! {
        <>
            <p class="lead">{ "The second is the first but for one thing, and what is right in the first is not right in the second. Look at both before you answer." }</p>
            { sides(&shown.0) }
            <Differ shown={shown.clone()} done={to(Stage::Decide, "decide-title")} />
            if **stage >= Stage::Decide { <Decide shown={shown.clone()} done={to(Stage::Told, "told-title")} /> }
            if **stage >= Stage::Told {
                { told(&shown.0, &prose) }
                { caution() }
            }
        </>
    }
}
