//! Flap.

mod flap_base_narrower_than_margin;
mod flap_closed_under_tension;
mod flap_raised_over_intact_walls;
mod flap_short_of_membrane;
mod flap_too_long_for_its_base;
mod flapless_beside_lingual_undercut;
mod flapless_on_narrow_keratinised_tissue;
mod flapless_with_wall_defect;
mod incision_over_small_graft;
mod incision_over_the_graft;
mod oral_margin_left_down_for_fold;
mod papillae_raised_needlessly;
mod release_more_than_needed;
mod release_on_root_prominence;
mod release_over_mental_nerve;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &flapless_on_narrow_keratinised_tissue::RULE,
    &flap_raised_over_intact_walls::RULE,
    &papillae_raised_needlessly::RULE,
    &release_on_root_prominence::RULE,
    &release_over_mental_nerve::RULE,
    &flap_base_narrower_than_margin::RULE,
    &flap_too_long_for_its_base::RULE,
    &flapless_beside_lingual_undercut::RULE,
    &flapless_with_wall_defect::RULE,
    &incision_over_small_graft::RULE,
    &incision_over_the_graft::RULE,
    &flap_short_of_membrane::RULE,
    &oral_margin_left_down_for_fold::RULE,
    &release_more_than_needed::RULE,
    &flap_closed_under_tension::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("flapless-with-wall-defect", include_str!("flapless_with_wall_defect.md")),
    (
        "flapless-on-narrow-keratinised-tissue",
        include_str!("flapless_on_narrow_keratinised_tissue.md"),
    ),
    ("flapless-beside-lingual-undercut", include_str!("flapless_beside_lingual_undercut.md")),
    ("flap-raised-over-intact-walls", include_str!("flap_raised_over_intact_walls.md")),
    ("papillae-raised-needlessly", include_str!("papillae_raised_needlessly.md")),
    ("release-more-than-needed", include_str!("release_more_than_needed.md")),
    ("release-on-root-prominence", include_str!("release_on_root_prominence.md")),
    ("release-over-mental-nerve", include_str!("release_over_mental_nerve.md")),
    ("flap-base-narrower-than-margin", include_str!("flap_base_narrower_than_margin.md")),
    ("flap-too-long-for-its-base", include_str!("flap_too_long_for_its_base.md")),
    ("incision-over-small-graft", include_str!("incision_over_small_graft.md")),
    ("incision-over-the-graft", include_str!("incision_over_the_graft.md")),
    ("flap-short-of-membrane", include_str!("flap_short_of_membrane.md")),
    ("oral-margin-left-down-for-fold", include_str!("oral_margin_left_down_for_fold.md")),
    ("flap-closed-under-tension", include_str!("flap_closed_under_tension.md")),
];
