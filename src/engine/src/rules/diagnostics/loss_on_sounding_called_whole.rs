//! What sounding shows is read as it is.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "loss-on-sounding-called-whole",
    ledger: "dx-bone-sounding",
    family: Family::Diagnostics,
    step: Step::Examination,
    skill: Skill::ReadingWalls,
    statement: long!(
        "Call the wall defective where sounding in the middle is past 3.5 mm and 2 mm or more deeper than beside it."
    ),
    why: long!("The probe went past where the crest should be. There is no wall there to stop it."),
    mend: long!("Read the soundings against each other before you decide about the wall."),
    scale: Scale::Situations(&[
        when("loss-read", "sounding shows a loss, and you read it", Zone::Ideal),
        when(
            "loss-left-open",
            "sounding shows a loss, and you left the question open",
            Zone::Acceptable,
        ),
        when(
            "loss-called-whole",
            "sounding shows a loss, and you called the wall whole",
            Zone::Compromising,
        ),
        when(
            "normal-called-defect",
            "sounding is normal, and you called the wall defective on it",
            Zone::Suboptimal,
        ),
        when("normal-read", "sounding is normal, and you called the wall whole", Zone::Ideal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("more than 3 mm on the facial side is loss."),
        other: long!("3.19 +/- 0.71 mm was sounded over healthy bone, so the neighbours decide."),
    }),
    reads: &[Decision::Examinations, Decision::WallReading, Decision::WallGround],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2003, J Periodontol, \"Accuracy of Bone Sounding in Assessing Facial Osseous-Gingival Tissue Relationship in Maxillary Anterior Teeth\"",
            "3.19 +/- 0.71 mm sounded, 3.47 +/- 1.29 direct, 190 teeth; off by more than 1 mm in 12 %, mostly too shallow",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "up to 3.5 mm normal; loss when 2 mm or more deeper than the neighbours",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let examined = judging.plan.examined.as_ref()?;
    if !examined.examinations.has(c::Examination::BoneSounding) {
        return None;
    }
    let readings = &judging.case.readings;
    let normal = readings.sounds_normal();
    let on_it = examined.ground == c::WallGround::Sounding;
    situation(match (readings.sounds_lost(), examined.wall) {
        (true, c::WallReading::Defect) => "loss-read",
        (true, c::WallReading::Unsure) => "loss-left-open",
        (true, c::WallReading::Whole) => "loss-called-whole",
        (false, c::WallReading::Defect) if normal && on_it => "normal-called-defect",
        (false, c::WallReading::Whole) if normal => "normal-read",
        (false, _) => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn sounded(mid: f64, wall: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.readings.sounding[1].depth = Mm::new(mid);
        trial.keys(&[("wall-reading", wall), ("wall-ground", "sounding")]);
        trial.zone(&RULE)
    }

    #[test]
    fn two_millimetres_deeper_than_beside_is_a_loss() {
        assert_eq!(sounded(5.0, "whole"), Some(Zone::Compromising));
        assert_eq!(sounded(5.0, "defect"), Some(Zone::Ideal));
        assert_eq!(sounded(5.0, "unsure"), Some(Zone::Acceptable));
        assert_eq!(sounded(4.999, "whole"), None);
    }

    #[test]
    fn up_to_three_and_a_half_is_normal() {
        assert_eq!(sounded(3.5, "whole"), Some(Zone::Ideal));
        assert_eq!(sounded(3.5, "defect"), Some(Zone::Suboptimal));
        assert_eq!(sounded(3.501, "whole"), None);
    }

    #[test]
    fn a_normal_depth_beside_one_read_too_shallow_is_no_loss() {
        let beside = |mid: f64| {
            let mut trial = Trial::plain();
            trial.case.readings.sounding[2].depth = Mm::new(1.5);
            trial.case.readings.sounding[1].depth = Mm::new(mid);
            trial.keys(&[("wall-reading", "whole"), ("wall-ground", "sounding")]);
            trial.zone(&RULE)
        };
        assert_eq!(beside(3.5), Some(Zone::Ideal));
        assert_eq!(beside(3.501), Some(Zone::Compromising));
    }
}
