//! What this browser keeps of a set, and handing it in.

use crate::components::fields::words;
use crate::components::plain::{el, line, press};
use crate::effects;
use crate::keep::db::ATTEMPTS;
use crate::keep::file::saved;
use crate::keep::keeper::keeper;
use crate::keep::restore::head;
use crate::library::ShippedSet;
use yew::prelude::*;

/// What is kept here of a set.
pub struct Here {
    /// The places, from 1, of its cases that are not at their end.
    pub open: Vec<usize>,
    /// The names of its attempts.
    ids: Vec<String>,
}

impl Here {
    /// Nothing where nothing is kept.
    pub async fn of(set: &ShippedSet) -> Option<Self> {
        let heads = keeper().db()?.texts(ATTEMPTS, "").await.ok()?;
        let heads = heads.iter().filter_map(|text| head(text).ok());
        let (mut ended, mut ids) = (Vec::new(), Vec::new());
        for head in heads.filter(|head| head.set.as_ref() == Some(&set.name)) {
            ended.extend(head.address.filter(|_| head.ended.is_some()));
            ids.push(head.id);
        }
        let places = (1..).zip(&set.addresses);
        let open = places.filter(|(_, case)| !ended.contains(case)).map(|(place, _)| place);
        Some(Self { open: open.collect(), ids })
    }
}

/// The learner's code, and the file.
pub fn hand_in(here: &Here) -> Vec<Html> {
    let told = Callback::from(|code: String| effects::remember_code(&code));
    let ids = here.ids.clone();
    let save = Callback::from(move |_: MouseEvent| {
        let ids = ids.clone();
        wasm_bindgen_futures::spawn_local(async move {
            if let Ok(text) =
                saved(Some(&effects::code()), |id| ids.iter().any(|one| one == id)).await
            {
                effects::save("wallwise-attempts.json", &text);
            }
        });
    });
    vec![
        line("h2", "", "Hand in"),
        words(
            "sat-code",
            "Your code, as your instructor knows you: letters, digits, hyphens",
            &effects::code(),
            told,
        ),
        el("p", "row", vec![press(&[], "Save the attempts of this set".to_owned(), save)]),
    ]
}
