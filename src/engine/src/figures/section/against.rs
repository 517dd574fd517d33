//! The section of one plan with the implant of another beside it, dashed.

use super::super::scene::{Scene, mm};
use super::super::sheet::Margin;
use super::super::together;
use super::super::{Figure, Ink, Show};
use super::{Cutting, drawn, several};
use crate::geometry::Cone;
use crate::measure::cone_of;
use crate::plan::Implant;
use crate::units::Mm;

/// The section of a plan, and over it where the implant of another plan for the same case stands; none
/// where both stand alike, so that there is nothing to be seen.
#[must_use]
pub fn section_against(show: &Show<'_>, other: &Show<'_>) -> Option<Figure> {
    let (here, there) = (Scene::of(show), Scene::of(other));
    let body = there.body();
    (here.body() != body).then(|| {
        drawn(&here, several::below, |cutting| {
            body.map_or_else(String::new, |body| cutting.former(&body))
        })
    })
}

/// The section, and over it every implant of many plans.
pub(in crate::figures) fn of_all(scene: &Scene<'_>, implants: &[Implant]) -> Figure {
    drawn(scene, several::below, |cutting| {
        for implant in implants {
            cutting.contour(&cone_of(implant), together::INK);
        }
        together::implants_in_words(implants)
    })
}

impl Cutting<'_, '_> {
    /// An implant that the learner's own plan has, with its label.
    fn former(&mut self, body: &Cone) -> String {
        self.contour(body, Ink::Former);
        let tip = body.axis_at(body.length);
        let target = self.put(tip.y - body.radius(body.length), tip.z);
        let size = format!("{} by {}", mm_of(2.0 * body.radius(0.0)), mm(Mm::new(body.length)));
        let words = format!("your own implant, {size}");
        self.sheet.note(Margin::Left, target, words, Ink::Former);
        format!(" Your own implant, {size}, is dashed.")
    }
}

/// A length without its unit.
fn mm_of(length: f64) -> String {
    format!("{length:.1}")
}

#[cfg(test)]
mod tests {
    use super::super::super::{Item, facial_map_against};
    use super::*;
    use crate::plan::{Decision, Value};
    use crate::rules::Known;
    use crate::rules::trial::Trial;

    fn former(figure: &Figure) -> usize {
        let one = |item: &&Item| matches!(item, Item::Path { ink: Ink::Former, .. });
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
        let figure = section_against(&mine, &theirs).unwrap();
        assert_eq!(former(&figure), 1);
        assert!(figure.says.ends_with("is dashed."), "{}", figure.says);
        assert_eq!(section_against(&mine, &mine), None);
        // Nothing of the map was moved.
        assert_eq!(facial_map_against(&mine, &theirs), None);
    }
}
