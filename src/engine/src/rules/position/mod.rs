//! Dimensions and position.

mod first_drill_in_the_wrong_place;
mod papilla_risk_not_told;
mod pilot_not_checked_near_a_structure;
mod seat_not_checked_on_film;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &papilla_risk_not_told::RULE,
    &first_drill_in_the_wrong_place::RULE,
    &pilot_not_checked_near_a_structure::RULE,
    &seat_not_checked_on_film::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("papilla-risk-not-told", include_str!("papilla_risk_not_told.md")),
    ("first-drill-in-the-wrong-place", include_str!("first_drill_in_the_wrong_place.md")),
    ("pilot-not-checked-near-a-structure", include_str!("pilot_not_checked_near_a_structure.md")),
    ("seat-not-checked-on-film", include_str!("seat_not_checked_on_film.md")),
];
