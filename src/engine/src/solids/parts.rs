//! Each part of a site and a plan as a mesh with a name.

use super::bodies::{of_capsule, of_cone, of_stack};
use super::contour::contour;
use super::cuts::cut;
use super::mesh::{Mesh, cuboid};
use super::ridge::{CrestAt, ridge};
use crate::anatomy::{Beside, Bodies, Floor, Lesion, Site, Tube, Wall};
use crate::geometry::{Capsule, Cone, P3, Stack};
use crate::measure::DRILL_OVERSHOOT;
use crate::plan::Plan;

/// A named mesh.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// As expressions name it.
    pub name: String,
    /// In words, on one line.
    pub what: String,
    /// Its surface, in the engine's frame (not mirrored).
    pub mesh: Mesh,
}

impl Part {
    fn new(name: impl Into<String>, what: impl Into<String>, mesh: Mesh) -> Self {
        Self { name: name.into(), what: what.into(), mesh }
    }
}

/// The level at which the mesh of the ridge ends: the last knot of its profiles. The ridge itself
/// goes on.
pub(super) fn bottom(site: &Site) -> f64 {
    [&site.ridge.facial, &site.ridge.oral]
        .into_iter()
        .filter_map(|profile| profile.knots.last())
        .map(|knot| knot.x)
        .fold(10.0, f64::max)
}

/// Everything that stands at the site whatever is planned.
#[must_use]
pub fn of_site(site: &Site) -> Vec<Part> {
    let mut parts = vec![
        Part::new(
            "ridge",
            "bone as it begins now, without socket, wall defects or structures",
            ridge(&site.ridge, CrestAt::Now, bottom(site)),
        ),
        Part::new("apical", "everything apical of the reference crest", apical_of(0.0)),
    ];
    parts.extend(socket(site));
    for (i, defect) in site.defects.iter().enumerate() {
        let wall = match defect.wall {
            Wall::Facial => "facial",
            Wall::Oral => "oral",
        };
        let what = format!("what a defect of the {wall} wall takes out of the ridge");
        let mesh = cut(site, defect);
        parts.extend(mesh.map(|mesh| Part::new(format!("cut_{}", i + 1), what, mesh)));
    }
    for (name, neighbour) in [
        ("neighbour_mesial", &site.neighbours.mesial),
        ("neighbour_distal", &site.neighbours.distal),
    ] {
        match Beside::of(neighbour) {
            Beside::Root(body) => {
                parts.push(Part::new(name, "root of the neighbour", of_stack(&body)));
            }
            Beside::Implant(body) => {
                parts.push(Part::new(name, "implant of the neighbour", of_cone(&body, None)));
            }
            Beside::Absent => {}
        }
    }
    parts.extend(structures(site));
    parts
}

/// Root bodies; of several roots the trunk before them, and the spaces that the septum is named by.
fn socket(site: &Site) -> Vec<Part> {
    let bodies = Bodies::of(&site.socket);
    let mut parts = Vec::new();
    if let (Some(level), Some(trunk)) = (bodies.furcation(), bodies.coronal()) {
        parts.push(Part::new(
            "trunk",
            "the trunk of the tooth, down to the furcation",
            of_stack(trunk),
        ));
        let what = "everything apical of the furcation";
        parts.push(Part::new("below_furcation", what, apical_of(level)));
        let what = "what stands under the trunk, down to the shallowest apex";
        let under = bodies.under_trunk();
        parts.extend(under.map(|space| Part::new("under_trunk", what, of_stack(&space))));
    }
    let roots = bodies.roots().iter().enumerate();
    parts.extend(roots.map(|(i, body)| {
        Part::new(format!("root_{}", i + 1), "a root body of the socket", of_stack(body))
    }));
    parts
}

fn structures(site: &Site) -> Vec<Part> {
    let mut parts = Vec::new();
    for (name, what, found) in [
        ("canal", "inferior alveolar canal", &site.vital.canal),
        ("loop", "anterior loop of the mental nerve", &site.vital.loop_),
        ("nasopalatine", "nasopalatine canal", &site.vital.nasopalatine),
    ] {
        if let Some(&Tube { from, to, radius }) = found.as_ref() {
            let body = Capsule { ends: [from, to], radius: radius.get() };
            parts.push(Part::new(name, what, of_capsule(&body)));
        }
    }
    if let Lesion::Chronic { diameter }
    | Lesion::Abscess { diameter }
    | Lesion::Spreading { diameter } = site.lesion
    {
        let apex = Bodies::of(&site.socket).roots().first().map(Stack::apex);
        let ball = apex.map(|apex| of_capsule(&Capsule::ball(apex, diameter.get() / 2.0)));
        parts.extend(ball.map(|ball| Part::new("lesion", "hollow of the apical lesion", ball)));
    }
    if let Some(found) = &site.vital.floor {
        parts.push(Part::new(
            "floor",
            "what lies beyond the floor of sinus or nose",
            beyond(found),
        ));
    }
    parts
}

/// What a plan adds: the implant drilled for and its bed, the fill level, the contour layer.
#[must_use]
pub fn of_plan(site: &Site, plan: &Plan, drilled: Option<&Cone>) -> Vec<Part> {
    let mut parts = Vec::new();
    if let Some(cone) = drilled {
        parts.push(Part::new("implant", "outer cone of the implant", of_cone(cone, None)));
        let what = "the implant with the point of its drill";
        parts.push(Part::new("bed", what, of_cone(cone, Some(DRILL_OVERSHOOT.get()))));
    }
    if let Some(graft) = plan.graft_laid() {
        let mesh = apical_of(-graft.fill.get());
        parts.push(Part::new("fill", "everything apical of the fill level", mesh));
        let layer = graft.contour.and_then(|thickness| contour(site, thickness.get()));
        let what = "layer outside the facial wall";
        parts.extend(layer.map(|mesh| Part::new("contour", what, mesh)));
    }
    parts
}

/// Everything apical of a level, wider than every site.
#[must_use]
pub fn apical_of(level: f64) -> Mesh {
    cuboid(P3::new(-50.0, -50.0, level), P3::new(50.0, 50.0, level + 70.0))
}

fn beyond(floor: &Floor) -> Mesh {
    let mut mesh = apical_of(floor.z.get());
    for corner in &mut mesh.corners {
        corner.z += floor.rise * corner.x;
    }
    mesh
}
