//! Consent covers options, risks, stop conditions, graft origin and the fallback.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "consent-without-fallback",
    ledger: "dx-consent-fallback",
    family: Family::Diagnostics,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Let consent cover the options, the risks, when you stop, where a graft comes from, and that it may not be completed today."
    ),
    why: long!(
        "What you find after the extraction may change the plan. A patient under anaesthesia cannot be asked then."
    ),
    mend: long!("Add to the consent what is missing, the fallback first."),
    scale: Scale::Situations(&[
        when("complete", "consent covers all that this course needs", Zone::Ideal),
        when(
            "detail-missing",
            "consent leaves out the risks or the origin of a graft",
            Zone::Suboptimal,
        ),
        when(
            "fallback-missing",
            "consent leaves out the fallback, the stop conditions or the options",
            Zone::Compromising,
        ),
        when("none", "the patient is operated on without any consent", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::Today, Decision::Consent],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Partly,
            "consent statement of an immediate-placement protocol",
            "the patient is told that the placement may not be completed on the day",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "habit of the trade",
            "options, stop conditions, graft origin and fallback, documented before",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    use c::ConsentPoint as Point;
    if !ask::tooth_comes_out(judging.plan)? {
        return None;
    }
    let consent = judging.plan.intention.as_ref()?.consent;
    let elective = ask::is_elective(judging.plan)?;
    let lacks = |point| !consent.has(point);
    situation(if consent.count() == 0 {
        "none"
    } else if lacks(Point::Options)
        || (elective && (lacks(Point::StopConditions) || lacks(Point::Fallback)))
    {
        "fallback-missing"
    } else if lacks(Point::Risks) || (elective && lacks(Point::GraftOrigin)) {
        "detail-missing"
    } else {
        "complete"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn consenting(to: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.keys(&[("consent", to)]);
        trial.zone(&RULE)
    }

    #[test]
    fn each_missing_point_has_its_cost() {
        assert_eq!(
            consenting("options risks stop-conditions graft-origin fallback"),
            Some(Zone::Ideal)
        );
        assert_eq!(consenting("options risks stop-conditions fallback"), Some(Zone::Suboptimal));
        assert_eq!(
            consenting("options stop-conditions graft-origin fallback"),
            Some(Zone::Suboptimal)
        );
        assert_eq!(
            consenting("options risks stop-conditions graft-origin"),
            Some(Zone::Compromising)
        );
        assert_eq!(
            consenting("risks stop-conditions graft-origin fallback"),
            Some(Zone::Compromising)
        );
        assert_eq!(consenting(""), Some(Zone::Unsafe));
    }

    #[test]
    fn an_extraction_alone_needs_no_fallback() {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("consent", "options risks")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
