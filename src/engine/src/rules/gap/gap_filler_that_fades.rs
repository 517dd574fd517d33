//! A filler in a showing facial gap that is gone before the contour is settled.

use crate::plan::choices::GraftMaterial;
use crate::rules::prelude::*;

/// Fill a facial gap that shows with a graft that resorbs slowly.
pub(super) static RULE: Rule = Rule {
    id: "gap-filler-that-fades",
    ledger: "gap-slow-filler",
    family: Family::Gap,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Fill a facial gap that shows with a graft that resorbs slowly."),
    why: long!(
        "The filler in the gap holds the contour while the plate goes; one that fades within months goes with it."
    ),
    mend: long!("Take a slowly resorbing filler, or blend one in."),
    scale: Scale::Situations(&[
        when("slow", "the gap is filled with a graft that resorbs slowly", Zone::Ideal),
        when("middling", "the gap is filled with a graft of middling turnover", Zone::Acceptable),
        when("fades", "the gap is filled with a graft that fades within months", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("A slowly resorbing filler keeps a thicker and higher facial crest."),
        other: long!(
            "No single graft is best; several serve, and the choice is the patient's and yours."
        ),
    }),
    reads: &[Decision::GraftMaterial],
    rests_on: &[Fact::SmileLine],
    causes: &[],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Araujo 2011, xenograft with collagen in the facial gap, Clin Oral Implants Res",
            "After 6 months in dogs, the facial crest was thicker and higher where the gap held slow filler.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "textbook turnover times",
            "Own bone 3 to 6 months, demineralised human bone 3 to 6, mineralised human bone 4 to 12, bovine mineral for years.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "blended mineralised allograft beside an implant",
            "A blend of cortical and cancellous mineralised human bone suits a facial defect beside an implant.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let graft = j.plan.graft_laid()?;
    if !j.case.site.is_aesthetic() || j.m.facial_gap()?.width.get() <= 0.0 {
        return None;
    }
    Some(Reading::Situation(turnover(graft.material)?))
}

fn turnover(material: GraftMaterial) -> Option<&'static str> {
    match material {
        GraftMaterial::NoGraft => None,
        GraftMaterial::Xenograft => Some("slow"),
        GraftMaterial::MineralisedAllograft
        | GraftMaterial::AllograftBlend
        | GraftMaterial::Synthetic => Some("middling"),
        GraftMaterial::Autograft | GraftMaterial::DemineralisedAllograft => Some("fades"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn own_and_demineralised_bone_fade_and_bovine_mineral_stays() {
        let zone = |material| RULE.zone_of(Reading::Situation(turnover(material).unwrap()));
        assert_eq!(zone(GraftMaterial::Xenograft), Some(Zone::Ideal));
        assert_eq!(zone(GraftMaterial::AllograftBlend), Some(Zone::Acceptable));
        assert_eq!(zone(GraftMaterial::Autograft), Some(Zone::Suboptimal));
        assert_eq!(zone(GraftMaterial::DemineralisedAllograft), Some(Zone::Suboptimal));
    }

    #[test]
    fn it_is_asked_of_a_gap_that_shows() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "xenograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.case.site.soft.lip = crate::anatomy::LipLine::Low;
        assert_eq!(trial.zone(&RULE), None);
    }
}
