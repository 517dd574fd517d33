//! The films of a case, one at a time.

use super::aim::aiming;
use super::picture::{Picture, PictureProps};
use super::{PlateProps, name_of};
use crate::components::changed::use_worked;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{el, group, said, toggle};
use crate::components::view::view;
use engine::imaging::{self, Aim, Film, Noise};
use engine::session::{Session, Taken};
use yew::prelude::*;

/// The films.
#[component]
pub fn FilmPlate(props: &PlateProps) -> Html {
    let session = &props.bench.session;
    let films = session.films();
    // The newest is looked at, unless another was asked for since it came.
    let asked = use_held(|| (0, 0));
    let newest = films.len().saturating_sub(1);
    let at = if asked.0 == films.len() { asked.1 } else { newest };
    let taken = films[at];
    let film = use_worked((name_of(&props.bench), taken), |_| exposed(session, taken));
    let grey = use_worked((name_of(&props.bench), taken), |_| film.grey.clone());
    let others = if films.len() > 1 { which(films.len(), at, &asked) } else { Html::default() };
    let repeats = session.repeats();
    let grown = grown(session, taken);
    let next = session.exposing();
    let title = format!("Periapical film {} of {}, {}", at + 1, films.len(), taken.moment.words());
    let scale = format!(
        "The bar is 10 mm on the receptor: what stands at the tooth is drawn {grown:.2} times as large. Films so far: {}. Repeats so far: {repeats}.",
        films.len()
    );
    let next = next.map(|moment| aiming(newest, props, films[newest].exposure, moment));
    let (pixels, pitch) = (film.view.pixels, film.view.pitch);
    let (says, children) = (says(taken).into(), Html::default());
    let picture = PictureProps { pixels, pitch, grey, says, bar: 10, children };
    let parts = vec![
        said("figcaption", "", title),
        view::<Picture>(picture),
        others,
        said("p", "reading", scale),
        next.unwrap_or_default(),
    ];
    el("figure", "figure plate", parts)
}

/// Asks which of so many films is looked at.
fn which(count: usize, at: usize, asked: &Held<(usize, usize)>) -> Html {
    let one = |place: usize| {
        let asked = asked.clone();
        let look = Callback::from(move |_: MouseEvent| asked.set((count, place)));
        toggle(format!("Film {}", place + 1), place == at, look)
    };
    group("row", "group", "Which film", (0..count).map(one).collect())
}

fn exposed(session: &Session, taken: Taken) -> Film {
    let case = session.case_at(taken.moment);
    let key = imaging::key(case);
    let scene = imaging::scene_at(case, &session.plan_at(taken.moment), taken.moment.time(), key);
    let aim = taken.exposure.aim(Aim::usual(&case.site));
    imaging::film(&scene, &case.site, &aim, &mut Noise::of(key, u32::from(taken.number)))
}

/// How much larger than in the mouth something at the tooth is drawn.
fn grown(session: &Session, taken: Taken) -> f64 {
    let aim = taken.exposure.aim(Aim::usual(&session.case().site));
    aim.source.get() / (aim.source.get() - aim.object.get())
}

/// What a film shows, for who cannot see it: how it was taken. What it means is for the reader to say,
/// and what a reader of films would report stands under *What I know*.
fn says(taken: Taken) -> String {
    format!(
        "Periapical film {}. Crowns, roots, ligament spaces and bone, drawn over each other from the facial to the oral side. The readings stand under What I know.",
        taken.moment.words()
    )
}
