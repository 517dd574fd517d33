//! Graft: do not trust a fast-resorbing graft alone with a missing wall.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "fast-graft-alone-over-dehiscence",
    ledger: "graft-autograft",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Do not trust a fast-resorbing graft alone with a missing wall."),
    why: long!("It goes before the wall has formed, and up to half of the volume goes with it."),
    mend: long!("Choose or blend in a slowly resorbing material."),
    scale: Scale::Situations(&[
        when("slow", "a slowly resorbing material holds the place of the wall", Zone::Ideal),
        when(
            "fast-alone",
            "a fast-resorbing material stands alone in place of the wall",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial],
    rests_on: &[Fact::FacialWall],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Characteristics of 51 autologous grafts, onlay blocks",
            "Volume loss of 0 to 47 % at 4 months.",
        ),
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Araujo 2011, xenograft-collagen in the buccal gap, COIR",
            "A slowly resorbing filler kept a thicker and higher facial crest.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "blended mineralised allograft",
            "Mixed particle sizes give mixed resorption; the blend suits a facial defect beside an implant.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on autograft turnover",
            "Resorbs in about 3 to 6 months.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let graft = j.plan.graft_laid()?;
    if !regeneration::has_wall_defect(j.case) {
        return None;
    }
    let fast = matches!(
        graft.material,
        c::GraftMaterial::Autograft | c::GraftMaterial::DemineralisedAllograft
    );
    situation(if fast { "fast-alone" } else { "slow" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;

    #[test]
    fn own_bone_and_demineralised_bone_do_not_hold_a_wall_alone() {
        let mut trial = repaired();
        trial.keys(&[("graft-material", "autograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.keys(&[("graft-material", "demineralised-allograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn mineralised_blended_bovine_and_synthetic_do() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("graft-material", "allograft-blend")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("graft-material", "xenograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("graft-material", "synthetic")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn whole_walls_hold_the_place_themselves() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "autograft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
