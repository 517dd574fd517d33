//! Measurements of the walls beside the implant.

use super::contour::{FALL, base};
use super::measured::Writer;
use crate::geometry::Cone;

/// Facial bone after grafting is taken this far below the platform, mm.
const BELOW_PLATFORM: f64 = 2.0;
/// Oral bone counts from this far apical of the oral crest, mm.
const BELOW_CREST: f64 = 1.0;

impl Writer<'_> {
    /// Writes them.
    pub(super) fn walls(&mut self) {
        let Some(cone) = self.m.drilled() else { return };
        let (third, length) = (cone.length * (2.0 / 3.0), cone.length);
        let apical = |side: &str| format!("least_wall({side}, implant, {third:?}, {length:?})");
        self.length("apical-facial-bone", self.m.apical_facial_bone(), apical("facial"));
        self.length("apical-oral-bone", self.m.apical_oral_bone(), apical("oral"));
        let x = if self.mirrored { -cone.frame.origin.x } else { cone.frame.origin.x } + 0.0;
        let crest = format!("begins_on(oral, {x:?}, ridge) + {BELOW_CREST:?}");
        let oral = format!("least_wall(oral, implant, depth_at({crest}), {length:?})");
        self.length("oral-bone", self.m.oral_bone(), oral);
        if let Some(cone) = self.m.seated() {
            let after = self.after_grafting(cone);
            let value = self.m.facial_bone_after_grafting();
            self.length("facial-bone-after-grafting", value, after);
        }
    }

    fn after_grafting(&self, cone: &Cone) -> String {
        let at = cone.axis_at(BELOW_PLATFORM.min(cone.length));
        let place = self.point(at);
        let Some(graft) = self.m.plan.graft_laid() else {
            return format!("run(bone, implant, {place})");
        };
        let run = format!("run(bone + ((whole + socket) & fill), implant, {place})");
        if graft.contour.is_none() {
            return run;
        }
        let count = base(&self.m.case.site).len();
        let bases: Vec<String> = (1..=count).map(|i| format!(", contour_base_{i}")).collect();
        let layer = format!(
            "layer_at(layer_thickness, {FALL:?}, {:?}, {:?}{})",
            at.x,
            at.z,
            bases.concat()
        );
        format!("joined({run}, within(fill, {place}) * {layer})")
    }
}
