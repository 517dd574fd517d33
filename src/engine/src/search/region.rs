//! Which placements of a grid stand.

use super::{Grid, Placement};
use crate::geometry::order;
use std::collections::BTreeSet;

/// The placements of a grid that no rule faults.
#[derive(Debug, Clone)]
pub struct Region {
    grid: Grid,
    stands: Vec<bool>,
}

impl Region {
    pub(super) const fn of(grid: Grid, stands: Vec<bool>) -> Self {
        Self { grid, stands }
    }

    /// The grid.
    #[must_use]
    pub const fn grid(&self) -> &Grid {
        &self.grid
    }

    /// Whether the placement at a place in the order of the grid stands.
    #[must_use]
    pub fn stands(&self, place: usize) -> bool {
        self.stands.get(place).copied().unwrap_or(false)
    }

    /// Whether the grid holds a placement and it stands.
    #[must_use]
    pub fn holds(&self, at: Placement) -> bool {
        self.grid.place_of(at).is_some_and(|place| self.stands(place))
    }

    /// Where the platform of one stock size may stand in the section, at any distal offset and lean of
    /// the grid: facial offset and level, tenths of a millimetre, in rising order.
    #[must_use]
    pub fn platforms(&self, diameter: i32, length: i32) -> BTreeSet<[i32; 2]> {
        let of_size = |at: &Placement| at.diameter == diameter && at.length == length;
        order::set_of(self.standing().filter(of_size).map(|at| [at.facial, at.depth]))
    }

    /// The placements that stand, in the order of the grid.
    pub fn standing(&self) -> impl Iterator<Item = Placement> {
        (0..self.stands.len())
            .filter(|place| self.stands[*place])
            .filter_map(|place| self.grid.at(place))
    }
}
