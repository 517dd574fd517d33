//! The section of a tooth with several roots.

use super::*;
use crate::anatomy::{Branch, Parted, Roots, Socket, Trunk};
use crate::measure::cone_of;

/// A root upright below the furcation.
fn branch(x: f64, y: f64, [half_md, half_fo]: [f64; 2], length: f64) -> Branch {
    let mm = Mm::new;
    Branch {
        x: mm(x),
        y: mm(y),
        tilt: Deg::ZERO,
        tip: Deg::ZERO,
        length: mm(length),
        half_md: mm(half_md),
        half_fo: mm(half_fo),
        taper: 0.25,
    }
}

/// A tooth whose trunk, 4.5 mm to each side, ends 2 mm below the crest.
fn tooth(iso: u8, roots: Roots) -> Trial {
    let mut trial = Trial::molar();
    trial.case.site.tooth = Tooth::new(iso).unwrap();
    let trunk = Trunk {
        neck: Mm::new(1.8),
        furcation: Mm::new(2.0),
        half_md: Mm::new(4.5),
        half_fo: Mm::new(4.5),
        narrowing: 1.0,
    };
    trial.case.site.socket = Socket::Parted(Parted { trunk, roots });
    trial
}

/// Facial and palatal roots upright in the cut, 9 and 8 mm long.
pub(super) fn premolar() -> Trial {
    let roots = [branch(0.0, 2.2, [1.8, 1.5], 9.0), branch(0.0, -2.2, [1.8, 1.5], 8.0)];
    tooth(14, Roots::FacialPalatal(roots))
}

/// Mesial and distal roots 2.5 mm to each side of the cut.
pub(super) fn lower_molar() -> Trial {
    let roots = [branch(-2.5, 0.3, [1.4, 3.5], 10.0), branch(2.5, 0.3, [1.4, 3.5], 9.0)];
    tooth(46, Roots::MesialDistal(roots))
}

/// Two facial roots beside the cut and a palatal one in it.
pub(super) fn upper_molar() -> Trial {
    let roots = [
        branch(-2.4, 1.8, [1.4, 1.8], 8.0),
        branch(2.4, 1.8, [1.4, 1.8], 7.5),
        branch(0.0, -2.4, [1.8, 1.4], 9.0),
    ];
    tooth(16, Roots::Three(roots))
}

/// The path of an ink that reaches deepest, as (y, z).
fn deepest(figure: &Figure, wanted: Ink, down: f64) -> Vec<Vec<P2>> {
    let paths = figure.items.iter().filter(|item| ink(item) == wanted);
    let paths = paths.filter_map(|item| match item {
        Item::Path { rings, .. } => Some(rings),
        _ => None,
    });
    let end = |rings: &Vec<Vec<P2>>| {
        rings.iter().flatten().map(|at| down * at.y).fold(f64::MIN, f64::max)
    };
    let rings = paths.max_by(|a, b| end(a).total_cmp(&end(b))).cloned().unwrap_or_default();
    let turned = |ring: Vec<P2>| ring.iter().map(|at| P2::new(at.x, down * at.y)).collect();
    rings.into_iter().map(turned).collect()
}

fn across(rings: &[Vec<P2>], z: f64) -> Vec<f64> {
    let met = rings.iter().flat_map(|ring| {
        let line = crate::geometry::polygon::line_within(ring, P2::new(0.0, z), P2::new(1.0, 0.0));
        line.as_slice().iter().flat_map(|part| [part.from, part.to]).collect::<Vec<_>>()
    });
    met.collect()
}

#[test]
fn roots_that_the_cut_meets_are_cut_with_the_bone_between_them() {
    for (done, wanted, down) in [(0, Ink::Tooth, -1.0), (5, Ink::Socket, -1.0)] {
        let figure = draw(&premolar(), done, true, 360.0, section);
        let rings = deepest(&figure, wanted, down);
        let end = rings.iter().flatten().map(|at| at.y).fold(f64::MIN, f64::max);
        assert!((end - 11.0).abs() < 0.01, "2 mm of trunk and 9 mm of root: {end}");
        // A quarter of the way down, 0.75^0.25 of the half-width: 1.396 about -2.2 and 2.2 where both
        // are 9 long; the palatal root is shorter and narrower there.
        let met = across(&rings, 2.0 + 0.25 * 9.0);
        assert_eq!(met.len(), 4, "{met:?}");
        let half = 1.5 * libm::pow(0.75, 0.25);
        assert!((met[2] - (2.2 - half)).abs() < 0.02, "{met:?} {half}");
        assert!((met[3] - (2.2 + half)).abs() < 0.02, "{met:?} {half}");
        // Halfway up the trunk nothing parts them.
        assert_eq!(across(&rings, 1.0).len(), 2);
    }
    let before = draw(&premolar(), 0, true, 360.0, section);
    let named = words(&before).join(" ");
    for part in ["facial root", "palatal root", "septum", "trunk"] {
        assert!(named.contains(part), "{part}: {named}");
    }
    assert!(before.says.contains("The cut meets the facial root and the palatal root."));
    let after = words(&draw(&premolar(), 5, true, 360.0, section)).join(" ");
    assert!(after.contains("palatal socket") && !after.contains("root"), "{after}");
}

