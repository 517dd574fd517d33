//! What has been carried out. These types cannot hold what cannot be done: an outline exists only
//! with its membrane, contacts only with a provisional, a placement only with an implant.

use super::catalogue::{Decision, Step};
use super::choices as c;
use super::choices::Several;
use super::draft::{Draft, Refusal, Value};
use super::flow;
use super::later::{Later, prepared_for};
use super::take::Take;
use crate::chart::Case;
use crate::geometry::Outline;
use crate::units::{Deg, Mm, Mm3};

/// Everything carried out so far, step by step; a step that was not carried out is `None`.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Plan {
    /// Requests, drugs, advice.
    pub chart: Option<Chart>,
    /// Examinations and the reading of the wall.
    pub examined: Option<Examined>,
    /// The intended course.
    pub intention: Option<Intention>,
    /// Taking the tooth out.
    pub extraction: Option<Extraction>,
    /// Access.
    pub flap: Option<Flap>,
    /// Drilling and seating.
    pub implant: Option<Implant>,
    /// What was done on the torque.
    pub seating: Option<Seating>,
    /// Graft and membrane.
    pub graft: Option<GraftAndMembrane>,
    /// Closure and instructions.
    pub closure: Option<Closure>,
    /// Sutures out and reviews.
    pub returns: Option<Returns>,
    /// What follows the reviews.
    pub later: Later,
    /// Answers to what chance brought.
    pub rescue: Rescue,
}

/// Answers to what chance brought; each is present when its event happened.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Rescue {
    /// To a root tip that was lost.
    pub tip: Option<c::TipRescue>,
    /// To a torn lining of the sinus.
    pub lining: Option<c::LiningRescue>,
    /// To bleeding after closure.
    pub bleed: Option<c::BleedRescue>,
    /// To a swelling floor of the mouth.
    pub floor: Option<c::FloorRescue>,
    /// To a lip that stays numb.
    pub nerve: Option<c::NerveRescue>,
    /// To a membrane that lies bare.
    pub exposure: Option<c::ExposureRescue>,
    /// To an infected wound.
    pub infection: Option<c::InfectionRescue>,
}

/// Requests, drugs, advice.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// What was asked for.
    pub requests: Several<c::Request>,
    /// What happens to drugs that others prescribed.
    pub drugs: c::DrugAction,
    /// Advice beside the operation.
    pub advice: Several<c::Advice>,
}

/// Examinations and the reading of the wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Examined {
    /// Which.
    pub examinations: Several<c::Examination>,
    /// Present when a film was taken.
    pub film: Option<c::FilmQuestion>,
    /// Present when sections were taken.
    pub sections: Option<c::SectionsQuestion>,
    /// What is held of the facial wall.
    pub wall: c::WallReading,
    /// On what ground.
    pub ground: c::WallGround,
}

/// The intended course.
#[derive(Debug, Clone, PartialEq)]
pub struct Intention {
    /// As first intended; revisions stand with the steps that made them.
    pub course: c::Course,
    /// Present when the course is put off, handed on, or keeps the tooth.
    pub today: Option<Today>,
    /// Present when the tooth comes out in this plan.
    pub margin: Option<c::MarginPlan>,
    /// Present when an implant is intended today.
    pub channel: Option<c::ScrewChannel>,
    /// Present when an implant is intended today.
    pub guidance: Option<c::Guidance>,
    /// Antibiotic before; present when the patient is operated on.
    pub antibiotic: Option<c::AntibioticBefore>,
    /// Worn meanwhile; present when the tooth comes out.
    pub interim: Option<c::Interim>,
    /// What consent covers.
    pub consent: Several<c::ConsentPoint>,
}

/// What is done today when the course is put off or handed on.
#[derive(Debug, Clone, PartialEq)]
pub struct Today {
    /// Done today.
    pub acts: Several<c::TodayAct>,
    /// Seen again.
    pub by_when: c::ByWhen,
    /// Goes to; `None` when the tooth is kept.
    pub refer_to: Option<c::ReferTo>,
}

