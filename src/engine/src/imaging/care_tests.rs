//! What films show of care: a socket that heals, an implant with its crown, and tubes set badly.

use super::tests::{lit, plain};
use super::*;
use crate::chart::Case;
use crate::geometry::P3;
use crate::plan::Plan;
use crate::rules::trial::Trial;
use crate::units::{Deg, Mm};
use materials::Material;

/// A place in the socket, half way down.
const MIDDLE: P3 = P3::new(0.0, 0.0, 6.0);

fn extracted() -> Plan {
    Plan { extraction: Trial::plain().plan().extraction, ..Plan::default() }
}

fn at(case: &Case, plan: &Plan, time: Time) -> Scene {
    scene_at(case, plan, time, [9; 32]).evenly()
}

#[test]
fn a_fresh_socket_is_dark_and_a_healed_one_looks_like_the_bone_beside_it() {
    let (case, plan, aim) = (plain(), extracted(), Aim::usual(&plain().site));
    let shown = |time, place| lit(&case, &at(&case, &plan, time), &aim, place);
    let beyond = P3 { z: 16.0, ..MIDDLE };
    let [fresh, healed] = [Time::Operation, Time::FollowUp].map(|time| shown(time, MIDDLE));
    assert!(fresh > 1.1 * healed, "{fresh} {healed}");
    // The jaw is thicker deeper down, so a little more gets through here.
    let bone = shown(Time::FollowUp, beyond);
    assert!((healed / bone - 1.0).abs() < 0.25, "{healed} {bone}");
}

#[test]
fn lamina_dura_outlasts_its_tooth_and_is_gone_when_the_socket_has_healed() {
    let case = plain();
    let root = case.site.socket.as_one().stack();
    let beside = P3::new(root.across * root.share(6.0) + LIGAMENT + 0.5 * LAMINA, 0.0, 6.0);
    let lies = |plan: &Plan, time| at(&case, plan, time).material(beside);
    assert_eq!(lies(&Plan::default(), Time::Operation), Material::Cortical);
    assert_eq!(lies(&extracted(), Time::Operation), Material::Cortical);
    assert_eq!(lies(&extracted(), Time::FollowUp), Material::Spongiosa);
}

#[test]
fn a_socket_left_to_itself_fills_short_of_its_crest_and_a_filled_one_up_to_it() {
    let (trial, case) = (Trial::plain(), plain());
    let under_crest = P3::new(0.0, 0.0, 0.5);
    let left = at(&case, &extracted(), Time::FollowUp);
    assert_eq!(left.material(under_crest), Material::Soft);
    assert_eq!(left.material(P3 { z: 2.0, ..under_crest }), Material::Spongiosa);
    let plan = trial.plan();
    let grafted = Plan { implant: None, seating: None, ..plan.clone() };
    let kept = at(&case, &grafted, Time::FollowUp);
    let filling = materials::graft(plan.graft_laid().unwrap().material).unwrap();
    assert_eq!(kept.material(under_crest), filling);
    // Nothing stands above the crest any more, and gum has closed over it.
    assert_eq!(kept.material(P3 { z: -0.3, ..under_crest }), Material::Soft);
}

#[test]
fn an_implant_stays_where_it_was_and_carries_its_crown_at_follow_up() {
    let (case, plan) = (plain(), Trial::plain().plan());
    let seated = plan.implant_in_place().unwrap();
    let body = P3::new(seated.distal.get(), seated.facial.get(), seated.depth.get() + 5.0);
    let edge = case.site.crown.edge;
    let crown = P3 { x: edge.x + 2.0, z: edge.z + 3.0, ..edge };
    let [now, later] = [Time::Operation, Time::FollowUp].map(|time| at(&case, &plan, time));
    assert_eq!([&now, &later].map(|scene| scene.material(body)), [Material::Titanium; 2]);
    assert_eq!(later.material(crown), Material::Ceramic);
    assert_ne!(now.material(crown), Material::Ceramic);
    let unrestored =
        at(&case, &Plan { later: crate::plan::Later::NONE, ..plan.clone() }, Time::FollowUp);
    assert_ne!(unrestored.material(crown), Material::Ceramic);
    let aim = Aim::usual(&case.site);
    assert!(lit(&case, &later, &aim, crown) < 0.05 * lit(&case, &now, &aim, crown));
}

