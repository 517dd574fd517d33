//! A referral goes to who can help.

use crate::anatomy::Lesion;
use crate::chart::Antiresorptive;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "referred-to-the-wrong-place",
    ledger: "care-referral",
    family: Family::Care,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!(
        "Refer to who can help: hospital for spread, the physician for a medical reason, a specialist for bone that cannot heal."
    ),
    why: long!("A letter to the wrong address costs the days that the patient does not have."),
    mend: long!("Choose the address that fits the reason."),
    scale: Scale::Situations(&[
        when("right-address", "the patient goes to who can help", Zone::Ideal),
        when("not-referred", "the patient waits here and needs no referral", Zone::Acceptable),
        when(
            "another-address",
            "the patient goes to an address that does not fit the reason",
            Zone::Suboptimal,
        ),
        when(
            "to-nobody",
            "the course is to refer, and the patient goes to nobody",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::ReferTo],
    rests_on: &[Fact::History, Fact::AcuteInfection, Fact::Pressure, Fact::Inr, Fact::Hba1c],
    causes: &[],
    evidence: &[
        says(
            Source::Ours,
            Status::Ours,
            "practice of this project",
            "same-day hospital, physician, specialist",
        ),
        says(
            Source::Consensus,
            Status::Partly,
            "Ruggiero 2022, position paper, J Oral Maxillofac Surg",
            "under cancer doses teeth are treated in specialist hands",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    let intention = plan.intention.as_ref()?;
    let goes_to = intention.today.as_ref()?.refer_to?;
    if intention.course == c::Course::Refer && goes_to == c::ReferTo::Nobody {
        return situation("to-nobody");
    }
    let patient = &case.patient;
    let bone = matches!(patient.antiresorptive, Some(Antiresorptive::CancerDose))
        || patient.radiotherapy.as_ref().is_some_and(|past| past.gray_at_site >= 50.0);
    let fits = match goes_to {
        c::ReferTo::Hospital => {
            matches!(case.site.lesion, Lesion::Spreading { .. })
                || patient.pressure_symptoms
                || bone
        }
        _ if matches!(case.site.lesion, Lesion::Spreading { .. }) => false,
        c::ReferTo::Specialist => bone || !ask::is_gate_shut(patient),
        c::ReferTo::Physician => !bone && !ask::is_gate_open(patient),
        c::ReferTo::Nobody => return situation("not-referred"),
    };
    situation(if fits { "right-address" } else { "another-address" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn sent(trial: &mut Trial, to: &str) -> Option<Zone> {
        trial.course("refer").keys(&[("refer-to", to)]);
        trial.zone(&RULE)
    }

    #[test]
    fn spread_goes_to_hospital_and_a_pressure_to_the_physician() {
        let mut spreading = Trial::plain();
        spreading.case.site.lesion = Lesion::Spreading { diameter: Mm::new(5.0) };
        assert_eq!(sent(&mut spreading, "hospital"), Some(Zone::Ideal));
        assert_eq!(sent(&mut spreading, "specialist"), Some(Zone::Suboptimal));
        let mut pressed = Trial::plain();
        pressed.case.patient.pressure = [205, 112];
        assert_eq!(sent(&mut pressed, "physician"), Some(Zone::Ideal));
        assert_eq!(sent(&mut pressed, "specialist"), Some(Zone::Suboptimal));
    }

    #[test]
    fn dying_bone_goes_to_a_specialist_and_nobody_is_no_address() {
        let mut trial = Trial::plain();
        trial.case.patient.antiresorptive = Some(Antiresorptive::CancerDose);
        assert_eq!(sent(&mut trial, "specialist"), Some(Zone::Ideal));
        assert_eq!(sent(&mut trial, "physician"), Some(Zone::Suboptimal));
        assert_eq!(sent(&mut trial, "nobody"), Some(Zone::Compromising));
    }
}
