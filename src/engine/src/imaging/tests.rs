use super::*;
use crate::anatomy::{Defect, DefectKind, Lesion, Neighbour, Site, Tube, Wall};
use crate::cases::{generate, proof};
use crate::chart::Case;
use crate::geometry::{Outline, P3, Ray};
use crate::plan::Plan;
use crate::rules::trial::Trial;
use crate::units::{Deg, Mm};

/// What of a plan has been carried out.
#[derive(Debug, Clone, Copy)]
enum Stage {
    Before,
    Extracted,
    Whole,
}

fn stage(case: &Case, stage: Stage) -> Plan {
    let whole = || proof(case).and_then(|proof| Plan::from_draft(&proof.draft, case).ok());
    match stage {
        Stage::Before => Plan::default(),
        Stage::Extracted => {
            Plan { extraction: Trial::plain().plan().extraction, ..Plan::default() }
        }
        Stage::Whole => whole().unwrap_or_default(),
    }
}

/// Depths of a ray between which anything lies.
pub(super) fn depths(scene: &Scene, ray: &Ray) -> [f64; 2] {
    let [oral, facial] = scene.depth();
    [facial, oral].map(|y| (y - ray.origin.y) / ray.direction.y)
}

pub(super) fn lit(case: &Case, scene: &Scene, aim: &Aim, at: P3) -> f64 {
    let view = View::of(&case.site, aim);
    let [column, row] = view.place(at).unwrap();
    let (ray, length) = view.ray(column, row);
    left(scene, &ray, length)
}

pub(super) fn plain() -> Case {
    Trial::plain().case
}

fn dehiscence(case: &mut Case) {
    let outline = Outline::new(vec![[-20, 0], [20, 0], [14, 70], [-14, 70]]).unwrap();
    case.site.defects.push(Defect { wall: Wall::Facial, kind: DefectKind::DehiscenceU, outline });
}

#[test]
fn exact_intervals_agree_with_a_march_through_the_same_scene() {
    let (mut coarse, mut count) = (0.0, 0.0);
    let mut kinds = [0; 3];
    for seed in 1..=6 {
        let case = generate(seed).unwrap();
        for (turn, at) in [Stage::Before, Stage::Extracted, Stage::Whole].into_iter().enumerate() {
            let plan = stage(&case, at);
            kinds[0] += u32::from(plan.implant_in_place().is_some());
            kinds[1] += u32::from(plan.graft_laid().is_some());
            kinds[2] += u32::from(!case.site.defects.is_empty());
            let scene = scene(&case, &plan, key(&case));
            let lean = f64::from(u8::try_from(turn).unwrap()) * 8.0;
            let aim = Aim {
                lean: Deg::new(lean),
                vertical: Deg::new(0.7 * lean),
                ..Aim::usual(&case.site)
            };
            let view = View::of(&case.site, &aim);
            for i in 0..9_u32 {
                let place = |i: u32, most: u32| f64::from((i * 7919 + 131 * most) % most);
                let (ray, length) =
                    view.ray(place(i, view.pixels[0]), place(3 * i, view.pixels[1]));
                let span = depths(&scene, &ray);
                let exact = held_to_a_march(&scene, &ray, length, &format!("{seed} {at:?} {i}"));
                coarse += (exact / marched(&scene, &ray, span, 960) - 1.0).abs();
                count += 1.0;
            }
        }
    }
    assert!(kinds.iter().all(|kind| *kind > 1), "{kinds:?}");
    assert!(coarse / count < 0.005, "{}", coarse / count);
}

/// Asks at places spread through the box of each nested layer whether it lies within the one round it;
/// how many places lay in such a layer.
pub(super) fn nested(scene: &Scene, places: u32, which: &str) -> u32 {
    let mut asked = 0;
    for layer in scene.layers() {
        let Some(around) = layer.within.and_then(|place| scene.layers().get(place)) else {
            continue;
        };
        let [low, high] = layer.bounds;
        for i in 0..places {
            let way = |rate: f64| 0.5 + 0.5 * libm::sin(rate * f64::from(i) + rate);
            let at = P3::new(
                low.x + (high.x - low.x) * way(1.0),
                low.y + (high.y - low.y) * way(1.7),
                low.z + (high.z - low.z) * way(0.37),
            );
            if layer.shape.contains(at) {
                asked += 1;
                assert!(around.shape.contains(at), "{which} {} {at:?}", layer.name);
            }
        }
    }
    asked
}

/// The exact share of the beam that is left of a ray, held to a fine march through the same scene.
pub(super) fn held_to_a_march(scene: &Scene, ray: &Ray, length: f64, which: &str) -> f64 {
    let exact = left(scene, ray, length);
    let fine = marched(scene, ray, depths(scene, ray), 12_000);
    assert!((exact / fine - 1.0).abs() < 0.005, "{which}: {exact} {fine}");
    exact
}

