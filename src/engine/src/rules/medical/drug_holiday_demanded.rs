//! No drug holiday is required from osteoporosis drugs.

use crate::chart::Antiresorptive;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "drug-holiday-demanded",
    ledger: "med-mronj-osteoporosis",
    family: Family::Medical,
    step: Step::Chart,
    skill: Skill::Patient,
    statement: long!("Require no drug holiday from a patient who takes a drug for osteoporosis."),
    why: long!(
        "A holiday has not been shown to protect the jaw. A late injection can bring broken vertebrae."
    ),
    mend: long!("Leave the drug, contact the prescriber, and obtain consent to its risk."),
    scale: Scale::Situations(&[
        when("none-demanded", "no drug holiday is demanded", Zone::Ideal),
        when(
            "holiday-from-tablets",
            "a drug holiday is demanded from tablets for osteoporosis",
            Zone::Suboptimal,
        ),
        when(
            "injection-delayed",
            "an injection for osteoporosis is stopped or put off",
            Zone::Unsafe,
        ),
        when(
            "tablets-stopped-alone",
            "tablets for osteoporosis are stopped without their prescriber",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!(
            "two months without the drug before surgery after more than four years of it (advised in 2014)."
        ),
        other: long!(
            "no holiday: the 2022 paper found no agreement, and a Scottish guideline advises against one."
        ),
    }),
    reads: &[Decision::Drugs],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "SDCEP guidance on jaw necrosis from drugs, \"Risk factors\"",
            "a drug holiday is not recommended; 0.15 % after extraction under tablets",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "\"Management dilemmas with denosumab\" (case)",
            "vertebral fractures on rebound after a delayed dose",
        ),
        says(
            Source::Consensus,
            Status::Partly,
            "Ruggiero 2022, position paper, J Oral Maxillofac Surg",
            "no agreement on holidays",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let injected = match judging.case.patient.antiresorptive.as_ref()? {
        Antiresorptive::Oral { .. } => false,
        Antiresorptive::Injected { .. } => true,
        Antiresorptive::CancerDose => return None,
    };
    situation(match judging.plan.chart.as_ref()?.drugs {
        c::DrugAction::DemandHoliday | c::DrugAction::StopAlone if injected => "injection-delayed",
        c::DrugAction::DemandHoliday => "holiday-from-tablets",
        c::DrugAction::StopAlone => "tablets-stopped-alone",
        _ => "none-demanded",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn taking(drug: Antiresorptive, drugs: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.patient.antiresorptive = Some(drug);
        trial.keys(&[("drugs", drugs)]);
        trial.zone(&RULE)
    }

    #[test]
    fn a_holiday_costs_little_with_tablets_and_can_hurt_with_injections() {
        assert_eq!(
            taking(Antiresorptive::Oral { years: 5.0 }, "demand-holiday"),
            Some(Zone::Suboptimal)
        );
        let injected = Antiresorptive::Injected { months_since: 3 };
        assert_eq!(taking(injected.clone(), "demand-holiday"), Some(Zone::Unsafe));
        assert_eq!(taking(injected, "contact-prescriber"), Some(Zone::Ideal));
    }

    #[test]
    fn the_cancer_dose_is_judged_elsewhere() {
        assert_eq!(taking(Antiresorptive::CancerDose, "demand-holiday"), None);
    }
}
