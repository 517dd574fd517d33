//! Dimensions and position.

mod apex_through_the_plate;
mod axis_off_the_crown;
mod axis_past_an_angled_channel;
mod drill_too_near_the_canal;
mod facial_plate_touched;
mod first_drill_in_the_wrong_place;
mod foramen_not_located;
mod healed_oral_bone_too_thin;
mod implant_length_unusual;
mod implant_off_the_septum;
mod implant_too_narrow_for_a_molar;
mod implant_too_wide;
mod implant_wider_than_the_septum;
mod late_apex_through_the_plate;
mod late_axis_off_the_crown;
mod late_drill_near_the_canal;
mod late_drill_near_the_foramen;
mod late_implant_near_a_root;
mod late_implant_near_an_implant;
mod late_implant_near_the_nasopalatine_canal;
mod late_implant_through_the_floor;
mod late_implant_too_narrow_for_a_molar;
mod late_lingual_cortex_perforated;
mod late_platform_above_the_crest;
mod late_platform_far_below_the_crest;
mod late_platform_too_deep;
mod late_platform_too_far_facial;
mod late_platform_too_far_oral;
mod late_platform_too_shallow;
mod lingual_cortex_perforated;
mod oral_bone_too_thin;
mod papilla_risk_not_told;
mod pilot_not_checked_near_a_structure;
mod platform_above_the_crest;
mod platform_far_below_the_crest;
mod platform_too_deep;
mod platform_too_far_facial;
mod platform_too_far_oral;
mod platform_too_shallow;
mod seat_not_checked_on_film;
mod through_the_floor;
mod too_near_a_root;
mod too_near_an_implant;
mod too_near_the_foramen;
mod too_near_the_nasopalatine_canal;
mod torn_lining_misjudged;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &papilla_risk_not_told::RULE,
    &first_drill_in_the_wrong_place::RULE,
    &pilot_not_checked_near_a_structure::RULE,
    &implant_too_wide::RULE,
    &implant_too_narrow_for_a_molar::RULE,
    &implant_wider_than_the_septum::RULE,
    &implant_off_the_septum::RULE,
    &implant_length_unusual::RULE,
    &too_near_a_root::RULE,
    &too_near_an_implant::RULE,
    &platform_too_far_facial::RULE,
    &platform_too_far_oral::RULE,
    &facial_plate_touched::RULE,
    &oral_bone_too_thin::RULE,
    &lingual_cortex_perforated::RULE,
    &platform_too_shallow::RULE,
    &platform_too_deep::RULE,
    &platform_above_the_crest::RULE,
    &platform_far_below_the_crest::RULE,
    &axis_off_the_crown::RULE,
    &axis_past_an_angled_channel::RULE,
    &apex_through_the_plate::RULE,
    &drill_too_near_the_canal::RULE,
    &too_near_the_foramen::RULE,
    &foramen_not_located::RULE,
    &through_the_floor::RULE,
    &torn_lining_misjudged::RULE,
    &too_near_the_nasopalatine_canal::RULE,
    &seat_not_checked_on_film::RULE,
    &healed_oral_bone_too_thin::RULE,
    &late_implant_near_a_root::RULE,
    &late_platform_too_shallow::RULE,
    &late_platform_too_deep::RULE,
    &late_platform_above_the_crest::RULE,
    &late_platform_far_below_the_crest::RULE,
    &late_axis_off_the_crown::RULE,
    &late_apex_through_the_plate::RULE,
    &late_lingual_cortex_perforated::RULE,
    &late_drill_near_the_foramen::RULE,
    &late_implant_through_the_floor::RULE,
    &late_implant_near_the_nasopalatine_canal::RULE,
    &late_implant_near_an_implant::RULE,
    &late_platform_too_far_facial::RULE,
    &late_platform_too_far_oral::RULE,
    &late_drill_near_the_canal::RULE,
    &late_implant_too_narrow_for_a_molar::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("implant-off-the-septum", include_str!("implant_off_the_septum.md")),
    ("implant-wider-than-the-septum", include_str!("implant_wider_than_the_septum.md")),
    ("implant-too-narrow-for-a-molar", include_str!("implant_too_narrow_for_a_molar.md")),
    ("papilla-risk-not-told", include_str!("papilla_risk_not_told.md")),
    ("first-drill-in-the-wrong-place", include_str!("first_drill_in_the_wrong_place.md")),
    ("pilot-not-checked-near-a-structure", include_str!("pilot_not_checked_near_a_structure.md")),
    ("implant-too-wide", include_str!("implant_too_wide.md")),
    ("implant-length-unusual", include_str!("implant_length_unusual.md")),
    ("too-near-a-root", include_str!("too_near_a_root.md")),
    ("too-near-an-implant", include_str!("too_near_an_implant.md")),
    ("platform-too-far-facial", include_str!("platform_too_far_facial.md")),
    ("platform-too-far-oral", include_str!("platform_too_far_oral.md")),
    ("facial-plate-touched", include_str!("facial_plate_touched.md")),
    ("oral-bone-too-thin", include_str!("oral_bone_too_thin.md")),
    ("lingual-cortex-perforated", include_str!("lingual_cortex_perforated.md")),
    ("platform-too-shallow", include_str!("platform_too_shallow.md")),
    ("platform-too-deep", include_str!("platform_too_deep.md")),
    ("platform-above-the-crest", include_str!("platform_above_the_crest.md")),
    ("platform-far-below-the-crest", include_str!("platform_far_below_the_crest.md")),
    ("axis-off-the-crown", include_str!("axis_off_the_crown.md")),
    ("axis-past-an-angled-channel", include_str!("axis_past_an_angled_channel.md")),
    ("apex-through-the-plate", include_str!("apex_through_the_plate.md")),
    ("drill-too-near-the-canal", include_str!("drill_too_near_the_canal.md")),
    ("too-near-the-foramen", include_str!("too_near_the_foramen.md")),
    ("foramen-not-located", include_str!("foramen_not_located.md")),
    ("through-the-floor", include_str!("through_the_floor.md")),
    ("torn-lining-misjudged", include_str!("torn_lining_misjudged.md")),
    ("too-near-the-nasopalatine-canal", include_str!("too_near_the_nasopalatine_canal.md")),
    ("seat-not-checked-on-film", include_str!("seat_not_checked_on_film.md")),
    ("healed-oral-bone-too-thin", include_str!("healed_oral_bone_too_thin.md")),
    ("late-implant-near-a-root", include_str!("late_implant_near_a_root.md")),
    ("late-platform-too-shallow", include_str!("late_platform_too_shallow.md")),
    ("late-platform-too-deep", include_str!("late_platform_too_deep.md")),
    ("late-platform-above-the-crest", include_str!("late_platform_above_the_crest.md")),
    ("late-platform-far-below-the-crest", include_str!("late_platform_far_below_the_crest.md")),
    ("late-axis-off-the-crown", include_str!("late_axis_off_the_crown.md")),
    ("late-apex-through-the-plate", include_str!("late_apex_through_the_plate.md")),
    ("late-lingual-cortex-perforated", include_str!("late_lingual_cortex_perforated.md")),
    ("late-drill-near-the-foramen", include_str!("late_drill_near_the_foramen.md")),
    ("late-implant-through-the-floor", include_str!("late_implant_through_the_floor.md")),
    (
        "late-implant-near-the-nasopalatine-canal",
        include_str!("late_implant_near_the_nasopalatine_canal.md"),
    ),
    ("late-implant-near-an-implant", include_str!("late_implant_near_an_implant.md")),
    ("late-platform-too-far-facial", include_str!("late_platform_too_far_facial.md")),
    ("late-platform-too-far-oral", include_str!("late_platform_too_far_oral.md")),
    ("late-drill-near-the-canal", include_str!("late_drill_near_the_canal.md")),
    ("late-implant-too-narrow-for-a-molar", include_str!("late_implant_too_narrow_for_a_molar.md")),
];
