//! The contour layer as a solid: graft outside the facial wall, as thick as planned over the facial
//! defects and falling evenly to nothing [`FALL`] beyond their edge.
//!
//! Thickness stands square to the wall. The mesh pushes the wall out along y by thickness over the
//! cosine of the wall's lean, which has the same volume over each piece of the wall; where the wall
//! bends, a step along y joins the pieces.

use super::cuts::Unrolled;
use super::mesh::{Mesh, Welder};
use super::ridge::y_at;
use crate::anatomy::{Bodies, Map, Site, Wall};
use crate::geometry::{P2, P3, polygon};

/// From the defect's edge, on the map, to where the layer has fallen to nothing, mm.
pub const FALL: f64 = 2.0;

/// Spacing of the grid, mm. The layer's surface is exact at its corners; between them it departs
/// from the cone-shaped fall by less than a hundredth of a millimetre.
const SPACING: f64 = 0.125;

/// A row of the grid, across the wall.
struct Row {
    t: f64,
    z: f64,
    y: f64,
    /// One over the cosine of the wall's lean.
    stretch: f64,
}

/// The outlines over which the layer has its full thickness, on the map, apical of the crest: the
/// facial defects; on an intact wall the socket's outline down to half its depth.
#[must_use]
pub fn base(site: &Site) -> Vec<Vec<P2>> {
    let apical = |outline: &[P2]| polygon::clipped(outline, |p| p.y);
    let mut base: Vec<Vec<P2>> = site
        .defects_of(Wall::Facial)
        .map(|defect| apical(&defect.outline.points()))
        .filter(|outline| outline.len() > 2)
        .collect();
    if base.is_empty() {
        base.push(Bodies::of(&site.socket).facial_outline(&Map::of(&site.ridge)));
    }
    base
}

/// The layer of this thickness; `None` when it has none.
#[must_use]
pub fn contour(site: &Site, thickness: f64) -> Option<Mesh> {
    let base = base(site);
    if thickness <= 0.0 || base.iter().all(Vec::is_empty) {
        return None;
    }
    let bound = |part: fn(&P2) -> f64, pick: fn(f64, f64) -> f64, start: f64| {
        base.iter().flatten().map(part).fold(start, pick)
    };
    let columns =
        steps(bound(|p| p.x, f64::min, f64::MAX) - FALL, bound(|p| p.x, f64::max, f64::MIN) + FALL);
    let top = (bound(|p| p.y, f64::min, f64::MAX) - FALL).max(0.0);
    let rows = rows(site, top, bound(|p| p.y, f64::max, f64::MIN) + FALL);
    let height = |row: &Row, s: f64| thickness * share(&base, P2::new(s, row.t));
    let sheet = |lift: &dyn Fn(&Row, f64) -> f64| -> Vec<Vec<P3>> {
        rows.iter()
            .map(|row| columns.iter().map(|&s| P3::new(s, row.y + lift(row, s), row.z)).collect())
            .collect()
    };
    let (inner, outer) = (sheet(&|_, _| 0.0), sheet(&|row, s| height(row, s) * row.stretch));
    Some(shell(&inner, &outer))
}

/// 1 over the base, 0 from [`FALL`] beyond them on.
fn share(defects: &[Vec<P2>], at: P2) -> f64 {
    let distance = defects.iter().map(|defect| distance(defect, at)).fold(f64::MAX, f64::min);
    let share = 1.0 - distance / FALL;
    // A sliver of rounding would be a face of no height.
    if share < 1e-6 { 0.0 } else { share }
}

/// From a point to a filled polygon; 0 inside.
fn distance(polygon: &[P2], at: P2) -> f64 {
    let mut inside = false;
    let mut nearest = f64::MAX;
    for (i, &a) in polygon.iter().enumerate() {
        let b = polygon[(i + 1) % polygon.len()];
        if (a.y > at.y) != (b.y > at.y) && at.x < a.x + (b.x - a.x) * (at.y - a.y) / (b.y - a.y) {
            inside = !inside;
        }
        let (ex, ey) = (b.x - a.x, b.y - a.y);
        let part = ((at.x - a.x) * ex + (at.y - a.y) * ey) / (ex * ex + ey * ey);
        let part = part.clamp(0.0, 1.0);
        let (dx, dy) = (at.x - a.x - part * ex, at.y - a.y - part * ey);
        nearest = nearest.min(libm::sqrt(dx * dx + dy * dy));
    }
    if inside { 0.0 } else { nearest }
}

