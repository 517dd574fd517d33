//! A case for discussion, to be shown to the class it came from: everybody's choices over each other, and
//! the verdicts one by one.

use super::cases::one_case;
use super::overlay::{Overlay, OverlayProps};
use super::verdicts::verdicts;
use crate::components::changed::use_worked;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{el, line, said, section};
use crate::components::portfolio::tick;
use crate::components::view::keyed;
use crate::prose::Prose;
use learning::class::{CaseSeen, Class, Discussion, SetAside, UNTOLD_FROM, told};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties)]
pub struct DiscussProps {
    /// Everything that was handed in.
    pub class: Rc<RefCell<Class>>,
    /// How often it has been added to.
    pub count: u32,
    /// What the class has set aside.
    pub aside: Held<Vec<SetAside>>,
}

impl PartialEq for DiscussProps {
    fn eq(&self, other: &Self) -> bool {
        let same = Rc::ptr_eq(&self.class, &other.class);
        same && self.count == other.count && self.aside == other.aside
    }
}

/// What is on show: the case by its name, whether all agree to be shown, and how many verdicts.
#[derive(Clone, Default)]
struct OnShow {
    case: String,
    agreed: bool,
    verdicts: usize,
}

/// The part of the report.
#[component]
pub fn Discuss(props: &DiscussProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let on_show = use_held(OnShow::default);
    let class = props.class.clone();
    let of = (props.count, on_show.case.clone());
    let found = use_worked(of, |(_, case)| {
        let class = class.borrow();
        (Discussion::cases(&class), Rc::new(Discussion::of(&class, case)))
    });
    let (cases, discussion) = &*found;
    let mut parts = vec![choose(cases, &on_show)];
    if !on_show.case.is_empty() {
        parts.push(over_each_other(discussion, &on_show));
        let shown = on_show.verdicts;
        let next = {
            let on_show = on_show.clone();
            Callback::from(move |_: MouseEvent| {
                on_show.set(OnShow { verdicts: shown + 1, ..(*on_show).clone() });
            })
        };
        parts.push(verdicts(discussion, (&on_show.case, shown), &props.aside, &prose, next));
    }
    section("discussion", "A case for discussion", parts)
}

fn choose(cases: &[CaseSeen], on_show: &Held<OnShow>) -> Html {
    if cases.is_empty() {
        return line("p", "", "No case that is drawn by its address was brought to its end.");
    }
    let then = {
        let on_show = on_show.clone();
        Callback::from(move |case| on_show.set(OnShow { case, ..OnShow::default() }))
    };
    one_case("discussed", cases, &on_show.case, then)
}

/// The figures of everybody, where nobody is told from the others or all agree.
fn over_each_other(discussion: &Rc<Discussion>, on_show: &Held<OnShow>) -> Html {
    let mut parts = Vec::new();
    if !discussion.is_untold() {
        let why = format!(
            "{} at this case: with fewer than {UNTOLD_FROM} a class may tell whose a choice is, so that choices are not shown unless all agree.",
            told::counted(discussion.learners as usize, "learner")
        );
        let turn = {
            let on_show = on_show.clone();
            Callback::from(move |_: Event| {
                on_show.set(OnShow { agreed: !on_show.agreed, ..(*on_show).clone() });
            })
        };
        let says = line("span", "", "Everybody in the room agrees to be shown");
        parts.push(said("p", "", why));
        parts.push(el("div", "choosing", vec![tick(says, on_show.agreed, turn)]));
    }
    if discussion.is_untold() || on_show.agreed {
        let props = OverlayProps { case: on_show.case.clone(), discussion: discussion.clone() };
        parts.push(keyed::<Overlay>(&on_show.case, props));
    }
    el("div", "", parts)
}
