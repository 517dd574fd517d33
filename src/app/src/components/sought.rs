//! Parts of the debrief that are looked for once it stands on the page.

use super::breaks::{BreaksProps, BreaksView};
use super::healing::{HealingProps, HealingView};
use super::nearest::Looked;
use super::readings::readings;
use super::room::{RoomProps, RoomView};
use super::view::view;
use crate::store::Bench;
use engine::plan::Draft;
use engine::rules::Rule;
use std::rc::Rc;
use yew::prelude::*;

/// What takes its time, and what leans on it.
pub fn sought_for(
    bench: &Rc<Bench>,
    sound: &Option<Rc<Draft>>,
    looked: &Looked,
    broken: Vec<&'static Rule>,
) -> [Html; 4] {
    let (bench, sound) = (|| bench.clone(), || sound.clone());
    let tooth = bench().session.case().site.tooth;
    [
        view::<BreaksView>(BreaksProps { bench: bench(), sound: sound(), broken }),
        view::<RoomView>(RoomProps { bench: bench(), sound: sound() }),
        readings(&bench().session.compared(), tooth),
        view::<HealingView>(HealingProps { bench: bench(), looked: looked.clone() }),
    ]
}
