//! Closure and follow-up.

mod antibiotic_course_too_long;
mod bleeding_not_pressed;
mod bleeding_risk_without_pack;
mod floor_bleed_not_called_in;
mod floor_of_mouth_not_named;
mod haemostasis_not_checked;
mod hold_not_tested;
mod home_care_left_out;
mod impression_seat_unchecked;
mod infection_not_drained;
mod narrow_band_punched_away;
mod needle_towards_the_membrane;
mod no_antiseptic_rinse;
mod no_emergency_number;
mod numbness_waited_out;
mod prophylaxis_taken_for_settled;
mod recall_too_far_apart;
mod recall_without_a_look;
mod regeneration_left_open;
mod restored_too_early;
mod restored_too_early_in_the_lower_jaw;
mod restored_too_early_over_regeneration;
mod reviews_missed;
mod rinse_too_short_or_too_long;
mod sensation_not_checked;
mod socket_graft_unsealed;
mod suture_that_wicks;
mod suture_too_coarse;
mod sutures_mistimed;
mod sutures_mistimed_over_regeneration;
mod uncovered_too_early;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &prophylaxis_taken_for_settled::RULE,
    &regeneration_left_open::RULE,
    &socket_graft_unsealed::RULE,
    &suture_too_coarse::RULE,
    &suture_that_wicks::RULE,
    &needle_towards_the_membrane::RULE,
    &haemostasis_not_checked::RULE,
    &bleeding_risk_without_pack::RULE,
    &bleeding_not_pressed::RULE,
    &floor_bleed_not_called_in::RULE,
    &no_emergency_number::RULE,
    &home_care_left_out::RULE,
    &floor_of_mouth_not_named::RULE,
    &sensation_not_checked::RULE,
    &no_antiseptic_rinse::RULE,
    &rinse_too_short_or_too_long::RULE,
    &antibiotic_course_too_long::RULE,
    &sutures_mistimed::RULE,
    &sutures_mistimed_over_regeneration::RULE,
    &reviews_missed::RULE,
    &numbness_waited_out::RULE,
    &infection_not_drained::RULE,
    &uncovered_too_early::RULE,
    &hold_not_tested::RULE,
    &narrow_band_punched_away::RULE,
    &restored_too_early::RULE,
    &restored_too_early_over_regeneration::RULE,
    &restored_too_early_in_the_lower_jaw::RULE,
    &impression_seat_unchecked::RULE,
    &recall_too_far_apart::RULE,
    &recall_without_a_look::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("prophylaxis-taken-for-settled", include_str!("prophylaxis_taken_for_settled.md")),
    ("regeneration-left-open", include_str!("regeneration_left_open.md")),
    ("socket-graft-unsealed", include_str!("socket_graft_unsealed.md")),
    ("suture-too-coarse", include_str!("suture_too_coarse.md")),
    ("suture-that-wicks", include_str!("suture_that_wicks.md")),
    ("needle-towards-the-membrane", include_str!("needle_towards_the_membrane.md")),
    ("haemostasis-not-checked", include_str!("haemostasis_not_checked.md")),
    ("bleeding-risk-without-pack", include_str!("bleeding_risk_without_pack.md")),
    ("bleeding-not-pressed", include_str!("bleeding_not_pressed.md")),
    ("floor-bleed-not-called-in", include_str!("floor_bleed_not_called_in.md")),
    ("no-emergency-number", include_str!("no_emergency_number.md")),
    ("home-care-left-out", include_str!("home_care_left_out.md")),
    ("floor-of-mouth-not-named", include_str!("floor_of_mouth_not_named.md")),
    ("sensation-not-checked", include_str!("sensation_not_checked.md")),
    ("no-antiseptic-rinse", include_str!("no_antiseptic_rinse.md")),
    ("rinse-too-short-or-too-long", include_str!("rinse_too_short_or_too_long.md")),
    ("antibiotic-course-too-long", include_str!("antibiotic_course_too_long.md")),
    ("sutures-mistimed", include_str!("sutures_mistimed.md")),
    ("sutures-mistimed-over-regeneration", include_str!("sutures_mistimed_over_regeneration.md")),
    ("reviews-missed", include_str!("reviews_missed.md")),
    ("numbness-waited-out", include_str!("numbness_waited_out.md")),
    ("infection-not-drained", include_str!("infection_not_drained.md")),
    ("restored-too-early", include_str!("restored_too_early.md")),
    (
        "restored-too-early-over-regeneration",
        include_str!("restored_too_early_over_regeneration.md"),
    ),
    ("restored-too-early-in-the-lower-jaw", include_str!("restored_too_early_in_the_lower_jaw.md")),
    ("impression-seat-unchecked", include_str!("impression_seat_unchecked.md")),
    ("narrow-band-punched-away", include_str!("narrow_band_punched_away.md")),
    ("hold-not-tested", include_str!("hold_not_tested.md")),
    ("uncovered-too-early", include_str!("uncovered_too_early.md")),
    ("recall-too-far-apart", include_str!("recall_too_far_apart.md")),
    ("recall-without-a-look", include_str!("recall_without_a_look.md")),
];
