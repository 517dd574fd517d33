//! Flap: close without tension: at most 0.1 N holds the edges together.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "flap-closed-under-tension",
    ledger: "flap-tension",
    family: Family::Flap,
    step: Step::Closure,
    skill: Skill::FlapDesign,
    statement: long!("Close without tension: at most 0.1 N holds the edges together."),
    why: long!(
        "Edges that are pulled together part again within the week, and what lies beneath is lost with them."
    ),
    mend: long!("Release the periosteum, reflect further, or cover less."),
    scale: Scale::Bands(Bands {
        quantity: "closing force, teaching model",
        unit: "N",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(0.1, Zone::Compromising)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::FlapDesign,
        Decision::PeriostealRelease,
        Decision::Component,
        Decision::GraftMaterial,
        Decision::FillLevel,
        Decision::ContourLayer,
        Decision::Closure,
    ],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Burkhardt and Lang 2010, flap closing force, COIR",
            "Up to 0.1 N 10 % of wounds opened; above it at least 40 %.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Burkhardt and Lang 2014, J Clin Periodontol",
            "Passive advancement is about 5 mm.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "closing by feel",
            "Operators look for a passive overlap of 3 to 5 mm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let closure = j.plan.closure.as_ref()?;
    if closure.kind != c::ClosureKind::Primary {
        return None;
    }
    Some(Reading::Number(j.m.closing_force()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [(0.099, Zone::Ideal), (0.1, Zone::Ideal), (0.101, Zone::Compromising)]
        {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn an_open_wound_is_not_pulled_together() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn without_the_periosteal_release_a_layered_repair_closes_under_tension() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("periosteal-release", "no")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn a_thicker_layer_needs_more_flap_than_there_is() {
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 27);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 28);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
