//! Closure and follow-up: close guided regeneration completely and without tension.

use crate::plan::Component;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "regeneration-left-open",
    ledger: "close-gbr-primary",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Close guided regeneration completely and without tension."),
    why: long!(
        "A barrier that is open to the mouth within the first weeks costs you part of the bone that it was to gain."
    ),
    mend: long!(
        "Release the flap and bring the edges together over the membrane, or use dense PTFE."
    ),
    scale: Scale::Situations(&[
        when("closed", "the edges were brought together over the regeneration", Zone::Ideal),
        when(
            "dense-open",
            "the regeneration lies open under dense PTFE, which tolerates it",
            Zone::Acceptable,
        ),
        when("custom-seal", "a customised abutment seals the repair in one stage", Zone::Debated),
        when(
            "open",
            "a barrier that does not tolerate the mouth was left open",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("Regeneration is closed completely."),
        other: long!("A customised abutment can seal a contained facial repair in one stage."),
    }),
    reads: &[Decision::Component, Decision::Membrane, Decision::Fold, Decision::Closure],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Wang and Boyapati 2006, four principles, Implant Dent",
            "Primary closure without tension; no gap at 2 weeks.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Eskan 2017, Int J Implant Dent",
            "The crest gained from 3.4 to 6.0 mm where closed and from 3.6 to 5.0 mm where exposed.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Lim 2018, complications of guided regeneration, IJOMI",
            "Complications in 16.8 % (10.6 to 25.4 %).",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let closure = j.plan.closure.as_ref()?;
    let membrane = j.plan.membrane()?;
    let with_implant = j.plan.implant_in_place().is_some();
    // A contained defect of a preserved socket is covered, not closed.
    let asked = with_implant || !regeneration::is_contained(j.case);
    if !regeneration::is_guided(j.case, j.plan) || !asked {
        return None;
    }
    let custom = j.plan.component() == Some(Component::CustomAbutment)
        && regeneration::resorbs(membrane.kind);
    situation(if closure.kind == c::ClosureKind::Primary {
        "closed"
    } else if membrane.kind == c::MembraneKind::DensePtfe {
        "dense-open"
    } else if custom && membrane.fold != c::Fold::OverOrifice {
        "custom-seal"
    } else {
        "open"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::{preserved, repaired};
    use crate::rules::trial::Trial;

    #[test]
    fn an_open_collagen_barrier_is_likely_to_compromise() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn dense_ptfe_tolerates_it_and_a_customised_seal_is_debated() {
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.keys(&[("closure", "open"), ("membrane", "dense-ptfe")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.keys(&[
            ("closure", "open"),
            ("component", "custom-abutment"),
            ("fold", "punched-around"),
        ]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }

    #[test]
    fn a_preserved_socket_with_whole_walls_is_not_regeneration() {
        assert_eq!(preserved().zone(&RULE), None);
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
