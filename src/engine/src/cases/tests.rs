//! What must hold of drawn cases: the same values for ever, published ranges, consistency.

use super::archetype::{Brief, Facial};
use super::draw::Draws;
use super::shape::{apex, face};
use super::socket::Sagittal;
use super::*;
use crate::anatomy::{DefectKind, Jaw, Lesion, LipLine, Neighbour, Wall};
use crate::chart::{Complaint, Sex};

fn address(seed: u64, attempt: u32) -> Address {
    Address { format: FORMAT, generator: GENERATOR, seed, attempt, changed: None }
}

/// Sites drawn with nothing bound, at one tooth.
fn free(iso: u8, count: u64) -> Vec<Site> {
    let tooth = Tooth::new(iso).unwrap();
    (0..count)
        .filter_map(|seed| {
            let draws = Draws::of(address(seed, 0));
            site_and_patient(&draws, tooth, &Brief::free()).ok().map(|(site, _)| site)
        })
        .collect()
}

/// Archetypes, sites and patients of teaching draws, without their readings.
fn people(count: u64) -> Vec<(Archetype, Site, Patient)> {
    (0..count)
        .filter_map(|seed| {
            let draws = Draws::of(address(seed, 0));
            let archetype = archetype_of(&draws);
            let tooth = tooth_of(&draws, archetype);
            let (site, patient) = site_and_patient(&draws, tooth, &archetype.brief()).ok()?;
            Some((archetype, site, patient))
        })
        .collect()
}

/// Teaching draws of the first attempts, rejected ones left out.
fn drawn(count: u64) -> Vec<(Archetype, Case)> {
    (0..count)
        .filter_map(|seed| {
            let draws = Draws::of(address(seed, 0));
            Some((archetype_of(&draws), draw(&draws).ok()?))
        })
        .collect()
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    sum / count
}

fn share<T>(drawn: &[T], of: impl Fn(&T) -> bool) -> f64 {
    drawn.iter().filter(|one| of(one)).count() as f64 / drawn.len() as f64
}

/// Plate at the reference crest.
fn crest_plate(site: &Site) -> f64 {
    face(&site.ridge.facial, 0.0) - site.socket.only().unwrap().half_fo.get()
}

#[test]
fn plates_at_the_crest_are_as_thin_as_in_fresh_sockets() {
    // Huynh-Ba et al. 2010, confirmed: at most 1 mm in 87 % of upper front, 59 % of premolar
    // sockets; ranges of the evidence file: 82 to 92, 50 to 65 %.
    for (iso, range) in [(11, 0.82..=0.92), (12, 0.80..=0.92), (13, 0.76..=0.92), (14, 0.50..=0.65)]
    {
        let thin = share(&free(iso, 1500), |site| crest_plate(site) <= 1.0);
        assert!(range.contains(&thin), "{iso}: {thin}");
    }
}

#[test]
fn sagittal_classes_keep_their_published_shares() {
    // Class I 78-84 %, II 6-11, III 0.5-2, IV 6-12 (pooled from Kan 2011 and Kong 2020).
    let tooth = Tooth::new(11).unwrap();
    let row = ToothRow::of(tooth).unwrap();
    let count = 10_000_u32;
    let classes: Vec<Sagittal> = (0..u64::from(count))
        .map(|seed| {
            let draws = Draws::of(address(seed, 0));
            socket::draw(&draws, tooth, row, Sex::Male, 2.0, &Brief::free()).sagittal
        })
        .collect();
    let of = |class: Sagittal| {
        classes.iter().filter(|one| **one == class).count() as f64 / f64::from(count)
    };
    assert!((0.78..=0.84).contains(&of(Sagittal::Facial)), "{}", of(Sagittal::Facial));
    assert!((0.06..=0.11).contains(&of(Sagittal::Central)));
    assert!((0.005..=0.02).contains(&of(Sagittal::Oral)));
    assert!((0.06..=0.12).contains(&of(Sagittal::Engaged)));
}

