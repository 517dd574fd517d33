//! Teaching cases: archetypes spread evenly over the decisions that they train.
//!
//! An archetype is one thing that decides something. It binds a few draws ([`Brief`]) and leaves the
//! rest alone. First a group is drawn, each as often as any other, then an archetype of it.

use super::draw::Stream;
use crate::anatomy::{Jaw, Tooth};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// Decisions that archetypes train.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// How the wall and the gap are met.
    WallAndGap,
    /// How a missing wall is met.
    Defect,
    /// Infection, and whether the tooth must go at all.
    Course,
    /// Structures that must not be hurt.
    Structures,
    /// Neighbours and gum.
    Surroundings,
    /// Patients who are not operated on now.
    PatientStops,
    /// Patients who are operated on with care.
    PatientCare,
    /// Teeth with several roots, and what stands between those. Of the whole mouth alone.
    SeveralRoots,
}

impl Group {
    /// The groups of teaching cases of one root.
    pub const OF_ONE_ROOT: [Self; 7] = [
        Self::WallAndGap,
        Self::Defect,
        Self::Course,
        Self::Structures,
        Self::Surroundings,
        Self::PatientStops,
        Self::PatientCare,
    ];

    /// All groups: those of the whole mouth.
    pub const ALL: [Self; 8] = [
        Self::WallAndGap,
        Self::Defect,
        Self::Course,
        Self::Structures,
        Self::Surroundings,
        Self::PatientStops,
        Self::PatientCare,
        Self::SeveralRoots,
    ];
}

macro_rules! archetypes {
    ($($variant:ident = $key:literal, $group:ident, $words:literal;)+) => {
        /// One thing that decides something in a case.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Archetype { $(#[doc = $words] $variant,)+ }

        impl Archetype {
            /// All of them, group by group.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// What files hold.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)+ }
            }

            /// For an instructor; a learner never sees it before the debrief.
            #[must_use]
            pub const fn words(self) -> &'static str {
                match self { $(Self::$variant => $words,)+ }
            }

            /// Its group.
            #[must_use]
            pub const fn group(self) -> Group {
                match self { $(Self::$variant => Group::$group,)+ }
            }
        }
    };
}

