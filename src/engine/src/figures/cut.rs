//! The site cut open along y, as the drawings need it.

use crate::anatomy::{Solid, Wall};
use crate::geometry::convex::Convex;
use crate::geometry::{Interval, Intervals, Outline, P2, P3, Ray, Stack, V3, polygon};

/// Where lines along y begin: oral of everything.
const FAR: f64 = -60.0;

fn across(x: f64, z: f64) -> Ray {
    Ray { origin: P3::new(x, FAR, z), direction: V3::FACIAL }
}

fn in_y(met: &Intervals) -> Intervals {
    let parts = met.as_slice().iter();
    Intervals::union_of(
        parts.map(|part| Interval { from: part.from + FAR, to: part.to + FAR }).collect(),
    )
}

/// What lies along y within one root at x and level z.
fn root_at(root: &Stack, x: f64, z: f64) -> Intervals {
    in_y(&root.ray(&across(x, z)))
}

/// The same within any root of the socket.
pub(super) fn roots_at(solid: &Solid, x: f64, z: f64) -> Intervals {
    let bodies = solid.socket.as_slice().iter();
    let parts = bodies.flat_map(|body| root_at(body, x, z).as_slice().to_vec());
    Intervals::union_of(parts.collect())
}

/// The cut of a body by the plane x = 0 apical of a level, as (z, from oral to facial): nothing where
/// the plane does not meet it there. The body is convex, so it is met over one stretch of levels.
pub(super) fn body_rows(body: &Stack, from: f64) -> Vec<(f64, Interval)> {
    const ROWS: u32 = 96;
    let last = body.frusta().support(V3::APICAL).z.max(body.cap().support(V3::APICAL).z);
    let met = |z: f64| {
        let met = root_at(body, 0.0, z);
        Some((z, Interval { from: met.as_slice().first()?.from, to: met.last()?.to }))
    };
    let level = |k: u32| from + (last - from) * f64::from(k) / f64::from(ROWS);
    let mut rows: Vec<(f64, Interval)> = (0..=ROWS).filter_map(|k| met(level(k))).collect();
    let step = (last - from) / f64::from(ROWS);
    // Where the stretch ends between two levels it is found by halving.
    let end = |mut inside: (f64, Interval), mut outside: f64| {
        for _ in 0..20 {
            let middle = 0.5 * (inside.0 + outside);
            match met(middle) {
                Some(row) => inside = row,
                None => outside = middle,
            }
        }
        inside
    };
    if let (Some(first), Some(&deepest)) = (rows.first().copied(), rows.last()) {
        if first.0 > from + 0.5 * step {
            rows.insert(0, end(first, first.0 - step));
        }
        rows.push(end(deepest, deepest.0 + step));
    }
    rows
}

/// The cut of the root (of several, of their trunk) by the plane of `x`, as (z, from oral to facial) from the neck to the
/// apex.
pub(super) fn root_rows(solid: &Solid, x: f64) -> Vec<(f64, Interval)> {
    const ROWS: u32 = 64;
    let Some(root) = solid.socket.coronal() else { return Vec::new() };
    let axis = root.frame.along;
    let (first, last) = (root.first_level() * axis.z, root.apex().z);
    (0..=ROWS)
        .filter_map(|k| {
            // Rows crowd towards the apex, where the outline turns.
            let part = f64::from(k) / f64::from(ROWS);
            let z = first + (last - first) * (1.0 - (1.0 - part) * (1.0 - part));
            let met = root_at(root, x, z);
            let (from, to) = (met.as_slice().first()?.from, met.as_slice().last()?.to);
            Some((z, Interval { from, to }))
        })
        .collect()
}

/// The stretches of t that an outline covers at s.
pub(super) fn stretches(outline: &Outline, s: f64) -> Intervals {
    polygon::line_within(&outline.points(), P2::new(s, 0.0), P2::new(0.0, 1.0))
}

/// The stretches of z over which a wall is missing at x.
pub(super) fn missing(solid: &Solid, wall: Wall, x: f64) -> Intervals {
    let cuts = solid.cuts.iter().filter(|cut| cut.wall == wall);
    let parts = cuts.flat_map(|cut| {
        let line = polygon::line_within(&cut.shadow, P2::new(x, 0.0), P2::new(0.0, 1.0));
        line.as_slice().to_vec()
    });
    Intervals::union_of(parts.collect())
}

/// The point of the drape at t in the sagittal plane, as (y, z).
pub(super) fn drape(solid: &Solid, t: f64) -> P2 {
    let at = solid.map.point(P2::new(0.0, t));
    P2::new(at.y, at.z)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::rules::trial::Trial;

    #[test]
    fn an_outline_is_cut_where_its_edges_cross_the_line() {
        let outline = Outline::new(vec![[-20, -10], [20, -10], [20, 50], [-20, 50]]).unwrap();
        let cut = stretches(&outline, 0.0);
        assert_eq!(cut.as_slice(), [Interval { from: -1.0, to: 5.0 }]);
        assert!(stretches(&outline, 2.5).is_empty());
    }

    #[test]
    fn a_plain_root_is_as_wide_as_its_law_says_at_a_knot() {
        let solid = Solid::of(&Trial::plain().case.site);
        let half = 3.0 * libm::pow(0.5, 0.3);
        assert!((roots_at(&solid, 0.0, 5.5).length() - 2.0 * half).abs() < 1e-9);
        assert!(roots_at(&solid, 0.0, 11.5).is_empty());
    }

    #[test]
    fn a_dehiscence_is_missing_from_above_the_crest_down_to_its_end() {
        let mut site = Trial::plain().case.site;
        let outline = Outline::new(vec![[-20, -10], [20, -10], [0, 50]]).unwrap();
        site.defects = vec![Defect { wall: Wall::Facial, kind: DefectKind::DehiscenceV, outline }];
        let solid = Solid::of(&site);
        let gone = missing(&solid, Wall::Facial, 0.0);
        let last = gone.as_slice().last().unwrap();
        assert!(last.from < -5.0);
        assert!((last.to - solid.map.z(Wall::Facial, 5.0)).abs() < 1e-9);
        assert!(missing(&solid, Wall::Oral, 0.0).is_empty());
    }
}
