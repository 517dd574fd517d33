//! Acts once the patient comes back: re-entry, late placement, uncovering, restoration, recall.

use super::acts::Implant;
use super::catalogue::{Decision, Step};
use super::choices as c;
use super::choices::Several;
use super::take::Take;
use crate::anatomy::DensityClass;
use crate::chart::Case;
use crate::units::{Deg, Mm};

/// What followed the reviews; each is present once it has been carried out.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Later {
    /// The healed site seen, and what is done about it.
    pub re_entry: Option<ReEntry>,
    /// The same after a further wait.
    pub re_entry_again: Option<ReEntry>,
    /// The same after a second one, for the last time.
    pub last_re_entry: Option<ReEntry>,
    /// An implant in the healed site.
    pub placement: Option<LatePlacement>,
    /// A submerged implant uncovered.
    pub uncovering: Option<Uncovering>,
    /// The crown.
    pub restoration: Option<Restoration>,
    /// What follows for good.
    pub recall: Option<Recall>,
}

impl Later {
    /// Nothing yet.
    pub const NONE: Self = Self {
        re_entry: None,
        re_entry_again: None,
        last_re_entry: None,
        placement: None,
        uncovering: None,
        restoration: None,
        recall: None,
    };

    /// Every time that the healed site was seen, in order.
    pub fn returns(&self) -> impl DoubleEndedIterator<Item = (Step, &ReEntry)> {
        let seen = [
            (Step::ReEntry, &self.re_entry),
            (Step::ReEntryAgain, &self.re_entry_again),
            (Step::LastReEntry, &self.last_re_entry),
        ];
        seen.into_iter().filter_map(|(step, found)| Some((step, found.as_ref()?)))
    }

    /// The healed site as it was last seen.
    #[must_use]
    pub fn found(&self) -> Option<&ReEntry> {
        self.returns().next_back().map(|(_, found)| found)
    }

    /// The same once something else than a longer wait has been decided about it: until then nobody
    /// knows when an implant goes in.
    #[must_use]
    pub fn decided(&self) -> Option<&ReEntry> {
        self.found().filter(|found| found.act != c::HealedAct::Wait)
    }
}

/// The healed site seen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReEntry {
    /// Weeks from the extraction, every wait counted.
    pub after: i32,
    /// What is done about it.
    pub act: c::HealedAct,
}

/// An implant in the healed site: mesiodistally on the axis of the tooth that stood there, tipped as
/// the planned crown.
#[derive(Debug, Clone, PartialEq)]
pub struct LatePlacement {
    /// Platform diameter.
    pub diameter: Mm,
    /// Length.
    pub length: Mm,
    /// Platform's middle from the tooth's axis, facially positive.
    pub facial: Mm,
    /// Platform's level below the healed mid-facial crest.
    pub depth: Mm,
    /// Apex facially positive.
    pub tilt: Deg,
    /// What goes on it.
    pub component: c::LateComponent,
}

/// A submerged implant uncovered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Uncovering {
    /// Weeks from placement.
    pub after: i32,
    /// How its hold is tested.
    pub hold: c::HoldTest,
    /// What becomes of the attached tissue.
    pub band: c::BandCare,
}

/// The crown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Restoration {
    /// Weeks from placement. What lies under the gum cannot be restored before it is uncovered: of
    /// both times the later one.
    pub after: i32,
    /// How the seat of the impression part is checked.
    pub seat_check: c::SeatCheck,
}

/// What follows for good.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recall {
    /// Months from one to the next.
    pub every: i32,
    /// What is examined.
    pub exam: Several<c::RecallExam>,
}

/// How a bed is prepared where nothing speaks against what its density asks.
#[must_use]
pub const fn prepared_for(density: DensityClass) -> c::Preparation {
    match density {
        DensityClass::D1 => c::Preparation::Tapped,
        DensityClass::D2 => c::Preparation::Full,
        DensityClass::D3 | DensityClass::D4 => c::Preparation::UnderByHalf,
    }
}

impl LatePlacement {
    /// The implant as what is measured of one wants it, in the healed `case` with its mid-facial `crest`
    /// at that level. Nobody decides here how the bed is prepared: it is taken to be done as its density
    /// asks (`ledger: density-adapted-prep`). Drills and films are decided by nobody either, and
    /// nothing measured reads them.
    #[must_use]
    pub fn implant(&self, case: &Case, crest: Mm) -> Implant {
        Implant {
            entry: c::Entry::SocketApex,
            preparation: prepared_for(case.site.density.class),
            drilling: c::Drilling::CooledModerate,
            pilot_film: true,
            first: None,
            diameter: self.diameter,
            length: self.length,
            facial: self.facial,
            distal: Mm::ZERO,
            depth: crest + self.depth,
            tilt: self.tilt,
            tip: case.site.crown.tip,
            seating_film: true,
        }
    }
}

impl Take<'_> {
    /// Carries out one of the later steps; `None` where an asked answer is missing.
    pub(super) fn later(&self, step: Step, later: &mut Later) -> Option<()> {
        let number = |decision| self.draft.number(decision);
        match step {
            Step::ReEntry => {
                let act = self.draft.one(Decision::HealedAct)?;
                later.re_entry = Some(ReEntry { after: number(Decision::PlaceAfter)?, act });
            }
            Step::ReEntryAgain => {
                let after = later.re_entry.as_ref()?.after + number(Decision::WaitFor)?;
                let act = self.draft.one(Decision::AgainAct)?;
                later.re_entry_again = Some(ReEntry { after, act });
            }
            Step::LastReEntry => {
                let after = later.re_entry_again.as_ref()?.after + number(Decision::WaitForLast)?;
                let act: c::LastAct = self.draft.one(Decision::LastAct)?;
                later.last_re_entry = Some(ReEntry { after, act: act.into() });
            }
            Step::LatePlacement => {
                let tenths = |decision| number(decision).map(Mm::from_tenths);
                later.placement = Some(LatePlacement {
                    diameter: tenths(Decision::LateDiameter)?,
                    length: tenths(Decision::LateLength)?,
                    facial: tenths(Decision::LateFacial)?,
                    depth: tenths(Decision::LateDepth)?,
                    tilt: Deg::new(f64::from(number(Decision::LateTilt)?)),
                    component: self.draft.one(Decision::LateComponent)?,
                });
            }
            Step::Uncovering => {
                later.uncovering = Some(Uncovering {
                    after: number(Decision::UncoverAfter)?,
                    hold: self.draft.one(Decision::HoldTest)?,
                    band: self.draft.one(Decision::BandCare)?,
                });
            }
            Step::Restoration => {
                let uncovered = later.uncovering.as_ref().map_or(0, |done| done.after);
                later.restoration = Some(Restoration {
                    after: number(Decision::RestoreAfter)?.max(uncovered),
                    seat_check: self.draft.one(Decision::SeatCheck)?,
                });
            }
            Step::Recall => {
                let exam = self.draft.many(Decision::RecallExam).unwrap_or_default();
                later.recall = Some(Recall { every: number(Decision::RecallEvery)?, exam });
            }
            _ => {}
        }
        Some(())
    }
}
