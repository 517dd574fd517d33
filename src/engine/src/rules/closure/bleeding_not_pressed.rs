//! Closure and follow-up: press what bleeds again for 20 minutes without a break.

use crate::plan::choices::BleedRescue;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "bleeding-not-pressed",
    ledger: "rescue-simple-bleed",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!(
        "Press what bleeds again for 20 minutes without a break, and pack and suture what still bleeds."
    ),
    why: long!(
        "A clot forms under pressure that nobody lifts; rinsing washes it out, and at home nobody looks."
    ),
    mend: long!("Press, look again, and let nobody go home bleeding."),
    scale: Scale::Situations(&[
        when("pressed", "what bled again was pressed until it stopped", Zone::Ideal),
        when("rinsed", "what bled again was rinsed", Zone::Compromising),
        when("sent-home", "the patient was sent home bleeding", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::BleedsAgain],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "Postextraction problems, handbook, and a dental haemorrhage page",
            "Unbroken pressure for at least 20 minutes, in one text for an hour.",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "guideline teaching on escalation",
            "What still bleeds after 30 minutes is escalated.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.rescue.bleed? {
        BleedRescue::Press => "pressed",
        BleedRescue::Rinse => "rinsed",
        BleedRescue::SendHome => "sent-home",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Case;
    use crate::events::bleeding_in;
    use crate::rules::trial::Trial;

    #[test]
    fn what_stays_dry_asks_nothing_and_what_bleeds_is_pressed() {
        let mut trial = Trial::plain();
        let cases = || (0..1000).map(|n| Case { title: n.to_string(), ..Trial::plain().case });
        trial.case = cases().find(|case| !bleeding_in(&trial.draft, case)).unwrap();
        assert_eq!(trial.zone(&RULE), None);
        trial.case = cases().find(|case| bleeding_in(&trial.draft, case)).unwrap();
        for (answer, zone) in
            [("press", Zone::Ideal), ("rinse", Zone::Compromising), ("send-home", Zone::Unsafe)]
        {
            trial.keys(&[("bleeds-again", answer)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{answer}");
        }
    }
}
