//! Every decision: where it belongs, what it asks, what may be answered.

use super::choices::{self as c, Alternative, Choice};

/// A step of care, in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Step {
    /// History, wishes, requests.
    Chart,
    /// Examinations and what is read from them.
    Examination,
    /// The course of care, consent.
    Intention,
    /// Taking the tooth out, probing the socket, first revision.
    Extraction,
    /// Access, second revision.
    Flap,
    /// Drilling and seating.
    Implant,
    /// Reading the torque, component, third revision.
    Seating,
    /// Graft and membrane.
    Graft,
    /// Closure and instructions.
    Closure,
    /// Sutures out, reviews, and what they find.
    Review,
    /// The healed site seen again.
    ReEntry,
    /// Seen once more, after a further wait.
    ReEntryAgain,
    /// Seen for the last time, after a second one.
    LastReEntry,
    /// An implant in the healed site.
    LatePlacement,
    /// Uncovering a submerged implant.
    Uncovering,
    /// The crown.
    Restoration,
    /// What follows for good.
    Recall,
}

impl Step {
    /// All steps in order.
    pub const ALL: &'static [Self] = &[
        Self::Chart,
        Self::Examination,
        Self::Intention,
        Self::Extraction,
        Self::Flap,
        Self::Implant,
        Self::Seating,
        Self::Graft,
        Self::Closure,
        Self::Review,
        Self::ReEntry,
        Self::ReEntryAgain,
        Self::LastReEntry,
        Self::LatePlacement,
        Self::Uncovering,
        Self::Restoration,
        Self::Recall,
    ];

    /// What files hold.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Chart => "chart",
            Self::Examination => "examination",
            Self::Intention => "intention",
            Self::Extraction => "extraction",
            Self::Flap => "flap",
            Self::Implant => "implant",
            Self::Seating => "seating",
            Self::Graft => "graft",
            Self::Closure => "closure",
            // Kept from when all that follows was one step: stored attempts hold it.
            Self::Review => "returns",
            Self::ReEntry => "re-entry",
            Self::ReEntryAgain => "re-entry-again",
            Self::LastReEntry => "last-re-entry",
            Self::LatePlacement => "late-placement",
            Self::Uncovering => "uncovering",
            Self::Restoration => "restoration",
            Self::Recall => "recall",
        }
    }

    /// What the screen shows.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Chart => "Chart",
            Self::Examination => "Examination",
            Self::Intention => "Intention",
            Self::Extraction => "Extraction",
            Self::Flap => "Flap",
            Self::Implant => "Implant",
            Self::Seating => "Seating",
            Self::Graft => "Graft and membrane",
            Self::Closure => "Closure",
            Self::Review => "Review",
            Self::ReEntry => "Re-entry",
            Self::ReEntryAgain => "Re-entry again",
            Self::LastReEntry => "Last re-entry",
            Self::LatePlacement => "Late placement",
            Self::Uncovering => "Uncovering",
            Self::Restoration => "Restoration",
            Self::Recall => "Recall",
        }
    }

    /// What the operator is trying to achieve, in one line.
    #[must_use]
    pub const fn aim(self) -> &'static str {
        match self {
            Self::Chart => {
                "Find out whether this patient can be operated on now, and what must be asked before."
            }
            Self::Examination => {
                "See the walls before you decide: each examination shows some things and is blind to others."
            }
            Self::Intention => {
                "Choose the course that this site and this patient allow, and agree when you would stop."
            }
            Self::Extraction => {
                "Take the root out without spending the facial plate, then find out what is left."
            }
            Self::Flap => {
                "Open no more than you need, and enough to see the whole defect and to close over it."
            }
            Self::Implant => {
                "Put the implant where the crown needs it, in bone that holds it, clear of what must not be hurt."
            }
            Self::Seating => "Read how firmly it sits, and let that decide what goes on it.",
            Self::Graft => "Fill what is missing and cover it onto intact bone on every side.",
            Self::Closure => {
                "Close without tension, stop the bleeding, and send the patient home knowing what to watch for."
            }
            Self::Review => "See the patient in time, before what goes wrong has gone far.",
            Self::ReEntry => "Come back when the site has healed, see what it became, then decide.",
            Self::ReEntryAgain => "See what the wait has changed, then decide.",
            Self::LastReEntry => "Decide on what is there: what has gone does not come back.",
            Self::LatePlacement => {
                "Put the implant where the crown needs it, in the ridge that is left."
            }
            Self::Uncovering => {
                "Find the implant firm, and keep a band of attached tissue around it."
            }
            Self::Restoration => "Restore when the bone has turned over, on parts that seat.",
            Self::Recall => "Look again for good, at what tells early.",
        }
    }

    /// The step with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|step| step.key() == key)
    }
}

