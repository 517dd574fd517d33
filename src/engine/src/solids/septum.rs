//! Measurements of the septum between several roots.

use super::measured::Writer;
use crate::geometry::V3;
use crate::measure::SeptumClass;
use crate::units::{Mm, Mm2, Ratio};

/// Depths below the furcation at which the septum's width is written, mm.
const DEPTHS: [f64; 3] = [0.5, 2.0, 4.0];

impl Writer<'_> {
    /// Writes them; of one root there are none.
    pub(super) fn septum(&mut self) {
        let m = self.m;
        let socket = &m.ground().solid.socket;
        let Some(furcation) = socket.furcation() else { return };
        for depth in DEPTHS {
            let Some(from) = socket.between(furcation + depth) else { continue };
            for (name, value, way) in [
                ("septum-mesiodistal", m.septum_mesiodistal(Mm::new(depth)), V3::DISTAL),
                ("septum-faciooral", m.septum_faciooral(Mm::new(depth)), V3::FACIAL),
            ] {
                let half =
                    |way| format!("stretch(whole & under_trunk, {}, 0.0)", self.ray(from, way));
                self.length(name, value, format!("{} + {}", half(way), half(-way)));
            }
        }
        let Some(hold) = m.septum_hold() else { return };
        let parts = [
            ("septum-hold-below", hold.below, "side_in(implant, below_furcation)"),
            ("septum-hold-in-bone", hold.in_bone, "side_in(implant, bone & below_furcation)"),
            ("septum-hold-in-septum", hold.in_septum, "side_in(implant, bone & under_trunk)"),
        ];
        for (name, value, expression) in parts {
            self.put(name, Some(value.get()), Mm2::UNIT, expression.to_owned());
        }
        let class = m.septum_class().map(|class| match class {
            SeptumClass::A => 1.0,
            SeptumClass::B => 2.0,
            SeptumClass::C => 3.0,
        });
        let [below, in_bone, in_septum] = parts.map(|(_, _, expression)| expression);
        let classed = format!("septum_class({below}, {in_bone}, {in_septum})");
        self.put("septum-class", class, Ratio::UNIT, classed);
    }
}
