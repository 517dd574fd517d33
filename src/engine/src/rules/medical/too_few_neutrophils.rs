//! No elective surgery below 1.0 x10^9 neutrophils.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "too-few-neutrophils",
    ledger: "med-immunosuppression",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Defer elective surgery while neutrophils are below 1.0 x10^9 a litre."),
    why: long!("Without white cells a small wound can become a blood infection."),
    mend: long!(
        "Postpone the elective part and manage the patient together with the haematologist."
    ),
    scale: Scale::Bands(Bands {
        quantity: "neutrophils",
        unit: "10^9 a litre",
        lowest: Zone::Unsafe,
        cuts: &[Cut::from(1.0, Zone::Ideal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Course],
    rests_on: &[Fact::Counts],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "\"Dental Treatment in Patients with Leukemia\" (table 2)",
            "platelets 50 or 60 and neutrophils 1.0 x10^9 a litre",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "\"Management Guidelines Relative to Invasive Dental Procedures\"",
            "no support needed above 60; an older version says 75",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let counts = judging.case.patient.bleeding.as_ref()?;
    if ask::is_elective(judging.plan)? { number(counts.neutrophils) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Bleeding;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn one_is_enough_and_just_less_is_not() {
        assert_eq!(zone_at(&RULE, 0.999), Zone::Unsafe);
        assert_eq!(zone_at(&RULE, 1.0), Zone::Ideal);
    }

    #[test]
    fn counts_matter_where_the_history_has_them() {
        let mut trial = Trial::plain();
        assert_eq!(trial.reading(&RULE), None);
        trial.case.patient.bleeding = Some(Bleeding { neutrophils: 0.7, platelets: 120.0 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }
}
