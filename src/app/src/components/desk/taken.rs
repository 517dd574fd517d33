//! What is taken hold of on the figure of a case that is changed.

use crate::components::grip::{Grip, grip_at};
use crate::components::hold::Held;
use crate::drag::{self, Drag, Going};
use engine::chart::Aspect;
use engine::debrief::with_unit;
use engine::figures::{Figure, Hold};
use engine::plan::NumberKind;
use std::rc::Rc;
use web_sys::{KeyboardEvent, PointerEvent};
use yew::prelude::*;

/// What is done at a case.
#[derive(Clone, PartialEq)]
pub struct Doing {
    /// Whether it is open to be changed.
    pub open: bool,
    /// What is changed.
    pub aspect: Aspect,
    /// To how much, while it is dragged.
    pub tried: Option<i32>,
    /// What came of it.
    pub says: String,
}

/// A number as its field has it.
pub fn kind_of(aspect: Aspect) -> NumberKind {
    let scaled = aspect.scaled();
    let [least, most] = scaled.range;
    let per_unit = i32::from(scaled.per_unit);
    NumberKind { least, most, by: 1, per_unit, unit: scaled.unit, ways: [""; 2] }
}

/// What is taken hold of: dragged along its way, or moved by keys.
pub fn held(
    figure: &Figure,
    hold: Hold,
    now: i32,
    doing: &Held<Doing>,
    settle: &Callback<i32>,
) -> Html {
    let kind = kind_of(doing.aspect);
    let to = move |steps: i32| (now + steps).clamp(kind.least, kind.most);
    let going: Going = {
        let (doing, settle) = (doing.clone(), settle.clone());
        Rc::new(move |right, down, over| {
            let to = to(hold.steps(right, down));
            if over {
                settle.emit(to);
            } else {
                doing.set(Doing { tried: Some(to), ..(*doing).clone() });
            }
        })
    };
    let window = [figure.window.width(), figure.window.height()];
    let down = Callback::from(move |event: PointerEvent| {
        event.prevent_default();
        Drag::begin(&event, window, going.clone());
    });
    let pressed = {
        let settle = settle.clone();
        Callback::from(move |event: KeyboardEvent| {
            if let Some((right, down)) = drag::steps_of_key(&event.key(), event.shift_key()) {
                event.prevent_default();
                settle.emit(to(hold.presses(right, down)));
            }
        })
    };
    let name = doing.aspect.scaled().words.to_owned();
    let says = with_unit(&kind.words(now), kind.unit);
    let grip = Grip { name, keys: None, now: kind.words(now), says, pressed, down };
    grip_at(hold.at, figure.pixel, "hold".to_owned(), grip)
}
