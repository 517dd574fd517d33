//! Every wall of the fresh socket is probed before the plan goes on.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "socket-not-reprobed",
    ledger: "dx-recheck-after-extraction",
    family: Family::Diagnostics,
    step: Step::Extraction,
    skill: Skill::ReadingWalls,
    statement: long!("Probe all four walls and the apex of the fresh socket before you go on."),
    why: long!("The extraction itself can break a wall, and only now can you feel every one."),
    mend: long!("Probe all walls and the apex, then confirm or revise."),
    scale: Scale::Situations(&[
        when("all-walls", "all four walls and the apex were probed", Zone::Ideal),
        when("facial-only", "only the facial wall was probed", Zone::Suboptimal),
        when("not-probed", "the operation went on and no wall was probed", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::SocketProbing, Decision::Course, Decision::AfterExtraction],
    rests_on: &[],
    causes: &[Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Caplanis 2009, extraction defects",
            "the defect is graded accurately only right after extraction",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "consensus conference 2023, statement 3",
            "walls are assessed again after the extraction and the plan is revised",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let extraction = judging.plan.extraction.as_ref()?;
    let goes_on = match extraction.revision {
        c::Revision::ToPlaceToday | c::Revision::ToGraftAndReturn => true,
        c::Revision::CarryOn => ask::is_elective(judging.plan)?,
        _ => false,
    };
    if !goes_on {
        return None;
    }
    situation(match extraction.probing {
        c::SocketProbing::AllWalls => "all-walls",
        c::SocketProbing::FacialOnly => "facial-only",
        c::SocketProbing::Nothing => "not-probed",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn all_walls_are_asked_for_and_one_is_half_of_it() {
        let mut trial = Trial::plain();
        for (probing, zone) in [
            ("all-walls", Zone::Ideal),
            ("facial-only", Zone::Suboptimal),
            ("nothing", Zone::Compromising),
        ] {
            trial.keys(&[("socket-probing", probing)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{probing}");
        }
    }

    #[test]
    fn where_nothing_more_is_done_today_the_rule_is_silent() {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("socket-probing", "nothing")]);
        assert_eq!(trial.zone(&RULE), None);
        trial.keys(&[("after-extraction", "to-graft-and-return")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
