//! A cone-beam section: attenuation sampled on a plane, blurred as a scanner blurs in all three
//! directions, on the Hounsfield scale, then as the scanner's own grey with its noise.
//!
//! Grey values are not Hounsfield units: `grey = a + b HU + slow shading`, a and b differing from
//! scanner to scanner (b 0.8 to 1.2, ours inside confirmed shifts). Streaks beside titanium are left
//! out; numbers above [`CLIP`] are cut off.

use super::materials::{Beam, Coefficients, Material};
use super::noise::Noise;
use super::path::Path;
use super::scene::Scene;
use crate::anatomy::{Jaw, Site};
use crate::geometry::{P3, Ray, V3};
use crate::units::Mm;

/// Where Hounsfield numbers are cut off.
pub const CLIP: f64 = 3071.0;
/// Standard deviation of the noise at a voxel of 0.2 mm, grey levels, and the power of the voxel's
/// size with which it falls (30 to 100 and 1.0 to 1.5, from memory).
const NOISE: (f64, f64, f64) = (60.0, 0.2, 1.25);
/// Spacing of the grid on which attenuation is summed before it is blurred, mm, or nearly: a whole
/// number of cells makes a voxel, and a cell's middle lies in the middle of each voxel.
const FINE: f64 = 0.1;
/// Planes beside the section that the blur gathers, and their distance in spreads of it.
const PLANES: i32 = 3;
const APART: f64 = 0.8;
/// Spreads of the blur after which nothing is left of it.
const REACH: f64 = 3.2;

/// How a section lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slice {
    /// Along the arch: x and z, at a y.
    AlongArch,
    /// Across the arch: y and z, at an x.
    AcrossArch,
    /// Across the axis of the tooth: x and y, at a z.
    AcrossAxis,
}

/// What is set at the scanner and at the screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting {
    /// How the section lies.
    pub slice: Slice,
    /// Where: y, x or z of its plane.
    pub at: Mm,
    /// Size of a voxel (0.075 to 0.4 in use, confirmed).
    pub voxel: Mm,
    /// Spread of the Gaussian blur (0.148 to 0.213 in five scanners, computed from their confirmed
    /// resolution).
    pub blur: Mm,
}

impl Setting {
    /// Through the middle of the tooth, at a voxel of 0.2 mm and a middling blur.
    #[must_use]
    pub const fn usual(slice: Slice) -> Self {
        let at = Mm::ZERO;
        Self { slice, at, voxel: Mm::new(0.2), blur: Mm::new(0.18) }
    }
}

/// A section.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Columns and rows.
    pub pixels: [u32; 2],
    /// From one pixel to the next, mm.
    pub voxel: f64,
    /// Hounsfield numbers, row by row, before any noise.
    pub hounsfield: Vec<f64>,
    /// Grey of the scanner, row by row.
    pub grey: Vec<f64>,
    pub(super) corner: P3,
    pub(super) right: V3,
    pub(super) down: V3,
}

impl Section {
    /// The point of the site in the middle of a pixel.
    #[must_use]
    pub fn point(&self, column: f64, row: f64) -> P3 {
        self.corner
            + self.right * ((column + 0.5) * self.voxel)
            + self.down * ((row + 0.5) * self.voxel)
    }

    /// Column and row of a point's place on the section (whole numbers are middles of pixels).
    #[must_use]
    pub fn place(&self, point: P3) -> [f64; 2] {
        let off = point - self.corner;
        [self.right, self.down].map(|step| off.dot(step) / self.voxel - 0.5)
    }

    /// Grey at a place between pixels, straight between their middles; the edge goes on outside.
    #[must_use]
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to the picture
    pub fn grey_at(&self, [column, row]: [f64; 2]) -> f64 {
        let [columns, rows] = self.pixels.map(f64::from);
        let (u, v) = (column.clamp(0.0, columns - 1.0), row.clamp(0.0, rows - 1.0));
        let (i, j) = (u.min(columns - 2.0).max(0.0) as usize, v.min(rows - 2.0).max(0.0) as usize);
        let (p, q) = (u - i as f64, v - j as f64);
        let wide = self.pixels[0] as usize;
        let at = |i: usize, j: usize| self.grey.get(j * wide + i).copied().unwrap_or(0.0);
        (at(i, j) * (1.0 - p) + at(i + 1, j) * p) * (1.0 - q)
            + (at(i, j + 1) * (1.0 - p) + at(i + 1, j + 1) * p) * q
    }
}

