//! Cone-beam sections: how they lie, their window, and a caliper on them.

use super::caliper::{Tips, caliper, reading};
use super::dial::{Dial, dial};
use super::picture::{Picture, PictureProps};
use super::slices::{SLICES, cut, laid, place_in_words, says};
use super::{PlateProps, name_of};
use crate::components::changed::use_worked;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{el, group, line, said, toggle};
use crate::components::view::view;
use engine::geometry::P2;
use engine::imaging::window;
use yew::prelude::*;

/// What is said of the dose.
const DOSE: &str = "A field as small as the question keeps the dose small. Whether sections belong to every such case is debated: some take them routinely, others only where film and probe leave a question.";

/// One section at a time, of the case as it came.
#[component]
pub fn SectionPlate(props: &PlateProps) -> Html {
    let case = props.bench.session.opened();
    let kind = use_held(|| 0_usize);
    let at = use_held(|| 0.0);
    let (centre, width) = (use_held(|| 1000.0), use_held(|| 4000.0));
    let tips = use_held(|| [P2::new(11.0, 14.0), P2::new(19.0, 14.0)]);
    let scene = use_worked(name_of(&props.bench), move |_| laid(case));
    let (slice, name, [least, most]) = SLICES[*kind];
    let taken = use_worked((name_of(&props.bench), *kind, *at), |_| cut(&scene, case, slice, *at));
    let seen = (name_of(&props.bench), *kind, *at, *centre, *width);
    let grey = use_worked(seen, |_| {
        taken.grey.iter().map(|grey| window(*grey, *centre, *width)).collect::<Vec<u8>>()
    });
    let size = taken.pixels.map(|count| f64::from(count) * taken.voxel);
    let moved = moves(&tips);
    let lies = |place: usize| {
        let (kind, at, is_so) = (kind.clone(), at.clone(), place == *kind);
        let choose = Callback::from(move |_: MouseEvent| {
            kind.set(place);
            // Across the axis the plates are looked at just below the crest.
            at.set(if place == 2 { 2.0 } else { 0.0 });
        });
        toggle(SLICES[place].1.to_owned(), is_so, choose)
    };
    let set = |state: &Held<f64>| {
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
    let middle = of_window("Window, middle", [-1000.0, 3000.0, 50.0], *centre, set(&centre));
    let span = of_window("Window, width", [200.0, 5000.0, 50.0], *width, set(&width));
    let picture = PictureProps {
        pixels: taken.pixels,
        pitch: taken.voxel,
        grey,
        says: says(slice, &case.site).into(),
        bar: 5,
        children: caliper(*tips, size, &moved),
    };
    let parts = vec![
        said("figcaption", "", format!("Cone-beam section {name}, before treatment")),
        group("row", "group", "How the section lies", (0..3).map(lies).collect()),
        view::<Picture>(picture),
        dial(&depth),
        dial(&middle),
        dial(&span),
        reading(&taken, *tips, size, &moved),
        line("p", "ask", DOSE),
    ];
    el("figure", "figure plate", parts)
}

/// Moves the tips of the caliper.
fn moves(tips: &Held<Tips>) -> Callback<Tips> {
    let tips = tips.clone();
    Callback::from(move |next: Tips| tips.set(next))
}

/// A dial of the window under which a section is seen.
const fn of_window(
    name: &'static str,
    range: [f64; 3],
    value: f64,
    on_turn: Callback<f64>,
) -> Dial {
    Dial { name, unit: "grey", range, value, words: String::new(), on_turn }
}
