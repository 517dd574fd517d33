//! The only place where a case is measured: functions of (site, plan), each with definition, unit
//! and sign.
//!
//! [`Measurements`] computes each measurement once, when it is first asked for, so that a sweep
//! which stops at the first failing rule pays only for what it read.

mod root_position;

use crate::chart::{Case, Fact};
use crate::plan::Plan;
use crate::units::{Deg, Mm, Mm2, Mm3, Ncm, Newton, Ratio};

/// Measurements of one plan on one case.
#[derive(Debug)]
pub struct Measurements<'a> {
    /// The case.
    pub case: &'a Case,
    /// What has been carried out.
    pub plan: &'a Plan,
}

/// How far it is to bone in some direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Opening {
    /// Bone is met after this length; 0 where the surface lies in bone.
    Bone(Mm),
    /// No bone is met.
    Open,
}

/// The facial gap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FacialGap {
    /// From the implant's outer surface at the platform (at crest level if the platform stands above
    /// it) to the facial wall as it was before any defect, along y in the sagittal plane; 0 when the
    /// implant touches or passes it.
    pub width: Mm,
    /// Whether bone is really there.
    pub wall_present: bool,
}

/// Lateral surface of the implant by what it faces; the parts sum to the whole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Threads {
    /// In bone.
    pub engaged: Mm2,
    /// Not in bone, but the radial ray meets bone.
    pub facing_bone: Mm2,
    /// The radial ray meets none.
    pub exposed: Mm2,
}

/// Distance from the implant to a neighbour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NeighbourDistance {
    /// Least distance between the surfaces along the whole length; negative when they overlap.
    pub distance: Mm,
    /// Whether the neighbour is an implant.
    pub to_implant: bool,
}

/// Distances from the edge of what is covered to the edge of what covers it, on the map; negative
/// when it ends short. `None`: not asked on that side (`practice` section 3).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Margins {
    /// Mesially.
    pub mesial: Option<Mm>,
    /// Distally.
    pub distal: Option<Mm>,
    /// Apically.
    pub apical: Option<Mm>,
    /// Over the oral crest.
    pub oral: Option<Mm>,
}

impl Margins {
    /// The least of the mesial, distal and apical margins.
    #[must_use]
    pub fn least(&self) -> Option<Mm> {
        [self.mesial, self.distal, self.apical].into_iter().flatten().reduce(Mm::min)
    }
}

/// Whether a raised flap lays bare the bone that would show the fact.
#[must_use]
pub fn is_laid_bare(_case: &Case, _plan: &Plan, _fact: Fact) -> bool {
    false
}

impl<'a> Measurements<'a> {
    /// Of this plan on this case; nothing is computed yet.
    #[must_use]
    pub const fn of(case: &'a Case, plan: &'a Plan) -> Self {
        Self { case, plan }
    }
}

