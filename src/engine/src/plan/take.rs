//! Acts read out of a draft.

use super::acts::{
    Chart, Closure, Component, Examined, Extraction, Flap, FlapRaised, Graft, GraftAndMembrane,
    Implant, Intention, Membrane, Releases, Returns, Seating, Today,
};
use super::catalogue::Decision;
use super::choices as c;
use super::choices::Several;
use super::draft::Draft;
use super::flow;
use crate::chart::Case;
use crate::units::{Deg, Mm, Mm3};

/// Reads acts out of a draft; `None` where an asked answer is missing.
pub(super) struct Take<'a> {
    pub(super) draft: &'a Draft,
    pub(super) case: &'a Case,
}

impl Take<'_> {
    fn asked(&self, decision: Decision) -> bool {
        flow::is_asked(decision, self.draft, self.case)
    }

    fn one<A: c::Alternative>(&self, decision: Decision) -> Option<A> {
        self.draft.one(decision)
    }

    /// The answer when the decision is asked, nothing otherwise.
    pub(super) fn one_if_asked<A: c::Alternative>(&self, decision: Decision) -> Option<A> {
        if self.asked(decision) { self.draft.one(decision) } else { None }
    }

    fn number_if_asked(&self, decision: Decision) -> Option<i32> {
        if self.asked(decision) { self.draft.number(decision) } else { None }
    }

    fn many<A: c::Alternative>(&self, decision: Decision) -> Several<A> {
        self.draft.many(decision).unwrap_or_default()
    }

    fn tenths(&self, decision: Decision) -> Option<Mm> {
        self.draft.number(decision).map(Mm::from_tenths)
    }

    fn degrees(&self, decision: Decision) -> Option<Deg> {
        self.draft.number(decision).map(|count| Deg::new(f64::from(count)))
    }

    pub(super) fn chart(&self) -> Option<Chart> {
        Some(Chart {
            requests: self.many(Decision::Requests),
            drugs: self.one(Decision::Drugs)?,
            advice: self.many(Decision::Advices),
        })
    }

    pub(super) fn examined(&self) -> Option<Examined> {
        Some(Examined {
            examinations: self.many(Decision::Examinations),
            film: self.one_if_asked(Decision::FilmQuestion),
            sections: self.one_if_asked(Decision::SectionsQuestion),
            wall: self.one(Decision::WallReading)?,
            ground: self.one(Decision::WallGround)?,
        })
    }

    pub(super) fn intention(&self) -> Option<Intention> {
        let today = if self.asked(Decision::ByWhen) {
            Some(Today {
                acts: self.many(Decision::Today),
                by_when: self.one(Decision::ByWhen)?,
                refer_to: self.one_if_asked(Decision::ReferTo),
            })
        } else {
            None
        };
        Some(Intention {
            course: self.one(Decision::Course)?,
            today,
            margin: self.one_if_asked(Decision::MarginPlan),
            channel: self.one_if_asked(Decision::ScrewChannel),
            guidance: self.one_if_asked(Decision::Guidance),
            antibiotic: self.one_if_asked(Decision::AntibioticBefore),
            interim: self.one_if_asked(Decision::Interim),
            consent: self.many(Decision::Consent),
        })
    }

    pub(super) fn extraction(&self) -> Option<Extraction> {
        Some(Extraction {
            flap_first: self.one::<c::YesNo>(Decision::FlapFirst)? == c::YesNo::Yes,
            technique: self.one(Decision::Technique)?,
            sectioning: self.one(Decision::Sectioning)?,
            debridement: self.one(Decision::Debridement)?,
            probing: self.one(Decision::SocketProbing)?,
            plate: self.one_if_asked(Decision::BrokenPlate),
            revision: self.one(Decision::AfterExtraction)?,
        })
    }

    pub(super) fn flap(&self) -> Option<Flap> {
        let raised = match self.one::<c::FlapDesign>(Decision::FlapDesign)? {
            c::FlapDesign::NoFlap => None,
            design => Some(FlapRaised {
                releases: match design {
                    c::FlapDesign::Triangular => Releases::One(self.one(Decision::ReleaseSide)?),
                    c::FlapDesign::Trapezoidal => Releases::Two,
                    c::FlapDesign::Envelope | c::FlapDesign::NoFlap => Releases::None,
                },
                outline: self.draft.outline(Decision::FlapOutline)?.clone(),
                papillae: self.one(Decision::Papillae)?,
                periosteum_released: self.one::<c::YesNo>(Decision::PeriostealRelease)?
                    == c::YesNo::Yes,
            }),
        };
        Some(Flap {
            raised,
            oral: self.tenths(Decision::OralElevation)?,
            revision: self.one(Decision::AfterFlap)?,
        })
    }

    pub(super) fn implant(&self) -> Option<Implant> {
        Some(Implant {
            entry: self.one(Decision::Entry)?,
            preparation: self.one(Decision::Preparation)?,
            drilling: self.one(Decision::Drilling)?,
            pilot_film: self.one::<c::YesNo>(Decision::PilotFilm)? == c::YesNo::Yes,
            first: None,
            diameter: self.tenths(Decision::Diameter)?,
            length: self.tenths(Decision::Length)?,
            facial: self.tenths(Decision::OffsetFacial)?,
            distal: self.tenths(Decision::OffsetDistal)?,
            depth: self.tenths(Decision::Depth)?,
            tilt: self.degrees(Decision::Tilt)?,
            tip: self.degrees(Decision::Tip)?,
            seating_film: self.one::<c::YesNo>(Decision::SeatingFilm)? == c::YesNo::Yes,
        })
    }

    pub(super) fn seating(&self) -> Option<Seating> {
        Some(match flow::seating_act(self.draft)? {
            c::SeatingAct::RemoveAndGraft => Seating::RemovedForGraft,
            c::SeatingAct::RemoveAndHeal => Seating::RemovedToHeal,
            // What is left seated; that a second one is to be seated is no end of the matter.
            _ => Seating::Stays(match self.one(Decision::Component)? {
                c::Component::CoverScrew => Component::CoverScrew,
                c::Component::HealingAbutment => Component::HealingAbutment,
                c::Component::CustomAbutment => Component::CustomAbutment,
                c::Component::Provisional => {
                    Component::Provisional(self.one(Decision::ProvisionalContacts)?)
                }
            }),
        })
    }

    /// The implant that stands in the end: the first, or what was seated in its place. Nothing in the
    /// stock is wider than 6 or longer than 16 mm.
    pub(super) fn second(&self, first: Implant) -> Implant {
        let most = |value: Mm, most: f64| Mm::new(value.get().min(most));
        let sizes = [first.diameter, first.length];
        match self.one(Decision::SeatingAct) {
            Some(c::SeatingAct::SeatWider) if first.first.is_none() => Implant {
                diameter: most(first.diameter + Mm::new(0.5), 6.0),
                first: Some(sizes),
                ..first
            },
            Some(c::SeatingAct::SeatLonger) if first.first.is_none() => Implant {
                length: most(first.length + Mm::new(2.0), 16.0),
                first: Some(sizes),
                ..first
            },
            _ => first,
        }
    }

    pub(super) fn graft(&self) -> Option<GraftAndMembrane> {
        let graft = match self.one(Decision::GraftMaterial)? {
            c::GraftMaterial::NoGraft => None,
            material => Some(Graft {
                material,
                grains: self.one(Decision::GrainSize)?,
                wetting: self.one(Decision::Wetting)?,
                packing: self.one(Decision::Packing)?,
                amount: Mm3::from_cc(f64::from(self.draft.number(Decision::GraftAmount)?) / 100.0),
                fill: self.tenths(Decision::FillLevel)?,
                contour: self.number_if_asked(Decision::ContourLayer).map(Mm::from_tenths),
            }),
        };
        let membrane = match self.one(Decision::Membrane)? {
            c::MembraneKind::NoMembrane => None,
            kind => Some(Membrane {
                kind,
                outline: self.draft.outline(Decision::MembraneOutline)?.clone(),
                trim: self.one(Decision::Trim)?,
                fold: self.one(Decision::Fold)?,
                fixation: self.one(Decision::Fixation)?,
            }),
        };
        Some(GraftAndMembrane {
            graft,
            membrane,
            tissue: self.one(Decision::TissueGraft)?,
            order: self.one_if_asked(Decision::ActOrder),
            seal: self.one_if_asked(Decision::SocketSeal),
        })
    }

    pub(super) fn closure(&self) -> Option<Closure> {
        let sensation: Option<c::YesNo> = self.one_if_asked(Decision::SensationCheck);
        Some(Closure {
            kind: self.one(Decision::Closure)?,
            size: self.one(Decision::SutureSize)?,
            material: self.one(Decision::SutureMaterial)?,
            needle: self.one_if_asked(Decision::NeedlePath),
            bleeding: self.many(Decision::Bleeding),
            instructions: self.many(Decision::Instructions),
            antiseptic: self.one(Decision::Antiseptic)?,
            antiseptic_days: self.number_if_asked(Decision::AntisepticDays),
            antibiotic: self.one(Decision::AntibioticAfter)?,
            sensation: sensation.map(|answer| answer == c::YesNo::Yes),
        })
    }

    pub(super) fn returns(&self) -> Returns {
        Returns {
            sutures_out: self.number_if_asked(Decision::SuturesOut),
            membrane_out: self.number_if_asked(Decision::MembraneOut),
            reviews: self.many(Decision::Reviews),
        }
    }
}
