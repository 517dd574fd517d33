//! The alternatives of each decision; their keys and labels stay: one is retired, never renamed.

use core::marker::PhantomData;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// One alternative among a closed list.
pub trait Alternative: Copy + Eq + Ord + core::fmt::Debug + 'static {
    /// All of them, in the order in which they are shown.
    const ALL: &'static [Self];
    /// Key and label of each, in the same order.
    const OPTIONS: &'static [Choice];
    /// Its place in that order.
    fn index(self) -> usize;
}

/// Key and label of an alternative.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Choice {
    /// What files hold.
    pub key: &'static str,
    /// What the screen shows.
    pub label: &'static str,
}

/// Some of the alternatives of `A`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Several<A> {
    bits: u32,
    of: PhantomData<A>,
}

impl<A: Alternative> Several<A> {
    /// None of them.
    pub const NONE: Self = Self { bits: 0, of: PhantomData };

    /// From one bit for each alternative, in order.
    #[must_use]
    pub const fn from_bits(bits: u32) -> Self {
        Self { bits, of: PhantomData }
    }

    /// These.
    #[must_use]
    pub fn of(chosen: &[A]) -> Self {
        Self::from_bits(chosen.iter().fold(0, |bits, one| bits | 1 << one.index()))
    }

    /// One bit for each alternative, in order.
    #[must_use]
    pub const fn bits(self) -> u32 {
        self.bits
    }

    /// Whether this one is among them.
    #[must_use]
    pub fn has(self, one: A) -> bool {
        self.bits & (1 << one.index()) != 0
    }

    /// How many.
    #[must_use]
    pub const fn count(self) -> u32 {
        self.bits.count_ones()
    }

    /// The chosen ones, in order.
    pub fn iter(self) -> impl Iterator<Item = A> {
        A::ALL.iter().copied().filter(move |one| self.has(*one))
    }
}

impl<A: Alternative> Default for Several<A> {
    fn default() -> Self {
        Self::NONE
    }
}

