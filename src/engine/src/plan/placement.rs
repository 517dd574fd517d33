//! Where an implant stands and how large it is: seven whole numbers, in the steps of the plan.

use super::{Decision, Draft, Implant};
use crate::units::{Deg, Mm};

/// The decisions that a placement answers, in the order of [`Placement::counts`].
pub const PLACED_BY: [Decision; 7] = [
    Decision::Diameter,
    Decision::Length,
    Decision::OffsetFacial,
    Decision::OffsetDistal,
    Decision::Depth,
    Decision::Tilt,
    Decision::Tip,
];

/// A stock size at a place: tenths of a millimetre and whole degrees, as the decisions count them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Placement {
    /// Platform diameter.
    pub diameter: i32,
    /// Length.
    pub length: i32,
    /// Platform's middle from the origin, facially positive.
    pub facial: i32,
    /// Platform's middle from the origin, distally positive.
    pub distal: i32,
    /// Platform's level below the reference crest.
    pub depth: i32,
    /// Apex facially positive.
    pub tilt: i32,
    /// Apex distally positive.
    pub tip: i32,
}

impl Placement {
    /// In the order of [`PLACED_BY`].
    #[must_use]
    pub const fn counts(self) -> [i32; 7] {
        [self.diameter, self.length, self.facial, self.distal, self.depth, self.tilt, self.tip]
    }

    /// Of these counts, in the order of [`PLACED_BY`].
    #[must_use]
    pub const fn of_counts(counts: [i32; 7]) -> Self {
        let [diameter, length, facial, distal, depth, tilt, tip] = counts;
        Self { diameter, length, facial, distal, depth, tilt, tip }
    }

    /// What a draft has decided; `None` while a number is undecided.
    #[must_use]
    pub fn in_draft(draft: &Draft) -> Option<Self> {
        let mut counts = [0; 7];
        for (count, decision) in counts.iter_mut().zip(PLACED_BY) {
            *count = draft.number(decision)?;
        }
        Some(Self::of_counts(counts))
    }

    /// Sets an implant of a plan so; the rest of it stays.
    pub fn put(self, implant: &mut Implant) {
        implant.diameter = Mm::from_tenths(self.diameter);
        implant.length = Mm::from_tenths(self.length);
        implant.facial = Mm::from_tenths(self.facial);
        implant.distal = Mm::from_tenths(self.distal);
        implant.depth = Mm::from_tenths(self.depth);
        implant.tilt = Deg::new(f64::from(self.tilt));
        implant.tip = Deg::new(f64::from(self.tip));
    }
}
