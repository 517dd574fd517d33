//! The teeth that a film shows: the site's own, its neighbours, and those beyond them.
//!
//! A site holds roots. Crowns follow the handbook's lengths and widths and meet at their contacts; the
//! tooth beyond each neighbour comes from the same table, so that the ridge does not stand empty
//! where the film still shows it. Nothing is ever measured or judged on either.

use crate::anatomy::{Implanted, Jaw, Kind, Neighbour, RootBody, Site, Tooth};
use crate::cases::tooth_table::ToothRow;
use crate::geometry::P3;
use crate::units::{Deg, Mm};

/// Bone between a neighbour's root and the next one, mm (ours, inside 2.0 to 2.5 from memory).
const BETWEEN: f64 = 2.2;
/// From one root of a molar to the next, mm (ours: separated 3.3 to 4.8 mm below the neck).
const MOLAR_ROOTS: f64 = 5.2;

/// A crown that stands on a neck.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrownForm {
    /// Of which sort.
    pub kind: Kind,
    /// Middle of the neck.
    pub neck: P3,
    /// Middle of the biting edge or face.
    pub edge: P3,
    /// Half of the mesiodistal width at the neck and where it is widest, mm.
    pub half_md: [f64; 2],
    /// Half of the faciooral width at the neck, mm.
    pub half_fo: f64,
}

/// A tooth.
#[derive(Debug, Clone, PartialEq)]
pub struct ToothForm {
    /// One, or two for a molar.
    pub roots: Vec<RootBody>,
    /// Its crown.
    pub crown: CrownForm,
}

/// What stands in the row.
#[derive(Debug, Clone, PartialEq)]
pub enum Standing {
    /// A tooth.
    Tooth(ToothForm),
    /// An implant that is restored.
    Implant(Implanted, CrownForm),
}

/// The site's own tooth; of several roots one body stands for all, as in the other drawings that know
/// of one.
#[must_use]
pub fn own(site: &Site) -> ToothForm {
    let root = site.socket.as_one();
    let neck = on_axis(&root, -root.neck.get());
    // Widths at the crest go on unchanged up to the neck, so the crown begins with them.
    let crown = CrownForm {
        kind: site.tooth.kind(),
        neck,
        edge: site.crown.edge,
        half_md: [root.half_md.get(), 0.5 * site.crown.width.get()],
        half_fo: root.half_fo.get(),
    };
    ToothForm { roots: vec![root], crown }
}

fn on_axis(root: &RootBody, level: f64) -> P3 {
    let axis = crate::geometry::direction(root.tilt, root.tip);
    P3::new(root.x.get(), root.y.get(), 0.0) + axis * level
}

/// Everything on one side, from the neighbour outward; `sign` is 1 distally and -1 mesially.
#[must_use]
pub fn beside(site: &Site, sign: f64) -> Vec<Standing> {
    let neighbour = if sign > 0.0 { &site.neighbours.distal } else { &site.neighbours.mesial };
    let middle = site.crown.edge;
    let contact = middle.x + sign * 0.5 * site.crown.width.get();
    let lean = middle.y - site.socket.as_one().y.get();
    let jaw = site.tooth.jaw();
    let [first, second] = [1, 2].map(|steps| place(site.tooth, sign, steps));
    let mut row = Row { jaw, sign, contact, lean };
    match neighbour {
        Neighbour::Absent => Vec::new(),
        Neighbour::Root(root) => {
            let next = row.tooth(first, root);
            let last = next.roots.last().unwrap_or(root);
            let edge = last.x.get() + sign * last.half_md.get();
            let beyond = row.beyond(second, edge, last);
            vec![Standing::Tooth(next), Standing::Tooth(beyond)]
        }
        Neighbour::Implant(implant) => {
            let half = 0.5 * implant.diameter.get();
            let crown = row.crown(first, implant.platform, half);
            let beyond =
                row.beyond(second, implant.platform.x + sign * half, &site.socket.as_one());
            vec![Standing::Implant(implant.clone(), crown), Standing::Tooth(beyond)]
        }
    }
}

/// Which tooth stands `steps` beside this one, counted from the midline; over the midline it goes on
/// with the other side's first.
fn place(tooth: Tooth, sign: f64, steps: i32) -> u8 {
    let own = i32::from(tooth.position());
    let at = if sign > 0.0 { own + steps } else { own - steps };
    let at = if at < 1 { 1 - at } else { at };
    u8::try_from(at).unwrap_or(8).min(8)
}

