//! Where tube and receptor stand, and what falls where on the receptor.

use crate::anatomy::{Jaw, Site};
use crate::geometry::{Frame, P3, Ray, V3};
use crate::units::{Deg, Mm};

/// Receptor sizes (22 x 35, 24 x 40, 31 x 41 mm: confirmed (secondary)).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Size {
    /// 22 x 35 mm.
    Zero,
    /// 24 x 40 mm.
    One,
    /// 31 x 41 mm.
    Two,
}

/// How the receptor is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// Its long side along the tooth.
    Upright,
    /// Its long side along the arch.
    Across,
}

/// From pixel to pixel on a usual receptor, mm: 400 along the longest side. Receptors in use have 0.015
/// to 0.064 (from memory) and resolve 7 line pairs in a millimetre at the least (confirmed), so a screen
/// shows less than they do.
pub const PITCH: f64 = 0.1025;
/// The finest and the coarsest, mm.
const PITCHES: [f64; 2] = [0.04, 0.5];

/// What the operator sets. Angles are seen from the tooth: all nought is the paralleling technique done
/// well.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Aim {
    /// Receptor.
    pub size: Size,
    /// How it is held.
    pub held: Held,
    /// From pixel to pixel, held to 0.04 to 0.5.
    pub pitch: Mm,
    /// The beam against a right angle to the tooth's long axis, positive when the tube stands further
    /// apical: too steep foreshortens, too flat elongates, once the receptor leans.
    pub vertical: Deg,
    /// The beam against a right angle to the arch, positive when the tube stands further distal: teeth
    /// overlap.
    pub horizontal: Deg,
    /// The receptor against the tooth's long axis, positive when its apical end lies further oral.
    pub lean: Deg,
    /// From the biting edge to the receptor (10 to 25 in a holder, from memory).
    pub object: Mm,
    /// From the focus to the receptor (300 to 400, from memory).
    pub source: Mm,
    /// By how much the receptor lies too far coronal; its apical end may then miss the apex.
    pub short: Mm,
}

impl Aim {
    /// The paralleling technique done well, on the largest receptor.
    #[must_use]
    pub fn usual(site: &Site) -> Self {
        Self {
            size: Size::Two,
            held: if site.tooth.is_anterior() { Held::Upright } else { Held::Across },
            pitch: Mm::new(PITCH),
            vertical: Deg::ZERO,
            horizontal: Deg::ZERO,
            lean: Deg::ZERO,
            object: Mm::new(15.0),
            source: Mm::new(350.0),
            short: Mm::ZERO,
        }
    }

    /// The same with every quantity held where a tube and a mouth allow it.
    fn within_reach(self) -> Self {
        let deg = |angle: Deg, most: f64| Deg::new(angle.get().clamp(-most, most));
        let mm = |length: Mm, least: f64, most: f64| Mm::new(length.get().clamp(least, most));
        let [finest, coarsest] = PITCHES;
        Self {
            pitch: mm(self.pitch, finest, coarsest),
            vertical: deg(self.vertical, 50.0),
            horizontal: deg(self.horizontal, 40.0),
            lean: deg(self.lean, 55.0),
            object: mm(self.object, 2.0, 30.0),
            source: mm(self.source, 200.0, 500.0),
            short: mm(self.short, -15.0, 15.0),
            ..self
        }
    }
}

/// A receptor in space: from the focus to each of its pixels. The picture is seen from the facial side
/// as the teeth stand in the mouth: upper roots up, the patient's right on the left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct View {
    /// Where the beam comes from.
    pub focus: P3,
    /// Columns and rows.
    pub pixels: [u32; 2],
    /// From one pixel to the next, mm.
    pub pitch: f64,
    corner: P3,
    right: V3,
    down: V3,
}