#[test]
fn what_is_said_to_lie_within_another_layer_does() {
    let mut asked = 0;
    for seed in 1..=16 {
        let case = generate(seed).unwrap();
        let plan = stage(&case, if seed % 2 == 0 { Stage::Whole } else { Stage::Before });
        let scene = scene(&case, &plan, key(&case));
        asked += nested(&scene, 400, &seed.to_string());
    }
    assert!(asked > 20_000, "{asked}");
}

/// How much less of the beam is left where something was, and how unevenly marrow bone lets it
/// through, both as parts of what is left.
fn shadow_and_grain(with: &Case, without: &Case, places: &[P3]) -> (f64, f64) {
    let aim = Aim::usual(&with.site);
    let scenes = [with, without].map(|case| scene(case, &Plan::default(), [9; 32]));
    let change: f64 = places
        .iter()
        .map(|at| lit(with, &scenes[0], &aim, *at) / lit(with, &scenes[1], &aim, *at) - 1.0)
        .sum();
    let beside: Vec<f64> = (0..200)
        .map(|i| {
            let turn = f64::from(i);
            let at = P3::new(2.0 * libm::sin(turn), 0.0, 15.0 + 2.0 * libm::cos(1.7 * turn));
            libm::log(lit(without, &scenes[1], &aim, at))
        })
        .collect();
    let mean = beside.iter().sum::<f64>() / 200.0;
    let grain = beside.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / 200.0;
    (change / places.len() as f64, libm::sqrt(grain))
}

#[test]
fn the_shadow_of_a_lost_facial_wall_is_no_deeper_than_the_grain_of_bone() {
    let (mut lost, whole) = (plain(), plain());
    dehiscence(&mut lost);
    let places: Vec<P3> = (0..20).map(|i| P3::new(0.5, 3.0, 1.0 + 0.25 * f64::from(i))).collect();
    let (change, grain) = shadow_and_grain(&lost, &whole, &places);
    // One plate of 0.6 to 1.2 mm among 20 mm of jaw and tooth: some, and less than twice the grain.
    assert!(change > 0.02, "{change}");
    assert!(change < 2.0 * grain, "{change} against {grain}");
}

#[test]
fn bone_lost_between_teeth_shows_many_times_deeper_than_a_lost_facial_wall() {
    let (mut lost, whole) = (plain(), plain());
    for knot in &mut lost.site.ridge.crest.knots {
        if knot.x > 3.0 {
            knot.y += 4.0;
        }
    }
    let between: Vec<P3> = (0..8).map(|i| P3::new(4.3, 0.0, -1.5 + 0.3 * f64::from(i))).collect();
    let (change, grain) = shadow_and_grain(&lost, &whole, &between);
    let (mut facial, over) = (plain(), [P3::new(0.5, 3.0, 3.0)]);
    dehiscence(&mut facial);
    let (hidden, _) = shadow_and_grain(&facial, &whole, &over);
    assert!(change > 3.0 * hidden && change > 3.0 * grain, "{change} {hidden} {grain}");
}

#[test]
fn a_ligament_is_darker_than_the_lamina_dura_beside_it() {
    let case = plain();
    let scene = scene(&case, &Plan::default(), [9; 32]).evenly();
    let aim = Aim::usual(&case.site);
    let root = case.site.socket.as_one().stack();
    // Along a line out of the root at mid-root: the middle of the space, and the middle of the shell.
    let half = root.across * root.share(5.0);
    let across = |off: f64| lit(&case, &scene, &aim, P3::new(half + off, 0.0, 5.0));
    let (ligament, lamina) = (across(0.5 * LIGAMENT), across(LIGAMENT + 0.5 * LAMINA));
    assert!(ligament > 1.05 * lamina, "{ligament} {lamina}");
    assert!(lamina < across(LIGAMENT + LAMINA + 0.4), "{lamina}");
}

#[test]
fn a_canal_and_a_lesion_let_more_through_and_titanium_next_to_nothing() {
    let mut case = plain();
    let at = P3::new(0.0, -2.0, 17.0);
    let bare = scene(&case, &Plan::default(), [9; 32]).evenly();
    let aim = Aim::usual(&case.site);
    let before = lit(&case, &bare, &aim, at);
    let ends = [-20.0, 20.0].map(|x| P3 { x, ..at });
    case.site.vital.canal = Some(Tube { from: ends[0], to: ends[1], radius: Mm::new(1.5) });
    case.site.lesion = Lesion::Chronic { diameter: Mm::new(6.0) };
    let ill = scene(&case, &Plan::default(), [9; 32]).evenly();
    let tip = P3::new(0.0, 0.0, 12.5);
    assert!(lit(&case, &ill, &aim, at) > 1.05 * before);
    assert!(lit(&case, &ill, &aim, tip) > 1.05 * lit(&case, &bare, &aim, tip));
    let plan = Trial::plain().plan();
    let seated = plan.implant_in_place().unwrap();
    let after = scene(&case, &plan, [9; 32]);
    let middle = P3::new(seated.distal.get(), seated.facial.get(), seated.depth.get() + 5.0);
    assert!(lit(&case, &after, &aim, middle) < 0.04);
}

