//! The recipe: which primitive is in which file, and how each measurement follows from them.

use super::bodies::{AROUND, CHORD_ERROR};
use super::covered::outlines;
use super::given::{Lines, Quantity, chosen, quantities};
use super::measured::Writer;
use super::mesh::NOTICE;
use super::parts::{Part, of_plan, of_site};
use crate::chart::Case;
use crate::geometry::Cone;
use crate::measure::Measurements;
use crate::plan::Plan;
use serde::Serialize;
use std::collections::BTreeMap;

/// What stands in `recipe.json`.
///
/// An expression names primitives and bodies. `+` is the union of two solids, `&` their common part,
/// `-` the first without the second; brackets group, and the order without them is that of the
/// signs in arithmetic, `&` last. Round them stand functions, and numbers add and multiply:
///
/// - `volume(solid)`; `layer(thickness, fall, outline, ...)`: volume on the map of a layer of full
///   thickness over the outlines, falling evenly to nothing over `fall`, apical of t = 0.
/// - `engaged`, `facing`, `open` `(implant, solid)`: areas of the implant's side that lie in the solid;
///   that do not but whose outward ray, square to the axis, meets it within 6 mm; whose ray does not.
/// - `gap(solid, solid)`: least distance, 0 where they meet. `apart(solid, solid, way)`: the same, or
///   minus the least move of the first along x (`way` 1 or -1) that parts them. `to_point(solid, x,
///   y, z)`. `to_tube(solid, radius, two points)`: to the middle line, less the radius.
///   `to_plane(solid, z, rise)`: square to the plane z + rise x, negative beyond it.
/// - Along a ray, given by a point and a direction of length 1: `chord(solid, ray, far)`, the length
///   in the solid within `far`; `meets(solid, ray)`, 1 or 0; `first(solid, ray)`, where the solid begins (0 inside it);
///   `leaves(solid, ray)`, where the ray last leaves it; `stretch(solid, ray, start)`, the length of
///   the first piece if it begins within `start`.
/// - `side_in(implant, solid)`: area of the implant's side that lies in the solid, by the boolean alone.
///   `septum_class(below, in bone, in septum)` of three such areas: 1 where 99 % of what lies below the
///   furcation stands in bone, otherwise 2 where a tenth of it stands in the septum, otherwise 3.
///   `held_round(area)`: the length over which a body of the platform's width has that area all round;
///   `off_axis(implant, x, y, z)`: from the point to the implant's axis at its level, square to z.
/// - `anchored(implant, solid)`: length of the apical end whose side lies in the solid all round; a
///   break of 0.1 mm or less along it does not end it.
/// - `angle(tilt, tip, tilt, tip)`: between two axes, degrees.
/// - On the map, of outlines or of the parts of one apical or oral of a t (`apical_of(outline, t)`,
///   `oral_of(outline, t)`): `margin(side, inner, outer)`, the least distance from the inner outline
///   to the edges of the outer whose outward normal leans most to the side, or minus how far the inner
///   sticks out there; `margin_unless_at(side, inner, outer, room, roots ...)`, not asked where a root
///   leaves less room and the inner is covered; `margin_of_line(side, s, s, t, outer)`;
///   `map_gap(outline, others ...)`, 0 where they overlap; `edges_gap(outline, sides, others ...)`
///   from its edges on these sides; `lowest(outline)`, its least t.
/// - On the faces: `begins_on(side, x, solid)`, the least z at which the solid lies just inside that face
///   of the ridge; `draws_back(side)`, the most by which the face, apical of the unharmed crest, lies
///   inward of its most prominent point above; `hollow(side)`, the most by which it lies inward of a
///   straight line from itself at z = 0 to itself anywhere further apical; `share_between(root, near)`,
///   the share of the root's axis, from z = 0 to the apex, at which both faces lie within `near` of the
///   root, looking along y.
/// - Of the implant: `platform(implant)`, z of its platform's middle; `depth_at(z)`, the depth at which its
///   axis passes a level, within its length; `behind_line(implant, a, b)`, how far its platform's most
///   facial point lies oral of the line that joins the most facial points of two bodies (of a root at
///   z = 0, of an implant at its platform), along y; `least_wall(side, implant, from, to)`, the least over
///   these depths, on the implant's most facial or oral line, of bone or socket along y from there to the
///   face (0 where there is no bone on that way, minus how far the line stands out of the face).
/// - `run(solid, implant, point)`: along +y from where the implant ends there, the length of the solid that
///   begins there, to the facial face at most; `within(solid, point)`, 1 in it, else 0;
///   `layer_at(thickness, fall, x, z, outlines ...)`: what `layer` sums, at one place; `joined(a, b)`: the sum,
///   or 0 where a is 0.
/// - `lowest_edge(outline)`, its greatest t; `breadth(outline)`, its extent along s;
///   `base_over_margin(flap)`, `length_over_base(flap)`: widths at the ends as if straight through those
///   at a quarter and three quarters of the height; `to_marks(flap, sides, orifice, bodies ...)`: from the
///   coronal end of the edges on these sides to the nearest middle of a body or of a space between two,
///   along s.
/// - Models, as the documentation of the measurements states them: `largest_grain(gap)`, `torque(implant,
///   solid)`, `travel_to_close(socket, gap)`, `travel(socket, gap)`, `closing_force(travel)`. They read `chosen` and `quantities`.
/// - `section_area(solid, two points)`: area of the section with the plane through both, along x.
/// - `least(a, b, ...)`, `most(a, b, ...)`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Recipe {
    /// *synthetic, not for treatment*.
    pub notice: &'static str,
    /// Version of this form.
    pub form: u32,
    /// Title of the case.
    pub title: String,
    /// Two digits of ISO 3950.
    pub tooth: u8,
    /// Whether x of meshes and points is mirrored (quadrants 2 and 4). Outlines on the map are not.
    pub mirrored: bool,
    /// What the axes are.
    pub frame: &'static str,
    /// How far the mesh of a round body departs from the body at most, mm.
    pub chord_error: f64,
    /// Corners of each section of a round body; its mesh holds the sections in order, then two poles.
    pub around: usize,
    /// Meshes.
    pub primitives: Vec<Primitive>,
    /// Solids built from them.
    pub bodies: Vec<Body>,
    /// Outlines on the map.
    pub outlines: Vec<MapOutline>,
    /// Profiles and crest lines.
    pub lines: Lines,
    /// Numbers that no mesh holds.
    pub quantities: Vec<Quantity>,
    /// What was chosen of what the models read, by key.
    pub chosen: BTreeMap<&'static str, &'static str>,
    /// The implant's side, where there is one.
    pub implant: Option<Side>,
    /// Measurements.
    pub measurements: Vec<Entry>,
}

