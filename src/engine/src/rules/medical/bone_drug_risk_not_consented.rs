//! Surgery under an osteoporosis drug needs consent to its risk.

use crate::chart::Antiresorptive;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "bone-drug-risk-not-consented",
    ledger: "med-mronj-osteoporosis",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Obtain consent to the risk of the jaw before you operate on a patient who takes a drug for osteoporosis."
    ),
    why: long!(
        "The risk is small and the harm is large. The patient decides, and can only decide about what was said."
    ),
    mend: long!(
        "Let consent cover the risk that a drug of the patient brings, and contact the prescriber."
    ),
    scale: Scale::Situations(&[
        when(
            "consent-and-prescriber",
            "consent covers the risk and the prescriber was asked",
            Zone::Ideal,
        ),
        when("consent", "consent covers the risk", Zone::Acceptable),
        when(
            "not-disclosed",
            "surgery is planned and the risk of the drug was not disclosed",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Drugs, Decision::Course, Decision::Today, Decision::Consent],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "SDCEP guidance on jaw necrosis from drugs, \"Risk factors\"",
            "0.15 % after extraction under tablets: small, to be disclosed",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Seki 2022, J Dent Sci",
            "odds ratio 5.01 for injectable drugs",
        ),
        says(
            Source::Consensus,
            Status::Partly,
            "Ruggiero 2022, position paper, J Oral Maxillofac Surg",
            "not a ban; specific consent, least trauma",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "Ruggiero 2022, percentages",
            "tablets 0.02 to 0.05 %; injections 0.04 to 0.3 %, about 1 % after extraction",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    if matches!(case.patient.antiresorptive.as_ref()?, Antiresorptive::CancerDose)
        || !ask::tooth_comes_out(plan)?
    {
        return None;
    }
    let asked = matches!(
        plan.chart.as_ref()?.drugs,
        c::DrugAction::ContactPrescriber | c::DrugAction::TimeWithPrescriber
    );
    situation(match (plan.intention.as_ref()?.consent.has(c::ConsentPoint::DrugRisk), asked) {
        (true, true) => "consent-and-prescriber",
        (true, false) => "consent",
        (false, _) => "not-disclosed",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn taking_tablets() -> Trial {
        let mut trial = Trial::plain();
        trial.case.patient.antiresorptive = Some(Antiresorptive::Oral { years: 2.0 });
        trial
    }

    #[test]
    fn undisclosed_it_is_unsafe_and_consent_makes_it_good() {
        let mut trial = taking_tablets();
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.keys(&[("consent", "options risks stop-conditions graft-origin fallback drug-risk")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.keys(&[("drugs", "contact-prescriber")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn where_no_tooth_comes_out_there_is_nothing_to_consent_to() {
        let mut trial = taking_tablets();
        trial.course("keep-tooth");
        assert_eq!(trial.zone(&RULE), None);
    }
}
