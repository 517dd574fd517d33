//! A platform too far below the margin of the crown.

use crate::rules::prelude::*;

/// Set the platform no more than 4 mm below the planned margin.
pub(super) static RULE: Rule = Rule {
    id: "platform-too-deep",
    ledger: "pos-depth-from-margin",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Set the platform no more than 4 mm below the planned margin."),
    why: long!(
        "Each millimetre deeper is a millimetre of pocket that the patient cannot clean, and bone follows the platform down."
    ),
    mend: long!("Seat the implant less deep."),
    scale: Scale::Bands(Bands {
        quantity: "depth below the planned margin",
        unit: "mm",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(4.0, Zone::Acceptable), Cut::past(5.0, Zone::Suboptimal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Depth, Decision::OffsetFacial, Decision::Tilt],
    rests_on: &[Fact::GumMargin],
    causes: &[Cause::ImplantTooDeep],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "3 to 4 mm below the planned margin.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "outer limits",
            "More than 5 mm is too deep.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    if !j.case.site.is_aesthetic() {
        return None;
    }
    Some(Reading::Number(j.m.depth_from_margin()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn past_five_millimetres_is_too_deep() {
        for (value, zone) in [
            (3.999, Zone::Ideal),
            (4.0, Zone::Ideal),
            (4.001, Zone::Acceptable),
            (4.999, Zone::Acceptable),
            (5.0, Zone::Acceptable),
            (5.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn an_implant_sunk_into_the_socket_is_too_deep() {
        let mut trial = Trial::plain();
        trial.number(Decision::Depth, 40);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
