//! A molar implant set away from the middle of the septum.

use crate::rules::prelude::*;
use crate::rules::septum;

pub(super) static RULE: Rule = Rule {
    id: "implant-off-the-septum",
    ledger: "class-molar-septum",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Let the axis of a molar implant pass through the middle of the septum."),
    why: long!(
        "The middle of the septum lies under the middle of the crown: there the bone is, and there the bite falls."
    ),
    mend: long!("Move the platform towards the middle between the roots."),
    scale: Scale::Bands(Bands {
        quantity: "distance of the axis from the middle of the septum",
        unit: "mm",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(1.5, Zone::Acceptable), Cut::past(2.5, Zone::Suboptimal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::OffsetFacial,
        Decision::OffsetDistal,
        Decision::Tilt,
        Decision::Tip,
        Decision::Depth,
    ],
    rests_on: &[Fact::RootForm],
    causes: &[Cause::NoHold],
    evidence: &[
        septum::BY_NAMES,
        septum::THREE_KINDS,
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "up to 1.5 mm counts as the middle, past 2.5 mm a root is what the implant stands over",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    if !ask::has_septum(j.case) {
        return None;
    }
    Some(Reading::Number(j.m.off_the_septum()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn a_millimetre_and_a_half_counts_as_the_middle() {
        for (off, zone) in [
            (0.0, Zone::Ideal),
            (1.5, Zone::Ideal),
            (1.501, Zone::Acceptable),
            (2.5, Zone::Acceptable),
            (2.501, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, off), zone, "{off}");
        }
    }

    #[test]
    fn the_platform_over_a_root_is_off_the_septum() {
        let mut trial = Trial::molar();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::OffsetDistal, 28);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
