//! A membrane that lies bare, and gum sewn over it again.

use crate::events::exposed_membrane;
use crate::plan::choices::ExposureRescue;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "bare-membrane-covered-again",
    ledger: "rescue-membrane-exposure",
    family: Family::Membrane,
    step: Step::Review,
    skill: Skill::Covering,
    statement: long!("Do not sew the gum over a membrane that lies bare."),
    why: long!(
        "The edge that opened is thin and swollen and opens again, and until then what grew on the membrane is shut in with your graft."
    ),
    mend: long!("Leave the gum as it is: rinse and watch the membrane, or take it out."),
    scale: Scale::Situations(&[
        when("left", "the gum is left as it is over the bare membrane", Zone::Ideal),
        when("covered-again", "the gum is sewn over the bare membrane again", Zone::Compromising),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::BareMembrane],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::Cohort,
        Status::Confirmed,
        "case report, F1000 2018",
        "Closing over an exposed membrane again is unpredictable.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let answer = j.plan.rescue.exposure?;
    exposed_membrane(j.m)?;
    situation(match answer {
        ExposureRescue::CoverAgain => "covered-again",
        ExposureRescue::RinseAndKeep | ExposureRescue::Remove => "left",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Case;
    use crate::events::exposure_in;
    use crate::rules::regeneration::repaired;

    #[test]
    fn sewing_over_it_again_is_a_fault_and_rinsing_or_taking_it_out_is_none() {
        let mut trial = repaired();
        trial.keys(&[("closure", "primary"), ("periosteal-release", "no")]);
        let cases = || (0..1000).map(|n| Case { title: n.to_string(), ..repaired().case });
        trial.case = cases().find(|case| exposure_in(&trial.draft, case).is_none()).unwrap();
        assert_eq!(trial.zone(&RULE), None);
        trial.case = cases().find(|case| exposure_in(&trial.draft, case).is_some()).unwrap();
        for (answer, zone) in [
            ("rinse-and-keep", Zone::Ideal),
            ("remove", Zone::Ideal),
            ("cover-again", Zone::Compromising),
        ] {
            trial.keys(&[("bare-membrane", answer)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{answer}");
        }
    }
}
