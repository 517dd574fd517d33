//! Membrane: take exposed dense PTFE out after about four weeks.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "dense-ptfe-out-at-the-wrong-time",
    ledger: "membrane-dptfe-open",
    family: Family::Membrane,
    step: Step::Review,
    skill: Skill::Covering,
    statement: long!("Take exposed dense PTFE out after about four weeks."),
    why: long!(
        "Earlier the tissue under it is not firm; later it is only a foreign body in the mouth."
    ),
    mend: long!("Take it out between day 21 and day 42, about day 28."),
    scale: Scale::Bands(Bands {
        quantity: "time to removal of exposed dense PTFE",
        unit: "days",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(21.0, Zone::Acceptable).published(21.0, 28.0),
            Cut::from(28.0, Zone::Ideal).published(21.0, 30.0),
            Cut::past(30.0, Zone::Acceptable).published(28.0, 42.0),
            Cut::past(42.0, Zone::Suboptimal).published(30.0, 42.0),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Membrane, Decision::Closure, Decision::MembraneOut],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Hoffmann 2008, dense PTFE over 276 sockets, J Periodontol",
            "Dense PTFE was left exposed over the socket and taken out again.",
        ),
        says(
            Source::Cohort,
            Status::Partly,
            "days to removal in published series",
            "28 days in one report and about 30 in another.",
        ),
        says(Source::Textbook, Status::FromMemory, "teaching on range of weeks", "3 to 6 weeks."),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let open = j.plan.closure.as_ref()?.kind == c::ClosureKind::LeftOpen;
    let dense = j.plan.membrane()?.kind == c::MembraneKind::DensePtfe;
    if !open || !dense {
        return None;
    }
    number(f64::from(j.plan.returns.as_ref()?.membrane_out?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (20.999, Zone::Suboptimal),
            (21.0, Zone::Acceptable),
            (21.001, Zone::Acceptable),
            (27.999, Zone::Acceptable),
            (28.0, Zone::Ideal),
            (28.001, Zone::Ideal),
            (29.999, Zone::Ideal),
            (30.0, Zone::Ideal),
            (30.001, Zone::Acceptable),
            (41.999, Zone::Acceptable),
            (42.0, Zone::Acceptable),
            (42.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn twenty_eight_days_is_ideal_and_six_weeks_the_end() {
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.keys(&[("membrane", "dense-ptfe"), ("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 20);
        trial.keys(&[("membrane", "dense-ptfe"), ("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 42);
        trial.keys(&[("membrane", "dense-ptfe"), ("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 43);
        trial.keys(&[("membrane", "dense-ptfe"), ("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn under_closed_gum_it_may_stay() {
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 120);
        trial.keys(&[("membrane", "dense-ptfe")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
