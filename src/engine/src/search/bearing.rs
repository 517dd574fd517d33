//! What of a placement a rule turns on, so that a sweep asks it no oftener than it can change its mind.
//!
//! Nothing here says what a rule asks. A rule that is not named is asked for every placement; naming it
//! makes a sweep faster and never changes what it finds, which tests hold.

use crate::anatomy::{Jaw, Wall};
use crate::chart::Case;
use crate::geometry::Cone;
use crate::measure::{Bounds, CLOSE, Care, Span};
use crate::plan::choices::Examination;
use crate::plan::{Examined, Plan};
use crate::rules::{Bands, Here, Local, Rule, Scale, ask};

/// Places of the seven numbers in [`Placement::counts`](super::Placement::counts).
pub(super) const DIAMETER: usize = 0;
pub(super) const LENGTH: usize = 1;
pub(super) const FACIAL: usize = 2;
pub(super) const DISTAL: usize = 3;
pub(super) const DEPTH: usize = 4;
pub(super) const TILT: usize = 5;
pub(super) const TIP: usize = 6;

/// What a rule's reading turns on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Bearing {
    /// On these of the seven numbers and on nothing else of the placement.
    Numbers(&'static [usize]),
    /// On a measurement that can be bounded.
    Bounded(Bounded),
    /// On how near a structure is: no fault farther off than this, mm.
    OnlyWithin(f64),
    /// On anything, and soon said.
    Brief,
    /// On anything.
    Anything,
}

/// Measurements that can be bounded, as rules read them; the soonest said first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Bounded {
    Floor,
    Canal,
    Foramen,
    Nasopalatine,
    Roots,
    Implants,
    OralBone,
    ApicalBone,
    ApicalOralBone,
    LingualBone,
    Anchorage,
}

/// Of a rule, by its id, in a plan on a case.
pub(super) fn of(rule: &Rule, case: &Case, plan: &Plan) -> Bearing {
    use Bearing::{Anything, Brief, Numbers, OnlyWithin};
    let filmed = plan.implant.as_ref().is_some_and(|implant| implant.pilot_film);
    let sections = |done: &Examined| done.examinations.has(Examination::Sections);
    match rule.id {
        "chronic-lesion-not-debrided"
        | "margin-below-twin-not-corrected"
        | "no-section-near-the-canal"
        | "placed-against-the-criteria"
        | "placed-before-growth-ended"
        | "placed-on-acute-infection" => Numbers(&[]),
        "implant-too-wide" | "implant-too-narrow-for-a-molar" | "implant-wider-than-the-septum" => {
            Numbers(&[DIAMETER])
        }
        "implant-length-unusual" => Numbers(&[LENGTH]),
        "platform-above-the-crest"
        | "platform-far-below-the-crest"
        | "platform-too-deep"
        | "platform-too-shallow" => Numbers(&[DEPTH]),
        "axis-off-the-crown" | "axis-past-an-angled-channel" => Numbers(&[TILT, TIP]),
        "platform-too-far-facial" | "platform-too-far-oral" => {
            Numbers(&[DIAMETER, FACIAL, DISTAL, TILT, TIP])
        }
        "gap-too-narrow" | "facial-plate-touched" => Brief,
        // What was looked at is no fault, wherever the implant stands.
        "pilot-not-checked-near-a-structure" if filmed => Numbers(&[]),
        "pilot-not-checked-near-a-structure" => OnlyWithin(ask::NEAR_A_STRUCTURE),
        "foramen-not-located" if plan.examined.as_ref().is_some_and(sections) => Numbers(&[]),
        "implant-held-by-no-septum"
        | "implant-off-the-septum"
        | "septum-too-thin-for-an-implant"
            if !ask::has_septum(case) =>
        {
            Numbers(&[])
        }
        _ => bounded(rule.id).map_or(Anything, Bearing::Bounded),
    }
}

fn bounded(id: &str) -> Option<Bounded> {
    Some(match id {
        "oral-bone-too-thin" => Bounded::OralBone,
        "apex-through-the-plate" => Bounded::ApicalBone,
        "flapless-beside-lingual-undercut" => Bounded::ApicalOralBone,
        "lingual-cortex-perforated" => Bounded::LingualBone,
        "too-near-a-root" => Bounded::Roots,
        "too-near-an-implant" => Bounded::Implants,
        "too-near-the-nasopalatine-canal" => Bounded::Nasopalatine,
        "drill-too-near-the-canal" => Bounded::Canal,
        "too-near-the-foramen" => Bounded::Foramen,
        "through-the-floor" => Bounded::Floor,
        "placed-without-anchorage" => Bounded::Anchorage,
        _ => return None,
    })
}