/// Taking the tooth out.
#[derive(Debug, Clone, PartialEq)]
pub struct Extraction {
    /// Whether a flap was raised before.
    pub flap_first: bool,
    /// How it came out.
    pub technique: c::Technique,
    /// Whether it was cut.
    pub sectioning: c::Sectioning,
    /// What became of the socket's tissue.
    pub debridement: c::Debridement,
    /// What was probed afterwards.
    pub probing: c::SocketProbing,
    /// What became of a piece of the facial plate; present when one broke.
    pub plate: Option<c::PlateRescue>,
    /// Confirmed or revised.
    pub revision: c::Revision,
}

/// Access.
#[derive(Debug, Clone, PartialEq)]
pub struct Flap {
    /// Facial flap; `None` for flapless.
    pub raised: Option<FlapRaised>,
    /// How far the oral margin was raised; nothing when it was left.
    pub oral: Mm,
    /// Confirmed or revised.
    pub revision: c::Revision,
}

/// A facial flap.
#[derive(Debug, Clone, PartialEq)]
pub struct FlapRaised {
    /// Vertical releases.
    pub releases: Releases,
    /// Bone laid bare, on the map.
    pub outline: Outline,
    /// Papillae.
    pub papillae: c::Papillae,
    /// Whether the periosteum was released.
    pub periosteum_released: bool,
}

/// Vertical releases of a flap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Releases {
    /// Envelope.
    None,
    /// Triangular.
    One(c::ReleaseSide),
    /// Trapezoidal.
    Two,
}

/// Drilling and seating.
#[derive(Debug, Clone, PartialEq)]
pub struct Implant {
    /// Where the first drill entered.
    pub entry: c::Entry,
    /// How the bed was prepared.
    pub preparation: c::Preparation,
    /// How drills were run.
    pub drilling: c::Drilling,
    /// Film with the pilot.
    pub pilot_film: bool,
    /// Diameter and length of the one that was seated first and taken out for this one; `None` where
    /// this is the first.
    pub first: Option<[Mm; 2]>,
    /// Platform diameter.
    pub diameter: Mm,
    /// Length.
    pub length: Mm,
    /// Platform's middle from the origin, facially positive.
    pub facial: Mm,
    /// Platform's middle from the origin, distally positive.
    pub distal: Mm,
    /// Platform's level below the reference crest; negative above it.
    pub depth: Mm,
    /// Apex facially positive.
    pub tilt: Deg,
    /// Apex distally positive.
    pub tip: Deg,
    /// Film after seating.
    pub seating_film: bool,
}

/// What was done on the torque.
#[derive(Debug, Clone, PartialEq)]
pub enum Seating {
    /// It stays, with this component.
    Stays(Component),
    /// It came out again; the plan went on as graft and return.
    RemovedForGraft,
    /// It came out again; the plan went on as let heal.
    RemovedToHeal,
}

/// What stands on the implant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Component {
    /// Cover screw.
    CoverScrew,
    /// Healing abutment.
    HealingAbutment,
    /// Customised abutment that seals the socket.
    CustomAbutment,
    /// Provisional crown, and how it meets the other teeth.
    Provisional(c::Contacts),
}

impl From<c::LateComponent> for Component {
    fn from(component: c::LateComponent) -> Self {
        match component {
            c::LateComponent::CoverScrew => Self::CoverScrew,
            c::LateComponent::HealingAbutment => Self::HealingAbutment,
        }
    }
}

/// Graft and membrane.
#[derive(Debug, Clone, PartialEq)]
pub struct GraftAndMembrane {
    /// `None` when nothing was grafted.
    pub graft: Option<Graft>,
    /// `None` when nothing was covered.
    pub membrane: Option<Membrane>,
    /// Connective tissue graft.
    pub tissue: c::TissueGraft,
    /// Order of acts; present with graft and membrane both.
    pub order: Option<c::ActOrder>,
    /// What seals the socket; present when no implant stays.
    pub seal: Option<c::SocketSeal>,
}

