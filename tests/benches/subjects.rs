//! What is timed: generated cases with plans that place an implant today, and their meshes.

use crate::mesh::Bodies;
use engine::cases::{generate, proof_with};
use engine::chart::Case;
use engine::measure::Measurements;
use engine::plan::choices::Course;
use engine::plan::{Decision, Draft, Plan};
use engine::rules::trial::Trial;
use engine::scenario;

/// How many; enough that narrow and wide gaps, defects, membranes and flaps are among them.
const COUNT: usize = 24;
/// How far the library's volume may be from the engine's, as a part of it: both are within 0.5 % of
/// the truth, or 0.5 mm3 where that is more.
const TOLERANCE: f64 = 0.01;

/// A case, a plan of it and what the mesh boolean reads.
pub(crate) struct Subject {
    pub(crate) case: Case,
    pub(crate) plan: Plan,
    pub(crate) draft: Draft,
    pub(crate) bodies: Bodies,
}

/// The first of the generated cases that a plan places an implant in today.
pub(crate) fn subjects() -> Vec<Subject> {
    let subjects: Vec<Subject> = (1..).filter_map(subject).take(COUNT).collect();
    for subject in &subjects {
        let ours = Measurements::of(&subject.case, &subject.plan).gap_volume();
        let ours = ours.map_or(0.0, |volume| volume.get());
        let theirs = subject.bodies.gap_volume().unwrap_or(f64::NAN);
        // A reference that computes something else would make the ratio meaningless.
        assert!(
            (ours - theirs).abs() <= (TOLERANCE * ours).max(1.0),
            "{}: engine {ours} mm3, mesh boolean {theirs} mm3",
            subject.case.title
        );
    }
    subjects
}

fn subject(seed: u64) -> Option<Subject> {
    let case = generate(seed).ok()?;
    let draft = proof_with(&case, Course::PlaceToday)?.draft;
    let plan = Plan::from_draft(&draft, &case).ok()?;
    let bodies = Bodies::of(&case, &plan)?;
    Some(Subject { case, plan, draft, bodies })
}

/// The written molar with a wide implant in its septum.
pub(crate) fn molar() -> (Case, Plan) {
    let text = include_str!("../../scenarios/template.molar.case.toml");
    let mut trial = Trial::plain();
    trial.case = scenario::parse_case(text).unwrap_or_else(|faults| panic!("{faults}"));
    trial.keys(&[("sensation-check", "yes")]);
    for (decision, count) in [
        (Decision::Diameter, 50),
        (Decision::Length, 100),
        (Decision::OffsetFacial, 0),
        (Decision::OffsetDistal, 0),
        (Decision::Depth, 10),
        (Decision::Tilt, 0),
    ] {
        trial.number(decision, count);
    }
    let plan = trial.plan();
    (trial.case, plan)
}