/// Takes a section. `scanner` seeds what belongs to the machine, `noise` what belongs to the exposure.
#[must_use]
pub fn section(
    scene: &Scene,
    site: &Site,
    setting: &Setting,
    scanner: &mut Noise,
    noise: &mut Noise,
) -> Section {
    let voxel = setting.voxel.get().clamp(0.075, 0.5);
    let blur = setting.blur.get().clamp(0.1, 0.4);
    let frame = Sheet::of(site, setting);
    let coefficients = scene.coefficients(Beam::ConeBeam);
    let fine = Fine::gathered(scene, &coefficients, &frame, (voxel, blur));
    let pixels = frame.size.map(|length| at_least_one(length / voxel));
    let [columns, rows] = pixels;
    let mut hounsfield = Vec::with_capacity((columns * rows) as usize);
    for row in 0..rows {
        for column in 0..columns {
            let value = fine.at([column, row].map(|place| place as usize));
            hounsfield.push(coefficients.hounsfield(value).min(CLIP));
        }
    }
    let grey = greyed(&hounsfield, pixels, voxel, scanner, noise);
    let Sheet { corner, right, down, .. } = frame;
    Section { pixels, voxel, hounsfield, grey, corner, right, down }
}

fn greyed(
    hounsfield: &[f64],
    [columns, _]: [u32; 2],
    voxel: f64,
    scanner: &mut Noise,
    noise: &mut Noise,
) -> Vec<f64> {
    let (offset, slope) = (scanner.between(-50.0, 50.0), scanner.between(0.85, 1.15));
    // Shading changes by a few levels for a millimetre, and more to the edge of the field.
    let lean = [scanner.between(-3.0, 3.0), scanner.between(-3.0, 3.0)];
    let (most, at, power) = NOISE;
    let spread = most * libm::pow(at / voxel, power);
    let (mut column, mut row) = (0, 0_u32);
    hounsfield
        .iter()
        .map(|hu| {
            let [u, v] = [column, row].map(|place| f64::from(place) * voxel);
            column += 1;
            if column == columns {
                (column, row) = (0, row + 1);
            }
            offset + slope * hu + lean[0] * u + lean[1] * v + spread * noise.normal()
        })
        .collect()
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a few hundred
fn at_least_one(value: f64) -> u32 {
    libm::round(value).clamp(1.0, 2000.0) as u32
}

/// Where a section lies in space: its corner, unit steps to the right and down, its size in mm, and
/// whether the lines on which it is summed run to the right.
struct Sheet {
    corner: P3,
    right: V3,
    down: V3,
    size: [f64; 2],
    lines_right: bool,
}

impl Sheet {
    /// Seen as films are: upper roots up, the patient's right on the left, facial on the right or on
    /// top.
    fn of(site: &Site, setting: &Setting) -> Self {
        let upper = site.tooth.jaw() == Jaw::Maxilla;
        let down = if upper { -V3::APICAL } else { V3::APICAL };
        let distal_right = site.tooth.is_mirrored() == upper;
        let across = if distal_right { V3::DISTAL } else { -V3::DISTAL };
        let at = setting.at.get().clamp(-40.0, 60.0);
        let middle = site.socket.as_one().y.get() - 2.0;
        let (right, down, centre, size, lines_right) = match setting.slice {
            Slice::AlongArch => (across, down, P3::new(0.0, at, 6.0), [32.0, 40.0], false),
            Slice::AcrossArch => (V3::FACIAL, down, P3::new(at, middle, 6.0), [30.0, 40.0], true),
            Slice::AcrossAxis => {
                (across, -V3::FACIAL, P3::new(0.0, middle, at), [32.0, 30.0], false)
            }
        };
        let corner = centre + right * (-0.5 * size[0]) + down * (-0.5 * size[1]);
        Self { corner, right, down, size, lines_right }
    }
}

/// Attenuation on a fine grid, blurred. Lines of it run one way; cells count from a margin that the
/// blur needs.
struct Fine {
    cells: Vec<f64>,
    /// Cells on a line, and lines.
    count: [usize; 2],
    /// Cells in a voxel, and from the margin's edge to the middle of the first voxel.
    voxel: usize,
    first: usize,
    spacing: f64,
    lines_right: bool,
}

impl Fine {
    fn gathered(
        scene: &Scene,
        coefficients: &Coefficients,
        frame: &Sheet,
        (voxel, blur): (f64, f64),
    ) -> Self {
        let (along, beside, lengths) = if frame.lines_right {
            (frame.right, frame.down, frame.size)
        } else {
            (frame.down, frame.right, [frame.size[1], frame.size[0]])
        };
        let mut fine = Self::empty(lengths, (voxel, blur), frame.lines_right);
        let spacing = fine.spacing;
        // An even number of cells in a voxel has none in its middle: the grid moves by half of one.
        let half = if fine.voxel.is_multiple_of(2) { 0.5 } else { 0.0 };
        let margin = spacing * ((fine.first - fine.voxel / 2) as f64 + half);
        let corner = frame.corner + (along + beside) * -margin;
        let through = frame.right.cross(frame.down);
        let weights: Vec<f64> =
            (-PLANES..=PLANES).map(|k| libm::exp(-0.5 * square(f64::from(k) * APART))).collect();
        let sum: f64 = weights.iter().sum();
        let mut path = Path::default();
        let length = fine.count[0];
        for (k, weight) in (-PLANES..=PLANES).zip(weights) {
            let plane = corner + through * (f64::from(k) * APART * blur);
            for (line, cells) in fine.cells.chunks_exact_mut(length).enumerate() {
                let origin = plane + beside * ((line as f64 + 0.5) * spacing);
                let ray = Ray { origin, direction: along };
                scene.trace(&ray, 0.0, spacing * length as f64, &mut path);
                laid(scene, coefficients, (&ray, &path), (weight / sum, spacing), cells);
            }
        }
        fine.blurred(blur)
    }

    fn empty(lengths: [f64; 2], (voxel, blur): (f64, f64), lines_right: bool) -> Self {
        let cells = libm::round(voxel / FINE).max(1.0);
        let spacing = voxel / cells;
        let margin = libm::ceil(REACH * blur / spacing) + 1.0;
        let [margin, voxel] = [margin, cells].map(|value| at_least_one(value) as usize);
        let count = lengths.map(|length| at_least_one(length / spacing) as usize + 2 * margin + 1);
        let first = margin + voxel / 2;
        Self { cells: vec![0.0; count[0] * count[1]], count, voxel, first, spacing, lines_right }
    }

    /// Blurred along its lines and across them. Cells are means along a line, which is a blur of its
    /// own (a twelfth of the squared spacing); across the lines they are not.
    fn blurred(mut self, blur: f64) -> Self {
        let own = self.spacing * self.spacing / 12.0;
        let along = kernel(libm::sqrt(blur * blur - own), self.spacing);
        let across = kernel(blur, self.spacing);
        let [length, lines] = self.count;
        let half = along.len() / 2;
        let mut line = vec![0.0; length];
        for cells in self.cells.chunks_exact_mut(length) {
            line.copy_from_slice(cells);
            for place in half..length - half {
                let taps = &line[place - half..=place + half];
                cells[place] = taps.iter().zip(&along).map(|(a, b)| a * b).sum();
            }
        }
        let half = across.len() / 2;
        let mut cells = vec![0.0; self.cells.len()];
        for line in half..lines - half {
            let to = &mut cells[line * length..(line + 1) * length];
            for (tap, weight) in across.iter().enumerate() {
                let from = (line + tap - half) * length;
                let from = &self.cells[from..from + length];
                to.iter_mut().zip(from).for_each(|(to, from)| *to += weight * from);
            }
        }
        self.cells = cells;
        self
    }

    /// In the middle of a voxel, by its column and row.
    fn at(&self, [column, row]: [usize; 2]) -> f64 {
        let [i, j] = if self.lines_right { [column, row] } else { [row, column] };
        let [i, j] = [i, j].map(|place| self.first + place * self.voxel);
        self.cells.get(j * self.count[0] + i).copied().unwrap_or(0.0)
    }
}

const fn square(value: f64) -> f64 {
    value * value
}

/// A Gaussian over a grid, that sums to 1.
fn kernel(spread: f64, spacing: f64) -> Vec<f64> {
    let taps = i32::try_from(at_least_one(REACH * spread / spacing)).unwrap_or(1);
    let weights: Vec<f64> = (-taps..=taps)
        .map(|tap| libm::exp(-0.5 * square(f64::from(tap) * spacing / spread)))
        .collect();
    let sum: f64 = weights.iter().sum();
    weights.iter().map(|weight| weight / sum).collect()
}

/// Adds what lies along one line to its cells, each cell the mean over its length.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to the line
fn laid(
    scene: &Scene,
    coefficients: &Coefficients,
    (ray, path): (&Ray, &Path),
    (weight, spacing): (f64, f64),
    cells: &mut [f64],
) {
    let marrow = scene.marrow();
    for (from, to, material) in path.iter() {
        let value = weight * coefficients.of(material);
        let (first, last) = ((from / spacing).max(0.0), (to / spacing).min(cells.len() as f64));
        let (start, end) = (first as usize, libm::ceil(last) as usize);
        let Some(lain) = cells.get_mut(start..end) else { continue };
        if material == Material::Spongiosa {
            for (cell, place) in lain.iter_mut().zip(start..) {
                let at = ray.at((place as f64 + 0.5) * spacing);
                *cell += value * (1.0 + marrow.at(at));
            }
        } else {
            lain.iter_mut().for_each(|cell| *cell += value);
        }
        // The first and the last cell are only partly in the piece.
        let more = |place: usize| {
            let at = ray.at((place as f64 + 0.5) * spacing);
            if material == Material::Spongiosa { value * (1.0 + marrow.at(at)) } else { value }
        };
        if let Some(cell) = lain.first_mut() {
            *cell -= more(start) * (first - start as f64);
        }
        if let Some(cell) = lain.last_mut() {
            *cell -= more(end - 1) * (end as f64 - last);
        }
    }
}
