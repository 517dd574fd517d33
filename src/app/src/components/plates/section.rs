//! Cone-beam sections: how they lie, their window, and a caliper on them.

use super::caliper::caliper;
use super::dial::{Dial, dial};
use super::name_of;
use super::picture::Picture;
use crate::store::Bench;
use engine::anatomy::{Jaw, Site};
use engine::chart::Case;
use engine::geometry::P2;
use engine::imaging::{self, Noise, Scene, Section, Setting, Slice, window};
use engine::plan::Plan;
use engine::units::Mm;
use std::rc::Rc;
use yew::prelude::*;

/// The tips of the caliper, mm to the right and down of the picture's corner.
pub type Tips = [P2; 2];

/// The ways a section can lie, each with what it is called and how far it can be moved.
const SLICES: [(Slice, &str, [f64; 2]); 3] = [
    (Slice::AcrossArch, "across the arch", [-12.0, 12.0]),
    (Slice::AlongArch, "along the arch", [-12.0, 8.0]),
    (Slice::AcrossAxis, "across the axis", [-4.0, 24.0]),
];
/// The streams of the exposure's noise and of the scanner's own.
const EXPOSURE: u32 = 1;
const SCANNER: u32 = 1000;

/// What the sections need.
#[derive(Properties, PartialEq)]
pub struct SectionProps {
    /// The case.
    pub bench: Rc<Bench>,
}

/// One section at a time, of the case as it came.
#[component]
pub fn SectionPlate(props: &SectionProps) -> Html {
    let case = props.bench.session.case();
    let kind = use_state_eq(|| 0_usize);
    let at = use_state_eq(|| 0.0);
    let (centre, width) = (use_state_eq(|| 1000.0), use_state_eq(|| 4000.0));
    let tips = use_state_eq(|| [P2::new(11.0, 14.0), P2::new(19.0, 14.0)]);
    let scene = use_memo(name_of(&props.bench), |_| laid(case));
    let (slice, name, [least, most]) = SLICES[*kind];
    let taken = use_memo((name_of(&props.bench), *kind, *at), |_| cut(&scene, case, slice, *at));
    let grey = use_memo((taken.clone(), *centre, *width), |(taken, centre, width)| {
        taken.grey.iter().map(|grey| window(*grey, *centre, *width)).collect::<Vec<u8>>()
    });
    let size = taken.pixels.map(|count| f64::from(count) * taken.voxel);
    let moved = {
        let tips = tips.clone();
        Callback::from(move |next: Tips| tips.set(next))
    };
    let choose = |place: usize| {
        let (kind, at) = (kind.clone(), at.clone());
        Callback::from(move |_: MouseEvent| {
            kind.set(place);
            // Across the axis the plates are looked at just below the crest.
            at.set(if place == 2 { 2.0 } else { 0.0 });
        })
    };
    let set = |state: &UseStateHandle<f64>| {
        let state = state.clone();
        Callback::from(move |value: f64| state.set(value))
    };
    let depth = Dial {
        name: "Where",
        unit: "mm",
        range: [least, most, 0.2],
        value: *at,
        words: place_in_words(slice, *at, case),
        on_turn: set(&at),
    };
    let middle = Dial {
        name: "Window, middle",
        unit: "grey",
        range: [-1000.0, 3000.0, 50.0],
        value: *centre,
        words: String::new(),
        on_turn: set(&centre),
    };
    let span = Dial {
        name: "Window, width",
        unit: "grey",
        range: [200.0, 5000.0, 50.0],
        value: *width,
        words: String::new(),
        on_turn: set(&width),
    };
    html! {
        <figure class="figure plate">
            <figcaption>{ format!("Cone-beam section {name}, before treatment") }</figcaption>
            <div class="row" role="group" aria-label="How the section lies">
                { for (0..3).map(|place| html! { <button type="button" class="quiet" aria-pressed={(place == *kind).to_string()} onclick={choose(place)}>{ SLICES[place].1 }</button> }) }
            </div>
            <Picture pixels={taken.pixels} pitch={taken.voxel} grey={(*grey).clone()} says={says(slice, &case.site)} bar=5>
                { caliper(*tips, size, &moved) }
            </Picture>
            { dial(&depth) }{ dial(&middle) }{ dial(&span) }
            { reading(&taken, *tips, size, &moved) }
            <p class="ask">{ "A field as small as the question keeps the dose small. Whether sections belong to every such case is debated: some take them routinely, others only where film and probe leave a question." }</p>
        </figure>
    }
}

fn laid(case: &Case) -> Scene {
    imaging::scene(case, &Plan::default(), imaging::key(case))
}

fn cut(scene: &Scene, case: &Case, slice: Slice, at: f64) -> Section {
    let key = imaging::key(case);
    let setting = Setting { at: Mm::new(at), ..Setting::usual(slice) };
    let (mut scanner, mut noise) = (Noise::of(key, SCANNER), Noise::of(key, EXPOSURE));
    imaging::section(scene, &case.site, &setting, &mut scanner, &mut noise)
}

/// The caliper as numbers, and what it reads.
fn reading(taken: &Section, tips: Tips, size: [f64; 2], on_move: &Callback<Tips>) -> Html {
    let read = taken.caliper(tips[0], tips[1]);
    let apparent = read.apparent.map_or_else(
        || "Nothing between the tips stands out on both sides.".to_owned(),
        |width| format!("What stands out most between them looks {:.1} mm thick (between its half-heights).", width.get()),
    );
    let field = |which: usize, part: usize| {
        let name = format!(
            "{} tip, mm {}",
            ["first", "second"][which],
            ["from the left", "from the top"][part]
        );
        let turn = {
            let on_move = on_move.clone();
            Callback::from(move |value: f64| {
                let mut next = tips;
                next[which] = if part == 0 {
                    P2::new(value, tips[which].y)
                } else {
                    P2::new(tips[which].x, value)
                };
                on_move.emit(next);
            })
        };
        super::dial::field(name, [0.0, size[part], 0.1], [tips[which].x, tips[which].y][part], turn)
    };
    html! {
        <div class="caliper-reads">
            <p role="status">{ format!("Caliper: {:.1} mm from tip to tip. {apparent}", read.straight.get()) }</p>
            <div class="pair"><span>{ "first tip" }</span>{ field(0, 0) }{ field(0, 1) }<span>{ "second tip" }</span>{ field(1, 0) }{ field(1, 1) }</div>
        </div>
    }
}

fn place_in_words(slice: Slice, at: f64, case: &Case) -> String {
    let oral = case.site.tooth.oral_word();
    let [more, less] = match slice {
        Slice::AcrossArch => ["distal", "mesial"],
        Slice::AlongArch => ["facial", oral],
        Slice::AcrossAxis => ["apical", "coronal"],
    };
    match at {
        at if at > 0.0 => format!("{at:.1} mm {more}"),
        at if at < 0.0 => format!("{:.1} mm {less}", -at),
        _ => "through the middle".to_owned(),
    }
}

/// What a section shows, for who cannot see it.
fn says(slice: Slice, site: &Site) -> String {
    let oral = site.tooth.oral_word();
    let up = if site.tooth.jaw() == Jaw::Maxilla { "Apical is up" } else { "Apical is down" };
    let sides = match slice {
        Slice::AcrossArch => format!("{up}, facial on the right, {oral} on the left"),
        Slice::AlongArch => format!("{up}, the patient's right on the left"),
        Slice::AcrossAxis => {
            format!("Facial is on top, {oral} below, the patient's right on the left")
        }
    };
    format!(
        "Cone-beam section. {sides}. Plates thinner than about 1 mm fade. The readings stand under What I know."
    )
}