/// A particulate graft.
#[derive(Debug, Clone, PartialEq)]
pub struct Graft {
    /// Of what.
    pub material: c::GraftMaterial,
    /// How coarse.
    pub grains: c::GrainSize,
    /// Wetted with what.
    pub wetting: c::Wetting,
    /// Packed how.
    pub packing: c::Packing,
    /// How much was opened.
    pub amount: Mm3,
    /// To which level: above the reference crest positive, below it negative.
    pub fill: Mm,
    /// Thickness of the layer outside the facial wall, 0 when none is laid; `None` without a flap.
    pub contour: Option<Mm>,
}

/// A membrane.
#[derive(Debug, Clone, PartialEq)]
pub struct Membrane {
    /// Of what.
    pub kind: c::MembraneKind,
    /// What it covers, on the map.
    pub outline: Outline,
    /// How it is trimmed.
    pub trim: c::Trim,
    /// What is done with it over the socket.
    pub fold: c::Fold,
    /// How it is held.
    pub fixation: c::Fixation,
}

/// Closure and instructions.
#[derive(Debug, Clone, PartialEq)]
pub struct Closure {
    /// Open or closed.
    pub kind: c::ClosureKind,
    /// Thread.
    pub size: c::SutureSize,
    /// Of what.
    pub material: c::SutureMaterial,
    /// Needle path; present over a membrane.
    pub needle: Option<c::NeedlePath>,
    /// Against bleeding.
    pub bleeding: Several<c::BleedingMeasure>,
    /// In writing.
    pub instructions: Several<c::Instruction>,
    /// Rinse.
    pub antiseptic: c::Antiseptic,
    /// Days of it; present with chlorhexidine.
    pub antiseptic_days: Option<i32>,
    /// Antibiotic afterwards.
    pub antibiotic: c::AntibioticAfter,
    /// Sensation checked the next day; present in the mandible.
    pub sensation: Option<bool>,
}

/// Sutures out and reviews.
#[derive(Debug, Clone, PartialEq)]
pub struct Returns {
    /// Days to suture removal; present when something was sutured.
    pub sutures_out: Option<i32>,
    /// Days to removal of the membrane; present when it does not resorb.
    pub membrane_out: Option<i32>,
    /// Reviews.
    pub reviews: Several<c::Review>,
}

impl Plan {
    /// Carries out one step of the draft: its part becomes an act.
    ///
    /// # Errors
    /// [`Refusal::Undecided`] with everything that is missing; the plan has not changed then.
    pub fn carry_out(&mut self, step: Step, draft: &Draft, case: &Case) -> Result<(), Refusal> {
        let missing = draft.undecided(step, case);
        let undecided = || Refusal::Undecided { step, missing: missing.clone() };
        if !missing.is_empty() {
            return Err(undecided());
        }
        let take = Take { draft, case };
        match step {
            Step::Chart => self.chart = Some(take.chart().ok_or_else(undecided)?),
            Step::Examination => self.examined = Some(take.examined().ok_or_else(undecided)?),
            Step::Intention => self.intention = Some(take.intention().ok_or_else(undecided)?),
            Step::Extraction => {
                self.extraction = Some(take.extraction().ok_or_else(undecided)?);
                self.rescue.tip = take.one_if_asked(Decision::LostTip);
            }
            Step::Flap => self.flap = Some(take.flap().ok_or_else(undecided)?),
            Step::Implant => {
                self.implant = Some(take.implant().ok_or_else(undecided)?);
                self.rescue.lining = take.one_if_asked(Decision::TornLining);
            }
            Step::Seating => {
                self.seating = Some(take.seating().ok_or_else(undecided)?);
                self.implant = self.implant.take().map(|first| take.second(first));
            }
            Step::Graft => self.graft = Some(take.graft().ok_or_else(undecided)?),
            Step::Closure => {
                self.closure = Some(take.closure().ok_or_else(undecided)?);
                self.rescue.bleed = take.one_if_asked(Decision::BleedsAgain);
                self.rescue.floor = take.one_if_asked(Decision::SwollenFloor);
            }
            Step::Review => {
                self.returns = Some(take.returns());
                self.rescue.nerve = take.one_if_asked(Decision::NumbLip);
                self.rescue.exposure = take.one_if_asked(Decision::BareMembrane);
                self.rescue.infection = take.one_if_asked(Decision::Infected);
            }
            later => take.later(later, &mut self.later).ok_or_else(undecided)?,
        }
        Ok(())
    }

