//! Films and sections with the layers that they were summed through, for a program that sums them
//! itself.

use super::{parted, varied};
use engine::chart::Case;
use engine::geometry::{Frame, P2, P3, Stack, V3};
use engine::imaging::materials::{ALL, Beam, ROWS};
use engine::imaging::{
    Aim, Hewn, Layer, Noise, Scene, Setting, Shape, Slice, Time, View, key, left, phantom, scene,
    scene_at, section,
};
use engine::plan::Plan;
use engine::units::{Deg, Mm};
use serde_json::{Map, Value, json};

/// Rays of each film.
const RAYS: u32 = 12;

/// Films of varied sites, of teeth with several roots, and at follow-up.
pub fn films(single: u64, several: u64) -> Vec<Value> {
    let ones = (1..=single).map(|seed| film(seed, &varied::pair(seed)));
    ones.chain((1..=several).map(|seed| film(seed, &parted::pair(seed)))).collect()
}

/// The film of a pair, every fourth of them at follow-up. Marrow bone is even: what varies in it is
/// drawn, not geometry.
fn film(seed: u64, (case, plan): &(Case, Plan)) -> Value {
    let time = if seed.is_multiple_of(4) { Time::FollowUp } else { Time::Operation };
    let scene = scene_at(case, plan, time, key(case)).evenly();
    let mut draws = varied::Draws::of(seed);
    let mut angle = |most: f64| Deg::new(draws.between(-most, most));
    let (vertical, horizontal, lean) = (angle(15.0), angle(15.0), angle(20.0));
    let aim = Aim { vertical, horizontal, lean, ..Aim::usual(&case.site) };
    let view = View::of(&case.site, &aim);
    let [columns, rows] = view.pixels;
    let rays: Vec<Value> = (0..RAYS)
        .map(|turn| {
            let place = |turn: u32, of: u32| f64::from((turn * 7919) % of);
            let (ray, length) = view.ray(place(turn, columns), place(3 * turn + 1, rows));
            let d = ray.direction;
            json!({
                "direction": [d.x, d.y, d.z],
                "length": length,
                "left": left(&scene, &ray, length),
            })
        })
        .collect();
    json!({
        "seed": seed,
        "depth": scene.depth(),
        "focus": point(view.focus),
        "coefficients": coefficients(&scene, Beam::Intraoral),
        "layers": layers(&scene),
        "rays": rays,
    })
}

/// A line of a section through the jaw apical of everything in it, where the jaw is the same at every
/// x and nearly the same at every z, so that the blur runs one way.
pub fn blurred(seed: u64) -> Value {
    let (mut case, plan) = varied::pair(seed);
    case.site.vital = engine::anatomy::Vital::default();
    let scene = scene(&case, &plan, key(&case)).evenly();
    let mut draws = varied::Draws::of(seed);
    let blur = draws.between(0.148, 0.213);
    let setting =
        Setting { blur: Mm::new(blur), voxel: Mm::new(0.1), ..Setting::usual(Slice::AcrossArch) };
    let noise = || Noise::of(key(&case), 0);
    let taken = section(&scene, &case.site, &setting, &mut noise(), &mut noise());
    let [columns, rows] = taken.pixels;
    let deep = [0, rows - 1].into_iter().max_by(|a, b| {
        let z = |row: &u32| taken.point(0.0, f64::from(*row)).z;
        z(a).total_cmp(&z(b))
    });
    let row = deep.unwrap_or(0);
    let places: Vec<f64> =
        (0..columns).map(|column| taken.point(f64::from(column), f64::from(row)).y).collect();
    let first = (row * columns) as usize;
    json!({
        "seed": seed,
        "blur": blur,
        "z": taken.point(0.0, f64::from(row)).z,
        "y": places,
        "hounsfield": taken.hounsfield[first..first + columns as usize],
        "coefficients": coefficients(&scene, Beam::ConeBeam),
        "water": engine::imaging::materials::WATER[1] / 10.0,
        "layers": layers(&scene),
    })
}

/// The blurs (full widths at half height) and the widths of plates at which their peaks are compared.
const BLURS: [f64; 3] = [0.35, 0.40, 0.50];
const WIDTHS: [f64; 6] = [0.2, 0.3, 0.5, 0.8, 1.0, 1.5];

