//! Films and sections of the case: pictures computed out of the site, and what is read off them.

mod aim;
mod caliper;
mod dial;
mod film;
mod picture;
mod section;
mod slices;

use crate::store::{Action, Bench};
use engine::plan::choices::Examination;
use film::FilmPlate;
use section::SectionPlate;
use std::rc::Rc;
use yew::prelude::*;

/// All that has been taken so far; nothing while nothing has.
pub fn plates(bench: Rc<Bench>, act: Callback<Action>) -> Html {
    let session = &bench.session;
    let films = !session.films().is_empty();
    let examined = session.shown().examined.as_ref();
    let sections = examined.is_some_and(|done| done.examinations.has(Examination::Sections));
    if !films && !sections {
        return Html::default();
    }
    html! {
        <section class="plates" aria-labelledby="plates-title">
            <h2 id="plates-title">{ "Films and sections" }</h2>
            if films { <FilmPlate bench={bench.clone()} {act} /> }
            if sections { <SectionPlate {bench} /> }
        </section>
    }
}

/// By which a picture of a case is told from one of another: its address, or its title.
fn name_of(bench: &Bench) -> String {
    let case = bench.session.case();
    case.address.map_or_else(|| case.title.clone(), |address| address.to_string())
}
