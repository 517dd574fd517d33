//! From the apices of the socket to what lies beyond them, whatever is placed.

use super::{Measurements, mm};
use crate::geometry::{P3, point_to_segment};
use crate::units::Mm;

impl Measurements<'_> {
    /// From the nearest apex of the socket to the floor of sinus or nose, along z; negative where an
    /// apex stands beyond it. `None` where no floor is near. Millimetres.
    #[must_use]
    pub fn apex_to_floor(&self) -> Option<Mm> {
        let floor = self.case.site.vital.floor.as_ref()?;
        let below = |tip: P3| floor.z.get() + floor.rise * tip.x - tip.z;
        mm(self.apices().map(below).reduce(f64::min)?)
    }

    /// From the nearest apex of the socket to the wall of the inferior alveolar canal; negative inside
    /// it. `None` where there is none. Millimetres.
    #[must_use]
    pub fn apex_to_canal(&self) -> Option<Mm> {
        let canal = self.case.site.vital.canal.as_ref()?;
        let off = |tip: P3| point_to_segment(tip, [canal.from, canal.to]) - canal.radius.get();
        mm(self.apices().map(off).reduce(f64::min)?)
    }

    fn apices(&self) -> impl Iterator<Item = P3> {
        self.ground().solid.socket.roots().iter().map(|root| root.apex())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, FloorKind, Tube};
    use crate::plan::Plan;
    use crate::rules::trial::Trial;

    #[test]
    fn an_upright_root_of_eleven_millimetres_stands_three_under_a_floor_at_fourteen() {
        let mut case = Trial::plain().case;
        let plan = Plan::default();
        assert_eq!(Measurements::of(&case, &plan).apex_to_floor(), None);
        for (z, rise, off) in [(14.0, 0.0, 3.0), (14.0, 0.2, 3.0), (10.0, 0.0, -1.0)] {
            let kind = FloorKind::Sinus;
            case.site.vital.floor = Some(Floor { kind, z: Mm::new(z), rise });
            let found = Measurements::of(&case, &plan).apex_to_floor().unwrap();
            assert!((found.get() - off).abs() < 1e-9, "{z} {rise}: {found:?}");
        }
    }

    #[test]
    fn a_canal_is_as_far_as_its_wall_and_the_nearest_of_several_apices_counts() {
        let mut case = Trial::molar().case;
        let plan = Plan::default();
        assert_eq!(Measurements::of(&case, &plan).apex_to_canal(), None);
        let apices: Vec<P3> = Measurements::of(&case, &plan).apices().collect();
        assert_eq!(apices.len(), 2);
        let beside = P3::new(apices[1].x, apices[1].y + 4.0, apices[1].z);
        let (from, to) = (beside, P3::new(beside.x, beside.y + 9.0, beside.z));
        case.site.vital.canal = Some(Tube { from, to, radius: Mm::new(1.5) });
        let found = Measurements::of(&case, &plan).apex_to_canal().unwrap();
        assert!((found.get() - 2.5).abs() < 1e-9, "{found:?}");
    }
}
