//! Every measurement of absurd plans on varied sites: finite or without object, never a panic.

use super::{Ground, Margins, Measurements, Opening, SeptumHold};
use crate::anatomy::{
    Beside, Defect, DefectKind, Floor, FloorKind, Implanted, Lesion, Neighbour, Tooth, Tube, Wall,
};
use crate::cases::parted_socket;
use crate::chart::{Address, Sex};
use crate::geometry::{Outline, P3};
use crate::plan::Decision;
use crate::rules::trial::Trial;
use crate::units::{Deg, Mm};

/// A generator of numbers for tests: multiply, add, keep the upper bits (Knuth's MMIX constants).
struct Draws(u64);

impl Draws {
    fn part(&mut self) -> f64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
    fn whole(&mut self, least: i32, most: i32) -> i32 {
        #[allow(clippy::cast_possible_truncation)]
        let step = (self.part() * f64::from(most - least + 1)) as i32;
        least + step
    }
}

/// Every measurement as bare numbers.
fn numbers(m: &Measurements<'_>) -> Vec<f64> {
    let mut all = Vec::new();
    macro_rules! plain {
        ($($name:ident)+) => { $( all.extend(m.$name().map(|value| value.get())); )+ };
    }
    plain!(
        facial_plate oral_plate socket_width mesiodistal_room bone_beyond_apex facial_defect_depth
        bone_under_furcation
        facial_defect_width crest_loss lingual_undercut facial_concavity socket_volume wall_volume
        gap_volume contour_volume volume_to_graft facial_bone_after_grafting facial_line_clearance
        oral_bone apical_facial_bone apical_oral_bone to_canal to_foramen to_floor to_nasopalatine
        anchorage_beyond_apex oral_engagement depth_from_margin depth_from_crest angle_to_crown
        seating_torque grain_to_gap membrane_to_root incision_to_defect flap_base_ratio
        flap_length_ratio release_to_prominence release_to_foramen advancement_needed closing_force
    );
    all.extend(m.facial_gap().map(|gap| gap.width.get()));
    if let Some(threads) = m.threads() {
        all.extend([threads.engaged, threads.facing_bone, threads.exposed].map(|area| area.get()));
    }
    for neighbour in [m.to_mesial_neighbour(), m.to_distal_neighbour()].into_iter().flatten() {
        all.push(neighbour.distance.get());
    }
    for margins in [m.membrane_margin(), m.flap_beyond_membrane()].into_iter().flatten() {
        let Margins { mesial, distal, apical, oral } = margins;
        all.extend([mesial, distal, apical, oral].into_iter().flatten().map(Mm::get));
    }
    for depth in [0.0, 3.0].map(Mm::new) {
        let widths = [m.septum_mesiodistal(depth), m.septum_faciooral(depth)];
        all.extend(widths.into_iter().flatten().map(Mm::get));
    }
    if let Some(SeptumHold { below, in_bone, in_septum }) = m.septum_hold() {
        all.extend([below, in_bone, in_septum].map(|area| area.get()));
    }
    for (_, opening) in m.gap_around(Mm::new(2.0), 8) {
        if let Opening::Bone(gap) = opening {
            all.push(gap.get());
        }
    }
    all
}

