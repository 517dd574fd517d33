//! A plate of 1 mm or less is not trusted on sections alone.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "section-trusted-for-a-thin-plate",
    ledger: "dx-cbct-thin-plate",
    family: Family::Diagnostics,
    step: Step::Examination,
    skill: Skill::ReadingWalls,
    statement: long!("Sound the bone where sections show a plate of 1 mm or less, or none."),
    why: long!(
        "In a section a thin plate fades into the gum beside it. It may be there, and it may not."
    ),
    mend: long!("Add bone sounding and read the two together."),
    scale: Scale::Situations(&[
        when("sounded", "the thin plate on the sections was checked by sounding", Zone::Ideal),
        when("left-open", "the thin plate on the sections was left open", Zone::Acceptable),
        when("thick-enough", "the plate on the sections is thicker than 1 mm", Zone::Acceptable),
        when(
            "trusted",
            "a plate of 1 mm or less, or one not discernible, was decided on the sections alone",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Examinations, Decision::WallReading, Decision::WallGround],
    rests_on: &[Fact::FacialThickness],
    causes: &[Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Domic 2021, J Periodontol",
            "plates of 1 mm or less: sensitivity 95.8 %, specificity 12.5 %, accuracy 54.2 %, error 1.6 mm",
        ),
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Eid 2026, BMC Oral Health",
            "dehiscence accuracy 70 % (false positive 33 to 40 %), fenestration 94 %",
        ),
    ],
    measure,
};

/// Millimetres: up to here sections are not trusted alone.
const THIN: f64 = 1.0;

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let examined = judging.plan.examined.as_ref()?;
    examined.sections?;
    let sounded = examined.examinations.has(c::Examination::BoneSounding);
    let plate = judging.case.readings.sections.facial_plate;
    let thick = plate.is_some_and(|plate| crate::units::comparable(plate.get()) > THIN);
    situation(if thick {
        if examined.ground != c::WallGround::Section {
            return None;
        }
        "thick-enough"
    } else if sounded && examined.ground != c::WallGround::Section {
        "sounded"
    } else if examined.wall == c::WallReading::Unsure {
        "left-open"
    } else if examined.ground == c::WallGround::Section {
        "trusted"
    } else {
        return None;
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn shown(plate: Option<f64>, wall: &str, ground: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.readings.sections.facial_plate = plate.map(Mm::new);
        trial.keys(&[("wall-reading", wall), ("wall-ground", ground)]);
        trial.zone(&RULE)
    }

    #[test]
    fn one_millimetre_is_still_too_thin_to_trust() {
        assert_eq!(shown(Some(1.0), "whole", "sections"), Some(Zone::Compromising));
        assert_eq!(shown(Some(1.001), "whole", "sections"), Some(Zone::Acceptable));
    }

    #[test]
    fn a_plate_that_is_not_discernible_proves_nothing_either_way() {
        assert_eq!(shown(None, "defect", "sections"), Some(Zone::Compromising));
        assert_eq!(shown(None, "defect", "sounding-and-sections"), Some(Zone::Ideal));
        assert_eq!(shown(None, "unsure", "sections"), Some(Zone::Acceptable));
    }
}
