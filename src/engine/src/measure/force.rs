//! Closing force: a teaching model.
//!
//! *Needed* is how far the facial edge has to travel to meet the oral edge: across the orifice, or,
//! beside a component that stands through the gum, across the facial gap; plus half the thickness of a
//! contour layer, over which the flap has to be draped (ours); plus the height of graft above the crest.
//!
//! *Available without tension*: 5.14 mm without release of the periosteum whatever the design, 7.37 mm
//! with it under two vertical releases (Traboulsi-Garet 2021, preclinical; confirmed, `ledger:
//! flap-type-choice`, which says that the trapezoid gains most); one release and none take two thirds
//! and one third of that gain (ours); an edge that was not raised gives 1 mm (ours).
//!
//! *Force* grows evenly to 0.1 N over what is available (the limit below which 10 % and above which
//! 40 % opened; Burkhardt and Lang 2010, confirmed, `ledger: flap-tension`) and by 0.1 N for each
//! millimetre more (ours).

use super::{Measurements, mm};
use crate::plan::choices::ClosureKind;
use crate::plan::{Component, FlapRaised, Releases};
use crate::units::{Mm, Newton};

/// Force at which a flap that uses all that is available closes.
pub const FORCE_AT_EASE: Newton = Newton::new(0.1);
/// Force for each millimetre more, N (ours).
const FORCE_BEYOND: f64 = 0.1;
/// Advancement without release of the periosteum, mm (confirmed).
const WITHOUT_RELEASE: f64 = 5.14;
/// The same with it, under two vertical releases, mm (confirmed).
const WITH_RELEASE: f64 = 7.37;
/// Advancement of an edge that was not raised, mm (ours).
const NOT_RAISED: f64 = 1.0;

impl Measurements<'_> {
    /// How far the flap's edge has to travel to close over what is to be covered, by the model of this
    /// module; 0 when the socket is left open. `None` before closure. Millimetres.
    #[must_use]
    pub fn advancement_needed(&self) -> Option<Mm> {
        let closure = self.plan.closure.as_ref()?;
        if closure.kind == ClosureKind::LeftOpen {
            return Some(Mm::ZERO);
        }
        self.advancement_to_close()
    }

    /// How far the flap's edge would have to travel to close, whether or not that is chosen: as far as
    /// closing is settled by what stands on the implant and what was laid. Millimetres.
    fn advancement_to_close(&self) -> Option<Mm> {
        let through_gum = matches!(
            self.plan.component(),
            Some(
                Component::HealingAbutment | Component::CustomAbutment | Component::Provisional(_)
            )
        );
        let across = if through_gum { self.facial_gap()?.width } else { self.socket_width()? };
        let graft = self.plan.graft_laid();
        let layer = graft.and_then(|graft| graft.contour).unwrap_or(Mm::ZERO);
        let above = graft.map_or(Mm::ZERO, |graft| graft.fill.max(Mm::ZERO));
        mm((across + layer * 0.5 + above).get())
    }

    /// Closing force by the model of this module. `None` before closure, or when the socket is left
    /// open. Newton.
    #[must_use]
    pub fn closing_force(&self) -> Option<Newton> {
        if self.plan.closure.as_ref()?.kind == ClosureKind::LeftOpen {
            return None;
        }
        self.force_to_close()
    }

    /// The force that closing would take as things stand, whether or not it is chosen: what the fingers
    /// feel when they bring the edges together. By the model of this module. Newton.
    #[must_use]
    pub fn force_to_close(&self) -> Option<Newton> {
        let needed = self.advancement_to_close()?.get();
        let available = reach_of_flap(self.plan.raised()).get();
        let force = if needed <= available {
            FORCE_AT_EASE.get() * (needed / available)
        } else {
            FORCE_AT_EASE.get() + FORCE_BEYOND * (needed - available)
        };
        Newton::checked(force).ok()
    }
}

/// How far a flap's edge travels without tension, by the model of this module.
#[must_use]
pub fn reach_of_flap(raised: Option<&FlapRaised>) -> Mm {
    let Some(raised) = raised else {
        return Mm::new(NOT_RAISED);
    };
    if !raised.periosteum_released {
        return Mm::new(WITHOUT_RELEASE);
    }
    let thirds = match raised.releases {
        Releases::None => 1.0,
        Releases::One(_) => 2.0,
        Releases::Two => 3.0,
    };
    Mm::new(WITHOUT_RELEASE + (WITH_RELEASE - WITHOUT_RELEASE) * (thirds / 3.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;

    fn closed(design: &str, released: &str) -> Trial {
        let mut trial = Trial::plain();
        trial.keys(&[
            ("flap-design", design),
            ("release-side", "distal"),
            ("papillae", "left"),
            ("periosteal-release", released),
            ("component", "cover-screw"),
            ("closure", "primary"),
        ]);
        trial.outline(Decision::FlapOutline, &[[-80, 0], [80, 0], [100, 120], [-100, 120]]);
        trial.number(Decision::ContourLayer, 0);
        trial
    }

    fn measured<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
        let plan = trial.plan();
        read(&Measurements::of(&trial.case, &plan))
    }

    #[test]
    fn the_plain_orifice_needs_its_width_and_half_the_layer() {
        let mut trial = closed("trapezoidal", "yes");
        assert_eq!(measured(&trial, |m| m.advancement_needed()), Some(Mm::new(6.0)));
        trial.number(Decision::ContourLayer, 20).number(Decision::FillLevel, 5);
        assert_eq!(measured(&trial, |m| m.advancement_needed()), Some(Mm::new(7.5)));
        trial.keys(&[("closure", "open")]);
        assert_eq!(measured(&trial, |m| m.advancement_needed()), Some(Mm::ZERO));
        assert_eq!(measured(&trial, |m| m.closing_force()), None);
    }

    #[test]
    fn what_the_flap_reaches_at_ease_closes_at_a_tenth_of_a_newton_and_not_above() {
        let force = |trial: &Trial| measured(trial, |m| m.closing_force()).unwrap().get();
        let released = force(&closed("trapezoidal", "yes"));
        assert!((released - 0.1 * 6.0 / 7.37).abs() < 1e-12, "{released}");
        let unreleased = force(&closed("trapezoidal", "no"));
        assert!((unreleased - (0.1 + 0.1 * (6.0 - 5.14))).abs() < 1e-12, "{unreleased}");
    }

    #[test]
    fn force_falls_with_each_release_and_a_component_through_the_gum_needs_less() {
        let designs = ["no-flap", "envelope", "triangular", "trapezoidal"];
        let mut last = f64::MAX;
        for design in designs {
            let force = measured(&closed(design, "yes"), |m| m.closing_force()).unwrap();
            assert!(force.get() < last, "{design} {force}");
            last = force.get();
        }
        let mut through = closed("trapezoidal", "yes");
        through.keys(&[("component", "healing-abutment")]);
        let gap = measured(&through, |m| m.facial_gap()).unwrap().width;
        assert_eq!(measured(&through, |m| m.advancement_needed()), Some(gap));
    }
}