    /// Carries out every step of the draft's course, in order.
    ///
    /// # Errors
    /// The [`Refusal`] of each step that cannot be carried out, all at once.
    pub fn from_draft(draft: &Draft, case: &Case) -> Result<Self, Vec<Refusal>> {
        let mut plan = Self::default();
        let refusals: Vec<_> = flow::steps(draft)
            .into_iter()
            .filter_map(|step| plan.carry_out(step, draft, case).err())
            .collect();
        if refusals.is_empty() { Ok(plan) } else { Err(refusals) }
    }

    /// The course after all revisions so far.
    #[must_use]
    pub fn course(&self) -> Option<c::Course> {
        let intended = self.intention.as_ref()?.course;
        let revise = |course, revision| match revision {
            c::Revision::CarryOn => course,
            c::Revision::ToPlaceToday => c::Course::PlaceToday,
            c::Revision::ToGraftAndReturn => c::Course::GraftAndReturn,
            c::Revision::ToReturnEarly => c::Course::ReturnEarly,
            c::Revision::ToLetHeal => c::Course::LetHeal,
            c::Revision::ToRefer => c::Course::Refer,
        };
        let mut course = intended;
        if let Some(extraction) = &self.extraction {
            course = revise(course, extraction.revision);
        }
        if let Some(flap) = &self.flap {
            course = revise(course, flap.revision);
        }
        Some(match &self.seating {
            Some(Seating::RemovedForGraft) => c::Course::GraftAndReturn,
            Some(Seating::RemovedToHeal) => c::Course::LetHeal,
            Some(Seating::Stays(_)) | None => course,
        })
    }

    /// The plan as it was before a second implant took the place of the first; `None` without one.
    #[must_use]
    pub fn with_the_first(&self) -> Option<Self> {
        let [diameter, length] = self.implant.as_ref()?.first?;
        let mut plan = self.clone();
        plan.implant =
            plan.implant.map(|second| Implant { diameter, length, first: None, ..second });
        Some(plan)
    }

    /// The implant, if one was drilled for and stays (or its torque has not been read yet).
    #[must_use]
    pub fn implant_in_place(&self) -> Option<&Implant> {
        match self.seating {
            Some(Seating::RemovedForGraft | Seating::RemovedToHeal) => None,
            Some(Seating::Stays(_)) | None => self.implant.as_ref(),
        }
    }

    /// What stands on the implant.
    #[must_use]
    pub fn component(&self) -> Option<Component> {
        match self.seating {
            Some(Seating::Stays(component)) => Some(component),
            _ => None,
        }
    }

    /// The facial flap, if one was raised.
    #[must_use]
    pub fn raised(&self) -> Option<&FlapRaised> {
        self.flap.as_ref()?.raised.as_ref()
    }

    /// The graft, if one was laid.
    #[must_use]
    pub fn graft_laid(&self) -> Option<&Graft> {
        self.graft.as_ref()?.graft.as_ref()
    }

    /// The membrane, if one was laid.
    #[must_use]
    pub fn membrane(&self) -> Option<&Membrane> {
        self.graft.as_ref()?.membrane.as_ref()
    }
}

/// The implant that a draft drills for first; `None` while a part of its place is open. What a drill
/// meets does not depend on how the bed is prepared, which is decided on what it met.
#[must_use]
pub fn drilled(draft: &Draft, case: &Case) -> Option<Implant> {
    if draft.value(Decision::Preparation).is_some() {
        return Take { draft, case }.implant();
    }
    let mut draft = draft.clone();
    draft.choose(Decision::Preparation, Value::one(prepared_for(case.site.density.class))).ok()?;
    Take { draft: &draft, case }.implant()
}
