//! What follows from a form or a model: the flap's form and its releases, the way that it has to
//! travel, closing force, seating torque, grains against the gap.

use super::covered::sides_released;
use super::measured::Writer;
use crate::anatomy::Beside;
use crate::units::{Ncm, Newton, Ratio};

impl Writer<'_> {
    /// Writes them.
    pub(super) fn models(&mut self) {
        let m = self.m;
        let base = m.flap_base_ratio().map(Ratio::get);
        self.put("flap-base-ratio", base, Ratio::UNIT, "base_over_margin(flap)".to_owned());
        let length = m.flap_length_ratio().map(Ratio::get);
        self.put("flap-length-ratio", length, Ratio::UNIT, "length_over_base(flap)".to_owned());
        if let Some(sides) = m.plan.raised().and_then(sides_released) {
            let marks = format!("to_marks(flap, {sides}{})", self.rows_of_the_crest());
            self.length("release-to-prominence", m.release_to_prominence(), marks);
        }
        let gap = m.seated().map_or_else(|| "0.0".to_owned(), |cone| self.across_gap(cone));
        let grain = format!("largest_grain({gap})");
        self.put("grain-to-gap", m.grain_to_gap().map(Ratio::get), Ratio::UNIT, grain);
        let torque = m.estimated_torque().map(Ncm::get);
        self.put("estimated-torque", torque, Ncm::UNIT, "torque(implant, bone)".to_owned());
        let Some(root) = m.ground().solid.socket.coronal() else { return };
        let ways = format!("({}, {gap})", self.across_socket(root));
        let to_close = format!("closing_force(travel_to_close{ways})");
        self.put("force-to-close", m.force_to_close().map(Newton::get), Newton::UNIT, to_close);
        let needed = format!("travel{ways}");
        let force = m.closing_force().map(Newton::get);
        self.put("closing-force", force, Newton::UNIT, format!("closing_force({needed})"));
        self.length("advancement-needed", m.advancement_needed(), needed);
    }

    /// What stands in the row, each after a comma: the orifice, and each neighbour by its outline at
    /// the crest or, an implant, by its mesh.
    fn rows_of_the_crest(&self) -> String {
        let ground = self.m.ground();
        let mut row = ", orifice".to_owned();
        for (side, name) in ["mesial", "distal"].into_iter().enumerate() {
            row += &match &ground.solid.beside[side] {
                Beside::Root(_) => format!(", root_{name}_{}", ground.root_beside(side).len()),
                Beside::Implant(_) => format!(", neighbour_{name}"),
                Beside::Absent => String::new(),
            };
        }
        row
    }
}
