//! The healed site, and an implant in it.

use super::{Measurements, mm};
use crate::anatomy::{Bone, Wall};
use crate::healing::{Healed, healed};
use crate::plan::Plan;
use crate::plan::choices::HealedAct;
use crate::units::Mm;

/// A contour layer laid with a late implant is as thick as the least that is taught, 2 mm (`ledger:
/// graft-contour-overbuild`).
const CONTOUR: Mm = Mm::new(2.0);

impl Measurements<'_> {
    /// The site as it was found at re-entry; `None` before that. A teaching model.
    pub fn healed(&self) -> Option<&Healed> {
        let found = || healed(self, self.plan.later.re_entry.as_ref()?.after);
        self.kept.healed.get_or_init(found).as_ref()
    }

    /// Level of the crest on one side, at x = 0, as z.
    pub(crate) fn crest_level(&self, wall: Wall) -> f64 {
        self.ground().solid.crest(Bone::Now, wall, 0.0)
    }

    /// Width between the faces of the ridge at a level, along y. Millimetres.
    pub(crate) fn ridge_width_at(&self, z: f64) -> Option<Mm> {
        let solid = &self.ground().solid;
        mm((solid.face(Wall::Facial, z) - solid.face(Wall::Oral, z)).max(0.0))
    }

    /// Facial bone beside the late implant, 2 mm below its platform along +y, with 2 mm of contour
    /// layer where one is laid. `None` without one. Millimetres, 0 or more.
    #[must_use]
    pub fn late_facial_bone(&self) -> Option<Mm> {
        let bone = self.late(|m| m.facial_bone_after_grafting())?;
        let act = self.plan.later.re_entry.as_ref()?.act;
        Some(if act == HealedAct::PlaceWithContour { bone + CONTOUR } else { bone })
    }

    /// Least oral bone beside the late implant. `None` without one. Millimetres.
    #[must_use]
    pub fn late_oral_bone(&self) -> Option<Mm> {
        self.late(|m| m.oral_bone())
    }

    /// Least distance from the late implant to a neighbouring root. `None` without either. Millimetres.
    #[must_use]
    pub fn late_to_root(&self) -> Option<Mm> {
        self.late(|m| {
            let sides = [m.to_mesial_neighbour(), m.to_distal_neighbour()];
            let roots = sides.into_iter().flatten().filter(|it| !it.to_implant);
            roots.map(|it| it.distance).reduce(Mm::min)
        })
    }

    /// From the tip of the late implant's drill to the inferior alveolar canal. `None` without either.
    /// Millimetres, negative inside.
    #[must_use]
    pub fn late_to_canal(&self) -> Option<Mm> {
        self.late(|m| m.to_canal())
    }

    fn late<T>(&self, read: impl Fn(&Measurements<'_>) -> Option<T>) -> Option<T> {
        let placed = self.plan.later.placement.as_ref()?;
        let case = &self.healed()?.case;
        let plan = Plan { implant: Some(placed.implant(case)), ..Plan::default() };
        read(&Measurements::of(case, &plan))
    }
}