#[test]
fn ridge_width_and_its_angle_to_the_root_come_out_as_surveyed() {
    // 11: mean of three levels 7.43 (Cho 2019, crest to apex) to 9.55 mm (Zhang 2015, to the nasal
    // floor), both confirmed; root against ridge 15 degrees (400 scans, confirmed), taken +-4.
    let sites = free(11, 2000);
    let width = mean(sites.iter().map(|site| {
        let tip = apex(site.socket.only().unwrap()).z;
        let at = |z| face(&site.ridge.facial, z) - face(&site.ridge.oral, z);
        (at(0.0) + at(0.5 * tip) + at(tip)) / 3.0
    }));
    assert!((7.4..=9.6).contains(&width), "{width}");
    let angle = mean(sites.iter().map(|site| {
        let root = site.socket.only().unwrap();
        let tip = apex(root);
        let middle = |z| f64::midpoint(face(&site.ridge.facial, z), face(&site.ridge.oral, z));
        let ridge = libm::atan2(middle(tip.z) - middle(0.0), tip.z);
        (root.tilt.radians() - ridge) * (180.0 / core::f64::consts::PI)
    }));
    assert!((11.0..=19.0).contains(&angle), "{angle}");
}

#[test]
fn facial_concavities_of_upper_front_sites_are_of_the_surveyed_depth() {
    // Zhang et al. 2015, 51 scans, confirmed: deepest 0.76 mm at 11, 0.87 at 12. No spread was read,
    // and where the line was laid was not seen: a factor of two either way.
    for (iso, surveyed) in [(11, 0.76), (12, 0.87)] {
        let depth = mean(free(iso, 1500).iter().map(readings::concavity));
        assert!((surveyed / 2.0..=surveyed * 2.0).contains(&depth), "{iso}: {depth}");
    }
}

#[test]
fn floors_and_canals_come_nearer_towards_the_molars() {
    let floor = |iso| mean(free(iso, 1500).iter().filter_map(readings::to_floor));
    let (first, second) = (floor(14), floor(15));
    // Eberhardt et al. 1992: 6-7 mm at the first premolar (confirmed secondary); less behind it.
    assert!((5.5..=8.0).contains(&first) && second < first - 1.5, "{first} {second}");
    let canal = mean(free(45, 1500).iter().filter_map(|site| {
        let run = site.vital.canal.as_ref()?;
        Some(
            shape::to_segment(apex(site.socket.only().unwrap()), run.from, run.to)
                - run.radius.get(),
        )
    }));
    // 35 mean 5.52 (80 scans, confirmed); the rise to the foramen keeps the canal a little lower here.
    assert!((4.5..=7.5).contains(&canal), "{canal}");
}

#[test]
fn the_mental_foramen_lies_in_the_premolar_span() {
    // Between the premolars (-7 mm at most) to the second premolar's distal face.
    let inside = share(&free(45, 1000), |site| {
        site.vital.foramen.is_some_and(|at| (-7.0..=3.5).contains(&at.x))
    });
    assert!(inside >= 0.9, "{inside}");
}

#[test]
fn crowns_and_roots_keep_their_ratio() {
    // Upper incisors 1.05 to 1.45 (handbook 1.24 to 1.44, scans 1.1 to 1.2), lower 1.3 to 1.5.
    let ratio = |iso| {
        mean(free(iso, 1500).iter().map(|site| {
            let root = site.socket.only().unwrap();
            (root.length + root.neck).get() / (-site.crown.edge.z - root.neck.get())
        }))
    };
    assert!((1.05..=1.45).contains(&ratio(11)), "{}", ratio(11));
    assert!((1.05..=1.50).contains(&ratio(12)), "{}", ratio(12));
    assert!((1.25..=1.55).contains(&ratio(42)), "{}", ratio(42));
}

#[test]
fn root_and_plates_fill_the_ridge_and_nothing_stands_out_of_it() {
    for (archetype, site, _) in people(800) {
        holds_together(&site).unwrap();
        let facial = crest_plate(&site);
        let oral = -face(&site.ridge.oral, 0.0) - site.socket.only().unwrap().half_fo.get();
        assert!(facial > 0.1 && oral > 0.1, "{archetype:?}");
    }
}