archetypes! {
    IntactThick = "intact-thick", WallAndGap, "an intact facial wall of more than 1 mm under thick gum";
    IntactThin = "intact-thin", WallAndGap, "an intact facial wall of less than 1 mm";
    GapNarrow = "gap-narrow", WallAndGap, "a narrow socket: little gap whatever the implant";
    GapWide = "gap-wide", WallAndGap, "a wide socket: a gap of more than 2 mm";
    DefectV = "defect-v", Defect, "a V-shaped dehiscence of the facial wall";
    DefectU = "defect-u", Defect, "a U-shaped dehiscence of the facial wall";
    LostWall = "lost-wall", Defect, "a facial wall lost towards the neighbours";
    Fenestration = "fenestration", Defect, "a fenestration over a facial concavity";
    OralDefect = "oral-defect", Defect, "a dehiscence of the oral wall";
    TwoWalls = "two-walls", Defect, "a dehiscence of the facial and of the oral wall";
    CrestalLoss = "crestal-loss", Defect, "a crest that has sunk all round";
    InterproximalLoss = "interproximal-loss", Defect, "bone lost beside a neighbour";
    ChronicLesion = "chronic-lesion", Course, "a long-standing lesion at the apex";
    Abscess = "abscess", Course, "pus at the site";
    SpreadingInfection = "spreading-infection", Course, "a spreading infection";
    Restorable = "restorable", Course, "a tooth that can be restored";
    PoorAnchorage = "poor-anchorage", Structures, "too little bone beyond the apex and orally";
    EngagedRoot = "engaged-root", Structures, "a root that fills the ridge between both plates";
    NearCanal = "near-canal", Structures, "an apex near the inferior alveolar canal";
    NearForamen = "near-foramen", Structures, "a site near the mental foramen and its loop";
    NearSinus = "near-sinus", Structures, "an apex near the maxillary sinus";
    NearNasopalatine = "near-nasopalatine", Structures, "a site beside the nasopalatine canal";
    LingualUndercut = "lingual-undercut", Structures, "a deep lingual undercut";
    TightSpace = "tight-space", Surroundings, "little room between the neighbours' roots";
    NeighbourImplant = "neighbour-implant", Surroundings, "an implant beside the site";
    ThinGumHighLip = "thin-gum-high-lip", Surroundings, "thin gum that shows at full smile";
    Recession = "recession", Surroundings, "a margin below its twin's";
    CancerDose = "cancer-dose-antiresorptive", PatientStops, "a cancer-dose drug against bone resorption";
    PoorSugar = "poor-sugar", PatientStops, "diabetes out of control";
    HighPressure = "high-pressure", PatientStops, "blood pressure too high today";
    HighInr = "high-inr", PatientStops, "an INR out of range";
    RecentStent = "recent-stent", PatientStops, "a coronary stent set a short while ago";
    Radiotherapy = "radiotherapy", PatientStops, "radiotherapy of the jaw";
    RecentInfarction = "recent-infarction", PatientStops, "a recent heart attack";
    RecentStroke = "recent-stroke", PatientStops, "a recent stroke";
    Pregnancy = "pregnancy", PatientStops, "a pregnancy";
    LowCounts = "low-counts", PatientStops, "low blood counts";
    ActivePeriodontitis = "active-periodontitis", PatientStops, "active disease of the gums";
    GrowthUnfinished = "growth-unfinished", PatientStops, "facial growth not finished";
    OralAntiresorptive = "oral-antiresorptive", PatientCare, "tablets against osteoporosis";
    InjectedAntiresorptive = "injected-antiresorptive", PatientCare, "injections against osteoporosis";
    ControlledSugar = "controlled-sugar", PatientCare, "diabetes under control";
    SteadyInr = "steady-inr", PatientCare, "a vitamin K antagonist, INR in range";
    DirectAnticoagulant = "direct-anticoagulant", PatientCare, "a direct oral anticoagulant";
    Antiplatelets = "antiplatelets", PatientCare, "platelet inhibitors";
    Steroids = "steroids", PatientCare, "steroid tablets";
    HeavySmoker = "heavy-smoker", PatientCare, "heavy smoking";
    Allergies = "allergies", PatientCare, "an allergy, and views on graft origin";
    WideSeptum = "wide-septum", SeveralRoots, "a septum broad enough to hold an implant";
    ThinSeptum = "thin-septum", SeveralRoots, "a septum too thin to hold an implant";
    TwoRoots = "two-roots", SeveralRoots, "an upper first premolar with two roots";
}

