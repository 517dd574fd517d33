//! Elective surgery waits after a heart attack.

use crate::chart::RecentEvent;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "heart-attack-too-recent",
    ledger: "med-asa-and-events",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Let elective surgery wait at least 60 days after a heart attack."),
    why: long!(
        "A healing heart takes pain and adrenaline badly. Two months later most of that danger is over."
    ),
    mend: long!("Postpone the elective part and write to the physician."),
    scale: Scale::Bands(Bands {
        quantity: "time since the heart attack",
        unit: "days",
        lowest: Zone::Unsafe,
        cuts: &[
            Cut::from(60.0, Zone::Debated).published(60.0, 180.0),
            Cut::from(180.0, Zone::Ideal).published(60.0, 180.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("60 days, by present cardiology."),
        other: long!("six months, by the classic rule."),
    }),
    reads: &[Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "\"When Is It Safe to Operate Following Myocardial Infarction?\" (2016 best practice)",
            "60 days or more",
        ),
        says(Source::Textbook, Status::FromMemory, "textbook teaching", "six months"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Some(RecentEvent::Infarction { days }) = judging.case.patient.event else {
        return None;
    };
    if ask::is_elective(judging.plan)? { number(f64::from(days)) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn sixty_days_and_six_months_cut_the_scale() {
        for (days, zone) in [
            (59.0, Zone::Unsafe),
            (60.0, Zone::Debated),
            (179.0, Zone::Debated),
            (180.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, days), zone, "{days}");
        }
    }

    #[test]
    fn urgent_care_is_not_elective() {
        let mut trial = Trial::plain();
        trial.case.patient.event = Some(RecentEvent::Infarction { days: 20 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.course("postpone").keys(&[("today", "extract")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
