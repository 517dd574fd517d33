//! Uncover a submerged implant when its bone has healed.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "uncovered-too-early",
    ledger: "load-healing-time",
    family: Family::Closure,
    step: Step::Uncovering,
    skill: Skill::FollowingUp,
    statement: long!("Uncover a submerged implant when the bone around it has had its time."),
    why: long!("What was put under the gum for peace is disturbed, and the graft over it opened."),
    mend: long!(
        "Uncover after 12 weeks, after 16 over regeneration, after 9 in a lower jaw without graft."
    ),
    scale: Scale::Situations(&[
        when("in-time", "the bone has had its time", Zone::Ideal),
        when("between", "uncovered between 6 weeks and the usual time", Zone::Debated),
        when("too-early", "uncovered before any source would", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Wait three months in the upper jaw or beside a graft, two in the lower."),
        other: long!("Six to eight weeks will do for a stable implant with a rough surface."),
    }),
    reads: &[
        Decision::Component,
        Decision::HealedAct,
        Decision::AgainAct,
        Decision::LastAct,
        Decision::LateComponent,
        Decision::GraftMaterial,
        Decision::UncoverAfter,
    ],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "Gallucci 2018, placement and loading protocols, COIR",
            "Conventional healing is more than two months unloaded.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Immediate temporization of immediate implants in the esthetic zone, 30 implants",
            "Implants with grafted gaps were ready at 12 weeks.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "dehydrothermally cross-linked membrane around dehiscences, trial",
            "Re-entry after regeneration at 16 weeks.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Linares 2023, review",
            "6 to 8 weeks are accepted for stable rough surfaces.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let weeks = j.plan.later.uncovering.as_ref()?.after;
    let upper = j.case.site.tooth.jaw() == Jaw::Maxilla;
    let (least, usual) = match regeneration::heals_over(j.case, j.plan) {
        regeneration::Over::Regeneration => (16, 16),
        regeneration::Over::Graft => (6, 12),
        regeneration::Over::Bone if upper => (6, 12),
        regeneration::Over::Bone => (6, 9),
    };
    situation(match weeks {
        weeks if weeks >= usual => "in-time",
        weeks if weeks >= least => "between",
        _ => "too-early",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::{lower, repaired};
    use crate::rules::trial::Trial;

    fn at(mut trial: Trial, weeks: i32) -> Option<Zone> {
        trial.keys(&[("component", "cover-screw")]).number(Decision::UncoverAfter, weeks);
        trial.zone(&RULE)
    }

    #[test]
    fn each_kind_of_site_has_its_own_time() {
        let lower = || {
            let mut trial = lower(Trial::plain());
            trial.keys(&[("graft-material", "no-graft")]);
            trial
        };
        for (trial, weeks, zone) in [
            (Trial::plain(), 5, Zone::Suboptimal),
            (Trial::plain(), 6, Zone::Debated),
            (Trial::plain(), 11, Zone::Debated),
            (Trial::plain(), 12, Zone::Ideal),
            (Trial::plain(), 13, Zone::Ideal),
            (Trial::plain(), 60, Zone::Ideal),
            (repaired(), 15, Zone::Suboptimal),
            (repaired(), 16, Zone::Ideal),
            (repaired(), 17, Zone::Ideal),
            (lower(), 8, Zone::Debated),
            (lower(), 9, Zone::Ideal),
            (lower(), 10, Zone::Ideal),
        ] {
            assert_eq!(at(trial, weeks), Some(zone), "{weeks}");
        }
    }

    #[test]
    fn what_stands_through_the_gum_is_not_uncovered() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
