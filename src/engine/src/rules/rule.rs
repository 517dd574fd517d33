//! What a rule is.

use super::bands::{Bands, Zone};
use super::evidence::Evidence;
use super::known::Known;
use crate::chart::{Case, Fact};
use crate::measure::Measurements;
use crate::plan::{Decision, Plan, Step};

/// One rule of practice.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Named for the fault, kebab-case; never reused.
    pub id: &'static str,
    /// Id of its ledger entry.
    pub ledger: &'static str,
    /// Family.
    pub family: Family,
    /// The last step that it reads: it applies once that step is carried out.
    pub step: Step,
    /// What a learner who keeps it can do.
    pub skill: Skill,
    /// What it asks, as one sentence: *Leave at least 2 mm of membrane on intact bone.*
    pub statement: &'static str,
    /// Why, in one or two sentences, second person.
    pub why: &'static str,
    /// The smallest change that would mend a fault, as an instruction.
    pub mend: &'static str,
    /// What its readings are judged by.
    pub scale: Scale,
    /// How far sources agree.
    pub agreement: Agreement,
    /// Both sides, where sources differ.
    pub positions: Option<Positions>,
    /// Plan fields that it reads.
    pub reads: &'static [Decision],
    /// Facts that it rests on.
    pub rests_on: &'static [Fact],
    /// Causes that a fault of it may share with other rules, the most telling first.
    pub causes: &'static [Cause],
    /// Who says so; the strongest first.
    pub evidence: &'static [Evidence],
    /// Reads its quantity off the case and the plan; `None` when the rule does not apply.
    pub measure: fn(&Judging<'_>) -> Option<Reading>,
}

impl PartialEq for Rule {
    /// A rule is its id: the registry holds each once.
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

/// What readings are judged by.
#[derive(Debug, Clone, Copy)]
pub enum Scale {
    /// A number against bands.
    Bands(Bands<'static>),
    /// A closed list of situations.
    Situations(&'static [Situation]),
}

/// One situation of a rule that does not measure a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Situation {
    /// Key, unique in its rule.
    pub key: &'static str,
    /// What is the case, as a clause that follows *here*: "the socket was not probed".
    pub words: &'static str,
    /// What it is worth.
    pub zone: Zone,
}

/// What a rule read off a plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reading {
    /// A number in the unit of the rule's bands.
    Number(f64),
    /// Key of the situation.
    Situation(&'static str),
}

/// How far sources agree.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Agreement {
    /// Broad agreement.
    Agreed,
    /// Direction agreed, number varies.
    NumberVaries,
    /// Contested.
    Contested,
}

/// Both sides of a disagreement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Positions {
    /// One.
    pub one: &'static str,
    /// The other.
    pub other: &'static str,
}

/// Families of the ledger.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Family {
    /// Timing and case selection.
    Timing,
    /// Medical gates.
    Medical,
    /// Socket and defect classes.
    Defects,
    /// Facial plate.
    Plate,
    /// Horizontal gap.
    Gap,
    /// Dimensions and position.
    Position,
    /// Primary stability.
    Stability,
    /// Flap.
    Flap,
    /// Graft.
    Graft,
    /// Membrane.
    Membrane,
    /// Closure and follow-up.
    Closure,
    /// Diagnostics and consent.
    Diagnostics,
    /// Course of care, both ways.
    Care,
}

impl Family {
    /// In words, as a heading.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Timing => "Timing and case selection",
            Self::Medical => "Medical gates",
            Self::Defects => "Sockets and defects",
            Self::Plate => "Facial plate",
            Self::Gap => "Horizontal gap",
            Self::Position => "Dimensions and position",
            Self::Stability => "Primary stability",
            Self::Flap => "Flap",
            Self::Graft => "Graft",
            Self::Membrane => "Membrane",
            Self::Closure => "Closure and follow-up",
            Self::Diagnostics => "Diagnostics and consent",
            Self::Care => "Course of care",
        }
    }
}

macro_rules! skills {
    ($($variant:ident = $key:literal, $words:literal;)+) => {
        /// What a learner can do; a family of rules as learners name it.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Skill { $(#[doc = $words] $variant,)+ }

        impl Skill {
            /// All of them, in the order of care.
            pub const ALL: [Self; [$($key),+].len()] = [$(Self::$variant),+];

            /// What files hold.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)+ }
            }

            /// Its plain name.
            #[must_use]
            pub const fn words(self) -> &'static str {
                match self { $(Self::$variant => $words,)+ }
            }
        }
    };
}

skills! {
    Patient = "patient", "Clearing the patient";
    ReadingWalls = "reading-walls", "Reading the walls";
    Course = "course", "Choosing the course";
    Extracting = "extracting", "Extracting";
    FlapDesign = "flap-design", "Designing a flap";
    Placing = "placing", "Placing in three dimensions";
    Stability = "stability", "Judging stability";
    Grafting = "grafting", "Filling the gap and the wall";
    Covering = "covering", "Covering with a membrane";
    FollowingUp = "following-up", "Closing and following up";
}

