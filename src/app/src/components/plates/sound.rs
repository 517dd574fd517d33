//! Bone sounding: the probe is put where the learner likes, and each reading is kept.

use super::PlateProps;
use super::dial::{Dial, dial};
use crate::components::figure::still;
use crate::components::hold::use_held;
use crate::components::plain::{el, group, line, press, row, table, with};
use crate::store::Action;
use engine::anatomy::{Site, Wall};
use engine::figures;
use engine::rules::Known;
use engine::session::{Event, Sounded, Spot};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event as Change};
use yew::prelude::{Callback, Html, MouseEvent, component, html};

/// What depths mean.
const DEPTHS: &str = "Up to 3.5 mm is normal. A deeper place is suspect: sound it again, there and on either side. 2 mm or more deeper than beside it means that bone is missing. A probe errs, mostly by stopping too early.";

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
    let side = |wall: Wall, name: String| {
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
    let oral = format!("{} side", site.tooth.oral_word());
    let sides = vec![side(Wall::Facial, "facial side".to_owned()), side(Wall::Oral, oral)];
    let mut parts = vec![
        line("figcaption", "", "Bone sounding, under anaesthesia"),
        // A pointer's short way; the slider and the field below do the same.
        html! { <div class="probing" onclick={put}>{ still(figure, None) }</div> },
        group("options", "radiogroup", "Side that is sounded", sides),
    ];
    if may {
        let sound = press(&[], "Sound here".to_owned(), sound);
        parts.extend([dial(&along), line("p", "ask", DEPTHS), sound]);
    }
    parts.push(list(&all, site));
    el("figure", "figure plate sounding", parts)
}

/// Every reading in order, the learner's own after the first round.
fn list(all: &[Sounded], site: &Site) -> Html {
    let read = |(place, one): (usize, &Sounded)| {
        let side = match one.spot.wall {
            Wall::Facial => "facial",
            Wall::Oral => site.tooth.oral_word(),
        };
        let place = (place + 1).to_string();
        let spot = format!("{side}, {}", one.spot.words());
        let depth = format!("{:.1} mm", one.depth.get());
        row(place, vec![spot, depth, one.class().words().to_owned()])
    };
    let rows = all.iter().enumerate().map(read).collect();
    let body = with("tbody", &[("aria-live", "polite")], rows);
    table("soundings", &["No.", "Where", "Margin to bone", "Class"], body)
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
