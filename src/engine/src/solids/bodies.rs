//! Round bodies: stacks of elliptic frusta, capped or flat, and tubes.
//!
//! A section becomes a polygon with as much area as the ellipse: its corners lie a hair outside, its
//! edges a hair inside. Along the axis frusta are straight, so only the chords round it and the cap's
//! meridians depart from the body, by less than [`CHORD_ERROR`] either way.

use super::mesh::{Mesh, Welder};
use crate::geometry::{Capsule, Cone, Frame, P3, Stack, V3};
use core::f64::consts::PI;

/// The farthest that a mesh of a round body departs from the body, in millimetres.
pub const CHORD_ERROR: f64 = 0.005;

/// The widest half-width for which `AROUND` keeps the promise of [`CHORD_ERROR`]; of a polygon with
/// n corners and a circle's area, corners and edges lie r (pi / n)^2 / 3 and half as much off it.
pub const WIDEST: f64 = 9.0;

/// Corners of a section.
pub const AROUND: usize = 128;

/// Factor on the half-widths that gives a polygon of `AROUND` corners the area of its ellipse.
fn spread() -> f64 {
    let turn = 2.0 * PI / AROUND as f64;
    libm::sqrt(turn / libm::sin(turn))
}

/// Rings of a cap between its base and its tip.
const CAP_RINGS: usize = 24;

/// A section of a body: where along the axis, and its half-widths.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ring {
    pub(super) along: f64,
    pub(super) across: f64,
    pub(super) facial: f64,
}

impl Ring {
    /// A circle.
    pub(super) const fn circle(along: f64, radius: f64) -> Self {
        Self { along, across: radius, facial: radius }
    }
}

/// The body through these rings, in rising order along the axis. It begins flat; it ends flat, or
/// in a half ellipsoid that reaches `cap` beyond the last ring.
pub(super) fn stack(frame: &Frame, rings: &[Ring], cap: Option<f64>) -> Mesh {
    let mut all = rings.to_vec();
    let (Some(first), Some(last)) = (rings.first().copied(), rings.last().copied()) else {
        return Mesh::default();
    };
    if let Some(height) = cap {
        all.extend((1..CAP_RINGS).map(|ring| {
            #[allow(clippy::cast_precision_loss)] // a small count
            let angle = PI / 2.0 * (ring as f64 / CAP_RINGS as f64);
            let shrink = libm::cos(angle);
            Ring {
                along: last.along + height * libm::sin(angle),
                across: last.across * shrink,
                facial: last.facial * shrink,
            }
        }));
    }
    let mut faces = Welder::default();
    let loops: Vec<Vec<u32>> = all
        .iter()
        .map(|ring| around(frame, ring).into_iter().map(|at| faces.corner(at)).collect())
        .collect();
    for pair in loops.windows(2) {
        for i in 0..AROUND {
            let j = (i + 1) % AROUND;
            faces.places([pair[0][i], pair[0][j], pair[1][j]]);
            faces.places([pair[0][i], pair[1][j], pair[1][i]]);
        }
    }
    let near = faces.corner(frame.point(V3::new(0.0, 0.0, first.along)));
    let far = faces.corner(frame.point(V3::new(0.0, 0.0, last.along + cap.unwrap_or(0.0))));
    let (open, shut) = (&loops[0], &loops[loops.len() - 1]);
    for i in 0..AROUND {
        let j = (i + 1) % AROUND;
        faces.places([near, open[j], open[i]]);
        faces.places([far, shut[i], shut[j]]);
    }
    faces.finish()
}

fn around(frame: &Frame, ring: &Ring) -> Vec<P3> {
    let spread = spread();
    (0..AROUND)
        .map(|i| {
            #[allow(clippy::cast_precision_loss)] // a small count
            let angle = 2.0 * PI * (i as f64 / AROUND as f64);
            frame.point(V3::new(
                spread * ring.across * libm::cos(angle),
                spread * ring.facial * libm::sin(angle),
                ring.along,
            ))
        })
        .collect()
}

