//! A closed surface of triangles, and the bytes that outside programs read.

use crate::geometry::P3;
use std::collections::BTreeMap;

/// What every written file says of itself.
pub const NOTICE: &str = "synthetic, not for treatment";

/// A surface of triangles in the site's frame, seen anticlockwise from outside; every edge belongs
/// to two triangles that run through it in opposite directions.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Mesh {
    /// Corners, millimetres.
    pub corners: Vec<P3>,
    /// Three places in `corners` for each triangle.
    pub triangles: Vec<[u32; 3]>,
}

/// Why a surface is not closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Leak {
    /// Edges that do not lie between exactly two triangles of opposite sense.
    pub edges: usize,
}

impl Mesh {
    /// Volume enclosed, in cubic millimetres; negative when the surface is inside out.
    #[must_use]
    pub fn volume(&self) -> f64 {
        let origin = P3::new(0.0, 0.0, 0.0);
        self.triangles
            .iter()
            .map(|&[a, b, c]| {
                let (a, b, c) = (self.at(a), self.at(b), self.at(c));
                (a - origin).dot((b - origin).cross(c - origin)) / 6.0
            })
            .sum()
    }

    /// Area of all triangles, in square millimetres.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.triangles
            .iter()
            .map(|&[a, b, c]| {
                let (a, b, c) = (self.at(a), self.at(b), self.at(c));
                (b - a).cross(c - a).length() / 2.0
            })
            .sum()
    }

    /// Checks that every edge lies between exactly two triangles of opposite sense.
    ///
    /// # Errors
    /// [`Leak`] with the count of edges that do not.
    pub fn closed(&self) -> Result<(), Leak> {
        let mut open: BTreeMap<(u32, u32), i32> = BTreeMap::new();
        let mut crowded = 0;
        for &[a, b, c] in &self.triangles {
            for (from, to) in [(a, b), (b, c), (c, a)] {
                let sense = if from < to { 1 } else { -1 };
                let count = open.entry((from.min(to), from.max(to))).or_insert(0);
                // Two triangles that run the same way through an edge would leave 2 or -2.
                *count += sense;
                crowded += usize::from(count.abs() > 1);
            }
        }
        let edges = open.values().filter(|count| **count != 0).count() + crowded;
        if edges == 0 { Ok(()) } else { Err(Leak { edges }) }
    }

    /// The mirror image in the plane x = 0, right side out again.
    #[must_use]
    pub fn mirrored(mut self) -> Self {
        for corner in &mut self.corners {
            corner.x = -corner.x;
        }
        for triangle in &mut self.triangles {
            triangle.swap(1, 2);
        }
        self
    }

    /// The bytes of a binary little-endian PLY file with 64-bit coordinates. `what` is one line.
    ///
    /// PLY rather than STL, because it keeps shared corners shared (a reader need not weld) and
    /// coordinates as exact as they were computed.
    #[must_use]
    pub fn ply(&self, what: &str) -> Vec<u8> {
        let mut bytes = format!(
            "ply\nformat binary_little_endian 1.0\ncomment {NOTICE}\ncomment {what}\ncomment millimetres\n\
             element vertex {}\nproperty double x\nproperty double y\nproperty double z\n\
             element face {}\nproperty list uchar int vertex_indices\nend_header\n",
            self.corners.len(),
            self.triangles.len(),
        )
        .into_bytes();
        for corner in &self.corners {
            for part in [corner.x, corner.y, corner.z] {
                bytes.extend(part.to_le_bytes());
            }
        }
        for triangle in &self.triangles {
            bytes.push(3);
            for corner in triangle {
                bytes.extend(corner.to_le_bytes());
            }
        }
        bytes
    }

    fn at(&self, corner: u32) -> P3 {
        self.corners[corner as usize]
    }
}

