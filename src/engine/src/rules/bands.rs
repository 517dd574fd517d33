//! Zones, and the bands that cut a scale into them.

use crate::units::comparable;

/// What a value or a choice is worth, from best to worst; `practice` section 2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Zone {
    /// As good as it gets.
    Ideal,
    /// Good enough by every account.
    Acceptable,
    /// The sources disagree: both positions are shown, nothing is marked.
    Debated,
    /// Outside what any source recommends; costs little.
    Suboptimal,
    /// Outside; likely to compromise the outcome.
    Compromising,
    /// Can hurt the patient.
    Unsafe,
}

impl Zone {
    /// The word of the verdict.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Ideal => "ideal",
            Self::Acceptable => "acceptable",
            Self::Debated => "debated",
            Self::Suboptimal => "outside: suboptimal",
            Self::Compromising => "outside: likely to compromise",
            Self::Unsafe => "unsafe",
        }
    }

    /// What files and programs hold.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Ideal => "ideal",
            Self::Acceptable => "acceptable",
            Self::Debated => "debated",
            Self::Suboptimal => "outside-suboptimal",
            Self::Compromising => "outside-likely-to-compromise",
            Self::Unsafe => "unsafe",
        }
    }

    /// Whether it is a fault.
    #[must_use]
    pub const fn is_fault(self) -> bool {
        matches!(self, Self::Suboptimal | Self::Compromising | Self::Unsafe)
    }
}

/// To which side a value exactly at a cut belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Belongs {
    /// At the cut, the zone below it still holds (*more than* the cut is needed to leave it).
    Below,
    /// At the cut, the zone above it holds (*at least* the cut suffices).
    Above,
}

/// Where one zone ends and the next begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// The value, in the scale's unit.
    pub at: f64,
    /// Side of a value exactly there.
    pub belongs: Belongs,
    /// The zone from here on.
    pub then: Zone,
    /// Least and greatest figure that published sources give for this cut; equal where they agree.
    pub published: [f64; 2],
}

impl Cut {
    /// A value exactly here belongs above; all sources agree on the figure.
    #[must_use]
    pub const fn from(at: f64, then: Zone) -> Self {
        Self { at, belongs: Belongs::Above, then, published: [at, at] }
    }

    /// A value exactly here belongs below; all sources agree on the figure.
    #[must_use]
    pub const fn past(at: f64, then: Zone) -> Self {
        Self { at, belongs: Belongs::Below, then, published: [at, at] }
    }

    /// Sources give figures from `least` to `most` for this cut.
    #[must_use]
    pub const fn published(self, least: f64, most: f64) -> Self {
        Self { published: [least, most], ..self }
    }
}

/// A scale cut into zones, from the lowest value up. Those of a rule stand for ever; a set may move cuts
/// of its own ([`Local`](super::Local)).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bands<'a> {
    /// What is measured, in words that follow *the* or stand alone: "membrane margin".
    pub quantity: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// The zone below the first cut.
    pub lowest: Zone,
    /// Cuts in rising order.
    pub cuts: &'a [Cut],
}

impl Bands<'_> {
    /// The zone of a value. The value is rounded to the project's comparison step first.
    #[must_use]
    pub fn zone_of(&self, value: f64) -> Zone {
        let value = comparable(value);
        self.cuts
            .iter()
            .rfind(|cut| match cut.belongs {
                Belongs::Above => cut.at <= value,
                Belongs::Below => cut.at < value,
            })
            .map_or(self.lowest, |cut| cut.then)
    }

    /// Zones with their ends, from the lowest up: (from, to, zone); open ends are `None`.
    pub fn zones(&self) -> impl Iterator<Item = (Option<f64>, Option<f64>, Zone)> + '_ {
        let ends = self.cuts.iter().map(|cut| Some(cut.at));
        let starts = core::iter::once((None, self.lowest))
            .chain(self.cuts.iter().map(|cut| (Some(cut.at), cut.then)));
        starts.zip(ends.chain([None])).map(|((from, zone), to)| (from, to, zone))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MARGIN: Bands<'_> = Bands {
        quantity: "margin",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(2.0, Zone::Acceptable), Cut::past(4.0, Zone::Suboptimal)],
    };

    #[test]
    fn a_value_at_a_cut_belongs_where_the_cut_says() {
        assert_eq!(MARGIN.zone_of(1.999), Zone::Compromising);
        assert_eq!(MARGIN.zone_of(2.0), Zone::Acceptable);
        assert_eq!(MARGIN.zone_of(4.0), Zone::Acceptable);
        assert_eq!(MARGIN.zone_of(4.001), Zone::Suboptimal);
    }

    #[test]
    fn less_than_the_comparison_step_does_not_decide() {
        assert_eq!(MARGIN.zone_of(1.999_6), Zone::Acceptable);
        assert_eq!(MARGIN.zone_of(4.000_4), Zone::Acceptable);
    }

    #[test]
    fn zones_are_listed_end_to_end() {
        let zones: Vec<_> = MARGIN.zones().collect();
        assert_eq!(
            zones,
            [
                (None, Some(2.0), Zone::Compromising),
                (Some(2.0), Some(4.0), Zone::Acceptable),
                (Some(4.0), None, Zone::Suboptimal),
            ]
        );
    }
}
