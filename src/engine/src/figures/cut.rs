//! The site cut open: what a line along y meets at some level, and the drape as a ruler.

use super::curve::value_at;
use crate::anatomy::{Profile, Ridge, RootBody, Site, Wall};
use crate::geometry::{Interval, Intervals, Outline, P2};

/// y of one face of the ridge at level z.
pub(super) fn face(site: &Site, wall: Wall, z: f64) -> f64 {
    value_at(&profile(&site.ridge, wall).knots, z)
}

/// The outer face on one side.
pub(super) const fn profile(ridge: &Ridge, wall: Wall) -> &Profile {
    match wall {
        Wall::Facial => &ridge.facial,
        Wall::Oral => &ridge.oral,
    }
}

/// Level of the crest at one face, at x.
pub(super) fn crest(site: &Site, wall: Wall, x: f64) -> f64 {
    let level = value_at(&site.ridge.crest.knots, x);
    match wall {
        Wall::Facial => level,
        Wall::Oral => level + site.ridge.crest.oral_offset.get(),
    }
}

/// Shares of the length at which a root's cross-sections are laid.
const SLICES: u32 = 40;

/// The cut of one root by the plane x = `at`, as (z, oral y, facial y) from the neck to the apex;
/// empty where the plane misses it.
pub(super) fn root_rows(root: &RootBody, at: f64) -> Vec<(f64, Interval)> {
    let length = root.length.get();
    let axis = crate::geometry::direction(root.tilt, root.tip);
    let mut rows = Vec::new();
    let mut row = |along: f64, share: f64| {
        let narrowing = libm::pow((1.0 - share).max(0.0), root.taper);
        let middle = P2::new(root.x.get() + axis.x * along, root.y.get() + axis.y * along);
        let off = (at - middle.x) / (root.half_md.get() * narrowing).max(1e-9);
        if off.abs() <= 1.0 {
            let half = root.half_fo.get() * narrowing * libm::sqrt(1.0 - off * off);
            rows.push((axis.z * along, Interval { from: middle.y - half, to: middle.y + half }));
        }
    };
    row(-root.neck.get(), 0.0);
    for k in 0..=SLICES {
        // Slices crowd towards the apex, where the outline turns.
        let part = f64::from(k) / f64::from(SLICES);
        let share = 1.0 - (1.0 - part) * (1.0 - part);
        row(share * length, share);
    }
    rows
}

/// What lies along y at x = `at`, level `z`, within the roots.
pub(super) fn roots_at(site: &Site, at: f64, z: f64) -> Intervals {
    let parts = site.socket.roots.iter().filter_map(|root| {
        let rows = root_rows(root, at);
        rows.windows(2).find(|pair| pair[0].0 <= z && z <= pair[1].0).map(|pair| {
            let span = (pair[1].0 - pair[0].0).max(1e-12);
            let part = (z - pair[0].0) / span;
            let mix = |a: f64, b: f64| a + part * (b - a);
            Interval { from: mix(pair[0].1.from, pair[1].1.from), to: mix(pair[0].1.to, pair[1].1.to) }
        })
    });
    Intervals::union_of(parts.collect())
}

/// Arc length along a face from the reference crest down to level z; negative above it.
fn arc(profile: &Profile, z: f64) -> f64 {
    let (from, to) = (z.min(0.0), z.max(0.0));
    let mut length = 0.0;
    let mut before = P2::new(from, value_at(&profile.knots, from));
    let inner = profile.knots.iter().filter(|knot| from < knot.x && knot.x < to).copied();
    for now in inner.chain([P2::new(to, value_at(&profile.knots, to))]) {
        length += libm::hypot(now.x - before.x, now.y - before.y);
        before = now;
    }
    if z < 0.0 { -length } else { length }
}

/// Width of the flat part of the drape: from face to face at the reference crest.
pub(super) fn across(site: &Site) -> f64 {
    face(site, Wall::Facial, 0.0) - face(site, Wall::Oral, site.ridge.crest.oral_offset.get())
}

/// Place on the map (t) of level z on one face.
pub(super) fn t_of(site: &Site, wall: Wall, z: f64) -> f64 {
    match wall {
        Wall::Facial => arc(&site.ridge.facial, z),
        Wall::Oral => {
            let start = arc(&site.ridge.oral, site.ridge.crest.oral_offset.get());
            -across(site) - (arc(&site.ridge.oral, z) - start)
        }
    }
}

