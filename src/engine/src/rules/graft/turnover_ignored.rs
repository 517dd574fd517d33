//! Graft: return when the graft has had time to turn over.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "turnover-ignored",
    ledger: "graft-turnover-time",
    family: Family::Graft,
    step: Step::ReEntry,
    skill: Skill::Grafting,
    statement: long!("Return when the graft has had time to turn over."),
    why: long!("Drill too soon and you meet loose grains instead of bone."),
    mend: long!(
        "Return later: from 3 months for own and demineralised bone, from 4 for mineralised bone."
    ),
    scale: Scale::Situations(&[
        when("in-time", "the material has had its shortest turnover", Zone::Ideal),
        when("between", "mineralised human bone is entered between 3 and 4 months", Zone::Debated),
        when(
            "too-early",
            "the site is entered before the shortest turnover of the material",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Wait the four months that mineralised bone is given."),
        other: long!("Three months did as well as four in a trial."),
    }),
    reads: &[
        Decision::GraftMaterial,
        Decision::PlaceAfter,
        Decision::HealedAct,
        Decision::WaitFor,
        Decision::AgainAct,
        Decision::WaitForLast,
    ],
    rests_on: &[],
    causes: &[Cause::EnteredTooSoon],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "Moghaddas 2022, mineralised allograft at 3 against 4 months",
            "No difference between 3 and 4 months.",
        ),
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Use of grafting materials in sinus floor elevation",
            "Mineralised bone turns over more slowly than demineralised bone.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "textbooks on turnover by material",
            "Own bone and demineralised bone 3 to 6 months, mineralised 4 to 12, calcium phosphate 4 to 12, bovine bone years.",
        ),
    ],
    measure,
};

/// Three and four months in whole weeks.
const THREE_MONTHS: i32 = 13;
const FOUR_MONTHS: i32 = 17;

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::GraftMaterial as Of;
    let weeks = j.plan.later.decided()?.after;
    let mineralised = match j.plan.graft_laid()?.material {
        Of::Autograft | Of::DemineralisedAllograft => {
            return situation(if weeks < THREE_MONTHS { "too-early" } else { "in-time" });
        }
        Of::MineralisedAllograft | Of::AllograftBlend => FOUR_MONTHS,
        // These stay for years: the wait is for ingrowth, which another rule judges.
        Of::NoGraft | Of::Xenograft | Of::Synthetic => return None,
    };
    situation(if weeks >= mineralised {
        "in-time"
    } else if weeks >= THREE_MONTHS {
        "between"
    } else {
        "too-early"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::preserved;

    #[test]
    fn fast_materials_need_three_months() {
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 12);
        trial.keys(&[("graft-material", "autograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 13);
        trial.keys(&[("graft-material", "autograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn mineralised_bone_between_three_and_four_months_is_debated() {
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 12);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 13);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 16);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 17);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn waiting_longer_is_never_a_fault_and_bovine_bone_has_no_turnover_to_wait_for() {
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 60);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = preserved();
        trial.number(Decision::PlaceAfter, 12);
        trial.keys(&[("graft-material", "xenograft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
