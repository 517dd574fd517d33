//! No surgery at an INR of 4 or more.

use crate::chart::Anticoagulant;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "inr-beyond-the-limit",
    ledger: "med-warfarin-type",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Operate under a vitamin K antagonist only while the INR is below 4."),
    why: long!("Below 4 local measures hold the bleeding. From 4 on they may not."),
    mend: long!(
        "Postpone the operation and let the prescriber bring the INR down; do not stop the drug yourself."
    ),
    scale: Scale::Bands(Bands {
        quantity: "INR",
        unit: "",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(3.0, Zone::Debated).published(3.0, 3.5), Cut::from(4.0, Zone::Unsafe)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("below 4 single or few sites are operated on with local measures."),
        other: long!("for larger grafts 3 to 3.5 is the most."),
    }),
    reads: &[Decision::Course, Decision::Today],
    rests_on: &[Fact::Inr],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "SDCEP 2022, anticoagulants and antiplatelets, 2nd edition",
            "operate below an INR of 4, measured within 24 hours (72 if stable)",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Pototski & Amenabar 2007, J Oral Sci",
            "the drug goes on, with local measures",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "habit for larger grafts",
            "many want an INR of 3 to 3.5 at most",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Some(Anticoagulant::VitaminK { inr }) = judging.case.patient.anticoagulant else {
        return None;
    };
    if ask::tooth_comes_out(judging.plan)? { number(inr) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn three_opens_the_debate_and_four_ends_it() {
        for (inr, zone) in [
            (2.8, Zone::Ideal),
            (3.0, Zone::Ideal),
            (3.001, Zone::Debated),
            (3.999, Zone::Debated),
            (4.0, Zone::Unsafe),
            (4.4, Zone::Unsafe),
        ] {
            assert_eq!(zone_at(&RULE, inr), zone, "{inr}");
        }
    }

    #[test]
    fn it_is_read_where_a_tooth_comes_out() {
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 4.4 });
        trial.course("let-heal");
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(4.4)));
        trial.course("postpone");
        assert_eq!(trial.reading(&RULE), None);
    }
}
