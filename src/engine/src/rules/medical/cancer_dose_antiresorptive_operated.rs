//! No elective implant under a cancer-dose drug against bone resorption.

use crate::chart::Antiresorptive;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "cancer-dose-antiresorptive-operated",
    ledger: "med-mronj-oncology",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Plan no elective implant or graft in a patient on a cancer-dose drug against bone resorption; refer."
    ),
    why: long!(
        "Exposed dead bone follows in several of a hundred such patients, and no implant is worth that. An infected tooth still needs care, in specialist hands."
    ),
    mend: long!("Refer to a specialist and plan a replacement without an implant."),
    scale: Scale::Situations(&[
        when("referred", "the patient goes to a specialist or hospital", Zone::Ideal),
        when("not-operated", "no operation is planned and nobody is asked", Zone::Acceptable),
        when(
            "extracted-here",
            "the tooth comes out here, without specialist hands",
            Zone::Compromising,
        ),
        when(
            "implant-or-graft",
            "an elective implant or graft is planned under a cancer-dose drug",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::Today, Decision::ReferTo],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Partly,
            "Ruggiero 2022, position paper, J Oral Maxillofac Surg",
            "far higher risk at cancer doses: no elective implants",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "SDCEP guidance on jaw necrosis from drugs, \"Risk factors\"",
            "about 2.9 % after extraction",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Soutome 2018, \"Factors affecting development of medication-related osteonecrosis of the jaw in cancer patients\"",
            "8.6, 21.5 and 29.2 % at 1, 2 and 3 years in one high-dose cohort; symptomatic teeth, not extraction, raised the risk",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "Ruggiero 2022, percentages",
            "background below about 5 %; 1.6 to 14.8 % after extraction",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    if !matches!(case.patient.antiresorptive, Some(Antiresorptive::CancerDose)) {
        return None;
    }
    if ask::is_elective(plan)? {
        return situation("implant-or-graft");
    }
    if ask::tooth_comes_out(plan)? {
        return situation("extracted-here");
    }
    let goes_to = plan.intention.as_ref()?.today.as_ref().and_then(|today| today.refer_to);
    situation(match goes_to {
        Some(c::ReferTo::Specialist | c::ReferTo::Hospital) => "referred",
        _ => "not-operated",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn an_implant_is_unsafe_an_extraction_here_compromises_and_referring_is_ideal() {
        let mut trial = Trial::plain();
        trial.case.patient.antiresorptive = Some(Antiresorptive::CancerDose);
        for (course, zone) in [
            ("place-today", Zone::Unsafe),
            ("graft-and-return", Zone::Unsafe),
            ("let-heal", Zone::Compromising),
            ("refer", Zone::Ideal),
            ("keep-tooth", Zone::Acceptable),
        ] {
            trial.course(course);
            assert_eq!(trial.zone(&RULE), Some(zone), "{course}");
        }
    }

    #[test]
    fn osteoporosis_doses_are_another_matter() {
        let mut trial = Trial::plain();
        trial.case.patient.antiresorptive = Some(Antiresorptive::Oral { years: 6.0 });
        assert_eq!(trial.zone(&RULE), None);
    }
}