/// A root or whatever else is a stack, from its first knot to its apex.
#[must_use]
pub fn of_stack(body: &Stack) -> Mesh {
    let ring = |at: f64, share: f64| Ring {
        along: at,
        across: body.across * share,
        facial: body.facial * share,
    };
    let rings: Vec<Ring> = body.knots().iter().map(|knot| ring(knot.at, knot.share)).collect();
    let base = body.knots().last().map_or(0.0, |knot| knot.at);
    stack(&body.frame, &rings, Some(body.last_level() - base))
}

/// An implant's outer cone; with a `point`, the tip of its drill so far beyond its far end.
#[must_use]
pub fn of_cone(body: &Cone, point: Option<f64>) -> Mesh {
    let mut rings = vec![Ring::circle(0.0, body.near), Ring::circle(body.length, body.far)];
    rings.extend(point.map(|beyond| Ring::circle(body.length + beyond, 0.0)));
    stack(&body.frame, &rings, None)
}

/// A tube with round ends, or a ball.
#[must_use]
pub fn of_capsule(body: &Capsule) -> Mesh {
    let ([from, to], radius) = (body.ends, body.radius);
    let length = (to - from).length();
    let mut rings: Vec<Ring> = (0..=CAP_RINGS)
        .map(|ring| {
            #[allow(clippy::cast_precision_loss)] // a small count
            let angle = PI / 2.0 * (ring as f64 / CAP_RINGS as f64);
            // The first ring is the pole itself.
            Ring::circle(-radius * libm::cos(angle), radius * libm::sin(angle))
        })
        .collect();
    if length > 1e-6 {
        rings.push(Ring::circle(length, radius));
    }
    stack(&Frame::between(from, to), &rings, Some(radius))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn upright() -> Frame {
        Frame::on_axis(P3::new(1.0, 2.0, 3.0), V3::APICAL)
    }

    #[test]
    fn chords_stay_within_what_is_promised_on_the_widest_body() {
        let (corners, edges) =
            (WIDEST * (spread() - 1.0), WIDEST * spread() * libm::cos(PI / AROUND as f64) - WIDEST);
        assert!(corners <= CHORD_ERROR && -edges <= CHORD_ERROR, "{corners} {edges}");
        let meridian = 3.0 * (1.0 - libm::cos(PI / 4.0 / CAP_RINGS as f64));
        assert!(meridian <= CHORD_ERROR, "{meridian}");
    }

    #[test]
    fn an_elliptic_frustum_is_closed_and_has_its_closed_volume() {
        let rings = [
            Ring { along: 0.0, across: 3.0, facial: 2.0 },
            Ring { along: 6.0, across: 1.5, facial: 1.0 },
        ];
        let mesh = stack(&upright(), &rings, None);
        let exact = PI * 6.0 / 3.0 * (6.0 + 3.0 + 1.5);
        assert_eq!(mesh.closed(), Ok(()));
        assert!((mesh.volume() / exact - 1.0).abs() < 1e-12, "{}", mesh.volume() / exact);
    }

    #[test]
    fn a_cap_adds_half_an_ellipsoid() {
        let rings = [Ring::circle(0.0, 2.0), Ring::circle(1.0, 2.0)];
        let mesh = stack(&upright(), &rings, Some(3.0));
        let exact = PI * 4.0 + 2.0 / 3.0 * PI * 4.0 * 3.0;
        assert_eq!(mesh.closed(), Ok(()));
        assert!((mesh.volume() / exact - 1.0).abs() < 2e-3);
    }

    #[test]
    fn a_tube_is_a_cylinder_and_a_ball_in_any_direction() {
        for to in [P3::new(4.0, 1.0, -2.0), P3::new(0.0, 0.0, 5.0), P3::new(0.0, 0.0, 0.0)] {
            let mesh = of_capsule(&Capsule { ends: [P3::new(0.0, 0.0, 0.0), to], radius: 1.2 });
            let length = (to - P3::new(0.0, 0.0, 0.0)).length();
            let exact = PI * 1.44 * length + 4.0 / 3.0 * PI * 1.2 * 1.44;
            assert_eq!(mesh.closed(), Ok(()));
            assert!((mesh.volume() / exact - 1.0).abs() < 3e-3, "{to:?}");
        }
    }
}
