//! A receded margin is corrected before or with the implant.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "margin-below-twin-not-corrected",
    ledger: "iip-gingival-margin",
    family: Family::Timing,
    step: Step::Implant,
    skill: Skill::Course,
    statement: long!(
        "Correct a margin that lies apical of its twin before you place, or add soft tissue with the implant."
    ),
    why: long!(
        "The margin recedes further after placing, about 1 mm by common teaching. What starts too far apically ends further that way."
    ),
    mend: long!(
        "Stage the implant and correct the margin first, or add a soft-tissue graft with it."
    ),
    scale: Scale::Situations(&[
        when("level", "the margin lies level with its twin or coronal of it", Zone::Ideal),
        when(
            "corrected-first",
            "the margin is corrected first and no implant was placed today",
            Zone::Ideal,
        ),
        when("tissue-added", "soft tissue is added with the implant", Zone::Acceptable),
        when(
            "first-and-today",
            "the plan corrects the margin first and yet places today",
            Zone::Suboptimal,
        ),
        when(
            "slight-recession-taken",
            "a recession of up to 1 mm was taken as it is",
            Zone::Suboptimal,
        ),
        when(
            "recession-taken",
            "a recession of more than 1 mm was taken as it is",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::MarginPlan,
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::Diameter,
    ],
    rests_on: &[Fact::GumMargin, Fact::SmileLine],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Opinion,
            Status::Partly,
            "Kois 2001 and 2004, Compendium",
            "a margin level with or coronal of its twin is favourable; margin position is listed among selection criteria",
        ),
        says(
            Source::Opinion,
            Status::FromMemory,
            "Kois 2001 and 2004, Compendium",
            "plan for about 1 mm of later recession",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "the step at 1 mm between slight and more",
        ),
    ],
    measure,
};

/// Beyond this much recession taking it as it is compromises the outcome [ours].
const SLIGHT: f64 = 1.0;

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    if !case.site.is_aesthetic() {
        return None;
    }
    let below = crate::units::comparable(case.site.soft.margin_below_twin.get());
    let placed = ask::placed(plan)?;
    let intended = plan.intention.as_ref()?.margin?;
    situation(match (placed, intended) {
        (true, _) if below <= 0.0 => "level",
        (false, c::MarginPlan::CorrectFirst) if below > 0.0 => "corrected-first",
        (false, _) => return None,
        (true, c::MarginPlan::CorrectFirst) => "first-and-today",
        (true, c::MarginPlan::GraftWithImplant) => "tissue-added",
        (true, c::MarginPlan::AsItIs) if below <= SLIGHT => "slight-recession-taken",
        (true, c::MarginPlan::AsItIs) => "recession-taken",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn receded(below: f64, margin: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.site.soft.margin_below_twin = Mm::new(below);
        trial.keys(&[("margin-plan", margin)]);
        trial.zone(&RULE)
    }

    #[test]
    fn level_is_ideal_and_one_millimetre_divides_slight_from_more() {
        assert_eq!(receded(0.0, "as-it-is"), Some(Zone::Ideal));
        assert_eq!(receded(0.001, "as-it-is"), Some(Zone::Suboptimal));
        assert_eq!(receded(1.0, "as-it-is"), Some(Zone::Suboptimal));
        assert_eq!(receded(1.001, "as-it-is"), Some(Zone::Compromising));
    }

    #[test]
    fn tissue_with_the_implant_answers_it_and_a_contradiction_does_not() {
        assert_eq!(receded(2.0, "graft-with-implant"), Some(Zone::Acceptable));
        assert_eq!(receded(2.0, "correct-first"), Some(Zone::Suboptimal));
    }
}
