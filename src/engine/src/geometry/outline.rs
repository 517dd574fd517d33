//! A closed outline on the map, as a learner or an instructor draws it.

use super::P2;
use core::fmt;
use serde::{Deserialize, Serialize};

/// A simple polygon on the 0.1 mm grid of the map: `s` along x (distal), `t` along the drape
/// (0 at the facial reference crest, positive apically on the facial side). 3 to 16 vertices, no
/// edge crosses another, area above nothing; kept anticlockwise in (s, t).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "Vec<[i32; 2]>", into = "Vec<[i32; 2]>")]
pub struct Outline(Vec<[i32; 2]>);

/// Why some vertices are no outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OutlineFault {
    /// Fewer than three or more than sixteen vertices.
    Count {
        /// How many came.
        found: usize,
    },
    /// A vertex lies outside the map (40 mm from its origin).
    Far {
        /// Which vertex, from 0.
        vertex: usize,
    },
    /// Two edges cross or touch.
    Crossing {
        /// First edge, by its first vertex.
        first: usize,
        /// Second edge, by its first vertex.
        second: usize,
    },
    /// All vertices lie on one line.
    Flat,
    /// An edge holds no place of the grid between its ends.
    Short {
        /// The edge, by its first vertex.
        edge: usize,
    },
}

impl fmt::Display for OutlineFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Count { found } => {
                write!(f, "found {found} corners, expected 3 to {}", Outline::MOST_VERTICES)
            }
            Self::Far { vertex } => write!(
                f,
                "corner {} lies more than {} mm from the middle of the map",
                vertex + 1,
                Outline::FARTHEST / 10
            ),
            Self::Crossing { first, second } => write!(
                f,
                "the edge from corner {} crosses the edge from corner {}: draw an outline that does not cross itself",
                first + 1,
                second + 1
            ),
            Self::Flat => {
                f.write_str("the outline encloses no area: give corners that are not on one line")
            }
            Self::Short { edge } => write!(
                f,
                "the edge from corner {} is too short for one more corner on it",
                edge + 1
            ),
        }
    }
}

impl core::error::Error for OutlineFault {}

impl Outline {
    /// The most vertices an outline has.
    pub const MOST_VERTICES: usize = 16;
    /// The farthest a vertex lies from the map's origin along either axis, in tenths of a millimetre.
    pub const FARTHEST: i32 = 400;

    /// Checks vertices given in tenths of a millimetre.
    ///
    /// # Errors
    /// The first [`OutlineFault`] found.
    pub fn new(mut vertices: Vec<[i32; 2]>) -> Result<Self, OutlineFault> {
        let found = vertices.len();
        if !(3..=Self::MOST_VERTICES).contains(&found) {
            return Err(OutlineFault::Count { found });
        }
        for (vertex, at) in vertices.iter().enumerate() {
            if at.iter().any(|part| !(-Self::FARTHEST..=Self::FARTHEST).contains(part)) {
                return Err(OutlineFault::Far { vertex });
            }
        }
        for first in 0..found {
            for second in first + 1..found {
                if edges_meet(&vertices, first, second) {
                    return Err(OutlineFault::Crossing { first, second });
                }
            }
        }
        match twice_signed_area(&vertices) {
            0 => return Err(OutlineFault::Flat),
            area if area < 0 => vertices.reverse(),
            _ => {}
        }
        Ok(Self(vertices))
    }

    /// A small square over the crest: where drawing begins, and nobody's answer.
    #[must_use]
    pub fn patch() -> Self {
        Self(vec![[-20, -10], [20, -10], [20, 30], [-20, 30]])
    }