/// Point of the drape in the section (y, z) at t.
pub(super) fn drape(site: &Site, t: f64) -> P2 {
    let wide = across(site);
    if t >= 0.0 {
        let z = level(|z| t_of(site, Wall::Facial, z), t, 0.0);
        return P2::new(face(site, Wall::Facial, z), z);
    }
    let offset = site.ridge.crest.oral_offset.get();
    if t >= -wide {
        let part = -t / wide.max(1e-9);
        let (a, b) = (face(site, Wall::Facial, 0.0), face(site, Wall::Oral, offset));
        return P2::new(a + part * (b - a), part * offset);
    }
    let z = level(|z| -t_of(site, Wall::Oral, z), -t, offset);
    P2::new(face(site, Wall::Oral, z), z)
}

/// The level at which a rising function reaches `value`, by halving.
fn level(of: impl Fn(f64) -> f64, value: f64, from: f64) -> f64 {
    let (mut low, mut high) = (from, from + 60.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if of(middle) < value { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

/// The stretches of t that an outline covers at s.
pub(super) fn stretches(outline: &Outline, s: f64) -> Intervals {
    let points = outline.points();
    // A hair aside, so that a vertex exactly on the line is crossed once.
    let s = s + 1e-7;
    let mut crossings: Vec<f64> = Vec::new();
    for (a, b) in points.iter().zip(points.iter().cycle().skip(1)) {
        if (a.x > s) != (b.x > s) {
            crossings.push(a.y + (s - a.x) / (b.x - a.x) * (b.y - a.y));
        }
    }
    crossings.sort_by(f64::total_cmp);
    let pairs = crossings.chunks_exact(2).map(|pair| Interval { from: pair[0], to: pair[1] });
    Intervals::union_of(pairs.collect())
}

/// The stretches of z over which a wall is missing at x = `at`. A defect that crosses the edge of the
/// map's flat part is open to the crest.
pub(super) fn missing(site: &Site, wall: Wall, at: f64) -> Intervals {
    const OPEN: f64 = -20.0;
    let wide = across(site);
    let parts = site.defects_of(wall).flat_map(|defect| {
        let stretches = stretches(&defect.outline, at);
        stretches.as_slice().to_vec()
    });
    let levels = parts.filter_map(|part| match wall {
        Wall::Facial => (part.to > 0.0).then(|| Interval {
            from: if part.from <= 0.0 { OPEN } else { drape(site, part.from).y },
            to: drape(site, part.to).y,
        }),
        Wall::Oral => (part.from < -wide).then(|| Interval {
            from: if part.to >= -wide { OPEN } else { drape(site, part.to).y },
            to: drape(site, part.from).y,
        }),
    });
    Intervals::union_of(levels.collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn the_drape_and_its_inverse_agree() {
        let site = Trial::plain().case.site;
        for t in [-15.0, -8.4, -4.0, 0.0, 3.0, 12.0] {
            let at = drape(&site, t);
            let back = if t >= 0.0 {
                t_of(&site, Wall::Facial, at.y)
            } else if t <= -across(&site) {
                t_of(&site, Wall::Oral, at.y)
            } else {
                at.y + t
            };
            assert!((back - t).abs() < 1e-6, "{t}: {back}");
        }
    }

    #[test]
    fn an_outline_is_cut_where_its_edges_cross_the_line() {
        let outline = Outline::new(vec![[-20, -10], [20, -10], [20, 50], [-20, 50]]).unwrap();
        let cut = stretches(&outline, 0.0);
        assert_eq!(cut.as_slice(), [Interval { from: -1.0, to: 5.0 }]);
        assert!(stretches(&outline, 2.5).is_empty());
    }

    #[test]
    fn a_plain_root_is_as_wide_as_its_law_says() {
        let site = Trial::plain().case.site;
        let half = 3.0 * libm::pow(0.5, 0.3);
        assert!((roots_at(&site, 0.0, 5.5).length() - 2.0 * half).abs() < 0.02);
        assert!(roots_at(&site, 0.0, 11.5).is_empty());
    }
}
