//! The wound opens over a membrane, and a review finds it bare.
//!
//! *Teaching model* on published rates. Where the edges meet at 0.1 N or less the wound opens in 0.10,
//! above that in 0.40 (Burkhardt and Lang 2010; confirmed); a cross-linked membrane lies bare 1.3 times
//! as often (Wessing 2018; confirmed), under more than ten cigarettes a day 1.5 times (ours). The
//! pooled rate over guided regeneration is 0.168 (0.106 to 0.254; Lim 2018; confirmed), between the
//! two. A socket that was left open shows its membrane on purpose, and that is no event.
//!
//! How it looks: small in 0.55, larger than 3 mm in 0.35, with pus in 0.10 (ours).

use super::{Chance, Matter};
use crate::measure::{FORCE_AT_EASE, Measurements};
use crate::plan::choices::MembraneKind;
use crate::units::comparable;

/// How a bare membrane looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// 3 mm or less, no pus.
    Small,
    /// More than 3 mm, no pus.
    Wide,
    /// With pus.
    Pus,
}

/// More than any hazard here: above it nothing is measured.
pub(super) const MOST: f64 = 0.4 * 1.3 * 1.5;

/// Probability, 0 to 1, that the wound opens over the membrane of this plan; `None` without a membrane
/// under closed edges.
#[must_use]
pub fn hazard(m: &Measurements<'_>) -> Option<f64> {
    let membrane = m.plan.membrane()?;
    let force = comparable(m.closing_force()?.get());
    let tight = if force <= FORCE_AT_EASE.get() { 0.1 } else { 0.4 };
    let linked = if membrane.kind == MembraneKind::CrossLinked { 1.3 } else { 1.0 };
    let smoke = if m.case.patient.cigarettes > 10 { 1.5 } else { 1.0 };
    Some(tight * linked * smoke)
}

/// How the membrane is found at review; `None` when it stays covered.
#[must_use]
pub fn exposed_membrane(m: &Measurements<'_>) -> Option<Exposure> {
    let mut chance = Chance::of(m.case, Matter::Exposure);
    let drawn = chance.unit();
    if drawn >= MOST || drawn >= hazard(m)? {
        return None;
    }
    let look = chance.unit();
    Some(match look {
        _ if look < 0.55 => Exposure::Small,
        _ if look < 0.9 => Exposure::Wide,
        _ => Exposure::Pus,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Case;
    use crate::rules::regeneration::repaired;

    #[test]
    fn tension_opens_wounds_four_times_as_often() {
        let mut trial = repaired();
        for (released, hazarded) in [("yes", 0.1), ("no", 0.4)] {
            trial.keys(&[
                ("periosteal-release", released),
                ("closure", "primary"),
                ("membrane", "native-collagen"),
            ]);
            let plan = trial.plan();
            let m = Measurements::of(&trial.case, &plan);
            assert!((hazard(&m).unwrap() - hazarded).abs() < 1e-12);
        }
        trial.keys(&[("membrane", "cross-linked-collagen")]);
        trial.case.patient.cigarettes = 11;
        let plan = trial.plan();
        assert!((hazard(&Measurements::of(&trial.case, &plan)).unwrap() - MOST).abs() < 1e-12);
    }

    #[test]
    fn an_open_socket_and_a_site_without_membrane_expose_nothing() {
        let mut trial = repaired();
        trial.keys(&[("closure", "open")]);
        let plan = trial.plan();
        assert_eq!(hazard(&Measurements::of(&trial.case, &plan)), None);
    }

    #[test]
    fn a_released_flap_opens_in_one_of_ten() {
        let mut trial = repaired();
        trial.keys(&[("periosteal-release", "yes"), ("closure", "primary")]);
        trial.keys(&[("membrane", "native-collagen")]);
        let plan = trial.plan();
        let ground = crate::measure::Ground::of(&trial.case.site);
        let opened = (0..1000)
            .map(|n| Case { title: n.to_string(), ..trial.case.clone() })
            .filter(|case| exposed_membrane(&Measurements::on(&ground, case, &plan)).is_some())
            .count();
        // Four standard deviations of a count of 100.
        assert!(opened.abs_diff(100) < 40, "{opened}");
    }
}
