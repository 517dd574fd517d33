//! The horizontal gap.

mod at_risk_margin_without_tissue;
mod gap_filler_that_fades;
mod gap_too_narrow;
mod narrow_gap_left_empty;
mod root_sockets_left_empty;
mod wide_gap_left_empty;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &gap_too_narrow::RULE,
    &root_sockets_left_empty::RULE,
    &wide_gap_left_empty::RULE,
    &narrow_gap_left_empty::RULE,
    &gap_filler_that_fades::RULE,
    &at_risk_margin_without_tissue::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("root-sockets-left-empty", include_str!("root_sockets_left_empty.md")),
    ("gap-too-narrow", include_str!("gap_too_narrow.md")),
    ("wide-gap-left-empty", include_str!("wide_gap_left_empty.md")),
    ("narrow-gap-left-empty", include_str!("narrow_gap_left_empty.md")),
    ("gap-filler-that-fades", include_str!("gap_filler_that_fades.md")),
    ("at-risk-margin-without-tissue", include_str!("at_risk_margin_without_tissue.md")),
];
