//! What the engine works out in closed form, for a program that integrates to try.

use super::varied::Draws;
use engine::anatomy::{Map, Profile, RootBody, Wall, implant_cone};
use engine::geometry::{P2, P3, ellipse};
use engine::measure::torque_model;
use engine::plan::choices::{Alternative, Preparation};
use engine::rules::trial::Trial;
use engine::units::{Deg, Mm};
use serde_json::{Value, json};

/// Forms of this seed: what, of what, and the engine's value.
pub fn forms(seed: u64) -> Vec<Value> {
    let mut draws = Draws::of(seed);
    let (a, b) = (draws.between(0.2, 5.0), draws.between(0.2, 5.0));
    let mut forms = vec![
        json!({ "what": "ellipse-perimeter", "half": [a, b], "value": ellipse::perimeter(a, b) }),
        json!({ "what": "ellipse-area", "half": [a, b], "value": ellipse::area(a, b) }),
    ];
    forms.extend(of_root(&mut draws));
    forms.extend(of_cone(&mut draws));
    forms.extend(of_map(&mut draws));
    forms.push(of_torque(&mut draws));
    forms
}

fn of_root(draws: &mut Draws) -> Vec<Value> {
    let body = RootBody {
        x: Mm::ZERO,
        y: Mm::ZERO,
        tilt: Deg::new(draws.between(-20.0, 20.0)),
        tip: Deg::ZERO,
        length: Mm::new(draws.between(8.0, 17.0)),
        neck: Mm::new(draws.between(1.0, 3.0)),
        half_md: Mm::new(draws.between(1.5, 3.5)),
        half_fo: Mm::new(draws.between(2.2, 4.2)),
        taper: draws.between(0.1, 0.5),
    };
    let stack = body.stack();
    let level = draws.between(-2.0, 0.95 * body.length.get());
    let knots: Vec<[f64; 2]> = stack.knots().iter().map(|knot| [knot.at, knot.share]).collect();
    let shape = json!({
        "half": [stack.across, stack.facial],
        "knots": knots,
        "apex": stack.last_level(),
        "from": level,
    });
    vec![
        json!({ "what": "root-volume", "body": shape, "value": stack.volume_beyond(level) }),
        json!({ "what": "root-area", "body": shape, "value": stack.area_beyond(level) }),
        json!({
            "what": "taper",
            "q": body.taper,
            "length": body.length.get(),
            "knots": knots,
            "value": 0.0,
        }),
    ]
}

fn of_cone(draws: &mut Draws) -> Vec<Value> {
    let (diameter, length) = (draws.between(3.0, 6.0), draws.between(8.0, 16.0));
    let at = P3::new(0.0, 0.0, 0.0);
    let cone = implant_cone(at, Mm::new(diameter), Mm::new(length), Deg::new(9.0), Deg::new(-4.0));
    let (from, to) = (0.2 * length, draws.between(0.3, 1.0) * length);
    let shape = json!({ "diameter": diameter, "length": length, "from": from, "to": to });
    vec![
        json!({ "what": "cone-volume", "cone": shape, "value": cone.volume() }),
        json!({ "what": "cone-side", "cone": shape, "value": cone.lateral_area() }),
        json!({
            "what": "cone-side-between",
            "cone": shape,
            "value": cone.lateral_area_within(from, to),
        }),
    ]
}

/// Seating torque from the moment of what is held, density and bed.
fn of_torque(draws: &mut Draws) -> Value {
    let (moment, density) = (draws.between(5.0, 400.0), draws.between(150.0, 1300.0));
    let bed = Preparation::ALL[draws.whole(0, 2) as usize];
    json!({
        "what": "seating-torque",
        "moment": moment,
        "density": density,
        "bed": bed.key(),
        "value": torque_model(moment, density, bed),
    })
}

/// Developed lengths: t of a level on a bent wall.
fn of_map(draws: &mut Draws) -> Vec<Value> {
    let mut ridge = Trial::plain().case.site.ridge;
    let levels = [-8.0, 0.0, 4.5, 9.0, 13.0, 30.0];
    let mut wall = |side: f64| Profile {
        knots: levels.map(|z| P2::new(z, side * draws.between(3.0, 9.0))).to_vec(),
    };
    (ridge.facial, ridge.oral) = (wall(1.0), wall(-1.0));
    ridge.crest.oral_offset = Mm::new(draws.between(-1.5, 1.5));
    let map = Map::of(&ridge);
    let knots = |profile: &Profile| -> Vec<[f64; 2]> {
        profile.knots.iter().map(|knot| [knot.x, knot.y]).collect()
    };
    let level = draws.between(2.0, 25.0);
    let walls = json!({
        "facial": knots(&ridge.facial),
        "oral": knots(&ridge.oral),
        "drop": ridge.crest.oral_offset.get(),
        "level": level,
    });
    vec![
        json!({ "what": "facial-t", "walls": walls, "value": map.t(Wall::Facial, level) }),
        json!({ "what": "oral-t", "walls": walls, "value": map.t(Wall::Oral, level) }),
    ]
}
