//! The only place where a case is measured: functions of (site, plan), each with definition, unit
//! and sign.
//!
//! [`Measurements`] computes each measurement when it is first asked for and keeps what is costly, so
//! that a sweep which stops at the first failing rule pays only for what it read. What belongs to the
//! site whatever the plan is kept in a [`Ground`], which many plans on one site share.
//!
//! A measurement is `None` when it has no object: no implant in place, no membrane, no canal.
//! Measurements of the bed and its dangers (torque, canal, foramen, floor, neighbours, perforation)
//! are taken of the implant that was drilled for, also when it was removed again; measurements of
//! what it leaves behind (gap, threads, depth, line) only while it is in place.

mod apices;
mod bare;
mod bone;
mod bound;
mod bounds;
mod clearance;
mod flap;
mod force;
mod gap;
mod ground;
mod late;
mod membrane;
#[cfg(test)]
mod parted;
mod position;
mod reaches;
#[cfg(test)]
mod robust;
mod root_position;
mod septum;
mod site;
mod threads;
mod torque;
mod volume;

pub use bare::is_laid_bare;
pub(crate) use bounds::{Bounds, CLOSE, Care, Span};
pub use clearance::DRILL_OVERSHOOT;
pub use force::{FORCE_AT_EASE, reach_of_flap};
pub use ground::Ground;
pub use late::Late;
pub use root_position::RootClass;
pub use torque::torque_model;
pub use volume::CONTOUR_FALL;

use crate::chart::Case;
use crate::geometry::Cone;
use crate::plan::{Implant, Plan};
use crate::units::{Mm, Mm2, Mm3, Ncm};
use core::cell::OnceCell;

/// Measurements of one plan on one case.
#[derive(Debug)]
pub struct Measurements<'a> {
    /// The case.
    pub case: &'a Case,
    /// What has been carried out.
    pub plan: &'a Plan,
    shared: Option<&'a Ground>,
    own: OnceCell<Ground>,
    kept: Kept,
}

/// What is costly and read by several rules; `Some(None)` is a measurement without object.
#[derive(Debug, Default)]
struct Kept {
    drilled: OnceCell<Option<Cone>>,
    facial_gap: OnceCell<Option<FacialGap>>,
    grip: OnceCell<Option<threads::Grip>>,
    threads: OnceCell<Option<Threads>>,
    septum: OnceCell<Option<SeptumHold>>,
    gap_volume: OnceCell<Option<Mm3>>,
    to_graft: OnceCell<Option<Mm3>>,
    beside: [OnceCell<Option<NeighbourDistance>>; 2],
    membrane: OnceCell<Option<Margins>>,
    flap: OnceCell<Option<Margins>>,
    healed: OnceCell<Option<crate::healing::Healed>>,
    late: OnceCell<Option<(Late, Ncm)>>,
}

/// How far it is to bone in some direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Opening {
    /// Bone is met after this length; 0 where the surface lies in bone.
    Bone(Mm),
    /// No bone is met, and none would be were every wall whole: the line passes above the crest, as it
    /// does where the platform's rim stands coronal of the bone beside it.
    AboveCrest,
    /// No bone is met: a wall is missing, or the implant has left the ridge.
    Open,
}

/// The facial gap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FacialGap {
    /// From the implant's most facial point at its platform (at crest level, on its facial generator,
    /// where that point stands above the crest) to the facial wall as it was before any defect, along
    /// y; 0 when the implant touches or passes it.
    pub width: Mm,
    /// Whether bone is really there.
    pub wall_present: bool,
}

/// Lateral surface of the implant by what it faces; the parts sum to the whole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Threads {
    /// In bone.
    pub engaged: Mm2,
    /// Not in bone, but the radial ray meets bone within 6 mm.
    pub facing_bone: Mm2,
    /// The radial ray meets none there.
    pub exposed: Mm2,
}

/// How the septum between several roots holds the implant: areas of its side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeptumHold {
    /// All that lies apical of the furcation.
    pub below: Mm2,
    /// What of that stands in bone, of septum, walls or what lies beyond the apices.
    pub in_bone: Mm2,
    /// What of that stands in the bone of the septum.
    pub in_septum: Mm2,
}

/// What a septum is to an implant (`ledger: class-molar-septum`).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SeptumClass {
    /// It contains the implant wholly: apical of the furcation all of the side is in bone.
    A,
    /// It holds the implant in part.
    B,
    /// It holds next to nothing of it.
    C,
}

/// Distance from the implant to a neighbour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NeighbourDistance {
    /// Least distance between the surfaces along the whole length. When they overlap, minus the
    /// least move along x that would part them.
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

impl<'a> Measurements<'a> {
    /// Of this plan on this case; nothing is computed yet.
    #[must_use]
    pub fn of(case: &'a Case, plan: &'a Plan) -> Self {
        Self { case, plan, shared: None, own: OnceCell::new(), kept: Kept::default() }
    }

    /// The same where many plans are measured on one site: `ground` is what is known of the site of
    /// this very case.
    #[must_use]
    pub fn on(ground: &'a Ground, case: &'a Case, plan: &'a Plan) -> Self {
        Self { shared: Some(ground), ..Self::of(case, plan) }
    }

    /// What is known of the site whatever the plan.
    pub fn ground(&self) -> &Ground {
        self.shared.unwrap_or_else(|| self.own.get_or_init(|| Ground::of(&self.case.site)))
    }

    /// The outer cone of the implant that was drilled for, whether or not it stayed.
    pub fn drilled(&self) -> Option<&Cone> {
        let cone = self.kept.drilled.get_or_init(|| Some(cone_of(self.plan.implant.as_ref()?)));
        cone.as_ref()
    }

    /// The outer cone of the implant in place.
    pub fn seated(&self) -> Option<&Cone> {
        self.plan.implant_in_place().and_then(|_| self.drilled())
    }
}

/// The outer cone of a planned implant: its platform's middle lies at (distal, facial, depth).
#[must_use]
pub fn cone_of(implant: &Implant) -> Cone {
    let platform =
        crate::geometry::P3::new(implant.distal.get(), implant.facial.get(), implant.depth.get());
    crate::anatomy::implant_cone(
        platform,
        implant.diameter,
        implant.length,
        implant.tilt,
        implant.tip,
    )
}

/// A measured length. What is not finite (which only a site that no border let through could give)
/// is no measurement.
fn mm(value: f64) -> Option<Mm> {
    Mm::checked(value).ok()
}

fn mm2(value: f64) -> Option<Mm2> {
    Mm2::checked(value).ok()
}

fn mm3(value: f64) -> Option<Mm3> {
    Mm3::checked(value).ok()
}
