//! Membrane: leave at least 2 mm of membrane on intact bone, mesially, distally and apically.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "membrane-short-of-intact-bone",
    ledger: "membrane-margin",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!(
        "Leave at least 2 mm of membrane on intact bone, mesially, distally and apically."
    ),
    why: long!(
        "The edge of the membrane is where gum creeps in; on intact bone it is sealed, over the defect it is a door."
    ),
    mend: long!("Enlarge the membrane where its margin is least."),
    scale: Scale::Bands(Bands {
        quantity: "membrane beyond the edge of the defect",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(1.0, Zone::Suboptimal).published(1.0, 2.0),
            Cut::from(2.0, Zone::Acceptable).published(2.0, 3.0),
            Cut::from(3.0, Zone::Ideal).published(3.0, 4.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane, Decision::MembraneOutline, Decision::Fold, Decision::SocketSeal],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::MembraneTooSmall, Cause::FlapTooSmall],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "native bilayer membrane in ridge preservation, trial protocol",
            "The membrane reaches 2 to 3 mm past the rim of the socket.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "membrane on intact bone",
            "At least 2 mm past the mesial, distal and apical edge of a facial or oral defect: 1.9 is outside, 2.0 acceptable.",
        ),
        says(Source::Textbook, Status::FromMemory, "textbooks on overlap", "3 to 4 mm preferred."),
        says(
            Source::Ours,
            Status::Ours,
            "lower end of the caution",
            "Less than 1 mm counts as likely to compromise.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.membrane()?;
    j.m.membrane_margin()?.least().map(regeneration::millimetres)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{DefectKind, Wall};
    use crate::rules::regeneration::{defect, repaired};
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.999, Zone::Compromising),
            (1.0, Zone::Suboptimal),
            (1.001, Zone::Suboptimal),
            (1.999, Zone::Suboptimal),
            (2.0, Zone::Acceptable),
            (2.001, Zone::Acceptable),
            (2.999, Zone::Acceptable),
            (3.0, Zone::Ideal),
            (3.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn without_a_membrane_there_is_no_margin() {
        assert_eq!(Trial::plain().zone(&RULE), None);
        let mut trial = repaired();
        trial.keys(&[("membrane", "none")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn the_apical_margin_is_read_from_the_outline_below_a_defect_of_6_mm() {
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -115], [50, -115], [50, 69], [-50, 69]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -115], [50, -115], [50, 70], [-50, 70]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -115], [50, -115], [50, 79], [-50, 79]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -115], [50, -115], [50, 80], [-50, 80]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -115], [50, -115], [50, 90], [-50, 90]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn an_oral_defect_is_measured_down_its_own_wall() {
        let mut trial = repaired();
        trial.case.site.defects = vec![defect(Wall::Oral, DefectKind::DehiscenceV)];
        trial.outline(Decision::MembraneOutline, &[[-50, -163], [50, -163], [50, 20], [-50, 20]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.case.site.defects = vec![defect(Wall::Oral, DefectKind::DehiscenceV)];
        trial.outline(Decision::MembraneOutline, &[[-50, -164], [50, -164], [50, 20], [-50, 20]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }
}
