//! The gums are looked at before an elective implant.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "gum-score-not-taken",
    ledger: "med-periodontitis",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Take plaque and bleeding of the whole mouth before an elective implant."),
    why: long!("One bad tooth draws the eye. The other gums decide how long the implant lasts."),
    mend: long!("Ask for plaque and bleeding of the whole mouth."),
    scale: Scale::Situations(&[
        when("taken", "plaque and bleeding of the whole mouth were taken", Zone::Ideal),
        when(
            "not-taken",
            "an elective implant or graft is planned without a look at the other gums",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Requests, Decision::Course],
    rests_on: &[Fact::BleedingScore],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Hamilton 2023, \"Selection Criteria for Immediate Implant Placement\"",
            "active periodontitis is a selection factor in 54 studies",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "taking it is part of clearing the patient",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    let taken = judging.plan.chart.as_ref()?.requests.has(c::Request::PlaqueAndBleeding);
    situation(if taken { "taken" } else { "not-taken" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn an_implant_asks_for_the_whole_mouth() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("requests", "allergies blood-pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.course("bridge");
        assert_eq!(trial.zone(&RULE), None);
    }
}
