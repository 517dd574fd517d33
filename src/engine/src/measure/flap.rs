//! The flap: what it lays bare beyond the membrane, its form, and where it is cut.
//!
//! The reflected area is the facial outline, joined across the crest with the oral margin as far as
//! that was raised. Its coronal edge is the open crestal incision and is asked nothing.

use super::bound::{Corners, Towards, margin, side_edges};
use super::membrane::{covers_socket, keep};
use super::{Margins, Measurements, mm};
use crate::anatomy::{Beside, Wall};
use crate::geometry::polygon::{self, Edge};
use crate::geometry::{Interval, P2};
use crate::plan::choices::ReleaseSide;
use crate::plan::{FlapRaised, Releases};
use crate::units::{Mm, Ratio};

impl Measurements<'_> {
    /// From the membrane's edge to the edge of the reflected area: mesially, distally and apically of
    /// what lies on the facial bone, and orally, where the membrane goes over the crest, to where the
    /// oral margin was raised. Negative where the flap ends short. `None` without a membrane, or when
    /// neither side was raised. Millimetres on the map.
    #[must_use]
    pub fn flap_beyond_membrane(&self) -> Option<Margins> {
        *self.kept.flap.get_or_init(|| self.beyond_membrane())
    }

    fn beyond_membrane(&self) -> Option<Margins> {
        let membrane = self.plan.membrane()?;
        let flap = self.plan.flap.as_ref()?;
        if flap.raised.is_none() && flap.oral.get() <= 0.0 {
            return None;
        }
        let laid = Corners::of(&membrane.outline);
        let mut margins = Margins::default();
        if let Some(raised) = &flap.raised {
            let on_wall = polygon::clipped(laid.as_slice(), |p| p.y);
            let bare = Corners::of(&raised.outline);
            keep(&mut margins.mesial, margin(&on_wall, bare.as_slice(), Towards::Mesial));
            keep(&mut margins.distal, margin(&on_wall, bare.as_slice(), Towards::Distal));
            keep(&mut margins.apical, margin(&on_wall, bare.as_slice(), Towards::Apical));
        }
        if covers_socket(self, membrane) {
            let reach = polygon::extent(laid.as_slice(), |p| p.y)?;
            let raised_to = -self.ground().solid.map.across() - flap.oral.get();
            keep(&mut margins.oral, Some(reach.from - raised_to));
        }
        Some(margins)
    }

    /// From the edge of the bone defect (of the socket's orifice, where no facial wall is missing) to
    /// the nearest vertical incision, on the map. `None` without a vertical release. Millimetres; 0
    /// when an incision crosses it.
    #[must_use]
    pub fn incision_to_defect(&self) -> Option<Mm> {
        let cuts = releases(self.plan.raised()?);
        let ground = self.ground();
        let facial = ground.solid.cuts.iter().filter(|cut| cut.wall == Wall::Facial);
        let mut bone_edges: Vec<&[P2]> = facial.map(|cut| cut.outline.as_slice()).collect();
        if bone_edges.is_empty() {
            bone_edges.push(ground.orifice());
        }
        let mut least: Option<f64> = None;
        for edge in bone_edges.iter().flat_map(|outline| polygon::edges(outline)) {
            for cut in &cuts {
                let here = polygon::edge_to_edge(edge, *cut);
                least = Some(least.map_or(here, |kept| kept.min(here)));
            }
        }
        mm(least?)
    }

    /// Base of the flap over its free margin: widths of the outline at its apical and its coronal end.
    /// Both are read off the widths at a quarter and three quarters of its height, so that rounded
    /// corners do not count. `None` without a vertical release.
    #[must_use]
    pub fn flap_base_ratio(&self) -> Option<Ratio> {
        let (margin, base, _) = self.flap_form()?;
        Ratio::checked(base / margin.max(0.1)).ok()
    }

    /// Length of the flap from its free margin to its base, over the width of its base. `None` without
    /// a vertical release.
    #[must_use]
    pub fn flap_length_ratio(&self) -> Option<Ratio> {
        let (_, base, length) = self.flap_form()?;
        Ratio::checked(length / base.max(0.1)).ok()
    }

    /// Widths of the free margin and the base, and the length.
    fn flap_form(&self) -> Option<(f64, f64, f64)> {
        let raised = self.plan.raised().filter(|raised| raised.releases != Releases::None)?;
        let outline = Corners::of(&raised.outline);
        let Interval { from, to } = polygon::extent(outline.as_slice(), |p| p.y)?;
        let width = |way: f64| {
            let at = P2::new(0.0, from + (to - from) * way);
            polygon::line_within(outline.as_slice(), at, P2::new(1.0, 0.0)).length()
        };
        let (coronal, apical) = (width(0.25), width(0.75));
        let change = 0.5 * (apical - coronal);
        Some((coronal - change, apical + change, to - from))
    }

    /// Least distance along the crest from the coronal end of a vertical release to the middle of the
    /// papilla on either side of the site or to the prominence (the middle) of the site's root or of
    /// a neighbour. Papillae beyond the neighbours are not part of the site. `None` without a vertical
    /// release. Millimetres; 0 on it.
    #[must_use]
    pub fn release_to_prominence(&self) -> Option<Mm> {
        let marks = self.prominences();
        let ends = release_ends(self.plan.raised()?);
        let ways = ends.iter().flat_map(|end| marks.iter().map(move |mark| (end.x - mark).abs()));
        mm(ways.reduce(f64::min)?)
    }

    /// x of the middles of roots and papillae at the crest.
    fn prominences(&self) -> Vec<f64> {
        let ground = self.ground();
        let mut marks = Vec::with_capacity(5);
        let own = polygon::extent(ground.orifice(), |p| p.x);
        marks.extend(own.map(|own| f64::midpoint(own.from, own.to)));
        for (side, beside) in ground.solid.beside.iter().enumerate() {
            let reach = match beside {
                Beside::Root(_) => ground
                    .root_beside(side)
                    .last()
                    .and_then(|outline| polygon::extent(outline, |p| p.x)),
                Beside::Implant(cone) => Some(Interval {
                    from: cone.frame.origin.x - cone.near,
                    to: cone.frame.origin.x + cone.near,
                }),
                Beside::Absent => None,
            };
            let Some(reach) = reach else { continue };
            marks.push(f64::midpoint(reach.from, reach.to));
            marks.extend(own.map(|own| {
                if side == 0 {
                    f64::midpoint(reach.to, own.from)
                } else {
                    f64::midpoint(own.to, reach.from)
                }
            }));
        }
        marks
    }

    /// From a vertical release to the middle of the mental foramen, on the map. `None` without a
    /// vertical release or a foramen. Millimetres.
    #[must_use]
    pub fn release_to_foramen(&self) -> Option<Mm> {
        let foramen = self.ground().solid.map.facially(self.case.site.vital.foramen?);
        let cuts = releases(self.plan.raised()?);
        mm(cuts.iter().map(|cut| polygon::point_to_edge(foramen, *cut)).reduce(f64::min)?)
    }
}

