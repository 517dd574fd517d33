//! The shapes that a scene is laid of, each answering both for a ray and for a point.

use super::bounds::{greater, lesser};
use super::hewn::Hewn;
use super::sheet::Sheet;
use super::strip::Strip;
use super::turned::Turned;
use crate::anatomy::Wall;
use crate::geometry::convex::Convex;
use crate::geometry::{Capsule, P2, P3, Ray, Stack, V3, polygon};

/// One shape.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// What lies between two profiles and apical of a crest.
    Ridge(Strip),
    /// A root, or what follows its form.
    Root(Stack),
    /// The part of a root apical of a level z.
    Below(Stack, f64),
    /// The part of a root coronal of a level z.
    Above(Stack, f64),
    /// A crown.
    Crown(Hewn),
    /// A canal or a ball.
    Tube(Capsule),
    /// What a wall defect takes away.
    Window(Window),
    /// Graft outside the facial wall.
    Sheet(Sheet),
    /// An implant and what is screwed onto it.
    Turned(Turned),
}

/// Everything over a shadow in (x, z), outward of a plane parallel to x.
#[derive(Debug, Clone, PartialEq)]
pub struct Window {
    /// Which way is outward.
    pub wall: Wall,
    /// The shadow along y, as (x, z).
    pub shadow: Vec<P2>,
    /// y of the plane at z = 0, and its slope over z.
    pub plane: (f64, f64),
}

impl Window {
    /// Positive outward of the plane.
    fn outward(&self, point: P3) -> f64 {
        let side = if self.wall == Wall::Facial { 1.0 } else { -1.0 };
        side * (point.y - self.plane.0 - self.plane.1 * point.z)
    }

    fn each(&self, ray: &Ray, from: f64, to: f64, put: &mut impl FnMut(f64, f64)) {
        let (a, b) = (self.outward(ray.at(from)), self.outward(ray.at(to)));
        let crossing = from + (to - from) * a / (a - b);
        let (from, to) = match (a >= 0.0, b >= 0.0) {
            (true, true) => (from, to),
            (true, false) => (from, crossing),
            (false, true) => (crossing, to),
            (false, false) => return,
        };
        let origin = P2::new(ray.origin.x, ray.origin.z);
        let step = P2::new(ray.direction.x, ray.direction.z);
        for part in polygon::line_within(&self.shadow, origin, step).as_slice() {
            put(greater(part.from, from), lesser(part.to, to));
        }
    }
}

impl Shape {
    /// Calls `put(from, to)` with every stretch of the ray that lies in it; stretches may touch, be
    /// empty, and go on beyond the two parameters that are asked about.
    pub fn each(&self, ray: &Ray, from: f64, to: f64, mut put: impl FnMut(f64, f64)) {
        match self {
            Self::Ridge(strip) => strip.each(ray, from, to, &mut put),
            Self::Root(stack) => parts(stack, ray).into_iter().for_each(|(a, b)| put(a, b)),
            Self::Below(stack, level) => half(stack, ray, (*level, 1.0), &mut put),
            Self::Above(stack, level) => half(stack, ray, (*level, -1.0), &mut put),
            Self::Crown(crown) => {
                if let Some((a, b)) = crown.ray(ray) {
                    put(a, b);
                }
            }
            Self::Tube(tube) => {
                if let Some((a, b)) = tube.ray(ray) {
                    put(a, b);
                }
            }
            Self::Window(window) => window.each(ray, from, to, &mut put),
            Self::Sheet(sheet) => sheet.each(ray, from, to, &mut put),
            Self::Turned(body) => body.each(ray, &mut put),
        }
    }