impl Archetype {
    /// The archetype with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|one| one.key() == key)
    }

    /// Draws one: the group first, then one of the group.
    pub(super) fn draw(stream: &mut Stream, groups: &[Group]) -> Self {
        let group = stream.pick(groups, Group::WallAndGap);
        let of_group: Vec<Self> =
            Self::ALL.iter().copied().filter(|one| one.group() == group).collect();
        stream.pick(&of_group, Self::IntactThick)
    }

    /// Whether this archetype can stand at this tooth of one root.
    #[must_use]
    pub const fn fits(self, tooth: Tooth) -> bool {
        let (jaw, position) = (tooth.jaw(), tooth.position());
        let upper = matches!(jaw, Jaw::Maxilla);
        if position > 5 {
            return false;
        }
        match self {
            Self::NearCanal => !upper && position == 5,
            Self::NearForamen => !upper && position >= 3,
            Self::NearSinus => upper && position >= 4,
            Self::NearNasopalatine => upper && position == 1,
            Self::LingualUndercut => !upper,
            Self::TightSpace => (upper && position == 2) || (!upper && position <= 2),
            Self::GapWide => upper && position != 2,
            Self::GapNarrow => position <= 3,
            Self::EngagedRoot => upper && position <= 3,
            Self::Fenestration | Self::ThinGumHighLip => upper,
            Self::Recession => position <= 4,
            Self::WideSeptum | Self::ThinSeptum | Self::TwoRoots => false,
            _ => true,
        }
    }

    /// Whether this archetype can stand at this tooth of the whole mouth, third molars left out.
    #[must_use]
    pub const fn fits_in_mouth(self, tooth: Tooth) -> bool {
        let upper = matches!(tooth.jaw(), Jaw::Maxilla);
        match (self, tooth.position()) {
            (Self::TwoRoots, position) => upper && position == 4,
            (Self::WideSeptum | Self::ThinSeptum, position) => matches!(position, 6 | 7),
            (_, ..=5) => self.fits(tooth),
            (Self::NearCanal | Self::LingualUndercut, 6 | 7) => !upper,
            (Self::NearSinus | Self::PoorAnchorage, 6 | 7) => upper,
            // What is about a narrow root, its plate or a margin that shows.
            (
                Self::GapNarrow
                | Self::GapWide
                | Self::Fenestration
                | Self::EngagedRoot
                | Self::NearForamen
                | Self::NearNasopalatine
                | Self::TightSpace
                | Self::ThinGumHighLip
                | Self::Recession,
                _,
            ) => false,
            (_, position) => position < 8,
        }
    }

    /// Whether it binds the width or the place of a single root.
    pub(super) const fn is_about_one_root(self) -> bool {
        matches!(self, Self::GapWide | Self::GapNarrow | Self::Fenestration | Self::EngagedRoot)
    }

    /// The teeth of one root at which it can stand.
    #[must_use]
    pub fn teeth(self) -> Vec<Tooth> {
        (1..=4)
            .flat_map(|quadrant| (1..=5).map(move |position| quadrant * 10 + position))
            .filter_map(|iso| Tooth::new(iso).ok())
            .filter(|tooth| self.fits(*tooth))
            .collect()
    }

    /// The teeth of the whole mouth at which it can stand.
    #[must_use]
    pub fn teeth_of_mouth(self) -> Vec<Tooth> {
        (1..=4)
            .flat_map(|quadrant| (1..=7).map(move |position| quadrant * 10 + position))
            .filter_map(|iso| Tooth::new(iso).ok())
            .filter(|tooth| self.fits_in_mouth(*tooth))
            .collect()
    }

    /// What it binds.
    pub(super) fn brief(self) -> Brief {
        let plain = Brief::plain();
        match self {
            Self::IntactThick => Brief { plate: Plate::Thick, thick_gum: true, ..plain },
            Self::IntactThin => Brief { plate: Plate::Thin, ..plain },
            Self::GapNarrow => Brief { socket: Width::Narrow, plate: Plate::Thick, ..plain },
            Self::GapWide => Brief { socket: Width::Wide, ..plain },
            Self::DefectV => Brief { facial: Facial::V, ..plain },
            Self::DefectU => Brief { facial: Facial::U, ..plain },
            Self::LostWall => Brief { facial: Facial::Lost, ..plain },
            Self::Fenestration => Brief { facial: Facial::Window, concave: true, ..plain },
            Self::OralDefect => Brief { oral_defect: true, ..plain },
            Self::TwoWalls => Brief { facial: Facial::V, oral_defect: true, ..plain },
            Self::CrestalLoss => Brief { crest: Crestal::Sunk, ..plain },
            Self::InterproximalLoss => Brief { crest: Crestal::Beside, ..plain },
            Self::ChronicLesion => Brief { apex: Apex::Chronic, ..plain },
            Self::Abscess => Brief { apex: Apex::Abscess, ..plain },
            Self::SpreadingInfection => Brief { apex: Apex::Spreading, ..plain },
            Self::Restorable => Brief { restorable: true, ..plain },
            Self::PoorAnchorage => Brief { anchorage: Anchorage::Poor, ..plain },
            Self::EngagedRoot => Brief { anchorage: Anchorage::Engaged, ..plain },
            Self::NearCanal => Brief { canal: Reach::Near, ..plain },
            Self::NearForamen => Brief { foramen: Reach::Near, ..plain },
            Self::NearSinus => Brief { floor: Reach::Near, ..plain },
            Self::NearNasopalatine => Brief { nasopalatine: Reach::Near, ..plain },
            Self::LingualUndercut => Brief { undercut: true, ..plain },
            Self::TightSpace => Brief { tight: true, ..plain },
            Self::NeighbourImplant => Brief { neighbour_implant: true, ..plain },
            Self::ThinGumHighLip => Brief { thin_gum_high_lip: true, ..plain },
            Self::Recession => Brief { recession: true, ..plain },
            // The roots are bound where they are drawn.
            Self::WideSeptum | Self::ThinSeptum | Self::TwoRoots => plain,
            gate => Brief { gate: Some(gate), ..plain },
        }
    }
}

