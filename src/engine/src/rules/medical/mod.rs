//! Medical gates.

mod allergies_not_asked;
mod anticoagulant_stopped_alone;
mod antiplatelet_stopped_alone;
mod bleeding_gums_not_treated_first;
mod blood_counts_not_requested;
mod bone_drug_risk_not_consented;
mod cancer_dose_antiresorptive_operated;
mod chlorhexidine_despite_allergy;
mod collagen_despite_allergy;
mod diastolic_pressure_too_high;
mod doac_dose_not_agreed;
mod drug_holiday_demanded;
mod elective_surgery_in_pregnancy;
mod graft_against_wishes;
mod gum_score_not_taken;
mod hba1c_not_requested;
mod heart_attack_too_recent;
mod inr_beyond_the_limit;
mod inr_not_requested;
mod irradiated_jaw_operated;
mod operated_early_after_an_injection;
mod penicillin_despite_allergy;
mod placed_in_a_heavy_smoker;
mod pressure_not_measured;
mod pressure_symptoms_not_referred;
mod radiation_dose_not_requested;
mod smoker_not_counselled;
mod stent_too_recent;
mod steroid_not_weighed;
mod stroke_too_recent;
mod sugar_poorly_controlled;
mod systolic_pressure_too_high;
mod too_few_neutrophils;
mod too_few_platelets;
mod unfit_for_elective_surgery;

use super::Rule;

/// In the order of care.
pub(super) static RULES: &[&Rule] = &[
    &anticoagulant_stopped_alone::RULE,
    &antiplatelet_stopped_alone::RULE,
    &drug_holiday_demanded::RULE,
    &cancer_dose_antiresorptive_operated::RULE,
    &bone_drug_risk_not_consented::RULE,
    &operated_early_after_an_injection::RULE,
    &sugar_poorly_controlled::RULE,
    &hba1c_not_requested::RULE,
    &systolic_pressure_too_high::RULE,
    &diastolic_pressure_too_high::RULE,
    &pressure_symptoms_not_referred::RULE,
    &pressure_not_measured::RULE,
    &inr_beyond_the_limit::RULE,
    &inr_not_requested::RULE,
    &doac_dose_not_agreed::RULE,
    &stent_too_recent::RULE,
    &irradiated_jaw_operated::RULE,
    &radiation_dose_not_requested::RULE,
    &heart_attack_too_recent::RULE,
    &stroke_too_recent::RULE,
    &unfit_for_elective_surgery::RULE,
    &elective_surgery_in_pregnancy::RULE,
    &too_few_neutrophils::RULE,
    &too_few_platelets::RULE,
    &blood_counts_not_requested::RULE,
    &steroid_not_weighed::RULE,
    &bleeding_gums_not_treated_first::RULE,
    &gum_score_not_taken::RULE,
    &allergies_not_asked::RULE,
    &penicillin_despite_allergy::RULE,
    &smoker_not_counselled::RULE,
    &placed_in_a_heavy_smoker::RULE,
    &graft_against_wishes::RULE,
    &collagen_despite_allergy::RULE,
    &chlorhexidine_despite_allergy::RULE,
];

/// Long text of each rule, by id.
#[cfg(feature = "prose")]
pub(super) static PROSE: &[(&str, &str)] = &[
    ("anticoagulant-stopped-alone", include_str!("anticoagulant_stopped_alone.md")),
    ("antiplatelet-stopped-alone", include_str!("antiplatelet_stopped_alone.md")),
    ("drug-holiday-demanded", include_str!("drug_holiday_demanded.md")),
    ("cancer-dose-antiresorptive-operated", include_str!("cancer_dose_antiresorptive_operated.md")),
    ("bone-drug-risk-not-consented", include_str!("bone_drug_risk_not_consented.md")),
    ("operated-early-after-an-injection", include_str!("operated_early_after_an_injection.md")),
    ("sugar-poorly-controlled", include_str!("sugar_poorly_controlled.md")),
    ("hba1c-not-requested", include_str!("hba1c_not_requested.md")),
    ("systolic-pressure-too-high", include_str!("systolic_pressure_too_high.md")),
    ("diastolic-pressure-too-high", include_str!("diastolic_pressure_too_high.md")),
    ("pressure-symptoms-not-referred", include_str!("pressure_symptoms_not_referred.md")),
    ("pressure-not-measured", include_str!("pressure_not_measured.md")),
    ("inr-beyond-the-limit", include_str!("inr_beyond_the_limit.md")),
    ("inr-not-requested", include_str!("inr_not_requested.md")),
    ("doac-dose-not-agreed", include_str!("doac_dose_not_agreed.md")),
    ("stent-too-recent", include_str!("stent_too_recent.md")),
    ("irradiated-jaw-operated", include_str!("irradiated_jaw_operated.md")),
    ("radiation-dose-not-requested", include_str!("radiation_dose_not_requested.md")),
    ("heart-attack-too-recent", include_str!("heart_attack_too_recent.md")),
    ("stroke-too-recent", include_str!("stroke_too_recent.md")),
    ("unfit-for-elective-surgery", include_str!("unfit_for_elective_surgery.md")),
    ("elective-surgery-in-pregnancy", include_str!("elective_surgery_in_pregnancy.md")),
    ("too-few-neutrophils", include_str!("too_few_neutrophils.md")),
    ("too-few-platelets", include_str!("too_few_platelets.md")),
    ("blood-counts-not-requested", include_str!("blood_counts_not_requested.md")),
    ("steroid-not-weighed", include_str!("steroid_not_weighed.md")),
    ("bleeding-gums-not-treated-first", include_str!("bleeding_gums_not_treated_first.md")),
    ("gum-score-not-taken", include_str!("gum_score_not_taken.md")),
    ("allergies-not-asked", include_str!("allergies_not_asked.md")),
    ("penicillin-despite-allergy", include_str!("penicillin_despite_allergy.md")),
    ("smoker-not-counselled", include_str!("smoker_not_counselled.md")),
    ("placed-in-a-heavy-smoker", include_str!("placed_in_a_heavy_smoker.md")),
    ("graft-against-wishes", include_str!("graft_against_wishes.md")),
    ("collagen-despite-allergy", include_str!("collagen_despite_allergy.md")),
    ("chlorhexidine-despite-allergy", include_str!("chlorhexidine_despite_allergy.md")),
];
