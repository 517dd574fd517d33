//! A wall that is missing is found before it is built upon.

use crate::anatomy::Wall;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "wall-loss-never-seen",
    ledger: "dx-recheck-after-extraction",
    family: Family::Diagnostics,
    step: Step::Extraction,
    skill: Skill::ReadingWalls,
    statement: long!("Find out about every wall before an implant or graft depends on it."),
    why: long!(
        "A missing oral wall, or a facial one under receded gum, changes the plan just as much as one under normal gum."
    ),
    mend: long!("Probe all four walls of the fresh socket."),
    scale: Scale::Situations(&[
        when("seen", "a wall is damaged, and you saw it", Zone::Ideal),
        when(
            "never-seen",
            "a wall is damaged, and nothing that you did could show it",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Examinations,
        Decision::SocketProbing,
        Decision::Course,
        Decision::AfterExtraction,
    ],
    rests_on: &[],
    causes: &[Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Caplanis 2009, extraction defects",
            "walls damaged and tissue lost are graded right after extraction",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "consensus conference 2023, statement 3",
            "all walls and the apex",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, known, .. } = *judging;
    plan.extraction.as_ref()?;
    if !ask::goes_beyond_extraction(plan.course()?) {
        return None;
    }
    let lost = |wall| case.site.defects_of(wall).next().is_some();
    // A facial loss under normal gum has a rule of its own.
    let receded = case.site.soft.margin_below_twin.get() > 0.0;
    let facts: Vec<Fact> =
        [(lost(Wall::Oral), Fact::OralWall), (lost(Wall::Facial) && receded, Fact::FacialWall)]
            .into_iter()
            .filter_map(|(lost, fact)| lost.then_some(fact))
            .collect();
    if facts.is_empty() {
        return None;
    }
    let seen = facts.iter().all(|fact| known.is_seen(*fact));
    situation(if seen { "seen" } else { "never-seen" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::geometry::Outline;
    use crate::rules::trial::Trial;

    fn without_oral_wall() -> Trial {
        let mut trial = Trial::plain();
        let outline = Outline::new(vec![[-20, -80], [20, -80], [20, -120], [-20, -120]]).unwrap();
        let kind = DefectKind::LostWall;
        trial.case.site.defects = vec![Defect { wall: Wall::Oral, kind, outline }];
        trial.keys(&[("examinations", "look film")]);
        trial
    }

    #[test]
    fn probing_the_facial_wall_does_not_show_the_oral_one() {
        let mut trial = without_oral_wall();
        trial.keys(&[("socket-probing", "facial-only")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("socket-probing", "all-walls")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn whole_walls_leave_nothing_to_miss() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