#[test]
fn an_archetype_brings_what_it_is_named_for() {
    for (archetype, case) in drawn(700) {
        let site = &case.site;
        let facial = site.defects_of(Wall::Facial).map(|defect| defect.kind).next();
        let expected = match archetype.brief().facial {
            Facial::Whole => None,
            Facial::V => Some(DefectKind::DehiscenceV),
            Facial::U => Some(DefectKind::DehiscenceU),
            Facial::Lost => Some(DefectKind::LostWall),
            Facial::Window => Some(DefectKind::Fenestration),
        };
        assert_eq!(facial, expected, "{archetype:?}");
        let oral = matches!(archetype, Archetype::OralDefect | Archetype::TwoWalls);
        assert_eq!(site.defects_of(Wall::Oral).count() > 0, oral);
        match archetype {
            Archetype::IntactThick => assert!(crest_plate(&case.site) > 1.0),
            Archetype::IntactThin => assert!(crest_plate(&case.site) < 1.0),
            Archetype::ChronicLesion => assert!(matches!(site.lesion, Lesion::Chronic { .. })),
            Archetype::ThinGumHighLip => {
                assert!(site.soft.thickness.get() < 1.0 && site.soft.lip == LipLine::High);
            }
            Archetype::Recession => assert!(site.soft.margin_below_twin.get() >= 1.0),
            Archetype::NeighbourImplant => {
                let beside = [&site.neighbours.mesial, &site.neighbours.distal];
                assert!(beside.iter().any(|one| matches!(one, Neighbour::Implant(_))));
            }
            Archetype::NearCanal => {
                assert!(case.readings.sections.canal.unwrap().get() < 4.5, "{}", case.title);
            }
            Archetype::NearSinus => assert!(case.readings.sections.floor.unwrap().get() < 3.0),
            Archetype::LingualUndercut => {
                assert!(
                    case.readings.sections.undercut.get() > 1.5,
                    "{:?}",
                    case.readings.sections
                );
            }
            Archetype::Restorable => {
                assert_eq!(case.patient.complaint, Complaint::Restorable);
            }
            _ => {}
        }
        assert_eq!(case.patient.pregnancy_week.is_some(), archetype == Archetype::Pregnancy);
    }
}

#[test]
fn a_section_states_its_error_and_keeps_to_it_and_a_film_never_shows_the_facial_wall() {
    for (_, case) in drawn(400) {
        let report = &case.readings.sections;
        let tip = apex(case.site.socket.only().unwrap()).z;
        let at = |z| face(&case.site.ridge.facial, z) - face(&case.site.ridge.oral, z);
        for (read, truth) in report.ridge_width.iter().zip([at(0.0), at(0.5 * tip), at(tip)]) {
            assert!((read.get() - truth).abs() <= report.error.get() + 1e-9, "{}", case.title);
        }
        let plan = crate::plan::Plan::default();
        let m = crate::measure::Measurements::of(&case, &plan);
        for (read, truth) in
            [(report.facial_plate, m.facial_plate()), (report.oral_plate, m.oral_plate())]
        {
            let truth = truth.unwrap().get();
            match read {
                Some(read) => assert!((read.get() - truth).abs() <= report.error.get() + 1e-9),
                None => assert!(truth < 0.6, "{}: {truth}", case.title),
            }
        }
        // A plate that is not there, or too thin, is not discernible.
        let open = case
            .site
            .defects_of(Wall::Facial)
            .any(|defect| defect.kind != DefectKind::Fenestration);
        if open && case.site.ridge.crest.knots == case.site.ridge.crest.unharmed {
            assert_eq!(report.facial_plate, None, "{}", case.title);
        }
    }
}

#[test]
fn about_an_eighth_of_soundings_read_more_than_a_millimetre_too_shallow() {
    // 12 % of 190 teeth (Kan 2003, confirmed). Intact sites: the truth lies near 3 mm.
    let cases: Vec<Case> = drawn(1500)
        .into_iter()
        .filter(|(archetype, _)| archetype.brief().facial == Facial::Whole)
        .filter(|(archetype, _)| archetype.brief().crest == archetype::Crestal::Whole)
        .map(|(_, case)| case)
        .collect();
    let shallow = share(&cases, |case| {
        -case.site.soft.margin_z.get() - case.readings.sounding[1].depth.get() > 1.0
    });
    assert!((0.07..=0.17).contains(&shallow), "{shallow}");
    let sounded = mean(cases.iter().map(|case| case.readings.sounding[1].depth.get()));
    // 3.19 +- 0.71 as sounded.
    assert!((2.7..=3.4).contains(&sounded), "{sounded}");
}

