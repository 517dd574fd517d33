//! A convex body between two ends of an axis: elliptic cones about it, cut by planes. Crowns.

use super::bounds::{greater, lesser};
use crate::geometry::quadratic::at_most_nothing;
use crate::geometry::{Frame, P3, Ray, V3};

/// The section of an elliptic cone at level z of the body's own frame has the half-widths
/// `across * (1 + rate * z)` and `facial * (1 + rate * z)`; the rate keeps it above nothing between
/// the body's ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flare {
    /// Half-width along local x at level 0, mm.
    pub across: f64,
    /// Half-width along local y at level 0, mm.
    pub facial: f64,
    /// Change of the share for a millimetre of level.
    pub rate: f64,
}

/// What of the body lies where `normal . local <= at`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Facet {
    /// In local coordinates, of any length.
    pub normal: V3,
    /// Where the plane lies along it.
    pub at: f64,
}

/// The body. See the module.
#[derive(Debug, Clone, PartialEq)]
pub struct Hewn {
    /// Its own frame.
    pub frame: Frame,
    /// Between which levels of local z it lies.
    pub ends: [f64; 2],
    /// It lies within each of these.
    pub flares: Vec<Flare>,
    /// And on the near side of each of these.
    pub facets: Vec<Facet>,
}

impl Hewn {
    /// Whether the point lies in the body or on its surface.
    #[must_use]
    pub fn contains(&self, point: P3) -> bool {
        let local = self.frame.local(point);
        let [low, high] = self.ends;
        low <= local.z
            && local.z <= high
            && self.flares.iter().all(|flare| {
                let (x, y) = (local.x / flare.across, local.y / flare.facial);
                let share = 1.0 + flare.rate * local.z;
                x * x + y * y <= share * share
            })
            && self.facets.iter().all(|facet| facet.normal.dot(local) <= facet.at)
    }

    /// Where the line of the ray lies in the body: it is convex, so one stretch or none.
    #[must_use]
    pub fn ray(&self, ray: &Ray) -> Option<(f64, f64)> {
        const FAR: f64 = 1e6;
        let from = self.frame.local(ray.origin);
        let step = self.frame.turned(ray.direction);
        let [low, high] = self.ends;
        let mut met = half((-FAR, FAR), from.z - high, step.z)?;
        met = half(met, low - from.z, -step.z)?;
        for facet in &self.facets {
            met = half(met, facet.normal.dot(from) - facet.at, facet.normal.dot(step))?;
        }
        for flare in &self.flares {
            let (x, y) = (from.x / flare.across, from.y / flare.facial);
            let (dx, dy) = (step.x / flare.across, step.y / flare.facial);
            let (share, rise) = (1.0 + flare.rate * from.z, flare.rate * step.z);
            let a = dx * dx + dy * dy - rise * rise;
            let b = x * dx + y * dy - share * rise;
            let c = x * x + y * y - share * share;
            met = at_most_nothing(a, b, c, met.0, met.1)?;
        }
        Some(met)
    }

    /// The corners of a box along its axes that holds it.
    #[must_use]
    pub fn corners(&self) -> Vec<P3> {
        let [low, high] = self.ends;
        let share = |flare: &Flare| (1.0 + flare.rate * low).max(1.0 + flare.rate * high);
        let least = |half: fn(&Flare) -> f64| {
            self.flares.iter().map(|flare| share(flare) * half(flare)).fold(f64::MAX, f64::min)
        };
        let (across, facial) = (least(|flare| flare.across), least(|flare| flare.facial));
        let mut corners = Vec::with_capacity(8);
        for level in self.ends {
            for (x, y) in [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)] {
                corners.push(self.frame.point(V3::new(x * across, y * facial, level)));
            }
        }
        corners
    }
}

/// What of a stretch lies where `start + rate t <= 0`.
fn half((from, to): (f64, f64), start: f64, rate: f64) -> Option<(f64, f64)> {
    let (from, to) = if rate > 0.0 {
        (from, lesser(to, -start / rate))
    } else if rate < 0.0 {
        (greater(from, -start / rate), to)
    } else if start <= 0.0 {
        (from, to)
    } else {
        return None;
    };
    (from < to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Deg;

    fn body() -> Hewn {
        Hewn {
            frame: Frame::leaning(P3::new(1.0, -0.5, -2.0), Deg::new(8.0), Deg::new(-5.0)),
            ends: [-10.0, 0.0],
            flares: vec![
                Flare { across: 3.5, facial: 3.0, rate: -0.03 },
                Flare { across: 5.4, facial: 4.6, rate: 0.03 },
            ],
            facets: vec![
                Facet { normal: V3::new(0.0, 1.0, -0.2), at: 3.0 },
                Facet { normal: V3::new(0.0, -1.0, -0.25), at: 3.1 },
            ],
        }
    }

    #[test]
    fn the_ends_of_a_ray_lie_on_the_surface() {
        let body = body();
        let mut met = 0;
        for i in 0..1500 {
            let turn = f64::from(i);
            let origin = P3::new(4.0 * libm::sin(turn), 3.0, -13.0 + 0.009 * turn);
            let direction = V3::new(libm::cos(turn), libm::sin(1.3 * turn), libm::sin(2.1 * turn));
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin, direction };
            if let Some((from, to)) = body.ray(&ray).filter(|(from, to)| to - from > 1e-3) {
                met += 1;
                assert!(body.contains(ray.at(f64::midpoint(from, to))));
                assert!(!body.contains(ray.at(from - 1e-6)));
                assert!(!body.contains(ray.at(to + 1e-6)));
            }
        }
        assert!(met > 300, "{met}");
    }

    #[test]
    fn nothing_of_the_body_lies_outside_its_corners() {
        let body = body();
        let corners: Vec<V3> = body.corners().iter().map(|at| body.frame.local(*at)).collect();
        let most = |part: fn(&V3) -> f64| corners.iter().map(part).fold(f64::MIN, f64::max);
        let [x, y] = [most(|at| at.x), most(|at| at.y)];
        for i in 0..4000 {
            let turn = f64::from(i);
            let local = V3::new(
                6.0 * libm::sin(turn),
                6.0 * libm::sin(1.7 * turn),
                -5.0 + 5.0 * libm::sin(0.3 * turn),
            );
            if body.contains(body.frame.point(local)) {
                assert!(local.x.abs() <= x + 1e-9 && local.y.abs() <= y + 1e-9, "{local:?}");
            }
        }
    }
}