    /// One corner more: in the middle of the edge that begins at a corner (counted from 0), as near as
    /// the grid allows. Corners up to that one keep their numbers.
    ///
    /// # Errors
    /// [`OutlineFault::Count`] of a full outline, [`OutlineFault::Short`] of an edge that holds no
    /// other place of the grid, or what [`Outline::new`] finds.
    pub fn with_corner(&self, edge: usize) -> Result<Self, OutlineFault> {
        let mut vertices = self.0.clone();
        let edge = edge % vertices.len();
        let (from, to) = (vertices[edge], vertices[(edge + 1) % vertices.len()]);
        let middle = [0, 1].map(|part| (from[part] + to[part]).div_euclid(2));
        if middle == from || middle == to {
            return Err(OutlineFault::Short { edge });
        }
        vertices.insert(edge + 1, middle);
        Self::new(vertices)
    }

    /// One corner less; the corners after it move up.
    ///
    /// # Errors
    /// [`OutlineFault::Count`] of a triangle, or what [`Outline::new`] finds: without a corner between
    /// them two edges may cross.
    pub fn without_corner(&self, corner: usize) -> Result<Self, OutlineFault> {
        let mut vertices = self.0.clone();
        vertices.remove(corner % self.0.len());
        Self::new(vertices)
    }

    /// The vertices in tenths of a millimetre, anticlockwise in (s, t).
    #[must_use]
    pub fn tenths(&self) -> &[[i32; 2]] {
        &self.0
    }

    /// The vertices in millimetres, anticlockwise in (s, t).
    #[must_use]
    pub fn points(&self) -> Vec<P2> {
        self.0.iter().map(|&[s, t]| P2::new(f64::from(s) / 10.0, f64::from(t) / 10.0)).collect()
    }
}

impl TryFrom<Vec<[i32; 2]>> for Outline {
    type Error = OutlineFault;
    fn try_from(vertices: Vec<[i32; 2]>) -> Result<Self, OutlineFault> {
        Self::new(vertices)
    }
}

impl From<Outline> for Vec<[i32; 2]> {
    fn from(outline: Outline) -> Self {
        outline.0
    }
}

fn twice_signed_area(vertices: &[[i32; 2]]) -> i64 {
    let next = vertices.iter().cycle().skip(1);
    vertices
        .iter()
        .zip(next)
        .map(|(a, b)| i64::from(a[0]) * i64::from(b[1]) - i64::from(b[0]) * i64::from(a[1]))
        .sum()
}

/// Exact in integers: no tolerance decides what crosses.
fn edges_meet(vertices: &[[i32; 2]], first: usize, second: usize) -> bool {
    let count = vertices.len();
    let at = |i: usize| vertices[i % count];
    let (a, b) = (at(first), at(first + 1));
    let (c, d) = (at(second), at(second + 1));
    let neighbours = second == first + 1 || (first == 0 && second == count - 1);
    if neighbours {
        // Neighbouring edges share a vertex; they meet wrongly only when they fold back.
        let (shared, before, after) = if second == first + 1 { (b, a, d) } else { (a, c, b) };
        return turn(before, shared, after) == 0 && dot(shared, before, after) > 0
            || before == shared
            || shared == after;
    }
    let (d1, d2) = (turn(a, b, c), turn(a, b, d));
    let (d3, d4) = (turn(c, d, a), turn(c, d, b));
    (d1.signum() * d2.signum() < 0 && d3.signum() * d4.signum() < 0)
        || (d1 == 0 && between(a, b, c))
        || (d2 == 0 && between(a, b, d))
        || (d3 == 0 && between(c, d, a))
        || (d4 == 0 && between(c, d, b))
}

fn turn(a: [i32; 2], b: [i32; 2], c: [i32; 2]) -> i64 {
    let along = [i64::from(b[0] - a[0]), i64::from(b[1] - a[1])];
    let aside = [i64::from(c[0] - a[0]), i64::from(c[1] - a[1])];
    along[0] * aside[1] - along[1] * aside[0]
}

fn dot(from: [i32; 2], a: [i32; 2], b: [i32; 2]) -> i64 {
    i64::from(a[0] - from[0]) * i64::from(b[0] - from[0])
        + i64::from(a[1] - from[1]) * i64::from(b[1] - from[1])
}

