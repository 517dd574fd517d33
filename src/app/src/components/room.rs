//! The room that the case leaves for an implant: swept once the debrief stands on the page.

use super::figure::Drawing;
use crate::effects;
use crate::store::Bench;
use engine::figures::{self, Show};
use engine::rules::Known;
use engine::search::{Grid, Placement, Room, Sweep};
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct RoomProps {
    /// The case.
    pub bench: Rc<Bench>,
}

/// The sweep, while it goes on.
#[derive(Clone, Default)]
enum Swept {
    #[default]
    Sweeping,
    Done(Option<Rc<Room>>),
}

/// How many sizes, how many millimetres, and where in the section. Nothing where no implant is placed
/// today.
#[component]
pub fn RoomView(props: &RoomProps) -> Html {
    let swept = use_state(Swept::default);
    {
        let (swept, bench) = (swept.clone(), props.bench.clone());
        use_effect_with(props.bench.session.events().len(), move |_| {
            swept.set(Swept::Sweeping);
            wasm_bindgen_futures::spawn_local(async move {
                effects::after_painting().await;
                swept.set(Swept::Done(sweep(&bench).await.map(Rc::new)));
            });
        });
    }
    let body = match &*swept {
        Swept::Sweeping => html! { <p role="status">{ "Trying every stock size." }</p> },
        Swept::Done(None) => return Html::default(),
        Swept::Done(Some(room)) => told(&props.bench, room),
    };
    html! {
        <section class="space" aria-labelledby="space-title">
            <h3 id="space-title">{ "Room for an implant" }</h3>
            { body }
        </section>
    }
}

/// Sweeps part by part, so that the page answers in between.
async fn sweep(bench: &Bench) -> Option<Room> {
    let session = &bench.session;
    let own = Placement::in_draft(session.draft())?;
    let case = session.opened();
    let mut sweep = Sweep::of(case, session.plan())?;
    let grid = Grid::of(&case.site);
    let region = {
        let (mut walk, mut breath) = (sweep.walk(&grid), effects::Breath::now());
        while walk.go_on() {
            breath.take().await;
        }
        walk.region()
    };
    Some(sweep.room(own, region))
}

fn told(bench: &Bench, room: &Room) -> Html {
    let (session, case) = (&bench.session, bench.session.case());
    let known = Known::of(case, session.plan());
    let show = Show {
        case,
        plan: session.plan(),
        draft: session.draft(),
        known: &known,
        reveal: true,
        lit: None,
        px: 300.0,
    };
    html! {
        <>
            <p role="status">{ room.words(case.site.tooth) }</p>
            <Drawing figure={figures::room_section(&show, room)} />
        </>
    }
}
