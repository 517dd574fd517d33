//! The lip stays numb once the anaesthetic has worn off.
//!
//! *Teaching model*; every number is ours, the order follows the ledger: the nearer the drilled bed to
//! the canal or to the foramen and its loop, the likelier. In the canal 0.9; less than 1 mm off 0.4;
//! less than 2 mm 0.1; from 2 mm on 0.005. Without canal, foramen or implant drilled for: nothing.

use super::{Chance, Matter};
use crate::measure::Measurements;
use crate::units::{Mm, comparable};

/// Probability, 0 to 1, of numbness at this distance of the drilled bed from the nerve.
#[must_use]
pub fn hazard(distance: Mm) -> f64 {
    match comparable(distance.get()) {
        off if off <= 0.0 => 0.9,
        off if off < 1.0 => 0.4,
        off if off < 2.0 => 0.1,
        _ => 0.005,
    }
}

/// Whether the lip stays numb.
#[must_use]
pub fn stays_numb(m: &Measurements<'_>) -> bool {
    let vital = &m.case.site.vital;
    if vital.canal.is_none() && vital.foramen.is_none() && vital.loop_.is_none() {
        return false;
    }
    let drawn = Chance::of(m.case, Matter::Numbness).unit();
    let near = || [m.to_canal(), m.to_foramen()].into_iter().flatten().reduce(Mm::min);
    drawn < 0.9 && near().is_some_and(|distance| drawn < hazard(distance))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_falls_at_the_limits_that_the_rule_on_the_canal_has() {
        for (distance, hazarded) in [
            (-0.5, 0.9),
            (0.0, 0.9),
            (0.001, 0.4),
            (0.999, 0.4),
            (1.0, 0.1),
            (1.999, 0.1),
            (2.0, 0.005),
            (9.0, 0.005),
        ] {
            assert!((hazard(Mm::new(distance)) - hazarded).abs() < 1e-12, "{distance}");
        }
    }
}