/// How a number is chosen: an integer count of `1 / per_unit` of `unit`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NumberKind {
    /// Least count.
    pub least: i32,
    /// Greatest count.
    pub most: i32,
    /// A count is a multiple of this above `least`.
    pub by: i32,
    /// Counts in one unit: 10 for tenths of a millimetre, 1 for degrees, 100 for hundredths of a cc.
    pub per_unit: i32,
    /// The unit.
    pub unit: &'static str,
    /// What a negative and a positive value mean, for screens that never show a bare sign;
    /// empty where the value has no direction.
    pub ways: [&'static str; 2],
}

/// What may be answered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// One of these.
    One(&'static [Choice]),
    /// Any number of these, none included.
    Many(&'static [Choice]),
    /// A number.
    Number(NumberKind),
    /// An outline on the map.
    Outline,
}

/// A decision and all that is said about it.
#[derive(Debug, Clone, Copy)]
pub struct Entry {
    /// Which.
    pub decision: Decision,
    /// What files hold.
    pub key: &'static str,
    /// Its step.
    pub step: Step,
    /// Its name on screen.
    pub label: &'static str,
    /// The question, for a student who has never done it.
    pub ask: &'static str,
    /// What may be answered.
    pub kind: Kind,
}

const fn number(least: i32, most: i32, by: i32, per_unit: i32, unit: &'static str) -> Kind {
    Kind::Number(NumberKind { least, most, by, per_unit, unit, ways: ["", ""] })
}

const fn directed(most: i32, per_unit: i32, unit: &'static str, ways: [&'static str; 2]) -> Kind {
    Kind::Number(NumberKind { least: -most, most, by: 1, per_unit, unit, ways })
}

macro_rules! decisions {
    ($($step:ident { $($name:ident = $key:literal, $label:literal, $ask:literal, $kind:expr;)+ })+) => {
        /// One thing that a learner decides.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Decision { $($(#[doc = $label] $name,)+)+ }

        impl Decision {
            /// Every decision in the order of care.
            pub const ALL: &'static [Entry] = &[$($(
                Entry { decision: Decision::$name, key: $key, step: Step::$step, label: $label, ask: $ask, kind: $kind },
            )+)+];
        }
    };
}

const fn one<A: Alternative>() -> Kind {
    Kind::One(A::OPTIONS)
}

const fn many<A: Alternative>() -> Kind {
    Kind::Many(A::OPTIONS)
}

