//! An implant by the book in the healed site: an upright search over sizes and places, bare first, then
//! with a contour graft; where neither finds bone, the ridge is augmented first.

use super::Workshop;
use crate::measure::{Ground, Measurements};
use crate::plan::choices::{Course, HealedAct, LateComponent};
use crate::plan::{Decision, Draft, LatePlacement, Plan, Step, Value, course, steps};
use crate::units::{Deg, Mm};

/// Diameters in tenths, the likeliest first.
const DIAMETERS: [i32; 4] = [40, 35, 45, 30];
/// Offsets in tenths.
const PLACES: [i32; 9] = [-10, -20, 0, -30, 10, -15, -5, -25, -40];
/// Tilts about the crown's, degrees.
const TILTS: [i32; 5] = [0, -6, 6, -12, 12];

/// The draft with what is done about the site as it will have healed; as it is where the course does
/// not return for an implant.
pub(super) fn placed(site: &Workshop<'_>, mut draft: Draft) -> Draft {
    if !steps(&draft).contains(&Step::ReEntry) {
        return draft;
    }
    let mut plan = Plan::default();
    for step in steps(&draft).into_iter().filter(|step| *step <= Step::ReEntry) {
        if plan.carry_out(step, &draft, site.case).is_err() {
            return draft;
        }
    }
    let m = site.measured(&plan);
    let Some(healed) = m.healed() else { return draft };
    let ground = Ground::of(&healed.case.site);
    let early = course(&draft) == Some(Course::ReturnEarly);
    let acts: &[(HealedAct, f64)] = match early {
        true => &[(HealedAct::PlaceWithContour, 2.0)],
        false => &[(HealedAct::Place, 0.0), (HealedAct::PlaceWithContour, 2.0)],
    };
    for (act, layer) in acts {
        for mut tried in candidates(&healed.case) {
            let implant = read(&tried).map(|late| late.implant(&healed.case));
            let plan = Plan { implant, ..Plan::default() };
            if stands(&Measurements::on(&ground, &healed.case, &plan), *layer) {
                tried.push((Decision::HealedAct, Value::one(*act)));
                for (decision, value) in tried {
                    // Every candidate is within the ranges of its decisions.
                    let _ = draft.choose(decision, value);
                }
                return draft;
            }
        }
    }
    draft
}

/// Whether bone stands all round, a contour layer of this thickness counted, and nothing is near.
fn stands(m: &Measurements<'_>, layer: f64) -> bool {
    let least = |value: Option<Mm>, least: f64| value.is_none_or(|value| value.get() >= least);
    let sides = [m.to_mesial_neighbour(), m.to_distal_neighbour()];
    m.facial_bone_after_grafting().is_some_and(|bone| bone.get() + layer >= 2.0)
        && m.oral_bone().is_some_and(|bone| bone.get() >= 1.0)
        && sides.into_iter().flatten().all(|side| side.distance.get() >= 1.5)
        && least(m.to_canal(), 2.0)
}

fn candidates(case: &crate::chart::Case) -> impl Iterator<Item = Vec<(Decision, Value)>> {
    let tenths = |mm: f64| libm::round(mm * 10.0).clamp(-60.0, 60.0);
    // Small and whole by the rounding above.
    #[expect(clippy::cast_possible_truncation, reason = "rounded and clamped")]
    let depth = tenths(case.site.crown.margin_z.get() + 3.5) as i32;
    #[expect(clippy::cast_possible_truncation, reason = "rounded and clamped")]
    let lean = libm::round(case.site.crown.tilt.get()).clamp(-20.0, 20.0) as i32;
    let sizes = DIAMETERS.into_iter().flat_map(|size| [100, 80].map(|length| (size, length)));
    sizes.flat_map(move |(size, length)| {
        PLACES.into_iter().flat_map(move |place| {
            TILTS.into_iter().map(move |tilt| {
                vec![
                    (Decision::LateDiameter, Value::Number(size)),
                    (Decision::LateLength, Value::Number(length)),
                    (Decision::LateFacial, Value::Number(place)),
                    (Decision::LateDepth, Value::Number(depth)),
                    (Decision::LateTilt, Value::Number(lean + tilt)),
                ]
            })
        })
    })
}

fn read(tried: &[(Decision, Value)]) -> Option<LatePlacement> {
    let number = |wanted| {
        tried.iter().find_map(|(decision, value)| match value {
            Value::Number(count) if *decision == wanted => Some(*count),
            _ => None,
        })
    };
    Some(LatePlacement {
        diameter: Mm::from_tenths(number(Decision::LateDiameter)?),
        length: Mm::from_tenths(number(Decision::LateLength)?),
        facial: Mm::from_tenths(number(Decision::LateFacial)?),
        depth: Mm::from_tenths(number(Decision::LateDepth)?),
        tilt: Deg::new(f64::from(number(Decision::LateTilt)?)),
        component: LateComponent::CoverScrew,
    })
}
