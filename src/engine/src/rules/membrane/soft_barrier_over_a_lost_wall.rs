//! Membrane: over a lost wall, use a stiff barrier or fix a soft one over a contour graft.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "soft-barrier-over-a-lost-wall",
    ledger: "membrane-titanium-reinforced",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!(
        "Over a lost wall, use a stiff barrier or fix a soft one over a contour graft."
    ),
    why: long!("A soft sheet with no wall behind it falls into the space that was to become bone."),
    mend: long!("Take a reinforced barrier, or fix the soft one over a contour layer."),
    scale: Scale::Situations(&[
        when("stiff", "a reinforced barrier keeps the space", Zone::Ideal),
        when(
            "soft-held",
            "a soft barrier is fixed over a contour layer that holds it up",
            Zone::Acceptable,
        ),
        when(
            "soft",
            "a soft barrier spans the lost wall with nothing to hold it up",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane, Decision::Fixation, Decision::ContourLayer],
    rests_on: &[],
    causes: &[Cause::MembraneLoose],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Windisch 2021, reinforced barriers, Clin Oral Investig",
            "Stiff barriers gained about 3.2 to 4.5 mm of height.",
        ),
        says(
            Source::Opinion,
            Status::FromMemory,
            "Benic and Hammerle 2014, horizontal augmentation, Periodontol 2000",
            "Defects that are not contained ask for a space-maintaining or fixed barrier.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let membrane = j.plan.membrane()?;
    if regeneration::is_contained(j.case) {
        return None;
    }
    let fixed = matches!(membrane.fixation, c::Fixation::Sutured | c::Fixation::Tacks);
    situation(if membrane.kind == c::MembraneKind::ReinforcedPtfe {
        "stiff"
    } else if fixed && regeneration::contour(j.plan).is_some() {
        "soft-held"
    } else {
        "soft"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::repaired;

    #[test]
    fn a_lost_wall_asks_for_a_stiff_or_a_held_barrier() {
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 180);
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("membrane", "reinforced-ptfe")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 0);
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("fixation", "tucked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn a_contained_defect_holds_a_soft_barrier_up() {
        assert_eq!(repaired().zone(&RULE), None);
    }
}
