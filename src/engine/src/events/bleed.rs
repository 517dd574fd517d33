//! The socket bleeds again before the patient leaves.
//!
//! *Teaching model*; every number is ours, the order follows the ledger's entries on anticoagulants and
//! on bleeding after extraction. Without anything done: 0.10; times 3 under an anticoagulant, times 2
//! for each drug against platelets, times 4 with a disease of the blood. Each measure multiplies it:
//! firm pressure for 20 minutes by 0.3, pack and suture by 0.4, a tranexamic rinse by 0.7. At most 0.9.

use super::{Chance, Matter};
use crate::chart::{Case, Patient};
use crate::plan::choices::{BleedingMeasure, Several};

/// Probability, 0 to 1, that it bleeds again in this patient under these measures.
#[must_use]
pub fn hazard(patient: &Patient, done: Several<BleedingMeasure>) -> f64 {
    let mut hazard: f64 = 0.1;
    for (there, by) in [
        (patient.anticoagulant.is_some(), 3.0),
        (patient.antiplatelets > 0, 2.0),
        (patient.antiplatelets > 1, 2.0),
        (patient.bleeding.is_some(), 4.0),
        (done.has(BleedingMeasure::Pressure), 0.3),
        (done.has(BleedingMeasure::PackAndSuture), 0.4),
        (done.has(BleedingMeasure::Tranexamic), 0.7),
    ] {
        hazard *= if there { by } else { 1.0 };
    }
    hazard.min(0.9)
}

/// Whether it bleeds again.
#[must_use]
pub fn bleeds_again(case: &Case, done: Several<BleedingMeasure>) -> bool {
    Chance::of(case, Matter::Bleed).unit() < hazard(&case.patient, done)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Anticoagulant;
    use crate::rules::trial::Trial;
    use BleedingMeasure::{PackAndSuture, Pressure, Tranexamic};

    #[test]
    fn history_raises_it_and_every_measure_lowers_it() {
        let mut patient = Trial::plain().case.patient;
        let of = |patient: &Patient, done: &[_]| hazard(patient, Several::of(done));
        assert!((of(&patient, &[]) - 0.1).abs() < 1e-12);
        assert!((of(&patient, &[Pressure]) - 0.03).abs() < 1e-12);
        patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.5 });
        assert!((of(&patient, &[Pressure, PackAndSuture, Tranexamic]) - 0.0252).abs() < 1e-12);
        patient.antiplatelets = 2;
        assert!((of(&patient, &[]) - 0.9).abs() < 1e-12);
    }

    #[test]
    fn what_stops_with_less_stops_with_more() {
        let case = Trial::plain().case;
        for n in 0..2000 {
            let case = Case { title: n.to_string(), ..case.clone() };
            let [none, pressed] =
                [&[][..], &[Pressure]].map(|done| bleeds_again(&case, Several::of(done)));
            assert!(none || !pressed);
        }
    }
}