#[test]
fn age_sex_habits_and_history_do_not_follow_the_name() {
    let list_of = |patient: &Patient| {
        let family = patient.name.split(' ').nth(1).unwrap();
        names::LISTS.iter().position(|list| list.families.contains(&family)).unwrap()
    };
    let mut groups = vec![Vec::new(); names::LISTS.len()];
    for (archetype, site, patient) in people(5000) {
        if archetype.brief().gate.is_none() {
            groups[list_of(&patient)].push((site.is_aesthetic(), patient));
        }
    }
    let whole: Vec<(bool, Patient)> = groups.concat();
    for group in &groups {
        let n = group.len() as f64;
        assert!(n > 200.0, "every list is drawn from: {n}");
        // Four standard errors of each share and mean.
        let all_share = |of: fn(&(bool, Patient)) -> bool| {
            let (one, all) = (share(group, of), share(&whole, of));
            assert!((one - all).abs() < 4.0 * libm::sqrt(all * (1.0 - all) / n), "{one} {all}");
        };
        all_share(|(_, patient)| patient.sex == Sex::Female);
        all_share(|(_, patient)| patient.cigarettes > 0);
        all_share(|(_, patient)| patient.sugar.is_some());
        all_share(|(_, patient)| patient.complaint == Complaint::Caries);
        all_share(|(aesthetic, _)| *aesthetic);
        let age = |people: &[(bool, Patient)]| {
            mean(people.iter().map(|(_, patient)| f64::from(patient.age)))
        };
        assert!((age(group) - age(&whole)).abs() < 4.0 * 14.0 / libm::sqrt(n));
    }
}

#[test]
fn histories_hang_together() {
    let (mut old, mut with_history) = (0, 0);
    for (archetype, _, patient) in people(2000) {
        if let Some(week) = patient.pregnancy_week {
            assert!(patient.sex == Sex::Female && (18..=45).contains(&patient.age));
            assert!((1..=41).contains(&week));
        }
        let gate = archetype.brief().gate;
        assert!(patient.growth_complete || patient.age < 21);
        assert!(patient.age >= 18 || patient.cigarettes == 0);
        assert!(patient.stent.is_none() || patient.antiplatelets > 0);
        assert!(patient.antiresorptive.is_none() || patient.age >= 35 || gate.is_none());
        assert!((1..=3).contains(&patient.asa));
        if patient.age >= 70 {
            old += 1;
            with_history += i32::from(patient.asa > 1);
        }
    }
    // A patient of 70 has a history of 70 years, most of the time.
    assert!(f64::from(with_history) > 0.6 * f64::from(old), "{with_history} of {old}");
}

#[test]
fn archetypes_are_spread_evenly_over_the_groups_of_decisions() {
    let count = 7000;
    let mut of_group = std::collections::BTreeMap::new();
    for seed in 0..count {
        *of_group.entry(archetype_at(address(seed, 0)).group()).or_insert(0_u32) += 1;
    }
    for group in Group::OF_ONE_ROOT {
        assert!((880..=1120).contains(&of_group[&group]), "{group:?} {}", of_group[&group]);
    }
}

#[test]
fn constraints_are_met_and_the_address_replays_without_them() {
    let asked = Constraints {
        archetype: Some(Archetype::DefectV),
        tooth: Tooth::new(24).ok(),
        ..Constraints::default()
    };
    let case = generate_with(77, &asked).unwrap();
    let address = case.address.unwrap();
    assert_eq!(case.site.tooth.iso(), 24);
    assert_eq!(archetype_at(address), Archetype::DefectV);
    assert_eq!(at(address), Ok(case));
}

#[test]
fn constraints_that_contradict_each_other_say_so() {
    let misplaced = Constraints {
        archetype: Some(Archetype::NearCanal),
        tooth: Tooth::new(11).ok(),
        ..Constraints::default()
    };
    assert!(generate_with(1, &misplaced).unwrap_err().to_string().contains("35"));
    let molar = Constraints { tooth: Tooth::new(16).ok(), ..Constraints::default() };
    assert!(generate_with(1, &molar).unwrap_err().to_string().contains("one root"));
}

#[test]
fn a_later_notation_or_generator_is_refused_with_a_way_out() {
    let later = Address { format: 2, ..address(1, 0) };
    assert_eq!(at(later), Err(NoCase::Format { found: 2 }));
    let newer = Address { generator: 9, ..address(1, 0) };
    assert!(at(newer).unwrap_err().to_string().contains("written out in full"));
}

