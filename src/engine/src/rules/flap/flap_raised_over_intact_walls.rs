//! Flap: leave the gum where it is when the walls are known to be whole.

use crate::anatomy::Lesion;
use crate::chart::Source as Seen;
use crate::rules::Knowledge;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "flap-raised-over-intact-walls",
    ledger: "flapless-benefit",
    family: Family::Flap,
    step: Step::Flap,
    skill: Skill::FlapDesign,
    statement: long!("Leave the gum where it is when the walls are known to be whole."),
    why: long!(
        "Reflection costs the facial plate part of its blood supply, and over whole walls you gain nothing by it."
    ),
    mend: long!("Go flapless, or name what the flap is to show."),
    scale: Scale::Situations(&[
        when("flapless", "no flap was raised over whole walls", Zone::Ideal),
        when("with-reason", "a flap was raised for access, tissue or safety", Zone::Acceptable),
        when(
            "to-find-out",
            "the wall had not been seen, and the flap was raised to see it",
            Zone::Acceptable,
        ),
        when(
            "without-reason",
            "the walls were known to be whole, and a flap was raised",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::FlapDesign, Decision::OralElevation],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "14-trial meta-analysis 2021, flapless immediate implants",
            "Papillae fared better and pain on the first day was less without a flap.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "2023 summary of a review of 5 trials with 140 implants",
            "Limited certainty; the crest differed by about 0.14 mm.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Lahoti 2021, J Indian Prosthodont Soc",
            "Flapless placement may keep slightly more facial bone.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let flap = j.plan.flap.as_ref()?;
    if regeneration::has_wall_defect(j.case) {
        return None;
    }
    let seen_before =
        matches!(j.known.fact(Fact::FacialWall), Knowledge::Seen(by) if by != Seen::Reflection);
    let site = &j.case.site;
    let has_reason = site.soft.keratinised.get() < 3.0
        || site.lesion != Lesion::None
        || site.vital.foramen.is_some()
        || site.vital.canal.is_some();
    Some(Reading::Situation(match (&flap.raised, seen_before) {
        (None, _) => "flapless",
        (Some(_), _) if has_reason => "with-reason",
        (Some(_), false) => "to-find-out",
        (Some(_), true) => "without-reason",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn a_flap_over_walls_known_whole_costs_a_little() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.case.site.defects.clear();
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn a_flap_that_is_to_show_an_unseen_wall_is_acceptable() {
        let mut trial = repaired();
        trial.case.site.defects.clear();
        trial.keys(&[("examinations", "look film"), ("socket-probing", "nothing")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn narrow_keratinised_tissue_is_a_reason() {
        let mut trial = repaired();
        trial.case.site.defects.clear();
        trial.case.site.soft.keratinised = Mm::new(2.5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn a_missing_wall_is_not_judged_here() {
        assert_eq!(repaired().zone(&RULE), None);
    }
}
