//! Reading a section: window and caliper.

use super::section::Section;
use crate::geometry::P2;
use crate::units::Mm;

/// The grey on a screen, 0 to 255, of a scanner's grey under a window: below it black, above it white.
#[must_use]
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 255
pub fn window(grey: f64, centre: f64, width: f64) -> u8 {
    let share = (grey - centre) / width.max(1.0) + 0.5;
    libm::round(255.0 * share.clamp(0.0, 1.0)) as u8
}

/// What a caliper says that is set across something bright.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Caliper {
    /// From tip to tip.
    pub straight: Mm,
    /// Between the half-heights on either side of the brightest place between the tips: how thick
    /// something looks. `None` where nothing stands out on both sides.
    pub apparent: Option<Mm>,
}

/// Samples for a pixel.
const SAMPLES: f64 = 4.0;

impl Section {
    /// The whole section on a screen, row by row, under a window.
    #[must_use]
    pub fn windowed(&self, centre: f64, width: f64) -> Vec<u8> {
        self.grey.iter().map(|grey| window(*grey, centre, width)).collect()
    }

    /// Sets a caliper from one place to another, mm to the right and down of the picture's corner. The
    /// profile is the mean of five lines half a pixel apart.
    #[must_use]
    pub fn caliper(&self, from: P2, to: P2) -> Caliper {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let length = libm::hypot(dx, dy);
        let straight = Mm::checked(length).unwrap_or(Mm::ZERO);
        let steps = libm::ceil(SAMPLES * length / self.voxel).clamp(1.0, 20_000.0);
        if length.is_nan() || length <= 0.0 || steps < 4.0 {
            return Caliper { straight, apparent: None };
        }
        let aside = [-dy / length, dx / length].map(|part| 0.5 * part);
        let count = (0..).take_while(|step| f64::from(*step) <= steps);
        let profile: Vec<f64> = count
            .map(|step| {
                let way = f64::from(step) / steps;
                let place = [from.x + way * dx, from.y + way * dy].map(|mm| mm / self.voxel - 0.5);
                let beside = |turn: i32| {
                    let off = f64::from(turn);
                    self.grey_at([place[0] + off * aside[0], place[1] + off * aside[1]])
                };
                (-2..=2).map(beside).sum::<f64>() / 5.0
            })
            .collect();
        let apparent = half_maximum(&profile).map(|samples| samples * length / steps);
        Caliper { straight, apparent: apparent.and_then(|width| Mm::checked(width).ok()) }
    }
}

/// The width of the highest rise of a profile between its half-heights, in samples; each half-height
/// lies half way down to the lowest value on its own side. `None` where a side does not fall.
#[must_use]
pub fn half_maximum(profile: &[f64]) -> Option<f64> {
    let peak = (0..profile.len()).max_by(|a, b| profile[*a].total_cmp(&profile[*b]))?;
    let top = profile[peak];
    let down = |values: &mut dyn Iterator<Item = f64>| {
        let values: Vec<f64> = values.collect();
        let base = values.iter().copied().fold(f64::MAX, f64::min);
        let half = f64::midpoint(top, base);
        let below = values.iter().position(|value| *value < half)?;
        let (before, after) = (if below == 0 { top } else { values[below - 1] }, values[below]);
        Some(below as f64 + (before - half) / (before - after))
    };
    let right = down(&mut profile[peak + 1..].iter().copied())?;
    let left = down(&mut profile[..peak].iter().rev().copied())?;
    Some(left + right)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_window_runs_from_black_to_white_about_its_centre() {
        assert_eq!([-600.0, 400.0, 1400.0].map(|grey| window(grey, 400.0, 1000.0)), [0, 128, 255]);
        assert_eq!(window(650.0, 400.0, 1000.0), 191);
        assert_eq!(window(500.0, 400.0, 0.0), 255);
    }

    #[test]
    fn a_triangle_is_half_as_wide_at_half_its_height() {
        let triangle: Vec<f64> = (0..=40).map(|i| 20.0 - f64::from(i - 20_i32).abs()).collect();
        assert!((half_maximum(&triangle).unwrap() - 20.0).abs() < 1e-9);
    }

    #[test]
    fn each_side_has_its_own_half_height() {
        // A plateau of 10 from 4 to 8, on 0 to the left and on 6 to the right, sides one sample wide.
        let profile = [0.0, 0.0, 0.0, 0.0, 10.0, 10.0, 10.0, 10.0, 10.0, 6.0, 6.0, 6.0];
        assert!((half_maximum(&profile).unwrap() - 5.0).abs() < 1e-9);
    }

    #[test]
    fn what_does_not_fall_on_both_sides_has_no_width() {
        assert_eq!(half_maximum(&[1.0, 2.0, 3.0]), None);
        assert_eq!(half_maximum(&[5.0; 8]), None);
        assert_eq!(half_maximum(&[]), None);
    }
}