fn bend(draws: &mut Draws, trial: &mut Trial) {
    let site = &mut trial.case.site;
    let (tilt, tip, taper) = (draws.part(), draws.part(), draws.part());
    if let Some(root) = site.socket.only_mut() {
        root.tilt = Deg::new(tilt * 60.0 - 30.0);
        root.tip = Deg::new(tip * 40.0 - 20.0);
        root.taper = taper;
    }
    site.ridge.crest.oral_offset = Mm::new(draws.part() * 4.0 - 2.0);
    if draws.part() < 0.3 {
        for knot in &mut site.ridge.crest.knots {
            knot.y += 4.0 * draws.part();
        }
    }
    let tube = |draws: &mut Draws| Tube {
        from: P3::new(-15.0, draws.part() * 8.0 - 4.0, 4.0 + 16.0 * draws.part()),
        to: P3::new(15.0 * draws.part(), draws.part() * 8.0 - 4.0, 4.0 + 16.0 * draws.part()),
        radius: Mm::new(0.5 + draws.part()),
    };
    site.vital.canal = (draws.part() < 0.5).then(|| tube(draws));
    site.vital.loop_ = (draws.part() < 0.3).then(|| tube(draws));
    site.vital.nasopalatine = (draws.part() < 0.5).then(|| tube(draws));
    site.vital.foramen = (draws.part() < 0.4).then(|| P3::new(4.0, 3.0, 10.0 * draws.part()));
    site.vital.floor = (draws.part() < 0.5).then(|| Floor {
        kind: FloorKind::Sinus,
        z: Mm::new(4.0 + 14.0 * draws.part()),
        rise: draws.part() - 0.5,
    });
    if draws.part() < 0.3 {
        site.lesion = Lesion::Chronic { diameter: Mm::new(8.0 * draws.part()) };
    }
    site.neighbours.mesial = match draws.whole(0, 2) {
        0 => Neighbour::Absent,
        1 => Neighbour::Implant(Implanted {
            platform: P3::new(-7.0, draws.part() - 0.5, draws.part() * 3.0),
            diameter: Mm::new(4.0),
            length: Mm::new(10.0),
            tilt: Deg::new(draws.part() * 60.0 - 30.0),
            tip: Deg::ZERO,
        }),
        _ => site.neighbours.mesial.clone(),
    };
    site.defects.clear();
    for _ in 0..draws.whole(0, 3) {
        let (half, depth) = (draws.whole(2, 60), draws.whole(3, 140));
        let from = draws.whole(-30, 40);
        let (wall, t) = if draws.part() < 0.7 {
            (Wall::Facial, [from, from + depth])
        } else {
            (Wall::Oral, [-84 - from - depth, -84 - from])
        };
        let corners = vec![[-half, t[0]], [half, t[0]], [half / 2, t[1]], [-half, t[1]]];
        let outline = Outline::new(corners).unwrap();
        site.defects.push(Defect { wall, kind: DefectKind::LostWall, outline });
    }
}

/// The plain trial, each third time with a drawn tooth of several roots, whether or not it fits.
fn of_several_roots_each_third(round: u64) -> Trial {
    let mut trial = Trial::plain();
    if round % 3 == 2 {
        let iso = [14, 16, 46][usize::try_from(round / 3 % 3).unwrap()];
        let tooth = Tooth::new(iso).unwrap();
        let address = Address { format: 1, generator: 1, seed: round, attempt: 0, changed: None };
        trial.case.site.socket = parted_socket(address, tooth, Sex::Male, 50).unwrap();
    }
    trial
}

fn choose(draws: &mut Draws, trial: &mut Trial) {
    let pick = |draws: &mut Draws, keys: &[&'static str]| {
        keys[usize::try_from(draws.whole(0, i32::try_from(keys.len()).unwrap() - 1)).unwrap()]
    };
    let keys = [
        ("flap-design", pick(draws, &["no-flap", "envelope", "triangular", "trapezoidal"])),
        ("release-side", pick(draws, &["mesial", "distal"])),
        ("papillae", "left"),
        ("periosteal-release", pick(draws, &["yes", "no"])),
        ("membrane", pick(draws, &["none", "native-collagen", "dense-ptfe"])),
        ("trim", "rounded"),
        ("fold", pick(draws, &["facial-only", "over-orifice"])),
        ("fixation", "tucked"),
        ("act-order", "membrane-first"),
        ("needle-path", "crest-outward"),
        ("graft-material", pick(draws, &["no-graft", "xenograft"])),
        ("component", pick(draws, &["cover-screw", "healing-abutment"])),
        ("closure", pick(draws, &["open", "primary"])),
        ("preparation", pick(draws, &["full", "under-prepared", "tapped"])),
    ];
    trial.keys(&keys);
    for (decision, least, most) in [
        (Decision::OffsetFacial, -60, 60),
        (Decision::OffsetDistal, -40, 40),
        (Decision::Depth, -60, 60),
        (Decision::Tilt, -35, 35),
        (Decision::Tip, -25, 25),
        (Decision::FillLevel, -50, 50),
        (Decision::OralElevation, 0, 80),
        (Decision::ContourLayer, 0, 50),
        (Decision::MembraneOut, 28, 28),
    ] {
        let count = draws.whole(least, most);
        trial.number(decision, count);
    }
    trial.number(Decision::Diameter, 30 + 5 * draws.whole(0, 6));
    trial.number(Decision::Length, 80 + 10 * draws.whole(0, 8));
    for outline in [Decision::FlapOutline, Decision::MembraneOutline] {
        let (left, right) = (draws.whole(5, 150), draws.whole(5, 150));
        let (top, bottom) = (draws.whole(-150, 40), draws.whole(50, 200));
        trial
            .outline(outline, &[[-left, top], [right, top], [right + 20, bottom], [-left, bottom]]);
    }
}

