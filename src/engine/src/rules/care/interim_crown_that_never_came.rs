//! What the patient wears meanwhile is really there.

use crate::plan::Component;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "interim-crown-that-never-came",
    ledger: "care-interim",
    family: Family::Care,
    step: Step::Seating,
    skill: Skill::FollowingUp,
    statement: long!("Let what the patient wears meanwhile agree with what stands on the implant."),
    why: long!("A crown on the implant was promised. Without one the patient leaves with a gap."),
    mend: long!(
        "Plan a bonded tooth as the fallback, or seat the provisional where the torque allows it."
    ),
    scale: Scale::Situations(&[
        when("agrees", "what is worn meanwhile agrees with the part on the implant", Zone::Ideal),
        when(
            "promised-and-missing",
            "a crown on the implant was planned, and no crown stands there",
            Zone::Suboptimal,
        ),
        when(
            "two-crowns",
            "a provisional stands on the implant beside another interim tooth",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Interim, Decision::Component, Decision::SeatingAct],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "habit of the trade",
            "an interim tooth is ready whatever the torque turns out to be",
        ),
        says(Source::Ours, Status::Ours, "this project", "both choices are read together"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let worn = judging.plan.intention.as_ref()?.interim?;
    let crowned = matches!(judging.plan.component()?, Component::Provisional(_));
    situation(match (worn, crowned) {
        (c::Interim::OnImplant, false) => "promised-and-missing",
        (c::Interim::OnImplant | c::Interim::Nothing, true) | (_, false) => "agrees",
        (_, true) => "two-crowns",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_promised_crown_is_seated_or_replaced_by_something_else() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("interim", "on-implant")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("component", "provisional"), ("provisional-contacts", "none")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("interim", "bonded")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
