//! An implant by the book in the healed site: an upright search over sizes and places, bare first, then
//! with a contour graft; where neither finds bone, the ridge is augmented first.

use super::Workshop;
use crate::anatomy::Kind;
use crate::chart::Case;
use crate::measure::{Ground, Late, Measurements};
use crate::plan::choices::{Course, HealedAct, LateComponent};
use crate::plan::{Decision, Draft, LatePlacement, Plan, Step, Value, course, steps};
use crate::units::{Deg, Mm};

/// What is counted of a candidate, in the order of [`PLACED_BY`].
type Counts = [i32; 5];
const PLACED_BY: [Decision; 5] = [
    Decision::LateDiameter,
    Decision::LateLength,
    Decision::LateFacial,
    Decision::LateDepth,
    Decision::LateTilt,
];
/// How thick a contour layer comes to be, mm.
const LAYER: f64 = 2.0;
/// Diameters in tenths, the likeliest first; nothing under 4 mm carries a molar.
const DIAMETERS: [i32; 4] = [40, 35, 45, 30];
const MOLAR_DIAMETERS: [i32; 4] = [45, 50, 40, 55];
/// Offsets in tenths.
const PLACES: [i32; 9] = [-10, -20, 0, -30, 10, -15, -5, -25, -40];
/// Tilts about the crown's, degrees.
const TILTS: [i32; 5] = [0, -6, 6, -12, 12];
/// Tilts that a ridge may ask where none of those finds bone.
const WIDE_TILTS: [i32; 4] = [-18, 18, -24, 24];

/// The draft with what is done about the site as it will have healed; as it is where the course does
/// not return for an implant.
pub(super) fn placed(site: &Workshop<'_>, draft: Draft) -> Draft {
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
    // Early placement goes with a contour graft; later on bare bone is looked for first.
    let bare_will_do = course(&draft) != Some(Course::ReturnEarly);
    let mut layered = None;
    for counts in candidates(&healed.case, healed.crest) {
        let implant = placement(counts).implant(&healed.case, healed.crest);
        let plan = Plan { implant: Some(implant), ..Plan::default() };
        let m = Measurements::on(&ground, &healed.case, &plan);
        let late = Late::of(&m);
        if bare_will_do && stands(&m, &late, 0.0) {
            return chosen(draft, HealedAct::Place, counts);
        }
        if layered.is_none() && stands(&m, &late, LAYER) {
            layered = Some(counts);
            if !bare_will_do {
                break;
            }
        }
    }
    match layered {
        Some(counts) => chosen(draft, HealedAct::PlaceWithContour, counts),
        None => draft,
    }
}

/// The draft with this done about its healed site.
fn chosen(mut draft: Draft, act: HealedAct, counts: Counts) -> Draft {
    let numbers = PLACED_BY.into_iter().zip(counts.map(Value::Number));
    for (decision, value) in numbers.chain([(Decision::HealedAct, Value::one(act))]) {
        // Every candidate is within the ranges of its decisions.
        let _ = draft.choose(decision, value);
    }
    draft
}

/// Whether bone stands all round, a contour layer of this thickness counted, nothing is near, and the
/// crown has its place.
fn stands(m: &Measurements<'_>, late: &Late, layer: f64) -> bool {
    let least = |value: Option<Mm>, least: f64| value.is_none_or(|value| value.get() >= least);
    let tooth = m.case.site.tooth;
    let molar = tooth.kind() == Kind::Molar;
    let incisor = tooth.kind() == Kind::CentralIncisor;
    late.facial.is_some_and(|bone| bone.get() + layer >= 2.0)
        && late.oral.is_some_and(|bone| bone.get() >= 1.0)
        && late.apical_facial.is_some_and(|bone| bone.get() >= 1.0)
        && late.apical_oral.is_some_and(|bone| bone.get() >= 1.0)
        && least(late.to_root, 1.5)
        && least(late.to_implant, 2.0)
        && least(late.to_canal, 2.0)
        && least(late.to_foramen, 2.0)
        && least(late.to_floor, 1.0)
        && late.to_crown.is_none_or(|angle| angle.get() <= 25.0)
        && (!incisor || least(late.to_nasopalatine, 1.0))
        && least(late.from_crest, 0.0)
        // Where the crest has come down so far, the ridge is built up first.
        && (!m.case.site.is_aesthetic() || late.from_margin.is_none_or(|mm| mm.get() <= 5.0))
        && (molar || late.from_line.is_none_or(|line| (1.5..=4.0).contains(&line.get())))
}

fn candidates(case: &Case, crest: Mm) -> impl Iterator<Item = Counts> {
    // Below the margin as a crown wants it, and no thread above the crest; where the margin stays
    // hidden, not far below the crest either.
    let wanted = 10.0 * (case.site.crown.margin_z - crest).get() + 35.0;
    let most = if case.site.is_aesthetic() { 60.0 } else { 15.0 };
    // Small and whole by the rounding.
    #[expect(clippy::cast_possible_truncation, reason = "rounded and clamped")]
    let depth = libm::round(wanted).clamp(0.0, most) as i32;
    #[expect(clippy::cast_possible_truncation, reason = "rounded and clamped")]
    let lean = libm::round(case.site.crown.tilt.get()).clamp(-20.0, 20.0) as i32;
    let near = (depth, TILTS.as_slice());
    // Where the margin stays hidden, level with the crest is tried as well.
    let level = (!case.site.is_aesthetic() && depth > 0).then_some((0, TILTS.as_slice()));
    let wide = (depth, WIDE_TILTS.as_slice());
    let molar = case.site.tooth.kind() == Kind::Molar;
    let diameters = if molar { MOLAR_DIAMETERS } else { DIAMETERS };
    [Some(near), level, Some(wide)].into_iter().flatten().flat_map(move |(depth, tilts)| {
        let sizes = diameters.into_iter().flat_map(|size| [100, 80].map(|length| (size, length)));
        sizes.flat_map(move |(size, length)| {
            PLACES.into_iter().flat_map(move |place| {
                tilts.iter().map(move |tilt| [size, length, place, depth, lean + tilt])
            })
        })
    })
}

fn placement([size, length, place, depth, tilt]: Counts) -> LatePlacement {
    LatePlacement {
        diameter: Mm::from_tenths(size),
        length: Mm::from_tenths(length),
        facial: Mm::from_tenths(place),
        depth: Mm::from_tenths(depth),
        tilt: Deg::new(f64::from(tilt)),
        component: LateComponent::CoverScrew,
    }
}