fn steps(from: f64, to: f64) -> Vec<f64> {
    let count = libm::ceil((to - from) / SPACING).max(1.0);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a few hundred
    let whole = count as u32;
    (0..=whole).map(|i| from + (to - from) * (f64::from(i) / count)).collect()
}

/// Rows at even steps of t between the knots of the wall; a knot gets one row for each side.
fn rows(site: &Site, top: f64, low: f64) -> Vec<Row> {
    let profile = &site.ridge.facial;
    let wall = Unrolled::wall(site, Wall::Facial);
    let mut rows = Vec::new();
    for piece in wall.pieces(top, low) {
        let [z0, z1] = piece.map(|t| wall.z(t));
        let lean = (y_at(profile, z1) - y_at(profile, z0)) / (z1 - z0);
        let stretch = libm::sqrt(1.0 + lean * lean);
        rows.extend(steps(piece[0], piece[1]).into_iter().map(|t| {
            let z = wall.z(t);
            Row { t, z, y: y_at(profile, z), stretch }
        }));
    }
    rows
}

/// The solid between two sheets over one grid (rows apically, columns distally), closed along the
/// first row; along the other edges the sheets meet.
fn shell(inner: &[Vec<P3>], outer: &[Vec<P3>]) -> Mesh {
    let mut faces = Welder::default();
    let mut skin = |corners: [(usize, usize); 3]| {
        let apart = corners.iter().any(|&(i, j)| inner[i][j] != outer[i][j]);
        if apart {
            let at = |sheet: &[Vec<P3>], (i, j): (usize, usize)| sheet[i][j];
            let [a, b, c] = corners;
            faces.triangle(at(outer, a), at(outer, b), at(outer, c));
            faces.triangle(at(inner, a), at(inner, c), at(inner, b));
        }
    };
    let (rows, columns) = (inner.len(), inner[0].len());
    for i in 0..rows - 1 {
        for j in 0..columns - 1 {
            skin([(i, j), (i + 1, j), (i, j + 1)]);
            skin([(i, j + 1), (i + 1, j), (i + 1, j + 1)]);
        }
    }
    for j in 0..columns - 1 {
        faces.quad(inner[0][j], outer[0][j], outer[0][j + 1], inner[0][j + 1]);
    }
    faces.finish()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::geometry::Outline;
    use crate::rules::trial::Trial;

    fn site(outline: &[[i32; 2]]) -> Site {
        let mut site = Trial::plain().case.site;
        let outline = Outline::new(outline.to_vec()).unwrap();
        site.defects = vec![Defect { wall: Wall::Facial, kind: DefectKind::Fenestration, outline }];
        site
    }

    /// Over a convex window in a flat wall: area + half the perimeter's band + the corners' cones.
    #[test]
    fn over_a_window_the_layer_has_the_volume_of_a_plateau_with_an_even_fall() {
        let mesh = contour(&site(&[[-20, 40], [20, 40], [20, 70], [-20, 70]]), 1.5).unwrap();
        let exact = 1.5 * (12.0 + 14.0 * FALL / 2.0 + core::f64::consts::PI * FALL * FALL / 3.0);
        assert_eq!(mesh.closed(), Ok(()));
        assert!((mesh.volume() / exact - 1.0).abs() < 1e-3, "{} {exact}", mesh.volume());
    }

    #[test]
    fn the_layer_ends_flat_at_the_crest() {
        let mesh = contour(&site(&[[-20, -10], [20, -10], [20, 30], [-20, 30]]), 1.0).unwrap();
        // 3 mm of the plateau lie apical of the crest, with a fall on three sides.
        let exact = 12.0 + (4.0 + 6.0) * FALL / 2.0 + core::f64::consts::PI * FALL * FALL / 6.0;
        assert_eq!(mesh.closed(), Ok(()));
        assert!((mesh.volume() / exact - 1.0).abs() < 1e-3, "{} {exact}", mesh.volume());
    }

    #[test]
    fn on_an_intact_wall_the_layer_lies_over_half_the_root() {
        let site = Trial::plain().case.site;
        let mesh = contour(&site, 1.0).unwrap();
        let low = mesh.corners.iter().map(|corner| corner.z).fold(0.0, f64::max);
        assert_eq!(mesh.closed(), Ok(()));
        assert!(low > 5.5 && low < 5.5 + FALL, "{low}");
        assert!(contour(&site, 0.0).is_none());
    }
}
