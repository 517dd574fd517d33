//! What a membrane covers, and by how much (`practice` section 3).
//!
//! The *hole* is the union of the wall defects on the map, joined with the orifice where the membrane
//! must cover the socket: it is folded over, or it is the socket's seal. A membrane that stays on its
//! wall is asked nothing at the crest: a dehiscence has no coronal edge. Over the crest its oral edge
//! is measured from the oral crest.

use super::bound::{Corners, Towards, margin};
use super::{Margins, Measurements, mm};
use crate::geometry::{P2, polygon};
use crate::plan::Membrane;
use crate::plan::choices::{Fold, SocketSeal};
use crate::units::Mm;

/// Bone between the hole and a neighbouring root that is narrower than this, mm, cannot hold a margin
/// of 2 mm and leave the root 1 mm: the hole's edge then counts as reaching the root, where no margin
/// is asked (ours, from `ledger: membrane-margin` and `ledger: membrane-tooth-distance`).
const ROOM_FOR_MARGIN: f64 = 3.0;

impl Measurements<'_> {
    /// From the edge of the hole to the membrane's edge, mesially, distally and apically (of an oral
    /// defect, apically is down the oral wall), and from the oral crest to the membrane's oral edge.
    /// Negative where the membrane ends short. Beside a neighbouring root that leaves less than 3 mm
    /// of bone the margin is not asked unless the membrane ends short of the hole itself. `None`
    /// without a membrane, or when there is nothing that it must cover. Millimetres on the map.
    #[must_use]
    pub fn membrane_margin(&self) -> Option<Margins> {
        *self.kept.membrane.get_or_init(|| self.margins_of(self.plan.membrane()?))
    }

    fn margins_of(&self, membrane: &Membrane) -> Option<Margins> {
        let cover = Corners::of(&membrane.outline);
        let cover = cover.as_slice();
        let over = covers_socket(self, membrane);
        let mut margins = Margins::default();
        let mut asked = false;
        let hole = self.ground().openings().iter().filter(|part| over || !part.is_orifice);
        for part in hole {
            asked = true;
            let past = |side| margin(&part.outline, cover, side);
            let beside = |side: usize, at| unless_at_root(part.room[side], past(at)?);
            keep(&mut margins.mesial, beside(0, Towards::Mesial));
            keep(&mut margins.distal, beside(1, Towards::Distal));
            keep(&mut margins.apical, past(part.apical));
        }
        if over && let Some(reach) = polygon::extent(self.ground().orifice(), |p| p.x) {
            asked = true;
            let crest = -self.ground().solid.map.across();
            let line = [P2::new(reach.from, crest), P2::new(reach.to, crest)];
            keep(&mut margins.oral, margin(&line, cover, Towards::Coronal));
        }
        asked.then_some(margins)
    }

    /// Least distance from the membrane to a neighbouring root's outline on the map, as seen from the
    /// facial side or where it crosses the crest; 0 when it lies over the root. `None` without a
    /// membrane, or where no root stands on either side. Millimetres.
    #[must_use]
    pub fn membrane_to_root(&self) -> Option<Mm> {
        let cover = Corners::of(&self.plan.membrane()?.outline);
        let ground = self.ground();
        let roots = [0, 1].into_iter().flat_map(|side| ground.root_beside(side));
        mm(roots.map(|root| polygon::distance(cover.as_slice(), root)).reduce(f64::min)?)
    }
}

/// The margin, unless the bone there is too narrow to ask for one and the hole itself is covered.
fn unless_at_root(room: Option<f64>, margin: f64) -> Option<f64> {
    let reaches = room.is_some_and(|room| room < ROOM_FOR_MARGIN);
    (margin < 0.0 || !reaches).then_some(margin)
}

/// Whether the membrane must cover the socket: folded over it, or the seal that was chosen.
pub(super) fn covers_socket(m: &Measurements<'_>, membrane: &Membrane) -> bool {
    let seal = m.plan.graft.as_ref().and_then(|graft| graft.seal);
    membrane.fold != Fold::FacialOnly || seal == Some(SocketSeal::ByMembrane)
}