impl Serialize for Archetype {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.key())
    }
}

impl<'de> Deserialize<'de> for Archetype {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let key = String::deserialize(from)?;
        Self::from_key(&key).ok_or_else(|| {
            de::Error::custom(format!("found \"{key}\", expected the key of an archetype"))
        })
    }
}

/// What draws are bound to. Population draws are the brief that binds nothing ([`Brief::free`]);
/// teaching draws start from [`Brief::plain`], which keeps everything that an archetype does not
/// name out of the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Brief {
    pub plate: Plate,
    pub socket: Width,
    pub facial: Facial,
    pub concave: bool,
    pub oral_defect: bool,
    pub crest: Crestal,
    pub apex: Apex,
    pub restorable: bool,
    pub anchorage: Anchorage,
    pub canal: Reach,
    pub foramen: Reach,
    pub floor: Reach,
    pub nasopalatine: Reach,
    pub undercut: bool,
    pub tight: bool,
    pub neighbour_implant: bool,
    pub thin_gum_high_lip: bool,
    pub thick_gum: bool,
    pub recession: bool,
    pub gate: Option<Archetype>,
}

/// Thickness of the facial wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Plate {
    Free,
    Ordinary,
    Thick,
    Thin,
}

/// Faciooral width of the socket.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Width {
    Free,
    Narrow,
    Wide,
}

/// What is missing facially.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Facial {
    Whole,
    V,
    U,
    Lost,
    Window,
}

/// What the crest has lost.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Crestal {
    Whole,
    Sunk,
    Beside,
}

/// Disease at the apex.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Apex {
    Healthy,
    Chronic,
    Abscess,
    Spreading,
}

/// Bone that can hold an implant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchorage {
    Free,
    Good,
    Poor,
    Engaged,
}

/// How near something lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Reach {
    Free,
    Clear,
    Near,
}

impl Brief {
    /// Binds nothing: whatever is drawn, stays.
    pub(super) const fn free() -> Self {
        Self {
            plate: Plate::Free,
            anchorage: Anchorage::Free,
            canal: Reach::Free,
            foramen: Reach::Free,
            floor: Reach::Free,
            nasopalatine: Reach::Free,
            ..Self::plain()
        }
    }

    /// Keeps out of the way what is not named.
    pub(super) const fn plain() -> Self {
        Self {
            plate: Plate::Ordinary,
            socket: Width::Free,
            facial: Facial::Whole,
            concave: false,
            oral_defect: false,
            crest: Crestal::Whole,
            apex: Apex::Healthy,
            restorable: false,
            anchorage: Anchorage::Good,
            canal: Reach::Clear,
            foramen: Reach::Clear,
            floor: Reach::Clear,
            nasopalatine: Reach::Clear,
            undercut: false,
            tight: false,
            neighbour_implant: false,
            thin_gum_high_lip: false,
            thick_gum: false,
            recession: false,
            gate: None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn keys_are_unique_and_every_archetype_has_a_tooth() {
        let keys: BTreeSet<_> = Archetype::ALL.iter().map(|one| one.key()).collect();
        assert_eq!(keys.len(), Archetype::ALL.len());
        for one in Archetype::ALL {
            let of_one_root = one.group() != Group::SeveralRoots;
            assert_eq!(!one.teeth().is_empty(), of_one_root, "{one:?}");
            assert!(!one.teeth_of_mouth().is_empty(), "{one:?}");
            assert_eq!(Archetype::from_key(one.key()), Some(*one));
        }
    }

    #[test]
    fn every_group_has_archetypes_and_every_archetype_but_the_plain_ones_binds_something() {
        for group in Group::ALL {
            assert!(Archetype::ALL.iter().any(|one| one.group() == group), "{group:?}");
        }
        for one in Archetype::ALL.iter().filter(|one| one.group() != Group::SeveralRoots) {
            assert_ne!(one.brief(), Brief::plain(), "{one:?}");
        }
    }
}
