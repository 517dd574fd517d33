//! What a figure is asked to show.

use super::lit::Part;
use crate::anatomy::Tooth;
use crate::chart::Case;
use crate::debrief::with_unit;
use crate::geometry::Outline;
use crate::plan::choices::{self as c, Alternative};
use crate::plan::{
    Decision, Draft, Flap, FlapRaised, Graft, GraftAndMembrane, Implant, Kind, Membrane, Plan,
    Releases, is_asked,
};
use crate::rules::{Known, Rule};
use crate::units::{Deg, Mm, Mm3};

/// What a figure is asked to show.
#[derive(Debug, Clone, Copy)]
pub struct Show<'a> {
    /// The truth; before the debrief only what has been seen of it is drawn.
    pub case: &'a Case,
    /// What has been carried out.
    pub plan: &'a Plan,
    /// What is chosen at the moment: implant, flap, graft and membrane that have not been carried
    /// out yet are previewed from it.
    pub draft: &'a Draft,
    /// What the learner has seen.
    pub known: &'a Known<'a>,
    /// Whether everything true is shown, seen or not: the debrief.
    pub reveal: bool,
    /// The rule whose fault is lit.
    pub lit: Option<&'static Rule>,
    /// How wide the figure will be drawn, in CSS pixels: letters and stipple are sized for it. What
    /// is drawn, in millimetres, does not depend on it.
    pub px: f64,
}

impl Show<'_> {
    /// Whether an implant stands in the fresh socket or is being tried there.
    #[must_use]
    pub fn has_implant(&self) -> bool {
        self.preview().implant_in_place().is_some()
    }

    /// Whether a fault that is lit is about this part of a drawing.
    pub(super) fn lights(&self, part: Part) -> bool {
        self.lit.is_some_and(|rule| part.is_of(rule))
    }

    /// The plan with what is chosen but not carried out. Only what has a place in a drawing is
    /// filled in, and only once the tooth is out; a step that has been carried out stays as it was.
    pub(super) fn preview(&self) -> Plan {
        let mut plan = self.plan.clone();
        if plan.extraction.is_none() {
            return plan;
        }
        if plan.implant.is_none() {
            plan.implant = self.implant();
        }
        if plan.flap.is_none() {
            plan.flap = self.flap();
        }
        if plan.graft.is_none() {
            plan.graft = self.graft();
        }
        plan
    }

    pub(super) fn asked(&self, decision: Decision) -> bool {
        is_asked(decision, self.draft, self.case)
    }

    pub(super) fn tenths(&self, decision: Decision) -> Option<Mm> {
        self.draft.number(decision).map(Mm::from_tenths)
    }

    /// The implant that is being tried: it stands as soon as its size is chosen, on the tooth's axis
    /// and level with the crest until told otherwise. What does not show in a drawing (drills,
    /// films) is no choice made here and is read by nobody.
    fn implant(&self) -> Option<Implant> {
        if !self.asked(Decision::Diameter) {
            return None;
        }
        let place = |decision| self.tenths(decision).unwrap_or(Mm::ZERO);
        let lean = |decision| {
            self.draft.number(decision).map_or(Deg::ZERO, |count| Deg::new(f64::from(count)))
        };
        Some(Implant {
            entry: self.draft.one(Decision::Entry).unwrap_or(c::Entry::SocketApex),
            preparation: self.draft.one(Decision::Preparation).unwrap_or(c::Preparation::Full),
            drilling: self.draft.one(Decision::Drilling).unwrap_or(c::Drilling::CooledModerate),
            pilot_film: false,
            first: None,
            diameter: self.tenths(Decision::Diameter)?,
            length: self.tenths(Decision::Length)?,
            facial: place(Decision::OffsetFacial),
            distal: place(Decision::OffsetDistal),
            depth: place(Decision::Depth),
            tilt: lean(Decision::Tilt),
            tip: lean(Decision::Tip),
            seating_film: false,
        })
    }

    fn outline(&self, decision: Decision) -> Option<Outline> {
        if self.asked(decision) { self.draft.outline(decision).cloned() } else { None }
    }

    fn flap(&self) -> Option<Flap> {
        let releases = match self.draft.one::<c::FlapDesign>(Decision::FlapDesign)? {
            c::FlapDesign::Trapezoidal => Releases::Two,
            c::FlapDesign::Triangular => {
                self.draft.one(Decision::ReleaseSide).map_or(Releases::None, Releases::One)
            }
            c::FlapDesign::Envelope | c::FlapDesign::NoFlap => Releases::None,
        };
        let raised = self.outline(Decision::FlapOutline).map(|outline| FlapRaised {
            releases,
            outline,
            papillae: self.draft.one(Decision::Papillae).unwrap_or(c::Papillae::Left),
            periosteum_released: self.draft.one(Decision::PeriostealRelease) == Some(c::YesNo::Yes),
        });
        Some(Flap {
            raised,
            oral: self.tenths(Decision::OralElevation).unwrap_or(Mm::ZERO),
            revision: c::Revision::CarryOn,
        })
    }

    fn graft(&self) -> Option<GraftAndMembrane> {
        let graft = self.particles();
        let membrane = self.membrane();
        (graft.is_some() || membrane.is_some()).then_some(GraftAndMembrane {
            graft,
            membrane,
            tissue: c::TissueGraft::NoTissue,
            order: None,
            seal: None,
        })
    }

    fn particles(&self) -> Option<Graft> {
        if !self.asked(Decision::GrainSize) {
            return None;
        }
        let contour = Decision::ContourLayer;
        Some(Graft {
            material: self.draft.one(Decision::GraftMaterial)?,
            grains: self.draft.one(Decision::GrainSize)?,
            wetting: self.draft.one(Decision::Wetting).unwrap_or(c::Wetting::Dry),
            packing: self.draft.one(Decision::Packing).unwrap_or(c::Packing::Loose),
            amount: Mm3::from_cc(
                f64::from(self.draft.number(Decision::GraftAmount).unwrap_or(0)) / 100.0,
            ),
            fill: self.tenths(Decision::FillLevel)?,
            contour: if self.asked(contour) { self.tenths(contour) } else { None },
        })
    }

    fn membrane(&self) -> Option<Membrane> {
        Some(Membrane {
            outline: self.outline(Decision::MembraneOutline)?,
            kind: self.draft.one(Decision::Membrane)?,
            trim: self.draft.one(Decision::Trim).unwrap_or(c::Trim::Rounded),
            fold: self.draft.one(Decision::Fold).unwrap_or(c::Fold::FacialOnly),
            fixation: self.draft.one(Decision::Fixation).unwrap_or(c::Fixation::Free),
        })
    }
}

