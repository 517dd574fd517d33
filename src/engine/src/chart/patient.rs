//! Who sits in the chair, and what in the history matters.

use crate::units::Mm;
use serde::{Deserialize, Serialize};

/// A synthetic patient. What the learner must ask for (allergies, pressure, counts) is here as the
/// truth; the chart shows it once it has been requested.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Patient {
    /// From our own lists.
    pub name: String,
    /// Years.
    pub age: u8,
    /// Sex.
    pub sex: Sex,
    /// Why the tooth is to come out, in one sentence.
    pub complaint: Complaint,
    /// What the patient wants, in one sentence.
    pub wish: String,
    /// American Society of Anesthesiologists class, 1 to 4.
    pub asa: u8,
    /// Whether facial growth is finished on serial records.
    pub growth_complete: bool,
    /// Cigarettes a day.
    pub cigarettes: u8,
    /// Blood sugar disease.
    pub sugar: Option<Sugar>,
    /// Blood pressure after five minutes' rest, mmHg: systolic, diastolic.
    pub pressure: [u16; 2],
    /// Whether a pressure that high comes with symptoms.
    pub pressure_symptoms: bool,
    /// Blood thinners of the clotting kind.
    pub anticoagulant: Option<Anticoagulant>,
    /// Platelet inhibitors: how many of them.
    pub antiplatelets: u8,
    /// A stent in a coronary artery.
    pub stent: Option<Stent>,
    /// Drugs against bone resorption.
    pub antiresorptive: Option<Antiresorptive>,
    /// Radiotherapy of the jaws.
    pub radiotherapy: Option<Radiotherapy>,
    /// Heart attack or stroke.
    pub event: Option<RecentEvent>,
    /// Week of pregnancy.
    pub pregnancy_week: Option<u8>,
    /// Blood counts, where chemotherapy or blood disease makes them matter.
    pub bleeding: Option<Bleeding>,
    /// Steroid tablets.
    pub steroid: Option<Steroid>,
    /// Full-mouth bleeding score, percent.
    pub bleeding_score: u8,
    /// What the patient does not tolerate.
    pub allergies: Vec<Allergy>,
    /// Views on where a graft comes from.
    pub graft_view: GraftView,
    /// Grinds or clenches.
    pub parafunction: bool,
    /// Mouth opening.
    pub opening: Mm,
}

/// Sex.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sex {
    /// Female.
    Female,
    /// Male.
    Male,
}

/// Why the tooth is to come out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Complaint {
    /// A root split lengthwise.
    RootFracture,
    /// A crown broken below the gum.
    CrownFracture,
    /// A root treatment that failed.
    EndodonticFailure,
    /// Caries beyond restoring.
    Caries,
    /// Lost support.
    Periodontitis,
    /// A root that is being resorbed.
    Resorption,
    /// A blow.
    Trauma,
    /// The tooth can be restored: nothing forces it out.
    Restorable,
}

/// Diabetes and its control.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sugar {
    /// HbA1c in percent.
    pub hba1c: f64,
}

/// A drug against clotting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Anticoagulant {
    /// A vitamin K antagonist.
    VitaminK {
        /// International normalised ratio as it would be measured now.
        inr: f64,
    },
    /// A direct oral anticoagulant.
    Direct {
        /// One dose a day, or two.
        doses_a_day: u8,
    },
}

/// A coronary stent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Stent {
    /// Months since it was set.
    pub months: u8,
}

/// A drug against bone resorption.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Antiresorptive {
    /// Tablets for osteoporosis.
    Oral {
        /// Years taken.
        years: f64,
    },
    /// Half-yearly injections for osteoporosis.
    Injected {
        /// Months since the last dose.
        months_since: u8,
    },
    /// Cancer-dose, by vein or injection.
    CancerDose,
}

/// Radiotherapy of the jaws.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Radiotherapy {
    /// Gray at this site.
    pub gray_at_site: f64,
    /// Years since it ended.
    pub years_since: f64,
}

/// Heart attack or stroke.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RecentEvent {
    /// Heart attack.
    Infarction {
        /// Days since.
        days: u16,
    },
    /// Stroke.
    Stroke {
        /// Days since.
        days: u16,
    },
}

/// Counts of the blood, in 10^9 per litre.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bleeding {
    /// Neutrophils.
    pub neutrophils: f64,
    /// Platelets.
    pub platelets: f64,
}

/// Steroid tablets.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Steroid {
    /// Prednisolone-equivalent, mg a day.
    pub mg: f64,
    /// Weeks taken.
    pub weeks: u16,
}

/// What is not tolerated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Allergy {
    /// Penicillins.
    Penicillin,
    /// Chlorhexidine.
    Chlorhexidine,
    /// Bovine collagen.
    Collagen,
    /// Latex.
    Latex,
}

/// Views on where a graft comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum GraftView {
    /// Anything goes.
    Any,
    /// Nothing of human origin.
    NoHuman,
    /// Nothing of animal origin.
    NoAnimal,
    /// Only the patient's own or synthetic.
    OwnOrSynthetic,
}
