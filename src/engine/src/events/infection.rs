//! The wound becomes infected in the first weeks.
//!
//! *Teaching model.* The order of its factors follows the ledger, every number is ours unless it says
//! otherwise. After an extraction alone 0.02; with a graft, a membrane or an implant in the wound 0.04.
//!
//! - By what was there and what was cleared (rows: lesion; columns: curetted and irrigated, rinsed,
//!   left): none 1, 1.2, 1.5; long-standing 1.3, 2, 3; pus 2, 3, 4; spreading 3, 4, 5. Something laid
//!   into pus: times 2 again.
//! - A chlorhexidine rinse times 0.8. An antibiotic, before or after, times 0.8: sources disagree on
//!   whether it helps at all (`ledger: antibiotic-prophylaxis`, contested), so it does little here.
//! - More than ten cigarettes a day times 1.5 (smokers lose implants at an odds ratio of 1.96;
//!   confirmed, of failure and not of infection). HbA1c above 7 % times 1.3, above 8 % times 2.
//!   Neutrophils under 1.0 times 2.
//!
//! At most 0.6. Of the infections 0.85 stay local, 0.15 spread with fever (ours). A membrane that lies
//! bare with pus is an event of its own and is not met twice.

use super::{Chance, Exposure, Matter, exposed_membrane};
use crate::anatomy::Lesion;
use crate::chart::{Case, Patient};
use crate::measure::Measurements;
use crate::plan::choices::{AntibioticAfter, AntibioticBefore, Antiseptic, Debridement};
use crate::plan::{Closure, Extraction, Plan};

/// How an infected wound looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Infection {
    /// Swelling and pus at the site, no fever.
    Local,
    /// Fever, and swelling that spreads.
    Spreading,
}

/// Probability, 0 to 1, that the wound of this plan becomes infected; `None` while the tooth stands or
/// the wound is open.
#[must_use]
pub fn hazard(case: &Case, plan: &Plan) -> Option<f64> {
    let (out, closed) = (plan.extraction.as_ref()?, plan.closure.as_ref()?);
    let laid = plan.implant_in_place().is_some()
        || plan.graft_laid().is_some()
        || plan.membrane().is_some();
    let start = if laid { 0.04 } else { 0.02 };
    let by_care = by_lesion(&case.site.lesion, out, laid) * by_drugs(plan, closed);
    Some((start * by_care * by_patient(&case.patient)).min(0.6))
}

const fn by_lesion(lesion: &Lesion, out: &Extraction, laid: bool) -> f64 {
    let [cleared, rinsed, left] = match lesion {
        Lesion::None => [1.0, 1.2, 1.5],
        Lesion::Chronic { .. } => [1.3, 2.0, 3.0],
        Lesion::Abscess { .. } => [2.0, 3.0, 4.0],
        Lesion::Spreading { .. } => [3.0, 4.0, 5.0],
    };
    let into_pus = laid && matches!(lesion, Lesion::Abscess { .. } | Lesion::Spreading { .. });
    let by = match out.debridement {
        Debridement::CuretteAndIrrigate => cleared,
        Debridement::Rinse => rinsed,
        Debridement::Nothing => left,
    };
    by * if into_pus { 2.0 } else { 1.0 }
}

fn by_drugs(plan: &Plan, closed: &Closure) -> f64 {
    let before = plan.intention.as_ref().and_then(|intention| intention.antibiotic);
    let given = before.is_some_and(|drug| drug != AntibioticBefore::None)
        || closed.antibiotic != AntibioticAfter::None;
    let rinsed = closed.antiseptic == Antiseptic::Chlorhexidine;
    [given, rinsed].into_iter().map(|there| if there { 0.8 } else { 1.0 }).product()
}

fn by_patient(patient: &Patient) -> f64 {
    let smoke = if patient.cigarettes > 10 { 1.5 } else { 1.0 };
    let sugar = match patient.sugar.as_ref().map(|sugar| sugar.hba1c) {
        Some(hba1c) if hba1c > 8.0 => 2.0,
        Some(hba1c) if hba1c > 7.0 => 1.3,
        _ => 1.0,
    };
    let few = patient.bleeding.as_ref().is_some_and(|counts| counts.neutrophils < 1.0);
    smoke * sugar * if few { 2.0 } else { 1.0 }
}

