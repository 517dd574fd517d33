//! Flap: go flapless only where the keratinised tissue is at least 3 mm wide.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "flapless-on-narrow-keratinised-tissue",
    ledger: "flapless-conditions",
    family: Family::Flap,
    step: Step::Flap,
    skill: Skill::FlapDesign,
    statement: long!("Go flapless only where the keratinised tissue is at least 3 mm wide."),
    why: long!(
        "Flapless access gives you no chance to move keratinised tissue to where the crown will need it."
    ),
    mend: long!(
        "Raise a small flap and keep or move the keratinised tissue, or plan a soft-tissue graft."
    ),
    scale: Scale::Bands(Bands {
        quantity: "width of keratinised tissue",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(3.0, Zone::Acceptable).published(2.0, 4.0),
            Cut::from(4.0, Zone::Ideal).published(4.0, 5.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::FlapDesign],
    rests_on: &[Fact::GumMargin],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference 2023, statement 4",
            "Flapless placement gives good aesthetic results in selected sites.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "teaching on flapless selection criteria",
            "3 to 4 mm of keratinised tissue at least; sources range from 2 to 5 mm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let flapless = regeneration::is_flapless(j.plan)?;
    flapless.then_some(regeneration::millimetres(j.case.site.soft.keratinised))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::Mm;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (2.999, Zone::Compromising),
            (3.0, Zone::Acceptable),
            (3.001, Zone::Acceptable),
            (3.999, Zone::Acceptable),
            (4.0, Zone::Ideal),
            (4.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_flapless_plan_reads_the_width_at_the_site() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.case.site.soft.keratinised = Mm::new(2.9);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn a_raised_flap_is_not_judged_here() {
        let mut trial = repaired();
        trial.case.site.soft.keratinised = Mm::new(1.0);
        assert_eq!(trial.zone(&RULE), None);
    }
}
