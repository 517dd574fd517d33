//! What can be known about a case, and by what means.

use crate::plan::choices::{Examination, Request};
use serde::{Deserialize, Serialize};

/// One thing that can be known about a case. A rule names the facts that it rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fact {
    /// Whether the facial wall is whole, and where not.
    FacialWall,
    /// How thick the facial plate is.
    FacialThickness,
    /// Whether the oral wall is whole.
    OralWall,
    /// How much bone there is beyond the apex and orally.
    ApicalBone,
    /// Facial concavity or lingual undercut.
    RidgeForm,
    /// Where the inferior alveolar canal runs.
    Canal,
    /// Where the mental foramen and its loop lie.
    Foramen,
    /// Where the floor of sinus or nose lies.
    Floor,
    /// Where the nasopalatine canal runs.
    Nasopalatine,
    /// Where the neighbours' roots lie.
    NeighbourRoots,
    /// Length, form and bend of the root.
    RootForm,
    /// A lesion at the apex.
    ApicalLesion,
    /// Pus, swelling, fever.
    AcuteInfection,
    /// Level of the crest and of the bone beside the neighbours.
    CrestLevel,
    /// Density of the bone.
    Density,
    /// How thick the gum is.
    GumThickness,
    /// Width of keratinised tissue and level of the margin.
    GumMargin,
    /// What shows at full smile.
    SmileLine,
    /// How the teeth meet.
    Occlusion,
    /// What the history tells without asking further.
    History,
    /// Blood pressure.
    Pressure,
    /// International normalised ratio.
    Inr,
    /// HbA1c.
    Hba1c,
    /// Blood counts.
    Counts,
    /// Dose of radiotherapy at the site.
    RadiationDose,
    /// Allergies.
    Allergies,
    /// Views on graft origin.
    GraftViews,
    /// Plaque and bleeding of the whole mouth.
    BleedingScore,
    /// Whether growth is finished.
    Growth,
    /// Torque at which the implant seated.
    SeatingTorque,
}

/// How a fact comes to be known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// The chart tells it unasked.
    Chart,
    /// Asked for at the chart.
    Request(Request),
    /// An examination.
    Examination(Examination),
    /// Probing the fresh socket.
    SocketProbing,
    /// Seeing the bone under a reflected flap.
    Reflection,
    /// The extracted tooth in the hand.
    ExtractedTooth,
    /// The pilot drill, by its feel.
    Pilot,
    /// Seating the implant.
    Seating,
}

impl Source {
    /// In words, as *could have been seen by ...* needs them.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Chart => "the chart",
            Self::Request(request) => request.label(),
            Self::Examination(examination) => examination.label(),
            Self::SocketProbing => "probing every wall of the fresh socket",
            Self::Reflection => "reflecting a flap over it",
            Self::ExtractedTooth => "looking at the extracted tooth",
            Self::Pilot => "the feel of the pilot drill",
            Self::Seating => "reading the seating torque",
        }
    }
}