/// More than any plan's hazard in this case: above it no plan is looked at.
pub(super) fn most(case: &Case) -> f64 {
    let worst = match case.site.lesion {
        Lesion::None => 1.5,
        Lesion::Chronic { .. } => 3.0,
        Lesion::Abscess { .. } => 8.0,
        Lesion::Spreading { .. } => 10.0,
    };
    (0.04 * worst * by_patient(&case.patient)).min(0.6)
}

/// How the wound is found in the first weeks; `None` when it heals clean.
#[must_use]
pub fn infected(m: &Measurements<'_>) -> Option<Infection> {
    let mut chance = Chance::of(m.case, Matter::Infection);
    let drawn = chance.unit();
    if drawn >= most(m.case) || drawn >= hazard(m.case, m.plan)? {
        return None;
    }
    if exposed_membrane(m) == Some(Exposure::Pus) {
        return None;
    }
    Some(if chance.unit() < 0.85 { Infection::Local } else { Infection::Spreading })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Sugar;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn of(trial: &Trial) -> f64 {
        hazard(&trial.case, &trial.plan()).unwrap()
    }

    #[test]
    fn clearing_rinsing_and_not_smoking_lower_it() {
        let mut trial = Trial::plain();
        assert!((of(&trial) - 0.04 * 0.8).abs() < 1e-12);
        trial.keys(&[("antiseptic", "none")]);
        assert!((of(&trial) - 0.04).abs() < 1e-12);
        trial.case.site.lesion = Lesion::Chronic { diameter: Mm::new(4.0) };
        let mut last = 0.0;
        for (done, by) in [("curette-and-irrigate", 1.3), ("rinse", 2.0), ("nothing", 3.0)] {
            trial.keys(&[("debridement", done)]);
            assert!((of(&trial) - 0.04 * by).abs() < 1e-12 && of(&trial) > last, "{done}");
            last = of(&trial);
        }
        trial.keys(&[("antibiotic-before", "amoxicillin-2g")]);
        assert!((of(&trial) - 0.12 * 0.8).abs() < 1e-12);
        trial.keys(&[("antibiotic-after", "short-course")]);
        assert!((of(&trial) - 0.12 * 0.8).abs() < 1e-12, "a second drug adds nothing");
        for (cigarettes, by) in [(10, 1.0), (11, 1.5)] {
            trial.case.patient.cigarettes = cigarettes;
            assert!((of(&trial) - 0.096 * by).abs() < 1e-12, "{cigarettes}");
        }
        for (hba1c, by) in [(7.0, 1.0), (7.1, 1.3), (8.0, 1.3), (8.1, 2.0)] {
            trial.case.patient.sugar = Some(Sugar { hba1c });
            assert!((of(&trial) - 0.144 * by).abs() < 1e-12, "{hba1c}");
        }
    }

    #[test]
    fn an_implant_in_pus_is_the_worst_and_no_plan_passes_the_most_of_its_case() {
        let mut trial = Trial::plain();
        trial.keys(&[("antiseptic", "none"), ("debridement", "nothing")]);
        let diameter = Mm::new(4.0);
        for (lesion, by) in [
            (Lesion::None, 1.5),
            (Lesion::Chronic { diameter }, 3.0),
            (Lesion::Abscess { diameter }, 8.0),
            (Lesion::Spreading { diameter }, 10.0),
        ] {
            trial.case.site.lesion = lesion;
            assert!((of(&trial) - 0.04 * by).abs() < 1e-12);
            assert!(of(&trial) <= most(&trial.case) + 1e-12);
        }
        trial.course("let-heal").keys(&[("debridement", "curette-and-irrigate")]);
        assert!((of(&trial) - 0.02 * 3.0).abs() < 1e-12, "nothing lies in the wound");
    }

    #[test]
    fn it_comes_as_often_as_the_hazard_says() {
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Abscess { diameter: Mm::new(4.0) };
        trial.case.patient.cigarettes = 20;
        let plan = trial.plan();
        let expected = 2000.0 * of(&trial);
        let found: Vec<_> = (0..2000)
            .map(|n| Case { title: n.to_string(), ..trial.case.clone() })
            .filter_map(|case| infected(&Measurements::of(&case, &plan)))
            .collect();
        // Four standard deviations of a count near 384.
        assert!((found.len() as f64 - expected).abs() < 70.0, "{} of {expected}", found.len());
        let spread = found.iter().filter(|look| **look == Infection::Spreading).count() as f64;
        assert!((spread / found.len() as f64 - 0.15).abs() < 0.08, "{spread}");
    }
}
