//! A course of care that is lighter than the grade of the extraction defect.

use crate::anatomy::{Site, Wall};
use crate::plan::choices::Course;
use crate::rules::prelude::*;
use crate::units::comparable;

/// Let the grade of the fresh socket decide: place in grades 1 and 2, rebuild first in grades 3 and 4.
pub(super) static RULE: Rule = Rule {
    id: "socket-graded-too-lightly",
    ledger: "class-eds",
    family: Family::Defects,
    step: Step::Extraction,
    skill: Skill::Course,
    statement: long!(
        "Let the grade of the fresh socket decide: place in grades 1 and 2, rebuild first in grades 3 and 4."
    ),
    why: long!(
        "The more walls and height are gone, the less there is to hold an implant and its graft, and the more you ask of one operation."
    ),
    mend: long!("Revise after the extraction: graft the socket and return."),
    scale: Scale::Situations(&[
        when("one-placed", "the socket is of grade 1 and the implant goes in today", Zone::Ideal),
        when("two-placed", "the socket is of grade 2 and the implant goes in today", Zone::Ideal),
        when("two-preserved", "the socket is of grade 2 and is grafted first", Zone::Ideal),
        when("three-preserved", "the socket is of grade 3 and is grafted first", Zone::Ideal),
        when(
            "three-placed",
            "the socket is of grade 3 and the implant goes in today",
            Zone::Debated,
        ),
        when("four-preserved", "the socket is of grade 4 and is grafted first", Zone::Ideal),
        when(
            "four-placed",
            "the socket is of grade 4 and the implant goes in today",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Grades 3 and 4 are rebuilt first, and the implant follows."),
        other: long!(
            "A facial defect can be repaired in one stage with contour graft and tissue graft."
        ),
    }),
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
    ],
    rests_on: &[Fact::FacialWall, Fact::OralWall, Fact::CrestLevel],
    causes: &[Cause::SiteNotReady, Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Opinion,
            Status::FromMemory,
            "Caplanis, Lozada and Kan 2005 and 2009, extraction defect classification",
            "Grades by loss and walls: 1 none, 2 up to 2 mm and at most one wall, 3 from 3 to 5 mm and one or two, 4 more than 5 mm and two or more; the system was read, its millimetres were not.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2023, Compendium",
            "All 16 facial defects of V or U shape repaired in one stage stayed stable for a mean of 6 years.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "bounds between the grades",
            "Sounding classes run to 3, above 3 to 5, above 5 to below 8, and 8 mm or more, because the table of the source has holes.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.extraction.as_ref()?;
    let placed = match j.plan.course()? {
        Course::PlaceToday => true,
        Course::GraftAndReturn => false,
        _ => return None,
    };
    let grade = grade(sounding(&j.case.site, j.m.crest_loss()?.get()), walls(&j.case.site));
    situation(match (grade, placed) {
        (1, true) => "one-placed",
        (1, false) => return None,
        (2, true) => "two-placed",
        (2, false) => "two-preserved",
        (3, true) => "three-placed",
        (3, false) => "three-preserved",
        (_, true) => "four-placed",
        (_, false) => "four-preserved",
    })
}

/// From the twin's margin, which stands for the neighbours' line, to the facial crest as it is.
fn sounding(site: &Site, crest_loss: f64) -> f64 {
    crest_loss - (site.soft.margin_z - site.soft.margin_below_twin).get()
}

fn walls(site: &Site) -> usize {
    [Wall::Facial, Wall::Oral].iter().filter(|wall| site.defects_of(**wall).count() > 0).count()
}

/// The worse of what the sounding and what the walls say.
fn grade(sounding: f64, walls: usize) -> usize {
    let by_depth = match comparable(sounding) {
        depth if depth <= 3.0 => 1,
        depth if depth <= 5.0 => 2,
        depth if depth < 8.0 => 3,
        _ => 4,
    };
    by_depth.max(walls + 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{rules::trial::Trial, units::Mm};

    #[test]
    fn grades_change_at_three_five_and_eight() {
        let by_depth = |depth| grade(depth, 0);
        assert_eq!([2.999, 3.0, 3.001].map(by_depth), [1, 1, 2]);
        assert_eq!([4.999, 5.0, 5.001].map(by_depth), [2, 2, 3]);
        assert_eq!([7.999, 8.0, 8.001].map(by_depth), [3, 4, 4]);
    }

    #[test]
    fn a_harmed_wall_raises_the_grade_and_four_millimetres_lost_are_grade_three() {
        assert_eq!(grade(3.0, 1), 2);
        assert_eq!(grade(3.0, 2), 3);
        assert_eq!(grade(3.0 + 4.0, 1), 3);
    }

    #[test]
    fn recession_does_not_hide_a_loss_of_height() {
        let mut site = Trial::plain().case.site;
        assert!((sounding(&site, 0.0) - 3.0).abs() < 1e-9);
        site.soft.margin_z = Mm::new(-1.0);
        site.soft.margin_below_twin = Mm::new(2.0);
        assert!((sounding(&site, 2.0) - 5.0).abs() < 1e-9);
    }

    #[test]
    fn a_whole_socket_is_of_grade_one() {
        assert_eq!(Trial::plain().reading(&RULE), Some(Reading::Situation("one-placed")));
    }
}
