//! The room that the case leaves for an implant, and how hard the case is: worked out once the debrief
//! stands on the page.

use super::figure::still;
use super::plain::{heading, labelled, said, status, together};
use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::effects;
use crate::store::Bench;
use engine::cases;
use engine::figures::{self, Show};
use engine::plan::Draft;
use engine::rules::Known;
use engine::search::{Grid, Placement, Room, Sweep};
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct RoomProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// The case's own sound plan.
    pub sound: Option<Rc<Draft>>,
}

/// The sweep, while it goes on.
#[derive(Clone, Default)]
enum Swept {
    #[default]
    Sweeping,
    Done(Option<Rc<Room>>, Option<String>),
}

/// How many sizes, how many millimetres, and where in the section. Nothing where no implant is placed
/// today.
#[component]
pub fn RoomView(props: &RoomProps) -> Html {
    let swept = use_held(Swept::default);
    {
        let (swept, bench) = (swept.clone(), props.bench.clone());
        let sound = props.sound.clone();
        use_changed(props.bench.session.events().len(), move |_| {
            swept.set(Swept::Sweeping);
            wasm_bindgen_futures::spawn_local(async move {
                effects::after_painting().await;
                let room = sweep(&bench).await.map(Rc::new);
                effects::after_painting().await;
                swept.set(Swept::Done(room, sound.and_then(|sound| hard(&bench, &sound))));
            });
        });
    }
    let (room, hard) = match &*swept {
        Swept::Sweeping => (status("Trying every stock size.".to_owned()), None),
        Swept::Done(None, hard) => (Html::default(), hard.clone()),
        Swept::Done(Some(room), hard) => (told(&props.bench, room), hard.clone()),
    };
    let hard = hard.map(|hard| said("p", "", format!("From 0, easy, to 1, hard, this case is at {hard}. In play are the rules that one other answer to a sound plan would break; hidden is what has to be asked or looked for.")));
    let heading = heading("h3", "space-title", "Room, and how hard this case is".to_owned());
    labelled("space", "space-title", heading, vec![room, hard.unwrap_or_default()])
}

/// How hard the case is, in words.
fn hard(bench: &Bench, sound: &Draft) -> Option<String> {
    Some(cases::difficulty(bench.session.opened(), sound)?.words())
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
    let drawing = still(figures::room_section(&show, room), None);
    together(vec![status(room.words(case.site.tooth)), drawing])
}