/// Collects faces by the places of their corners; corners that agree to a millionth of a millimetre
/// become one, and a triangle that loses its area that way is dropped.
#[derive(Debug, Default)]
pub(super) struct Welder {
    mesh: Mesh,
    places: BTreeMap<[i64; 3], u32>,
}

impl Welder {
    /// The corner at this place.
    pub(super) fn corner(&mut self, at: P3) -> u32 {
        // Rounded to the grid, so that a corner computed twice is found again.
        #[allow(clippy::cast_possible_truncation)] // within a few hundred millimetres
        let key = [at.x, at.y, at.z].map(|part| libm::round(part * 1e6) as i64);
        if let Some(&found) = self.places.get(&key) {
            return found;
        }
        #[allow(clippy::cast_possible_truncation)] // a few ten thousand corners
        let new = self.mesh.corners.len() as u32;
        self.mesh.corners.push(at);
        self.places.insert(key, new);
        new
    }

    /// A triangle, anticlockwise seen from outside.
    pub(super) fn triangle(&mut self, a: P3, b: P3, c: P3) {
        let places = [self.corner(a), self.corner(b), self.corner(c)];
        self.places(places);
    }

    /// A triangle between corners that are there already.
    pub(super) fn places(&mut self, places: [u32; 3]) {
        let [a, b, c] = places;
        if a != b && b != c && c != a {
            self.mesh.triangles.push(places);
        }
    }

    /// A quadrilateral, anticlockwise seen from outside.
    pub(super) fn quad(&mut self, a: P3, b: P3, c: P3, d: P3) {
        self.triangle(a, b, c);
        self.triangle(a, c, d);
    }

    /// What has been collected.
    pub(super) fn finish(self) -> Mesh {
        self.mesh
    }
}

/// A box between two corners.
#[must_use]
pub(super) fn cuboid(from: P3, to: P3) -> Mesh {
    let at = |x: bool, y: bool, z: bool| {
        P3::new(
            if x { to.x } else { from.x },
            if y { to.y } else { from.y },
            if z { to.z } else { from.z },
        )
    };
    let (o, i) = (false, true);
    let mut faces = Welder::default();
    faces.quad(at(o, o, o), at(o, i, o), at(i, i, o), at(i, o, o));
    faces.quad(at(o, o, i), at(i, o, i), at(i, i, i), at(o, i, i));
    faces.quad(at(o, o, o), at(i, o, o), at(i, o, i), at(o, o, i));
    faces.quad(at(o, i, o), at(o, i, i), at(i, i, i), at(i, i, o));
    faces.quad(at(o, o, o), at(o, o, i), at(o, i, i), at(o, i, o));
    faces.quad(at(i, o, o), at(i, i, o), at(i, i, i), at(i, o, i));
    faces.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit() -> Mesh {
        cuboid(P3::new(0.0, 0.0, 0.0), P3::new(1.0, 2.0, 3.0))
    }

    #[test]
    fn a_box_is_closed_and_has_its_volume_and_area_mirrored_or_not() {
        for mesh in [unit(), unit().mirrored()] {
            assert_eq!(mesh.closed(), Ok(()));
            assert!((mesh.volume() - 6.0).abs() < 1e-12);
            assert!((mesh.area() - 22.0).abs() < 1e-12);
        }
    }

    #[test]
    fn a_box_without_one_triangle_leaks_at_three_edges() {
        let mut mesh = unit();
        mesh.triangles.pop();
        assert_eq!(mesh.closed(), Err(Leak { edges: 3 }));
    }

    #[test]
    fn a_file_says_what_it_is_and_holds_as_many_bytes_as_its_header_says() {
        let bytes = unit().ply("a box");
        let header_end = bytes.windows(11).position(|w| w == b"end_header\n").unwrap() + 11;
        assert!(bytes[..header_end].windows(NOTICE.len()).any(|w| w == NOTICE.as_bytes()));
        assert_eq!(bytes.len() - header_end, 8 * 24 + 12 * 13);
    }
}
