//! Membrane: let a membrane that crosses the crest engage at least 2 mm of oral bone.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "membrane-short-over-the-oral-crest",
    ledger: "membrane-margin",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Let a membrane that crosses the crest engage at least 2 mm of oral bone."),
    why: long!("Folded onto the crest alone it lies on the edge of the socket and slips into it."),
    mend: long!("Bring the oral end further down the oral wall, under the raised margin."),
    scale: Scale::Bands(Bands {
        quantity: "membrane on oral bone, measured apically from the crest",
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
    rests_on: &[],
    causes: &[Cause::MembraneTooSmall, Cause::FlapTooSmall],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "membrane on oral bone",
            "At least 2 mm when it crosses the crest, measured apically from the crest.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "native bilayer membrane in ridge preservation, trial protocol",
            "The membrane reaches 2 to 3 mm past the rim of the socket.",
        ),
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
    j.m.membrane_margin()?.oral.map(regeneration::millimetres)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
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
    fn without_a_membrane_nothing_crosses_the_crest() {
        assert_eq!(Trial::plain().zone(&RULE), None);
        let mut trial = repaired();
        trial.keys(&[("membrane", "none")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn the_oral_crest_of_this_site_lies_8_4_mm_across() {
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -93], [50, -93], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -94], [50, -94], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -103], [50, -103], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -104], [50, -104], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -114], [50, -114], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_membrane_that_stays_on_its_wall_is_not_asked() {
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, 0], [50, 0], [50, 95], [-50, 95]]);
        trial.keys(&[("fold", "facial-only")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
