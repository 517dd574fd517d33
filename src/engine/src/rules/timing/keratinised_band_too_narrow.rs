//! Implants keep cleaner in at least 2 mm of keratinised tissue.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "keratinised-band-too-narrow",
    ledger: "iip-soft-tissue-phenotype",
    family: Family::Timing,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Have at least 2 mm of keratinised tissue around the implant, or add tissue."),
    why: long!("Loose mucosa moves and hurts under the brush. A firm band makes cleaning easier."),
    mend: long!("Add a soft-tissue graft with the implant or plan one."),
    scale: Scale::Bands(Bands {
        quantity: "keratinised tissue",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[Cut::from(2.0, Zone::Acceptable), Cut::from(3.0, Zone::Ideal).published(3.0, 4.0)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("at least 2 mm is needed."),
        other: long!(
            "healthy implants are kept in less where cleaning is good; no minimum is proven."
        ),
    }),
    reads: &[Decision::TissueGraft, Decision::SeatingAct],
    rests_on: &[Fact::GumMargin],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "\"Influence of width of keratinized tissue on the prevalence of peri-implant diseases\"",
            "2 mm is the cut-off that reviews use",
        ),
        says(
            Source::Opinion,
            Status::FromMemory,
            "flapless conditions of several authors",
            "3 to 4 mm wanted where no flap is raised",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    judging.plan.implant_in_place()?;
    if judging.plan.graft.as_ref()?.tissue != c::TissueGraft::NoTissue {
        return None;
    }
    number(judging.case.site.soft.keratinised.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn two_millimetres_suffice_and_just_less_does_not() {
        assert_eq!(zone_at(&RULE, 1.999), Zone::Suboptimal);
        assert_eq!(zone_at(&RULE, 2.0), Zone::Acceptable);
        assert_eq!(zone_at(&RULE, 2.999), Zone::Acceptable);
        assert_eq!(zone_at(&RULE, 3.0), Zone::Ideal);
    }

    #[test]
    fn with_tissue_added_the_old_width_no_longer_counts() {
        let mut trial = Trial::plain();
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(4.6)));
        trial.keys(&[("tissue-graft", "now")]);
        assert_eq!(trial.reading(&RULE), None);
    }
}
