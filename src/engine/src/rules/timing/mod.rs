//! Timing and case selection.

mod chronic_lesion_not_debrided;
mod early_placement_without_contour;
mod implant_in_a_lost_facial_wall;
mod keratinised_band_too_narrow;
mod margin_below_twin_not_corrected;
mod placed_against_the_criteria;
mod placed_before_growth_ended;
mod placed_on_acute_infection;
mod placed_without_anchorage;
mod provisional_in_a_risky_site;
mod recession_risk_not_told;
mod returned_before_bone_filled;
mod returned_outside_the_early_window;
mod returned_too_soon_after_graft;
mod socket_left_ungrafted_before_late_return;
mod spreading_infection_undrained;
mod thin_gum_without_tissue;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &spreading_infection_undrained::RULE,
    &recession_risk_not_told::RULE,
    &placed_before_growth_ended::RULE,
    &placed_on_acute_infection::RULE,
    &chronic_lesion_not_debrided::RULE,
    &placed_without_anchorage::RULE,
    &placed_against_the_criteria::RULE,
    &margin_below_twin_not_corrected::RULE,
    &keratinised_band_too_narrow::RULE,
    &thin_gum_without_tissue::RULE,
    &implant_in_a_lost_facial_wall::RULE,
    &provisional_in_a_risky_site::RULE,
    &returned_outside_the_early_window::RULE,
    &returned_before_bone_filled::RULE,
    &returned_too_soon_after_graft::RULE,
    &socket_left_ungrafted_before_late_return::RULE,
    &early_placement_without_contour::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("spreading-infection-undrained", include_str!("spreading_infection_undrained.md")),
    ("recession-risk-not-told", include_str!("recession_risk_not_told.md")),
    ("placed-before-growth-ended", include_str!("placed_before_growth_ended.md")),
    ("placed-on-acute-infection", include_str!("placed_on_acute_infection.md")),
    ("chronic-lesion-not-debrided", include_str!("chronic_lesion_not_debrided.md")),
    ("placed-without-anchorage", include_str!("placed_without_anchorage.md")),
    ("placed-against-the-criteria", include_str!("placed_against_the_criteria.md")),
    ("margin-below-twin-not-corrected", include_str!("margin_below_twin_not_corrected.md")),
    ("keratinised-band-too-narrow", include_str!("keratinised_band_too_narrow.md")),
    ("thin-gum-without-tissue", include_str!("thin_gum_without_tissue.md")),
    ("implant-in-a-lost-facial-wall", include_str!("implant_in_a_lost_facial_wall.md")),
    ("provisional-in-a-risky-site", include_str!("provisional_in_a_risky_site.md")),
    ("returned-outside-the-early-window", include_str!("returned_outside_the_early_window.md")),
    ("returned-before-bone-filled", include_str!("returned_before_bone_filled.md")),
    ("returned-too-soon-after-graft", include_str!("returned_too_soon_after_graft.md")),
    (
        "socket-left-ungrafted-before-late-return",
        include_str!("socket_left_ungrafted_before_late_return.md"),
    ),
    ("early-placement-without-contour", include_str!("early_placement_without_contour.md")),
];
