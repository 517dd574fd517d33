//! Membrane.

mod bare_membrane_covered_again;
mod bare_membrane_misjudged;
mod barrier_against_a_root;
mod defect_left_uncovered;
mod dense_ptfe_out_at_the_wrong_time;
mod expanded_ptfe_left_open;
mod folded_over_an_abutment;
mod folded_without_oral_seat;
mod graft_packed_before_membrane;
mod late_abutment_through_regeneration;
mod membrane_short_of_intact_bone;
mod membrane_short_over_the_oral_crest;
mod membrane_unfixed;
mod membrane_wrinkled_or_sharp;
mod resorbable_barrier_outlived;
mod soft_barrier_over_a_lost_wall;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &defect_left_uncovered::RULE,
    &membrane_short_of_intact_bone::RULE,
    &membrane_short_over_the_oral_crest::RULE,
    &barrier_against_a_root::RULE,
    &graft_packed_before_membrane::RULE,
    &membrane_wrinkled_or_sharp::RULE,
    &membrane_unfixed::RULE,
    &soft_barrier_over_a_lost_wall::RULE,
    &resorbable_barrier_outlived::RULE,
    &folded_over_an_abutment::RULE,
    &folded_without_oral_seat::RULE,
    &expanded_ptfe_left_open::RULE,
    &dense_ptfe_out_at_the_wrong_time::RULE,
    &bare_membrane_misjudged::RULE,
    &bare_membrane_covered_again::RULE,
    &late_abutment_through_regeneration::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("defect-left-uncovered", include_str!("defect_left_uncovered.md")),
    ("membrane-short-of-intact-bone", include_str!("membrane_short_of_intact_bone.md")),
    ("membrane-short-over-the-oral-crest", include_str!("membrane_short_over_the_oral_crest.md")),
    ("barrier-against-a-root", include_str!("barrier_against_a_root.md")),
    ("graft-packed-before-membrane", include_str!("graft_packed_before_membrane.md")),
    ("membrane-wrinkled-or-sharp", include_str!("membrane_wrinkled_or_sharp.md")),
    ("membrane-unfixed", include_str!("membrane_unfixed.md")),
    ("soft-barrier-over-a-lost-wall", include_str!("soft_barrier_over_a_lost_wall.md")),
    ("resorbable-barrier-outlived", include_str!("resorbable_barrier_outlived.md")),
    ("folded-over-an-abutment", include_str!("folded_over_an_abutment.md")),
    ("expanded-ptfe-left-open", include_str!("expanded_ptfe_left_open.md")),
    ("dense-ptfe-out-at-the-wrong-time", include_str!("dense_ptfe_out_at_the_wrong_time.md")),
    ("bare-membrane-covered-again", include_str!("bare_membrane_covered_again.md")),
    ("late-abutment-through-regeneration", include_str!("late_abutment_through_regeneration.md")),
    ("bare-membrane-misjudged", include_str!("bare_membrane_misjudged.md")),
    ("folded-without-oral-seat", include_str!("folded_without_oral_seat.md")),
];
