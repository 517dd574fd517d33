//! The facial map of one plan with membrane and flap of another over it, dashed.

use super::super::{Figure, Ink, Show};
use super::{Mapping, drawn};
use crate::figures::scene::Scene;
use crate::figures::together;
use crate::geometry::{Outline, P2};
use crate::plan::Plan;

/// The map of a plan, and over it the outlines of another plan for the same case, where they differ;
/// none where they are alike, so that there is nothing to be seen.
#[must_use]
pub fn facial_map_against(show: &Show<'_>, other: &Show<'_>) -> Option<Figure> {
    let differing: Vec<_> = outlines(other.plan)
        .into_iter()
        .zip(outlines(show.plan))
        .filter(|((_, there), (_, here))| there != here)
        .map(|(there, _)| there)
        .collect();
    let former = |mapping: &mut Mapping<'_, '_>| {
        let drawn = differing.iter().filter_map(|(name, there)| Some((*name, (*there)?)));
        drawn.map(|(name, outline)| mapping.former(name, outline)).collect()
    };
    (!differing.is_empty()).then(|| drawn(&Scene::of(show), &[], former))
}

/// The map, and over it every membrane of many plans.
pub(in crate::figures) fn of_all(scene: &Scene<'_>, membranes: &[Outline]) -> Figure {
    drawn(scene, membranes, |mapping| {
        for outline in membranes {
            let mut ring = mapping.ring(outline);
            ring.extend(ring.first().copied());
            mapping.sheet.line(&ring, together::INK);
        }
        together::membranes_in_words(membranes)
    })
}

/// Membrane and facial flap.
fn outlines(plan: &Plan) -> [(&'static str, Option<&Outline>); 2] {
    [
        ("membrane", plan.membrane().map(|one| &one.outline)),
        ("flap", plan.raised().map(|one| &one.outline)),
    ]
}

impl Mapping<'_, '_> {
    /// An outline that the learner's own plan has, with its label.
    fn former(&mut self, name: &str, outline: &Outline) -> String {
        let points = outline.points();
        let mut ring: Vec<P2> = points.iter().map(|at| self.put(at.x, at.y)).collect();
        ring.extend(ring.first().copied());
        self.sheet.line(&ring, Ink::Former);
        if let Some(corner) = points.first() {
            let (margin, at) = (self.margin_at(corner.x), self.put(corner.x, corner.y));
            self.sheet.note(margin, at, format!("your own {name}"), Ink::Former);
        }
        format!(" Your own {name} is dashed.")
    }
}
