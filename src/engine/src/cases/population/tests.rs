//! What must hold of population cases whatever is published: the same values for ever, layers that
//! share what they should, and a way from every seed to a case.

use super::super::tests::fingerprint;
use super::survey::Surveyed;
use super::*;
use crate::cases::{
    Constraints, FORMAT, GENERATOR, Impossible, NoCase, POPULATION, Spread, at, generate_as, proof,
    teaching_at,
};
use crate::chart::Address;

fn address(seed: u64, attempt: u32) -> Address {
    Address { format: FORMAT, generator: POPULATION, seed, attempt, changed: None }
}

#[test]
fn an_address_draws_the_same_population_case_for_ever() {
    // Never edited for a number: whoever moves one of these takes the next generator number and
    // keeps this one.
    for (seed, attempt, tooth, name, length, hash) in FOR_EVER {
        let case = at(address(seed, attempt)).unwrap();
        assert_eq!(case.address, Some(address(seed, attempt)));
        assert_eq!(case.site.tooth.iso(), tooth);
        assert_eq!(case.patient.name, name);
        assert_eq!(case.site.socket.as_one().length.get().to_bits(), f64::to_bits(length));
        assert_eq!(fingerprint(&case), hash, "{seed}.{attempt} {:#x}", fingerprint(&case));
    }
}
const FOR_EVER: [(u64, u32, u8, &str, f64, u64); 6] = [
    (0, 0, 35, "Manoj Mehta", 13.75, 0x323a_4ab8_0528_224a),
    (1, 0, 24, "Bridget Keane", 13.74, 0x6a6a_adf5_0881_6bb4),
    (2024, 3, 25, "Xue Guo", 12.45, 0xdd1d_14b3_86a7_b40d),
    (7, 16, 15, "Rosa Vega", 16.08, 0xb466_58de_53e9_a5fc),
    (u64::MAX, 5, 13, "Bo Chen", 12.89, 0xb33d_6032_d399_5e7a),
    (42, 2, 42, "Wojciech Zajac", 9.07, 0x2ac9_6518_f2a9_e6c4),
];

#[test]
fn seeds_find_population_cases_with_a_sound_plan_and_their_addresses_replay_them() {
    for seed in 0..12 {
        let case = generate_as(Spread::Population, seed, &Constraints::default()).unwrap();
        let address = case.address.unwrap();
        assert_eq!((address.generator, address.seed), (POPULATION, seed));
        assert!(proof(&case).is_some());
        assert_eq!(at(address), Ok(case));
    }
}

#[test]
fn constraints_hold_for_population_cases_too_but_for_archetypes() {
    let asked =
        Constraints { tooth: Tooth::new(22).ok(), aesthetic: Some(true), ..Constraints::default() };
    let case = generate_as(Spread::Population, 5, &asked).unwrap();
    assert!(case.site.tooth.iso() == 22 && case.site.is_aesthetic());
    let lower = Constraints { upper: Some(false), ..Constraints::default() };
    assert!(generate_as(Spread::Population, 5, &lower).unwrap().site.tooth.iso() > 30);

    let archetype =
        Constraints { archetype: Some(crate::cases::Archetype::DefectV), ..Constraints::default() };
    let refused = generate_as(Spread::Population, 5, &archetype).unwrap_err();
    assert_eq!(refused, NoCase::Impossible(Impossible::NoArchetypes));
    assert!(refused.to_string().contains("no archetype"), "{refused}");
    assert!(generate_as(Spread::Teaching, 5, &archetype).is_ok());
}

#[test]
fn the_teaching_generator_is_another_one_and_replays_alone() {
    let teaching = Address { generator: GENERATOR, ..address(2024, 3) };
    assert_eq!(at(teaching), teaching_at(teaching));
    assert_ne!(at(teaching).unwrap().site, at(address(2024, 3)).unwrap().site);
    assert_eq!(teaching_at(address(2024, 3)), Err(NoCase::Generator { found: POPULATION }));
}

#[test]
fn disease_changes_what_it_took_and_nothing_else() {
    let (mut sick, mut lesions) = (0, 0);
    for site in (0..400).filter_map(Surveyed::of) {
        let (before, after) = (&site.before, &site.referred);
        assert_eq!(before.socket, after.socket);
        assert_eq!(before.neighbours, after.neighbours);
        assert_eq!(before.vital, after.vital);
        assert_eq!(
            (&before.ridge.facial, &before.ridge.oral, &before.ridge.crest.unharmed),
            (&after.ridge.facial, &after.ridge.oral, &after.ridge.crest.unharmed)
        );
        assert_eq!(before.ridge.crest.knots, before.ridge.crest.unharmed, "no loss before disease");
        assert_eq!(before.lesion, crate::anatomy::Lesion::None);
        sick += u32::from(before.defects != after.defects || before.ridge != after.ridge);
        lesions += u32::from(after.lesion != crate::anatomy::Lesion::None);
        if matches!(site.cause, Complaint::Trauma | Complaint::CrownFracture) {
            assert_eq!(before.defects, after.defects, "a blow takes no bone here");
        }
    }
    assert!(sick > 40 && lesions > 80, "{sick} {lesions}");
}

#[test]
fn what_is_surveyed_is_the_case() {
    for seed in 0..40 {
        let (surveyed, case) = (Surveyed::of(seed), at(address(seed, 0)));
        assert_eq!(
            surveyed.map(|one| (one.referred, one.patient)),
            case.ok().map(|case| (case.site, case.patient))
        );
    }
}

#[test]
fn most_sites_stand_and_the_proof_hardly_chooses_among_them() {
    let stand = (0..400).filter(|seed| Surveyed::of(*seed).is_some()).count();
    assert!(stand >= 370, "{stand} of 400");
    let cases: Vec<Case> = (0..60).filter_map(|seed| at(address(seed, 0)).ok()).collect();
    let solved = cases.iter().filter(|case| proof(case).is_some()).count();
    assert!(solved * 20 >= cases.len() * 19, "{solved} of {}", cases.len());
}
