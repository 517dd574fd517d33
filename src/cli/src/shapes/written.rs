//! A case as `wallwise case --json` prints it: the keys of a case file, in JSON.
//!
//! The file that `--toml` writes is the one source: it is read into these shapes and printed, so that
//! a program finds the same keys, units and words in both, and the schema documents the file as well.

mod patient;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Difficulty;
use patient::Patient;

/// `[x, y, z]` in mm: x distal, y facial, z apical.
type Point = [f64; 3];

/// What `wallwise case --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneCase {
    /// What stands beside every case.
    pub caution: &'static str,
    /// Where it comes from; null for a case that was written out.
    pub address: Option<String>,
    /// How hard it is; null where no sound plan is known.
    pub difficulty: Option<Difficulty>,
    /// What its case file holds.
    pub case: CaseFile,
}

/// A case file.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct CaseFile {
    /// Version of the file format.
    pub format: u32,
    /// `case`.
    #[schemars(extend("enum" = ["case"]))]
    pub kind: String,
    /// What a referral would say; nothing that is to be found out.
    pub title: String,
    /// What is really there.
    pub site: Site,
    /// Who sits in the chair; invented.
    pub patient: Patient,
    /// What the examinations would read, errors included.
    pub readings: Readings,
}

/// What is really there.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Site {
    /// Two digits: quadrant 1 to 4, then 1 to 7 from the midline.
    pub tooth: u8,
    /// Bone density on the Hounsfield scale.
    pub density_hu: f64,
    /// `d1` compact to `d4` loose.
    pub density_class: Density,
    /// The root of a tooth with one; absent where there is a trunk.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub root: Option<Root>,
    /// The trunk of a tooth with several roots; absent where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trunk: Option<Trunk>,
    /// Bone around it.
    pub ridge: Ridge,
    /// Where walls are lost; absent where none is.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub defect: Vec<Defect>,
    /// What stands mesially.
    pub mesial: Beside,
    /// What stands distally.
    pub distal: Beside,
    /// What must not be hurt; absent where nothing is near.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub vital: Option<Vital>,
    /// Disease at the apex.
    pub lesion: Lesion,
    /// Gum and smile.
    pub soft: Soft,
    /// The planned crown.
    pub crown: Crown,
}

/// Density class.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Density {
    /// Compact.
    D1,
    /// Thick cortex, dense trabeculae.
    D2,
    /// Thin cortex, dense trabeculae.
    D3,
    /// Loose.
    D4,
}

/// A root on its own axis.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Root {
    /// Where the axis crosses the level of the crest: distal positive.
    pub x_mm: f64,
    /// The same, facial positive.
    pub y_mm: f64,
    /// Apex facially positive.
    pub tilt_degrees: f64,
    /// Apex distally positive.
    pub tip_degrees: f64,
    /// From the crest to the apex, along the axis.
    pub length_mm: f64,
    /// From the crest up to the neck of the tooth.
    pub neck_mm: f64,
    /// Half the width at the crest, mesiodistally.
    pub half_width_mesiodistal_mm: f64,
    /// Half the width at the crest, facio-orally.
    pub half_width_faciooral_mm: f64,
    /// 0 is a cylinder; 0.22 to 0.30 are roots.
    pub taper: f64,
}

/// The undivided part of a tooth with several roots: it stands along z about the origin.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Trunk {
    /// From the crest up to the neck of the tooth.
    pub neck_mm: f64,
    /// From the crest down to where the roots part.
    pub furcation_mm: f64,
    /// Half the width at the neck, mesiodistally.
    pub half_width_mesiodistal_mm: f64,
    /// Half the width at the neck, facio-orally.
    pub half_width_faciooral_mm: f64,
    /// Widths at the furcation over those at the neck.
    pub narrowing: f64,
    /// Facial and palatal; mesial and distal; or mesiofacial, distofacial and palatal.
    #[schemars(length(min = 2, max = 3))]
    pub root: Vec<Branch>,
}

