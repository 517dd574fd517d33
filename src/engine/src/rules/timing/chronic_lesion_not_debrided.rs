//! A chronic apical lesion is cleaned out before an implant goes in.

use crate::anatomy::Lesion;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "chronic-lesion-not-debrided",
    ledger: "iip-chronic-periapical",
    family: Family::Timing,
    step: Step::Implant,
    skill: Skill::Extracting,
    statement: long!(
        "Clean a chronic apical lesion out completely before an implant goes into that socket."
    ),
    why: long!(
        "What is left of the lesion lies against the implant. Cleaned out, such sites do almost as well as healthy ones in most reviews."
    ),
    mend: long!(
        "Curette all granulation tissue and irrigate before drilling, or stage the implant."
    ),
    scale: Scale::Situations(&[
        when(
            "not-placed",
            "no implant was placed into the socket with the lesion today",
            Zone::Ideal,
        ),
        when(
            "placed-after-debridement",
            "an implant was placed into a debrided socket with a chronic lesion",
            Zone::Debated,
        ),
        when(
            "placed-without-debridement",
            "an implant was placed on a chronic lesion that was not cleaned out",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!(
            "a chronic lesion is no contraindication once it is debrided and sound bone holds the implant (survival 97.6 against 98.4 %)."
        ),
        other: long!(
            "failures are more frequent in such sites (relative risk 2.99, 1.04 to 8.56, in one review), so the implant waits."
        ),
    }),
    reads: &[
        Decision::Debridement,
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::Diameter,
    ],
    rests_on: &[Fact::ApicalLesion],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Chen 2018, J Prosthet Dent",
            "survival 97.6 against 98.4 %, relative risk 0.99 (0.97 to 1.00)",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Saijeva & Juodzbalys 2020, J Oral Maxillofac Res",
            "relative risk 0.99 (0.98 to 1.00) in debrided infected sites",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "de Oliveira-Neto 2019, Med Oral Patol Oral Cir Bucal",
            "failure relative risk 2.99 (1.04 to 8.56)",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Zhao 2016, Clin Oral Implants Res",
            "a 116 % higher estimate of failure",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "consensus conference 2023, statement 4",
            "debrided chronic sites may be considered",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !matches!(judging.case.site.lesion, Lesion::Chronic { .. }) {
        return None;
    }
    if !ask::placed(judging.plan)? {
        return situation("not-placed");
    }
    let cleaned =
        judging.plan.extraction.as_ref()?.debridement == c::Debridement::CuretteAndIrrigate;
    situation(if cleaned { "placed-after-debridement" } else { "placed-without-debridement" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn chronic() -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Chronic { diameter: Mm::new(4.0) };
        trial
    }

    #[test]
    fn cleaned_out_the_choice_is_debated_and_nothing_less_will_do() {
        let mut trial = chronic();
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        for halfway in ["rinse", "nothing"] {
            trial.keys(&[("debridement", halfway)]);
            assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        }
    }

    #[test]
    fn staging_is_never_wrong_here() {
        let mut trial = chronic();
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
