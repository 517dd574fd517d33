//! Which placements of a grid stand.

use super::{Grid, Placement};

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

    /// The placements that stand, in the order of the grid.
    pub fn standing(&self) -> impl Iterator<Item = Placement> {
        (0..self.stands.len())
            .filter(|place| self.stands[*place])
            .filter_map(|place| self.grid.at(place))
    }
}
