//! Elective surgery waits after a stroke.

use crate::chart::RecentEvent;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "stroke-too-recent",
    ledger: "med-asa-and-events",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Let elective surgery wait three to nine months after a stroke."),
    why: long!(
        "A second stroke is most likely soon after the first, and swings in pressure invite it."
    ),
    mend: long!("Postpone the elective part and write to the physician."),
    scale: Scale::Bands(Bands {
        quantity: "time since the stroke",
        unit: "days",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(91.0, Zone::Debated).published(91.0, 274.0),
            Cut::from(274.0, Zone::Ideal).published(91.0, 274.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions { one: long!("three months."), other: long!("nine months.") }),
    reads: &[Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[says(
        Source::Textbook,
        Status::FromMemory,
        "textbook and cardiology guidance",
        "three to nine months after a stroke",
    )],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Some(RecentEvent::Stroke { days }) = judging.case.patient.event else {
        return None;
    };
    if ask::is_elective(judging.plan)? { number(f64::from(days)) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn three_and_nine_months_cut_the_scale() {
        for (days, zone) in [
            (90.0, Zone::Compromising),
            (91.0, Zone::Debated),
            (273.0, Zone::Debated),
            (274.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, days), zone, "{days}");
        }
    }

    #[test]
    fn a_heart_attack_is_counted_by_another_rule() {
        let mut trial = Trial::plain();
        trial.case.patient.event = Some(RecentEvent::Stroke { days: 40 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.case.patient.event = Some(RecentEvent::Infarction { days: 40 });
        assert_eq!(trial.zone(&RULE), None);
    }
}
