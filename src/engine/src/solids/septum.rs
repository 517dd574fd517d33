//! Measurements of the septum between several roots.

use super::measured::Writer;
use crate::geometry::V3;
use crate::measure::SeptumClass;
use crate::units::{Mm, Mm2, Ratio};
use core::f64::consts::PI;

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
        self.room();
        if let Some(middle) = socket.between(furcation) {
            let off = format!("off_axis(implant, {})", self.point(middle));
            self.length("off-the-septum", m.off_the_septum(), off);
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
        let class = m.septum_class().map(number_of);
        let [below, in_bone, in_septum] = parts.map(|(_, _, expression)| expression);
        let classed = format!("septum_class({below}, {in_bone}, {in_septum})");
        self.put("septum-class", class, Ratio::UNIT, classed);
        self.length("septum-engagement", m.septum_engagement(), format!("held_round({in_septum})"));
    }

    /// Room in the septum, at the depth at which rules ask for it.
    fn room(&mut self) {
        let m = self.m;
        let socket = &m.ground().solid.socket;
        let depth = DEPTHS[1];
        let Some(from) = socket.furcation().and_then(|level| socket.between(level + depth)) else {
            return;
        };
        let ways: Vec<String> = (0..24)
            .map(|turn| {
                let (sin, cos) = libm::sincos(PI * f64::from(turn) / 12.0);
                let way = V3::FACIAL * cos + V3::DISTAL * sin;
                format!("stretch(whole, {}, 0.0)", self.ray(from, way))
            })
            .collect();
        let room = format!("2.0 * least({})", ways.join(", "));
        let usual = m.septum_class_for_usual().map(number_of);
        self.put("septum-class-for-usual", usual, Ratio::UNIT, format!("class_by_room({room})"));
        self.length("septum-room", m.septum_room(Mm::new(depth)), room);
    }
}

/// A class as a number, for recipes.
const fn number_of(class: SeptumClass) -> f64 {
    match class {
        SeptumClass::A => 1.0,
        SeptumClass::B => 2.0,
        SeptumClass::C => 3.0,
    }
}
