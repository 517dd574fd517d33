//! The section of one plan with the implant of another beside it, dashed.

use super::super::scene::Scene;
use super::super::{Figure, Ink, Item, Show};
use super::{Cutting, section};
use crate::geometry::P2;

/// The section of a plan, and over it where the implant of another plan for the same case stands.
#[must_use]
pub fn section_against(show: &Show<'_>, other: &Show<'_>) -> Figure {
    let mut figure = section(show);
    let (here, there) = (Scene::of(show), Scene::of(other));
    let (Some(now), Some(body)) = (here.body(), there.body()) else { return figure };
    if now == body {
        return figure;
    }
    let down = there.down();
    let ring =
        Cutting::silhouette(&body).into_iter().map(|at| P2::new(at.x, down * at.y)).collect();
    figure.items.push(Item::Path { rings: vec![ring], closed: true, ink: Ink::Dashed });
    figure.says.push_str(" The implant of your own plan is dashed.");
    figure
}

#[cfg(test)]
mod tests {
    use super::super::super::facial_map_against;
    use super::*;
    use crate::plan::{Decision, Value};
    use crate::rules::Known;
    use crate::rules::trial::Trial;

    fn dashed(figure: &Figure) -> usize {
        let one = |item: &&Item| matches!(item, Item::Path { ink: Ink::Dashed, closed: true, .. });
        figure.items.iter().filter(one).count()
    }

    #[test]
    fn another_plan_is_dashed_over_this_one_where_it_differs_and_nowhere_else() {
        let trial = Trial::plain();
        let mut other = trial.clone();
        other.draft.choose(Decision::OffsetFacial, Value::Number(5)).unwrap();
        let (plan, moved) = (trial.plan(), other.plan());
        let known = Known::of(&trial.case, &plan);
        let show = |plan, draft| Show {
            case: &trial.case,
            plan,
            draft,
            known: &known,
            reveal: true,
            lit: None,
            px: 360.0,
        };
        let (mine, theirs) = (show(&plan, &trial.draft), show(&moved, &other.draft));
        let plain = dashed(&section(&mine));
        assert_eq!(dashed(&section_against(&mine, &theirs)), plain + 1);
        assert!(section_against(&mine, &theirs).says.ends_with("is dashed."));
        assert_eq!(section_against(&mine, &mine), section(&mine));
        // Nothing of the map was moved.
        assert_eq!(
            dashed(&facial_map_against(&mine, &theirs)),
            dashed(&facial_map_against(&mine, &mine))
        );
    }
}
