//! The facial map of one plan with membrane and flap of another over it, dashed.

use super::super::{Figure, Ink, Item, Show};
use super::facial_map;
use crate::figures::scene::Scene;
use crate::geometry::{Outline, P2};
use crate::plan::Plan;

/// The map of a plan, and over it the outlines of another plan for the same case, where they differ.
#[must_use]
pub fn facial_map_against(show: &Show<'_>, other: &Show<'_>) -> Figure {
    let mut figure = facial_map(show);
    let scene = Scene::of(other);
    let put = |at: &P2| P2::new(scene.right() * at.x, scene.down() * at.y);
    let differing = outlines(other.plan).into_iter().zip(outlines(show.plan));
    let rings: Vec<Vec<P2>> = differing
        .filter(|(there, here)| there != here)
        .filter_map(|(there, _)| Some(there?.points().iter().map(put).collect()))
        .collect();
    if !rings.is_empty() {
        let items = rings.into_iter();
        let dashed = |ring| Item::Path { rings: vec![ring], closed: true, ink: Ink::Dashed };
        figure.items.extend(items.map(dashed));
        figure.says.push_str(" The outlines of your own plan are dashed.");
    }
    figure
}

/// Membrane and facial flap.
fn outlines(plan: &Plan) -> [Option<&Outline>; 2] {
    [plan.membrane().map(|one| &one.outline), plan.raised().map(|one| &one.outline)]
}
