//! The course of care, judged both ways.

mod advanced_repair_handed_on;
mod antibiotic_in_place_of_drainage;
mod carried_on_past_a_found_defect;
mod disease_left_today;
mod held_back_from_a_healed_ridge;
mod held_back_from_a_suitable_site;
mod interim_crown_that_never_came;
mod interim_plate_on_the_graft;
mod lost_tooth_kept;
mod put_off_without_a_date;
mod referred_to_the_wrong_place;
mod restorable_tooth_extracted;
mod revised_past_a_gate;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &restorable_tooth_extracted::RULE,
    &lost_tooth_kept::RULE,
    &disease_left_today::RULE,
    &antibiotic_in_place_of_drainage::RULE,
    &put_off_without_a_date::RULE,
    &referred_to_the_wrong_place::RULE,
    &revised_past_a_gate::RULE,
    &interim_crown_that_never_came::RULE,
    &interim_plate_on_the_graft::RULE,
    &carried_on_past_a_found_defect::RULE,
    &held_back_from_a_suitable_site::RULE,
    &advanced_repair_handed_on::RULE,
    &held_back_from_a_healed_ridge::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("restorable-tooth-extracted", include_str!("restorable_tooth_extracted.md")),
    ("lost-tooth-kept", include_str!("lost_tooth_kept.md")),
    ("disease-left-today", include_str!("disease_left_today.md")),
    ("antibiotic-in-place-of-drainage", include_str!("antibiotic_in_place_of_drainage.md")),
    ("put-off-without-a-date", include_str!("put_off_without_a_date.md")),
    ("referred-to-the-wrong-place", include_str!("referred_to_the_wrong_place.md")),
    ("revised-past-a-gate", include_str!("revised_past_a_gate.md")),
    ("interim-crown-that-never-came", include_str!("interim_crown_that_never_came.md")),
    ("interim-plate-on-the-graft", include_str!("interim_plate_on_the_graft.md")),
    ("carried-on-past-a-found-defect", include_str!("carried_on_past_a_found_defect.md")),
    ("held-back-from-a-suitable-site", include_str!("held_back_from_a_suitable_site.md")),
    ("advanced-repair-handed-on", include_str!("advanced_repair_handed_on.md")),
    ("held-back-from-a-healed-ridge", include_str!("held_back_from_a_healed_ridge.md")),
];
