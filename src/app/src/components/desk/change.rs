//! One thing about a case of the set, changed on its figure: by hand, by keys, or by its number.

use super::Desk;
use super::taken::{Doing, held, kind_of};
use crate::amount::read;
use crate::components::changed::use_worked;
use crate::components::fields::{one_of, words};
use crate::components::figure::under;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{button, el, line, status};
use engine::cases;
use engine::chart::{Address, Aspect, Case, Change};
use engine::debrief::with_unit;
use engine::figures::changing;
use yew::prelude::*;

/// How wide the figure is laid out, CSS pixels.
const WIDE: f64 = 400.0;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct ChangeProps {
    /// The desk.
    pub desk: Desk,
    /// Which of its cases.
    pub place: usize,
}

/// The part of a case.
#[component]
pub fn ChangePart(props: &ChangeProps) -> Html {
    let address = props.desk.set.addresses.get(props.place).copied();
    let doing = use_held(move || {
        let changed = address.and_then(|address| address.changed);
        let aspect = changed.map_or(Aspect::FacialLoss, |change| change.aspect);
        Doing { open: false, aspect, tried: None, says: String::new() }
    });
    let asked = address.filter(|_| doing.open).map(|of| Address { changed: None, ..of });
    let drawn = use_worked(asked, |asked| asked.and_then(|address| cases::at(address).ok()));
    let turn = {
        let doing = doing.clone();
        Callback::from(move |_: MouseEvent| {
            doing.set(Doing { open: !doing.open, ..(*doing).clone() });
        })
    };
    let name = if doing.open { "Leave it so" } else { "Change one thing about it" };
    let mut parts = vec![el("p", "row", vec![button(name, turn)])];
    if let (Some(address), Some(case)) = (address, &*drawn) {
        let own = address.changed.filter(|change| change.aspect == doing.aspect);
        let settle = settling(props, &doing, case);
        parts.extend(opened((props.place, case), own, &doing, &settle));
    }
    el("div", "desk-change", parts)
}

/// Fields and figure, once it is open.
fn opened(
    (place, case): (usize, &Case),
    own: Option<Change>,
    doing: &Held<Doing>,
    settle: &Callback<i32>,
) -> Vec<Html> {
    let aspect = doing.aspect;
    let Some(start) = cases::value_of(case, aspect) else { return Vec::new() };
    let now = doing.tried.or(own.map(|own| own.to)).unwrap_or(start);
    let kind = kind_of(aspect);
    let there = Aspect::ALL.into_iter().filter(|one| cases::value_of(case, *one).is_some());
    let there = there.map(|one| (one.scaled().key, one.scaled().words));
    let chosen = {
        let doing = doing.clone();
        Callback::from(move |key: String| {
            let aspect = Aspect::ALL.into_iter().find(|one| one.scaled().key == key);
            let aspect = aspect.unwrap_or(doing.aspect);
            doing.set(Doing { aspect, tried: None, says: String::new(), open: true });
        })
    };
    let typed = {
        let (settle, doing) = (settle.clone(), doing.clone());
        Callback::from(move |text: String| match read(&kind, &text) {
            Ok(count) => settle.emit(count),
            Err(says) => doing.set(Doing { says, ..(*doing).clone() }),
        })
    };
    let shown = cases::changed(case, Change { aspect, to: now });
    let shown = shown.as_ref().unwrap_or(case);
    let (figure, hold) = changing(shown, aspect, WIDE);
    let over = hold.map(|hold| held(&figure, hold, now, doing, settle)).unwrap_or_default();
    let id = |what: &str| format!("desk-{what}-{place}");
    vec![
        line(
            "p",
            "from",
            "One thing of a case can be changed, the rest stays as it was drawn; what is changed next takes its place.",
        ),
        one_of(&id("aspect"), "What", &there.collect::<Vec<_>>(), aspect.scaled().key, chosen),
        words(&id("amount"), &format!("How much, in {}", kind.unit), &kind.words(now), typed),
        status(doing.says.clone()),
        under(figure, Some(id("figure").into()), over),
    ]
}

/// Puts the changed case in the place of the one that was there, or says why there is none.
fn settling(props: &ChangeProps, doing: &Held<Doing>, case: &Case) -> Callback<i32> {
    let (desk, place) = (props.desk.clone(), props.place);
    let (doing, case) = (doing.clone(), case.clone());
    Callback::from(move |to: i32| {
        let aspect = doing.aspect;
        let kind = kind_of(aspect);
        let says = match cases::changed(&case, Change { aspect, to }) {
            Ok(Case { address: Some(address), .. }) => {
                desk.change(|set| set.addresses[place] = address);
                String::new()
            }
            Ok(_) => String::new(),
            Err(why) => format!("{}: {why}.", with_unit(&kind.words(to), kind.unit)),
        };
        doing.set(Doing { tried: None, says, ..(*doing).clone() });
    })
}
