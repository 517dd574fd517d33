//! An implant today where next to no septum stands between the roots of a molar.

use crate::rules::prelude::*;
use crate::rules::septum;

pub(super) static RULE: Rule = Rule {
    id: "septum-too-thin-for-an-implant",
    ledger: "class-molar-septum",
    family: Family::Defects,
    step: Step::Implant,
    skill: Skill::Course,
    statement: long!(
        "Stage a molar site whose septum is less than 2 mm wide 2 mm below the furcation."
    ),
    why: long!(
        "Between the sockets of a molar the septum is the bone that holds an implant; where it is a thin leaf, half of the implant or more stands in nothing."
    ),
    mend: long!("Graft the sockets and return, or let them heal and return."),
    scale: Scale::Bands(Bands {
        quantity: "room in the septum",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(2.0, Zone::Debated).published(2.0, 2.5),
            Cut::from(2.5, Zone::Acceptable).published(2.0, 3.0),
            Cut::from(3.0, Zone::Ideal).published(2.5, 3.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("2 mm are enough for bone round half of the implant, at first molars."),
        other: long!(
            "2.5 mm are the least at second molars, and below 3 mm a septum counts as thin."
        ),
    }),
    reads: &[Decision::Course, Decision::AfterExtraction, Decision::AfterFlap, Decision::Diameter],
    rests_on: &[Fact::RootForm, Fact::ApicalBone],
    causes: &[Cause::SiteNotReady, Cause::NoHold],
    evidence: &[
        says(
            Source::Anatomy,
            Status::Confirmed,
            "Three-dimensional radiographic assessment of immediate implant placement in the posterior mandible",
            "For bone round at least half of the implant the septum is 2.0 mm or more at first and 2.5 mm or more at second molars, 2 mm below its crest (150 sites).",
        ),
        says(
            Source::Anatomy,
            Status::Confirmed,
            "scans of the lower back jaw, South-East Asian sample",
            "57 % of lower second molars have a septum of less than 3 mm (201 scans).",
        ),
        septum::BY_NAMES,
        septum::THREE_KINDS,
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let implant = j.plan.implant_in_place()?;
    // A wide implant on the socket's walls asks nothing of the septum: its hold is judged by itself.
    if !ask::has_septum(j.case) || ask::stands_on_walls(j.m, implant) {
        return None;
    }
    Some(Reading::Number(j.m.septum_room(ask::BELOW_FURCATION)?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn published_widths_cut_the_scale() {
        for (width, zone) in [
            (1.999, Zone::Compromising),
            (2.0, Zone::Debated),
            (2.499, Zone::Debated),
            (2.5, Zone::Acceptable),
            (2.999, Zone::Acceptable),
            (3.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, width), zone, "{width}");
        }
    }

    #[test]
    fn roots_that_stand_close_leave_no_septum_to_place_in() {
        let mut trial = Trial::molar();
        let before = trial.reading(&RULE);
        assert_ne!(trial.zone(&RULE), Some(Zone::Compromising), "{before:?}");
        trial.roots_moved_by(0.8);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising), "{:?}", trial.reading(&RULE));
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), None);
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
