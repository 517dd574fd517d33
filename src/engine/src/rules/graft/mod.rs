//! Graft.

mod contour_layer_too_thin;
mod contour_under_thin_unreleased_flap;
mod fast_graft_alone_over_dehiscence;
mod filled_short_of_the_crest;
mod gap_and_wall_underfilled;
mod graft_dry;
mod graft_in_pus;
mod graft_not_packed_in_layers;
mod graft_origin_not_consented;
mod grains_too_coarse_for_the_gap;
mod grains_too_fine;
mod one_graft_taken_for_best;
mod overfilled_above_the_crest;
mod turnover_ignored;
mod vital_bone_taken_for_ridge_shape;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &graft_origin_not_consented::RULE,
    &graft_in_pus::RULE,
    &gap_and_wall_underfilled::RULE,
    &filled_short_of_the_crest::RULE,
    &overfilled_above_the_crest::RULE,
    &grains_too_fine::RULE,
    &grains_too_coarse_for_the_gap::RULE,
    &graft_dry::RULE,
    &graft_not_packed_in_layers::RULE,
    &contour_layer_too_thin::RULE,
    &contour_under_thin_unreleased_flap::RULE,
    &fast_graft_alone_over_dehiscence::RULE,
    &vital_bone_taken_for_ridge_shape::RULE,
    &one_graft_taken_for_best::RULE,
    &turnover_ignored::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("graft-origin-not-consented", include_str!("graft_origin_not_consented.md")),
    ("graft-in-pus", include_str!("graft_in_pus.md")),
    ("gap-and-wall-underfilled", include_str!("gap_and_wall_underfilled.md")),
    ("filled-short-of-the-crest", include_str!("filled_short_of_the_crest.md")),
    ("overfilled-above-the-crest", include_str!("overfilled_above_the_crest.md")),
    ("grains-too-fine", include_str!("grains_too_fine.md")),
    ("grains-too-coarse-for-the-gap", include_str!("grains_too_coarse_for_the_gap.md")),
    ("graft-dry", include_str!("graft_dry.md")),
    ("graft-not-packed-in-layers", include_str!("graft_not_packed_in_layers.md")),
    ("contour-layer-too-thin", include_str!("contour_layer_too_thin.md")),
    ("contour-under-thin-unreleased-flap", include_str!("contour_under_thin_unreleased_flap.md")),
    ("fast-graft-alone-over-dehiscence", include_str!("fast_graft_alone_over_dehiscence.md")),
    ("vital-bone-taken-for-ridge-shape", include_str!("vital_bone_taken_for_ridge_shape.md")),
    ("one-graft-taken-for-best", include_str!("one_graft_taken_for_best.md")),
    ("turnover-ignored", include_str!("turnover_ignored.md")),
];