/// Whether some structure may be nearer than this, mm.
pub(super) fn may_be_within(bounds: &mut Bounds<'_>, cone: &Cone, near: f64, care: Care) -> bool {
    let nearer = |span: Option<Span>| span.is_some_and(|span| span.least <= near + CLOSE);
    nearer(bounds.canal(cone, care))
        || nearer(bounds.foramen(cone, care))
        || nearer(bounds.floor(cone))
        || nearer(bounds.nasopalatine(cone, care))
}

impl Bounded {
    /// Whether a rule that has nothing to read of one placement has nothing to read of any.
    pub(super) const fn is_there_or_never(self) -> bool {
        !matches!(self, Self::OralBone | Self::LingualBone)
    }

    /// Between what the rule's reading lies; `None` where the rule has nothing to read.
    pub(super) fn span(
        self,
        bounds: &mut Bounds<'_>,
        jaw: Jaw,
        septum: bool,
        cone: &Cone,
        care: Care,
    ) -> Option<Span> {
        let apical = |bounds: &mut Bounds<'_>, wall| bounds.apical_bone(cone, wall, care);
        match self {
            Self::OralBone => bounds.oral_bone(cone, care),
            Self::ApicalBone => {
                let facial = apical(bounds, Wall::Facial);
                if jaw == Jaw::Mandible {
                    return Some(facial);
                }
                Some(facial.lesser(apical(bounds, Wall::Oral)))
            }
            Self::ApicalOralBone => Some(apical(bounds, Wall::Oral)),
            Self::LingualBone => {
                let oral = bounds.oral_bone(cone, care)?;
                Some(oral.lesser(apical(bounds, Wall::Oral)))
            }
            Self::Roots => bounds.neighbour(cone, false, care),
            Self::Implants => bounds.neighbour(cone, true, care),
            Self::Nasopalatine => bounds.nasopalatine(cone, care),
            Self::Canal => bounds.canal(cone, care),
            Self::Foramen => bounds.foramen(cone, care),
            Self::Floor => bounds.floor(cone),
            Self::Anchorage => Some(anchorage(bounds, septum, cone, care)),
        }
    }
}

/// Half of the oral hold counts, and so does the hold of all sides, and of a septum.
fn anchorage(bounds: &Bounds<'_>, septum: bool, cone: &Cone, care: Care) -> Span {
    let oral = bounds.oral_engagement(cone);
    let [least, most] = [oral.least, oral.most].map(|hold| hold / ask::ORAL_FOR_ONE);
    if septum || care < Care::Closer {
        return Span { least, most: f64::INFINITY };
    }
    Span { least, most: most.max(bounds.anchorage(cone, care).most) }
}

/// Where a rule on a scale turns from no fault to a fault and back.
#[derive(Debug)]
pub(super) struct Turns {
    lowest: bool,
    at: Vec<f64>,
}

impl Turns {
    /// Of a rule as the set has it that gives the case; `None` of one that knows situations only.
    pub(super) fn of(rule: &Rule, local: &Local) -> Option<Self> {
        let Scale::Bands(bands) = &rule.scale else { return None };
        let here = local.of(rule);
        Some(Self::on(&here.as_ref().and_then(Here::bands).unwrap_or(*bands)))
    }

    fn on(bands: &Bands<'_>) -> Self {
        let mut fault = bands.lowest.is_fault();
        let mut turns = Self { lowest: fault, at: Vec::new() };
        for cut in bands.cuts {
            if cut.then.is_fault() != fault {
                fault = !fault;
                turns.at.push(cut.at);
            }
        }
        turns
    }

    /// However much above this a value lies, it is the same: a fault, or none.
    pub(super) fn enough(&self) -> f64 {
        self.at.last().map_or(f64::NEG_INFINITY, |at| at + 2.0 * CLOSE)
    }

    /// Whether every value of a span is a fault, or none; `None` where that differs or may.
    pub(super) fn settled(&self, span: Span) -> Option<bool> {
        let Span { least, most } = span;
        let mut fault = self.lowest;
        for at in &self.at {
            if most < at - CLOSE {
                break;
            }
            if least <= at + CLOSE {
                return None;
            }
            fault = !fault;
        }
        Some(fault)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules;

    #[test]
    fn a_span_is_settled_only_away_from_where_a_fault_begins() {
        let turns = Turns::of(rules::find("oral-bone-too-thin").unwrap(), &Local::NONE).unwrap();
        let settled = |least, most| turns.settled(Span { least, most });
        assert_eq!(settled(f64::NEG_INFINITY, 0.98), Some(true));
        assert_eq!(settled(0.0, 0.995), None);
        assert_eq!(settled(0.5, 1.5), None);
        assert_eq!(settled(1.005, 3.0), None);
        assert_eq!(settled(1.02, f64::INFINITY), Some(false));
        // Two of its zones are faults: what lies between them does not matter.
        let turns = Turns::of(rules::find("too-near-a-root").unwrap(), &Local::NONE).unwrap();
        assert_eq!(turns.settled(Span { least: -2.0, most: 1.4 }), Some(true));
    }
}
