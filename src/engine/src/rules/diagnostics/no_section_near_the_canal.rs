//! Near the inferior alveolar canal the distance is measured on sections.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "no-section-near-the-canal",
    ledger: "dx-cbct-indication",
    family: Family::Diagnostics,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Measure the distance to the inferior alveolar canal on sections before you drill above it."
    ),
    why: long!(
        "A film gives the height and hides the width, and its magnification is not known. A hurt nerve may never recover."
    ),
    mend: long!("Take sections with the distance as their question before the operation."),
    scale: Scale::Situations(&[
        when("measured", "sections were taken for the distance to the canal", Zone::Ideal),
        when("other-question", "sections were taken, with another question", Zone::Acceptable),
        when(
            "not-measured",
            "an implant was drilled for above the canal without sections",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Examinations,
        Decision::SectionsQuestion,
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::Diameter,
    ],
    rests_on: &[Fact::Canal],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "Tyndall 2012, AAOMR position, Oral Surg Oral Med Oral Pathol Oral Radiol",
            "cross-sectional imaging; near the canal both schools ask for it",
        ),
        says(
            Source::Anatomy,
            Status::Confirmed,
            "J Oral Implantol 2015 and 2019, surveys of the anterior loop",
            "no fixed distance is safe: measure",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    if case.site.vital.canal.is_none() || !ask::placed(plan)? {
        return None;
    }
    situation(match plan.examined.as_ref()?.sections {
        Some(c::SectionsQuestion::NearStructure) => "measured",
        Some(_) => "other-question",
        None => "not-measured",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Tube;
    use crate::geometry::P3;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn drilling_above_the_canal_without_sections_is_unsafe() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.case.site.vital.canal = Some(Tube {
            from: P3::new(-10.0, 0.0, 18.0),
            to: P3::new(10.0, 0.0, 18.0),
            radius: Mm::new(1.5),
        });
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.keys(&[("sections-question", "near-structure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("examinations", "look film bone-sounding")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }
}
