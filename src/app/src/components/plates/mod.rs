//! Films and sections of the case: pictures computed out of the site, and what is read off them.

mod aim;
mod caliper;
mod dial;
mod film;
mod notes;
mod picture;
mod receptors;
mod section;
mod slices;
mod sound;

use crate::components::plain::{el, heading, labelled};
use crate::components::view::view;
use crate::effects;
use crate::store::{Action, Bench};
use aim::aiming;
use engine::plan::choices::Examination;
use engine::session::Exposure;
use film::FilmPlate;
use section::SectionPlate;
use sound::Sounding;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// All that has been taken so far; nothing while nothing has.
pub fn plates(bench: Rc<Bench>, act: Callback<Action>) -> Html {
    let session = &bench.session;
    let films = !session.films().is_empty();
    let examined = session.shown().examined.as_ref();
    let sections = examined.is_some_and(|done| done.examinations.has(Examination::Sections));
    let sounded = !session.soundings().is_empty();
    // At follow-up a film can be taken though none was before.
    let followed = session.exposing().filter(|_| !films);
    let written = notes::notes(&bench, &act);
    if !films && !sections && !sounded && followed.is_none() {
        return if written == Html::default() {
            written
        } else {
            el("section", "plates", vec![written])
        };
    }
    let plate = || PlateProps { bench: bench.clone(), act: act.clone() };
    // What is not there has its place all the same: the framework matches a list from its end.
    let film = if films { view::<FilmPlate>(plate()) } else { Html::default() };
    let first = followed.map(|moment| aiming(0, &plate(), Exposure::PARALLEL, moment));
    let section = if sections { view::<SectionPlate>(plate()) } else { Html::default() };
    let probe = if sounded { view::<Sounding>(plate()) } else { Html::default() };
    let parts = vec![film, first.unwrap_or_default(), section, probe, written];
    let heading = heading("h2", "plates-title", "Films, sections, probe".to_owned());
    labelled("plates", "plates-title", heading, parts)
}

/// The key that a list stands at.
fn chosen(event: &Event) -> String {
    event
        .target()
        .and_then(|target| target.dyn_into::<HtmlSelectElement>().ok())
        .map(|list| list.value())
        .unwrap_or_default()
}

/// About how wide a drawing at a plate will be, CSS pixels: the stylesheet makes none wider.
fn drawing_width() -> f64 {
    (effects::page_width() - 110.0).clamp(200.0, 480.0)
}

/// What a plate needs.
#[derive(Properties)]
pub struct PlateProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// Told what is done at the plate, where anything can be.
    pub act: Callback<Action>,
}

impl PartialEq for PlateProps {
    fn eq(&self, other: &Self) -> bool {
        same_attempt(&self.bench, &other.bench)
    }
}

/// Whether two benches hold the same attempt: what is tried out by a drag, and nothing of which shows
/// on a picture, does not part them.
fn same_attempt(one: &Bench, other: &Bench) -> bool {
    let done = |bench: &Bench| (name_of(bench), bench.session.events().len());
    done(one) == done(other)
}

/// By which a picture of a case is told from one of another: its address, or its title.
fn name_of(bench: &Bench) -> String {
    let case = bench.session.opened();
    case.address.map_or_else(|| case.title.clone(), |address| address.to_string())
}
