//! What must hold of cases of the whole mouth.

use super::super::tests::fingerprint;
use super::super::{archetype_at, at, generate_as};
use super::*;
use crate::cases::Spread;
use crate::cases::{FORMAT, proof};
use crate::chart::Address;
use crate::debrief::{PlanWord, judge};
use crate::measure::Measurements;
use crate::plan::Plan;
use crate::plan::choices::Course;
use crate::rules::ask;
use std::collections::BTreeMap;

fn address(seed: u64, attempt: u32) -> Address {
    Address { format: FORMAT, generator: WHOLE_MOUTH, seed, attempt, changed: None }
}

fn whole_mouth(seed: u64, archetype: Option<Archetype>, tooth: Option<u8>) -> Result<Case, NoCase> {
    let tooth = tooth.and_then(|iso| Tooth::new(iso).ok());
    let asked = Constraints { archetype, tooth, ..Constraints::default() };
    generate_as(Spread::WholeMouth, seed, &asked)
}

/// Draws of first attempts, rejected ones left out.
fn drawn(count: u64) -> Vec<(Archetype, Case)> {
    (0..count)
        .filter_map(|seed| {
            let draws = Draws::of(address(seed, 0));
            Some((archetype_of(&draws), draw(&draws).ok()?))
        })
        .collect()
}

fn room(case: &Case) -> Option<f64> {
    let plan = Plan::default();
    let m = Measurements::of(case, &plan);
    m.septum_room(ask::BELOW_FURCATION).map(crate::units::Mm::get)
}

#[test]
fn the_whole_mouth_is_drawn_but_for_third_molars() {
    let mut teeth = BTreeMap::new();
    for seed in 0..6000 {
        let draws = Draws::of(address(seed, 0));
        *teeth.entry(tooth_of(&draws, archetype_of(&draws)).iso()).or_insert(0_u32) += 1;
    }
    assert_eq!(teeth.len(), 28, "{teeth:?}");
    let molars: u32 = teeth.iter().filter(|(iso, _)| *iso % 10 > 5).map(|(_, count)| count).sum();
    // A quarter of the teeth; archetypes of theirs alone bring more, those of other teeth fewer.
    assert!((1200..=2100).contains(&molars), "{molars}");
}

#[test]
fn teeth_have_the_roots_that_they_should() {
    let (mut two, mut first_premolars) = (0, 0);
    for (archetype, case) in drawn(1500) {
        let (tooth, several) = (case.site.tooth, case.site.socket.furcation().is_some());
        match (tooth.jaw(), tooth.position()) {
            (_, 6 | 7) => assert!(several, "{}", case.title),
            (Jaw::Maxilla, 4) if archetype.is_about_one_root() => assert!(!several),
            (Jaw::Maxilla, 4) if archetype != Archetype::TwoRoots => {
                first_premolars += 1;
                two += u32::from(several);
            }
            (Jaw::Maxilla, 4) => assert!(several),
            _ => assert!(!several, "{}", case.title),
        }
    }
    let share = f64::from(two) / f64::from(first_premolars);
    // 60.6 % of 165 (confirmed): the interval of what was drawn here at 99 %.
    let slack = 2.6 * libm::sqrt(0.606 * 0.394 / f64::from(first_premolars));
    assert!((share - 0.606).abs() < slack, "{two} of {first_premolars}");
}

#[test]
fn an_archetype_of_several_roots_brings_what_it_is_named_for() {
    let mut seen = [0, 0];
    for (archetype, case) in drawn(1200) {
        match archetype {
            Archetype::WideSeptum => {
                assert!(room(&case).unwrap() > 3.0, "{} {:?}", case.title, room(&case));
                seen[0] += 1;
            }
            Archetype::ThinSeptum => {
                assert!(room(&case).unwrap() < 2.0, "{} {:?}", case.title, room(&case));
                seen[1] += 1;
            }
            _ => {}
        }
    }
    assert!(seen[0] > 20 && seen[1] > 20, "{seen:?}");
}

#[test]
fn septa_of_lower_molars_are_as_wide_as_scanned() {
    // 46 mesiodistally at mid-root 3.70 +- 0.95 mm (91 scans); 57 % of 47 under 3 mm (201 scans); both
    // confirmed. Roots here are straight, so that coronally they stand a little closer.
    let rooms = |iso: u8| -> Vec<f64> {
        let tooth = Tooth::new(iso).unwrap();
        let row = PartedRow::of(tooth).unwrap();
        let brief = Archetype::IntactThick.brief();
        let of = |seed| {
            let draws = Draws::of(address(seed, 0));
            let (site, patient) =
                site_and_patient(&draws, tooth, &row, &brief, Septum::Free).ok()?;
            let case = assembled(&draws, site, patient);
            let plan = Plan::default();
            let depth = crate::units::Mm::new(4.5);
            Measurements::of(&case, &plan).septum_mesiodistal(depth).map(crate::units::Mm::get)
        };
        (0..200).filter_map(of).collect()
    };
    let first = rooms(46);
    let mean = first.iter().sum::<f64>() / first.len() as f64;
    assert!((mean - 3.70).abs() < 0.95, "{mean}");
    let second = rooms(47);
    let thin = second.iter().filter(|room| **room < 3.0).count() as f64 / second.len() as f64;
    // The interval of 57 % of 201 at 99.9 %, and as much for the level, which was not told.
    assert!((0.40..=0.74).contains(&thin), "{thin} {mean}");
}