/// A cause that several rules may see at once. A group of faults with one cause costs once, and the
/// debrief names the cause first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// The patient was not cleared for this operation.
    PatientNotCleared,
    /// A wall defect that an examination would have shown was not looked for.
    DefectNotLookedFor,
    /// Placed where the site does not allow it today.
    SiteNotReady,
    /// Kept from an implant that the site allows.
    HeldBack,
    /// The implant stands too far facially.
    ImplantTooFacial,
    /// The implant stands too far orally.
    ImplantTooOral,
    /// The implant stands too near a neighbour.
    ImplantTooNearNeighbour,
    /// The implant is too wide.
    ImplantTooWide,
    /// The implant stands too deep or is too long.
    ImplantTooDeep,
    /// The implant stands too shallow.
    ImplantTooShallow,
    /// The implant leans wrongly.
    ImplantTilted,
    /// The implant finds no hold.
    NoHold,
    /// The flap lays too little bare.
    FlapTooSmall,
    /// The membrane is too small.
    MembraneTooSmall,
    /// Nothing covers the defect.
    DefectLeftOpen,
    /// Too little graft.
    Underfilled,
    /// Nothing keeps the membrane where it was laid.
    MembraneLoose,
    /// A grafted socket was entered too soon.
    EnteredTooSoon,
}

impl Cause {
    /// The cause as a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::PatientNotCleared => "The patient was not cleared for this operation.",
            Self::DefectNotLookedFor => "A defect of the wall was never looked for.",
            Self::SiteNotReady => "An implant was placed where the site does not allow it today.",
            Self::HeldBack => "The site allows an implant today, and the plan held back.",
            Self::ImplantTooFacial => "The implant stands too far facially.",
            Self::ImplantTooOral => "The implant stands too far orally.",
            Self::ImplantTooNearNeighbour => "The implant stands too near a neighbour.",
            Self::ImplantTooWide => "The implant is too wide for this socket.",
            Self::ImplantTooDeep => "The implant reaches too deep.",
            Self::ImplantTooShallow => "The implant stands too shallow.",
            Self::ImplantTilted => "The implant leans away from the crown.",
            Self::NoHold => "The implant finds too little bone to hold it.",
            Self::FlapTooSmall => "The flap lays too little bone bare.",
            Self::MembraneTooSmall => "The membrane ends short of intact bone.",
            Self::DefectLeftOpen => "The defect was left without a cover.",
            Self::Underfilled => "Too little graft was laid.",
            Self::MembraneLoose => "Nothing keeps the membrane where it was laid.",
            Self::EnteredTooSoon => "The grafted socket was entered too soon.",
        }
    }
}

/// What a rule may read. `m` computes each measurement once, when it is first asked for.
#[derive(Debug)]
pub struct Judging<'a> {
    /// The truth.
    pub case: &'a Case,
    /// What has been carried out.
    pub plan: &'a Plan,
    /// Measurements of the plan on the site.
    pub m: &'a Measurements<'a>,
    /// What the learner has seen or could have seen.
    pub known: &'a Known<'a>,
}

impl Rule {
    /// The zone of a reading; `None` when the reading is not of this rule's kind.
    #[must_use]
    pub fn zone_of(&self, reading: Reading) -> Option<Zone> {
        match (&self.scale, reading) {
            (Scale::Bands(bands), Reading::Number(value)) => Some(bands.zone_of(value)),
            (Scale::Situations(situations), Reading::Situation(key)) => situations
                .iter()
                .find(|situation| situation.key == key)
                .map(|situation| situation.zone),
            _ => None,
        }
    }

    /// The scale, where it measures a number.
    #[must_use]
    pub const fn bands(&self) -> Option<&Bands<'static>> {
        match &self.scale {
            Scale::Bands(bands) => Some(bands),
            Scale::Situations(_) => None,
        }
    }

    /// The worst that it can say: its cost.
    #[must_use]
    pub fn cost(&self) -> Zone {
        match &self.scale {
            Scale::Bands(bands) => {
                bands.zones().map(|(_, _, zone)| zone).max().unwrap_or(bands.lowest)
            }
            Scale::Situations(situations) => {
                situations.iter().map(|situation| situation.zone).max().unwrap_or(Zone::Ideal)
            }
        }
    }
}

/// What a rule weighs in the mark whose worst word this is: 3 when it can be unsafe or likely to
/// compromise, 1 when only suboptimal, nothing when it only ever explains.
#[must_use]
pub const fn weight_of(cost: Zone) -> u32 {
    match cost {
        Zone::Unsafe | Zone::Compromising => 3,
        Zone::Suboptimal => 1,
        Zone::Ideal | Zone::Acceptable | Zone::Debated => 0,
    }
}
