//! The jaw of a scene: gum, compact bone and marrow bone as nested ridges, and the room beyond a
//! floor.

use super::shape::Shape;
use super::strip::Strip;
use super::teeth::parts;
use crate::anatomy::{FloorKind, Jaw, Profile, Site, Wall};
use crate::geometry::{P2, P3, V3, polyline};
use crate::units::Mm;

/// Compact bone over the crest and round canals, mm: as thick as lamina dura (0.2 to 0.4, from memory).
pub const RIM: f64 = 0.3;
/// Compact bone over a floor, mm (ours: a film sees the whole floor from its edge).
const FLOOR: f64 = 0.15;
/// Gum coronal of the crest between teeth, mm: what a papilla stands above bone, at most.
const PAPILLA: f64 = 4.0;
/// Bone between sinus or nose and the outside, mm (ours).
const CAVITY_WALL: f64 = 0.8;
/// Beyond every x of a film.
const FAR: f64 = 80.0;

/// The nested ridges.
#[derive(Debug)]
pub struct Jawbone {
    /// Gum with all that it covers.
    pub gum: Shape,
    /// Bone as if nothing stood in it, floor or no floor.
    pub bone: Shape,
    /// What of it is marrow bone.
    pub core: Shape,
    /// What of it is the room of sinus or nose.
    pub cavity: Option<Shape>,
}

/// Thickness of the compact plate of one wall, mm, measured along y: that of the plate over the middle
/// of the site's root (of several, of the one with the thinnest plate), where it is compact through and through, held within what is usual for the jaw
/// (ours: 0.5 to 1.6 in the upper, 0.8 to 2.4 in the lower jaw).
#[must_use]
pub fn plate(site: &Site, wall: Wall) -> f64 {
    let face = |profile: &Profile, z: f64| polyline::value(&profile.knots, z);
    let (_, roots) = parts(&site.socket);
    let against = site.socket.against(wall).filter_map(|place| roots.get(place));
    let over = against.map(|root| {
        let level = 0.5 * (root.first_level().max(0.0) + root.last_level());
        let middle = root.frame.point(V3::new(0.0, 0.0, level));
        let half = root.facial * root.share(level);
        match wall {
            Wall::Facial => face(&site.ridge.facial, middle.z) - middle.y - half,
            Wall::Oral => middle.y - half - face(&site.ridge.oral, middle.z),
        }
    });
    let over = over.fold(f64::MAX, f64::min);
    match site.tooth.jaw() {
        Jaw::Maxilla => over.clamp(0.5, 1.6),
        Jaw::Mandible => over.clamp(0.8, 2.4),
    }
}

/// The ridges of a site whose crest has been carried on past its neighbours.
#[must_use]
pub fn jawbone(site: &Site, crest: &[P2]) -> Jawbone {
    let insets = [plate(site, Wall::Facial), plate(site, Wall::Oral)];
    let floor = site.vital.floor.as_ref().map(|floor| [floor.z.get(), floor.rise]);
    let lowered = |by: f64| crest.iter().map(|k| P2::new(k.x, k.y + by)).collect::<Vec<_>>();
    let ridge = |insets, by, floor| {
        Shape::Ridge(Strip::new(faces(site, insets), lowered(by), drop(site), floor))
    };
    Jawbone {
        gum: gum(site, crest),
        bone: ridge([0.0; 2], 0.0, None),
        core: ridge(insets, RIM, floor.map(|[z, rise]| [z - FLOOR, rise])),
        cavity: site.vital.floor.as_ref().map(|floor| {
            let wall = if floor.kind == FloorKind::Nose { 0.5 } else { 1.0 } * CAVITY_WALL;
            let line = [-FAR, FAR].map(|x| P2::new(x, floor.z.get() + floor.rise * x));
            let level = (0.0, drop(site).1);
            Shape::Ridge(Strip::new(faces(site, [wall; 2]), line.to_vec(), level, None))
        }),
    }
}

/// Faces of the site's ridge, moved in by the insets.
fn faces(site: &Site, [facial, oral]: [f64; 2]) -> [Vec<P2>; 2] {
    let moved = |profile: &Profile, by: f64| {
        profile.knots.iter().map(|knot| P2::new(knot.x, knot.y + by)).collect()
    };
    [moved(&site.ridge.facial, -facial), moved(&site.ridge.oral, oral)]
}

/// How much deeper the oral crest lies, and its share over y: as the site's own bone has it.
fn drop(site: &Site) -> (f64, [P2; 2]) {
    let face = |profile: &Profile| polyline::value(&profile.knots, 0.0);
    let (facial, oral) = (face(&site.ridge.facial), face(&site.ridge.oral));
    let share = [P2::new(oral, 1.0), P2::new(facial.max(oral + 1e-6), 0.0)];
    (site.ridge.crest.oral_offset.get(), share)
}

