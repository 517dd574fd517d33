//! Measurements of levels and profiles: depth of the platform, loss of the crest, defects, bends of the
//! faces, the neighbours' line, the root between the cortices.

use super::measured::Writer;
use crate::anatomy::Wall;
use crate::units::{Mm, Ratio};

impl Writer<'_> {
    /// Writes them.
    pub(super) fn levels(&mut self) {
        let m = self.m;
        let crest = "begins_on(facial, 0.0, ridge)";
        let depth = format!("platform(implant) - {crest}");
        self.length("depth-from-crest", m.depth_from_crest(), depth);
        let depth = "platform(implant) - margin".to_owned();
        self.length("depth-from-margin", m.depth_from_margin(), depth);
        let lost = "most(0.0, begins_on(facial, 0.0, ridge - lost))".to_owned();
        self.length("crest-loss", m.crest_loss(), lost);
        self.length("lingual-undercut", m.lingual_undercut(), "draws_back(oral)".to_owned());
        self.length("facial-concavity", m.facial_concavity(), "hollow(facial)".to_owned());
        let line = "behind_line(implant, neighbour_mesial, neighbour_distal)".to_owned();
        self.length("facial-line-clearance", m.facial_line_clearance(), line);
        let share = m.root_between_cortices().map(Ratio::get);
        let between = "share_between(root_1, 1.5)".to_owned();
        self.put("root-between-cortices", share, Ratio::UNIT, between);
        // What the class of the root's position follows from.
        if let Some([facial, oral, _]) = m.root_touches() {
            let near = |side: &str| format!("share_touching({side}, root_1, 1.5)");
            self.put("root-class-facial", Some(facial), Ratio::UNIT, near("facial"));
            self.put("root-class-oral", Some(oral), Ratio::UNIT, near("oral"));
        }
        self.reach_of_defects("facial-defect-depth", m.facial_defect_depth(), "lowest_edge");
        self.reach_of_defects("facial-defect-width", m.facial_defect_width(), "breadth");
    }

    fn reach_of_defects(&mut self, name: &'static str, value: Option<Mm>, function: &str) {
        let defects = self.m.case.site.defects.iter().enumerate();
        let facial = defects.filter(|(_, defect)| defect.wall == Wall::Facial);
        let all: Vec<String> =
            facial.map(|(i, _)| format!("{function}(defect_{})", i + 1)).collect();
        self.length(name, value, format!("most({})", all.join(", ")));
    }
}