decisions! {
    Chart {
        Requests = "requests", "Ask for", "What do you need to know before you touch this patient?", many::<c::Request>();
        Drugs = "drugs", "Prescribed drugs", "What happens to the drugs that others prescribed?", one::<c::DrugAction>();
        Advices = "advice", "Advice", "What do you advise beside the operation?", many::<c::Advice>();
    }
    Examination {
        Examinations = "examinations", "Examinations", "Which examinations do you carry out?", many::<c::Examination>();
        FilmQuestion = "film-question", "Question to the film", "What is the film to answer?", one::<c::FilmQuestion>();
        SectionsQuestion = "sections-question", "Question to the sections", "What are the sections to answer?", one::<c::SectionsQuestion>();
        WallReading = "wall-reading", "Facial wall", "What do you hold of the facial wall now?", one::<c::WallReading>();
        WallGround = "wall-ground", "Resting on", "On what does that rest?", one::<c::WallGround>();
    }
    Intention {
        Course = "course", "Course of care", "Which course do you intend?", one::<c::Course>();
        Today = "today", "Done today", "What is done today, whatever becomes of the implant?", many::<c::TodayAct>();
        ByWhen = "by-when", "Seen again", "By when is the patient seen again?", one::<c::ByWhen>();
        ReferTo = "refer-to", "Goes to", "To whom does the patient go?", one::<c::ReferTo>();
        MarginPlan = "margin-plan", "Margin", "What is planned about the level of the margin?", one::<c::MarginPlan>();
        ScrewChannel = "screw-channel", "Screw channel", "How does the screw leave the crown?", one::<c::ScrewChannel>();
        Guidance = "guidance", "Guidance", "How are the drills led?", one::<c::Guidance>();
        AntibioticBefore = "antibiotic-before", "Antibiotic before", "An antibiotic before the operation?", one::<c::AntibioticBefore>();
        Interim = "interim", "Worn meanwhile", "What does the patient wear meanwhile?", one::<c::Interim>();
        Consent = "consent", "Consent covers", "What does consent cover?", many::<c::ConsentPoint>();
    }
    Extraction {
        FlapFirst = "flap-first", "Flap before extraction", "Is a flap raised before the tooth comes out?", one::<c::YesNo>();
        Technique = "technique", "Technique", "How does the tooth come out?", one::<c::Technique>();
        Sectioning = "sectioning", "Root", "In one piece or sectioned?", one::<c::Sectioning>();
        Debridement = "debridement", "Debridement", "What is done with the tissue in the socket?", one::<c::Debridement>();
        SocketProbing = "socket-probing", "Probing the socket", "Which walls are probed afterwards?", one::<c::SocketProbing>();
        BrokenPlate = "broken-plate", "Broken plate", "A piece of the facial plate moves with the root: what becomes of it?", one::<c::PlateRescue>();
        LostTip = "lost-tip", "Lost root tip", "The tip of the root broke off and is gone from sight: what now?", one::<c::TipRescue>();
        AfterExtraction = "after-extraction", "Confirm or revise", "On what you now know: carry on?", one::<c::Revision>();
    }
    Flap {
        FlapDesign = "flap-design", "Flap", "Which flap?", one::<c::FlapDesign>();
        ReleaseSide = "release-side", "Release", "At which end is the vertical release?", one::<c::ReleaseSide>();
        FlapOutline = "flap-outline", "Reflected area", "Which area of facial bone is laid bare?", Kind::Outline;
        Papillae = "papillae", "Papillae", "What happens to the papillae?", one::<c::Papillae>();
        OralElevation = "oral-elevation", "Oral margin raised", "How far is the oral margin raised, so that a membrane can be folded under it?", number(0, 80, 1, 10, "mm");
        PeriostealRelease = "periosteal-release", "Periosteal release", "Is the periosteum released on the facial side?", one::<c::YesNo>();
        AfterFlap = "after-flap", "Confirm or revise", "On what you now see: carry on?", one::<c::Revision>();
    }
    Implant {
        Entry = "entry", "First drill", "Where does the first drill enter?", one::<c::Entry>();
        Drilling = "drilling", "Drilling", "How are the drills run?", one::<c::Drilling>();
        PilotFilm = "pilot-film", "Film with the pilot", "A check film with the pilot drill in place?", one::<c::YesNo>();
        Diameter = "diameter", "Diameter", "Which platform diameter?", number(30, 60, 5, 10, "mm");
        Length = "length", "Length", "Which length?", number(80, 160, 10, 10, "mm");
        OffsetFacial = "offset-facial", "Facial or oral", "How far from the tooth's axis, facially or orally, does the platform lie?", directed(60, 10, "mm", ["to the oral side", "to the facial side"]);
        OffsetDistal = "offset-distal", "Mesial or distal", "How far from the tooth's axis, mesially or distally?", directed(40, 10, "mm", ["mesially", "distally"]);
        Depth = "depth", "Platform level", "How far from the reference crest does the platform lie?", directed(60, 10, "mm", ["coronal of the crest", "apical of the crest"]);
        Tilt = "tilt", "Tilt", "How does the apex lean in the section?", directed(35, 1, "degrees", ["apex to the oral side", "apex to the facial side"]);
        Tip = "tip", "Tip", "How does the apex lean on the film?", directed(25, 1, "degrees", ["apex mesially", "apex distally"]);
        SeatingFilm = "seating-film", "Film after seating", "A film after seating?", one::<c::YesNo>();
        Preparation = "preparation", "Preparation", "On what the pilot felt: how is the bed prepared?", one::<c::Preparation>();
        TornLining = "torn-lining", "Sinus lining", "The lining of the sinus is torn: what now?", one::<c::LiningRescue>();
    }
    Seating {
        SeatingAct = "seating-act", "Stay or remove", "On the torque that you read: does it stay?", one::<c::SeatingAct>();
        SecondAct = "second-act", "The second one", "On the torque of the second one: does it stay?", one::<c::SecondAct>();
        Component = "component", "Component", "What goes on the implant?", one::<c::Component>();
        ProvisionalContacts = "provisional-contacts", "Contacts", "How does the provisional meet the other teeth?", one::<c::Contacts>();
    }
    Graft {
        GraftMaterial = "graft-material", "Graft", "Which graft?", one::<c::GraftMaterial>();
        GrainSize = "grain-size", "Grains", "Which grain size?", one::<c::GrainSize>();
        Wetting = "wetting", "Wetting", "With what is it wetted?", one::<c::Wetting>();
        Packing = "packing", "Packing", "How is it packed?", one::<c::Packing>();
        GraftAmount = "graft-amount", "Amount", "How much is opened?", number(5, 300, 5, 100, "cc");
        FillLevel = "fill-level", "Fill level", "To which level, counted from the crest, is the gap or socket filled?", directed(50, 10, "mm", ["below the crest", "above the crest"]);
        ContourLayer = "contour-layer", "Contour layer", "How thick a layer is laid on the outside of the facial wall?", number(0, 50, 1, 10, "mm");
        TissueGraft = "tissue-graft", "Connective tissue graft", "A connective tissue graft?", one::<c::TissueGraft>();
        Membrane = "membrane", "Membrane", "Which membrane?", one::<c::MembraneKind>();
        MembraneOutline = "membrane-outline", "Membrane outline", "Which area does it cover?", Kind::Outline;
        Trim = "trim", "Trim", "How is it trimmed?", one::<c::Trim>();
        Fold = "fold", "Over the socket", "What is done with it over the socket?", one::<c::Fold>();
        Fixation = "fixation", "Fixation", "How is it held?", one::<c::Fixation>();
        ActOrder = "act-order", "Order of acts", "In which order?", one::<c::ActOrder>();
        SocketSeal = "socket-seal", "Socket seal", "What seals the grafted socket?", one::<c::SocketSeal>();
    }
    Closure {
        Closure = "closure", "Closure", "Open or closed?", one::<c::ClosureKind>();
        SutureSize = "suture-size", "Thread", "Which thread?", one::<c::SutureSize>();
        SutureMaterial = "suture-material", "Thread material", "Of what?", one::<c::SutureMaterial>();
        NeedlePath = "needle-path", "Needle path", "How does the needle pass the membrane?", one::<c::NeedlePath>();
        Bleeding = "bleeding", "Against bleeding", "What is done against bleeding?", many::<c::BleedingMeasure>();
        Instructions = "instructions", "Instructions", "What does the patient take home in writing?", many::<c::Instruction>();
        Antiseptic = "antiseptic", "Rinse", "Which rinse?", one::<c::Antiseptic>();
        AntisepticDays = "antiseptic-for", "Rinse for", "For how long?", number(1, 30, 1, 1, "days");
        AntibioticAfter = "antibiotic-after", "Antibiotic after", "An antibiotic afterwards?", one::<c::AntibioticAfter>();
        SensationCheck = "sensation-check", "Sensation", "Is sensation checked the next day?", one::<c::YesNo>();
        BleedsAgain = "bleeds-again", "It bleeds again", "It bleeds again before the patient leaves: what now?", one::<c::BleedRescue>();
        SwollenFloor = "swollen-floor", "Floor of the mouth", "The floor of the mouth swells and the tongue rises: what now?", one::<c::FloorRescue>();
    }
    Review {
        SuturesOut = "sutures-out", "Sutures out", "After how many days do the sutures come out?", number(3, 28, 1, 1, "days");
        MembraneOut = "membrane-out", "Membrane out", "After how many days is the membrane removed?", number(7, 240, 1, 1, "days");
        Reviews = "reviews", "Reviews", "Which reviews are booked?", many::<c::Review>();
        NumbLip = "numb-lip", "Numb lip", "The lip is still numb the next day: what now?", one::<c::NerveRescue>();
        BareMembrane = "bare-membrane", "Bare membrane", "The membrane lies bare: what now?", one::<c::ExposureRescue>();
        Infected = "infected-wound", "Infected wound", "The wound is infected: what now?", one::<c::InfectionRescue>();
    }
    ReEntry {
        PlaceAfter = "place-after", "Implant after", "How many weeks after the extraction is the patient back for the implant?", number(1, 60, 1, 1, "weeks");
        HealedAct = "healed-act", "The healed site", "On what has healed: what is done?", one::<c::HealedAct>();
    }
    ReEntryAgain {
        WaitFor = "wait-for", "Waited", "How many weeks more is the site left to heal?", number(1, 60, 1, 1, "weeks");
        AgainAct = "healed-act-again", "The healed site", "On what the wait has changed: what is done?", one::<c::HealedAct>();
    }
    LastReEntry {
        WaitForLast = "wait-for-last", "Waited", "How many weeks more is the site left to heal?", number(1, 60, 1, 1, "weeks");
        LastAct = "healed-act-last", "The healed site", "On what it is now: what is done?", one::<c::LastAct>();
    }
    LatePlacement {
        LateDiameter = "late-diameter", "Diameter", "Which platform diameter?", number(30, 60, 5, 10, "mm");
        LateLength = "late-length", "Length", "Which length?", number(80, 160, 10, 10, "mm");
        LateFacial = "late-facial", "Facial or oral", "How far from the tooth's axis, facially or orally, does the platform lie?", directed(60, 10, "mm", ["to the oral side", "to the facial side"]);
        LateDepth = "late-depth", "Platform level", "How far from the healed facial crest does the platform lie?", directed(60, 10, "mm", ["coronal of the healed crest", "apical of the healed crest"]);
        LateTilt = "late-tilt", "Tilt", "How does the apex lean in the section?", directed(35, 1, "degrees", ["apex to the oral side", "apex to the facial side"]);
        LateComponent = "late-component", "Component", "On the torque that you read: what goes on the implant?", one::<c::LateComponent>();
    }
    Uncovering {
        UncoverAfter = "uncover-after", "Uncovering after", "How many weeks after placement is it uncovered?", number(1, 60, 1, 1, "weeks");
        HoldTest = "hold-test", "Hold", "How is its hold tested?", one::<c::HoldTest>();
        BandCare = "band-care", "Attached tissue", "What becomes of the attached tissue over it?", one::<c::BandCare>();
    }
    Restoration {
        RestoreAfter = "restore-after", "Restoration after", "How many weeks after placement is it restored?", number(1, 60, 1, 1, "weeks");
        SeatCheck = "seat-check", "Seat of the impression part", "How is the seat of the impression part checked?", one::<c::SeatCheck>();
    }
    Recall {
        RecallEvery = "recall-every", "Recall every", "How many months from one recall to the next?", number(1, 36, 1, 1, "months");
        RecallExam = "recall-exam", "Examined at recall", "What is examined at each?", many::<c::RecallExam>();
    }
}

