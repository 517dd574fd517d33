//! Diagnostics and consent.

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[];