macro_rules! stubs { ($($(#[$doc:meta])* $name:ident: $ty:ty;)+) => { impl Measurements<'_> { $($(#[$doc])* #[must_use] pub fn $name(&self) -> Option<$ty> { None })+ } } }

stubs! {
    // ---- the site, whatever the plan ----
    /// Facial plate at x = 0, along y, 1 mm apical of the present facial crest (the reference crest where the wall is lost there); 0 where no wall.
    facial_plate: Mm;
    /// Oral plate, the same.
    oral_plate: Mm;
    /// Faciooral width of the socket at the reference crest.
    socket_width: Mm;
    /// Mesiodistal room at the crest between the neighbours' surfaces (to the window's edge where absent).
    mesiodistal_room: Mm;
    /// Bone beyond the socket's apex along the tooth's axis, to the first surface or structure.
    bone_beyond_apex: Mm;
    /// How far the highest-reaching defect of the facial wall extends apically from the reference crest on the map (its most apical t); `None` without a facial defect.
    facial_defect_depth: Mm;
    /// Width of the largest facial defect at its widest, on the map.
    facial_defect_width: Mm;
    /// Mid-facial crest as it is now below the reference crest (dehiscence included); 0 without loss.
    crest_loss: Mm;
    /// Deepest lingual undercut of the oral profile below its most lingual point above it.
    lingual_undercut: Mm;
    /// Volume of the whole socket apical of the level crest.
    socket_volume: Mm3;
    /// Volume of bone that defects removed.
    wall_volume: Mm3;

    // ---- with an implant ----
    /// Facial gap.
    facial_gap: FacialGap;
    /// Gap volume: socket space apical of the level crest, less the implant.
    gap_volume: Mm3;
    /// Volume of the contour layer as planned.
    contour_volume: Mm3;
    /// Everything to be filled: gap (or socket) to the fill level + wall + contour.
    volume_to_graft: Mm3;
    /// Threads by what they face.
    threads: Threads;
    /// Facial bone once graft has turned to bone: along +y from the implant 2 mm below the platform (bone, grafted gap, contour layer; an ungrafted gap ends it).
    facial_bone_after_grafting: Mm;
    /// Least distance to the mesial neighbour.
    to_mesial_neighbour: NeighbourDistance;
    /// Least distance to the distal neighbour.
    to_distal_neighbour: NeighbourDistance;
    /// How far the platform's facial edge lies oral of the line that joins the neighbours' facial surfaces at the crest; negative when it stands out.
    facial_line_clearance: Mm;
    /// Least thickness of bone orally of the implant from 1 mm below the oral crest to its apex; negative when it perforates.
    oral_bone: Mm;
    /// Least thickness of bone facially of the implant's apical third; negative when it perforates.
    apical_facial_bone: Mm;
    /// The same orally.
    apical_oral_bone: Mm;
    /// From the drill's tip (apex + overshoot) to the inferior alveolar canal; negative inside.
    to_canal: Mm;
    /// From the drill's tip to foramen or loop; negative inside.
    to_foramen: Mm;
    /// From the implant's apex to the floor of sinus or nose; negative beyond.
    to_floor: Mm;
    /// From the implant to the nasopalatine canal; negative inside.
    to_nasopalatine: Mm;
    /// Length of the implant's apical end that stands in bone all round beyond the socket's apex, along its axis.
    anchorage_beyond_apex: Mm;
    /// Length along the oral line of the implant that is in bone.
    oral_engagement: Mm;
    /// Platform below the planned mid-facial margin, along z; positive apically.
    depth_from_margin: Mm;
    /// Platform below the facial crest (reconstructed where lost), along z; positive apically.
    depth_from_crest: Mm;
    /// Angle between the implant's axis and the planned crown's axis.
    angle_to_crown: Deg;
    /// Seating torque, teaching model.
    seating_torque: Ncm;
    /// Largest grain against the facial gap.
    grain_to_gap: Ratio;

    // ---- membrane and flap ----
    /// From the edge of the hole (defects, joined with the orifice where practice section 3 says) to the membrane's edge.
    membrane_margin: Margins;
    /// Least distance from the membrane's edge to a neighbouring root's outline on the map.
    membrane_to_root: Mm;
    /// From the membrane's edge to the edge of the reflected area.
    flap_beyond_membrane: Margins;
    /// From the edge of the bone defect or graft to the nearest vertical incision.
    incision_to_defect: Mm;
    /// Base of the flap over its free margin.
    flap_base_ratio: Ratio;
    /// Length of the flap over its base.
    flap_length_ratio: Ratio;
    /// Least distance along the crest from a vertical release to the middle of a papilla or the prominence of a root (whichever it meets first); 0 on it.
    release_to_prominence: Mm;
    /// From a vertical release to the mental foramen on the map.
    release_to_foramen: Mm;
    /// How far the flap's edge has to travel to close over what is to be covered.
    advancement_needed: Mm;
    /// Closing force, teaching model.
    closing_force: Newton;
}
