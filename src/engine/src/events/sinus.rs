//! The drill tears the lining of the sinus.
//!
//! *Teaching model*; the probabilities are ours, the order follows the ledger: the lining bears an
//! entry of up to 2 mm more often than not. The drill's tip runs 1 mm past the implant's apex. Up to
//! 1 mm past the floor 0.2; up to 2 mm 0.4; up to 3 mm 0.6; farther 0.9. Short of the floor: nothing.
//!
//! How large: under 5 mm in 0.7, 5 to 10 mm in 0.25, more than 10 mm in 0.05 (ours; the classes are the
//! ledger's).

use super::{Chance, Matter};
use crate::anatomy::FloorKind;
use crate::measure::{DRILL_OVERSHOOT, Measurements};
use crate::units::comparable;

/// How large a tear is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tear {
    /// Under 5 mm.
    Small,
    /// 5 to 10 mm.
    Middling,
    /// More than 10 mm.
    Large,
}

/// Probability, 0 to 1, of a tear when the drill's tip stands this far past the floor, mm.
#[must_use]
pub fn hazard(past: f64) -> f64 {
    match comparable(past) {
        past if past <= 0.0 => 0.0,
        past if past <= 1.0 => 0.2,
        past if past <= 2.0 => 0.4,
        past if past <= 3.0 => 0.6,
        _ => 0.9,
    }
}

/// The tear that drilling made; `None` where the lining is whole or no sinus is near.
#[must_use]
pub fn torn_lining(m: &Measurements<'_>) -> Option<Tear> {
    if m.case.site.vital.floor.as_ref()?.kind != FloorKind::Sinus {
        return None;
    }
    // The bed was drilled for the first.
    if let Some(plan) = m.plan.with_the_first() {
        return torn_lining(&Measurements::on(m.ground(), m.case, &plan));
    }
    let past = DRILL_OVERSHOOT.get() - m.to_floor()?.get();
    let mut chance = Chance::of(m.case, Matter::Sinus);
    if chance.unit() >= hazard(past) {
        return None;
    }
    let large = chance.unit();
    Some(match large {
        _ if large < 0.7 => Tear::Small,
        _ if large < 0.95 => Tear::Middling,
        _ => Tear::Large,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Floor;
    use crate::chart::Case;
    use crate::plan::Plan;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn it_rises_with_every_millimetre_past_the_floor() {
        let at = [0.0, 0.001, 1.0, 1.001, 2.0, 3.0, 3.001].map(hazard);
        assert_eq!(at, [0.0, 0.2, 0.2, 0.4, 0.4, 0.6, 0.9]);
    }

    #[test]
    fn only_a_sinus_tears_and_only_past_its_floor() {
        let mut trial = Trial::plain();
        let torn = |case: &Case, plan: &Plan| {
            (0..200)
                .map(|n| Case { title: n.to_string(), ..case.clone() })
                .filter(|case| torn_lining(&Measurements::of(case, plan)).is_some())
                .count()
        };
        let plan = trial.plan();
        assert_eq!(torn(&trial.case, &plan), 0);
        for (kind, z, some) in [
            (FloorKind::Sinus, 8.0, true),
            (FloorKind::Nose, 8.0, false),
            (FloorKind::Sinus, 25.0, false),
        ] {
            trial.case.site.vital.floor = Some(Floor { kind, z: Mm::new(z), rise: 0.0 });
            assert_eq!(torn(&trial.case, &plan) > 0, some, "{kind:?} {z}");
        }
    }
}
