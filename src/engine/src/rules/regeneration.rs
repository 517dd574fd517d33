//! What several rules ask alike: whether a wall is missing, whether the defect is contained, whether
//! this is guided regeneration or ridge preservation.

use super::Reading;
use crate::anatomy::{DefectKind, Jaw, Wall};
use crate::chart::Case;
use crate::plan::Plan;
use crate::plan::choices::MembraneKind;
use crate::units::Mm;

/// What an implant heals over: decides on the time that it is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Over {
    /// A wall or a contour that is regenerated.
    Regeneration,
    /// A grafted gap beside whole walls.
    Graft,
    /// Bone alone. In a healed ridge that is all, whatever was grafted into its socket.
    Bone,
}

/// What this plan's implant heals over.
pub(super) fn heals_over(case: &Case, plan: &Plan) -> Over {
    if plan.later.placement.is_some() {
        let act = plan.later.found().map(|back| back.act);
        let built = act == Some(crate::plan::choices::HealedAct::PlaceWithContour);
        return if built { Over::Regeneration } else { Over::Bone };
    }
    match (has_wall_defect(case), plan.graft_laid().is_some()) {
        (true, _) => Over::Regeneration,
        (false, true) => Over::Graft,
        (false, false) => Over::Bone,
    }
}

/// Whether the facial wall has a defect.
pub(super) fn has_facial_defect(case: &Case) -> bool {
    case.site.defects_of(Wall::Facial).next().is_some()
}

/// Whether any wall has a defect.
pub(super) fn has_wall_defect(case: &Case) -> bool {
    !case.site.defects.is_empty()
}

/// Whether the defects are contained: bone stands on both sides of each and only one wall is harmed.
/// The ledger names the class without a figure, so the kind of defect decides (our own reading).
pub(super) fn is_contained(case: &Case) -> bool {
    let walls = |wall| case.site.defects_of(wall).next().is_some();
    let both = walls(Wall::Facial) && walls(Wall::Oral);
    let lost = case.site.defects.iter().any(|defect| defect.kind == DefectKind::LostWall);
    !both && !lost
}

/// Whether no flap was raised on either side; `None` before that step.
pub(super) fn is_flapless(plan: &Plan) -> Option<bool> {
    let flap = plan.flap.as_ref()?;
    Some(flap.raised.is_none() && flap.oral.get() <= 0.0)
}

/// Whether this is guided regeneration: a membrane over a missing wall or over a contour layer.
pub(super) fn is_guided(case: &Case, plan: &Plan) -> bool {
    plan.membrane().is_some() && (has_wall_defect(case) || contour(plan).is_some())
}

/// The contour layer, where one is laid.
pub(super) fn contour(plan: &Plan) -> Option<Mm> {
    plan.graft_laid()?.contour.filter(|layer| layer.get() > 0.0)
}

/// Whether a socket was grafted to be returned to: ridge preservation.
pub(super) fn is_preservation(plan: &Plan) -> bool {
    plan.graft_laid().is_some() && plan.implant_in_place().is_none()
}

/// Whether this barrier resorbs by itself.
pub(super) const fn resorbs(kind: MembraneKind) -> bool {
    matches!(kind, MembraneKind::NativeCollagen | MembraneKind::CrossLinked)
}

/// Whether the site lies in the lower jaw and was opened: drilled or reflected, not only extracted.
pub(super) fn is_lower_surgery(case: &Case, plan: &Plan) -> bool {
    let opened = plan.implant.is_some() || is_flapless(plan) == Some(false);
    case.site.tooth.jaw() == Jaw::Mandible && opened
}

/// A length as a reading.
pub(super) const fn millimetres(length: Mm) -> Reading {
    Reading::Number(length.get())
}

#[cfg(test)]
pub(crate) use ready::{defect, lower, preserved, repaired, undercut};

#[cfg(test)]
mod ready {
    use crate::anatomy::{Defect, DefectKind, Profile, Tooth, Wall};
    use crate::geometry::{Outline, P2};
    use crate::plan::Decision;
    use crate::rules::trial::Trial;

    /// A defect open to the crest, 4 mm wide there and 6 mm deep, in the middle of this wall.
    pub fn defect(wall: Wall, kind: DefectKind) -> Defect {
        // The oral crest lies 8.4 mm across the plain ridge.
        let vertices = match wall {
            Wall::Facial => vec![[-20, 0], [20, 0], [5, 60], [-5, 60]],
            Wall::Oral => vec![[-20, -84], [20, -84], [5, -144], [-5, -144]],
        };
        Defect { wall, kind, outline: Outline::new(vertices).unwrap() }
    }

