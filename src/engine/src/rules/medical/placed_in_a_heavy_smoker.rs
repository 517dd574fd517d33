//! Heavy smoking is a reason to stage.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "placed-in-a-heavy-smoker",
    ledger: "med-smoking",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!("Stage the implant in a patient who smokes more than 20 cigarettes a day."),
    why: long!("Graft and implant at once ask most of a blood supply that has least to give."),
    mend: long!("Stage the implant, and advise to stop."),
    scale: Scale::Bands(Bands {
        quantity: "cigarettes smoked",
        unit: "a day",
        lowest: Zone::Acceptable,
        cuts: &[Cut::past(10.0, Zone::Suboptimal), Cut::past(20.0, Zone::Compromising)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("more than 20 a day multiplies failure by 2.48."),
        other: long!("the daily cut-offs are arbitrary."),
    }),
    reads: &[Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::ConfirmedSecondary,
            "Naseri 2020, J Clin Periodontol",
            "more than 20 a day: relative risk of failure 2.48",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Moraschini 2016, IJOMS",
            "any smoking: odds ratio 1.96 (1.68 to 2.30)",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let cigarettes = judging.case.patient.cigarettes;
    let intended = judging.plan.intention.as_ref()?.course;
    if cigarettes == 0 || intended != c::Course::PlaceToday {
        return None;
    }
    number(f64::from(cigarettes))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn ten_and_twenty_a_day_cut_the_scale() {
        for (cigarettes, zone) in [
            (10.0, Zone::Acceptable),
            (11.0, Zone::Suboptimal),
            (20.0, Zone::Suboptimal),
            (21.0, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, cigarettes), zone, "{cigarettes}");
        }
    }

    #[test]
    fn staging_is_what_is_asked() {
        let mut trial = Trial::plain();
        trial.case.patient.cigarettes = 25;
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), None);
    }
}
