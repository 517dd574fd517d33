//! What a whole class chose at one case, drawn over the figures of that case: everything alike, so that
//! nothing says whose it is.

use super::scene::{Scene, mm};
use super::{Figure, Ink, Show, map, section};
use crate::chart::Case;
use crate::debrief::counted;
use crate::geometry::{Outline, P2};
use crate::plan::choices as c;
use crate::plan::{Draft, Extraction, Implant, Plan};
use crate::rules::Known;
use crate::units::Mm;

/// The facial map of a case whose tooth is out, with every membrane over it; and the section, with every
/// implant. `px` as in [`Show`].
#[must_use]
pub fn figures_of_all(
    case: &Case,
    membranes: &[Outline],
    implants: &[Implant],
    px: f64,
) -> [Figure; 2] {
    let (plan, draft) = (tooth_out(), Draft::empty());
    let known = Known::of(case, &plan);
    let show =
        Show { case, plan: &plan, draft: &draft, known: &known, reveal: true, lit: None, px };
    let scene = Scene::of(&show);
    [map::of_all(&scene, membranes), section::of_all(&scene, implants)]
}

/// Nothing but the tooth taken out: what a site looks like before anybody has chosen where.
pub(super) fn tooth_out() -> Plan {
    let extraction = Extraction {
        flap_first: false,
        technique: c::Technique::LuxateAndRotate,
        sectioning: c::Sectioning::Whole,
        debridement: c::Debridement::CuretteAndIrrigate,
        probing: c::SocketProbing::AllWalls,
        plate: None,
        revision: c::Revision::CarryOn,
    };
    Plan { extraction: Some(extraction), ..Plan::default() }
}

/// How many membranes there are and how far they differ.
pub(super) fn membranes_in_words(all: &[Outline]) -> String {
    let extent = |along: fn(&P2) -> f64| {
        spread(all.iter().map(|outline| {
            let points = outline.points();
            let [least, most] = ends(points.iter().map(along));
            most - least
        }))
    };
    match all.len() {
        0 => " Nobody laid a membrane.".to_owned(),
        count => format!(
            " {}: {} wide, {} high.",
            counted(count, "membrane"),
            extent(|at| at.x),
            extent(|at| at.y)
        ),
    }
}

/// How many implants there are and how far they differ.
pub(super) fn implants_in_words(all: &[Implant]) -> String {
    let of = |measure: fn(&Implant) -> f64| spread(all.iter().map(measure));
    match all.len() {
        0 => " Nobody placed an implant in the fresh socket.".to_owned(),
        count => format!(
            " {}: {} wide, {} long; platform {} apical of the reference crest, {} facial of the middle of the site.",
            counted(count, "implant"),
            of(|one| one.diameter.get()),
            of(|one| one.length.get()),
            of(|one| one.depth.get()),
            of(|one| one.facial.get())
        ),
    }
}

/// *3.5 to 5.0 mm*; one length where all are alike.
fn spread(all: impl Iterator<Item = f64>) -> String {
    let [least, most] = ends(all).map(|end| mm(Mm::new(end)));
    if least == most { most } else { format!("{} to {most}", least.trim_end_matches(" mm")) }
}

fn ends(all: impl Iterator<Item = f64>) -> [f64; 2] {
    all.fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], one| {
        [least.min(one), most.max(one)]
    })
}

/// Drawn thin, and shining through where many lie over each other.
pub(super) const INK: Ink = Ink::OfMany;

#[cfg(test)]
mod tests {
    use super::super::Item;
    use super::*;
    use crate::plan::{Decision, Value};
    use crate::rules::trial::Trial;

    fn of_many(figure: &Figure) -> usize {
        let one = |item: &&Item| matches!(item, Item::Path { ink: Ink::OfMany, .. });
        figure.items.iter().filter(one).count()
    }

    #[test]
    fn everybody_s_implant_and_membrane_is_drawn_alike_and_told_with_the_spread() {
        let trial = Trial::plain();
        let mut other = trial.clone();
        other.draft.choose(Decision::OffsetFacial, Value::Number(5)).unwrap();
        let implants: Vec<Implant> =
            [trial.plan(), other.plan()].into_iter().filter_map(|plan| plan.implant).collect();
        let membranes = [
            Outline::patch(),
            Outline::new(vec![[-40, -20], [40, -20], [40, 60], [-40, 60]]).unwrap(),
        ];
        let [map, section] = figures_of_all(&trial.case, &membranes, &implants, 360.0);
        assert_eq!([of_many(&map), of_many(&section)], [2, 2]);
        assert!(map.says.contains(" 2 membranes: "), "{}", map.says);
        assert!(map.says.contains("8.0 mm"), "{}", map.says);
        assert!(section.says.contains(" 2 implants: "), "{}", section.says);
        // Nobody's own implant or membrane is filled in beneath.
        let filled =
            |item: &Item| matches!(item, Item::Path { ink: Ink::Implant | Ink::Membrane, .. });
        assert!(!map.items.iter().chain(&section.items).any(filled));
    }

    #[test]
    fn none_is_said_to_be_none_and_one_has_no_spread() {
        let trial = Trial::plain();
        let [map, section] = figures_of_all(&trial.case, &[], &[], 360.0);
        assert!(map.says.ends_with("Nobody laid a membrane."), "{}", map.says);
        assert!(section.says.ends_with("in the fresh socket."), "{}", section.says);
        let one: Vec<Implant> = trial.plan().implant.into_iter().collect();
        let words = implants_in_words(&one);
        assert!(words.starts_with(" 1 implant: ") && !words.contains(" to "), "{words}");
    }
}
