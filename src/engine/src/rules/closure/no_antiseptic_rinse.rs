//! Closure and follow-up: prescribe an antiseptic rinse while the site cannot be brushed.

use crate::chart::Allergy;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "no-antiseptic-rinse",
    ledger: "antiseptic-hygiene",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Prescribe an antiseptic rinse while the site cannot be brushed."),
    why: long!(
        "You keep the patient from brushing there, and plaque on a suture line disturbs its healing."
    ),
    mend: long!(
        "Prescribe chlorhexidine 0.12 to 0.2 % twice a day, or salt water where it is not tolerated."
    ),
    scale: Scale::Situations(&[
        when("rinse", "a rinse that this patient tolerates was prescribed", Zone::Ideal),
        when("salt-water", "salt water alone was prescribed", Zone::Suboptimal),
        when("none", "no rinse was prescribed", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Antiseptic],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "ridge preservation, trial protocol",
            "0.12 % twice a day for 10 days.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on rinse",
            "0.12 to 0.2 % twice a day.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let allergic = j.case.patient.allergies.contains(&Allergy::Chlorhexidine);
    situation(match j.plan.closure.as_ref()?.antiseptic {
        // An allergy that was passed over has a rule of its own.
        c::Antiseptic::Chlorhexidine if allergic => return None,
        c::Antiseptic::Chlorhexidine => "rinse",
        c::Antiseptic::SalineRinse if allergic => "rinse",
        c::Antiseptic::SalineRinse => "salt-water",
        c::Antiseptic::None => "none",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn without_a_rinse_the_plan_loses_a_little() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("antiseptic", "saline-rinse")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = Trial::plain();
        trial.keys(&[("antiseptic", "none")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn salt_water_is_right_where_chlorhexidine_is_not_tolerated() {
        let mut trial = Trial::plain();
        trial.case.patient.allergies.push(Allergy::Chlorhexidine);
        trial.keys(&[("antiseptic", "saline-rinse")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.case.patient.allergies.push(Allergy::Chlorhexidine);
        assert_eq!(trial.zone(&RULE), None);
    }
}