/// The vertical incisions: the mesial or distal edges of the outline, as released.
fn releases(raised: &FlapRaised) -> Vec<Edge> {
    let outline = Corners::of(&raised.outline);
    let sides: &[Towards] = match raised.releases {
        Releases::None => &[],
        Releases::One(ReleaseSide::Mesial) => &[Towards::Mesial],
        Releases::One(ReleaseSide::Distal) => &[Towards::Distal],
        Releases::Two => &[Towards::Mesial, Towards::Distal],
    };
    sides
        .iter()
        .flat_map(|side| side_edges(outline.as_slice(), *side).collect::<Vec<_>>())
        .collect()
}

/// The coronal end of each vertical incision.
fn release_ends(raised: &FlapRaised) -> Vec<P2> {
    let cuts = releases(raised);
    let middle = Corners::of(&raised.outline);
    let middle = polygon::extent(middle.as_slice(), |p| p.x)
        .map_or(0.0, |reach| f64::midpoint(reach.from, reach.to));
    let coronal = |mesial: bool| {
        let ends = cuts.iter().flat_map(|(a, b)| [*a, *b]);
        let ends = ends.filter(|end| (end.x < middle) == mesial);
        ends.min_by(|a, b| a.y.total_cmp(&b.y))
    };
    [coronal(true), coronal(false)].into_iter().flatten().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::P3;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;

    fn flap(design: &str, outline: &[[i32; 2]]) -> Trial {
        let mut trial = Trial::plain();
        trial.keys(&[
            ("flap-design", design),
            ("release-side", "distal"),
            ("papillae", "left"),
            ("periosteal-release", "yes"),
        ]);
        trial.number(Decision::ContourLayer, 0);
        trial.outline(Decision::FlapOutline, outline);
        trial
    }

    fn cover(trial: &mut Trial, fold: &str, outline: &[[i32; 2]]) {
        trial.keys(&[
            ("membrane", "native-collagen"),
            ("trim", "rounded"),
            ("fold", fold),
            ("fixation", "tucked"),
            ("act-order", "membrane-first"),
            ("needle-path", "crest-outward"),
        ]);
        trial.outline(Decision::MembraneOutline, outline);
    }

    fn measured<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
        let plan = trial.plan();
        read(&Measurements::of(&trial.case, &plan))
    }

    const TRAPEZOID: &[[i32; 2]] = &[[-80, 0], [80, 0], [100, 120], [-100, 120]];

    #[test]
    fn a_trapezoid_is_as_wide_and_as_long_as_it_was_drawn() {
        let trial = flap("trapezoidal", TRAPEZOID);
        let ratio = measured(&trial, |m| m.flap_base_ratio()).unwrap();
        assert!((ratio.get() - 20.0 / 16.0).abs() < 1e-9, "{ratio}");
        let length = measured(&trial, |m| m.flap_length_ratio()).unwrap();
        assert!((length.get() - 12.0 / 20.0).abs() < 1e-9, "{length}");
        let envelope = flap("envelope", TRAPEZOID);
        assert_eq!(measured(&envelope, |m| m.flap_base_ratio()), None);
        assert_eq!(measured(&envelope, |m| m.incision_to_defect()), None);
    }

    #[test]
    fn rounded_corners_do_not_narrow_the_base() {
        let rounded: &[[i32; 2]] =
            &[[-80, 0], [80, 0], [97, 100], [80, 120], [-80, 120], [-97, 100]];
        let ratio = measured(&flap("trapezoidal", rounded), |m| m.flap_base_ratio()).unwrap();
        assert!(ratio.get() > 1.2, "{ratio}");
    }

    #[test]
    fn the_flap_is_measured_beyond_the_membrane_and_not_at_the_crest() {
        let mut trial = flap("envelope", &[[-80, 0], [90, 0], [90, 120], [-80, 120]]);
        cover(&mut trial, "facial-only", &[[-50, 0], [50, 0], [50, 90], [-50, 90]]);
        let found = measured(&trial, |m| m.flap_beyond_membrane()).unwrap();
        assert_eq!((found.mesial, found.distal), (Some(Mm::new(3.0)), Some(Mm::new(4.0))));
        assert_eq!((found.apical, found.oral), (Some(Mm::new(3.0)), None));
        // Over the crest: the membrane ends at -11.0, the oral crest lies at -8.4.
        cover(&mut trial, "over-orifice", &[[-50, -110], [50, -110], [50, 90], [-50, 90]]);
        for (raised, expected) in [(0, -2.6), (26, 0.0), (50, 2.4)] {
            trial.number(Decision::OralElevation, raised);
            let found = measured(&trial, |m| m.flap_beyond_membrane()).unwrap();
            assert!((found.oral.unwrap().get() - expected).abs() < 1e-9, "{raised} {found:?}");
            assert_eq!(found.mesial, Some(Mm::new(3.0)));
        }
    }

    #[test]
    fn incisions_are_measured_from_the_orifice_and_from_a_defect() {
        let mut trial = flap("trapezoidal", &[[-80, 0], [80, 0], [80, 120], [-80, 120]]);
        // The orifice reaches from -3.2 to 3.2 in the middle of the crossing, 4.2 mm from the outline.
        let from_orifice = measured(&trial, |m| m.incision_to_defect()).unwrap().get();
        assert!(from_orifice > 4.8 && from_orifice < 7.0, "{from_orifice}");
        trial.case.site.defects.push(crate::anatomy::Defect {
            wall: Wall::Facial,
            kind: crate::anatomy::DefectKind::DehiscenceU,
            outline: crate::geometry::Outline::new(vec![[-20, 0], [25, 0], [25, 60], [-20, 60]])
                .unwrap(),
        });
        assert_eq!(measured(&trial, |m| m.incision_to_defect()), Some(Mm::new(5.5)));
        trial.keys(&[("flap-design", "triangular"), ("release-side", "mesial")]);
        assert_eq!(measured(&trial, |m| m.incision_to_defect()), Some(Mm::new(6.0)));
    }

    #[test]
    fn a_release_is_measured_from_papilla_and_prominence_over_a_sweep() {
        // Marks of the plain site: roots at -8.7, 0, 7.7; papillae at -4.35 and 4.25.
        let marks = [-8.7, -4.35, 0.0, 4.25, 7.7];
        for tenths in 20..120 {
            let right = f64::from(tenths) / 10.0;
            let outline = [[-60, 0], [tenths, 0], [tenths + 10, 100], [-60, 100]];
            let found = measured(&flap("triangular", &outline), |m| m.release_to_prominence());
            let expected = marks.iter().map(|m| (right - m).abs()).reduce(f64::min).unwrap();
            assert!((found.unwrap().get() - expected).abs() < 1e-9, "{tenths} {found:?}");
        }
    }

    #[test]
    fn a_release_over_the_foramen_is_at_nothing_from_it() {
        let mut trial = flap("triangular", &[[-60, 0], [80, 0], [80, 140], [-60, 140]]);
        trial.case.site.vital.foramen = Some(P3::new(8.0, 2.5, 11.0));
        assert_eq!(measured(&trial, |m| m.release_to_foramen()), Some(Mm::ZERO));
        trial.case.site.vital.foramen = Some(P3::new(5.0, 2.5, 11.0));
        assert_eq!(measured(&trial, |m| m.release_to_foramen()), Some(Mm::new(3.0)));
    }
}