/// Gum: as thick as it is over bone, and coronal of the highest bone thinning out to an edge.
fn gum(site: &Site, crest: &[P2]) -> Shape {
    let thickness = site.soft.thickness.get();
    let (offset, share) = drop(site);
    let top = crest.iter().map(|knot| knot.y).fold(0.0, f64::min) + offset.min(0.0);
    let mut gum = faces(site, [-thickness; 2]);
    let middle = site.socket.as_one().y.get();
    for ((face, bone), side) in gum.iter_mut().zip(faces(site, [0.0; 2])).zip([1.0, -1.0]) {
        let [at_crest, at_top] = [(0.0, 1.0), (top, 0.4)]
            .map(|(z, part)| P2::new(z, polyline::value(&bone, z) + part * side * thickness));
        face.retain(|knot| knot.x > 0.0);
        face.insert(0, at_crest);
        if top < -0.1 {
            face.insert(0, at_top);
        }
        face.insert(0, P2::new(top.min(-0.1) - PAPILLA - 1.0, middle + side * 0.5));
    }
    Shape::Ridge(Strip::new(gum, gum_line(site, crest), (0.0, share), None))
}

/// The gum's edge over x: the margin at each tooth's middle, a papilla over each peak of the crest.
fn gum_line(site: &Site, crest: &[P2]) -> Vec<P2> {
    let margin = site.soft.margin_z.get();
    let [mesial, distal] = site.soft.contact_to_crest.map(Mm::get);
    crest
        .iter()
        .map(|knot| {
            let contact = if knot.x < 0.0 { mesial } else { distal };
            // Over a peak the papilla; elsewhere as high over bone as at the middle of the tooth.
            let peak = knot.y < -0.5;
            let above = if peak { contact.min(PAPILLA) } else { -margin };
            P2::new(knot.x, knot.y - above.max(1.2))
        })
        .collect()
}

/// The crest as it is, carried on past the neighbours: a peak half way to the middle of the tooth
/// beyond, and its own level there.
#[must_use]
pub fn crest_beyond(site: &Site, middles: [Option<f64>; 2]) -> Vec<P2> {
    let mut knots = site.ridge.crest.knots.clone();
    let highest = |sign: f64| {
        let side = knots.iter().filter(|knot| knot.x * sign > 0.0);
        side.map(|knot| knot.y).fold(0.0, f64::min)
    };
    let [before, after] = [highest(-1.0), highest(1.0)];
    let ends = [knots.first().copied(), knots.last().copied()];
    if let (Some(end), Some(middle)) = (ends[0], middles[0])
        && middle < end.x - 1.0
    {
        knots.insert(0, P2::new(f64::midpoint(end.x, middle), 0.8 * before));
        knots.insert(0, P2::new(middle, end.y));
    }
    if let (Some(end), Some(middle)) = (ends[1], middles[1])
        && middle > end.x + 1.0
    {
        knots.push(P2::new(f64::midpoint(end.x, middle), 0.8 * after));
        knots.push(P2::new(middle, end.y));
    }
    knots
}

/// The box of a scene: what a film or a section can show.
pub const BOUNDS: [P3; 2] = [P3::new(-40.0, -30.0, -30.0), P3::new(40.0, 25.0, 60.0)];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Floor;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn marrow_bone_lies_within_bone_and_bone_within_gum() {
        let mut site = Trial::plain().case.site;
        site.vital.floor = Some(Floor { kind: FloorKind::Sinus, z: Mm::new(16.0), rise: 0.1 });
        let crest = crest_beyond(&site, [Some(-17.0), Some(14.0)]);
        let jaw = jawbone(&site, &crest);
        let (mut counts, cavity) = ([0; 4], jaw.cavity.as_ref().unwrap());
        for i in 0..20_000 {
            let turn = f64::from(i);
            let at = P3::new(
                20.0 * libm::sin(turn),
                -4.0 + 8.0 * libm::sin(1.7 * turn),
                8.0 + 14.0 * libm::sin(0.37 * turn),
            );
            let [gum, bone, core, room] =
                [&jaw.gum, &jaw.bone, &jaw.core, cavity].map(|shape| shape.contains(at));
            assert!(gum || !bone, "{at:?}");
            assert!(bone || !(core || room), "{at:?}");
            assert!(!(core && room), "{at:?}");
            for (count, inside) in counts.iter_mut().zip([gum, bone, core, room]) {
                *count += u32::from(inside);
            }
        }
        assert!(counts.iter().all(|count| *count > 500), "{counts:?}");
    }

    #[test]
    fn a_plate_is_as_thick_as_the_site_s_within_what_is_usual() {
        let mut site = Trial::plain().case.site;
        let ordinary = plate(&site, Wall::Facial);
        assert!((0.5..1.6).contains(&ordinary), "{ordinary}");
        for knot in &mut site.ridge.facial.knots {
            knot.y += 3.0;
        }
        assert_eq!(plate(&site, Wall::Facial), 1.6);
    }
}