/// A row of teeth in the making: where the last crown ends.
struct Row {
    jaw: Jaw,
    sign: f64,
    contact: f64,
    lean: f64,
}

impl Row {
    /// Crown length, its width, and the root's, of the tooth at a place.
    fn form(&self, place: u8) -> [f64; 4] {
        let upper = self.jaw == Jaw::Maxilla;
        match ToothRow::at(self.jaw, place) {
            Some(row) => [row.crown, row.md, row.md_neck, row.root],
            // First molars of the handbook: 7.5 long, 10 or 11 wide, roots of 12 and 14 mm.
            None => [7.5, if upper { 10.0 } else { 11.0 }, 4.2, if upper { 12.0 } else { 14.0 }],
        }
    }

    fn crown(&mut self, place: u8, neck: P3, half_fo: f64) -> CrownForm {
        let [length, md, md_neck, _] = self.form(place);
        let molar = place >= 6;
        let middle = self.contact + self.sign * 0.5 * md;
        self.contact += self.sign * md;
        let half_neck = if molar { 0.4 * md } else { 0.5 * md_neck };
        CrownForm {
            kind: kind(place),
            neck: P3 { x: if molar { middle } else { neck.x }, ..neck },
            edge: P3::new(middle, neck.y + self.lean, neck.z - length),
            half_md: [half_neck, 0.5 * md],
            half_fo,
        }
    }

    fn tooth(&mut self, place: u8, root: &RootBody) -> ToothForm {
        let neck = on_axis(root, -root.neck.get());
        let crown = self.crown(place, neck, root.half_fo.get());
        let mut roots = vec![root.clone()];
        if place >= 6 {
            let x = Mm::new(root.x.get() + self.sign * MOLAR_ROOTS);
            roots.push(RootBody { x, tip: root.tip + Deg::new(2.0 * self.sign), ..root.clone() });
        }
        ToothForm { roots, crown }
    }

    /// The tooth beyond: a root like the one given, at its own size, past an edge at x.
    fn beyond(&mut self, place: u8, edge: f64, like: &RootBody) -> ToothForm {
        let [.., md_neck, length] = self.form(place);
        let half = 0.46 * md_neck;
        let root = RootBody {
            x: Mm::new(edge + self.sign * (BETWEEN + half)),
            length: Mm::new((length - like.neck.get()).max(4.0)),
            half_md: Mm::new(half),
            ..like.clone()
        };
        self.tooth(place, &root)
    }
}

const fn kind(place: u8) -> Kind {
    match place {
        1 => Kind::CentralIncisor,
        2 => Kind::LateralIncisor,
        3 => Kind::Canine,
        4 => Kind::FirstPremolar,
        5 => Kind::SecondPremolar,
        _ => Kind::Molar,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn crown(standing: &Standing) -> CrownForm {
        match standing {
            Standing::Tooth(tooth) => tooth.crown,
            Standing::Implant(_, crown) => *crown,
        }
    }

    #[test]
    fn crowns_meet_at_their_contacts_and_do_not_overlap() {
        let site = Trial::plain().case.site;
        for sign in [-1.0, 1.0] {
            let mut edge = site.crown.edge.x + sign * 0.5 * site.crown.width.get();
            for standing in beside(&site, sign) {
                let crown = crown(&standing);
                assert!((crown.edge.x - sign * crown.half_md[1] - edge).abs() < 1e-9);
                edge = crown.edge.x + sign * crown.half_md[1];
            }
        }
    }

    #[test]
    fn mesially_of_a_central_incisor_stands_the_other_side_s_central() {
        let central = Tooth::new(11).unwrap();
        assert_eq!([1, 2].map(|steps| place(central, -1.0, steps)), [1, 2]);
        assert_eq!([1, 2].map(|steps| place(central, 1.0, steps)), [2, 3]);
        assert_eq!(place(Tooth::new(42).unwrap(), -1.0, 2), 1);
    }

    #[test]
    fn beyond_a_gap_nothing_is_made_up() {
        let mut site = Trial::plain().case.site;
        site.neighbours.distal = Neighbour::Absent;
        assert!(beside(&site, 1.0).is_empty());
        assert_eq!(beside(&site, -1.0).len(), 2);
    }
}
