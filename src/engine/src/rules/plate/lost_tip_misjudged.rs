//! A root tip that was pushed out of sight, beside sinus or nerve.

use crate::plan::choices::TipRescue;
use crate::rules::prelude::*;

/// Take an image of a root tip that is gone from sight, do not dig for it, refer, and stop there.
pub(super) static RULE: Rule = Rule {
    id: "lost-tip-misjudged",
    ledger: "rescue-root-fragment-drop",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Extracting,
    statement: long!(
        "Take an image of a root tip that is gone from sight, do not dig for it, refer, and stop there."
    ),
    why: long!(
        "What you cannot see you push farther: into the sinus, or onto the nerve. An image and another operation cost less."
    ),
    mend: long!("Image it, tell the patient, refer, and revise the course."),
    scale: Scale::Situations(&[
        when(
            "referred",
            "the lost root tip was imaged and referred, and nothing went on",
            Zone::Ideal,
        ),
        when(
            "operated-over",
            "the lost root tip was imaged, and an operation went on over it",
            Zone::Compromising,
        ),
        when("dug-for", "the lost root tip was dug for out of sight", Zone::Compromising),
        when("left-untold", "the lost root tip was left and not spoken of", Zone::Compromising),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::LostTip, Decision::Course, Decision::AfterExtraction],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::FromMemory,
            "textbooks of surgery of mouth and jaws",
            "A root in the sinus or near the nerve is imaged, not dug for blindly, and referred.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "No implant or graft is laid over it in the same visit.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let goes_on = ask::goes_beyond_extraction(j.plan.course()?);
    situation(match j.plan.rescue.tip? {
        TipRescue::ImageAndRefer if goes_on => "operated-over",
        TipRescue::ImageAndRefer => "referred",
        TipRescue::Dig => "dug-for",
        TipRescue::LeaveUntold => "left-untold",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, FloorKind};
    use crate::chart::Case;
    use crate::events::tip_in;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    /// A root that ends in the sinus, levered out so that its tip is lost there.
    fn lost() -> Trial {
        let mut trial = Trial::plain();
        trial.keys(&[("technique", "lever-on-facial-plate")]);
        let z = Mm::new(10.5);
        trial.case.site.vital.floor = Some(Floor { kind: FloorKind::Sinus, z, rise: 0.0 });
        let mut cases = (0..1000).map(|n| Case { title: n.to_string(), ..trial.case.clone() });
        trial.case = cases.find(|case| tip_in(&trial.draft, case).is_some()).unwrap();
        trial
    }

    #[test]
    fn a_root_that_came_out_whole_asks_nothing() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn a_tip_that_a_gentle_hand_loses_leaves_a_sound_plan() {
        use crate::debrief::{PlanWord, judge};
        let mut trial = lost();
        trial.keys(&[("technique", "luxate-and-rotate")]);
        let mut cases = (0..4000).map(|n| Case { title: n.to_string(), ..trial.case.clone() });
        trial.case = cases.find(|case| tip_in(&trial.draft, case).is_some()).unwrap();
        let draft = crate::cases::proof(&trial.case).unwrap().draft;
        let plan = crate::plan::Plan::from_draft(&draft, &trial.case).unwrap();
        assert!(plan.rescue.tip.is_some());
        assert_eq!(PlanWord::of(&judge(&trial.case, &plan)), PlanWord::Sound);
    }

    #[test]
    fn it_is_imaged_and_referred_and_nothing_is_laid_over_it() {
        let mut trial = lost();
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("after-extraction", "to-refer")]);
        for (answer, zone) in [
            ("image-and-refer", Zone::Ideal),
            ("dig", Zone::Compromising),
            ("leave-untold", Zone::Compromising),
        ] {
            trial.keys(&[("lost-tip", answer)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{answer}");
        }
    }
}
