//! A late implant that moves, left to carry something.

use crate::plan::Seating;
use crate::rules::prelude::*;

/// Judged as its twin for an implant of the day.
pub(super) static RULE: Rule = Rule {
    id: "late-loose-implant-left",
    ledger: "iip-stability-gate",
    family: Family::Stability,
    step: Step::LatePlacement,
    skill: Skill::Stability,
    statement: long!("Submerge an implant that finds no hold in a healed ridge."),
    why: long!(
        "You came back for bone to stand in. Where the implant still turns, a part through the gum keeps it turning."
    ),
    mend: long!("Close the gum over it with a cover screw, and give it the longer time."),
    scale: super::loose_implant_left::RULE.scale,
    agreement: Agreement::Agreed,
    positions: super::loose_implant_left::RULE.positions,
    reads: &[Decision::LateComponent],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: super::loose_implant_left::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let component = j.plan.later.placement.as_ref()?.component;
    let torque = j.m.late_torque()?.get();
    super::loose_implant_left::situation(torque, &Seating::Stays(component.into()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn what_turns_is_submerged_and_what_holds_may_carry_an_abutment() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.case.site.density.hu = 20.0;
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        trial.keys(&[("late-component", "healing-abutment")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
