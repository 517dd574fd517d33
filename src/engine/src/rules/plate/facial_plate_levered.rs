//! Force on the facial plate while the tooth comes out.

use crate::plan::choices::Technique;
use crate::rules::prelude::*;

/// Take the tooth out without any force on the facial plate.
pub(super) static RULE: Rule = Rule {
    id: "facial-plate-levered",
    ledger: "extraction-plate-protection",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Extracting,
    statement: long!("Take the tooth out without any force on the facial plate."),
    why: long!(
        "The plate in front of an upper tooth is often thinner than a millimetre; lean on it once and it breaks, and the plan breaks with it."
    ),
    mend: long!(
        "Luxate along the oral and proximal faces, grip the root on its oral face and rotate slowly; section it if it does not come."
    ),
    scale: Scale::Situations(&[
        when(
            "spared",
            "the root is luxated and rotated with the facial plate left alone",
            Zone::Ideal,
        ),
        when("rocked", "the tooth is rocked against the facial plate", Zone::Compromising),
        when("levered", "the facial plate serves as the fulcrum of a lever", Zone::Compromising),
        when("bone-removed", "facial bone is cut away to free the root", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Technique],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Levine 2017, ten keys for immediate placement, Compendium",
            "Extract without facial luxation and, where possible, without a flap; section roots that do not come.",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023",
            "Damage during extraction is among the factors that decide on immediate placement, in 59 studies.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Huynh-Ba 2010, Clin Oral Implants Res",
            "The facial plate of upper front teeth was 1 mm or less in 87 %, on average 0.8 mm.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "grip on the oral root face",
            "Luxate first, grip the root 1 to 3 mm below the gum on its oral face, no squeezing, slow rotation.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    Some(Reading::Situation(match j.plan.extraction.as_ref()?.technique {
        Technique::LuxateAndRotate => "spared",
        Technique::RockFacially => "rocked",
        Technique::LeverOnFacialPlate => "levered",
        Technique::BoneRemoval => "bone-removed",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn only_luxating_and_rotating_spares_the_plate() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        for technique in ["rock-facially", "lever-on-facial-plate", "bone-removal"] {
            trial.keys(&[("technique", technique)]);
            assert_eq!(trial.zone(&RULE), Some(Zone::Compromising), "{technique}");
        }
    }
}
