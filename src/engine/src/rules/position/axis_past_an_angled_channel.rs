//! How far an angled screw channel reaches: contested.

use crate::plan::choices::ScrewChannel;
use crate::rules::prelude::*;

/// Keep within 30 degrees of the planned crown even with an angled channel.
pub(super) static RULE: Rule = Rule {
    id: "axis-past-an-angled-channel",
    ledger: "pos-axis",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Keep within 30 degrees of the planned crown even with an angled channel."),
    why: long!(
        "An angled channel lets you lean further, but no figure was found that says how far."
    ),
    mend: long!("Lean the implant towards the axis of the crown."),
    scale: Scale::Bands(Bands {
        quantity: "angle between implant and planned crown, with an angled channel",
        unit: "degrees",
        lowest: Zone::Acceptable,
        cuts: &[Cut::past(30.0, Zone::Debated)],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("Correction past 25 to 30 degrees is a problem."),
        other: long!("Angled screw channels shift that limit."),
    }),
    reads: &[Decision::Tilt, Decision::Tip, Decision::ScrewChannel],
    rests_on: &[],
    causes: &[Cause::ImplantTilted],
    evidence: &[says(
        Source::Textbook,
        Status::FromMemory,
        "limit of correction",
        "Correction past 25 to 30 degrees is a problem; angled screw channels shift the limit.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    if j.plan.intention.as_ref()?.channel? != ScrewChannel::Angled {
        return None;
    }
    Some(Reading::Number(j.m.angle_to_crown()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn past_thirty_degrees_nobody_gives_a_figure() {
        for (value, zone) in [
            (20.0, Zone::Acceptable),
            (29.999, Zone::Acceptable),
            (30.0, Zone::Acceptable),
            (30.001, Zone::Debated),
            (45.0, Zone::Debated),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn it_speaks_of_angled_channels_only() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.keys(&[("screw-channel", "angled")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }
}
