//! No elective surgery below 50 x10^9 platelets.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "too-few-platelets",
    ledger: "med-immunosuppression",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Defer elective surgery while platelets are below 50 x10^9 a litre."),
    why: long!("Below that the first plug does not form, and pressure alone will not make it."),
    mend: long!(
        "Postpone the elective part and manage the patient together with the haematologist."
    ),
    scale: Scale::Bands(Bands {
        quantity: "platelets",
        unit: "10^9 a litre",
        lowest: Zone::Unsafe,
        cuts: &[
            Cut::from(50.0, Zone::Debated).published(50.0, 75.0),
            Cut::from(75.0, Zone::Ideal).published(50.0, 75.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("50 is enough."),
        other: long!("60, or 75 by an older version, is asked for without support."),
    }),
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
    if ask::is_elective(judging.plan)? { number(counts.platelets) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Bleeding;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn fifty_and_seventy_five_cut_the_scale() {
        for (platelets, zone) in [
            (49.999, Zone::Unsafe),
            (50.0, Zone::Debated),
            (74.999, Zone::Debated),
            (75.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, platelets), zone, "{platelets}");
        }
    }

    #[test]
    fn postponing_leaves_nothing_to_read() {
        let mut trial = Trial::plain();
        trial.case.patient.bleeding = Some(Bleeding { neutrophils: 2.0, platelets: 38.0 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.course("postpone");
        assert_eq!(trial.zone(&RULE), None);
    }
}
