//! What a site is made of.

use super::Tooth;
use super::socket::{Coronal, RootBody, Socket};
use crate::geometry::{Outline, P2, P3};
use crate::units::{Deg, Mm};
use serde::{Deserialize, Serialize};

/// Everything that is really there at one extraction site.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// Which tooth is to come out.
    pub tooth: Tooth,
    /// The room that its roots leave.
    pub socket: Socket,
    /// The bone around it, as it was before any defect.
    pub ridge: Ridge,
    /// What is missing from the walls.
    pub defects: Vec<Defect>,
    /// What stands beside it.
    pub neighbours: Neighbours,
    /// What must not be hurt.
    pub vital: Vital,
    /// How dense the marrow bone is.
    pub density: Density,
    /// Disease at the apex.
    pub lesion: Lesion,
    /// Gum.
    pub soft: SoftTissue,
    /// The crown that is to stand here.
    pub crown: PlannedCrown,
}

/// One of the two sides of the ridge. `Oral` is named palatal or lingual on screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wall {
    /// Towards lip and cheek.
    Facial,
    /// Towards palate or tongue.
    Oral,
}

/// One of the two neighbours' sides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// Towards the midline: negative x.
    Mesial,
    /// Away from it: positive x.
    Distal,
}

/// The bone: a cylinder with rulings parallel to x between two sagittal profiles, beginning at the
/// crest.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Ridge {
    /// Outer face on the facial side.
    pub facial: Profile,
    /// Outer face on the oral side.
    pub oral: Profile,
    /// Where it begins.
    pub crest: Crest,
}

/// One outer face in the sagittal plane: y as a polyline over z, the same at every x. The first knot
/// lies coronal of every crest, the last apical of every structure; beyond them the face goes
/// straight on along z.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Profile {
    /// (z, y) with strictly rising z; at least two. `P2::x` is z and `P2::y` is y.
    pub knots: Vec<P2>,
}

/// The level at which bone begins, as z over x, as a polyline: 0 at x = 0 without any loss, negative
/// (coronal) at the interdental peaks. At the oral profile it lies `oral_offset` deeper, between the
/// profiles in proportion.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Crest {
    /// (x, z) with strictly rising x; `P2::x` is x and `P2::y` is z. As it is now, losses included.
    pub knots: Vec<P2>,
    /// The same before crestal and interproximal loss.
    pub unharmed: Vec<P2>,
    /// How much deeper the oral crest lies than the facial one; negative is higher.
    pub oral_offset: Mm,
}

/// Bone that is missing from a wall: the part of that wall under the outline, removed along y down
/// to the socket (where no root lies under the outline: to the plane through the root's axis). Where
/// the outline reaches the crest (t <= 0 facially) the defect is open: bone coronal of that stretch
/// is gone too.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Defect {
    /// Which wall.
    pub wall: Wall,
    /// What it is called.
    pub kind: DefectKind,
    /// On the map.
    pub outline: Outline,
}

impl Defect {
    /// The greater of its extents along and across the map: how large a defect is named.
    #[must_use]
    pub fn extent(&self) -> Mm {
        let tenths = self.outline.tenths();
        let span = |axis: usize| {
            let least = tenths.iter().map(|at| at[axis]).min().unwrap_or(0);
            let most = tenths.iter().map(|at| at[axis]).max().unwrap_or(0);
            most - least
        };
        Mm::from_tenths(span(0).max(span(1)))
    }
}

/// What a wall defect is called.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DefectKind {
    /// Open to the crest, narrowing apically, mid-wall only.
    DehiscenceV,
    /// Open to the crest, parallel-sided, to the mesial or distal line of the root.
    DehiscenceU,
    /// A window with bone coronal of it.
    Fenestration,
    /// The whole wall over the root and beyond, towards the neighbours.
    LostWall,
}

/// What stands on either side.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Neighbours {
    /// Towards the midline.
    pub mesial: Neighbour,
    /// Away from it.
    pub distal: Neighbour,
}

/// A neighbour.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Neighbour {
    /// A tooth: its root in this site's frame.
    Root(RootBody),
    /// An implant, seated and restored.
    Implant(Implanted),
    /// Nothing stands here.
    Absent,
}

/// An implant that is already there.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Implanted {
    /// Middle of its platform.
    pub platform: P3,
    /// Platform diameter.
    pub diameter: Mm,
    /// Length.
    pub length: Mm,
    /// Apex facially positive.
    pub tilt: Deg,
    /// Apex distally positive.
    pub tip: Deg,
}