impl Decision {
    /// All that is said about it.
    #[must_use]
    pub fn entry(self) -> &'static Entry {
        // `ALL` lists the variants in their order, which a test holds.
        &Self::ALL[self as usize]
    }

    /// What files hold.
    #[must_use]
    pub fn key(self) -> &'static str {
        self.entry().key
    }

    /// Its step.
    #[must_use]
    pub fn step(self) -> Step {
        self.entry().step
    }

    /// Whether it is asked only once the acts of its step are done, because it weighs what they find:
    /// answers to what was asked, examinations, the socket, the bone under a flap and under the pilot.
    #[must_use]
    pub const fn weighs_findings(self) -> bool {
        matches!(
            self,
            Self::Drugs
                | Self::Advices
                | Self::WallReading
                | Self::WallGround
                | Self::BrokenPlate
                | Self::LostTip
                | Self::AfterExtraction
                | Self::AfterFlap
                | Self::Preparation
                | Self::TornLining
                | Self::BleedsAgain
                | Self::SwollenFloor
                | Self::NumbLip
                | Self::BareMembrane
                | Self::HealedAct
                | Self::AgainAct
                | Self::LastAct
                | Self::LateComponent
                | Self::Infected
        )
    }

    /// Whether it answers what came by chance: nobody can know beforehand that it will be asked.
    #[must_use]
    pub const fn answers_chance(self) -> bool {
        matches!(
            self,
            Self::BrokenPlate
                | Self::LostTip
                | Self::TornLining
                | Self::BleedsAgain
                | Self::SwollenFloor
                | Self::NumbLip
                | Self::BareMembrane
                | Self::Infected
        )
    }

    /// The decision with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.iter().find(|entry| entry.key == key).map(|entry| entry.decision)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn the_catalogue_stands_in_the_order_of_the_decisions_and_of_care() {
        for (place, entry) in Decision::ALL.iter().enumerate() {
            assert_eq!(entry.decision as usize, place, "{}", entry.key);
        }
        assert!(Decision::ALL.windows(2).all(|pair| pair[0].step <= pair[1].step));
    }

    #[test]
    fn what_weighs_findings_stands_last_in_its_step_and_has_a_list() {
        for pair in Decision::ALL.windows(2).filter(|pair| pair[0].step == pair[1].step) {
            let [before, after] = [pair[0].decision, pair[1].decision];
            assert!(!before.weighs_findings() || after.weighs_findings(), "{}", pair[0].key);
        }
        for entry in Decision::ALL.iter().filter(|entry| entry.decision.weighs_findings()) {
            assert!(matches!(entry.kind, Kind::One(_) | Kind::Many(_)), "{}", entry.key);
        }
    }

    #[test]
    fn keys_are_unique_and_find_their_decision() {
        let keys: BTreeSet<_> = Decision::ALL.iter().map(|entry| entry.key).collect();
        assert_eq!(keys.len(), Decision::ALL.len());
        for entry in Decision::ALL {
            assert_eq!(Decision::from_key(entry.key), Some(entry.decision));
        }
    }

    #[test]
    fn a_closed_list_has_at_least_two_answers_and_at_most_thirty_two() {
        for entry in Decision::ALL {
            if let Kind::One(options) | Kind::Many(options) = entry.kind {
                assert!((2..=32).contains(&options.len()), "{}", entry.key);
            }
        }
    }
}
