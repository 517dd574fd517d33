//! Points on roots and ridges, as far as drawing a site needs them. Judging measures elsewhere.

use crate::anatomy::{Parted, Profile, RootBody, Site, Socket};
use crate::geometry::{P2, P3, direction};

/// Half-widths (mesiodistal, faciooral) and middle (x, y) of a root at a level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct RootAt {
    pub half_md: f64,
    pub half_fo: f64,
    pub x: f64,
    pub y: f64,
}

/// The root at level `z`; above the crest its widths go on unchanged, past the apex they are nothing.
pub(super) fn root_at(root: &RootBody, z: f64) -> RootAt {
    let axis = direction(root.tilt, root.tip);
    let along = z / axis.z;
    let depth = (along / root.length.get()).clamp(0.0, 1.0);
    let share = libm::pow(1.0 - depth, root.taper);
    let share = if depth >= 1.0 { 0.0 } else { share };
    RootAt {
        half_md: root.half_md.get() * share,
        half_fo: root.half_fo.get() * share,
        x: root.x.get() + axis.x * along,
        y: root.y.get() + axis.y * along,
    }
}

/// The apex of a root whose axis is given at the crest.
pub(super) fn apex(root: &RootBody) -> P3 {
    let axis = direction(root.tilt, root.tip);
    P3::new(root.x.get(), root.y.get(), 0.0) + axis * root.length.get()
}

/// The apex of a root whose axis is given at a level z.
fn apex_from((from, root): &(f64, RootBody)) -> P3 {
    let axis = direction(root.tilt, root.tip);
    P3::new(root.x.get(), root.y.get(), *from) + axis * root.length.get()
}

/// The apices of all roots.
pub(super) fn apices(site: &Site) -> Vec<P3> {
    site.socket.roots().iter().map(apex_from).collect()
}

/// Level of the deepest apex.
pub(super) fn deepest(site: &Site) -> f64 {
    apices(site).iter().map(|tip| tip.z).fold(f64::NEG_INFINITY, f64::max)
}

/// What of the tooth lies at level `z`: the trunk down to the furcation, the roots from there on.
pub(super) fn socket_at(site: &Site, z: f64) -> Vec<RootAt> {
    match &site.socket {
        Socket::One([root]) => vec![root_at(root, z)],
        Socket::Parted(parted) => parted_at(parted, z),
    }
}

/// The same of a tooth with several roots.
pub(super) fn parted_at(parted: &Parted, z: f64) -> Vec<RootAt> {
    let Parted { trunk, roots } = parted;
    let furcation = trunk.furcation.get();
    if z <= furcation {
        let whole = trunk.neck.get() + furcation;
        let down = ((z + trunk.neck.get()) / whole).clamp(0.0, 1.0);
        let share = 1.0 - (1.0 - trunk.narrowing) * down;
        let [half_md, half_fo] = [trunk.half_md, trunk.half_fo].map(|half| half.get() * share);
        return vec![RootAt { half_md, half_fo, x: 0.0, y: 0.0 }];
    }
    let reaching = roots.as_slice().iter().map(|root| (furcation, root.as_root()));
    let reaching = reaching.filter(|root| z <= apex_from(root).z);
    reaching.map(|(from, root)| root_at(&root, z - from)).collect()
}

/// The apices of a tooth with several roots.
pub(super) fn parted_apices(parted: &Parted) -> Vec<P3> {
    let furcation = parted.trunk.furcation.get();
    let roots = parted.roots.as_slice().iter();
    roots.map(|root| apex_from(&(furcation, root.as_root()))).collect()
}

/// A polyline over its first coordinate; straight on beyond its ends.
pub(super) fn along(knots: &[P2], at: f64) -> f64 {
    let Some(first) = knots.first() else { return 0.0 };
    if at <= first.x {
        return first.y;
    }
    for pair in knots.windows(2) {
        let &[a, b] = pair else { continue };
        if at <= b.x {
            return a.y + (b.y - a.y) * (at - a.x) / (b.x - a.x);
        }
    }
    knots.last().map_or(first.y, |last| last.y)
}

/// The face at level `z`.
pub(super) fn face(profile: &Profile, z: f64) -> f64 {
    along(&profile.knots, z)
}

/// Least distance from a point to a segment.
pub(super) fn to_segment(point: P3, from: P3, to: P3) -> f64 {
    let (whole, part) = (to - from, point - from);
    let square = whole.dot(whole);
    let t = if square > 0.0 { (part.dot(whole) / square).clamp(0.0, 1.0) } else { 0.0 };
    (point - (from + whole * t)).length()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_distance_to_a_segment_ends_at_its_ends() {
        let (a, b) = (P3::new(0.0, 0.0, 0.0), P3::new(10.0, 0.0, 0.0));
        assert!((to_segment(P3::new(5.0, 3.0, 4.0), a, b) - 5.0).abs() < 1e-12);
        assert!((to_segment(P3::new(13.0, 4.0, 0.0), a, b) - 5.0).abs() < 1e-12);
    }
}