/// Keeps the lesser of what is there and what comes.
pub(super) fn keep(least: &mut Option<Mm>, next: Option<f64>) {
    if let Some(next) = next.and_then(mm) {
        *least = Some(least.map_or(next, |kept| kept.min(next)));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind, Neighbour, Wall};
    use crate::geometry::Outline;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;

    fn trial(defects: &[(Wall, &[[i32; 2]])], fold: &str, membrane: &[[i32; 2]]) -> Trial {
        let mut trial = Trial::plain();
        for (wall, outline) in defects {
            trial.case.site.defects.push(Defect {
                wall: *wall,
                kind: DefectKind::DehiscenceU,
                outline: Outline::new(outline.to_vec()).unwrap(),
            });
        }
        trial.keys(&[
            ("membrane", "native-collagen"),
            ("trim", "rounded"),
            ("fold", fold),
            ("fixation", "tucked"),
            ("act-order", "membrane-first"),
            ("needle-path", "crest-outward"),
        ]);
        trial.outline(Decision::MembraneOutline, membrane);
        trial
    }

    fn margins(trial: &Trial) -> Option<Margins> {
        let plan = trial.plan();
        Measurements::of(&trial.case, &plan).membrane_margin()
    }

    const SLOT: (Wall, &[[i32; 2]]) = (Wall::Facial, &[[-20, 0], [20, 0], [20, 60], [-20, 60]]);

    #[test]
    fn a_membrane_on_its_wall_is_measured_on_three_sides_and_not_at_the_crest() {
        let on_wall = trial(&[SLOT], "facial-only", &[[-45, 0], [40, 0], [40, 85], [-45, 85]]);
        let found = margins(&on_wall).unwrap();
        assert_eq!(found.mesial, Some(Mm::new(2.5)));
        assert_eq!(found.distal, Some(Mm::new(2.0)));
        assert_eq!(found.apical, Some(Mm::new(2.5)));
        assert_eq!((found.oral, found.least()), (None, Some(Mm::new(2.0))));
    }

    #[test]
    fn each_margin_falls_as_its_own_edge_comes_in() {
        for tenths in 0..40 {
            let edge = 60 + tenths;
            let outline = [[-45, 0], [40, 0], [40, edge], [-45, edge]];
            let found = margins(&trial(&[SLOT], "facial-only", &outline)).unwrap();
            assert_eq!(found.apical.unwrap(), Mm::new(f64::from(edge) / 10.0) - Mm::new(6.0));
            assert_eq!(found.mesial, Some(Mm::new(2.5)));
        }
    }

    #[test]
    fn a_folded_membrane_is_asked_over_the_oral_crest_and_beside_the_orifice() {
        // The oral crest lies at t = -8.4.
        let folded =
            trial(&[SLOT], "over-orifice", &[[-50, -110], [50, -110], [50, 85], [-50, 85]]);
        let found = margins(&folded).unwrap();
        assert!((found.oral.unwrap().get() - 2.6).abs() < 1e-9, "{found:?}");
        // Between the orifice and either root lie less than 3 mm: only the slot is asked about.
        assert_eq!((found.mesial, found.distal), (Some(Mm::new(3.0)), Some(Mm::new(3.0))));
        let short = trial(&[SLOT], "over-orifice", &[[-50, 0], [50, 0], [50, 85], [-50, 85]]);
        assert!((margins(&short).unwrap().oral.unwrap().get() + 8.4).abs() < 1e-9);
    }

    #[test]
    fn beside_a_root_no_margin_is_asked_unless_the_hole_itself_is_left_bare() {
        let lost: (Wall, &[[i32; 2]]) = (Wall::Facial, &[[-50, 0], [48, 0], [48, 60], [-50, 60]]);
        let at_roots = trial(&[lost], "facial-only", &[[-55, 0], [50, 0], [50, 85], [-55, 85]]);
        let found = margins(&at_roots).unwrap();
        assert_eq!((found.mesial, found.distal), (None, None));
        assert_eq!(found.least(), found.apical);
        let short = trial(&[lost], "facial-only", &[[-40, 0], [50, 0], [50, 85], [-40, 85]]);
        assert_eq!(margins(&short).unwrap().mesial, Some(Mm::new(-1.0)));
        let mut toothless = at_roots;
        toothless.case.site.neighbours.mesial = Neighbour::Absent;
        assert_eq!(margins(&toothless).unwrap().mesial, Some(Mm::new(0.5)));
    }

    #[test]
    fn an_oral_defect_is_measured_down_its_own_wall() {
        let oral: (Wall, &[[i32; 2]]) =
            (Wall::Oral, &[[-15, -140], [15, -140], [15, -84], [-15, -84]]);
        let over = trial(&[oral], "over-orifice", &[[-45, -165], [45, -165], [45, 30], [-45, 30]]);
        assert_eq!(margins(&over).unwrap().least(), Some(Mm::new(2.5)));
        let facial = trial(&[oral], "facial-only", &[[-45, 0], [45, 0], [45, 60], [-45, 60]]);
        assert!(margins(&facial).unwrap().least().unwrap() < Mm::new(-10.0));
    }

    #[test]
    fn an_intact_wall_asks_nothing_of_a_membrane_on_it() {
        let outline: &[[i32; 2]] = &[[-45, 0], [45, 0], [45, 60], [-45, 60]];
        assert_eq!(margins(&trial(&[], "facial-only", outline)), None);
    }

    #[test]
    fn the_membrane_is_as_far_from_a_root_as_the_outlines_are() {
        let near = trial(&[SLOT], "facial-only", &[[-45, 0], [40, 0], [40, 85], [-45, 85]]);
        let plan = near.plan();
        let m = Measurements::of(&near.case, &plan);
        // At the crest the mesial root's distal line lies at -5.5, the distal one's at 5.3.
        let found = m.membrane_to_root().unwrap().get();
        assert!((found - 1.0).abs() < 0.05, "{found}");
    }
}
