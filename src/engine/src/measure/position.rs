//! Where the platform stands and how the implant leans.

use super::{Measurements, mm};
use crate::anatomy::{Beside, Bone, Wall};
use crate::geometry::{P3, Ray, V3, direction};
use crate::units::{Deg, Mm};

impl Measurements<'_> {
    /// How far the platform's facial edge lies oral of the line that joins the neighbours' most facial
    /// points (of a root at the level of the reference crest, of an implant at its platform), along y;
    /// negative when it stands out. `None`
    /// without an implant in place, or where a neighbour is missing. Millimetres.
    #[must_use]
    pub fn facial_line_clearance(&self) -> Option<Mm> {
        let cone = self.seated()?;
        let [mesial, distal] = &self.ground().solid.beside;
        let (a, b) = (facial_point(mesial)?, facial_point(distal)?);
        let platform = cone.frame.origin;
        let reach = cone.near * libm::sqrt((1.0 - square(cone.frame.along.y)).max(0.0));
        let run = b.x - a.x;
        if run <= 0.0 {
            return None;
        }
        let line = a.y + (b.y - a.y) * ((platform.x - a.x) / run);
        mm(line - (platform.y + reach))
    }

    /// Platform below the planned mid-facial margin, along z; positive apically. `None` without an
    /// implant in place. Millimetres.
    #[must_use]
    pub fn depth_from_margin(&self) -> Option<Mm> {
        mm(self.seated()?.frame.origin.z - self.case.site.crown.margin_z.get())
    }

    /// Platform below the mid-facial crest as it is now, a lost wall filled in from beside it, along
    /// z; positive apically. `None` without an implant in place. Millimetres.
    #[must_use]
    pub fn depth_from_crest(&self) -> Option<Mm> {
        let crest = self.ground().solid.crest(Bone::Now, Wall::Facial, 0.0);
        mm(self.seated()?.frame.origin.z - crest)
    }

    /// Angle between the implant's axis and the planned crown's. `None` without an implant in place.
    /// Degrees, 0 to 180.
    #[must_use]
    pub fn angle_to_crown(&self) -> Option<Deg> {
        let crown = &self.case.site.crown;
        let cone = self.seated()?;
        let wanted = direction(crown.tilt, crown.tip);
        let across = cone.frame.along.cross(wanted).length();
        let angle = libm::atan2(across, cone.frame.along.dot(wanted));
        Deg::checked(Deg::from_radians(angle).get()).ok()
    }
}

const fn square(value: f64) -> f64 {
    value * value
}

/// The most facial point of a neighbour at z = 0, in the sagittal plane through its axis.
fn facial_point(beside: &Beside) -> Option<P3> {
    let through = |origin: P3, along: V3| {
        let way = if along.z.abs() > 1e-9 { -origin.z / along.z } else { 0.0 };
        Ray { origin: origin + along * way, direction: V3::FACIAL }
    };
    match beside {
        Beside::Root(root) => {
            let ray = through(root.frame.origin, root.frame.along);
            root.ray(&ray).last().map(|part| ray.at(part.to))
        }
        Beside::Implant(cone) => Some(cone.frame.origin + cone.frame.facial * cone.near),
        Beside::Absent => None,
    }
}

#[cfg(test)]
mod tests {
    use crate::anatomy::Neighbour;
    use crate::measure::Measurements;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;
    use crate::units::{Deg, Mm};

    fn measured<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
        let plan = trial.plan();
        read(&Measurements::of(&trial.case, &plan))
    }

    #[test]
    fn depths_and_the_line_follow_the_platform_over_a_sweep() {
        let mut trial = Trial::plain();
        trial.number(Decision::Tilt, 0);
        for tenths in [-60, -20, 0, 5, 60] {
            trial.number(Decision::Depth, tenths).number(Decision::OffsetFacial, tenths);
            let z = f64::from(tenths) / 10.0;
            let margin = measured(&trial, |m| m.depth_from_margin()).unwrap();
            let crest = measured(&trial, |m| m.depth_from_crest()).unwrap();
            assert!((margin.get() - z - 3.0).abs() < 1e-9 && (crest.get() - z).abs() < 1e-9);
            // Neighbours' facial points lie at y = 3.0; the platform's radius is 2.0.
            let line = measured(&trial, |m| m.facial_line_clearance()).unwrap();
            assert!((line.get() - (3.0 - z - 2.0)).abs() < 1e-9, "{tenths} {line}");
        }
        trial.case.site.neighbours.mesial = Neighbour::Absent;
        assert_eq!(measured(&trial, |m| m.facial_line_clearance()), None);
    }

    #[test]
    fn the_angle_to_an_upright_crown_is_the_tilt_itself() {
        let mut trial = Trial::plain();
        for tilt in [-35, -8, 0, 20] {
            trial.number(Decision::Tilt, tilt);
            let angle = measured(&trial, |m| m.angle_to_crown()).unwrap();
            assert!((angle.get() - f64::from(tilt).abs()).abs() < 1e-9, "{tilt} {angle:?}");
        }
    }

    #[test]
    fn tilt_and_tip_add_up_as_right_angles_do() {
        let mut trial = Trial::plain();
        trial.number(Decision::Tilt, 10).number(Decision::Tip, 10);
        let angle = measured(&trial, |m| m.angle_to_crown()).unwrap();
        let tan = libm::tan(Deg::new(10.0).radians());
        let expected = Deg::from_radians(libm::atan(libm::sqrt(2.0) * tan));
        assert!((angle - expected).abs() < Deg::new(1e-9));
    }

    #[test]
    fn loss_of_crest_height_brings_the_crest_towards_the_platform() {
        let mut trial = Trial::plain();
        for knot in &mut trial.case.site.ridge.crest.knots {
            knot.y += 2.0;
        }
        let depth = measured(&trial, |m| m.depth_from_crest()).unwrap();
        assert!((depth + Mm::new(1.0)).abs() < Mm::new(1e-9), "{depth}");
    }
}