/// What must not be hurt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Vital {
    /// Floor of sinus or nose, where near.
    pub floor: Option<Floor>,
    /// Inferior alveolar canal.
    pub canal: Option<Tube>,
    /// Anterior loop of the mental nerve: from the foramen forward and back again, as one tube.
    pub loop_: Option<Tube>,
    /// Mental foramen: its middle on the facial face.
    pub foramen: Option<P3>,
    /// Nasopalatine canal.
    pub nasopalatine: Option<Tube>,
}

/// A floor above which (coronally) there is bone: the plane z = `z` + `rise` x.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Floor {
    /// Which.
    pub kind: FloorKind,
    /// Level at x = 0.
    pub z: Mm,
    /// Millimetres of z for a millimetre of x.
    pub rise: f64,
}

/// Which floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum FloorKind {
    /// Maxillary sinus.
    Sinus,
    /// Nose.
    Nose,
}

/// A straight round tube: all points within `radius` of the segment.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Tube {
    /// One end.
    pub from: P3,
    /// The other.
    pub to: P3,
    /// Radius.
    pub radius: Mm,
}

/// Density of the bone at the site.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Density {
    /// On the Hounsfield scale of a medical scanner.
    pub hu: f64,
    /// Class by structure.
    pub class: DensityClass,
}

/// Classes from compact to loose (bounds in `ledger: bone-density-classes`).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DensityClass {
    /// Compact.
    D1,
    /// Thick cortex, dense core.
    D2,
    /// Thin cortex, dense core.
    D3,
    /// Thin cortex, loose core.
    D4,
}

/// Disease at the apex: a ball about the root's apex (of several, the first-named root's) that is no
/// bone and no part of the socket.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lesion {
    /// None.
    None,
    /// Long-standing, no pus.
    Chronic {
        /// Across.
        diameter: Mm,
    },
    /// Pus at the site, no spread.
    Abscess {
        /// Across.
        diameter: Mm,
    },
    /// Spreading: swelling, fever or cellulitis.
    Spreading {
        /// Across.
        diameter: Mm,
    },
}

/// Gum and its levels.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SoftTissue {
    /// Facial thickness at mid-tooth.
    pub thickness: Mm,
    /// Width of keratinised tissue.
    pub keratinised: Mm,
    /// Present mid-facial margin: z of it (negative is coronal of the reference crest).
    pub margin_z: Mm,
    /// How far the margin lies apical of its twin's; positive is recession.
    pub margin_below_twin: Mm,
    /// From the contact point to the neighbour's crest, mesially and distally.
    pub contact_to_crest: [Mm; 2],
    /// What shows at full smile.
    pub lip: LipLine,
}

/// What shows at this patient's full smile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LipLine {
    /// Gum shows.
    High,
    /// The crown and the papillae show.
    Middle,
    /// The margin stays hidden.
    Low,
}

/// The crown that is planned here.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PlannedCrown {
    /// Planned mid-facial margin: its z (negative is coronal of the reference crest).
    pub margin_z: Mm,
    /// Incisal edge or middle of the biting face.
    pub edge: P3,
    /// Axis of the crown, apex facially positive.
    pub tilt: Deg,
    /// Axis of the crown, apex distally positive.
    pub tip: Deg,
    /// Mesiodistal width between the neighbours' crowns.
    pub width: Mm,
}

impl Site {
    /// Whether the margin shows at this patient's full smile.
    #[must_use]
    pub fn is_aesthetic(&self) -> bool {
        self.soft.lip != LipLine::Low
    }

    /// What crosses the reference crest: the root, or the trunk of several.
    #[must_use]
    pub fn coronal(&self) -> Coronal {
        self.socket.coronal()
    }

    /// Defects of one wall.
    pub fn defects_of(&self, wall: Wall) -> impl Iterator<Item = &Defect> {
        self.defects.iter().filter(move |defect| defect.wall == wall)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_defect_is_as_large_as_its_longer_extent_on_the_map() {
        let outline = |vertices: &[[i32; 2]]| Outline::new(vertices.to_vec()).unwrap();
        let defect =
            |outline| Defect { wall: Wall::Facial, kind: DefectKind::DehiscenceV, outline };
        let tall = defect(outline(&[[-20, 0], [20, 0], [3, 61]]));
        assert_eq!(tall.extent(), Mm::new(6.1));
        let wide = defect(outline(&[[-45, 0], [40, 0], [0, 30]]));
        assert_eq!(wide.extent(), Mm::new(8.5));
    }
}
