//! Force on the facial plate while the tooth comes out.

use super::super::{
    Agreement, Evidence, Family, Judging, Reading, Rule, Scale, Situation, Skill, Source, Status,
    Zone,
};
use crate::chart::Fact;
use crate::plan::{Decision, Step, choices::Technique};

/// Take the tooth out without any force on the facial plate.
pub(super) static RULE: Rule = Rule {
    id: "facial-plate-levered",
    ledger: "extraction-plate-protection",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Extracting,
    statement: "Take the tooth out without any force on the facial plate.",
    why: "The plate in front of an upper tooth is often thinner than a millimetre; lean on it once and it breaks, and the plan breaks with it.",
    mend: "Luxate along the oral and proximal faces, grip the root on its oral face and rotate slowly; section it if it does not come.",
    scale: Scale::Situations(&[
        Situation {
            key: "spared",
            words: "the root is luxated and rotated with the facial plate left alone",
            zone: Zone::Ideal,
        },
        Situation {
            key: "rocked",
            words: "the tooth is rocked against the facial plate",
            zone: Zone::Compromising,
        },
        Situation {
            key: "levered",
            words: "the facial plate serves as the fulcrum of a lever",
            zone: Zone::Compromising,
        },
        Situation {
            key: "bone-removed",
            words: "facial bone is cut away to free the root",
            zone: Zone::Compromising,
        },
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Technique],
    rests_on: &[Fact::FacialThickness],
    causes: &[],
    evidence: &[
        Evidence {
            cite: "Levine 2017, ten keys for immediate placement, Compendium",
            source: Source::Opinion,
            status: Status::Confirmed,
            says: "Extract without facial luxation and, where possible, without a flap; section roots that do not come.",
        },
        Evidence {
            cite: "7th consensus conference, group 5, 2023",
            source: Source::Consensus,
            status: Status::Confirmed,
            says: "Damage during extraction is among the factors that decide on immediate placement, in 59 studies.",
        },
        Evidence {
            cite: "Huynh-Ba 2010, Clin Oral Implants Res",
            source: Source::Cohort,
            status: Status::Confirmed,
            says: "The facial plate of upper front teeth was 1 mm or less in 87 %, on average 0.8 mm.",
        },
        Evidence {
            cite: "grip on the oral root face",
            source: Source::CommonPractice,
            status: Status::NoSource,
            says: "Luxate first, grip the root 1 to 3 mm below the gum on its oral face, no squeezing, slow rotation.",
        },
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
