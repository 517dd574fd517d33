//! Measurements of teeth with several roots, against grids of points and what is known by heart.

use super::{Measurements, Opening, SeptumClass};
use crate::anatomy::{
    Bone, Branch, Crest, Defect, DefectKind, Neighbour, Parted, Profile, Roots, Socket, Tooth,
    Trunk, Wall,
};
use crate::cases::PartedRow;
use crate::geometry::{Outline, P2, P3, Ray, V3};
use crate::plan::Decision;
use crate::rules::trial::Trial;
use crate::units::{Deg, Mm};

/// An average tooth with several roots in a broad straight ridge.
fn trial(iso: u8) -> Trial {
    let mut trial = Trial::plain();
    let site = &mut trial.case.site;
    site.tooth = Tooth::new(iso).unwrap();
    site.socket = Socket::Parted(PartedRow::of(site.tooth).unwrap().average(1.8).unwrap());
    if iso > 30 {
        trial.keys(&[("sensation-check", "yes")]);
    }
    broad(&mut trial);
    trial
}

fn broad(trial: &mut Trial) {
    let site = &mut trial.case.site;
    let face = |out: f64| Profile {
        knots: [(-8.0, 6.2), (0.0, 6.2), (6.0, 6.8), (12.0, 7.6), (30.0, 8.0)]
            .map(|(z, y)| P2::new(z, out * y))
            .to_vec(),
    };
    (site.ridge.facial, site.ridge.oral) = (face(1.0), face(-1.0));
    let crest: Vec<P2> = [(-14.0, 0.0), (-7.0, -1.5), (0.0, 0.0), (7.0, -1.5), (14.0, 0.0)]
        .map(|(x, z)| P2::new(x, z))
        .to_vec();
    site.ridge.crest = Crest { knots: crest.clone(), unharmed: crest, oral_offset: Mm::ZERO };
    for (side, neighbour) in
        [(-1.0, &mut site.neighbours.mesial), (1.0, &mut site.neighbours.distal)]
    {
        if let Neighbour::Root(root) = neighbour {
            root.x = Mm::new(side * 10.5);
        }
    }
    for (decision, count) in [
        (Decision::OffsetFacial, 0),
        (Decision::OffsetDistal, 0),
        (Decision::Depth, 10),
        (Decision::Tilt, 0),
        (Decision::Tip, 0),
        (Decision::Diameter, 45),
        (Decision::Length, 100),
    ] {
        trial.number(decision, count);
    }
}

fn measured<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
    let plan = trial.plan();
    read(&Measurements::of(&trial.case, &plan))
}

/// Upright round roots on either side of a round trunk: everything is known by heart.
fn by_heart(apart: f64) -> Trial {
    let mut trial = trial(46);
    let branch = |x: f64| Branch {
        x: Mm::new(x),
        y: Mm::ZERO,
        tilt: Deg::ZERO,
        tip: Deg::ZERO,
        length: Mm::new(10.0),
        half_md: Mm::new(1.2),
        half_fo: Mm::new(1.2),
        taper: 0.0,
    };
    let trunk = Trunk {
        neck: Mm::new(2.0),
        furcation: Mm::new(2.0),
        half_md: Mm::new(4.0),
        half_fo: Mm::new(4.0),
        narrowing: 1.0,
    };
    let roots = Roots::MesialDistal([branch(-apart), branch(apart)]);
    trial.case.site.socket = Socket::Parted(Parted { trunk, roots });
    trial
}

#[test]
fn a_trunk_and_two_round_roots_are_known_by_heart() {
    use core::f64::consts::PI;
    let trial = by_heart(2.4);
    // A disc of 2 mm, and two cylinders of 9 mm that end in half an ellipsoid of 1 mm.
    let root = PI * 1.44 * (9.0 + 2.0 / 3.0);
    let expected = PI * 16.0 * 2.0 + 2.0 * root;
    let volume = measured(&trial, |m| m.socket_volume()).unwrap().get();
    assert!((volume - expected).abs() < 1e-4, "{volume} {expected}");
    let width = |depth: f64| measured(&trial, |m| m.septum_mesiodistal(Mm::new(depth))).unwrap();
    assert!((width(1.0).get() - 2.4).abs() < 1e-9 && (width(8.0).get() - 2.4).abs() < 1e-9);
    let across = measured(&trial, |m| m.septum_faciooral(Mm::new(1.0))).unwrap();
    assert!((across.get() - 8.0).abs() < 1e-9, "{across}");
    assert_eq!(measured(&trial, |m| m.septum_mesiodistal(Mm::new(10.5))), None);
    let socket = measured(&trial, |m| m.socket_width()).unwrap();
    assert!((socket.get() - 8.0).abs() < 1e-9);
    // The ridge is drawn to z = 30; the furcation lies at 2.
    assert!((measured(&trial, |m| m.bone_under_furcation()).unwrap().get() - 28.0).abs() < 1e-8);
    let beyond = measured(&trial, |m| m.bone_beyond_apices());
    assert!(beyond.len() == 2 && beyond.iter().all(|b| (b.get() - 18.0).abs() < 1e-9));
}

