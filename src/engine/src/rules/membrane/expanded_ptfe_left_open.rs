//! Membrane: leave only dense PTFE open to the mouth; close over expanded PTFE.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "expanded-ptfe-left-open",
    ledger: "membrane-dptfe-open",
    family: Family::Membrane,
    step: Step::Closure,
    skill: Skill::Covering,
    statement: long!("Leave only dense PTFE open to the mouth; close over expanded PTFE."),
    why: long!(
        "Expanded PTFE lets more through than dense PTFE, and what gets through reaches your graft."
    ),
    mend: long!("Close over it, or take dense PTFE."),
    scale: Scale::Situations(&[
        when("dense-open", "dense PTFE was left open over the socket", Zone::Ideal),
        when(
            "dense-closed",
            "dense PTFE was closed over, which it does not need",
            Zone::Acceptable,
        ),
        when("expanded-closed", "expanded PTFE was closed over", Zone::Ideal),
        when("expanded-open", "expanded PTFE was left open to the mouth", Zone::Suboptimal),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Membrane, Decision::Closure],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Hoffmann 2008, dense PTFE over 276 sockets, J Periodontol",
            "Dense PTFE was left exposed without primary closure.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Bartee 2001, J Oral Implantol",
            "Dense PTFE over sockets needs no primary closure.",
        ),
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Vroom 2022, permeability of dense and expanded PTFE, IJPRD",
            "The two differ in permeability.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let dense = match j.plan.membrane()?.kind {
        c::MembraneKind::DensePtfe => true,
        c::MembraneKind::ExpandedPtfe => false,
        _ => return None,
    };
    let closed = j.plan.closure.as_ref()?.kind == c::ClosureKind::Primary;
    situation(match (dense, closed) {
        (true, false) => "dense-open",
        (true, true) => "dense-closed",
        (false, true) => "expanded-closed",
        (false, false) => "expanded-open",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;

    #[test]
    fn dense_may_stay_open_and_expanded_may_not() {
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.keys(&[("membrane", "dense-ptfe"), ("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.keys(&[("membrane", "dense-ptfe")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 180);
        trial.keys(&[("membrane", "expanded-ptfe")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 180);
        trial.keys(&[("membrane", "expanded-ptfe"), ("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn collagen_has_other_rules() {
        assert_eq!(repaired().zone(&RULE), None);
    }
}