/// One mesh.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Primitive {
    /// As expressions name it.
    pub name: String,
    /// In the same folder.
    pub file: String,
    /// In words.
    pub what: String,
}

/// A solid with a name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Body {
    /// As expressions name it.
    pub name: &'static str,
    /// Over primitives.
    pub expression: String,
}

/// An outline on the map, millimetres, anticlockwise in (s, t).
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapOutline {
    /// As expressions name it.
    pub name: String,
    /// Corners.
    pub points: Vec<[f64; 2]>,
}

/// The side of the implant's outer cone.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Side {
    /// Middle of the platform.
    pub platform: [f64; 3],
    /// Unit vector from platform to apex.
    pub axis: [f64; 3],
    /// Along the axis, mm.
    pub length: f64,
    /// Radius at the platform and at the apex, mm.
    pub radii: [f64; 2],
}

/// A measurement.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Entry {
    /// What is measured.
    pub name: &'static str,
    /// How it follows from the primitives.
    pub expression: String,
    /// As the engine measures it; null for a margin that is not asked on that side.
    pub value: Option<f64>,
    /// Of the value.
    pub unit: &'static str,
}

impl Side {
    pub(super) fn of(cone: &Cone, mirrored: bool) -> Self {
        let sign = if mirrored { -1.0 } else { 1.0 };
        let (at, way) = (cone.frame.origin, cone.frame.along);
        Self {
            platform: [sign * at.x, at.y, at.z],
            axis: [sign * way.x, way.y, way.z],
            length: cone.length,
            radii: [cone.near, cone.far],
        }
    }
}

/// What is written for one case and plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Export {
    /// File names and their bytes.
    pub meshes: Vec<(String, Vec<u8>)>,
    /// Goes into `recipe.json`.
    pub recipe: Recipe,
}

