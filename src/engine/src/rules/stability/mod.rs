//! Primary stability.

mod abutment_on_low_torque;
mod dense_bone_under_prepared;
mod drilled_without_cooling;
mod late_abutment_on_low_torque;
mod late_loose_implant_left;
mod late_low_torque_submerged;
mod late_torque_too_high;
mod loose_implant_left;
mod low_torque_restored_early;
mod low_torque_submerged;
mod pressed_on_while_healing;
mod provisional_in_contact;
mod provisional_on_low_torque;
mod reseated_without_need;
mod soft_bone_fully_prepared;
mod torque_too_high_on_thin_plate;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &drilled_without_cooling::RULE,
    &soft_bone_fully_prepared::RULE,
    &dense_bone_under_prepared::RULE,
    &reseated_without_need::RULE,
    &loose_implant_left::RULE,
    &low_torque_submerged::RULE,
    &abutment_on_low_torque::RULE,
    &provisional_on_low_torque::RULE,
    &provisional_in_contact::RULE,
    &torque_too_high_on_thin_plate::RULE,
    &pressed_on_while_healing::RULE,
    &late_loose_implant_left::RULE,
    &late_low_torque_submerged::RULE,
    &late_abutment_on_low_torque::RULE,
    &late_torque_too_high::RULE,
    &low_torque_restored_early::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("drilled-without-cooling", include_str!("drilled_without_cooling.md")),
    ("soft-bone-fully-prepared", include_str!("soft_bone_fully_prepared.md")),
    ("dense-bone-under-prepared", include_str!("dense_bone_under_prepared.md")),
    ("reseated-without-need", include_str!("reseated_without_need.md")),
    ("loose-implant-left", include_str!("loose_implant_left.md")),
    ("low-torque-submerged", include_str!("low_torque_submerged.md")),
    ("abutment-on-low-torque", include_str!("abutment_on_low_torque.md")),
    ("provisional-on-low-torque", include_str!("provisional_on_low_torque.md")),
    ("provisional-in-contact", include_str!("provisional_in_contact.md")),
    ("torque-too-high-on-thin-plate", include_str!("torque_too_high_on_thin_plate.md")),
    ("pressed-on-while-healing", include_str!("pressed_on_while_healing.md")),
    ("late-loose-implant-left", include_str!("late_loose_implant_left.md")),
    ("late-low-torque-submerged", include_str!("late_low_torque_submerged.md")),
    ("late-abutment-on-low-torque", include_str!("late_abutment_on_low_torque.md")),
    ("late-torque-too-high", include_str!("late_torque_too_high.md")),
    ("low-torque-restored-early", include_str!("low_torque_restored_early.md")),
];
