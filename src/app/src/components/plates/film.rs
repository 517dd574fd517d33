//! The films of a case, one at a time.

use super::aim::aiming;
use super::picture::Picture;
use super::{PlateProps, name_of};
use crate::components::changed::use_worked;
use crate::components::hold::use_held;
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
    let others = (films.len() > 1).then(|| {
        html! {
            <div class="row" role="group" aria-label="Which film">
                { for (0..films.len()).map(|place| {
                    let (asked, count) = (asked.clone(), films.len());
                    let look = Callback::from(move |_: MouseEvent| asked.set((count, place)));
                    html! { <button type="button" class="quiet" aria-pressed={(place == at).to_string()} onclick={look}>{ format!("Film {}", place + 1) }</button> }
                }) }
            </div>
        }
    });
    let repeats = session.repeats();
    let grown = grown(session, taken);
    let next = session.exposing();
    html! {
        <figure class="figure plate">
            <figcaption>{ format!("Periapical film {} of {}, {}", at + 1, films.len(), taken.moment.words()) }</figcaption>
            <Picture pixels={film.view.pixels} pitch={film.view.pitch} {grey} says={says(taken)} bar=10 />
            { for others }
            <p class="reading">{ format!("The bar is 10 mm on the receptor: what stands at the tooth is drawn {grown:.2} times as large. Films so far: {}. Repeats so far: {repeats}.", films.len()) }</p>
            if let Some(moment) = next {
                { aiming(newest, props, films[newest].exposure, moment) }
            }
        </figure>
    }
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