/// One of several roots.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Branch {
    /// Where it stands.
    pub name: BranchName,
    /// Where the axis crosses the level of the furcation: distal positive.
    pub x_mm: f64,
    /// The same, facial positive.
    pub y_mm: f64,
    /// Apex facially positive.
    pub tilt_degrees: f64,
    /// Apex distally positive.
    pub tip_degrees: f64,
    /// From the furcation to the apex, along the axis.
    pub length_mm: f64,
    /// Half the width at the furcation, mesiodistally.
    pub half_width_mesiodistal_mm: f64,
    /// Half the width at the furcation, facio-orally.
    pub half_width_faciooral_mm: f64,
    /// 0 is a cylinder; 0.22 to 0.30 are roots.
    pub taper: f64,
}

/// Where a root of several stands.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BranchName {
    /// Lower molars.
    Mesial,
    /// Lower molars.
    Distal,
    /// Upper premolars.
    Facial,
    /// Upper molars.
    Mesiofacial,
    /// Upper molars.
    Distofacial,
    /// Upper teeth.
    Palatal,
}

/// Bone around the socket.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Ridge {
    /// Outer face: `[z, y]`, z apical and rising, y facial.
    pub facial_mm: Vec<[f64; 2]>,
    /// The same on the oral side.
    pub oral_mm: Vec<[f64; 2]>,
    /// Where bone begins now: `[x, z]`, x distal and rising.
    pub crest_mm: Vec<[f64; 2]>,
    /// Where it began before any loss.
    pub crest_before_loss_mm: Vec<[f64; 2]>,
    /// How much deeper the oral crest lies; negative is higher.
    pub oral_crest_deeper_mm: f64,
}

/// Where a wall is lost.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Defect {
    /// Which wall.
    pub wall: Wall,
    /// Its form.
    pub kind: DefectKind,
    /// On the map: `[s, t]` in steps of 0.1; s distal, t apical of the facial crest.
    #[schemars(length(min = 3, max = 16))]
    pub outline_mm: Vec<[f64; 2]>,
}

/// A wall of the socket.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Wall {
    /// Facial.
    Facial,
    /// Palatal or lingual.
    Oral,
}

/// Form of a defect.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum DefectKind {
    /// From the crest, narrowing.
    DehiscenceV,
    /// From the crest, with parallel sides.
    DehiscenceU,
    /// A window below an intact crest.
    Fenestration,
    /// The whole wall.
    LostWall,
}

/// What stands on a side.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(
    tag = "stands",
    rename_all = "kebab-case",
    rename_all_fields = "kebab-case",
    deny_unknown_fields
)]
pub enum Beside {
    /// A neighbouring root.
    Root {
        /// Where the axis crosses the level of the crest: distal positive.
        x_mm: f64,
        /// The same, facial positive.
        y_mm: f64,
        /// Apex facially positive.
        tilt_degrees: f64,
        /// Apex distally positive.
        tip_degrees: f64,
        /// From the crest to the apex, along the axis.
        length_mm: f64,
        /// From the crest up to the neck of the tooth.
        neck_mm: f64,
        /// Half the width at the crest, mesiodistally.
        half_width_mesiodistal_mm: f64,
        /// Half the width at the crest, facio-orally.
        half_width_faciooral_mm: f64,
        /// 0 is a cylinder; 0.22 to 0.30 are roots.
        taper: f64,
    },
    /// A neighbouring implant.
    Implant {
        /// Middle of its platform.
        platform_mm: Point,
        /// Across.
        diameter_mm: f64,
        /// Along its axis.
        length_mm: f64,
        /// Apex facially positive.
        tilt_degrees: f64,
        /// Apex distally positive.
        tip_degrees: f64,
    },
    /// Nothing.
    Absent,
}

/// What must not be hurt; each part is absent where it is not near.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Vital {
    /// Mental foramen on the facial face.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub foramen_mm: Option<Point>,
    /// Floor of sinus or nose.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub floor: Option<Floor>,
    /// Inferior alveolar canal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub canal: Option<Tube>,
    /// Anterior loop of the mental nerve.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub r#loop: Option<Tube>,
    /// Nasopalatine canal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nasopalatine: Option<Tube>,
}

/// Floor of sinus or nose.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Floor {
    /// Which.
    pub kind: FloorKind,
    /// Its level at x = 0.
    pub z_mm: f64,
    /// Millimetres of z for a millimetre of x.
    pub rise: f64,
}

/// Which floor.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FloorKind {
    /// Of the sinus.
    Sinus,
    /// Of the nose.
    Nose,
}