#[test]
fn a_beam_that_is_turned_lays_neighbouring_crowns_over_each_other() {
    let case = plain();
    let scene = scene(&case, &Plan::default(), [9; 32]);
    // The lightest place between the two crowns, on the way from the gum to their contact.
    let cleft = |turn: f64| {
        let aim = Aim { horizontal: Deg::new(turn), ..Aim::usual(&case.site) };
        let between = |i: i32| P3::new(4.25 + 0.1 * f64::from(i), 0.4, -7.0);
        (-12..=12).map(|i| lit(&case, &scene, &aim, between(i))).fold(0.0, f64::max)
    };
    assert!(cleft(0.0) > 1.3 * cleft(25.0), "{} {}", cleft(0.0), cleft(25.0));
}

#[test]
fn grains_without_mineral_do_not_show_and_grains_of_mineral_do() {
    let bare = |material: &str| {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", material)]);
        let (case, plan) = (trial.case.clone(), trial.plan());
        let scene = scene(&case, &plan, [9; 32]);
        lit(&case, &scene, &Aim::usual(&case.site), P3::new(-2.7, 1.0, 2.0))
    };
    let (none, mineral) = (bare("demineralised-allograft"), bare("xenograft"));
    assert!(mineral < 0.9 * none, "{mineral} {none}");
}

#[test]
fn the_same_exposure_gives_the_same_film_and_another_only_other_noise() {
    let case = plain();
    let scene = scene(&case, &Plan::default(), key(&case));
    let aim = Aim { size: Size::Zero, ..Aim::usual(&case.site) };
    let take = |exposure| film(&scene, &case.site, &aim, &mut Noise::of(key(&case), exposure));
    let (first, again, next) = (take(0), take(0), take(1));
    assert_eq!(first, again);
    assert_eq!(first.left, next.left);
    let differing = first.grey.iter().zip(&next.grey).filter(|(a, b)| a != b).count();
    assert!(differing > first.grey.len() / 3, "{differing}");
    assert_eq!(first.grey.len(), (first.view.pixels[0] * first.view.pixels[1]) as usize);
}

#[test]
fn every_drawn_site_gives_a_film_that_is_neither_black_nor_white() {
    for seed in 1..=12 {
        let case = generate(seed).unwrap();
        let plan = stage(&case, if seed % 2 == 0 { Stage::Whole } else { Stage::Before });
        let scene = scene(&case, &plan, key(&case));
        let view = View::of(&case.site, &Aim::usual(&case.site));
        let [columns, rows] = view.pixels;
        let lit: Vec<f64> = (0..40)
            .flat_map(|i| (0..40).map(move |j| (i, j)))
            .map(|(i, j)| view.ray(f64::from(columns * i / 40), f64::from(rows * j / 40)))
            .map(|(ray, length)| left(&scene, &ray, length))
            .collect();
        assert!(lit.iter().all(|share| *share > 0.0 && *share <= 1.0), "{seed}");
        let middling = lit.iter().filter(|share| (0.1..0.8).contains(*share)).count();
        assert!(middling > 400, "{seed}: {middling}");
    }
}

#[test]
fn a_site_beside_a_gap_or_an_implant_has_its_film_too() {
    let mut case = plain();
    case.site.neighbours.distal = Neighbour::Absent;
    let gap = scene(&case, &Plan::default(), [9; 32]);
    let aim = Aim::usual(&case.site);
    let place = P3::new(8.0, 0.0, -8.0);
    assert!(lit(&case, &gap, &aim, place) > 0.99);
    let Site { neighbours, .. } = plain().site;
    let Neighbour::Root(root) = neighbours.distal else { panic!("a root") };
    case.site.neighbours.distal = Neighbour::Implant(crate::anatomy::Implanted {
        platform: P3::new(root.x.get(), -0.8, 0.8),
        diameter: Mm::new(4.0),
        length: Mm::new(11.0),
        tilt: Deg::ZERO,
        tip: Deg::ZERO,
    });
    let implant = scene(&case, &Plan::default(), [9; 32]);
    assert!(lit(&case, &implant, &aim, P3::new(root.x.get(), -0.8, 6.0)) < 0.05);
    assert!(lit(&case, &implant, &aim, place) < 0.01);
}
