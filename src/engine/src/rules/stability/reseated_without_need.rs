//! A second implant in the place of the first.

use crate::rules::prelude::*;
use crate::units::comparable;

/// Seat a longer or wider implant in place of one that turns, once; leave one that holds.
pub(super) static RULE: Rule = Rule {
    id: "reseated-without-need",
    ledger: "rescue-no-stability",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!(
        "Seat a longer or wider implant in place of one that turns, once; leave one that holds."
    ),
    why: long!(
        "Each seating spends bone of the bed: worth it once where nothing holds, lost where something did."
    ),
    mend: long!("Leave the implant that holds, and choose the component by its torque."),
    scale: Scale::Situations(&[
        when("corrected", "the implant that turned gave way to one that holds", Zone::Ideal),
        when("tried", "the second implant turns as the first did", Zone::Acceptable),
        when("without-need", "an implant that held gave way to a second one", Zone::Suboptimal),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::SeatingAct],
    rests_on: &[Fact::SeatingTorque],
    causes: &[],
    evidence: &[says(
        Source::Opinion,
        Status::Confirmed,
        "Al-Sabbagh 2019, Dent Clin North Am",
        "A spinning implant is corrected once within limits, else removed or submerged, and never given a provisional.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.seating.as_ref()?;
    situation(j.m.first_torque()?.get(), j.m.seating_torque()?.get())
}

/// Below 10 Ncm an implant is taken to turn, as everywhere here.
fn situation(first: f64, second: f64) -> Option<Reading> {
    Some(Reading::Situation(match (comparable(first) < 10.0, comparable(second) < 10.0) {
        (false, _) => "without-need",
        (true, false) => "corrected",
        (true, true) => "tried",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn ten_newton_centimetres_part_what_turns_from_what_holds() {
        let said = |first, second| RULE.zone_of(situation(first, second).unwrap());
        assert_eq!(said(9.999, 10.0), Some(Zone::Ideal));
        assert_eq!(said(9.999, 9.999), Some(Zone::Acceptable));
        assert_eq!(said(10.0, 30.0), Some(Zone::Suboptimal));
        assert_eq!(said(10.001, 9.0), Some(Zone::Suboptimal));
    }

    #[test]
    fn the_second_is_judged_against_the_first() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        for act in ["seat-wider", "seat-longer"] {
            trial.keys(&[("seating-act", act)]);
            assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
            let plan = trial.plan();
            let implant = plan.implant.as_ref().unwrap();
            let sizes = [implant.diameter.get(), implant.length.get()];
            assert_eq!(sizes, if act == "seat-wider" { [4.5, 13.0] } else { [4.0, 15.0] });
            let case = trial.case.clone();
            let m = crate::measure::Measurements::of(&case, &plan);
            trial.keys(&[("seating-act", "leave")]);
            let before = trial.plan();
            let first = crate::measure::Measurements::of(&trial.case, &before);
            assert_eq!(m.first_torque(), first.seating_torque());
            assert!(m.estimated_torque().unwrap() > first.estimated_torque().unwrap());
        }
    }
}