macro_rules! choices {
    ($($(#[$doc:meta])* $name:ident { $($(#[$each:meta])* $variant:ident = $key:literal, $label:literal;)+ })+) => {
        $(
            $(#[$doc])*
            #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
            pub enum $name { $(#[doc = $label] $(#[$each])* $variant,)+ }

            impl $name {
                /// What files hold.
                #[must_use]
                pub const fn key(self) -> &'static str {
                    match self { $(Self::$variant => $key,)+ }
                }
                /// What the screen shows.
                #[must_use]
                pub const fn label(self) -> &'static str {
                    match self { $(Self::$variant => $label,)+ }
                }
            }

            impl Alternative for $name {
                const ALL: &'static [Self] = &[$(Self::$variant,)+];
                const OPTIONS: &'static [Choice] = &[$(Choice { key: $key, label: $label },)+];
                fn index(self) -> usize { self as usize }
            }

            impl Serialize for $name {
                fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                    to.serialize_str(self.key())
                }
            }

            impl<'de> Deserialize<'de> for $name {
                fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                    let key = String::deserialize(from)?;
                    Self::ALL.iter().copied().find(|one| one.key() == key).ok_or_else(|| {
                        de::Error::custom(format!("found \"{key}\", expected one of {:?}", Self::OPTIONS.iter().map(|o| o.key).collect::<Vec<_>>()))
                    })
                }
            }
        )+
    };
}

mod complication;
mod rescue;
mod returns;
pub use complication::{FloorRescue, InfectionRescue, TipRescue};
pub use rescue::*;
pub use returns::{BandCare, HealedAct, HoldTest, LastAct, LateComponent, RecallExam};

choices! {
    /// What is asked for at the chart.
    Request {
        Allergies = "allergies", "allergies";
        BloodPressure = "blood-pressure", "blood pressure after five minutes' rest";
        Inr = "inr", "INR from the last 24 hours";
        Hba1c = "hba1c", "HbA1c";
        BloodCounts = "blood-counts", "blood counts";
        DoseRecord = "dose-record", "radiation dose record of the jaw";
        GrowthRecords = "growth-records", "serial records of facial growth";
        PlaqueAndBleeding = "plaque-and-bleeding", "plaque and bleeding of the whole mouth";
        GraftViews = "graft-views", "views on human and animal graft";
    }
    /// What is done about drugs that somebody else prescribed.
    DrugAction {
        Leave = "leave", "leave every drug as prescribed";
        ContactPrescriber = "contact-prescriber", "contact the prescriber before anything else";
        TimeWithPrescriber = "time-with-prescriber", "agree the timing of doses with the prescriber";
        StopAlone = "stop-alone", "have the patient stop it";
        DemandHoliday = "demand-holiday", "require a drug holiday of months";
    }
    /// What is advised beside the operation.
    Advice {
        StopSmoking = "stop-smoking", "stop smoking, with help and a note in the record";
        GumTreatmentFirst = "gum-treatment-first", "treat the gums and the plaque first";
        PhysicianLetter = "physician-letter", "letter to the physician";
    }
    /// Examinations.
    Examination {
        Look = "look", "look: gum, margin, smile, swelling";
        Probing = "probing", "six-point periodontal probing";
        Mobility = "mobility", "mobility";
        Percussion = "percussion", "percussion";
        Sensibility = "sensibility", "sensibility of the neighbours";
        OcclusalContacts = "occlusal-contacts", "occlusal contacts";
        PhenotypeTest = "phenotype-test", "phenotype test with the probe in the sulcus";
        Film = "film", "periapical film";
        Sections = "sections", "cone-beam sections";
        BoneSounding = "bone-sounding", "bone sounding under anaesthesia";
    }
    /// The question that a film is to answer.
    FilmQuestion {
        RootAndApex = "root-and-apex", "root, apex and neighbours";
        FloorOrCanal = "floor-or-canal", "distance to floor or canal";
        FacialWall = "facial-wall", "whether the facial wall is whole";
        NoQuestion = "no-question", "no question: it is always taken";
    }
    /// The question that sections are to answer.
    SectionsQuestion {
        PlateAndRidge = "plate-and-ridge", "plate, ridge and axis";
        NearStructure = "near-structure", "distance to a canal, foramen, loop or floor";
        FieldLarge = "large-field", "everything: a large field";
        NoQuestion = "no-question", "no question: it is always taken";
    }
    /// What the learner holds of the facial wall after examining.
    WallReading {
        Whole = "whole", "the facial wall is whole";
        Defect = "defect", "the facial wall has a defect";
        Unsure = "unsure", "cannot say yet";
    }
    /// On what that rests.
    WallGround {
        FilmOnly = "film", "the film";
        Appearance = "appearance", "how the gum looks";
        Sounding = "sounding", "bone sounding";
        Section = "sections", "the sections";
        SoundingAndSection = "sounding-and-sections", "sounding and sections together";
        Nothing = "nothing", "nothing yet: the socket will be probed";
    }
    /// The course of care.
    Course {
        KeepTooth = "keep-tooth", "keep the tooth";
        PlaceToday = "place-today", "extract and place an implant today (type 1)";
        GraftAndReturn = "graft-and-return", "extract, preserve the ridge with a graft, place after months";
        ReturnEarly = "return-early", "extract and place early, after weeks (type 2)";
        LetHeal = "let-heal", "extract, let heal, place later (types 3 and 4)";
        Bridge = "bridge", "extract, fixed bridge";
        Removable = "removable", "extract, removable replacement";
        NoReplacement = "no-replacement", "extract, no replacement";
        SecondOpinion = "second-opinion", "second opinion before anything";
        Postpone = "postpone", "postpone";
        Refer = "refer", "refer";
    }
    /// What is done today when the course is put off or handed on.
    TodayAct {
        Drain = "drain", "drain";
        Extract = "extract", "extract the tooth and clean the socket";
        RelievePain = "relieve-pain", "relieve pain";
        AntibioticForSpread = "antibiotic-for-spread", "antibiotic for spreading or systemic signs";
    }
    /// By when the patient is seen again.
    ByWhen {
        SameDay = "same-day", "the same day";
        TwoDays = "two-days", "within two days";
        Week = "week", "within a week";
        FourToEightWeeks = "four-to-eight-weeks", "in four to eight weeks";
        WhenControlled = "when-controlled", "when the condition is controlled, with a date for review";
        AfterDelivery = "after-delivery", "after delivery";
        NotSet = "not-set", "no date";
    }
    /// To whom a referral goes.
    ReferTo {
        Hospital = "hospital", "hospital, the same day";
        Physician = "physician", "the physician or prescriber";
        Specialist = "specialist", "a specialist surgeon";
        Nobody = "nobody", "nobody";
    }
    /// What is planned about the level of the margin.
    MarginPlan {
        AsItIs = "as-it-is", "take the margin as it is";
        CorrectFirst = "correct-first", "correct the margin first";
        GraftWithImplant = "graft-with-implant", "add soft tissue with the implant";
    }
    /// How the screw leaves the crown.
    ScrewChannel {
        Straight = "straight", "straight channel";
        Angled = "angled", "angled channel";
    }
    /// How drills are led.
    Guidance {
        Freehand = "freehand", "freehand";
        Guided = "guided", "guided by a stent from the plan";
    }
    /// Antibiotic before the operation.
    AntibioticBefore {
        None = "none", "none";
        Amoxicillin = "amoxicillin-2g", "amoxicillin 2 g, one hour before";
        NonPenicillin = "non-penicillin", "a drug that is no penicillin, one hour before";
    }
    /// What the patient wears meanwhile.
    Interim {
        Nothing = "nothing", "nothing";
        BondedTooth = "bonded", "a tooth bonded to the neighbours, clear of the site";
        RelievedPlate = "relieved-plate", "a removable plate, relieved over the site";
        PressingPlate = "plate-on-site", "a removable plate that rests on the site";
        OnImplant = "on-implant", "a provisional crown on the implant";
    }
    /// What consent covers.
    ConsentPoint {
        Options = "options", "the options, no treatment among them";
        Risks = "risks", "risks, recession of the margin among them";
        StopConditions = "stop-conditions", "when the operation is stopped";
        GraftOrigin = "graft-origin", "where a graft comes from";
        Fallback = "fallback", "the fallback: that it may not be completed today";
        DrugRisk = "drug-risk", "the risk that a drug or disease of the patient brings";
    }
    /// How the tooth comes out.
    Technique {
        LuxateAndRotate = "luxate-and-rotate", "luxate first, grip the root 1 to 3 mm below the gum on its oral face, rotate slowly";
        RockFacially = "rock-facially", "rock it facially and orally with forceps";
        LeverOnFacialPlate = "lever-on-facial-plate", "lever against the facial plate";
        BoneRemoval = "bone-removal", "remove facial bone";
    }
    /// Whether the root is cut.
    Sectioning {
        Whole = "whole", "in one piece";
        Sectioned = "sectioned", "sectioned lengthwise and taken piece by piece";
    }
    /// What is done with the socket's tissue.
    Debridement {
        Nothing = "nothing", "nothing";
        Rinse = "rinse", "rinse only";
        CuretteAndIrrigate = "curette-and-irrigate", "curette all granulation tissue and irrigate";
    }
    /// What of the fresh socket is probed.
    SocketProbing {
        Nothing = "nothing", "nothing";
        FacialOnly = "facial-only", "the facial wall";
        AllWalls = "all-walls", "all four walls and the apex";
    }
    /// Confirming or revising the intention on what has been found.
    Revision {
        CarryOn = "carry-on", "carry on as intended";
        ToPlaceToday = "to-place-today", "change: place an implant today";
        ToGraftAndReturn = "to-graft-and-return", "change: graft the socket and return after months";
        ToReturnEarly = "to-return-early", "change: close and place early, after weeks";
        ToLetHeal = "to-let-heal", "change: let it heal";
        ToRefer = "to-refer", "change: refer";
    }
    /// Flap.
    FlapDesign {
        NoFlap = "no-flap", "no flap";
        Envelope = "envelope", "envelope";
        Triangular = "triangular", "triangular: one vertical release";
        Trapezoidal = "trapezoidal", "trapezoidal: two vertical releases";
    }
    /// Which end has the single release.
    ReleaseSide {
        Mesial = "mesial", "mesial end";
        Distal = "distal", "distal end";
    }
    /// Papillae.
    Papillae {
        Left = "left", "left attached";
        Raised = "raised", "raised with the flap";
    }
    /// Yes or no.
    YesNo {
        Yes = "yes", "yes";
        No = "no", "no";
    }
    /// Where the first drill enters.
    Entry {
        OralSlope = "oral-slope", "on the oral slope of the socket, inside the oral cortex";
        SocketApex = "socket-apex", "at the apex of the socket, along it";
        ThroughOralCortex = "through-oral-cortex", "through the oral cortex";
        Septum = "septum", "in the septum, between the roots of a molar";
    }
    /// How the bed is prepared.
    Preparation {
        Full = "full", "to full width";
        UnderByHalf = "under-prepared", "final drill 0.5 mm under the diameter";
        Tapped = "tapped", "to full width and tapped";
    }
    /// How the drill is run.
    Drilling {
        CooledModerate = "cooled-moderate", "sharp drills, cooled, 800 to 1500 turns a minute, pumping";
        CooledFast = "cooled-fast", "cooled, above 2000 turns a minute";
        Dry = "dry", "without cooling";
    }
    /// What goes on the implant.
    Component {
        CoverScrew = "cover-screw", "cover screw, hand-tight";
        HealingAbutment = "healing-abutment", "healing abutment";
        CustomAbutment = "custom-abutment", "customised abutment that seals the socket";
        Provisional = "provisional", "provisional crown";
    }
    /// How a provisional meets the other teeth.
    Contacts {
        OutOfContact = "none", "out of all contact";
        CentricOnly = "centric", "light contact when closing only";
        Full = "full", "in full contact";
    }
    /// Graft.
    GraftMaterial {
        NoGraft = "no-graft", "none";
        Autograft = "autograft", "the patient's own bone";
        MineralisedAllograft = "mineralised-allograft", "mineralised freeze-dried human bone";
        DemineralisedAllograft = "demineralised-allograft", "demineralised freeze-dried human bone";
        AllograftBlend = "allograft-blend", "mineralised human bone, cortical and cancellous blended";
        Xenograft = "xenograft", "deproteinised bovine bone";
        Synthetic = "synthetic", "calcium phosphate, synthetic";
    }
    /// Size of the grains.
    GrainSize {
        Dust = "under-0.1", "under 0.1 mm";
        Small = "0.25-1.0", "0.25 to 1.0 mm";
        Large = "1.0-2.0", "1.0 to 2.0 mm";
    }
    /// What the graft is wetted with.
    Wetting {
        Dry = "dry", "dry";
        Saline = "saline", "sterile saline or water, to a paste";
        Blood = "blood", "the patient's blood";
    }
    /// How the graft is packed.
    Packing {
        InLayers = "layers", "in layers, gently";
        Crushed = "crushed", "crushed in hard";
        Loose = "loose", "loose, in one go";
    }
    /// Connective tissue graft.
    TissueGraft {
        NoTissue = "none", "none";
        Now = "now", "now";
        Later = "later", "later";
    }
    /// Membrane.
    MembraneKind {
        NoMembrane = "none", "none";
        NativeCollagen = "native-collagen", "native collagen";
        CrossLinked = "cross-linked-collagen", "cross-linked collagen";
        DensePtfe = "dense-ptfe", "dense PTFE";
        ExpandedPtfe = "expanded-ptfe", "expanded PTFE";
        ReinforcedPtfe = "reinforced-ptfe", "titanium-reinforced PTFE";
    }
    /// What is done with the membrane over the socket.
    Fold {
        FacialOnly = "facial-only", "stays on its wall";
        OverOrifice = "over-orifice", "folded over the orifice under the oral margin";
        PunchedAround = "punched-around", "folded over and punched around the abutment";
    }
    /// How the membrane is held.
    Fixation {
        Free = "none", "not at all";
        Tucked = "tucked", "tucked under the flap margins";
        Sutured = "sutured", "periosteal sutures";
        Tacks = "tacks", "two tacks or more";
    }
    /// How the membrane is trimmed.
    Trim {
        Rounded = "rounded", "to rounded corners, lying passively";
        AsSupplied = "as-supplied", "as supplied, corners and all";
        Forced = "forced", "oversize, pressed in and wrinkled";
    }
    /// The order of acts.
    ActOrder {
        MembraneFirst = "membrane-first", "membrane trimmed and seated, graft packed from inside it, membrane folded, fixed";
        GraftFirst = "graft-first", "graft packed first, membrane laid on top";
    }
    /// What seals the socket under ridge preservation.
    SocketSeal {
        Open = "open", "nothing";
        Plug = "collagen-plug", "collagen plug";
        SoftTissueSeal = "soft-tissue", "free soft-tissue graft";
        ByMembrane = "membrane", "the membrane";
    }
    /// Closure.
    ClosureKind {
        LeftOpen = "open", "edges held, the socket left open";
        Primary = "primary", "edges brought together over it";
    }
    /// Thread.
    SutureSize {
        Three0 = "3-0", "3-0";
        Four0 = "4-0", "4-0";
        Five0 = "5-0", "5-0";
        Six0 = "6-0", "6-0";
    }
    /// Thread material.
    SutureMaterial {
        Monofilament = "monofilament", "monofilament";
        Braided = "braided", "braided";
    }
    /// Needle path over a membrane.
    NeedlePath {
        CrestOutward = "crest-outward", "reverse-cutting needle, from the crest outward on each side";
        OutsideIn = "outside-in", "from outside inward, towards the membrane";
    }
    /// Measures against bleeding.
    BleedingMeasure {
        Pressure = "pressure", "firm pressure for at least 20 minutes";
        PackAndSuture = "pack-and-suture", "haemostatic pack and suture";
        Tranexamic = "tranexamic", "tranexamic rinse";
        Checked = "checked", "haemostasis checked before the patient leaves";
    }
    /// Written instructions.
    Instruction {
        Written = "written", "written sheet";
        EmergencyNumber = "emergency-number", "emergency number";
        FloorOfMouth = "floor-of-mouth", "swelling of the floor of the mouth: emergency";
        Analgesia = "analgesia", "analgesia that suits the history";
        NoPressure = "no-pressure", "no pressure on the site";
    }
    /// Antiseptic rinse.
    Antiseptic {
        None = "none", "none";
        Chlorhexidine = "chlorhexidine", "chlorhexidine 0.12 to 0.2 %, twice a day";
        SalineRinse = "saline-rinse", "salt water";
    }
    /// Antibiotic after the operation.
    AntibioticAfter {
        None = "none", "none";
        ShortCourse = "short-course", "up to seven days";
        LongCourse = "long-course", "more than seven days";
    }
    /// Reviews that are booked.
    Review {
        TwoWeeks = "two-weeks", "at 7 to 14 days";
        SixWeeks = "six-weeks", "at 4 to 6 weeks";
        FourMonths = "four-months", "at 3 to 4 months";
        Restoration = "restoration", "a visit for the restoration";
        Yearly = "yearly", "a first recall after it";
    }
    /// How the seat of an impression part is checked.
    SeatCheck {
        Film = "film", "on a film";
        Feel = "feel", "by feel";
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn some_of_the_alternatives_hold_what_was_put_in() {
        let chosen = Several::of(&[Examination::Film, Examination::Look]);
        assert!(chosen.has(Examination::Film) && !chosen.has(Examination::Sections));
        assert_eq!(chosen.iter().collect::<Vec<_>>(), [Examination::Look, Examination::Film]);
        assert_eq!(Several::<Examination>::from_bits(chosen.bits()), chosen);
    }

    #[test]
    fn an_unknown_key_is_refused_with_what_was_expected() {
        let refused = serde_json::from_str::<Course>("\"wait\"").unwrap_err().to_string();
        assert!(refused.contains("keep-tooth"), "{refused}");
    }
}
