//! Which part of a drawing a rule is about: what is lit when one of its faults is.

use crate::chart::Fact;
use crate::plan::Decision;
use crate::rules::{Cause, Family, Rule};

/// A part of a drawing that can be lit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// The facial gap.
    Gap,
    /// Platform below the planned margin.
    Depth,
    /// Size and place of the implant.
    Place,
    /// The facial wall and its defects.
    Wall,
    /// The membrane.
    Membrane,
    /// The flap.
    Flap,
    /// Distances to the neighbours.
    Neighbours,
    /// Level to which is filled.
    Fill,
    /// What must not be hurt: the structure that this fact is about.
    Structure(Fact),
}

impl Part {
    /// Whether the rule is about this part.
    pub(super) fn is_of(self, rule: &Rule) -> bool {
        let reads = |decision| rule.reads.contains(&decision);
        let causes = |some: &[Cause]| some.iter().any(|cause| rule.causes.contains(cause));
        match self {
            Self::Gap => {
                reads(Decision::OffsetFacial)
                    && (rule.family == Family::Gap || causes(&[Cause::ImplantTooFacial]))
            }
            Self::Depth => {
                let levels = [Fact::GumMargin, Fact::CrestLevel];
                reads(Decision::Depth)
                    && causes(&[Cause::ImplantTooDeep, Cause::ImplantTooShallow])
                    && levels.iter().any(|level| rule.rests_on.contains(level))
            }
            Self::Place => {
                matches!(rule.family, Family::Position | Family::Stability)
                    && (reads(Decision::Diameter) || reads(Decision::Tilt))
            }
            Self::Wall => {
                rule.rests_on.contains(&Fact::FacialWall)
                    || causes(&[Cause::DefectNotLookedFor, Cause::DefectLeftOpen])
            }
            Self::Membrane => reads(Decision::MembraneOutline) && !reads(Decision::FlapOutline),
            Self::Flap => rule.family == Family::Flap && reads(Decision::FlapOutline),
            Self::Neighbours => causes(&[Cause::ImplantTooNearNeighbour]),
            Self::Fill => causes(&[Cause::Underfilled]),
            Self::Structure(fact) => rule.rests_on.contains(&fact),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules;

    #[test]
    fn a_rule_lights_what_it_is_about_and_nothing_else_beside_it() {
        let lights = |id: &str, part: Part| part.is_of(rules::find(id).expect(id));
        for (id, lit, dark) in [
            ("gap-too-narrow", Part::Gap, Part::Depth),
            ("platform-too-deep", Part::Depth, Part::Gap),
            ("too-near-a-root", Part::Neighbours, Part::Gap),
            ("membrane-short-of-intact-bone", Part::Membrane, Part::Flap),
            ("flap-short-of-membrane", Part::Flap, Part::Membrane),
            ("drill-too-near-the-canal", Part::Structure(Fact::Canal), Part::Depth),
            ("through-the-floor", Part::Structure(Fact::Floor), Part::Structure(Fact::Canal)),
            ("gap-and-wall-underfilled", Part::Fill, Part::Membrane),
        ] {
            assert!(lights(id, lit), "{id} leaves {lit:?} dark");
            assert!(!lights(id, dark), "{id} lights {dark:?}");
        }
    }
}