/// Length of an implant on a film: of the places along its shadow through which next to nothing comes.
fn shown(vertical: f64, lean: f64) -> f64 {
    let (case, mut plan) = (plain(), Trial::plain().plan());
    plan.seating = None;
    let scene = at(&case, &plan, Time::Operation);
    let (vertical, lean) = (Deg::new(vertical), Deg::new(lean));
    let aim = Aim { vertical, lean, object: Mm::new(4.0), ..Aim::usual(&case.site) };
    let view = View::of(&case.site, &aim);
    let seated = crate::measure::cone_of(plan.implant_in_place().unwrap());
    let along = |level: f64| seated.frame.origin + seated.frame.along * level;
    let [from, to] = [-3.0, seated.length + 3.0].map(|level| view.place(along(level)).unwrap());
    let steps = 2000;
    let white = (0..=steps).filter(|step| {
        let way = f64::from(*step) / f64::from(steps);
        let [column, row] = [0, 1].map(|axis| from[axis] + way * (to[axis] - from[axis]));
        let (ray, length) = view.ray(column, row);
        left(&scene, &ray, length) < 0.12
    });
    view.straight(from, to).get() * white.count() as f64 / f64::from(steps)
}

#[test]
fn too_steep_a_beam_shortens_what_the_film_shows_and_too_flat_a_one_lengthens_it() {
    let seated = Trial::plain().plan().implant_in_place().unwrap().length.get();
    let parallel = shown(0.0, 0.0);
    assert!((parallel / seated - 1.0).abs() < 0.08, "{parallel} {seated}");
    // A receptor that leans by 40 degrees: half of it keeps the length.
    let [flat, right, steep] = [4.0, 20.0, 36.0].map(|vertical| shown(vertical, 40.0));
    assert!((right / seated - 1.0).abs() < 0.12, "{right} {seated}");
    assert!(flat > 1.15 * right && steep < 0.9 * right, "{flat} {right} {steep}");
}

/// What a caliper reads from the ligament out into the gum, at a level, over a facial plate of a
/// thickness: what it is, and what it looks like.
fn plate(thickness: f64) -> (f64, Option<f64>) {
    let mut case = plain();
    let root = case.site.socket.as_one().stack();
    let level = 5.0;
    let out = |z: f64| root.frame.origin.y + root.facial * root.share(z);
    for knot in &mut case.site.ridge.facial.knots {
        knot.y = out(level) + thickness;
    }
    let scene = at(&case, &Plan::default(), Time::Operation);
    let mut noise = Noise::of([9; 32], 0);
    let setting = Setting::usual(Slice::AcrossArch);
    let taken = section(&scene, &case.site, &setting, &mut noise.clone(), &mut noise);
    let quiet = Section { grey: taken.hounsfield.clone(), ..taken };
    let tip = |y: f64| {
        let [column, row] = quiet.place(P3::new(0.0, y, level)).map(|place| place + 0.5);
        crate::geometry::P2::new(column * quiet.voxel, row * quiet.voxel)
    };
    let (inner, outer) = (out(level) + 0.5 * LIGAMENT, out(level) + thickness + 1.5);
    let read = quiet.caliper(tip(inner), tip(outer));
    assert!((read.straight.get() - (outer - inner)).abs() < 1e-9);
    // The socket's wall is the plate less the ligament.
    (thickness - LIGAMENT, read.apparent.map(Mm::get))
}

#[test]
fn a_thick_facial_plate_reads_true_on_a_section_and_a_thin_one_does_not() {
    for thickness in [1.4, 1.8, 2.2] {
        let (truth, apparent) = plate(thickness);
        let apparent = apparent.unwrap();
        assert!((apparent - truth).abs() < 0.2, "{truth} looks {apparent}");
    }
    // Below the blur's own width a plate reads more than half too thick, or not at all.
    for thickness in [0.35, 0.42] {
        let (truth, apparent) = plate(thickness);
        assert!(apparent.is_none_or(|looks| looks > 1.5 * truth), "{truth} looks {apparent:?}");
    }
}
