//! Triangulating simple polygons and extruding them.

use super::mesh::{Mesh, Welder};
use crate::geometry::{P2, P3};

/// Cuts a simple anticlockwise polygon into triangles, as places in `points`, by cutting off ears.
///
/// Where rounding leaves no proper ear, the flattest convex corner is cut, so that it always ends
/// with `points.len() - 2` triangles.
pub(super) fn triangulate(points: &[P2]) -> Vec<[usize; 3]> {
    let mut left: Vec<usize> = (0..points.len()).collect();
    let mut triangles = Vec::with_capacity(points.len().saturating_sub(2));
    while left.len() > 3 {
        let ear = (0..left.len())
            .find(|&i| is_ear(points, &left, i))
            .unwrap_or_else(|| sharpest(points, &left));
        triangles.push(corner(&left, ear));
        left.remove(ear);
    }
    if let &[a, b, c] = left.as_slice() {
        triangles.push([a, b, c]);
    }
    triangles
}

fn corner(left: &[usize], i: usize) -> [usize; 3] {
    let count = left.len();
    [left[(i + count - 1) % count], left[i], left[(i + 1) % count]]
}

/// Twice the signed area of a triangle.
pub(super) fn turn(a: P2, b: P2, c: P2) -> f64 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

fn is_ear(points: &[P2], left: &[usize], i: usize) -> bool {
    let [a, b, c] = corner(left, i);
    let (pa, pb, pc) = (points[a], points[b], points[c]);
    turn(pa, pb, pc) > 1e-12
        && !left.iter().filter(|&&other| other != a && other != b && other != c).any(|&other| {
            let p = points[other];
            turn(pa, pb, p) >= 0.0 && turn(pb, pc, p) >= 0.0 && turn(pc, pa, p) >= 0.0
        })
}

fn sharpest(points: &[P2], left: &[usize]) -> usize {
    let bend = |i: usize| {
        let [a, b, c] = corner(left, i);
        turn(points[a], points[b], points[c])
    };
    (0..left.len()).max_by(|&i, &j| bend(i).total_cmp(&bend(j))).unwrap_or(0)
}

/// The solid between two maps of a simple polygon, anticlockwise as seen from the `near` side: a
/// prism when both are shifts of it. `near` and `far` place each of its corners.
pub(super) fn between(polygon: &[P2], near: impl Fn(P2) -> P3, far: impl Fn(P2) -> P3) -> Mesh {
    let mut faces = Welder::default();
    for [a, b, c] in triangulate(polygon) {
        faces.triangle(near(polygon[a]), near(polygon[b]), near(polygon[c]));
        faces.triangle(far(polygon[c]), far(polygon[b]), far(polygon[a]));
    }
    for (i, &p) in polygon.iter().enumerate() {
        let q = polygon[(i + 1) % polygon.len()];
        faces.quad(near(q), near(p), far(p), far(q));
    }
    faces.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(points: &[P2]) -> f64 {
        triangulate(points)
            .iter()
            .map(|&[a, b, c]| turn(points[a], points[b], points[c]) / 2.0)
            .sum()
    }

    fn points(list: &[(f64, f64)]) -> Vec<P2> {
        list.iter().map(|&(x, y)| P2::new(x, y)).collect()
    }

    #[test]
    fn a_comb_with_a_corner_in_the_middle_of_an_edge_keeps_its_area() {
        let comb = points(&[
            (0.0, 0.0),
            (2.5, 0.0),
            (5.0, 0.0),
            (5.0, 3.0),
            (4.0, 3.0),
            (4.0, 1.0),
            (3.0, 1.0),
            (3.0, 3.0),
            (2.0, 3.0),
            (2.0, 1.0),
            (1.0, 1.0),
            (1.0, 3.0),
            (0.0, 3.0),
        ]);
        assert_eq!(triangulate(&comb).len(), comb.len() - 2);
        assert!((area(&comb) - 11.0).abs() < 1e-12);
    }

    #[test]
    fn an_extruded_polygon_is_closed_right_side_out_and_has_base_times_height() {
        let ell = points(&[(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)]);
        // Seen from below (the near side, y = 0 looking along +y) x right and z up is anticlockwise.
        let mesh = between(&ell, |p| P3::new(p.x, 0.0, p.y), |p| P3::new(p.x, 4.0, p.y));
        assert_eq!(mesh.closed(), Ok(()));
        assert!((mesh.volume() - 12.0).abs() < 1e-12, "{}", mesh.volume());
    }
}