/// A line across plates of known width in soft tissue, blurred.
pub fn plates() -> Vec<Value> {
    let (case, _) = varied::pair(1);
    let plate = |fwhm: f64, width: f64| {
        let blur = fwhm / 2.354_820_045;
        let scene = phantom::plate(Mm::new(width));
        let voxel = Mm::new(0.1);
        let setting = Setting { blur: Mm::new(blur), voxel, ..Setting::usual(Slice::AcrossArch) };
        let noise = || Noise::of(key(&case), 0);
        let taken = section(&scene, &case.site, &setting, &mut noise(), &mut noise());
        let [columns, rows] = taken.pixels;
        let row = rows / 2;
        let off = |column: u32| taken.point(f64::from(column), f64::from(row)).y - phantom::MIDDLE;
        let first = (row * columns) as usize;
        json!({
            "fwhm": fwhm,
            "blur": blur,
            "width": width,
            "levels": hounsfield(&scene),
            "off": (0..columns).map(off).collect::<Vec<f64>>(),
            "hounsfield": taken.hounsfield[first..first + columns as usize],
        })
    };
    BLURS.iter().flat_map(|blur| WIDTHS.map(|width| plate(*blur, width))).collect()
}

/// Name and coefficient of each material, per millimetre; air first.
fn coefficients(scene: &Scene, beam: Beam) -> Vec<(&'static str, f64)> {
    let own = scene.coefficients(beam);
    ALL.into_iter().zip(ROWS).map(|(material, row)| (row.0, own.of(material))).collect()
}

/// Name and Hounsfield number of each material.
fn hounsfield(scene: &Scene) -> Map<String, Value> {
    let own = scene.coefficients(Beam::ConeBeam);
    let named = ALL.into_iter().zip(ROWS);
    named.map(|(one, row)| (row.0.to_owned(), json!(own.hounsfield(own.of(one))))).collect()
}

fn layers(scene: &Scene) -> Vec<Value> {
    scene.layers().iter().map(layer).collect()
}

fn layer(layer: &Layer) -> Value {
    let named = ALL.into_iter().zip(ROWS);
    let only: Vec<&str> =
        named.filter(|(material, _)| layer.only.has(*material)).map(|(_, row)| row.0).collect();
    json!({
        "name": layer.name,
        "only": only,
        "to": ROWS[layer.to as usize].0,
        "shape": shape(&layer.shape),
    })
}

fn shape(shape: &Shape) -> Value {
    match shape {
        Shape::Ridge(strip) => json!({
            "kind": "ridge",
            "facial": points(&strip.facial),
            "oral": points(&strip.oral),
            "crest": points(&strip.crest),
            "drop": strip.drop,
            "share": points(&strip.share),
            "floor": strip.floor,
        }),
        Shape::Root(stack) => root(stack, None),
        Shape::Below(stack, level) => root(stack, Some(("below", *level))),
        Shape::Above(stack, level) => root(stack, Some(("above", *level))),
        Shape::Crown(crown) => hewn(crown),
        Shape::Tube(tube) => json!({
            "kind": "tube",
            "ends": tube.ends.map(point),
            "radius": tube.radius,
        }),
        Shape::Window(window) => json!({
            "kind": "window",
            "wall": window.wall,
            "shadow": points(&window.shadow),
            "plane": window.plane,
        }),
        Shape::Sheet(sheet) => {
            let (facial, origin, spacing, columns, heights) = sheet.grid();
            json!({
                "kind": "sheet",
                "facial": points(facial),
                "origin": [origin.x, origin.y],
                "spacing": spacing,
                "columns": columns,
                "heights": heights,
            })
        }
        Shape::Turned(body) => json!({
            "kind": "turned",
            "frame": frame(&body.frame),
            "outline": points(body.outline()),
        }),
    }
}

fn root(stack: &Stack, part: Option<(&str, f64)>) -> Value {
    let knots: Vec<[f64; 2]> = stack.knots().iter().map(|knot| [knot.at, knot.share]).collect();
    json!({
        "kind": "root",
        "frame": frame(&stack.frame),
        "half": [stack.across, stack.facial],
        "knots": knots,
        "apex": stack.last_level(),
        "part": part,
    })
}

fn hewn(crown: &Hewn) -> Value {
    let flares: Vec<[f64; 3]> =
        crown.flares.iter().map(|flare| [flare.across, flare.facial, flare.rate]).collect();
    let facets: Vec<[f64; 4]> = crown
        .facets
        .iter()
        .map(|facet| [facet.normal.x, facet.normal.y, facet.normal.z, facet.at])
        .collect();
    json!({
        "kind": "crown",
        "frame": frame(&crown.frame),
        "ends": crown.ends,
        "flares": flares,
        "facets": facets,
    })
}

fn frame(frame: &Frame) -> Value {
    let vector = |v: V3| [v.x, v.y, v.z];
    json!({
        "origin": point(frame.origin),
        "axes": [vector(frame.across), vector(frame.facial), vector(frame.along)],
    })
}

const fn point(at: P3) -> [f64; 3] {
    [at.x, at.y, at.z]
}

fn points(list: &[P2]) -> Vec<[f64; 2]> {
    list.iter().map(|at| [at.x, at.y]).collect()
}