/// Everything that an outside program needs to measure this case, and this plan on it, for itself.
/// x is mirrored in quadrants 2 and 4. The names of files are those of the primitives.
#[must_use]
pub fn export(case: &Case, plan: Option<&Plan>) -> Export {
    let nothing = Plan::default();
    let plan = plan.unwrap_or(&nothing);
    let m = Measurements::of(case, plan);
    let mirrored = case.site.tooth.is_mirrored();
    let mut parts = of_site(&case.site);
    parts.extend(of_plan(&case.site, plan, m.drilled()));
    let names = parts.iter().map(|part| part.name.clone()).collect();
    let primitives = parts
        .iter()
        .map(|part| Primitive {
            name: part.name.clone(),
            file: format!("{}.ply", part.name),
            what: part.what.clone(),
        })
        .collect();
    let writer = Writer::new(&m, names);
    let recipe = Recipe {
        notice: NOTICE,
        form: 2,
        title: case.title.clone(),
        tooth: case.site.tooth.iso(),
        mirrored,
        frame: "millimetres; x distal (mesial where mirrored), y facial, z apical of the reference crest",
        chord_error: CHORD_ERROR,
        around: AROUND,
        primitives,
        bodies: writer.bodies(),
        outlines: outlines(&m),
        lines: Lines::of(case),
        quantities: quantities(&m),
        chosen: chosen(plan),
        implant: m.drilled().map(|cone| Side::of(cone, mirrored)),
        measurements: writer.entries(),
    };
    let meshes = parts
        .into_iter()
        .map(|Part { name, what, mesh }| {
            let mesh = if mirrored { mesh.mirrored() } else { mesh };
            (format!("{name}.ply"), mesh.ply(&what))
        })
        .collect();
    Export { meshes, recipe }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind, Tooth, Wall};
    use crate::geometry::Outline;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;
    use std::collections::BTreeSet;

    /// The plain trial with a facial defect and a membrane over it, at this tooth.
    fn trial(iso: u8) -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.tooth = Tooth::new(iso).unwrap();
        trial.case.site.defects.push(Defect {
            wall: Wall::Facial,
            kind: DefectKind::DehiscenceU,
            outline: Outline::new(vec![[-20, 0], [20, 0], [15, 60], [-15, 60]]).unwrap(),
        });
        trial.keys(&[
            ("flap-design", "trapezoidal"),
            ("papillae", "raised"),
            ("periosteal-release", "yes"),
            ("membrane", "native-collagen"),
            ("trim", "rounded"),
            ("fold", "over-orifice"),
            ("fixation", "tucked"),
            ("act-order", "membrane-first"),
            ("needle-path", "crest-outward"),
        ]);
        trial.number(Decision::ContourLayer, 15);
        trial.outline(Decision::FlapOutline, &[[-80, 0], [80, 0], [95, 120], [-95, 120]]);
        trial.outline(Decision::MembraneOutline, &[[-50, -110], [50, -110], [50, 90], [-50, 90]]);
        trial
    }

    fn of(trial: &Trial) -> Export {
        export(&trial.case, Some(&trial.plan()))
    }

    /// Words of an expression that are names and no function's.
    fn names(expression: &str) -> Vec<&str> {
        let is_word = |c: char| c.is_ascii_alphanumeric() || c == '_';
        expression
            .split_inclusive(|c: char| !is_word(c))
            .filter(|word| !word.ends_with('('))
            .map(|word| word.trim_end_matches(|c: char| !is_word(c)))
            .filter(|word| word.starts_with(|c: char| c.is_ascii_alphabetic()))
            .collect()
    }

    #[test]
    fn every_part_is_closed_and_right_side_out() {
        let trial = trial(11);
        let plan = trial.plan();
        let cone = Measurements::of(&trial.case, &plan).drilled().copied();
        let mut parts = of_site(&trial.case.site);
        parts.extend(of_plan(&trial.case.site, &plan, cone.as_ref()));
        for part in parts {
            assert_eq!(part.mesh.closed(), Ok(()), "{}", part.name);
            assert!(part.mesh.volume() > 0.0, "{}", part.name);
        }
    }

    #[test]
    fn expressions_name_only_what_is_there() {
        let recipe = of(&trial(11)).recipe;
        let mut known: BTreeSet<&str> =
            ["nothing", "mesial", "distal", "apical", "coronal", "mesial_distal"].into();
        known.extend(["facial", "oral"]);
        known.extend(recipe.quantities.iter().map(|one| one.name));
        known.extend(recipe.primitives.iter().map(|one| one.name.as_str()));
        known.extend(recipe.bodies.iter().map(|one| one.name));
        known.extend(recipe.outlines.iter().map(|one| one.name.as_str()));
        let bodies = recipe.bodies.iter().map(|body| body.expression.as_str());
        let all = recipe.measurements.iter().map(|entry| entry.expression.as_str());
        for expression in all.chain(bodies) {
            for name in names(expression) {
                assert!(known.contains(name), "{name} in {expression}");
            }
        }
        assert!(recipe.measurements.len() > 40);
    }

    #[test]
    fn every_file_says_that_it_is_synthetic() {
        let export = of(&trial(11));
        assert_eq!(export.recipe.notice, NOTICE);
        for (name, bytes) in &export.meshes {
            let head = &bytes[..200.min(bytes.len())];
            assert!(head.windows(NOTICE.len()).any(|w| w == NOTICE.as_bytes()), "{name}");
        }
    }

    #[test]
    fn in_the_upper_left_x_is_mirrored_and_no_measurement_changes() {
        let (right, left) = (of(&trial(11)), of(&trial(21)));
        assert!(!right.recipe.mirrored && left.recipe.mirrored);
        let (a, b) = (right.recipe.implant.unwrap(), left.recipe.implant.unwrap());
        assert_eq!((a.platform[0], a.axis[0]), (-b.platform[0], -b.axis[0]));
        for (one, other) in right.recipe.measurements.iter().zip(&left.recipe.measurements) {
            assert_eq!((one.name, one.value), (other.name, other.value));
        }
        assert_ne!(right.meshes[0].1, left.meshes[0].1);
    }

    #[test]
    fn without_a_plan_only_the_site_is_measured() {
        let export = export(&trial(11).case, None);
        assert!(export.recipe.implant.is_none());
        let has = |name: &str| export.recipe.measurements.iter().any(|entry| entry.name == name);
        assert!(has("socket-volume") && has("wall-volume") && !has("gap-volume"));
    }
}
