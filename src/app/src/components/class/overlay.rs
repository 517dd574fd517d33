//! What everybody chose at a case, over its figures.

use crate::components::figure::still;
use crate::components::plain::{el, said, together};
use engine::figures::figures_of_all;
use learning::class::{Discussion, told};
use std::rc::Rc;
use yew::prelude::*;

/// How wide the figures are laid out, CSS pixels.
const WIDE: f64 = 300.0;

/// What it needs.
#[derive(Properties)]
pub struct OverlayProps {
    /// The case, by its address.
    pub case: String,
    /// What was chosen.
    pub discussion: Rc<Discussion>,
}

impl PartialEq for OverlayProps {
    fn eq(&self, other: &Self) -> bool {
        self.case == other.case && Rc::ptr_eq(&self.discussion, &other.discussion)
    }
}

/// The map with every membrane and the section with every implant.
#[component]
pub fn Overlay(props: &OverlayProps) -> Html {
    let drawn = props.case.parse().ok().and_then(|address| engine::cases::at(address).ok());
    let Some(case) = drawn else { return Html::default() };
    let of = &props.discussion;
    let says = format!(
        "{} and {} of {}, thin over each other, without names and in no order; the wall is the true one.",
        told::counted(of.membranes.len(), "membrane"),
        told::counted(of.implants.len(), "implant"),
        told::counted(of.learners as usize, "learner")
    );
    let figures = figures_of_all(&case, &of.membranes, &of.implants, WIDE);
    let figures = figures.into_iter().map(|figure| still(figure, None)).collect();
    together(vec![said("p", "", says), el("div", "sides", figures)])
}
