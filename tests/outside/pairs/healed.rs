//! Pairs of a healed ridge and an implant in it: what is read off a late implant is what the same
//! measurement reads there, so each is written with the expression of its twin.

use engine::anatomy::Neighbour;
use engine::cases::{generate, proof_with};
use engine::chart::Case;
use engine::measure::Measurements;
use engine::plan::choices::{Course, HealedAct};
use engine::plan::{Decision, Plan, Value};
use engine::solids::{Entry, Export, export};
use engine::units::Mm;

/// How many pairs are written.
pub const COUNT: usize = 40;
/// How many of them at least have a canal beneath.
const WITH_CANAL: usize = 14;
/// Courses that come back to a healed ridge.
const COURSES: [Course; 3] = [Course::GraftAndReturn, Course::ReturnEarly, Course::LetHeal];

/// The pairs: of the first cases that have one, those over a canal last.
pub fn pairs() -> impl Iterator<Item = Export> {
    let any = (1..).filter_map(|seed| pair(seed, false)).take(COUNT - WITH_CANAL);
    any.chain((1..).filter_map(|seed| pair(seed, true)).take(WITH_CANAL))
}

fn pair(seed: u64, over_canal: bool) -> Option<Export> {
    let case = generate(seed).ok().filter(|case| !over_canal || case.site.vital.canal.is_some())?;
    let mut draft = proof_with(&case, COURSES[(seed % 3) as usize])?.draft;
    // Not only where sound plans stand.
    let (facial, by) = (draft.number(Decision::LateFacial)?, [0, -5, 4][(seed / 3 % 3) as usize]);
    draft.choose(Decision::LateFacial, Value::Number(facial + by)).ok()?;
    written(&case, &Plan::from_draft(&draft, &case).ok()?)
}

/// The healed ridge and the implant, with what is read off a late one.
fn written(case: &Case, plan: &Plan) -> Option<Export> {
    let m = Measurements::of(case, plan);
    let ridge = &m.healed()?.case;
    let placed = plan.later.placement.as_ref()?;
    let alone = Plan { implant: Some(placed.implant(ridge)), ..Plan::default() };
    let mut written = export(ridge, Some(&alone));
    let contour = plan.later.re_entry.as_ref()?.act == HealedAct::PlaceWithContour;
    let twin = |name: &str| {
        let found = written.recipe.measurements.iter().find(|entry| entry.name == name);
        found.map(|entry| entry.expression.clone())
    };
    let near = [&ridge.site.neighbours.mesial, &ridge.site.neighbours.distal];
    let roots = near.into_iter().zip(["to-mesial-neighbour", "to-distal-neighbour"]);
    let roots = roots.filter(|(beside, _)| matches!(beside, Neighbour::Root(_)));
    let roots: Vec<String> = roots.filter_map(|(_, name)| twin(name)).collect();
    let facial = twin("facial-bone-after-grafting");
    let facial = facial.map(|run| if contour { format!("{run} + 2.0") } else { run });
    let late = [
        ("late-facial-bone", m.late_facial_bone(), facial),
        ("late-oral-bone", m.late_oral_bone(), twin("oral-bone")),
        ("late-to-root", m.late_to_root(), Some(format!("least({})", roots.join(", ")))),
        ("late-to-canal", m.late_to_canal(), twin("to-canal")),
    ];
    let entry = |(name, value, expression): (&'static str, Option<Mm>, Option<String>)| {
        Some(Entry { name, expression: expression?, value: Some(value?.get()), unit: Mm::UNIT })
    };
    written.recipe.measurements = late.into_iter().filter_map(entry).collect();
    Some(written)
}
