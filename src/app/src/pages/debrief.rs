//! The debrief: the word for the whole plan, causes first, then every verdict in the order of care.

use crate::components::causes::{broken, causes, of_step};
use crate::components::caution::caution;
use crate::components::changed::{use_changed, use_worked};
use crate::components::debates::debate_cards;
use crate::components::hold::use_held;
use crate::components::nearest::{Looked, NearestProps, NearestView};
use crate::components::onward::{Onward, OnwardProps};
use crate::components::own::bar::{BarProps, SittingBar};
use crate::components::own::note::{NoteProps, OwnNote};
use crate::components::plain::{labelled, landing, line, said};
use crate::components::sat::may_again;
use crate::components::sought::sought_for;
use crate::components::verdict::{VerdictProps, lightable};
use crate::components::view::{keyed, view};
use crate::components::ways_on::ways_on;
use crate::components::whole::whole;
use crate::effects;
use crate::prose::Prose;
use crate::route::Route;
use crate::store::{Action, Bench, Room};
use engine::debrief::{RULE_SET, Verdict};
use engine::plan::{Plan, Step};
use engine::search::sound_of;
use std::rc::Rc;
use yew::prelude::*;

/// What the debrief needs.
#[derive(Properties, PartialEq)]
pub struct DebriefProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// The whole room.
    pub room: UseReducerHandle<Room>,
}

/// The debrief.
#[component]
pub fn DebriefView(props: &DebriefProps) -> Html {
    let bench = props.bench.clone();
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    // What the case's own sound plan is belongs to the case: it is looked for once for all parts.
    let sound = use_worked((), |()| sound_of(bench.session.opened()).map(Rc::new));
    let debrief = use_worked(bench.session.acts(), |_| {
        let case = bench.session.opened();
        let reference = sound.as_deref().and_then(|sound| Plan::from_draft(sound, case).ok());
        bench.session.debrief(reference.as_ref())
    });
    let looked = use_held(Looked::default);
    use_changed(sought_in(&props.room.route), unfold);
    let Some(debrief) = debrief.as_ref() else {
        return Html::default();
    };
    let tooth = bench.session.case().site.tooth;
    let light = {
        let room = props.room.clone();
        Callback::from(move |lit| room.dispatch(Action::Light(lit)))
    };
    let again = may_again(&bench, &props.room).then(|| {
        let room = props.room.clone();
        Callback::from(move |_: MouseEvent| room.dispatch(Action::Again))
    });
    let verdict = |verdict: &Verdict| {
        let lit = props.bench.lit == Some(verdict.rule);
        let (verdict, on_light) = (verdict.clone(), Some(light.clone()));
        lightable(VerdictProps { verdict, tooth, lit, on_light })
    };
    let own = bench
        .head
        .as_ref()
        .map(|head| keyed::<OwnNote>(&head.id, NoteProps { id: head.id.clone().into() }));
    let mut parts = vec![
        whole(debrief, tooth, &prose),
        caution(),
        view::<Onward>(OnwardProps { bench: bench.clone() }),
        view::<SittingBar>(BarProps { bench: bench.clone() }),
        causes(debrief, tooth, &verdict),
        view::<NearestView>(NearestProps { bench: bench.clone(), looked: looked.clone() }),
        debate_cards(&debrief.verdicts, tooth, &prose),
    ];
    parts.extend(sought_for(&bench, &sound, &looked, broken(debrief)));
    // Its place is there before it is: the framework matches a list from its end.
    parts.push(own.unwrap_or_default());
    parts.push(line("h3", "", "Every verdict, in the order of care"));
    parts.extend(Step::ALL.iter().map(|step| of_step(*step, debrief, &verdict)));
    parts.push(said("p", "from", format!("Rule set {RULE_SET}.")));
    parts.push(ways_on(bench, props.room.kept.clone(), again));
    labelled("debrief", "sheet-title", landing("sheet-title", "Debrief"), parts)
}

/// The rule whose verdict the address asks for.
fn sought_in(route: &Route) -> Option<String> {
    match route {
        Route::Attempt(_, rule) => rule.clone(),
        _ => None,
    }
}

/// Opens its verdict.
fn unfold(rule: &Option<String>) {
    if let Some(rule) = rule {
        let id = format!("verdict-{rule}");
        // After the page has moved the focus to the debrief as a whole.
        wasm_bindgen_futures::spawn_local(async move {
            effects::after_painting().await;
            effects::unfold(&id);
        });
    }
}
