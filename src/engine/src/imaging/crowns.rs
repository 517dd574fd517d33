//! The form of crowns: enamel, and the dentine within it. Lengths and widths come from the tooth; how
//! a crown is hewn from cones and planes is ours.

use super::hewn::{Facet, Flare, Hewn};
use super::teeth::CrownForm;
use crate::anatomy::Kind;
use crate::geometry::{Frame, V3};

/// Enamel at the sides and over the biting edge, mm (textbook thicknesses, from memory).
const SIDE: f64 = 1.0;
const TOP: f64 = 1.8;
/// How far the crown's dentine reaches into the root, mm: a crown that leans leaves no cleft there.
const INTO_ROOT: f64 = 1.5;

/// What differs from kind to kind.
struct Style {
    /// Share of the height at which the crown is widest, from the neck.
    belly: f64,
    /// How far the biting edge falls from its middle to the sides, mm.
    fall: f64,
    /// Half of the faciooral width of the biting edge or face over that of the neck.
    edge: f64,
    /// How far corners of the edge are rounded off, mm.
    corner: f64,
}

const fn style(kind: Kind) -> Style {
    match kind {
        Kind::CentralIncisor | Kind::LateralIncisor => {
            Style { belly: 0.75, fall: 0.2, edge: 0.3, corner: 0.9 }
        }
        Kind::Canine => Style { belly: 0.62, fall: 2.2, edge: 0.32, corner: 0.3 },
        Kind::FirstPremolar | Kind::SecondPremolar => {
            Style { belly: 0.6, fall: 1.7, edge: 0.66, corner: 0.4 }
        }
        Kind::Molar => Style { belly: 0.6, fall: 0.9, edge: 0.74, corner: 0.6 },
    }
}

/// Enamel with everything within it.
#[must_use]
pub fn enamel(form: &CrownForm) -> Hewn {
    hew(form, 0.0, 0.0, 0.0)
}

/// Dentine of the crown: thinner by the enamel at the sides and over the edge, and nothing thinner at
/// the neck.
#[must_use]
pub fn dentine(form: &CrownForm) -> Hewn {
    let incisor = matches!(form.kind, Kind::CentralIncisor | Kind::LateralIncisor);
    hew(form, SIDE, if incisor { 1.2 * TOP } else { TOP }, INTO_ROOT)
}

fn hew(form: &CrownForm, side: f64, top: f64, beyond: f64) -> Hewn {
    let Style { belly, fall, edge, corner } = style(form.kind);
    let along = form.neck - form.edge;
    let height = along.length().max(2.0);
    let along = along.unit().unwrap_or(V3::APICAL);
    let tall = height - top;
    let [neck, wide] = form.half_md;
    let wide = (wide - side).max(0.6 * neck);
    let (half_fo, swell) = (form.half_fo, wide / neck);
    // Widest at the belly: one cone opens up to there, another closes beyond.
    let opens = -(swell - 1.0) / (belly * tall);
    let closing = 0.12 / ((1.0 - belly) * tall);
    let at_neck = 1.0 + closing * belly * tall;
    let flares = vec![
        Flare { across: neck, facial: half_fo, rate: opens },
        Flare {
            across: wide * at_neck,
            facial: half_fo * swell * at_neck,
            rate: closing / at_neck,
        },
    ];
    let mut facets = Vec::with_capacity(8);
    // Facial and oral face: bulging from the neck to the middle, then in to the edge.
    let thin = (edge * half_fo - 0.3 * side).max(0.3);
    let (bulge, waist) = (half_fo + 0.3, half_fo * f64::midpoint(1.0, edge) + 0.5 - 0.6 * side);
    let waist = waist.max(thin);
    let middle = 0.5 * tall;
    for out in [1.0, -1.0] {
        let coronal = (waist - thin) / (tall - middle);
        let cervical = (bulge - waist) / middle;
        facets.push(Facet { normal: V3::new(0.0, out, -coronal), at: waist + coronal * middle });
        facets.push(Facet { normal: V3::new(0.0, out, -cervical), at: bulge });
    }
    for out in [1.0, -1.0] {
        // From the middle of the edge down to its sides, then the corner itself.
        facets.push(Facet { normal: V3::new(out * fall / wide, 0.0, -1.0), at: tall });
        let shoulder = tall - fall;
        facets.push(Facet { normal: V3::new(out, 0.0, -1.0), at: wide + shoulder - corner });
    }
    let frame = Frame::on_axis(form.neck, along);
    Hewn { frame, ends: [-tall, beyond], flares, facets }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{P3, Ray};

    fn form(kind: Kind) -> CrownForm {
        let (neck, edge) = (P3::new(0.0, 0.0, -2.0), P3::new(0.0, 0.6, -12.5));
        CrownForm { kind, neck, edge, half_md: [3.2, 4.25], half_fo: 3.0 }
    }

    fn long(met: Option<(f64, f64)>) -> f64 {
        met.map_or(0.0, |(from, to)| to - from)
    }

    const KINDS: [Kind; 4] =
        [Kind::CentralIncisor, Kind::Canine, Kind::SecondPremolar, Kind::Molar];

    #[test]
    fn a_crown_is_as_wide_as_its_tooth_and_as_tall() {
        for kind in KINDS {
            let form = form(kind);
            let body = enamel(&form);
            let height = (form.neck - form.edge).length();
            let widest = (0..200)
                .map(|i| {
                    let level = -height * f64::from(i) / 200.0;
                    let origin = body.frame.point(V3::new(0.0, 0.0, level));
                    long(body.ray(&Ray { origin, direction: body.frame.across }))
                })
                .fold(0.0, f64::max);
            assert!((widest - 8.5).abs() < 0.15, "{kind:?}: {widest}");
            let up = Ray { origin: form.neck, direction: -body.frame.along };
            assert!((long(body.ray(&up)) - height).abs() < 1e-9, "{kind:?}");
        }
    }

    #[test]
    fn dentine_lies_within_enamel_and_meets_it_at_the_neck() {
        for kind in KINDS {
            let (outer, inner) = (enamel(&form(kind)), dentine(&form(kind)));
            for i in 0..4000 {
                let turn = f64::from(i);
                let local = V3::new(
                    5.0 * libm::sin(turn),
                    4.0 * libm::sin(1.7 * turn),
                    -6.0 + 6.0 * libm::sin(0.41 * turn),
                );
                let point = outer.frame.point(local);
                assert!(!inner.contains(point) || outer.contains(point), "{kind:?} {local:?}");
            }
            let across = |body: &Hewn, level: f64| {
                let origin = body.frame.point(V3::new(0.0, 0.0, level));
                long(body.ray(&Ray { origin, direction: body.frame.across }))
            };
            assert!(across(&outer, -0.01) - across(&inner, -0.01) < 0.05, "{kind:?}");
            let cap = 0.5 * (across(&outer, -6.5) - across(&inner, -6.5));
            assert!((0.6..1.4).contains(&cap), "{kind:?}: {cap}");
        }
    }
}
