//! Pairs of a healed ridge and an implant in it: what is read off a late implant is what the same
//! measurement reads there, so each is written with the expression of its twin.

use engine::anatomy::Neighbour;
use engine::cases::{generate, proof_with};
use engine::chart::Case;
use engine::measure::Measurements;
use engine::plan::choices::{Course, HealedAct};
use engine::plan::{Decision, Plan, Value};
use engine::solids::{Entry, Export, Part, Primitive, apical_of, export, of_site};
use engine::units::{Mm, Ncm};

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
    let implant = placed.implant(ridge, m.healed()?.crest);
    let alone = Plan { implant: Some(implant), ..Plan::default() };
    let mut written = export(ridge, Some(&alone));
    let open = open_socket(&mut written, case, m.healed()?.front);
    let contour = plan.later.found()?.act == HealedAct::PlaceWithContour;
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
    written.recipe.measurements.push(Entry {
        name: "late-estimated-torque",
        expression: format!("torque(implant, bone - ({open}))"),
        value: Some(m.late_estimated_torque()?.get()),
        unit: Ncm::UNIT,
    });
    Some(written)
}

/// Writes the socket as it was and the level to which bone has come beside the healed ridge; what is
/// left of the one coronal of the other, as an expression.
fn open_socket(written: &mut Export, was: &Case, front: Mm) -> String {
    let body = |part: &Part| part.name == "trunk" || part.name.starts_with("root_");
    let mut bodies: Vec<Part> = of_site(&was.site).into_iter().filter(body).collect();
    for part in &mut bodies {
        part.name = format!("was_{}", part.name);
    }
    let names: Vec<String> = bodies.iter().map(|part| part.name.clone()).collect();
    let what = "everything apical of the level to which bone has come".to_owned();
    bodies.push(Part { name: "come".to_owned(), what, mesh: apical_of(front.get()) });
    for Part { name, what, mesh } in bodies {
        let mesh = if written.recipe.mirrored { mesh.mirrored() } else { mesh };
        written.meshes.push((format!("{name}.ply"), mesh.ply(&what)));
        let file = format!("{name}.ply");
        written.recipe.primitives.push(Primitive { name, file, what });
    }
    format!("({}) - come", names.join(" + "))
}
