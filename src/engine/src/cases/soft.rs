//! Gum, lip and the crown that is planned.

use super::archetype::{Brief, Plate};
use super::draw::{Draws, Field, hundredths};
use super::socket::Rooted;
use crate::anatomy::{Jaw, LipLine, PlannedCrown, Ridge, SoftTissue};
use crate::geometry::{P3, direction};
use crate::units::{Deg, Mm};

/// Mean and spread of facial gum thickness and of keratinised width. Upper front: Egreja et al.
/// 2012, 60 subjects, confirmed; thickness elsewhere between the extremes of an ultrasonic series of
/// 200 men (confirmed); lower widths from memory.
pub(super) const fn gum(jaw: Jaw, position: u8) -> [(f64, f64); 2] {
    match (jaw, position) {
        (Jaw::Maxilla, 1) => [(1.17, 0.20), (4.62, 1.02)],
        (Jaw::Maxilla, 2) => [(1.04, 0.24), (5.54, 1.09)],
        (Jaw::Maxilla, 3) => [(0.87, 0.27), (4.32, 1.33)],
        (Jaw::Maxilla, _) => [(1.05, 0.37), (3.7, 1.0)],
        (Jaw::Mandible, 1 | 2) => [(0.95, 0.3), (3.5, 1.0)],
        (Jaw::Mandible, 3) => [(0.80, 0.3), (2.7, 1.0)],
        (Jaw::Mandible, _) => [(1.0, 0.36), (2.9, 1.0)],
    }
}

pub(super) fn draw(draws: &Draws, rooted: &Rooted, ridge: &Ridge, brief: &Brief) -> SoftTissue {
    let free = brief.plate == Plate::Free;
    let [(thick, thick_sd), (wide, wide_sd)] = gum(rooted.tooth.jaw(), rooted.tooth.position());
    let mut gum = draws.stream(Field::GumThickness);
    let thickness = if brief.thick_gum {
        // Thick by every definition: rare, and the one site that every position finds suitable.
        gum.between(2.05, 2.5)
    } else {
        let (low, high) = match (free, brief.thin_gum_high_lip) {
            (_, true) => (0.5, 0.85),
            (true, false) => (0.4, 2.2),
            (false, false) => (1.05, 2.0),
        };
        gum.normal_within(thick, thick_sd, low, high)
    };
    let least = match (free, brief.thick_gum) {
        (true, _) => 0.5,
        (false, true) => 4.1,
        (false, false) => 3.1,
    };
    let keratinised = draws.stream(Field::Keratinised).normal_within(
        wide,
        wide_sd,
        least,
        wide + 2.2 * wide_sd + 0.6,
    );
    // Facial margin to crest about 3 mm (2.5 to 3.5; sounded 3.19 +- 0.71, confirmed).
    let above = draws.stream(Field::Margin).normal_within(3.05, 0.3, 2.5, 3.6);
    let fallen =
        if brief.recession { draws.stream(Field::Recession).between(1.0, 2.5) } else { 0.0 };
    let mut contacts = draws.stream(Field::Contacts);
    let loss = |side: f64| side_loss(ridge, side);
    let contact = |stream: &mut super::draw::Stream, loss: f64| {
        Mm::new(hundredths(stream.normal_within(4.4, 0.4, 3.4, 5.0) + loss))
    };
    SoftTissue {
        thickness: Mm::new(hundredths(thickness)),
        keratinised: Mm::new(hundredths(keratinised)),
        margin_z: Mm::new(hundredths(fallen - above)),
        margin_below_twin: Mm::new(hundredths(fallen)),
        contact_to_crest: [contact(&mut contacts, loss(-1.0)), contact(&mut contacts, loss(1.0))],
        lip: lip(draws, rooted, brief),
    }
}

/// How much the peak on one side has sunk.
fn side_loss(ridge: &Ridge, side: f64) -> f64 {
    let lost = ridge.crest.knots.iter().zip(&ridge.crest.unharmed);
    lost.filter(|(knot, _)| knot.x * side > 0.0)
        .map(|(now, before)| now.y - before.y)
        .fold(0.0, f64::max)
}

fn lip(draws: &Draws, rooted: &Rooted, brief: &Brief) -> LipLine {
    if brief.thin_gum_high_lip {
        return LipLine::High;
    }
    // What shows at full smile: ours; the lower front mostly stays hidden.
    let weights = match (rooted.tooth.jaw(), rooted.tooth.is_anterior()) {
        (Jaw::Maxilla, true) => [0.25, 0.5, 0.25],
        (Jaw::Maxilla, false) => [0.12, 0.4, 0.48],
        (Jaw::Mandible, _) => [0.02, 0.13, 0.85],
    };
    let [high, middle, low] = weights;
    draws.stream(Field::Lip).weighted(
        &[(LipLine::High, high), (LipLine::Middle, middle), (LipLine::Low, low)],
        LipLine::Low,
    )
}

/// The crown: its margin at the twin's level, its axis that of the tooth's crown. Crown axis against
/// root axis in upper centrals 6 +- 5 degrees (Shen et al. 2012 by class of bite, confirmed), others
/// about 1 +- 3.5 (from memory).
pub(super) fn crown(draws: &Draws, rooted: &Rooted, soft: &SoftTissue) -> PlannedCrown {
    let mut stream = draws.stream(Field::CrownAngle);
    let angle = match (rooted.tooth.jaw(), rooted.tooth.position()) {
        (Jaw::Maxilla, 1) => stream.normal_within(6.0, 5.0, -6.0, 14.0),
        (Jaw::Maxilla, 2) => stream.normal_within(4.0, 4.0, -6.0, 12.0),
        _ => stream.normal_within(1.0, 3.5, -6.0, 8.0),
    };
    let root = &rooted.root;
    let tilt = Deg::new(hundredths(root.tilt.get() + angle));
    let axis = direction(root.tilt, root.tip);
    let neck = P3::new(root.x.get(), root.y.get(), 0.0) + axis * -root.neck.get();
    let edge = neck + direction(tilt, root.tip) * -rooted.crown;
    PlannedCrown {
        margin_z: soft.margin_z - soft.margin_below_twin,
        edge: P3::new(hundredths(edge.x), hundredths(edge.y), hundredths(edge.z)),
        tilt,
        tip: root.tip,
        width: Mm::new(rooted.md),
    }
}
