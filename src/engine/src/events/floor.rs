//! An artery behind the lower jaw is opened, and the floor of the mouth swells.
//!
//! *Teaching model.* In 84 % of 25 published cases the lingual cortex had been perforated (Law 2017;
//! confirmed); how often a perforation bleeds is not published, so every number here is ours. By the
//! bone between the bed and the lingual face: perforated 0.5; less than 1 mm left 0.08; less than 2 mm
//! 0.02; from 2 mm on 0.002. Times 2 under an anticoagulant or a drug against platelets; at most 0.9.

use super::{Chance, Matter};
use crate::anatomy::Jaw;
use crate::chart::Patient;
use crate::measure::Measurements;
use crate::units::{Mm, comparable};

/// Probability, 0 to 1, of a bleed into the floor of the mouth with this bone left lingually.
#[must_use]
pub fn hazard(patient: &Patient, bone: Mm) -> f64 {
    let thin: f64 = match comparable(bone.get()) {
        bone if bone <= 0.0 => 0.5,
        bone if bone < 1.0 => 0.08,
        bone if bone < 2.0 => 0.02,
        _ => 0.002,
    };
    let thinned = patient.anticoagulant.is_some() || patient.antiplatelets > 0;
    (thin * if thinned { 2.0 } else { 1.0 }).min(0.9)
}

/// Whether the floor of the mouth swells after this drilling.
#[must_use]
pub fn floor_swells(m: &Measurements<'_>) -> bool {
    if m.case.site.tooth.jaw() != Jaw::Mandible {
        return false;
    }
    let drawn = Chance::of(m.case, Matter::Floor).unit();
    let bone = || [m.oral_bone(), m.apical_oral_bone()].into_iter().flatten().reduce(Mm::min);
    drawn < 0.9 && bone().is_some_and(|bone| drawn < hazard(&m.case.patient, bone))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::{Anticoagulant, Case};
    use crate::plan::Decision;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::Trial;

    #[test]
    fn it_falls_at_the_limits_that_the_rule_on_the_lingual_cortex_has() {
        let mut patient = Trial::plain().case.patient;
        for (bone, hazarded) in [
            (-1.0, 0.5),
            (0.0, 0.5),
            (0.001, 0.08),
            (0.999, 0.08),
            (1.0, 0.02),
            (1.999, 0.02),
            (2.0, 0.002),
        ] {
            assert!((hazard(&patient, Mm::new(bone)) - hazarded).abs() < 1e-12, "{bone}");
        }
        patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.5 });
        assert!((hazard(&patient, Mm::ZERO) - 0.9).abs() < 1e-12);
    }

    #[test]
    fn half_of_perforated_lower_jaws_swell_and_no_upper_one() {
        let mut trial = lower(Trial::plain());
        for knot in &mut trial.case.site.ridge.oral.knots {
            knot.y = -5.2;
        }
        trial.number(Decision::Tilt, -30);
        let plan = trial.plan();
        let swollen = |case: &Case| {
            (0..400)
                .map(|n| Case { title: n.to_string(), ..case.clone() })
                .filter(|case| floor_swells(&Measurements::of(case, &plan)))
                .count()
        };
        // Four standard deviations of a count of 200.
        assert!(swollen(&trial.case).abs_diff(200) < 40, "{}", swollen(&trial.case));
        trial.case.site.tooth = Trial::plain().case.site.tooth;
        assert_eq!(swollen(&trial.case), 0);
    }
}
