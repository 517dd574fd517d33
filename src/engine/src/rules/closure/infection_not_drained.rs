//! Closure and follow-up: an infected wound is seen on the day and drained.

use crate::events::{Infection, infected};
use crate::plan::choices::InfectionRescue;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "infection-not-drained",
    ledger: "rescue-infection",
    family: Family::Closure,
    step: Step::Review,
    skill: Skill::FollowingUp,
    statement: long!(
        "See an infected wound on the day, drain it and take out what is loose; give an antibiotic where it spreads."
    ),
    why: long!(
        "Pus under tension spreads, and no drug reaches a closed pocket or the surface of what is loose in it."
    ),
    mend: long!("Bring the patient in today, and keep the antibiotic for fever or spread."),
    scale: Scale::Situations(&[
        when("drained", "the infected wound was drained today", Zone::Ideal),
        when(
            "drained-and-covered",
            "the spreading infection was drained today and an antibiotic given",
            Zone::Ideal,
        ),
        when(
            "to-hospital",
            "the infected wound was drained, and the patient went to hospital though nothing spread",
            Zone::Acceptable,
        ),
        when(
            "drug-without-need",
            "an antibiotic was given beside drainage though nothing spread",
            Zone::Suboptimal,
        ),
        when(
            "spread-without-drug",
            "the spreading infection was drained and no antibiotic given",
            Zone::Compromising,
        ),
        when("drug-alone", "an antibiotic took the place of drainage", Zone::Compromising),
        when(
            "spread-not-seen",
            "the spreading infection was given a drug by telephone, and nobody saw it",
            Zone::Unsafe,
        ),
        when("waited", "the infected wound was left to the next review", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Infected],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Textbook teaching on the immediate implant in an extraction socket",
            "Pus: drain, debride, review; fever or swelling is seen on the day.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "case report in the same teaching",
            "With the implant taken out the infection was gone within 24 hours.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "textbooks of surgery of mouth and jaws",
            "Antibiotics are for spreading infection.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let answer = j.plan.rescue.infection?;
    answered(infected(j.m)?, answer)
}

fn answered(look: Infection, answer: InfectionRescue) -> Option<Reading> {
    use Infection::{Local, Spreading};
    use InfectionRescue::{AntibioticOnly, Drain, DrainAndAntibiotic, Hospital, Wait};
    situation(match (look, answer) {
        (Local, Drain) => "drained",
        (Spreading, DrainAndAntibiotic | Hospital) => "drained-and-covered",
        (Local, Hospital) => "to-hospital",
        (Local, DrainAndAntibiotic) => "drug-without-need",
        (Spreading, Drain) => "spread-without-drug",
        (Local, AntibioticOnly) => "drug-alone",
        (Spreading, AntibioticOnly) => "spread-not-seen",
        (_, Wait) => "waited",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Case;
    use crate::events::infection_in;
    use crate::rules::trial::Trial;

    #[test]
    fn what_is_local_is_drained_and_what_spreads_is_covered_too() {
        use InfectionRescue::{AntibioticOnly, Drain, DrainAndAntibiotic, Hospital, Wait};
        let zones = |look| {
            [Drain, DrainAndAntibiotic, Hospital, AntibioticOnly, Wait]
                .map(|answer| RULE.zone_of(answered(look, answer).unwrap()).unwrap())
        };
        use Zone::{Acceptable, Compromising, Ideal, Suboptimal, Unsafe};
        let local = [Ideal, Suboptimal, Acceptable, Compromising, Unsafe];
        assert_eq!(zones(Infection::Local), local);
        assert_eq!(zones(Infection::Spreading), [Compromising, Ideal, Ideal, Unsafe, Unsafe]);
    }

    #[test]
    fn a_clean_wound_asks_nothing_and_an_infected_one_is_judged() {
        let mut trial = Trial::plain();
        trial.keys(&[("debridement", "nothing")]);
        let cases = || (0..1000).map(|n| Case { title: n.to_string(), ..Trial::plain().case });
        trial.case = cases().find(|case| infection_in(&trial.draft, case).is_none()).unwrap();
        assert_eq!(trial.zone(&RULE), None);
        for look in [Infection::Local, Infection::Spreading] {
            trial.case = cases().find(|c| infection_in(&trial.draft, c) == Some(look)).unwrap();
            let proof = crate::cases::proof(&trial.case);
            assert!(proof.is_some(), "{look:?}");
            trial.keys(&[("infected-wound", "wait")]);
            assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe), "{look:?}");
        }
    }
}
