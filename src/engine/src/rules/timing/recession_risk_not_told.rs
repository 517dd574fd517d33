//! Before placing today at a visible site the patient hears that the margin may recede.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "recession-risk-not-told",
    ledger: "iip-recession-variability",
    family: Family::Timing,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Tell the patient that the margin may recede before you place an implant today at a visible site."
    ),
    why: long!(
        "Margins vary more after immediate than after early placement. A patient who was not told cannot weigh the two."
    ),
    mend: long!("Let consent cover the risks, recession of the margin among them."),
    scale: Scale::Situations(&[
        when("told", "the patient was told that the margin may recede", Zone::Ideal),
        when(
            "not-told",
            "an implant is intended today at a visible site and recession was not mentioned",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Course, Decision::Consent],
    rests_on: &[Fact::SmileLine],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Chen & Buser 2014, esthetic outcomes of immediate and early placement, IJOMI",
            "recession above 1 mm in 9 to 41 % of immediate sites (median 26 %, 8 studies), in none of 2 early-placement studies",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Francisco 2021, \"The devil is in the details\"",
            "no timing is clearly superior aesthetically",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let intention = judging.plan.intention.as_ref()?;
    if intention.course != c::Course::PlaceToday || !judging.case.site.is_aesthetic() {
        return None;
    }
    situation(if intention.consent.has(c::ConsentPoint::Risks) { "told" } else { "not-told" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::LipLine;
    use crate::rules::trial::Trial;

    #[test]
    fn consent_without_risks_is_a_fault_where_the_margin_shows() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("consent", "options stop-conditions graft-origin fallback")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn a_hidden_margin_or_another_course_is_not_judged() {
        let mut trial = Trial::plain();
        trial.course("let-heal");
        assert_eq!(trial.zone(&RULE), None);
        let mut hidden = Trial::plain();
        hidden.case.site.soft.lip = LipLine::Low;
        assert_eq!(hidden.zone(&RULE), None);
    }
}
