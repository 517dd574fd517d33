//! The patient of a written case.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Who sits in the chair; invented.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Patient {
    /// Invented.
    pub name: String,
    /// Age.
    pub age_years: u8,
    /// Sex.
    #[schemars(extend("enum" = ["female", "male"]))]
    pub sex: String,
    /// What is wrong with the tooth.
    pub complaint: Complaint,
    /// What the patient wants, in one sentence.
    pub wish: String,
    /// Physical status, 1 to 4.
    pub asa: u8,
    /// On serial records.
    pub growth_complete: bool,
    /// Cigarettes a day.
    pub cigarettes_a_day: u8,
    /// Systolic, diastolic, after five minutes' rest.
    pub pressure_mmhg: [u16; 2],
    /// Whether the pressure makes itself felt.
    pub pressure_symptoms: bool,
    /// How many platelet inhibitors.
    pub antiplatelets: u8,
    /// Bleeding sites of the whole mouth.
    pub bleeding_score_percent: u8,
    /// Known allergies.
    pub allergies: Vec<Allergy>,
    /// What graft the patient accepts.
    #[schemars(extend("enum" = ["any", "no-human", "no-animal", "own-or-synthetic"]))]
    pub graft_view: String,
    /// Grinds or clenches.
    pub parafunction: bool,
    /// Mouth opening.
    pub opening_mm: f64,
    /// Diabetes; absent without it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hba1c_percent: Option<f64>,
    /// Months since a stent was set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stent_months: Option<u16>,
    /// Week of pregnancy.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pregnancy_week: Option<u8>,
    /// A drug against clotting.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub anticoagulant: Option<Anticoagulant>,
    /// A drug against bone resorption.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub antiresorptive: Option<Antiresorptive>,
    /// Radiotherapy of the jaw.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub radiotherapy: Option<Radiotherapy>,
    /// A recent infarction or stroke.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub event: Option<Event>,
    /// Blood counts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub counts: Option<Counts>,
    /// A corticosteroid.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub steroid: Option<Steroid>,
}

/// What is wrong with the tooth.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Complaint {
    /// The root is broken.
    RootFracture,
    /// The crown is broken.
    CrownFracture,
    /// Root canal treatment failed.
    EndodonticFailure,
    /// Caries.
    Caries,
    /// Periodontitis.
    Periodontitis,
    /// The root resorbs.
    Resorption,
    /// An accident.
    Trauma,
    /// A tooth that can be kept.
    Restorable,
}

/// An allergy that matters here.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Allergy {
    /// Penicillin.
    Penicillin,
    /// Chlorhexidine.
    Chlorhexidine,
    /// Collagen.
    Collagen,
    /// Latex.
    Latex,
}

/// A drug against clotting.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(
    tag = "kind",
    rename_all = "kebab-case",
    rename_all_fields = "kebab-case",
    deny_unknown_fields
)]
pub enum Anticoagulant {
    /// A vitamin K antagonist.
    VitaminK {
        /// As it would be measured now.
        inr: f64,
    },
    /// A direct oral anticoagulant.
    Direct {
        /// 1 or 2.
        doses_a_day: u8,
    },
}

/// A drug against bone resorption.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(
    tag = "kind",
    rename_all = "kebab-case",
    rename_all_fields = "kebab-case",
    deny_unknown_fields
)]
pub enum Antiresorptive {
    /// By mouth.
    Oral {
        /// How long it has been taken.
        years: f64,
    },
    /// Injected.
    Injected {
        /// Since the last dose.
        months_since: u8,
    },
    /// In the dose of cancer care.
    CancerDose,
}

/// Radiotherapy of the jaw.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Radiotherapy {
    /// Dose at the site.
    pub gray_at_site: f64,
    /// Since it ended.
    pub years_since: f64,
}

/// A recent infarction or stroke.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Event {
    /// Which.
    #[schemars(extend("enum" = ["infarction", "stroke"]))]
    pub kind: String,
    /// How long ago.
    pub days_since: u16,
}

/// Blood counts.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Counts {
    /// Neutrophils.
    pub neutrophils_giga_per_litre: f64,
    /// Platelets.
    pub platelets_giga_per_litre: f64,
}

/// A corticosteroid.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Steroid {
    /// Prednisolone-equivalent.
    pub mg_a_day: f64,
    /// How long it has been taken.
    pub weeks: u16,
}
