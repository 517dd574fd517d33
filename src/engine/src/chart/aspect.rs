//! What can be changed about a case by itself, redrawing nothing else.

use core::fmt;
use serde::{Deserialize, Serialize};

/// One thing about a case that is a number and can be changed alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Aspect {
    /// How far the facial defect reaches below the crest line.
    FacialLoss,
    /// How wide the facial defect is.
    FacialLossWidth,
    /// How far the oral defect reaches below the crest.
    OralLoss,
    /// Facial plate, 1 mm below the crest.
    FacialPlate,
    /// Oral plate, 1 mm below the crest.
    OralPlate,
    /// Height of bone from the deepest apex to the floor of sinus or nose.
    BoneToFloor,
    /// Height of bone from the deepest apex to the roof of the canal.
    BoneToCanal,
    /// Room to the mesial neighbour at the crest.
    MesialRoom,
    /// Room to the distal neighbour at the crest.
    DistalRoom,
    /// Density on the Hounsfield scale.
    Density,
    /// Lesion at the apex, across.
    Lesion,
    /// Facial gum at mid-tooth.
    Gum,
    /// Keratinised tissue.
    Keratinised,
    /// How far the margin lies below its twin's.
    Recession,
    /// Years.
    Age,
    /// Cigarettes a day.
    Cigarettes,
    /// Glycated haemoglobin.
    Hba1c,
    /// Systolic pressure.
    Systolic,
    /// International normalised ratio.
    Inr,
    /// Months since a stent was set.
    Stent,
    /// Years of tablets against bone loss.
    Tablets,
    /// Dose of radiotherapy at the site.
    Gray,
    /// Days since a heart attack or stroke.
    Event,
    /// Platelets.
    Platelets,
    /// Neutrophils.
    Neutrophils,
    /// Full-mouth bleeding score.
    BleedingScore,
}

/// What there is to say of an aspect whatever the case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scaled {
    /// Its name in addresses.
    pub key: &'static str,
    /// Its name for people; the oral side is named for the jaw where it is shown.
    pub words: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// How many steps make one of that unit.
    pub per_unit: u16,
    /// Least and greatest, in steps (ours: what is met in practice, and a little more).
    pub range: [i32; 2],
}

const fn mm(key: &'static str, words: &'static str, range: [i32; 2]) -> Scaled {
    tenths(key, words, "mm", range)
}

const fn whole(
    key: &'static str,
    words: &'static str,
    unit: &'static str,
    range: [i32; 2],
) -> Scaled {
    Scaled { key, words, unit, per_unit: 1, range }
}

const fn tenths(
    key: &'static str,
    words: &'static str,
    unit: &'static str,
    range: [i32; 2],
) -> Scaled {
    Scaled { key, words, unit, per_unit: 10, range }
}

impl Aspect {
    /// Every aspect, in order: walls, room, bone, gum, then the patient.
    pub const ALL: [Self; 26] = [
        Self::FacialLoss,
        Self::FacialLossWidth,
        Self::OralLoss,
        Self::FacialPlate,
        Self::OralPlate,
        Self::BoneToFloor,
        Self::BoneToCanal,
        Self::MesialRoom,
        Self::DistalRoom,
        Self::Density,
        Self::Lesion,
        Self::Gum,
        Self::Keratinised,
        Self::Recession,
        Self::Age,
        Self::Cigarettes,
        Self::Hba1c,
        Self::Systolic,
        Self::Inr,
        Self::Stent,
        Self::Tablets,
        Self::Gray,
        Self::Event,
        Self::Platelets,
        Self::Neutrophils,
        Self::BleedingScore,
    ];

