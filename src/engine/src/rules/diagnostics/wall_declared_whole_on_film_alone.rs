//! A clear film never proves a whole facial wall.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "wall-declared-whole-on-film-alone",
    ledger: "dx-2d-limits",
    family: Family::Diagnostics,
    step: Step::Examination,
    skill: Skill::ReadingWalls,
    statement: long!(
        "Hold the facial wall for whole only on sounding or sections, never on a film or on how the gum looks."
    ),
    why: long!(
        "The film looks through the wall from the front. What lies in its plane, thin or missing, does not show."
    ),
    mend: long!("Sound the bone, or leave the question open until the socket can be probed."),
    scale: Scale::Situations(&[
        when("on-sounding", "the reading of the wall rests on sounding", Zone::Ideal),
        when("on-sections", "the reading of the wall rests on sections alone", Zone::Acceptable),
        when("left-open", "the question of the wall was left open", Zone::Acceptable),
        when("defect-on-film", "a defect was read off the film or the gum alone", Zone::Suboptimal),
        when("whole-on-film", "the wall was held for whole on a film", Zone::Compromising),
        when(
            "whole-on-appearance",
            "the wall was held for whole because the gum looks normal",
            Zone::Compromising,
        ),
        when(
            "whole-on-nothing",
            "the wall was held for whole on no ground at all",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::WallReading, Decision::WallGround],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Bender & Seltzer 1961, J Am Dent Assoc",
            "lesions within the marrow, and 1 mm lesions of the cortex, did not show; loss shows once the cortex is perforated or eroded",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Elian 2007, simplified socket classification",
            "in type II the gum looks normal over a missing plate",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "habit of the trade",
            "after a root fracture the wall is examined again once the tooth is out",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    use c::{WallGround as Ground, WallReading as Wall};
    let examined = judging.plan.examined.as_ref()?;
    situation(match (examined.wall, examined.ground) {
        (Wall::Unsure, _) | (Wall::Defect, Ground::Nothing) => "left-open",
        (_, Ground::Sounding | Ground::SoundingAndSection) => "on-sounding",
        (_, Ground::Section) => "on-sections",
        (Wall::Defect, Ground::FilmOnly | Ground::Appearance) => "defect-on-film",
        (Wall::Whole, Ground::FilmOnly) => "whole-on-film",
        (Wall::Whole, Ground::Appearance) => "whole-on-appearance",
        (Wall::Whole, Ground::Nothing) => "whole-on-nothing",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn read(wall: &str, ground: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.keys(&[("wall-reading", wall), ("wall-ground", ground)]);
        trial.zone(&RULE)
    }

    #[test]
    fn neither_film_nor_gum_nor_nothing_makes_a_wall_whole() {
        for ground in ["film", "appearance", "nothing"] {
            assert_eq!(read("whole", ground), Some(Zone::Compromising), "{ground}");
        }
    }

    #[test]
    fn sounding_is_ideal_and_an_open_question_is_no_fault() {
        assert_eq!(read("whole", "sounding"), Some(Zone::Ideal));
        assert_eq!(read("whole", "sections"), Some(Zone::Acceptable));
        assert_eq!(read("unsure", "film"), Some(Zone::Acceptable));
    }
}