#[test]
fn one_root_has_no_septum() {
    let trial = Trial::plain();
    let none = measured(&trial, |m| {
        m.septum_mesiodistal(Mm::ZERO).is_none()
            && m.septum_hold().is_none()
            && m.septum_class().is_none()
            && m.bone_under_furcation().is_none()
    });
    assert!(none);
}

#[test]
fn the_septum_s_class_falls_as_the_implant_outgrows_it() {
    // 2 (2.8 - 1.2) = 3.2 mm stand between the roots.
    let mut trial = by_heart(2.7);
    trial.number(Decision::Depth, 25).number(Decision::Length, 80);
    let mut class = |diameter: i32, offset: i32| {
        trial.number(Decision::Diameter, diameter).number(Decision::OffsetDistal, offset);
        measured(&trial, |m| m.septum_class()).unwrap()
    };
    assert_eq!(class(30, 0), SeptumClass::A);
    assert_eq!(class(40, 0), SeptumClass::B);
    // Coronal of the furcation nothing is asked.
    trial.number(Decision::Depth, -60);
    assert!(measured(&trial, |m| m.septum_hold()).is_none());
    // In the socket of a broad distal root, which leans as it does.
    let mut trial = self::trial(46);
    trial.number(Decision::Depth, 25).number(Decision::Length, 80).number(Decision::Tip, 8);
    trial.number(Decision::Diameter, 30).number(Decision::OffsetDistal, 31);
    let hold = measured(&trial, |m| m.septum_hold()).unwrap();
    assert_eq!(measured(&trial, |m| m.septum_class()), Some(SeptumClass::C), "{hold:?}");
}

#[test]
fn parts_of_the_hold_grow_as_the_roots_leave_the_implant_over_a_sweep() {
    let mut last = 0.0;
    for tenths in 14..=27 {
        let trial = by_heart(f64::from(tenths) / 10.0);
        let hold = measured(&trial, |m| m.septum_hold()).unwrap();
        assert!(hold.in_bone <= hold.below && hold.in_septum <= hold.in_bone, "{hold:?}");
        // From here on the sockets' middles lie outside the implant.
        if tenths > 23 {
            assert!(hold.in_septum.get() > last, "{tenths} {last} {hold:?}");
        }
        last = hold.in_septum.get();
    }
}

#[test]
fn volumes_agree_with_a_grid_of_rays_over_teeth_and_fill_levels() {
    for (iso, fill) in [(14, 0), (16, 0), (16, -20), (17, -40), (46, 0), (46, -15), (47, 10)] {
        let mut trial = trial(iso);
        trial.number(Decision::OffsetFacial, 5).number(Decision::Tilt, -8);
        let level = -f64::from(fill) / 10.0;
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        let (solid, cone) = (&m.ground().solid, m.seated().unwrap());
        let (step, mut socket, mut taken) = (0.05, 0.0, 0.0);
        for i in -140..140 {
            for j in 0..330 {
                let z = level + (f64::from(j) + 0.5) * step;
                let origin = P3::new((f64::from(i) + 0.5) * step, 0.0, z);
                let ray = Ray { origin, direction: V3::FACIAL };
                let met = super::volume::socket_on(solid, &ray);
                socket += met.length() * step * step;
                taken += met.intersection(&cone.ray(&ray)).length() * step * step;
            }
        }
        let ours = super::volume::socket_beyond(solid, level);
        assert!((ours / socket - 1.0).abs() < 0.003, "{iso} {fill} {ours} {socket}");
        let ours = super::volume::taken_by(m.ground(), cone, level);
        assert!((ours - taken).abs() < 0.4, "{iso} {fill} {ours} {taken}");
    }
}

