//! Repairing a lost facial wall in one stage is an advanced alternative: who hands it on.

use crate::chart::Complaint;
use crate::rules::Level;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "advanced-repair-handed-on",
    ledger: "iip-facial-wall-defect",
    family: Family::Care,
    step: Step::Review,
    skill: Skill::Course,
    statement: long!(
        "Refer a site that shows and has lost its facial wall while you are a student; as a resident, know that teachers differ."
    ),
    why: long!(
        "Implant, contour and tissue in one operation are an advanced alternative, and the margin that shows does not forgive a first attempt."
    ),
    mend: long!("Graft and return, or return early with a contour graft, under supervision."),
    scale: Scale::Situations(&[
        when(
            "handed-on-as-a-student",
            "the site is referred at student level, its repair being an advanced alternative",
            Zone::Ideal,
        ),
        when(
            "handed-on-as-a-resident",
            "the site is referred at resident level, its repair being an advanced alternative",
            Zone::Debated,
        ),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("whoever learns the advanced alternative is referred the case, not refers it."),
        other: long!("a visible site with a lost wall goes to whoever repairs many of them."),
    }),
    reads: &[Decision::Course, Decision::AfterExtraction, Decision::AfterFlap],
    rests_on: &[Fact::FacialWall, Fact::SmileLine],
    causes: &[],
    evidence: &[
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "referring an advanced alternative is ideal at student level, debated at resident level",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2023, Compendium",
            "16 of 16 V and U defects stable at a mean of 6 years with contour graft and tissue graft",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    plan.returns.as_ref()?;
    let patient = &case.patient;
    // Where the patient or an infection is the reason, other rules judge the referral.
    let other_reason = ask::is_gate_shut(patient)
        || !patient.growth_complete
        || ask::is_acute(&case.site.lesion)
        || patient.complaint == Complaint::Restorable;
    if other_reason || !case.site.is_aesthetic() || plan.course()? != c::Course::Refer {
        return None;
    }
    ask::dehiscence(case)?;
    // Outside a set nobody says for whom the case is.
    situation(match case.local.level? {
        Level::Student => "handed-on-as-a-student",
        Level::Resident => "handed-on-as-a-resident",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{DefectKind, LipLine, Wall};
    use crate::rules::Local;
    use crate::rules::regeneration::defect;
    use crate::rules::trial::Trial;

    fn referred(level: Option<Level>) -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceU));
        trial.case.local = Local { level, ..Local::NONE }.into();
        trial.course("refer");
        trial
    }

    #[test]
    fn handing_on_is_ideal_for_a_student_debated_for_a_resident_and_not_judged_without_a_level() {
        assert_eq!(referred(Some(Level::Student)).zone(&RULE), Some(Zone::Ideal));
        assert_eq!(referred(Some(Level::Resident)).zone(&RULE), Some(Zone::Debated));
        assert_eq!(referred(None).zone(&RULE), None);
    }

    #[test]
    fn only_an_advanced_site_is_asked_about_and_only_who_hands_it_on() {
        let mut whole = referred(Some(Level::Student));
        whole.case.site.defects.clear();
        assert_eq!(whole.zone(&RULE), None);
        let mut hidden = referred(Some(Level::Student));
        hidden.case.site.soft.lip = LipLine::Low;
        assert_eq!(hidden.zone(&RULE), None);
        let mut staged = referred(Some(Level::Student));
        staged.course("graft-and-return");
        assert_eq!(staged.zone(&RULE), None);
        let mut growing = referred(Some(Level::Student));
        growing.case.patient.growth_complete = false;
        assert_eq!(growing.zone(&RULE), None);
    }
}
