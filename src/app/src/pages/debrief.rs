//! The debrief: the word for the whole plan, causes first, then every verdict in the order of care.

use crate::components::breaks::BreaksView;
use crate::components::causes::{broken, causes};
use crate::components::caution::caution;
use crate::components::debates::debate_cards;
use crate::components::healing::HealingView;
use crate::components::nearest::{Looked, NearestView};
use crate::components::onward::Onward;
use crate::components::own::bar::SittingBar;
use crate::components::own::note::OwnNote;
use crate::components::readings::readings;
use crate::components::room::RoomView;
use crate::components::verdict::VerdictView;
use crate::components::whole::whole;
use crate::effects;
use crate::keep::Kept;
use crate::keep::file::of_one;
use crate::prose::Prose;
use crate::route::Route;
use crate::store::{Action, Bench, Room};
use engine::debrief::{Debrief, RULE_SET, Verdict};
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
    let sound = use_memo((), |()| sound_of(bench.session.opened()).map(Rc::new));
    let debrief = use_memo(bench.session.acts(), |_| {
        let case = bench.session.opened();
        let reference = sound.as_deref().and_then(|sound| Plan::from_draft(sound, case).ok());
        bench.session.debrief(reference.as_ref())
    });
    let looked = use_state(Looked::default);
    let sought = match &props.room.route {
        Route::Attempt(_, rule) => rule.clone(),
        _ => None,
    };
    use_effect_with(sought, |sought| {
        if let Some(rule) = sought {
            let id = format!("verdict-{rule}");
            // After the page has moved the focus to the debrief as a whole.
            wasm_bindgen_futures::spawn_local(async move {
                effects::after_painting().await;
                effects::unfold(&id);
            });
        }
    });
    let Some(debrief) = debrief.as_ref() else {
        return Html::default();
    };
    let tooth = bench.session.case().site.tooth;
    let light = {
        let room = props.room.clone();
        Callback::from(move |lit| room.dispatch(Action::Light(lit)))
    };
    let again = {
        let room = props.room.clone();
        Callback::from(move |_: MouseEvent| room.dispatch(Action::Again))
    };
    let verdict = |verdict: &Verdict| {
        let lit = props.bench.lit == Some(verdict.rule);
        html! { <VerdictView key={verdict.rule.id} verdict={verdict.clone()} {tooth} {lit} on_light={light.clone()} /> }
    };
    let save = saving(props.bench.clone(), props.room.kept.clone());
    let print = Callback::from(|_: MouseEvent| effects::print());
    html! {
        <section class="debrief" aria-labelledby="sheet-title">
            <h2 id="sheet-title" tabindex="-1">{ "Debrief" }</h2>
            { whole(debrief, tooth, &prose) }
            { caution() }
            <Onward bench={bench.clone()} />
            <SittingBar bench={bench.clone()} room={props.room.clone()} />
            { causes(debrief, tooth, &verdict) }
            <NearestView bench={bench.clone()} looked={looked.clone()} />
            { debate_cards(&debrief.verdicts, tooth, &prose) }
            <BreaksView bench={bench.clone()} sound={(*sound).clone()} broken={broken(debrief)} />
            <RoomView bench={bench.clone()} sound={(*sound).clone()} />
            { readings(&bench.session.compared(), tooth) }
            <HealingView bench={bench.clone()} looked={(*looked).clone()} />
            if let Some(head) = &bench.head { <OwnNote key={head.id.clone()} id={head.id.clone()} /> }
            <h3>{ "Every verdict, in the order of care" }</h3>
            { for Step::ALL.iter().map(|step| of_step(*step, debrief, &verdict)) }
            <p class="from">{ format!("Rule set {RULE_SET}.") }</p>
            <p class="row">
                <button type="button" onclick={again}>{ "The same case again" }</button>
                <button type="button" class="quiet" onclick={save}>{ "Save this attempt" }</button>
                <button type="button" class="quiet" onclick={print}>{ "Print" }</button>
                <a href="#/">{ "Another case" }</a>
            </p>
        </section>
    }
}

/// Saves the attempt as a file: choices and what was held against verdicts, never marks.
fn saving(bench: Rc<Bench>, kept: Kept) -> Callback<MouseEvent> {
    Callback::from(move |_| {
        let (bench, kept) = (bench.clone(), kept.clone());
        wasm_bindgen_futures::spawn_local(async move {
            effects::save("attempt.json", &of_one(&bench, &kept).await);
        });
    })
}

fn of_step(step: Step, debrief: &Debrief, verdict: &dyn Fn(&Verdict) -> Html) -> Html {
    let verdicts: Vec<&Verdict> =
        debrief.verdicts.iter().filter(|one| one.rule.step == step && !one.is_fault()).collect();
    if verdicts.is_empty() {
        return Html::default();
    }
    html! {
        <details class="of-step">
            <summary>{ format!("{}: {} kept or debated", step.label(), verdicts.len()) }</summary>
            { for verdicts.into_iter().map(verdict) }
        </details>
    }
}