#[test]
fn no_jaw_but_the_lower_has_a_canal_and_no_tooth_but_a_central_a_nasopalatine_canal() {
    for (_, case) in drawn(400) {
        let (site, upper) = (&case.site, case.site.tooth.jaw() == Jaw::Maxilla);
        assert!(!upper || site.vital.canal.is_none() && site.vital.foramen.is_none());
        assert_eq!(upper, site.vital.floor.is_some());
        assert_eq!(upper && site.tooth.position() == 1, site.vital.nasopalatine.is_some());
    }
}

/// FNV-1a, 64 bits, of the case as JSON: every field, every bit of every number.
pub(super) fn fingerprint(case: &Case) -> u64 {
    let text = serde_json::to_string(case).unwrap();
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

#[test]
fn an_address_draws_the_same_case_for_ever() {
    // Never edited for a number: whoever moves one of these takes the next generator number and
    // keeps this one.
    for (seed, attempt, tooth, name, length, hash) in FOR_EVER {
        let case = at(address(seed, attempt)).unwrap();
        assert_eq!(case.site.tooth.iso(), tooth);
        assert_eq!(case.patient.name, name);
        assert_eq!(case.site.socket.only().unwrap().length.get().to_bits(), f64::to_bits(length));
        assert_eq!(fingerprint(&case), hash, "{seed}.{attempt} {:#x}", fingerprint(&case));
    }
}
const FOR_EVER: [(u64, u32, u8, &str, f64, u64); 8] = [
    (0, 0, 24, "Rohan Mehta", 12.83, 0xf368_e7f6_b178_7bff),
    (1, 0, 31, "Rafael Vega", 11.74, 0x66f0_5ad9_2669_11c8),
    (2024, 3, 21, "Wei Zhou", 10.25, 0x57ce_e9cf_0df4_e5ab),
    (7, 16, 25, "Fiona Nolan", 11.8, 0x8b29_96d0_3808_4c0f),
    (u64::MAX, 5, 41, "Camila Vega", 9.63, 0x4226_5c2b_636a_4429),
    (123456789, 48, 21, "Bo Zhou", 12.02, 0x08b9_d753_426a_92be),
    (42, 2, 11, "Cheikh Sarr", 12.59, 0x0d85_eddb_6b8c_a710),
    (99, 0, 42, "Lei Song", 12.06, 0xd5eb_64f1_f3cd_4cde),
];

#[test]
fn every_archetype_has_cases_and_their_proofs_are_sound() {
    use crate::debrief::{PlanWord, judge};
    use crate::plan::Plan;
    let of_one_root = |one: &&Archetype| one.group() != Group::SeveralRoots;
    for archetype in Archetype::ALL.iter().filter(of_one_root) {
        let asked = Constraints { archetype: Some(*archetype), ..Constraints::default() };
        let case = generate_with(41, &asked).unwrap();
        let found = proof(&case).unwrap();
        let plan = Plan::from_draft(&found.draft, &case).unwrap();
        assert_eq!(PlanWord::of(&judge(&case, &plan)), PlanWord::Sound, "{archetype:?}");
        assert_eq!(plan.course(), Some(found.course), "{archetype:?}");
        assert_eq!(proof(&case), Some(found), "the same one every time");
    }
}

#[test]
fn most_first_attempts_stand_so_that_archetypes_keep_their_share() {
    let cases = drawn(100);
    let solved = cases.iter().filter(|(_, case)| proof(case).is_some()).count();
    assert!(solved * 20 >= cases.len() * 19, "{solved} of {}", cases.len());
}

#[test]
fn a_proof_answers_what_is_asked_and_nothing_else() {
    for (_, case) in drawn(40) {
        let Some(found) = proof(&case) else { continue };
        for (decision, _) in found.draft.iter() {
            assert!(crate::plan::is_asked(decision, &found.draft, &case), "{decision:?}");
        }
    }
}

#[test]
fn where_a_gate_or_a_finding_forces_it_the_proof_does_not_treat() {
    use crate::plan::choices::Course;
    let course = |archetype| {
        let asked = Constraints { archetype: Some(archetype), ..Constraints::default() };
        proof(&generate_with(8, &asked).unwrap()).unwrap().course
    };
    assert_eq!(course(Archetype::Restorable), Course::KeepTooth);
    assert_eq!(course(Archetype::SpreadingInfection), Course::Refer);
    assert_eq!(course(Archetype::CancerDose), Course::Refer);
    assert_eq!(course(Archetype::Pregnancy), Course::Postpone);
    assert_eq!(course(Archetype::IntactThick), Course::PlaceToday);
}