    /// A V-shaped facial dehiscence beside an implant, repaired by the book: trapezoidal flap,
    /// contour layer, collagen folded under the raised oral margin over a cover screw, closed.
    pub fn repaired() -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceV));
        trial.keys(&[
            ("flap-design", "trapezoidal"),
            ("papillae", "left"),
            ("periosteal-release", "yes"),
            ("component", "cover-screw"),
            ("membrane", "native-collagen"),
            ("trim", "rounded"),
            ("fold", "over-orifice"),
            ("fixation", "sutured"),
            ("act-order", "membrane-first"),
            ("closure", "primary"),
            ("needle-path", "crest-outward"),
        ]);
        trial.outline(Decision::FlapOutline, &[[-110, 0], [110, 0], [130, 130], [-130, 130]]);
        trial.outline(Decision::MembraneOutline, &[[-50, -115], [50, -115], [50, 95], [-50, 95]]);
        for (decision, count) in [
            (Decision::OralElevation, 60),
            (Decision::ContourLayer, 25),
            (Decision::SuturesOut, 12),
            (Decision::RestoreAfter, 20),
        ] {
            trial.number(decision, count);
        }
        trial
    }

    /// The plain site, grafted and left to be returned to under a collagen plug.
    pub fn preserved() -> Trial {
        let mut trial = Trial::plain();
        trial.keys(&[("course", "graft-and-return"), ("socket-seal", "collagen-plug")]);
        trial.number(Decision::PlaceAfter, 20);
        trial
    }

    /// The same trial in the lower jaw, over a lingual face that is hollow below the apex: 7 mm
    /// lingual of the axis at mid-root, 4.5 mm from 11 mm down.
    pub fn undercut(trial: Trial) -> Trial {
        let mut trial = lower(trial);
        let face = [(-8.0, -4.2), (0.0, -4.2), (5.5, -7.0), (11.0, -4.5), (30.0, -4.5)];
        let knots = face.map(|(z, y)| P2::new(z, y)).to_vec();
        trial.case.site.ridge.oral = Profile { knots };
        trial
    }

    /// The same trial at the lower right first premolar, sensation checked the next day.
    pub fn lower(mut trial: Trial) -> Trial {
        trial.case.site.tooth = Tooth::new(44).unwrap();
        trial.keys(&[("sensation-check", "yes")]);
        trial
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn one_harmed_wall_with_bone_on_both_sides_is_contained() {
        let mut case = Trial::plain().case;
        for kind in [DefectKind::DehiscenceV, DefectKind::DehiscenceU, DefectKind::Fenestration] {
            case.site.defects = vec![defect(Wall::Facial, kind)];
            assert!(is_contained(&case), "{kind:?}");
        }
        case.site.defects.push(defect(Wall::Oral, DefectKind::DehiscenceV));
        assert!(!is_contained(&case), "both walls");
        case.site.defects = vec![defect(Wall::Facial, DefectKind::LostWall)];
        assert!(!is_contained(&case), "a lost wall");
    }

    #[test]
    fn a_repair_by_the_book_draws_no_fault_from_flap_to_follow_up() {
        use crate::rules::{FAMILIES, Family};
        let covered = [Family::Flap, Family::Graft, Family::Membrane, Family::Closure];
        for trial in [Trial::plain(), repaired(), preserved()] {
            for (_, rules) in FAMILIES.iter().filter(|(family, _)| covered.contains(family)) {
                for rule in *rules {
                    let zone = trial.zone(rule);
                    let found = trial.reading(rule);
                    assert!(zone.is_none_or(|zone| !zone.is_fault()), "{}: {found:?}", rule.id);
                }
            }
        }
    }

    #[test]
    fn the_ready_trials_are_what_their_names_say() {
        let trial = repaired();
        let plan = trial.plan();
        assert!(is_guided(&trial.case, &plan) && !is_preservation(&plan));
        assert_eq!(is_flapless(&plan), Some(false));
        let trial = preserved();
        let plan = trial.plan();
        assert!(is_preservation(&plan) && !is_guided(&trial.case, &plan));
        assert_eq!(is_flapless(&plan), Some(true));
        let trial = lower(Trial::plain());
        assert!(is_lower_surgery(&trial.case, &trial.plan()));
        assert!(!is_lower_surgery(&Trial::plain().case, &Trial::plain().plan()));
    }
}
