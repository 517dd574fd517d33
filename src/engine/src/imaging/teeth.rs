//! The teeth that a film shows: the site's own, its neighbours, and those beyond them.
//!
//! A site holds roots. Crowns follow the handbook's lengths and widths and meet at their contacts; the
//! tooth beyond each neighbour comes from the same table, so that the ridge does not stand empty
//! where the film still shows it. Nothing is ever measured or judged on either.

use crate::anatomy::{Implanted, Jaw, Kind, Neighbour, RootBody, Site, Socket, Tooth};
use crate::cases::tooth_table::ToothRow;
use crate::geometry::{Frame, Knot, P3, Stack, V3};
use crate::units::{Deg, Mm};

/// Bone between a neighbour's root and the next one, mm (ours, inside 2.0 to 2.5 from memory).
const BETWEEN: f64 = 2.2;
/// From one root of a molar to the next, mm (ours).
const MOLAR_ROOTS: f64 = 5.2;
/// Roots of a molar part so far below the neck, mm (3.3 in lower and 4.8 in upper molars, confirmed).
const MOLAR_TRUNK: [f64; 2] = [3.3, 4.8];

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
    /// What several roots leave.
    pub trunk: Option<Stack>,
    /// One to three.
    pub roots: Vec<Stack>,
    /// Its crown.
    pub crown: CrownForm,
}

impl ToothForm {
    /// The trunk, if there is one, then the roots.
    pub fn bodies(&self) -> impl Iterator<Item = &Stack> {
        self.trunk.iter().chain(&self.roots)
    }
}

/// What stands in the row.
#[derive(Debug, Clone, PartialEq)]
pub enum Standing {
    /// A tooth.
    Tooth(ToothForm),
    /// An implant that is restored.
    Implant(Implanted, CrownForm),
}

/// The site's own tooth, root by root.
#[must_use]
pub fn own(site: &Site) -> ToothForm {
    let root = site.socket.as_one();
    let (trunk, roots) = parts(&site.socket);
    let neck = on_axis(&root, -root.neck.get());
    // Widths at the crest go on unchanged up to the neck of a root, so the crown begins with them; a
    // trunk has its own there.
    let crest = [root.half_md.get(), root.half_fo.get()];
    let [half_md, half_fo] = trunk.as_ref().map_or(crest, |trunk| [trunk.across, trunk.facial]);
    let crown = CrownForm {
        kind: site.tooth.kind(),
        neck,
        edge: site.crown.edge,
        half_md: [half_md, 0.5 * site.crown.width.get()],
        half_fo,
    };
    ToothForm { trunk, roots, crown }
}

/// The trunk of several roots, and the roots.
#[must_use]
pub fn parts(socket: &Socket) -> (Option<Stack>, Vec<Stack>) {
    let mut bodies = socket.bodies();
    let trunk = (bodies.len() > 1).then(|| bodies.remove(0));
    (trunk, bodies)
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
            let apart = if next.trunk.is_some() { sign * MOLAR_ROOTS } else { 0.0 };
            let edge = root.x.get() + apart + sign * root.half_md.get();
            let beyond = row.beyond(second, edge, root);
            vec![Standing::Tooth(next), Standing::Tooth(beyond)]
        }
        Neighbour::Implant(implant) => {
            let half = 0.5 * implant.diameter.get();
            let [_, _, md_neck, _] = row.form(first);
            let neck = [if first >= 6 { 4.0 } else { 0.5 * md_neck }, half];
            let crown = row.crown(first, implant.platform, neck);
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

    fn crown(&mut self, place: u8, neck: P3, [half_neck, half_fo]: [f64; 2]) -> CrownForm {
        let [length, md, ..] = self.form(place);
        let middle = self.contact + self.sign * 0.5 * md;
        self.contact += self.sign * md;
        CrownForm {
            kind: Kind::at(place),
            neck,
            edge: P3::new(middle, neck.y + self.lean, neck.z - length),
            half_md: [half_neck, 0.5 * md],
            half_fo,
        }
    }

    fn tooth(&mut self, place: u8, root: &RootBody) -> ToothForm {
        let neck = on_axis(root, -root.neck.get());
        let half_fo = root.half_fo.get();
        if place < 6 {
            let [_, _, md_neck, _] = self.form(place);
            let crown = self.crown(place, neck, [0.5 * md_neck, half_fo]);
            return ToothForm { trunk: None, roots: vec![root.stack()], crown };
        }
        let apart = self.sign * MOLAR_ROOTS;
        let tip = root.tip + Deg::new(2.0 * self.sign);
        let second = RootBody { x: Mm::new(root.x.get() + apart), tip, ..root.clone() };
        // The trunk reaches from the outside of one root to that of the other.
        let neck = P3 { x: neck.x + 0.5 * apart, ..neck };
        let half = 0.5 * MOLAR_ROOTS + root.half_md.get();
        let [lower, upper] = MOLAR_TRUNK;
        let length = if self.jaw == Jaw::Maxilla { upper } else { lower };
        let knots = [(0.0, 1.0), (length, 0.98)].map(|(at, share)| Knot { at, share });
        let frame = Frame::on_axis(neck, V3::APICAL);
        let trunk = Stack::new(frame, half, half_fo, knots.to_vec(), 0.0);
        let crown = self.crown(place, neck, [half, half_fo]);
        ToothForm { trunk: Some(trunk), roots: vec![root.stack(), second.stack()], crown }
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
