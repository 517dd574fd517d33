//! The facial plate.

mod broken_plate_misjudged;
mod facial_bone_too_thin_after_grafting;
mod facial_plate_levered;
mod flap_before_extraction_without_need;
mod healed_facial_bone_too_thin;
mod lost_tip_misjudged;
mod several_roots_taken_whole;
mod socket_not_debrided;
mod thin_plate_left_to_heal;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &flap_before_extraction_without_need::RULE,
    &facial_plate_levered::RULE,
    &several_roots_taken_whole::RULE,
    &socket_not_debrided::RULE,
    &broken_plate_misjudged::RULE,
    &lost_tip_misjudged::RULE,
    &thin_plate_left_to_heal::RULE,
    &facial_bone_too_thin_after_grafting::RULE,
    &healed_facial_bone_too_thin::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("several-roots-taken-whole", include_str!("several_roots_taken_whole.md")),
    ("flap-before-extraction-without-need", include_str!("flap_before_extraction_without_need.md")),
    ("facial-plate-levered", include_str!("facial_plate_levered.md")),
    ("socket-not-debrided", include_str!("socket_not_debrided.md")),
    ("broken-plate-misjudged", include_str!("broken_plate_misjudged.md")),
    ("lost-tip-misjudged", include_str!("lost_tip_misjudged.md")),
    ("thin-plate-left-to-heal", include_str!("thin_plate_left_to_heal.md")),
    ("facial-bone-too-thin-after-grafting", include_str!("facial_bone_too_thin_after_grafting.md")),
    ("healed-facial-bone-too-thin", include_str!("healed_facial_bone_too_thin.md")),
];