impl Fact {
    /// Every fact, in order.
    pub const ALL: &'static [Self] = &[
        Self::FacialWall,
        Self::FacialThickness,
        Self::OralWall,
        Self::ApicalBone,
        Self::RidgeForm,
        Self::Canal,
        Self::Foramen,
        Self::Floor,
        Self::Nasopalatine,
        Self::NeighbourRoots,
        Self::RootForm,
        Self::ApicalLesion,
        Self::AcuteInfection,
        Self::CrestLevel,
        Self::Density,
        Self::GumThickness,
        Self::GumMargin,
        Self::SmileLine,
        Self::Occlusion,
        Self::History,
        Self::Pressure,
        Self::Inr,
        Self::Hba1c,
        Self::Counts,
        Self::RadiationDose,
        Self::Allergies,
        Self::GraftViews,
        Self::BleedingScore,
        Self::Growth,
        Self::SeatingTorque,
    ];

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::FacialWall => "whether the facial wall is whole",
            Self::FacialThickness => "the thickness of the facial plate",
            Self::OralWall => "whether the oral wall is whole",
            Self::ApicalBone => "the bone beyond the apex",
            Self::RidgeForm => "concavity and undercut of the ridge",
            Self::Canal => "the course of the inferior alveolar canal",
            Self::Foramen => "the mental foramen and its loop",
            Self::Floor => "the floor of sinus or nose",
            Self::Nasopalatine => "the nasopalatine canal",
            Self::NeighbourRoots => "the neighbours' roots",
            Self::RootForm => "length and form of the root",
            Self::ApicalLesion => "disease at the apex",
            Self::AcuteInfection => "signs of acute infection",
            Self::CrestLevel => "the level of the crest",
            Self::Density => "the density of the bone",
            Self::GumThickness => "the thickness of the gum",
            Self::GumMargin => "the margin and the keratinised tissue",
            Self::SmileLine => "what shows at full smile",
            Self::Occlusion => "how the teeth meet",
            Self::History => "the history",
            Self::Pressure => "the blood pressure",
            Self::Inr => "the INR",
            Self::Hba1c => "the HbA1c",
            Self::Counts => "the blood counts",
            Self::RadiationDose => "the radiation dose at the site",
            Self::Allergies => "allergies",
            Self::GraftViews => "views on graft origin",
            Self::BleedingScore => "plaque and bleeding of the whole mouth",
            Self::Growth => "whether growth is finished",
            Self::SeatingTorque => "the seating torque",
        }
    }

    /// By what it can be known, the least invasive first. What is not listed cannot show it: a film
    /// is never a source for the facial wall (`ledger: dx-2d-limits`), and sections are a source for
    /// its presence and for plates above 1 mm only (`ledger: dx-cbct-thin-plate`), which is why
    /// sounding stands first.
    #[must_use]
    pub const fn shown_by(self) -> &'static [Source] {
        use Source::{Chart, ExtractedTooth, Pilot, Reflection, Seating, SocketProbing};
        const fn exam(e: Examination) -> Source {
            Source::Examination(e)
        }
        const fn ask(r: Request) -> Source {
            Source::Request(r)
        }
        match self {
            Self::FacialWall | Self::OralWall => {
                const {
                    &[
                        exam(Examination::BoneSounding),
                        exam(Examination::Sections),
                        SocketProbing,
                        Reflection,
                    ]
                }
            }
            Self::FacialThickness => {
                const { &[exam(Examination::Sections), SocketProbing, Reflection] }
            }
            Self::ApicalBone
            | Self::RidgeForm
            | Self::Canal
            | Self::Foramen
            | Self::Nasopalatine => const { &[exam(Examination::Sections)] },
            Self::Floor => const { &[exam(Examination::Film), exam(Examination::Sections)] },
            Self::Density => const { &[exam(Examination::Sections), Pilot] },
            Self::NeighbourRoots => {
                const { &[exam(Examination::Film), exam(Examination::Sections)] }
            }
            Self::RootForm => {
                const { &[exam(Examination::Film), exam(Examination::Sections), ExtractedTooth] }
            }
            Self::ApicalLesion => const { &[exam(Examination::Film), exam(Examination::Sections)] },
            Self::AcuteInfection => const { &[exam(Examination::Look)] },
            Self::CrestLevel => {
                const {
                    &[
                        exam(Examination::Probing),
                        exam(Examination::Film),
                        exam(Examination::BoneSounding),
                    ]
                }
            }
            Self::GumThickness => const { &[exam(Examination::PhenotypeTest)] },
            Self::GumMargin | Self::SmileLine => const { &[exam(Examination::Look)] },
            Self::Occlusion => const { &[exam(Examination::OcclusalContacts)] },
            Self::History => &[Chart],
            Self::Pressure => const { &[ask(Request::BloodPressure)] },
            Self::Inr => const { &[ask(Request::Inr)] },
            Self::Hba1c => const { &[ask(Request::Hba1c)] },
            Self::Counts => const { &[ask(Request::BloodCounts)] },
            Self::RadiationDose => const { &[ask(Request::DoseRecord)] },
            Self::Allergies => const { &[ask(Request::Allergies)] },
            Self::GraftViews => const { &[ask(Request::GraftViews)] },
            Self::BleedingScore => const { &[ask(Request::PlaqueAndBleeding)] },
            Self::Growth => const { &[ask(Request::GrowthRecords)] },
            Self::SeatingTorque => &[Seating],
        }
    }
}
