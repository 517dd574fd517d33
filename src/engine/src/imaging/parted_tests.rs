//! Teeth with several roots, root by root.

use super::tests::{held_to_a_march, lit, nested};
use super::*;
use crate::anatomy::{Jaw, Socket, Tooth};
use crate::cases::parted_socket;
use crate::chart::{Address, Case, Sex};
use crate::geometry::{P2, P3, Stack, V3};
use crate::plan::Plan;
use crate::rules::trial::Trial;
use crate::units::Deg;
use materials::Material;

/// Lower molars, upper molars and an upper premolar, in ridges with room for them.
const TEETH: [u8; 5] = [46, 37, 16, 27, 14];

fn case(iso: u8) -> Case {
    let mut case = Trial::plain().case;
    let site = &mut case.site;
    site.tooth = Tooth::new(iso).unwrap();
    let address = Address { format: 1, generator: 1, seed: u64::from(iso), attempt: 0 };
    site.socket = parted_socket(address, site.tooth, Sex::Female, 45).unwrap();
    let wide = |y: f64| vec![P2::new(-8.0, y), P2::new(30.0, y)];
    site.ridge.facial.knots = wide(8.5);
    site.ridge.oral.knots = wide(-9.0);
    case
}

fn furcation(case: &Case) -> f64 {
    case.site.socket.furcation().unwrap().get()
}

/// The roots.
fn roots(case: &Case) -> Vec<Stack> {
    let Socket::Parted(parted) = &case.site.socket else { panic!("several roots") };
    parted.roots.as_slice().iter().map(|root| root.stack(parted.trunk.furcation)).collect()
}

/// Places in the roots so far below the furcation, the middle being 0 and the distal surface 1.
fn places(case: &Case, below: f64, off: f64) -> Vec<P3> {
    let across = |root: &Stack| off * root.across * root.share(below);
    roots(case).iter().map(|root| root.frame.point(V3::new(across(root), 0.0, below))).collect()
}

/// Middles of the roots, so far below the furcation.
fn axes(case: &Case, below: f64) -> Vec<P3> {
    places(case, below, 0.0)
}

fn mean(of: &[P3]) -> P3 {
    let count = of.len() as f64;
    of.iter().fold(P3::new(0.0, 0.0, 0.0), |sum, at| {
        P3::new(sum.x + at.x / count, sum.y + at.y / count, sum.z + at.z / count)
    })
}

#[test]
fn between_the_roots_lies_bone_and_in_each_root_its_canal() {
    for iso in TEETH {
        let case = case(iso);
        let scene = scene(&case, &Plan::default(), [3; 32]);
        // Well below the furcation, where even close roots stand apart.
        let axes = axes(&case, 4.5);
        for at in &axes {
            assert_eq!(scene.material(*at), Material::Soft, "{iso}: a canal at {at:?}");
        }
        for at in places(&case, 4.5, 0.7) {
            assert_eq!(scene.material(at), Material::Dentine, "{iso}: {at:?}");
        }
        let between = scene.material(mean(&axes));
        let bone = [Material::Spongiosa, Material::Cortical];
        assert!(bone.contains(&between), "{iso}: {between:?}");
        let trunk = P3::new(1.6, 0.0, furcation(&case) - 0.8);
        assert_eq!(scene.material(trunk), Material::Dentine, "{iso}");
    }
}

#[test]
fn the_septum_of_a_lower_molar_shows_between_its_roots_and_is_hidden_behind_a_palatal_root() {
    let contrast = |iso: u8| {
        let case = case(iso);
        let aim = Aim::usual(&case.site);
        let scene = scene(&case, &Plan::default(), [3; 32]).evenly();
        let axes = axes(&case, 4.0);
        // The first two stand beside each other along the arch.
        let beside = mean(&axes[..2]);
        let root = places(&case, 4.0, 0.5)[0];
        lit(&case, &scene, &aim, beside) / lit(&case, &scene, &aim, root)
    };
    let (lower, upper) = (contrast(46), contrast(16));
    assert!(lower > 1.12, "{lower}");
    assert!(upper < lower, "{upper} {lower}");
}

#[test]
fn an_upper_premolar_s_two_roots_lie_over_each_other_until_the_beam_is_turned() {
    let case = case(14);
    let scene = scene(&case, &Plan::default(), [3; 32]).evenly();
    let axes = axes(&case, 6.0);
    let apart = |turn: f64| {
        let view =
            View::of(&case.site, &Aim { horizontal: Deg::new(turn), ..Aim::usual(&case.site) });
        let [a, b] = [axes[0], axes[1]].map(|at| view.place(at).unwrap());
        view.pitch * (a[0] - b[0]).abs()
    };
    assert!(apart(0.0) < 1.0 && apart(20.0) > apart(0.0) + 0.8, "{} {}", apart(0.0), apart(20.0));
    assert_eq!(scene.material(axes[1]), Material::Soft);
}

#[test]
fn a_socket_of_several_roots_keeps_its_septum_when_the_tooth_is_out() {
    let case = case(46);
    let plan = Plan { extraction: Trial::plain().plan().extraction, ..Plan::default() };
    let scene = scene(&case, &plan, [3; 32]);
    let axes = axes(&case, 4.5);
    for at in &axes {
        assert_eq!(scene.material(*at), Material::Soft, "clot");
    }
    assert_ne!(scene.material(mean(&axes)), Material::Soft);
    let orifice = P3::new(0.0, 0.0, -0.4);
    assert_eq!(scene.material(orifice), Material::Air);
}

#[test]
fn films_of_several_roots_agree_with_a_march_too() {
    for iso in TEETH {
        let case = case(iso);
        let plan = if iso == 46 { Trial::plain().plan() } else { Plan::default() };
        let scene = scene(&case, &plan, [3; 32]);
        let aim = Aim { horizontal: Deg::new(8.0), ..Aim::usual(&case.site) };
        let view = View::of(&case.site, &aim);
        let [columns, rows] = view.pixels.map(f64::from);
        for i in 0..12 {
            let turn = f64::from(i);
            let way = |rate: f64| 0.5 + 0.4 * libm::sin(rate * turn + 0.3);
            let (ray, length) = view.ray(columns * way(1.0), rows * way(1.7));
            held_to_a_march(&scene, &ray, length, &format!("{iso} {i}"));
        }
    }
}

#[test]
fn every_root_lies_within_its_lamina_and_every_canal_within_its_root() {
    for iso in TEETH {
        let case = case(iso);
        let scene = scene(&case, &Plan::default(), [3; 32]);
        let asked = nested(&scene, 300, &iso.to_string());
        assert!(asked > 1500, "{iso}: {asked}");
        let roots = scene.layers().iter().filter(|layer| layer.name == "lamina dura").count();
        let own = if case.site.tooth.jaw() == Jaw::Maxilla && iso != 14 { 4 } else { 3 };
        assert!(roots > own, "{iso}: {roots}");
    }
}
