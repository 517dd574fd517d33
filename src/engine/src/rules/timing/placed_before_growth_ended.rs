//! No implant before facial growth is finished.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "placed-before-growth-ended",
    ledger: "growth-complete",
    family: Family::Timing,
    step: Step::Implant,
    skill: Skill::Patient,
    statement: long!(
        "Wait with an implant until serial records show that facial growth is finished."
    ),
    why: long!(
        "An implant does not move with growing bone. It stays behind in the arch while the teeth beside it go on erupting."
    ),
    mend: long!(
        "Ask for serial growth records and replace the tooth without an implant until they are stable."
    ),
    scale: Scale::Situations(&[
        when("waited", "growth is not finished and no implant was placed", Zone::Ideal),
        when(
            "placed-on-records",
            "an implant was placed in a young patient whose records show finished growth",
            Zone::Ideal,
        ),
        when(
            "placed-on-age-alone",
            "growth is finished, but the implant rests on the age alone: no records were asked for",
            Zone::Suboptimal,
        ),
        when(
            "placed-in-a-growing-jaw",
            "an implant was placed before growth was finished",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Requests,
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::Diameter,
    ],
    rests_on: &[Fact::History, Fact::Growth],
    causes: &[Cause::PatientNotCleared, Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "\"Predicting Growth Patterns In Younger Individuals Is Important For Timing Implant Placement\"",
            "growth becomes clinically small only after about 20 years",
        ),
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "\"Dental implants, growth of the jaws, and determination of skeletal maturity\"",
            "maturity is judged on serial films, not on age",
        ),
    ],
    measure,
};

/// Up to this age records are asked for: the upper end of the usual 18 to 21 years.
const YOUNG: u8 = 21;

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let patient = &judging.case.patient;
    if patient.age > YOUNG && patient.growth_complete {
        return None;
    }
    let placed = ask::placed(judging.plan)?;
    let records = judging.plan.chart.as_ref()?.requests.has(c::Request::GrowthRecords);
    situation(match (placed, patient.growth_complete, records) {
        (false, true, _) => return None,
        (false, false, _) => "waited",
        (true, false, _) => "placed-in-a-growing-jaw",
        (true, true, true) => "placed-on-records",
        (true, true, false) => "placed-on-age-alone",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn aged(age: u8, growth_complete: bool) -> Trial {
        let mut trial = Trial::plain();
        trial.case.patient.age = age;
        trial.case.patient.growth_complete = growth_complete;
        trial
    }

    #[test]
    fn a_growing_jaw_is_no_place_for_an_implant() {
        assert_eq!(aged(17, false).zone(&RULE), Some(Zone::Compromising));
        let mut waiting = aged(17, false);
        waiting.course("removable");
        assert_eq!(waiting.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn up_to_twenty_one_records_are_asked_for_and_from_twenty_two_they_are_not() {
        assert_eq!(aged(21, true).zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(aged(22, true).zone(&RULE), None);
        let mut asked = aged(21, true);
        asked.keys(&[("requests", "allergies growth-records")]);
        assert_eq!(asked.zone(&RULE), Some(Zone::Ideal));
    }
}
