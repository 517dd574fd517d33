//! Gum thickness is tested with a probe, not by eye.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "phenotype-judged-by-eye",
    ledger: "iip-soft-tissue-phenotype",
    family: Family::Diagnostics,
    step: Step::Intention,
    skill: Skill::ReadingWalls,
    statement: long!(
        "Test the phenotype with the probe in the sulcus before you place or graft at a visible site."
    ),
    why: long!("The eye misjudges thin gum. The probe shines through it or does not."),
    mend: long!("Add the phenotype test to the examinations."),
    scale: Scale::Situations(&[
        when("tested", "the phenotype was tested with the probe", Zone::Ideal),
        when(
            "by-eye",
            "an implant or graft is planned at a visible site, and the gum was only looked at or not at all",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Examinations, Decision::Course],
    rests_on: &[Fact::GumThickness],
    causes: &[],
    evidence: &[says(
        Source::Cohort,
        Status::Confirmed,
        "Kan 2010, \"Gingival biotype assessment in the esthetic zone: visual versus direct measurement\", IJPRD",
        "the probe is reliable, the eye alone is not",
    )],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    if !case.site.is_aesthetic() || !ask::is_elective(plan)? {
        return None;
    }
    let tested = plan.examined.as_ref()?.examinations.has(c::Examination::PhenotypeTest);
    situation(if tested { "tested" } else { "by-eye" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::LipLine;
    use crate::rules::trial::Trial;

    #[test]
    fn a_visible_site_asks_for_the_probe() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("examinations", "look film")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.case.site.soft.lip = LipLine::Low;
        assert_eq!(trial.zone(&RULE), None);
    }
}