/// A canal as a straight tube.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Tube {
    /// One end.
    pub from_mm: Point,
    /// The other end.
    pub to_mm: Point,
    /// Radius.
    pub radius_mm: f64,
}

/// Disease at the apex.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(
    tag = "kind",
    rename_all = "kebab-case",
    rename_all_fields = "kebab-case",
    deny_unknown_fields
)]
pub enum Lesion {
    /// None.
    None,
    /// Chronic lesion.
    Chronic {
        /// Across.
        diameter_mm: f64,
    },
    /// Localised abscess.
    Abscess {
        /// Across.
        diameter_mm: f64,
    },
    /// Spreading infection.
    Spreading {
        /// Across.
        diameter_mm: f64,
    },
}

/// Gum and smile.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Soft {
    /// Facial gum at mid-tooth.
    pub thickness_mm: f64,
    /// Width of keratinised tissue.
    pub keratinised_mm: f64,
    /// Present mid-facial margin; negative is coronal of the crest.
    pub margin_z_mm: f64,
    /// How far it lies apical of its twin's.
    pub margin_below_twin_mm: f64,
    /// Contact point to the neighbour's crest: mesial, distal.
    pub contact_to_crest_mm: [f64; 2],
    /// What shows at full smile.
    pub lip: Lip,
}

/// What shows at full smile.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Lip {
    /// Gum.
    High,
    /// Crown and papillae.
    Middle,
    /// No margin.
    Low,
}

/// The planned crown.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Crown {
    /// Planned mid-facial margin.
    pub margin_z_mm: f64,
    /// Incisal edge or middle of the biting face.
    pub edge_mm: Point,
    /// Apex facially positive.
    pub tilt_degrees: f64,
    /// Apex distally positive.
    pub tip_degrees: f64,
    /// Between the neighbours' crowns.
    pub width_mm: f64,
}

/// What the examinations would read, errors included.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Readings {
    /// Margin to bone: facial mesial, middle, distal, then mid-oral.
    pub sounding_mm: [f64; 4],
    /// Facial mesial, middle, distal, then oral mesial, middle, distal.
    pub probing_mm: [f64; 6],
    /// Crest to apex as the film shows it.
    pub film_root_length_mm: f64,
    /// Apex to floor on film, where a floor is near.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub film_floor_mm: Option<f64>,
    /// Across on film, where a lesion shows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub film_lesion_mm: Option<f64>,
    /// The section report.
    pub sections: Sections,
}

/// The section report.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Sections {
    /// What the report states as plus or minus with every distance.
    pub error_mm: f64,
    /// 1 mm below the crest; absent, it reads not discernible.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub facial_plate_mm: Option<f64>,
    /// The same on the oral side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub oral_plate_mm: Option<f64>,
    /// At the crest, at mid-root, at the apex.
    pub ridge_width_mm: [f64; 3],
    /// Deepest facial concavity.
    pub concavity_mm: f64,
    /// Deepest lingual undercut; 0 in the upper jaw.
    pub undercut_mm: f64,
    /// Apex to canal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub canal_mm: Option<f64>,
    /// Apex to mental foramen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub foramen_mm: Option<f64>,
    /// Anterior loop; 0 reads no loop.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub loop_length_mm: Option<f64>,
    /// Apex to sinus or nose; negative when the root stands in it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub floor_mm: Option<f64>,
    /// Root to nasopalatine canal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nasopalatine_mm: Option<f64>,
    /// Bone beyond the apex along the root's axis.
    pub beyond_apex_mm: f64,
    /// Lesion across, where one shows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lesion_mm: Option<f64>,
    /// Guessed from grey values, which are not Hounsfield units.
    pub density_class: Density,
}

impl OneCase {
    /// Of a case.
    ///
    /// # Errors
    /// When the written case has a key that these shapes lack.
    pub fn of(
        case: &engine::chart::Case,
        hard: Option<&engine::cases::Difficulty>,
    ) -> Result<Self, toml::de::Error> {
        Ok(Self {
            caution: engine::debrief::CAUTION,
            address: case.address.map(|address| address.to_string()),
            difficulty: hard.map(Into::into),
            case: toml::from_str(&engine::scenario::write_case(case))?,
        })
    }
}
