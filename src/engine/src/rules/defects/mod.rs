//! Socket and defect classes.

mod hidden_facial_loss_not_looked_for;
mod implant_held_by_no_septum;
mod implant_where_two_walls_are_lost;
mod root_between_both_plates_placed;
mod septum_too_thin_for_an_implant;
mod socket_graded_too_lightly;
mod wide_facial_loss_in_one_stage;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &hidden_facial_loss_not_looked_for::RULE,
    &socket_graded_too_lightly::RULE,
    &wide_facial_loss_in_one_stage::RULE,
    &implant_where_two_walls_are_lost::RULE,
    &root_between_both_plates_placed::RULE,
    &septum_too_thin_for_an_implant::RULE,
    &implant_held_by_no_septum::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("implant-held-by-no-septum", include_str!("implant_held_by_no_septum.md")),
    ("septum-too-thin-for-an-implant", include_str!("septum_too_thin_for_an_implant.md")),
    ("hidden-facial-loss-not-looked-for", include_str!("hidden_facial_loss_not_looked_for.md")),
    ("socket-graded-too-lightly", include_str!("socket_graded_too_lightly.md")),
    ("root-between-both-plates-placed", include_str!("root_between_both_plates_placed.md")),
    ("wide-facial-loss-in-one-stage", include_str!("wide_facial_loss_in_one_stage.md")),
    ("implant-where-two-walls-are-lost", include_str!("implant_where_two_walls_are_lost.md")),
];