#[test]
fn faces_follow_roots_and_plates_and_structures_lie_where_published() {
    for (archetype, case) in drawn(500) {
        let site = &case.site;
        holds_together(site).unwrap();
        let (jaw, position) = (site.tooth.jaw(), site.tooth.position());
        if position < 6 {
            continue;
        }
        assert_eq!(site.vital.floor.is_some(), jaw == Jaw::Maxilla, "{}", case.title);
        assert_eq!(site.vital.canal.is_some(), jaw == Jaw::Mandible, "{}", case.title);
        assert_eq!(site.vital.foramen.is_some(), jaw == Jaw::Mandible && position == 6);
        assert!(site.vital.nasopalatine.is_none());
        match archetype {
            Archetype::NearSinus => {
                let floor = case.readings.sections.floor.unwrap().get();
                assert!(floor < 2.5, "{} {floor}", case.title);
            }
            Archetype::NearCanal => {
                let canal = case.readings.sections.canal.unwrap().get();
                assert!(canal < 4.0, "{} {canal}", case.title);
            }
            _ => {}
        }
    }
}

#[test]
fn every_archetype_has_cases_in_the_whole_mouth_and_their_proofs_are_sound() {
    for archetype in Archetype::ALL {
        let case = whole_mouth(41, Some(*archetype), None).unwrap();
        assert_eq!(archetype_at(case.address.unwrap()), *archetype);
        let found = proof(&case).unwrap();
        let plan = Plan::from_draft(&found.draft, &case).unwrap();
        assert_eq!(PlanWord::of(&judge(&case, &plan)), PlanWord::Sound, "{archetype:?}");
        assert_eq!(plan.course(), Some(found.course), "{archetype:?}");
        assert_eq!(at(case.address.unwrap()).as_ref(), Ok(&case));
    }
}

#[test]
fn most_first_attempts_of_molars_stand_and_are_solved() {
    let (mut solved, mut whole) = (0, 0);
    let mut left = Vec::new();
    for seed in 0..160 {
        let draws = Draws::of(address(seed, 0));
        let archetype = archetype_of(&draws);
        let tooth = tooth_of(&draws, archetype);
        if PartedRow::of(tooth).is_none() {
            continue;
        }
        whole += 1;
        match draw(&draws) {
            Ok(case) if proof(&case).is_some() => solved += 1,
            Ok(case) => left.push(format!("{seed} {archetype:?} {}", case.title)),
            Err(why) => left.push(format!("{seed} {archetype:?} {tooth} {why}")),
        }
    }
    assert!(solved * 10 >= whole * 9, "{solved} of {whole}: {left:#?}");
}

#[test]
fn a_thin_septum_is_staged_and_a_wide_one_takes_an_implant_today() {
    for iso in [16, 17, 36, 37] {
        let thin = whole_mouth(5, Some(Archetype::ThinSeptum), Some(iso)).unwrap();
        let found = proof(&thin).unwrap();
        assert_eq!(found.course, Course::GraftAndReturn, "{}", thin.title);
        let wide = whole_mouth(5, Some(Archetype::WideSeptum), Some(iso)).unwrap();
        let found = proof(&wide).unwrap();
        assert_eq!(found.course, Course::PlaceToday, "{}", wide.title);
    }
}

#[test]
fn third_molars_are_refused_and_so_are_archetypes_where_they_do_not_occur() {
    assert!(whole_mouth(1, None, Some(18)).unwrap_err().to_string().contains("third molars"));
    let misplaced = whole_mouth(1, Some(Archetype::ThinSeptum), Some(11)).unwrap_err();
    assert!(misplaced.to_string().contains("several roots"), "{misplaced}");
}

#[test]
fn an_address_of_the_whole_mouth_draws_the_same_case_for_ever() {
    // Never edited for a number: whoever moves one of these takes the next generator number and
    // keeps this one.
    let mut moved = Vec::new();
    for (seed, attempt, tooth, name, hash) in FOR_EVER {
        let case = at(address(seed, attempt)).unwrap();
        let found = (case.site.tooth.iso(), case.patient.name.as_str(), fingerprint(&case));
        if found != (tooth, name, hash) {
            moved.push(format!("({seed}, {attempt}, {}, {:?}, {:#x})", found.0, found.1, found.2));
        }
    }
    assert!(moved.is_empty(), "{moved:#?}");
}

const FOR_EVER: [(u64, u32, u8, &str, u64); 11] = [
    (0, 0, 11, "Priya Rao", 0x0497_8101_d921_8062),
    (2, 0, 17, "Haruka Ueda", 0x713f_fdd0_c06f_6744),
    (3, 0, 24, "Emil Dahl", 0xbb32_6822_53c2_0a45),
    (22, 0, 46, "Fiona Keane", 0x0147_fd23_65e8_a53b),
    (26, 0, 26, "Mika Okada", 0x7ba3_c8f0_952a_3f2d),
    (30, 0, 46, "Ndeye Gueye", 0xc035_8185_8137_5d55),
    (42, 0, 37, "Naoko Kimura", 0xcec2_08e4_2abf_7ca7),
    (50, 0, 14, "Rafael Castillo", 0x78f6_b2d7_e645_e5a8),
    (53, 0, 26, "Kwame Owusu", 0x89b1_592f_1dd2_a684),
    (5, 0, 42, "Deepa Rao", 0x4ed3_bfda_c721_2d6f),
    (u64::MAX, 0, 47, "Colin Byrne", 0x172a_7334_9768_ac24),
];
