//! Questions asked of closed polygons in a plane. A polygon is its vertices in order, the last
//! joined to the first; it may bend inwards but not cross itself.

use super::{Interval, Intervals, P2, order};

/// A straight piece of a polygon's edge.
pub type Edge = (P2, P2);

/// The edges in order.
pub fn edges(polygon: &[P2]) -> impl Iterator<Item = Edge> + '_ {
    let next = polygon.iter().cycle().skip(1);
    polygon.iter().copied().zip(next.copied())
}

/// Area, mm2, positive when the vertices run anticlockwise.
#[must_use]
pub fn signed_area(polygon: &[P2]) -> f64 {
    0.5 * edges(polygon).map(|(a, b)| a.x * b.y - b.x * a.y).sum::<f64>()
}

/// The convex hull of points, anticlockwise; fewer than three corners where they lie on a line.
#[must_use]
pub fn hull(mut points: Vec<P2>) -> Vec<P2> {
    order::sort_short(&mut points, |a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let mut hull: Vec<P2> = Vec::with_capacity(points.len());
    // The lower chain from left to right, then the upper one back.
    for _ in 0..2 {
        let start = hull.len();
        for &point in &points {
            while let [.., a, b] = hull[start..]
                && (b.x - a.x) * (point.y - b.y) <= (b.y - a.y) * (point.x - b.x)
            {
                hull.pop();
            }
            hull.push(point);
        }
        hull.pop();
        points.reverse();
    }
    hull
}

/// Whether a point lies inside (on an edge, either answer).
#[must_use]
pub fn contains(polygon: &[P2], point: P2) -> bool {
    let mut inside = false;
    for (a, b) in edges(polygon) {
        if (a.y > point.y) != (b.y > point.y) {
            let x = a.x + (b.x - a.x) * ((point.y - a.y) / (b.y - a.y));
            inside ^= point.x < x;
        }
    }
    inside
}

/// Distance from a point to a straight piece, mm.
#[must_use]
pub fn point_to_edge(point: P2, (a, b): Edge) -> f64 {
    let (ex, ey) = (b.x - a.x, b.y - a.y);
    let (px, py) = (point.x - a.x, point.y - a.y);
    let whole = ex * ex + ey * ey;
    let t = if whole > 0.0 { ((px * ex + py * ey) / whole).clamp(0.0, 1.0) } else { 0.0 };
    let (dx, dy) = (px - t * ex, py - t * ey);
    libm::sqrt(dx * dx + dy * dy)
}

/// Distance between two straight pieces, mm; 0 where they meet.
#[must_use]
pub fn edge_to_edge(one: Edge, other: Edge) -> f64 {
    if edges_cross(one, other) {
        return 0.0;
    }
    point_to_edge(one.0, other)
        .min(point_to_edge(one.1, other))
        .min(point_to_edge(other.0, one))
        .min(point_to_edge(other.1, one))
}

fn edges_cross((a, b): Edge, (c, d): Edge) -> bool {
    let turn = |p: P2, q: P2, r: P2| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    let (d1, d2) = (turn(a, b, c), turn(a, b, d));
    let (d3, d4) = (turn(c, d, a), turn(c, d, b));
    (d1 > 0.0) != (d2 > 0.0) && (d3 > 0.0) != (d4 > 0.0)
}

/// Signed distance from a point to the polygon's edge, mm: positive inside, negative outside.
#[must_use]
pub fn signed_distance(polygon: &[P2], point: P2) -> f64 {
    let nearest = edges(polygon).map(|edge| point_to_edge(point, edge)).fold(f64::MAX, f64::min);
    if contains(polygon, point) { nearest } else { -nearest }
}

/// Least distance between two polygons, mm; 0 where they meet or one lies in the other.
#[must_use]
pub fn distance(one: &[P2], other: &[P2]) -> f64 {
    let (Some(a), Some(b)) = (one.first(), other.first()) else {
        return f64::MAX;
    };
    if contains(one, *b) || contains(other, *a) {
        return 0.0;
    }
    let mut least = f64::MAX;
    for edge in edges(one) {
        for against in edges(other) {
            if box_gap(edge, against) < least {
                least = least.min(edge_to_edge(edge, against));
            }
        }
    }
    least
}

/// How far the boxes round two straight pieces are apart along the worse axis: never more than the
/// pieces themselves.
fn box_gap((a, b): Edge, (c, d): Edge) -> f64 {
    let along = |a: f64, b: f64, c: f64, d: f64| (a.min(b) - c.max(d)).max(c.min(d) - a.max(b));
    along(a.x, b.x, c.x, d.x).max(along(a.y, b.y, c.y, d.y))
}

/// What of the polygon lies on the side of a straight line where `side(point) >= 0`, for a linear
/// `side`. Where an inward bend is cut into several parts they stay joined along the line.
#[must_use]
pub fn clipped(polygon: &[P2], side: impl Fn(P2) -> f64) -> Vec<P2> {
    let mut kept = Vec::with_capacity(polygon.len() + 2);
    for (a, b) in edges(polygon) {
        let (sa, sb) = (side(a), side(b));
        if sa >= 0.0 {
            kept.push(a);
        }
        if (sa >= 0.0) != (sb >= 0.0) {
            let way = sa / (sa - sb);
            kept.push(P2::new(a.x + (b.x - a.x) * way, a.y + (b.y - a.y) * way));
        }
    }
    kept
}

/// Where the line `origin + t * step` lies in the polygon, t of either sign. A step of no length
/// gives all or nothing.
#[must_use]
pub fn line_within(polygon: &[P2], origin: P2, step: P2) -> Intervals {
    const FAR: f64 = 1e6;
    if step.x.abs() < 1e-12 && step.y.abs() < 1e-12 {
        return if contains(polygon, origin) {
            Intervals::one(-FAR, FAR)
        } else {
            Intervals::empty()
        };
    }
    let side = |p: P2| step.x * (p.y - origin.y) - step.y * (p.x - origin.x);
    let mut times = [0.0; 2 * super::Outline::MOST_VERTICES];
    let mut count = 0;
    for (a, b) in edges(polygon) {
        let (sa, sb) = (side(a), side(b));
        if (sa >= 0.0) == (sb >= 0.0) {
            continue;
        }
        let way = sa / (sa - sb);
        let at = P2::new(a.x + (b.x - a.x) * way, a.y + (b.y - a.y) * way);
        let t = if step.x.abs() > step.y.abs() {
            (at.x - origin.x) / step.x
        } else {
            (at.y - origin.y) / step.y
        };
        if count < times.len() {
            times[count] = t;
            count += 1;
        }
    }
    let times = &mut times[..count];
    order::ascend(times);
    let mut met = Intervals::empty();
    for pair in times.chunks_exact(2) {
        met.append(pair[0], pair[1]);
    }
    met
}

/// Whether every bend of an anticlockwise polygon is outward.
#[must_use]
pub fn is_convex(polygon: &[P2]) -> bool {
    let count = polygon.len();
    (0..count).all(|i| {
        let (a, b, c) = (polygon[i], polygon[(i + 1) % count], polygon[(i + 2) % count]);
        (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= -1e-12
    })
}

/// The least and greatest value of a coordinate over the vertices; `None` without vertices.
#[must_use]
pub fn extent(polygon: &[P2], coordinate: impl Fn(&P2) -> f64) -> Option<Interval> {
    let mut values = polygon.iter().map(coordinate);
    let first = values.next()?;
    let (from, to) = values.fold((first, first), |(a, b), v| (a.min(v), b.max(v)));
    Some(Interval { from, to })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(half: f64) -> Vec<P2> {
        vec![P2::new(-half, -half), P2::new(half, -half), P2::new(half, half), P2::new(-half, half)]
    }

    /// An anticlockwise L with its inward corner at (1, 1).
    fn ell() -> Vec<P2> {
        [(0.0, 0.0), (3.0, 0.0), (3.0, 1.0), (1.0, 1.0), (1.0, 3.0), (0.0, 3.0)]
            .map(|(x, y)| P2::new(x, y))
            .to_vec()
    }

    #[test]
    fn the_area_distance_and_shape_of_a_square_are_plain() {
        let square = square(2.0);
        assert!((signed_area(&square) - 16.0).abs() < 1e-15);
        assert!((signed_distance(&square, P2::new(1.5, 0.0)) - 0.5).abs() < 1e-15);
        assert!((signed_distance(&square, P2::new(5.0, 6.0)) + 5.0).abs() < 1e-15);
        assert!(is_convex(&square) && !is_convex(&ell()));
    }

    #[test]
    fn polygons_are_apart_by_their_nearest_edges_and_meet_at_nothing() {
        let shifted: Vec<_> = square(1.0).iter().map(|p| P2::new(p.x + 6.0, p.y + 1.0)).collect();
        assert!((distance(&square(2.0), &shifted) - 3.0).abs() < 1e-15);
        assert_eq!(distance(&square(2.0), &square(1.0)), 0.0);
    }

    #[test]
    fn clipping_keeps_the_part_on_the_asked_side() {
        let upper = clipped(&ell(), |p| p.y - 0.5);
        assert!((signed_area(&upper) - 3.5).abs() < 1e-12);
        assert!(clipped(&ell(), |p| p.y - 4.0).is_empty());
    }

    #[test]
    fn a_line_through_an_inward_bend_lies_in_it_twice() {
        let met = line_within(&ell(), P2::new(-1.0, 3.5), P2::new(1.0, -1.0));
        assert_eq!(met.as_slice().len(), 2, "{met:?}");
        let along_x = line_within(&ell(), P2::new(0.0, 0.5), P2::new(1.0, 0.0));
        assert_eq!(along_x.as_slice(), [Interval { from: 0.0, to: 3.0 }]);
    }

    #[test]
    fn lines_through_a_polygon_sum_to_its_area() {
        let (mut sum, step) = (0.0, 0.001);
        for i in 0..3000 {
            let origin = P2::new((f64::from(i) + 0.5) * step, 0.0);
            sum += line_within(&ell(), origin, P2::new(0.0, 1.0)).length() * step;
        }
        assert!((sum - 5.0).abs() < 1e-9, "{sum}");
    }
}