#[test]
fn four_hundred_absurd_plans_are_measured_in_finite_numbers() {
    let mut draws = Draws(2024);
    for round in 0..80 {
        let mut trial = of_several_roots_each_third(round);
        bend(&mut draws, &mut trial);
        let ground = Ground::of(&trial.case.site);
        for _ in 0..5 {
            choose(&mut draws, &mut trial);
            let plan = trial.plan();
            let m = Measurements::on(&ground, &trial.case, &plan);
            let all = numbers(&m);
            assert!(all.len() > 25 && all.iter().all(|n| n.is_finite()), "{round}: {all:?}");
            if let Some(threads) = m.threads() {
                let sum = threads.engaged.get() + threads.facing_bone.get() + threads.exposed.get();
                assert!(
                    (sum - m.seated().unwrap().lateral_area()).abs() < 0.5,
                    "{round} {threads:?}"
                );
            }
            let (gap, whole) = (m.gap_volume(), m.socket_volume());
            assert!(gap.is_none_or(|gap| gap <= whole.unwrap()));
        }
    }
}

#[test]
fn a_shared_ground_and_an_own_one_give_the_same_bits() {
    let mut draws = Draws(7);
    for round in 0..20 {
        let mut trial = of_several_roots_each_third(round);
        bend(&mut draws, &mut trial);
        choose(&mut draws, &mut trial);
        let ground = Ground::of(&trial.case.site);
        let plan = trial.plan();
        let bits =
            |m: &Measurements<'_>| numbers(m).iter().map(|n| n.to_bits()).collect::<Vec<_>>();
        let own = bits(&Measurements::of(&trial.case, &plan));
        assert_eq!(own, bits(&Measurements::on(&ground, &trial.case, &plan)));
    }
}

#[test]
fn mirrored_mesiodistally_a_site_measures_the_same_with_its_sides_exchanged() {
    let mut trial = Trial::plain();
    let measured = |trial: &Trial| {
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        (
            m.to_mesial_neighbour().unwrap().distance.get(),
            m.to_distal_neighbour().unwrap().distance.get(),
            m.gap_volume().unwrap().get(),
            m.threads().unwrap().engaged.get(),
        )
    };
    trial.number(Decision::OffsetDistal, 8).number(Decision::Tip, 5);
    let here = measured(&trial);
    let site = &mut trial.case.site;
    let turned = |neighbour: &Neighbour| match neighbour.clone() {
        Neighbour::Root(mut root) => {
            root.x = -root.x;
            root.tip = -root.tip;
            Neighbour::Root(root)
        }
        other => other,
    };
    let sides = [turned(&site.neighbours.distal), turned(&site.neighbours.mesial)];
    [site.neighbours.mesial, site.neighbours.distal] = sides;
    trial.number(Decision::OffsetDistal, -8).number(Decision::Tip, -5);
    let there = measured(&trial);
    assert!((here.0 - there.1).abs() < 1e-4 && (here.1 - there.0).abs() < 1e-4);
    // The gap is summed over places that have no mirror image: within its half per cent.
    assert!((here.2 / there.2 - 1.0).abs() < 0.005, "{here:?} {there:?}");
    assert!((here.3 / there.3 - 1.0).abs() < 0.005, "{here:?} {there:?}");
}

#[test]
fn the_plain_plan_is_sound_by_its_measurements() {
    let trial = Trial::plain();
    let plan = trial.plan();
    let m = Measurements::of(&trial.case, &plan);
    let gap = m.facial_gap().unwrap();
    assert!(gap.width >= Mm::new(2.0) && gap.wall_present, "{gap:?}");
    assert!(m.anchorage_beyond_apex().unwrap() >= Mm::new(3.0));
    let sides = [m.to_mesial_neighbour(), m.to_distal_neighbour()].map(|n| n.unwrap().distance);
    assert!(sides.iter().all(|distance| *distance >= Mm::new(1.5)), "{sides:?}");
    let bone = [m.oral_bone(), m.apical_facial_bone(), m.apical_oral_bone()].map(Option::unwrap);
    assert!(bone.iter().all(|bone| *bone >= Mm::new(1.0)), "{bone:?}");
    assert!((25.0..=45.0).contains(&m.estimated_torque().unwrap().get()));
    assert!((3.0..=4.0).contains(&m.depth_from_margin().unwrap().get()));
    assert!((0.5..=1.5).contains(&m.depth_from_crest().unwrap().get()));
    assert!(m.angle_to_crown().unwrap() < Deg::new(15.0));
    assert!(m.facial_line_clearance().unwrap() >= Mm::new(1.5));
    let threads = m.threads().unwrap();
    assert!(threads.exposed.get() < 0.5, "{threads:?}");
    let roots = m.ground().solid.beside.iter().filter(|side| matches!(side, Beside::Root(_)));
    assert_eq!(roots.count(), 2);
}