fn between(a: [i32; 2], b: [i32; 2], c: [i32; 2]) -> bool {
    a[0].min(b[0]) <= c[0]
        && c[0] <= a[0].max(b[0])
        && a[1].min(b[1]) <= c[1]
        && c[1] <= a[1].max(b[1])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clockwise_outline_is_turned_round() {
        let outline = Outline::new(vec![[0, 0], [0, 10], [10, 10], [10, 0]]).unwrap();
        assert!(twice_signed_area(outline.tenths()) > 0);
    }

    #[test]
    fn an_outline_that_crosses_itself_is_refused_by_its_edges() {
        let bow = vec![[0, 0], [10, 10], [10, 0], [0, 10]];
        assert_eq!(Outline::new(bow), Err(OutlineFault::Crossing { first: 0, second: 2 }));
    }

    #[test]
    fn an_outline_that_folds_back_or_stands_still_is_refused() {
        assert!(Outline::new(vec![[0, 0], [10, 0], [5, 0], [5, 10]]).is_err());
        assert!(Outline::new(vec![[0, 0], [0, 0], [10, 0], [5, 10]]).is_err());
        assert!(Outline::new(vec![[0, 0], [5, 0], [10, 0]]).is_err());
    }

    #[test]
    fn a_vertex_in_the_middle_of_an_edge_is_legal() {
        assert!(Outline::new(vec![[0, 0], [5, 0], [10, 0], [5, 10]]).is_ok());
    }

    #[test]
    fn a_corner_comes_in_the_middle_of_its_edge_and_goes_again() {
        let square = Outline::patch();
        for edge in 0..4 {
            let more = square.with_corner(edge).unwrap();
            assert_eq!(more.tenths().len(), 5);
            assert_eq!(more.tenths()[..=edge], square.tenths()[..=edge]);
            assert_eq!(more.without_corner(edge + 1).unwrap(), square);
        }
        assert_eq!(square.with_corner(1).unwrap().tenths()[2], [20, 10]);
        // Half a tenth is no place of the grid: the lower of the two is taken.
        let odd = Outline::new(vec![[0, 0], [-3, -5], [10, -20]]).unwrap();
        assert!(odd.with_corner(0).unwrap().tenths().contains(&[-2, -3]));
    }

    #[test]
    fn a_full_outline_a_triangle_and_an_edge_without_room_keep_their_corners() {
        let mut outline = Outline::patch();
        while outline.tenths().len() < Outline::MOST_VERTICES {
            let corners = outline.tenths().len();
            outline = outline.with_corner(corners - 1 - corners % 4).unwrap();
        }
        assert_eq!(outline.with_corner(0), Err(OutlineFault::Count { found: 17 }));
        let small = Outline::new(vec![[0, 0], [1, 0], [0, 9]]).unwrap();
        assert_eq!(small.without_corner(1), Err(OutlineFault::Count { found: 2 }));
        assert_eq!(small.with_corner(0), Err(OutlineFault::Short { edge: 0 }));
    }

    #[test]
    fn a_corner_that_keeps_two_edges_apart_cannot_go() {
        let notched = vec![[0, 0], [40, 0], [40, 40], [0, 40], [30, 20]];
        let outline = Outline::new(notched).unwrap();
        let fault = outline.without_corner(1);
        assert!(matches!(fault, Err(OutlineFault::Crossing { .. })), "{fault:?}");
    }

    #[test]
    fn too_few_too_many_and_too_far_are_named() {
        assert_eq!(Outline::new(vec![[0, 0], [1, 1]]), Err(OutlineFault::Count { found: 2 }));
        let far = vec![[0, 0], [401, 0], [0, 10]];
        assert_eq!(Outline::new(far), Err(OutlineFault::Far { vertex: 1 }));
    }
}
