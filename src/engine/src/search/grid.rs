//! Placements at even steps over a site.

use crate::anatomy::Site;
use crate::plan::Placement;
use crate::plan::{Decision, Kind};

/// Where the platform of an implant is looked for: from and to, tenths of a millimetre off the tooth's
/// axis, facially positive.
const FACIAL: [i32; 2] = [-40, 20];
/// How far below the planned margin the platform is looked for, tenths of a millimetre: this, and what
/// is added either way.
const BELOW_MARGIN: i32 = 35;
/// Even steps, tenths of a millimetre.
const STEP: i32 = 5;
/// Even steps of tilt, degrees.
const TILT_STEP: i32 = 4;

/// Every stock size, and for each the platform moved in the section and along the arch, and the axis
/// leant about the planned crown's.
#[derive(Debug, Clone)]
pub struct Grid {
    /// Diameters, lengths, facial offsets, distal offsets, levels, tilts and tips.
    pub(super) axes: [Vec<i32>; 7],
}

impl Grid {
    /// Over a site. It holds [`Self::len`] placements, more than 50,000.
    #[must_use]
    pub fn of(site: &Site) -> Self {
        let crown = &site.crown;
        let depth = rounded(10.0 * crown.margin_z.get() / f64::from(STEP)) * STEP + BELOW_MARGIN;
        let about = |middle: i32, step: i32, each_way: i32| -> Vec<i32> {
            (-each_way..=each_way).map(|k| middle + k * step).collect()
        };
        Self {
            axes: [
                stock(Decision::Diameter),
                stock(Decision::Length),
                (0..=(FACIAL[1] - FACIAL[0]) / STEP).map(|k| FACIAL[0] + k * STEP).collect(),
                about(0, STEP, 1),
                about(depth, STEP, 3),
                about(rounded(crown.tilt.get()), TILT_STEP, 2),
                vec![rounded(crown.tip.get())],
            ],
        }
    }

    /// How many placements it holds.
    #[must_use]
    pub fn len(&self) -> usize {
        self.axes.iter().map(Vec::len).product()
    }

    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// By how much neighbours along one of the seven numbers differ; 0 where there is one value only.
    pub(super) fn step(&self, axis: usize) -> i32 {
        match self.axes[axis].as_slice() {
            [first, second, ..] => second - first,
            _ => 0,
        }
    }

    /// Where a placement stands in the order of the grid; `None` beside it.
    #[must_use]
    pub fn place_of(&self, at: Placement) -> Option<usize> {
        self.axes.iter().zip(at.counts()).try_fold(0, |place, (axis, count)| {
            Some(place * axis.len() + axis.iter().position(|value| *value == count)?)
        })
    }

    /// The placement at a place in the order of the grid.
    #[must_use]
    pub fn at(&self, place: usize) -> Option<Placement> {
        if place >= self.len() {
            return None;
        }
        let mut rest = place;
        let mut counts = [0; 7];
        for (count, axis) in counts.iter_mut().zip(&self.axes).rev() {
            *count = *axis.get(rest % axis.len())?;
            rest /= axis.len();
        }
        Some(Placement::of_counts(counts))
    }
}

/// Every value that can be chosen.
fn stock(decision: Decision) -> Vec<i32> {
    let Kind::Number(kind) = decision.entry().kind else { return Vec::new() };
    (kind.least..=kind.most).filter(|count| kind.allows(*count)).collect()
}

#[expect(clippy::cast_possible_truncation, reason = "lengths and angles of a site are small")]
fn rounded(value: f64) -> i32 {
    libm::round(value.clamp(-1e6, 1e6)) as i32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_grid_holds_each_of_its_placements_once_and_at_least_fifty_thousand() {
        let site = crate::rules::trial::Trial::plain().case.site;
        let grid = Grid::of(&site);
        assert!(grid.len() >= 50_000);
        let all: std::collections::BTreeSet<_> =
            (0..grid.len()).filter_map(|place| grid.at(place)).collect();
        assert_eq!(all.len(), grid.len());
        let crown = &site.crown;
        let at = Placement {
            diameter: 40,
            length: 120,
            facial: -15,
            distal: 0,
            depth: rounded(2.0 * crown.margin_z.get()) * 5 + 35,
            tilt: rounded(crown.tilt.get()),
            tip: rounded(crown.tip.get()),
        };
        assert!(all.contains(&at), "{at:?}");
        // Seven stock diameters and nine lengths.
        assert_eq!(grid.axes[0].len() * grid.axes[1].len(), 63);
        assert_eq!(grid.at(grid.len()), None);
    }
}
