//! How far courses of healing lie apart.

use engine::healing::{Arm, Illustration, LABEL, LIMITS, Quantity, SOURCES};
use engine::units::Mm;
use schemars::JsonSchema;
use serde::Serialize;

/// An illustration of a teaching model: bands of what a site loses over a year.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Healing {
    /// What it is and what it is not.
    pub label: &'static str,
    /// What it does not know.
    pub limits: &'static [&'static str],
    /// Where its numbers come from, and whether they were read there.
    pub sources: &'static [&'static str],
    /// The facial plate that the model read, 1 mm below the crest; 0 where the wall is lost.
    pub facial_plate_mm: f64,
    /// Treatments: the plan's, the nearest sound plan's, none. What the model cannot tell apart stands
    /// together.
    pub treatments: Vec<Healed>,
}

/// A treatment and what comes of it.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Healed {
    /// `yours`, `nearest-sound`, `untreated`.
    pub whose: Vec<&'static str>,
    /// `left-to-heal`, `grafted-socket`, `implant`, `implant-and-grafted-gap`; null where the model knows
    /// nothing of it.
    pub treatment: Option<&'static str>,
    /// Why it knows nothing: `tooth-kept`, `wall-missing`; null where it knows.
    pub unknown: Option<&'static str>,
    /// Weeks after which an implant is placed in the healed site and the band ends; null where none is.
    pub until_weeks: Option<i32>,
    /// The same in words.
    pub words: String,
    /// Month by month; empty where the model knows nothing.
    pub months: Vec<Month>,
}

/// What has gone by a month: 10th, 50th and 90th percentile.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Month {
    /// Months from the extraction.
    pub month: i32,
    /// Of the ridge's width.
    pub width_mm: [f64; 3],
    /// Of the height of the facial crest.
    pub facial_height_mm: [f64; 3],
}

impl Healing {
    /// Of the engine's.
    #[must_use]
    pub fn of(shown: &Illustration) -> Self {
        Self {
            label: LABEL,
            limits: LIMITS,
            sources: SOURCES,
            facial_plate_mm: shown.reads.plate.get(),
            treatments: shown.arms.iter().map(|arm| Healed::of(shown, arm)).collect(),
        }
    }
}

impl Healed {
    fn of(shown: &Illustration, arm: &Arm) -> Self {
        let fan = arm.fan.ok();
        let months = fan.iter().flat_map(|fan| {
            fan.months().map(|month| {
                let [width_mm, facial_height_mm] =
                    Quantity::ALL.map(|quantity| fan.lost(quantity, f64::from(month)).map(Mm::get));
                Month { month, width_mm, facial_height_mm }
            })
        });
        Self {
            whose: arm.whose.iter().map(|whose| whose.key()).collect(),
            treatment: fan.map(|fan| fan.treatment.key()),
            unknown: arm.fan.err().map(|unknown| unknown.key()),
            until_weeks: fan.and_then(|fan| fan.until),
            words: shown.words(arm),
            months: months.collect(),
        }
    }
}