/// Counts of a decision in a millimetre or degree, as its catalogue entry has them.
pub(super) fn counts_per_unit(decision: Decision) -> f64 {
    match decision.entry().kind {
        Kind::Number(kind) => f64::from(kind.per_unit),
        _ => 1.0,
    }
}

/// Least and greatest grain, millimetres, as the alternative's own words say.
pub(super) fn grain_sizes(size: c::GrainSize) -> [f64; 2] {
    debug_assert!(c::GrainSize::ALL.len() == 3, "three sizes");
    match size {
        c::GrainSize::Dust => [0.05, 0.1],
        c::GrainSize::Small => [0.25, 1.0],
        c::GrainSize::Large => [1.0, 2.0],
    }
}

/// A signed number in the words of its decision: *1.0 mm to the palate*; *on the axis* for none.
pub(super) fn directed(decision: Decision, value: f64, nothing: &str, tooth: Tooth) -> String {
    let Kind::Number(kind) = decision.entry().kind else {
        return String::new();
    };
    let places = usize::from(kind.per_unit == 10);
    if value.abs() < 0.5 / f64::from(kind.per_unit) {
        return nothing.to_owned();
    }
    let [less, more] = kind.ways_at(tooth);
    let way = if value > 0.0 { more } else { less };
    let amount = with_unit(&format!("{:.places$}", value.abs()), kind.unit);
    // *apex to the palate* takes the amount after its first word.
    match way.strip_prefix("apex ") {
        Some(rest) => format!("apex {amount} {rest}"),
        None => format!("{amount} {way}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_direction_is_said_in_words_and_never_by_a_sign() {
        let upper = Tooth::new(11).unwrap();
        let words = |value| directed(Decision::OffsetFacial, value, "on the axis", upper);
        assert_eq!(words(-1.2), "1.2 mm to the palate");
        assert_eq!(words(0.8), "0.8 mm to the facial side");
        assert_eq!(words(0.01), "on the axis");
        assert_eq!(
            directed(Decision::Tilt, -8.0, "upright", upper),
            "apex 8 degrees to the palate"
        );
        assert_eq!(
            directed(Decision::Tilt, 1.0, "upright", upper),
            "apex 1 degree to the facial side"
        );
    }

    #[test]
    fn grain_sizes_are_those_that_their_labels_name() {
        for size in c::GrainSize::ALL {
            let [_, most] = grain_sizes(*size);
            assert!(size.label().contains(&format!("{most:.1}")), "{}", size.label());
        }
    }
}
