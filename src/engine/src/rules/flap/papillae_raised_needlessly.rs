//! Flap: leave the papillae attached where the exposure allows it.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "papillae-raised-needlessly",
    ledger: "flap-papilla",
    family: Family::Flap,
    step: Step::Flap,
    skill: Skill::FlapDesign,
    statement: long!("Leave the papillae attached where the exposure allows it."),
    why: long!(
        "A papilla that you lift loses bone beneath it, and in a visible site the loss shows as a dark triangle."
    ),
    mend: long!("Cut beside the papillae and leave at least 1 mm of each at its neighbour."),
    scale: Scale::Situations(&[
        when("left", "the papillae stay attached", Zone::Ideal),
        when(
            "raised-for-exposure",
            "the wall is lost towards the neighbours, and the papillae were raised to reach it",
            Zone::Acceptable,
        ),
        when("raised-hidden", "the papillae were raised where they do not show", Zone::Acceptable),
        when(
            "raised-in-view",
            "the papillae were raised in a site that shows at full smile",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::FlapDesign, Decision::Papillae],
    rests_on: &[Fact::SmileLine],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Soft tissue preservation and crestal bone loss around single-tooth implants, 10 implants",
            "With 1 to 2 mm of papilla left, less bone was lost up to 90 days.",
        ),
        says(
            Source::Trial,
            Status::FromMemory,
            "Gomez-Roman 2001, IJOMI",
            "Bone loss of 0.29 mm with papillae left against 0.79 mm with papillae raised.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let raised = j.plan.raised()?;
    Some(Reading::Situation(match raised.papillae {
        c::Papillae::Left => "left",
        c::Papillae::Raised if !regeneration::is_contained(j.case) => "raised-for-exposure",
        c::Papillae::Raised if !j.case.site.is_aesthetic() => "raised-hidden",
        c::Papillae::Raised => "raised-in-view",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{DefectKind, LipLine};
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;

    #[test]
    fn papillae_left_attached_are_ideal() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn raising_them_in_view_costs_a_little_and_out_of_view_nothing() {
        let mut trial = repaired();
        trial.keys(&[("papillae", "raised")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.case.site.soft.lip = LipLine::Low;
        trial.keys(&[("papillae", "raised")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn a_wall_lost_towards_the_neighbours_needs_the_exposure() {
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("papillae", "raised")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn without_a_flap_there_is_nothing_to_leave() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