impl View {
    /// The view of a site's own tooth under an aim.
    #[must_use]
    pub fn of(site: &Site, aim: &Aim) -> Self {
        let aim = aim.within_reach();
        let stack = site.socket.as_one().stack();
        let Frame { across, facial, along, .. } = stack.frame;
        let leaning = |angle: Deg, a: V3, b: V3| {
            let (sin, cos) = libm::sincos(angle.radians());
            a * cos + b * sin
        };
        let to_source = leaning(aim.horizontal, leaning(aim.vertical, facial, along), across);
        let normal = leaning(aim.lean, facial, along);
        let apical = leaning(aim.lean, along, -facial);
        // The middle of the tooth falls on the middle of the receptor.
        let (edge, apex) = (site.crown.edge, stack.apex());
        let edge = stack.frame.point(V3::new(0.0, 0.0, stack.frame.local(edge).z));
        let middle = edge + (apex - edge) * 0.5;
        let plane = edge + facial * -aim.object.get();
        let away = (middle - plane).dot(normal) / to_source.dot(normal).max(0.1);
        let centre = middle + to_source * -away + apical * -aim.short.get();
        let (pixels, pitch) = raster(aim);
        let [right, down] = hung(site, across, apical).map(|step| step * pitch);
        let [columns, rows] = pixels.map(f64::from);
        Self {
            focus: centre + to_source * aim.source.get(),
            pixels,
            pitch,
            corner: centre + right * (0.5 - 0.5 * columns) + down * (0.5 - 0.5 * rows),
            right,
            down,
        }
    }

    /// The ray from the focus to the middle of a pixel, and its length, mm.
    #[must_use]
    pub fn ray(&self, column: f64, row: f64) -> (Ray, f64) {
        let pixel = self.corner + self.right * column + self.down * row;
        let way = pixel - self.focus;
        let length = way.length();
        (Ray { origin: self.focus, direction: way * (1.0 / length) }, length)
    }

    /// From one place of the picture to another (columns and rows), mm on the receptor: what a ruler laid
    /// on the film reads, larger than the thing itself by the ratio of distances and as foreshortened.
    #[must_use]
    pub fn straight(&self, from: [f64; 2], to: [f64; 2]) -> Mm {
        let length = self.pitch * libm::hypot(to[0] - from[0], to[1] - from[1]);
        Mm::checked(length).unwrap_or(Mm::ZERO)
    }

    /// Column and row on which a point of the site falls (whole numbers are middles of pixels); `None`
    /// for a point that does not lie before the receptor. It may fall beside the picture.
    #[must_use]
    pub fn place(&self, point: P3) -> Option<[f64; 2]> {
        let normal = self.right.cross(self.down).unit()?;
        let (reach, way) = ((self.corner - self.focus).dot(normal), point - self.focus);
        let depth = way.dot(normal) / reach;
        if depth <= 1e-6 || depth > 1.0 {
            return None;
        }
        let on = self.focus + way * (1.0 / depth) - self.corner;
        let along = |step: V3| on.dot(step) / step.dot(step);
        Some([along(self.right), along(self.down)])
    }
}

/// Columns, rows and pitch of a receptor: as many whole pixels as it holds.
fn raster(aim: Aim) -> ([u32; 2], f64) {
    let (long, short) = match aim.size {
        Size::Zero => (35.0, 22.0),
        Size::One => (40.0, 24.0),
        Size::Two => (41.0, 31.0),
    };
    let pitch = aim.pitch.get();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to 44 to 1025
    let [long, short] = [long, short].map(|side| libm::floor(side / pitch + 1e-9) as u32);
    match aim.held {
        Held::Upright => ([short, long], pitch),
        Held::Across => ([long, short], pitch),
    }
}

