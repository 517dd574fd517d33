//! A molar crown on a narrow implant.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "implant-too-narrow-for-a-molar",
    ledger: "dim-diameter",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Choose 4.5 mm or more for a molar, where bone and neighbours leave the room."
    ),
    why: long!(
        "A molar crown is wide and bitten on hard; a narrow neck under it bends and catches food."
    ),
    mend: long!("Choose the next wider diameter; where there is no room for it, graft and return."),
    scale: Scale::Bands(Bands {
        quantity: "diameter",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(4.0, Zone::Acceptable).published(3.8, 4.5),
            Cut::from(4.5, Zone::Ideal).published(4.5, 6.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Diameter],
    rests_on: &[Fact::NeighbourRoots],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::FromMemory,
            "usual sizes by tooth",
            "3.8 to 4.5 mm at central, canine and premolar, 4.5 to 6 at molar sites.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "The diameter follows bone and gap (principle; sizes were not read there).",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let implant = j.plan.implant_in_place()?;
    let molar = j.case.site.tooth.kind() == Kind::Molar;
    molar.then(|| Reading::Number(implant.diameter.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn four_millimetres_are_the_least_and_four_and_a_half_usual() {
        for (diameter, zone) in [
            (3.999, Zone::Suboptimal),
            (4.0, Zone::Acceptable),
            (4.499, Zone::Acceptable),
            (4.5, Zone::Ideal),
            (6.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, diameter), zone, "{diameter}");
        }
    }

    #[test]
    fn only_molars_are_asked() {
        let mut trial = Trial::molar();
        trial.number(Decision::Diameter, 35);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