    /// Name, unit, step and range.
    #[must_use]
    pub const fn scaled(self) -> Scaled {
        match self {
            Self::FacialLoss => mm("facial-loss", "Facial defect, from the crest down", [0, 200]),
            Self::FacialLossWidth => mm("facial-loss-width", "Facial defect, across", [5, 120]),
            Self::OralLoss => mm("oral-loss", "Oral defect, from the crest down", [0, 200]),
            Self::FacialPlate => mm("facial-plate", "Facial plate", [1, 40]),
            Self::OralPlate => mm("oral-plate", "Oral plate", [1, 60]),
            Self::BoneToFloor => mm("bone-to-floor", "Bone from apex to floor", [-30, 150]),
            Self::BoneToCanal => mm("bone-to-canal", "Bone from apex to canal", [1, 150]),
            Self::MesialRoom => mm("mesial-room", "Room to the mesial neighbour", [6, 60]),
            Self::DistalRoom => mm("distal-room", "Room to the distal neighbour", [6, 60]),
            Self::Density => whole("density", "Density", "HU", [150, 1500]),
            Self::Lesion => mm("lesion", "Lesion at the apex, across", [5, 120]),
            Self::Gum => mm("gum", "Facial gum", [3, 30]),
            Self::Keratinised => mm("keratinised", "Keratinised tissue", [0, 80]),
            Self::Recession => mm("recession", "Margin below its twin's", [-20, 40]),
            Self::Age => whole("age", "Age", "years", [12, 95]),
            Self::Cigarettes => whole("cigarettes", "Cigarettes", "a day", [0, 40]),
            Self::Hba1c => tenths("hba1c", "HbA1c", "%", [50, 120]),
            Self::Systolic => whole("systolic", "Systolic pressure", "mmHg", [90, 220]),
            Self::Inr => tenths("inr", "INR", "", [10, 60]),
            Self::Stent => whole("stent", "Time since the stent", "months", [0, 60]),
            Self::Tablets => {
                tenths("tablets", "Tablets against bone loss, taken for", "years", [0, 150])
            }
            Self::Gray => whole("gray", "Radiation dose at the site", "Gy", [0, 80]),
            Self::Event => whole("event", "Time since heart attack or stroke", "days", [0, 720]),
            Self::Platelets => whole("platelets", "Platelets", "10\u{2079}/l", [10, 400]),
            Self::Neutrophils => tenths("neutrophils", "Neutrophils", "10\u{2079}/l", [0, 80]),
            Self::BleedingScore => whole("bleeding-score", "Bleeding score", "%", [0, 100]),
        }
    }

    /// The aspect of a key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|aspect| aspect.scaled().key == key)
    }
}

/// An aspect and what it is changed to, in steps of its scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Change {
    /// What is changed.
    pub aspect: Aspect,
    /// To how much.
    pub to: i32,
}

impl Change {
    /// In the aspect's unit.
    #[must_use]
    pub fn value(self) -> f64 {
        f64::from(self.to) / f64::from(self.aspect.scaled().per_unit)
    }

    /// With as many decimals as its steps have, and the unit.
    #[must_use]
    pub fn words(self) -> String {
        if self.to == 0 && matches!(self.aspect, Aspect::FacialLoss | Aspect::OralLoss) {
            return "none".to_owned();
        }
        let Scaled { unit, per_unit, .. } = self.aspect.scaled();
        let decimals = if per_unit == 1 { 0 } else { 1 };
        // A true minus sign, as everywhere in print.
        let number = format!("{:.decimals$}", self.value()).replace('-', "\u{2212}");
        if unit.is_empty() { number } else { format!("{number}\u{a0}{unit}") }
    }
}

impl fmt::Display for Change {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.aspect.scaled().key, self.to)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_aspect_has_a_key_of_its_own_and_is_found_by_it() {
        let keys: BTreeSet<_> = Aspect::ALL.iter().map(|one| one.scaled().key).collect();
        assert_eq!(keys.len(), Aspect::ALL.len());
        for aspect in Aspect::ALL {
            assert_eq!(Aspect::from_key(aspect.scaled().key), Some(aspect));
            let [least, most] = aspect.scaled().range;
            assert!(least < most);
        }
        assert_eq!(Aspect::from_key("colour"), None);
    }

    #[test]
    fn a_change_is_worded_in_its_unit() {
        let words = |aspect, to| Change { aspect, to }.words();
        assert_eq!(words(Aspect::FacialLoss, 45), "4.5\u{a0}mm");
        assert_eq!(words(Aspect::FacialLoss, 0), "none");
        assert_eq!(words(Aspect::BoneToFloor, -20), "\u{2212}2.0\u{a0}mm");
        assert_eq!(words(Aspect::Systolic, 180), "180\u{a0}mmHg");
        assert_eq!(words(Aspect::Inr, 35), "3.5");
    }
}