#[test]
fn roots_beside_the_cut_are_dashed_as_they_are_seen_along_the_arch() {
    let figure = draw(&lower_molar(), 0, true, 360.0, section);
    let trunk = deepest(&figure, Ink::Tooth, 1.0);
    let end = trunk.iter().flatten().map(|at| at.y).fold(f64::MIN, f64::max);
    assert!((end - 2.0).abs() < 1e-6, "nothing but the trunk is cut: {end}");
    let [mesial, distal]: [Vec<P2>; 2] = deepest(&figure, Ink::Dashed, 1.0).try_into().unwrap();
    for (line, length) in [(mesial, 10.0), (distal, 9.0)] {
        let most = |part: fn(&P2) -> f64| line.iter().map(part).fold(f64::MIN, f64::max);
        assert!((most(|at| at.y) - 2.0 - length).abs() < 1e-6);
        // 3.5 mm to each side of 0.3, and open where it leaves the trunk.
        assert!((most(|at| at.x) - 3.8).abs() < 1e-6 && (most(|at| -at.x) - 3.2).abs() < 1e-6);
        let ends = [line[0], line[line.len() - 1]];
        assert!(ends.iter().all(|at| (at.y - 2.0).abs() < 1e-6), "{ends:?}");
        assert!((ends[0].x - 3.8).abs() < 0.02 && (ends[1].x + 3.2).abs() < 0.02, "{ends:?}");
    }
    let says =
        "passes between the roots; the mesial root lies mesial of it, the distal root distal";
    assert!(figure.says.contains(says), "{}", figure.says);
    assert!(words(&figure).contains(&"septum"));
}

#[test]
fn of_three_roots_the_palatal_one_is_cut_and_the_facial_ones_pass() {
    let figure = draw(&upper_molar(), 0, true, 360.0, section);
    let cut = deepest(&figure, Ink::Tooth, -1.0);
    let end = cut.iter().flatten().map(|at| at.y).fold(f64::MIN, f64::max);
    assert!((end - 11.0).abs() < 0.01, "{end}");
    assert_eq!(across(&cut, 6.0).len(), 2);
    assert_eq!(deepest(&figure, Ink::Dashed, -1.0).len(), 2);
    assert!(figure.says.contains("meets the palatal root; the mesiofacial root lies mesial of it"));
    assert!(words(&figure).contains(&"septum"));
}

#[test]
fn a_root_that_leans_into_the_cut_is_an_island_and_dashed_beside_it() {
    let mut trial = lower_molar();
    let Socket::Parted(Parted { roots: Roots::MesialDistal(two), .. }) =
        &mut trial.case.site.socket
    else {
        unreachable!()
    };
    two[0].x = Mm::new(-1.9);
    two[0].tip = Deg::new(12.0);
    let figure = draw(&trial, 0, true, 360.0, section);
    let rings = deepest(&figure, Ink::Tooth, 1.0);
    assert_eq!(rings.len(), 2, "trunk and island");
    let least = rings[1].iter().map(|at| at.y).fold(f64::MAX, f64::min);
    // The axis comes 0.213 mm nearer for a millimetre, so it meets the cut 8.9 mm below the furcation,
    // the side of the root well before.
    assert!((3.0..9.0).contains(&least), "{least}");
    assert!(rings[1].iter().all(|at| at.y <= 2.0 + 10.0));
}

#[test]
fn roots_that_nobody_has_seen_are_neither_drawn_nor_named() {
    for trial in [premolar(), lower_molar(), upper_molar()] {
        let mut trial = trial;
        trial.keys(&[("examinations", "look film"), ("wall-ground", "film")]);
        let before = (0..9).take_while(|done| carried(&trial, *done).extraction.is_none());
        assert!(before.clone().count() > 1);
        for done in before {
            let figure = draw(&trial, done, false, 360.0, section);
            let named = format!("{} {}", words(&figure).join(" "), figure.says);
            for part in ["septum", "trunk", "palatal root", "mesial root", "the roots"] {
                assert!(!named.contains(part), "{done}, {part}: {named}");
            }
        }
    }
}

#[test]
fn a_wall_is_missing_as_far_in_as_the_plane_of_the_roots_that_stand_against_it() {
    let mut trial = lower_molar();
    trial.case.site.defects = vec![dehiscence()];
    let figure = draw(&trial, 0, true, 360.0, section);
    let lost = deepest(&figure, Ink::Lost, 1.0);
    // 6 mm down the facial face the wall is lost; below the trunk it is gone from the axes at 0.3.
    let met = across(&lost, 4.0);
    assert!((met[0] - 0.3).abs() < 1e-6, "{met:?}");
}

#[test]
fn an_implant_in_a_septum_is_drawn_over_the_roots_sockets() {
    let figure = draw(&lower_molar(), 10, true, 360.0, section);
    let implant = lower_molar().plan().implant_in_place().map(cone_of).unwrap();
    let metal = deepest(&figure, Ink::Implant, 1.0);
    let end = metal.iter().flatten().map(|at| at.y).fold(f64::MIN, f64::max);
    assert!((end - implant.axis_at(implant.length).z).abs() < 0.3, "{end}");
    let named = words(&figure).join(" ");
    assert!(named.contains("mesial socket") && named.contains("distal socket"), "{named}");
}
