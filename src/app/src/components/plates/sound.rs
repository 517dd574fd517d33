//! Bone sounding: the probe is put where the learner likes, and each reading is kept.

use super::PlateProps;
use super::dial::{Dial, dial};
use crate::components::figure::Drawing;
use crate::components::hold::use_held;
use crate::store::Action;
use engine::anatomy::{Site, Wall};
use engine::figures;
use engine::rules::Known;
use engine::session::{Event, Sounded, Spot};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event as Change};
use yew::prelude::{Callback, Html, MouseEvent, component, html};

/// One side of the tooth with what was read there, the probe, and the list of readings.
#[component]
pub fn Sounding(props: &PlateProps) -> Html {
    let session = &props.bench.session;
    let site = &session.opened().site;
    let at = use_held(|| Spot { wall: Wall::Facial, tenths: 0 });
    let all = session.soundings();
    let may = session.may_sound();
    let reach = f64::from(Spot::reach(site)) / 10.0;
    let along = Dial {
        name: "Probe, along the arch",
        unit: "mm",
        range: [-reach, reach, 0.1],
        value: at.along(),
        words: at.words(),
        on_turn: {
            let at = at.clone();
            Callback::from(move |mm: f64| at.set(Spot { tenths: tenths(mm), ..*at }))
        },
    };
    let side = |wall: Wall, name: &'static str| {
        let turned = at.clone();
        let chosen = Callback::from(move |_: Change| turned.set(Spot { wall, ..*turned }));
        html! { <label class="option"><input type="radio" name="sounded-side" checked={at.wall == wall} onchange={chosen} /><span>{ name }</span></label> }
    };
    let px = super::drawing_width();
    let figure =
        figures::sounded(site, &Known::of(session.opened(), session.shown()), &all, *at, px);
    let put = {
        let (at, site, window) = (at.clone(), site.clone(), figure.window);
        Callback::from(move |event: MouseEvent| {
            if let Some(share) = share_across(&event) {
                let x = window.least.x + share * window.width();
                at.set(figures::sounded_at(&site, at.wall, x));
            }
        })
    };
    let sound = {
        let (act, spot) = (props.act.clone(), *at);
        Callback::from(move |_: MouseEvent| act.emit(Action::Do(Event::Sound(spot))))
    };
    html! {
        <figure class="figure plate sounding">
            <figcaption>{ "Bone sounding, under anaesthesia" }</figcaption>
            // A pointer's short way; the slider and the field below do the same.
            <div class="probing" onclick={put}><Drawing {figure} /></div>
            <div class="options" role="radiogroup" aria-label="Side that is sounded">
                { side(Wall::Facial, "facial side") }{ side(Wall::Oral, if site.tooth.oral_word() == "palatal" { "palatal side" } else { "lingual side" }) }
            </div>
            if may {
                { dial(&along) }
                <p class="ask">{ "Up to 3.5 mm is normal. A deeper place is suspect: sound it again, there and on either side. 2 mm or more deeper than beside it means that bone is missing. A probe errs, mostly by stopping too early." }</p>
                <button type="button" onclick={sound}>{ "Sound here" }</button>
            }
            { list(&all, site) }
        </figure>
    }
}

/// Every reading in order, the learner's own after the first round.
fn list(all: &[Sounded], site: &Site) -> Html {
    let row = |(place, one): (usize, &Sounded)| {
        let side = match one.spot.wall {
            Wall::Facial => "facial",
            Wall::Oral => site.tooth.oral_word(),
        };
        html! {
            <tr><th scope="row">{ place + 1 }</th><td>{ format!("{side}, {}", one.spot.words()) }</td><td>{ format!("{:.1} mm", one.depth.get()) }</td><td>{ one.class().words() }</td></tr>
        }
    };
    html! {
        <table class="soundings">
            <thead><tr><th>{ "No." }</th><th>{ "Where" }</th><th>{ "Margin to bone" }</th><th>{ "Class" }</th></tr></thead>
            <tbody aria-live="polite">{ for all.iter().enumerate().map(row) }</tbody>
        </table>
    }
}

fn tenths(mm: f64) -> i8 {
    #[expect(clippy::cast_possible_truncation, reason = "a dial's range is within 12 mm")]
    let tenths = (mm * 10.0).round() as i8;
    tenths
}

/// How far across its drawing something was pressed, 0 to 1.
fn share_across(event: &MouseEvent) -> Option<f64> {
    let pressed = event.target()?.dyn_into::<Element>().ok()?;
    let seen = pressed.closest("svg").ok().flatten()?.get_bounding_client_rect();
    Some((f64::from(event.client_x()) - seen.left()) / seen.width().max(1.0))
}
