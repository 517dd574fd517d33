//! Sections have a question and a small field.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "sections-without-a-question",
    ledger: "dx-cbct-indication",
    family: Family::Diagnostics,
    step: Step::Examination,
    skill: Skill::Patient,
    statement: long!("Take cone-beam sections for a question, in a small field."),
    why: long!(
        "Dose is paid by the patient. A question keeps the field small and the reading sharp."
    ),
    mend: long!("Ask for plate and ridge, or for the distance to a structure, in a small field."),
    scale: Scale::Situations(&[
        when("near-structure", "sections were taken for the distance to a structure", Zone::Ideal),
        when("with-a-question", "sections were taken for plate, ridge and axis", Zone::Debated),
        when("none-taken", "no sections were taken", Zone::Debated),
        when(
            "large-field",
            "sections were taken in a large field for everything",
            Zone::Suboptimal,
        ),
        when("no-question", "sections were taken without a question", Zone::Suboptimal),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("sections for every implant site (AAOMR 2012)."),
        other: long!("sections for selected sites only (Swiss guideline 2014)."),
    }),
    reads: &[Decision::Examinations, Decision::SectionsQuestion],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "Tyndall 2012, AAOMR position, Oral Surg Oral Med Oral Pathol Oral Radiol",
            "cross-sectional imaging for all implant sites",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "Swiss guideline 2014 on cone-beam imaging",
            "for selected sites; justify the dose, small field",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    situation(match judging.plan.examined.as_ref()?.sections {
        Some(c::SectionsQuestion::NearStructure) => "near-structure",
        Some(c::SectionsQuestion::PlateAndRidge) => "with-a-question",
        Some(c::SectionsQuestion::FieldLarge) => "large-field",
        Some(c::SectionsQuestion::NoQuestion) => "no-question",
        None => "none-taken",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn taking_and_leaving_are_both_positions_and_only_the_field_and_the_question_count() {
        let mut trial = Trial::plain();
        for (question, zone) in [
            ("near-structure", Zone::Ideal),
            ("plate-and-ridge", Zone::Debated),
            ("large-field", Zone::Suboptimal),
            ("no-question", Zone::Suboptimal),
        ] {
            trial.keys(&[("sections-question", question)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{question}");
        }
        trial.keys(&[("examinations", "look film bone-sounding")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }
}
