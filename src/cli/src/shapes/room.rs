//! The room that a case leaves for an implant.

use engine::anatomy::Tooth;
use engine::search;
use schemars::JsonSchema;
use serde::Serialize;

/// How many stock sizes stand somewhere, and how far.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Room {
    /// Stock sizes, diameter by length, that stand somewhere without a fault of their place.
    pub sizes: usize,
    /// Stock sizes that there are.
    pub sizes_tried: usize,
    /// Placements without a fault.
    pub placements: usize,
    /// Placements that were decided.
    pub placements_tried: usize,
    /// The placement with the most room about it; null where none stands.
    pub roomiest: Option<Roomiest>,
    /// How far the plan's own implant may be moved; null where it has a fault where it stands.
    pub yours: Option<Play>,
    /// The same in words.
    pub words: String,
}

/// A placement and how far it may be moved.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Roomiest {
    /// Platform diameter.
    pub diameter_mm: f64,
    /// Length.
    pub length_mm: f64,
    /// Platform's middle from the tooth's axis, facially positive.
    pub facial_mm: f64,
    /// The same, distally positive.
    pub distal_mm: f64,
    /// Platform's level below the reference crest.
    pub depth_mm: f64,
    /// Apex facially positive.
    pub tilt_degrees: i32,
    /// Apex distally positive.
    pub tip_degrees: i32,
    /// How far it may be moved.
    pub play: Play,
}

/// How far an implant may be moved before a rule faults its place, to a tenth of a millimetre.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Play {
    /// To the oral side.
    pub oral_mm: f64,
    /// To the facial side.
    pub facial_mm: f64,
    /// Coronally.
    pub coronal_mm: f64,
    /// Apically.
    pub apical_mm: f64,
}

impl Play {
    fn of(play: &search::Play) -> Self {
        let [[oral_mm, facial_mm], [coronal_mm, apical_mm]] =
            [play.facial, play.depth].map(|ways| ways.map(engine::units::Mm::get));
        Self { oral_mm, facial_mm, coronal_mm, apical_mm }
    }
}

impl Room {
    /// Of the engine's, at this tooth.
    #[must_use]
    pub fn of(room: &search::Room, tooth: Tooth) -> Self {
        let tenth = |count: i32| f64::from(count) / 10.0;
        let roomiest = room.roomiest.as_ref().map(|(at, play)| Roomiest {
            diameter_mm: tenth(at.diameter),
            length_mm: tenth(at.length),
            facial_mm: tenth(at.facial),
            distal_mm: tenth(at.distal),
            depth_mm: tenth(at.depth),
            tilt_degrees: at.tilt,
            tip_degrees: at.tip,
            play: Play::of(play),
        });
        Self {
            sizes: room.sizes,
            sizes_tried: room.of,
            placements: room.standing,
            placements_tried: room.tried,
            roomiest,
            yours: room.yours.as_ref().map(Play::of),
            words: room.words(tooth),
        }
    }
}
