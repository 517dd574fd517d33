//! Elective surgery waits while diabetes is poorly controlled.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "sugar-poorly-controlled",
    ledger: "med-diabetes",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Defer elective implants and grafts while the HbA1c is above 8 %."),
    why: long!(
        "Above 8 % wounds close late and integration slows. Below it implants do about as well as in anyone."
    ),
    mend: long!(
        "Postpone the elective part, write to the physician, and treat infection and pain today."
    ),
    scale: Scale::Bands(Bands {
        quantity: "HbA1c",
        unit: "%",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(7.0, Zone::Acceptable), Cut::past(8.0, Zone::Compromising)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("above 8 % elective surgery waits."),
        other: long!("HbA1c alone should not gate care."),
    }),
    reads: &[Decision::Course],
    rests_on: &[Fact::Hba1c],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Wagner 2022, Int J Implant Dent",
            "92.6 to 100 % survival in the first 3 years below 8 %",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Tan 2021, dose-response, J Evid Based Dent Pract",
            "slower integration above 8 % (which of the two says so is from memory)",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Nourah, Curr Diabetes Rev",
            "HbA1c alone should not gate care",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let sugar = judging.case.patient.sugar.as_ref()?;
    if ask::is_elective(judging.plan)? { number(sugar.hba1c) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Sugar;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn seven_and_eight_percent_cut_the_scale() {
        for (hba1c, zone) in [
            (7.0, Zone::Ideal),
            (7.001, Zone::Acceptable),
            (8.0, Zone::Acceptable),
            (8.001, Zone::Compromising),
            (9.5, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, hba1c), zone, "{hba1c}");
        }
    }

    #[test]
    fn a_diseased_tooth_comes_out_whatever_the_sugar() {
        let mut trial = Trial::plain();
        trial.case.patient.sugar = Some(Sugar { hba1c: 9.5 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.course("let-heal");
        assert_eq!(trial.zone(&RULE), None);
    }
}