#[test]
fn lost_walls_take_what_the_difference_of_bone_with_and_without_them_says() {
    for iso in [14, 16, 46] {
        let mut trial = trial(iso);
        for (wall, outline) in [
            (Wall::Facial, vec![[-40, 0], [30, 0], [20, 70], [-35, 80]]),
            (Wall::Oral, vec![[-15, -180], [15, -180], [15, -124], [-15, -124]]),
        ] {
            let (kind, outline) = (DefectKind::LostWall, Outline::new(outline).unwrap());
            trial.case.site.defects.push(Defect { wall, kind, outline });
        }
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        let solid = &m.ground().solid;
        let (step, mut expected) = (0.05, 0.0);
        for i in -100..100 {
            for j in -40..240 {
                let x = (f64::from(i) + 0.5) * step;
                let origin = P3::new(x, 0.0, (f64::from(j) + 0.5) * step);
                let ray = Ray { origin, direction: V3::FACIAL };
                let whole = solid.bone(Bone::WallsWhole, &ray, -40.0, 40.0).length();
                let now = solid.bone(Bone::Now, &ray, -40.0, 40.0).length();
                expected += (whole - now) * step * step;
            }
        }
        let ours = m.wall_volume().unwrap().get();
        assert!((ours / expected - 1.0).abs() < 0.01, "{iso} {ours} {expected}");
    }
}

#[test]
fn below_the_furcation_a_plate_is_the_thinner_of_those_over_its_roots() {
    let mut trial = trial(16);
    let plate = |trial: &Trial| measured(trial, |m| m.facial_plate()).unwrap().get();
    // 1 mm below the crest stands the trunk, 5 mm wide facially.
    assert!((plate(&trial) - 1.3).abs() < 0.01, "{}", plate(&trial));
    for knot in &mut trial.case.site.ridge.crest.knots {
        knot.y += 4.0;
    }
    // Now the plate over the mesiofacial root, which is the wider one.
    let plan = trial.plan();
    let m = Measurements::of(&trial.case, &plan);
    let socket = &m.ground().solid.socket;
    let least = [0, 1].map(|root| {
        let body = &socket.roots()[root];
        let (origin, along) = (body.frame.origin, body.frame.along);
        let x = origin.x + along.x / along.z * (5.0 - origin.z);
        let ray = Ray { origin: P3::new(x, 0.0, 5.0), direction: V3::FACIAL };
        m.ground().solid.face(Wall::Facial, 5.0) - body.ray(&ray).last().unwrap().to
    });
    let found = m.facial_plate().unwrap().get();
    assert!((found - least[0].min(least[1])).abs() < 1e-9, "{found} {least:?}");
}

#[test]
fn an_implant_in_the_septum_has_no_gap_there_and_one_in_the_trunk_s_space() {
    let trial = by_heart(2.7);
    let gap = |depth: f64| measured(&trial, |m| m.gap(Deg::new(90.0), Mm::new(depth))).unwrap();
    let Opening::Bone(above) = gap(0.5) else { panic!("the wall of the trunk's space") };
    // The platform lies 1 mm below the crest, 2.25 mm to either side.
    assert!(above > Mm::new(1.5) && above < Mm::new(1.9), "{above}");
    let mut narrow = trial;
    narrow.number(Decision::Diameter, 30);
    let inside = measured(&narrow, |m| m.gap(Deg::new(90.0), Mm::new(3.0))).unwrap();
    assert_eq!(inside, Opening::Bone(Mm::ZERO));
}

#[test]
fn roots_that_meet_or_leave_their_trunk_sideways_are_no_tooth() {
    let fault = |apart: f64| {
        let Socket::Parted(parted) = by_heart(apart).case.site.socket else { panic!("parted") };
        parted.fault()
    };
    assert_eq!(fault(2.4), None);
    assert!(fault(1.25).unwrap().contains("meet"));
    assert!(fault(3.0).unwrap().contains("beside its trunk"));
    for iso in [14, 16, 17, 46, 47] {
        let Socket::Parted(parted) = trial(iso).case.site.socket else { panic!("parted") };
        assert_eq!(parted.fault(), None, "{iso}");
    }
}