    /// Whether a point lies in it (on its surface, either answer).
    #[must_use]
    pub fn contains(&self, point: P3) -> bool {
        match self {
            Self::Ridge(strip) => strip.contains(point),
            Self::Root(stack) => stack.contains(point),
            Self::Below(stack, level) => point.z >= *level && stack.contains(point),
            Self::Above(stack, level) => point.z <= *level && stack.contains(point),
            Self::Crown(crown) => crown.contains(point),
            Self::Tube(tube) => tube.contains(point),
            Self::Window(window) => {
                window.outward(point) >= 0.0
                    && polygon::contains(&window.shadow, P2::new(point.x, point.z))
            }
            Self::Sheet(sheet) => sheet.contains(point),
            Self::Turned(body) => body.contains(point),
        }
    }

    /// A box round it: least and greatest corner; what has no end reaches as far as the scene.
    #[must_use]
    pub fn bounds(&self, all: [P3; 2]) -> [P3; 2] {
        match self {
            Self::Ridge(strip) => {
                let [oral, facial, top] = strip.reach();
                [P3 { y: oral, z: top, ..all[0] }, P3 { y: facial, ..all[1] }]
            }
            Self::Root(stack) | Self::Below(stack, _) | Self::Above(stack, _) => of_stack(stack),
            Self::Crown(crown) => around(&crown.corners(), 0.0),
            Self::Tube(tube) => around(&tube.ends, tube.radius),
            Self::Window(window) => {
                let corners: Vec<P3> =
                    window.shadow.iter().map(|p| P3::new(p.x, 0.0, p.y)).collect();
                let [low, high] = around(&corners, 0.0);
                [P3 { y: all[0].y, ..low }, P3 { y: all[1].y, ..high }]
            }
            Self::Sheet(sheet) => sheet.bounds(),
            Self::Turned(body) => {
                let hull = body.hull();
                around(&[hull.frame.origin, hull.end()], hull.near)
            }
        }
    }
}

/// Where a ray lies in a root: in its frusta and in its cap.
#[inline]
fn parts(stack: &Stack, ray: &Ray) -> [(f64, f64); 2] {
    let from = stack.scaled(stack.frame.local(ray.origin));
    stack.parts(from, stack.scaled(stack.frame.turned(ray.direction)))
}

/// What of a root lies apical (side 1) or coronal (-1) of a level.
fn half(stack: &Stack, ray: &Ray, (level, side): (f64, f64), put: &mut impl FnMut(f64, f64)) {
    let (start, rate) = (side * (ray.origin.z - level), side * ray.direction.z);
    let crossing = -start / rate;
    for (from, to) in parts(stack, ray) {
        if rate > 0.0 {
            put(greater(from, crossing), to);
        } else if rate < 0.0 {
            put(from, lesser(to, crossing));
        } else if start >= 0.0 {
            put(from, to);
        }
    }
}

fn of_stack(stack: &Stack) -> [P3; 2] {
    let axes = [V3::DISTAL, V3::FACIAL, V3::APICAL];
    let ends = axes.into_iter().flat_map(|axis| [axis, -axis]);
    let ends = ends.flat_map(|end| [stack.frusta().support(end), stack.cap().support(end)]);
    around(&ends.collect::<Vec<_>>(), 0.0)
}

/// A box round points, grown by a reach.
fn around(points: &[P3], reach: f64) -> [P3; 2] {
    const FAR: f64 = 1e6;
    let (mut low, mut high) = (P3::new(FAR, FAR, FAR), P3::new(-FAR, -FAR, -FAR));
    for at in points {
        low = P3::new(low.x.min(at.x - reach), low.y.min(at.y - reach), low.z.min(at.z - reach));
        high =
            P3::new(high.x.max(at.x + reach), high.y.max(at.y + reach), high.z.max(at.z + reach));
    }
    [low, high]
}

/// Stretches gathered into a list, for tests.
#[cfg(test)]
pub(super) fn gathered(each: impl FnOnce(&mut dyn FnMut(f64, f64))) -> crate::geometry::Intervals {
    let mut parts = Vec::new();
    each(&mut |from, to| {
        if from < to {
            parts.push(crate::geometry::Interval { from, to });
        }
    });
    crate::geometry::Intervals::union_of(parts)
}
