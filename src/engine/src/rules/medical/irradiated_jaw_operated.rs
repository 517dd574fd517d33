//! No routine surgery in a jaw inside a high-dose field.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "irradiated-jaw-operated",
    ledger: "med-radiotherapy",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Refer a patient whose jaw received 50 Gy or more at the site."),
    why: long!(
        "Irradiated bone has lost vessels and may die after a wound. The risk stays for life."
    ),
    mend: long!("Refer to a specialist or hospital."),
    scale: Scale::Bands(Bands {
        quantity: "dose at the site",
        unit: "Gy",
        lowest: Zone::Acceptable,
        cuts: &[
            Cut::from(50.0, Zone::Debated).published(50.0, 60.0),
            Cut::from(60.0, Zone::Unsafe).published(50.0, 60.0),
        ],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("from 50 Gy at the site the risk is high, for life."),
        other: long!(
            "60 Gy is the line, and waiting 6 to 12 months is usual; implants survive in 91.9 %."
        ),
    }),
    reads: &[Decision::Course, Decision::Today],
    rests_on: &[Fact::RadiationDose],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "ISOO-MASCC-ASCO 2024, \"Prevention and Management of Osteoradionecrosis in Patients With Head and Neck Cancer Treated With Radiation Therapy\"",
            "50 Gy or more is high risk, lifelong",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Toneatti 2021, Clin Oral Investig",
            "survival 91.9 against 97 %; bone death in 3 %",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "waiting after radiotherapy",
            "6 to 12 months; the range of the limit is 50 to 60 Gy",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let past = judging.case.patient.radiotherapy.as_ref()?;
    if ask::tooth_comes_out(judging.plan)? { number(past.gray_at_site) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Radiotherapy;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn fifty_and_sixty_gray_cut_the_scale() {
        for (gray, zone) in [
            (49.999, Zone::Acceptable),
            (50.0, Zone::Debated),
            (59.999, Zone::Debated),
            (60.0, Zone::Unsafe),
        ] {
            assert_eq!(zone_at(&RULE, gray), zone, "{gray}");
        }
    }

    #[test]
    fn referring_leaves_nothing_to_read() {
        let mut trial = Trial::plain();
        trial.case.patient.radiotherapy =
            Some(Radiotherapy { gray_at_site: 62.0, years_since: 3.0 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.course("refer");
        assert_eq!(trial.zone(&RULE), None);
    }
}
