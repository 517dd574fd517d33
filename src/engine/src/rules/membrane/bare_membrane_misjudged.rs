//! A membrane that lies bare at review, answered by its kind and by what comes from under it.

use crate::events::{Exposure, exposed_membrane};
use crate::plan::choices::{ExposureRescue, MembraneKind};
use crate::rules::prelude::*;

/// Rinse and watch a bare membrane that is small or resorbs, take out what is wide or has pus.
pub(super) static RULE: Rule = Rule {
    id: "bare-membrane-misjudged",
    ledger: "membrane-exposure-management",
    family: Family::Membrane,
    step: Step::Review,
    skill: Skill::Covering,
    statement: long!(
        "Rinse and watch a bare membrane that is small or resorbs, and take out what is wide or has pus."
    ),
    why: long!(
        "Germs grow on what lies bare: a rinse holds a small field for some weeks, a wide one or pus it does not."
    ),
    mend: long!("Judge by kind, width and pus."),
    scale: Scale::Situations(&[
        when("kept", "the bare membrane is rinsed and watched, as it may be", Zone::Ideal),
        when("taken-out", "the bare membrane is taken out, as it must be", Zone::Ideal),
        when("dense-kept", "a dense membrane is kept though it lies bare widely", Zone::Acceptable),
        when("taken-early", "a bare membrane that could be kept is taken out", Zone::Suboptimal),
        when(
            "wide-kept",
            "a widely bare membrane that does not resorb is kept",
            Zone::Compromising,
        ),
        when("pus-left", "a membrane with pus under it stays in", Zone::Unsafe),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::BareMembrane, Decision::Membrane],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::FromMemory,
            "Fontana 2011, classes of exposure, IJPRD",
            "3 mm or less without pus is rinsed and kept for about a month, wider is removed, pus is removed at once.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Vroom 2022, dense membranes, IJPRD",
            "Dense membranes bear exposure longer and have a scheme of their own.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let answer = j.plan.rescue.exposure?;
    answered(j.plan.membrane()?.kind, exposed_membrane(j.m)?, answer)
}

fn answered(kind: MembraneKind, look: Exposure, answer: ExposureRescue) -> Option<Reading> {
    use ExposureRescue::{CoverAgain, Remove, RinseAndKeep};
    let resorbs = matches!(kind, MembraneKind::NativeCollagen | MembraneKind::CrossLinked);
    situation(match (look, answer) {
        (Exposure::Pus, Remove) => "taken-out",
        (Exposure::Pus, _) => "pus-left",
        // Sewing over it again is a fault of its own, with a rule of its own.
        (_, CoverAgain) => return None,
        (Exposure::Small, RinseAndKeep) => "kept",
        (Exposure::Wide, RinseAndKeep) if resorbs => "kept",
        (Exposure::Wide, RinseAndKeep) if kind == MembraneKind::DensePtfe => "dense-kept",
        (Exposure::Wide, RinseAndKeep) => "wide-kept",
        (Exposure::Wide, Remove) if !resorbs => "taken-out",
        (Exposure::Small | Exposure::Wide, Remove) => "taken-early",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Case;
    use crate::events::exposure_in;
    use crate::rules::regeneration::repaired;

    #[test]
    fn kind_width_and_pus_decide() {
        use Exposure::{Pus, Small, Wide};
        use ExposureRescue::{CoverAgain, Remove, RinseAndKeep};
        use MembraneKind::{DensePtfe, ExpandedPtfe, NativeCollagen};
        let said = [
            (NativeCollagen, Small, RinseAndKeep, Zone::Ideal),
            (NativeCollagen, Wide, RinseAndKeep, Zone::Ideal),
            (NativeCollagen, Wide, Remove, Zone::Suboptimal),
            (NativeCollagen, Pus, RinseAndKeep, Zone::Unsafe),
            (ExpandedPtfe, Small, RinseAndKeep, Zone::Ideal),
            (ExpandedPtfe, Wide, RinseAndKeep, Zone::Compromising),
            (ExpandedPtfe, Wide, Remove, Zone::Ideal),
            (DensePtfe, Wide, RinseAndKeep, Zone::Acceptable),
            (DensePtfe, Pus, CoverAgain, Zone::Unsafe),
            (DensePtfe, Pus, Remove, Zone::Ideal),
        ];
        for (kind, look, answer, zone) in said {
            let reading = answered(kind, look, answer).unwrap();
            assert_eq!(RULE.zone_of(reading), Some(zone), "{kind:?} {look:?} {answer:?}");
        }
        assert_eq!(answered(DensePtfe, Small, CoverAgain), None);
    }

    #[test]
    fn it_is_judged_where_the_wound_opened() {
        let mut trial = repaired();
        trial.keys(&[("closure", "primary"), ("periosteal-release", "no")]);
        let cases = || (0..1000).map(|n| Case { title: n.to_string(), ..repaired().case });
        trial.case = cases().find(|case| exposure_in(&trial.draft, case).is_none()).unwrap();
        assert_eq!(trial.zone(&RULE), None);
        let small = |case: &Case| exposure_in(&trial.draft, case) == Some(Exposure::Small);
        trial.case = cases().find(small).unwrap();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("bare-membrane", "remove")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