/// Unit steps to the right and down in the picture.
fn hung(site: &Site, across: V3, apical: V3) -> [V3; 2] {
    let upper = site.tooth.jaw() == Jaw::Maxilla;
    let down = if upper { -1.0 } else { 1.0 };
    let right = if site.tooth.is_mirrored() { -down } else { down };
    [across * right, apical * down]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Tooth;
    use crate::rules::trial::Trial;

    fn site() -> Site {
        Trial::plain().case.site
    }

    fn length(aim: &Aim) -> f64 {
        let (site, stack) = (site(), site().socket.as_one().stack());
        let view = View::of(&site, aim);
        let edge = stack.frame.point(V3::new(0.0, 0.0, -13.0));
        let [from, to] = [edge, stack.apex()].map(|at| view.place(at).unwrap());
        view.straight(from, to).get()
    }

    #[test]
    fn in_the_paralleling_technique_everything_grows_by_the_ratio_of_distances() {
        let aim = Aim::usual(&site());
        let grown = aim.source.get() / (aim.source.get() - aim.object.get());
        assert!((length(&aim) / 24.0 - grown).abs() < 1e-9, "{}", length(&aim) / 24.0);
    }

    #[test]
    fn a_leaning_receptor_shows_the_length_of_the_closed_form() {
        // From very far: L cos(v) / cos(v - r). At half the receptor's lean the tooth keeps its length;
        // steeper foreshortens, flatter elongates.
        let shown = |vertical: f64| {
            let (vertical, lean) = (Deg::new(vertical), Deg::new(40.0));
            let aim = Aim { vertical, lean, object: Mm::new(4.0), ..Aim::usual(&site()) };
            let parallel = 24.0 * libm::cos(vertical.radians())
                / libm::cos(vertical.radians() - lean.radians());
            let found = length(&aim);
            // The focus is near, so what lies farther from the receptor grows by up to a fifteenth.
            assert!((found / parallel - 1.0).abs() < 0.07, "{found} {parallel}");
            found
        };
        let [flat, right, steep] = [5.0, 20.0, 35.0].map(shown);
        assert!(flat > right + 2.0 && right > steep + 2.0, "{flat} {right} {steep}");
        assert!((right - 24.0).abs() < 1.6, "{right}");
    }

    #[test]
    fn a_receptor_holds_as_many_pixels_as_its_sides_have_room_for() {
        let usual = Aim::usual(&site());
        let pixels = |size, held, pitch: f64| {
            let aim = Aim { size, held, pitch: Mm::new(pitch), ..usual };
            let view = View::of(&site(), &aim);
            (view.pixels, view.pitch)
        };
        assert_eq!(View::of(&site(), &usual).pixels, [302, 400]);
        assert_eq!(pixels(Size::Zero, Held::Upright, 0.1), ([220, 350], 0.1));
        assert_eq!(pixels(Size::One, Held::Across, 0.2), ([200, 120], 0.2));
        assert_eq!(pixels(Size::Two, Held::Across, 0.05), ([820, 620], 0.05));
        assert_eq!(pixels(Size::Two, Held::Across, 0.001).1, 0.04);
        // The same rays, whatever the pitch: a point falls on the same place of the receptor.
        let on = |pitch: f64| {
            let view = View::of(&site(), &Aim { pitch: Mm::new(pitch), ..usual });
            let [column, row] = view.place(P3::new(2.0, 1.0, 5.0)).unwrap();
            [column + 0.5, row + 0.5].map(|place| place * pitch)
        };
        let ([x, y], [u, v]) = (on(0.1), on(0.2));
        assert!((x - u).abs() < 0.11 && (y - v).abs() < 0.11, "{x} {u} {y} {v}");
    }

    #[test]
    fn a_ray_goes_where_its_point_is_placed() {
        let aim = Aim { horizontal: Deg::new(12.0), lean: Deg::new(20.0), ..Aim::usual(&site()) };
        let view = View::of(&site(), &aim);
        for (column, row) in [(0.0, 0.0), (150.0, 20.5), (299.0, 399.0)] {
            let (ray, length) = view.ray(column, row);
            let placed = view.place(ray.at(0.95 * length)).unwrap();
            assert!((placed[0] - column).abs() < 1e-6 && (placed[1] - row).abs() < 1e-6);
        }
        assert_eq!(view.place(view.ray(3.0, 4.0).0.at(600.0)), None);
    }

    #[test]
    fn roots_hang_as_they_do_in_the_mouth_and_right_is_on_the_left() {
        for (iso, up, distal_left) in
            [(11, true, true), (21, true, false), (31, false, false), (41, false, true)]
        {
            let site = Site { tooth: Tooth::new(iso).unwrap(), ..site() };
            let view = View::of(&site, &Aim::usual(&site));
            let place = |x, z| view.place(P3::new(x, 0.0, z)).unwrap();
            let (crown, root) = (place(0.0, -8.0), place(0.0, 8.0));
            assert_eq!(root[1] < crown[1], up, "{iso}");
            assert_eq!(place(6.0, 0.0)[0] < place(-6.0, 0.0)[0], distal_left, "{iso}");
        }
    }

    #[test]
    fn angles_that_no_tube_reaches_are_held_back() {
        let aim = Aim { vertical: Deg::new(400.0), lean: Deg::new(-90.0), ..Aim::usual(&site()) };
        let view = View::of(&site(), &aim);
        let (ray, length) = view.ray(10.0, 10.0);
        assert!(length.is_finite() && length > 100.0 && ray.direction.y < 0.0);
    }
}
