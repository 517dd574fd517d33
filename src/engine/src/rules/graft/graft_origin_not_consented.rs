//! Graft: ask about human and animal origin, and have it in the consent, before you lay a graft.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "graft-origin-not-consented",
    ledger: "graft-origin-consent",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!(
        "Ask about human and animal origin, and have it in the consent, before you lay a graft."
    ),
    why: long!(
        "For some patients material from a human donor or an animal is out of the question, and once it is in you cannot undo it."
    ),
    mend: long!(
        "Ask for the views on graft origin at the chart and put the origin into the consent, or choose the patient's own bone or a synthetic."
    ),
    scale: Scale::Situations(&[
        when("asked-and-agreed", "the origin was asked about and is in the consent", Zone::Ideal),
        when(
            "agreed-unasked",
            "the origin is in the consent, and the views were not asked for first",
            Zone::Suboptimal,
        ),
        when(
            "not-consented",
            "material from a donor or an animal was laid without consent to its origin",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Requests,
        Decision::Consent,
        Decision::GraftMaterial,
        Decision::Membrane,
        Decision::SocketSeal,
    ],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "consent for donor and animal material",
            "Origin and allergies are asked about before the choice, and the answer is in the record.",
        ),
        says(
            Source::Consensus,
            Status::Partly,
            "consent for immediate implants, practice",
            "Consent names the options, the stop conditions, the origin of a graft and the fallback stage.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let laid = j.plan.graft.as_ref()?;
    let (chart, intention) = (j.plan.chart.as_ref()?, j.plan.intention.as_ref()?);
    let foreign_graft = laid.graft.as_ref().is_some_and(|graft| {
        !matches!(graft.material, c::GraftMaterial::Autograft | c::GraftMaterial::Synthetic)
    });
    let collagen = laid.membrane.as_ref().is_some_and(|it| regeneration::resorbs(it.kind))
        || laid.seal == Some(c::SocketSeal::Plug);
    if !foreign_graft && !collagen {
        return None;
    }
    let agreed = intention.consent.has(c::ConsentPoint::GraftOrigin);
    situation(match (agreed, chart.requests.has(c::Request::GraftViews)) {
        (true, true) => "asked-and-agreed",
        (true, false) => "agreed-unasked",
        (false, _) => "not-consented",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;

    #[test]
    fn consent_that_leaves_the_origin_out_is_unsafe() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("consent", "options risks stop-conditions fallback")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }

    #[test]
    fn consent_without_having_asked_first_costs_a_little() {
        let mut trial = Trial::plain();
        trial.keys(&[("requests", "allergies blood-pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn the_patients_own_bone_and_a_synthetic_have_no_donor() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "autograft"), ("consent", "options")]);
        assert_eq!(trial.zone(&RULE), None);
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "synthetic"), ("consent", "options")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn a_collagen_membrane_comes_from_an_animal() {
        let mut trial = repaired();
        trial.keys(&[("graft-material", "synthetic"), ("consent", "options")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }
}
