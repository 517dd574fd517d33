//! Granulation tissue left in a socket that is to hold an implant or a graft.

use crate::plan::choices::{Course, Debridement};
use crate::rules::prelude::*;

/// Clear the socket of all granulation tissue and irrigate it before anything goes in.
pub(super) static RULE: Rule = Rule {
    id: "socket-not-debrided",
    ledger: "socket-debridement",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Extracting,
    statement: long!(
        "Clear the socket of all granulation tissue and irrigate it before anything goes in."
    ),
    why: long!(
        "Tissue that you leave behind keeps bone from growing against graft or implant, and keeps alive what made the lesion."
    ),
    mend: long!("Curette every wall and the apex, then irrigate."),
    scale: Scale::Situations(&[
        when("cleared", "the socket is curetted and irrigated", Zone::Ideal),
        when("rinsed", "the socket is rinsed but not curetted", Zone::Compromising),
        when("untouched", "the tissue in the socket is left where it is", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Debridement, Decision::Course, Decision::AfterExtraction],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::Partly,
            "Darby 2008, review of ridge preservation",
            "Debridement of the socket is recommended; opening the marrow is disputed.",
        ),
        says(
            Source::Textbook,
            Status::Partly,
            "textbook",
            "All granulation tissue is removed before an implant or a graft, above all with a chronic lesion.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let done = j.plan.extraction.as_ref()?;
    if !matches!(j.plan.course()?, Course::PlaceToday | Course::GraftAndReturn) {
        return None;
    }
    Some(Reading::Situation(match done.debridement {
        Debridement::CuretteAndIrrigate => "cleared",
        Debridement::Rinse => "rinsed",
        Debridement::Nothing => "untouched",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn rinsing_alone_does_not_clear_a_socket() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        for debridement in ["rinse", "nothing"] {
            trial.keys(&[("debridement", debridement)]);
            assert_eq!(trial.zone(&RULE), Some(Zone::Compromising), "{debridement}");
        }
    }

    #[test]
    fn it_is_asked_where_something_goes_into_the_socket() {
        let mut trial = Trial::plain();
        trial
            .keys(&[("debridement", "rinse"), ("after-extraction", "to-let-heal")])
            .number(Decision::PlaceAfter, 16);
        assert_eq!(trial.zone(&RULE), None);
    }
}
