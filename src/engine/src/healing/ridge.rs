//! A ridge that has shrunk.

use super::Lost;
use crate::anatomy::{Crest, Profile, Ridge};
use crate::geometry::{P2, order, polyline};
use crate::units::Mm;

/// Share of the lost width that goes on the facial side.
const FACIALLY: f64 = 2.0 / 3.0;
/// No ridge shrinks to less than this between its faces, mm (ours): a border, no finding.
const LEAST: f64 = 1.0;

/// The ridge after this loss: `crest` is the level of the facial crest, `apex` where width is kept,
/// `half` half the width of the tooth along the arch.
pub(super) fn shrunk(ridge: &Ridge, loss: Lost, crest: f64, apex: f64, half: f64) -> Ridge {
    let mut levels: Vec<f64> = [&ridge.facial, &ridge.oral]
        .iter()
        .flat_map(|face| face.knots.iter().map(|at| at.x))
        .collect();
    let [top, end] = [crest + loss.facial + 1.0, (crest + loss.facial + 2.0).max(apex)];
    levels.extend([top, end]);
    order::ascend(&mut levels);
    levels.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    let mut faces = [Vec::new(), Vec::new()];
    for z in levels {
        let [facial, oral] =
            [&ridge.facial, &ridge.oral].map(|face| polyline::value(&face.knots, z));
        let lost = loss.width * ((end - z) / (end - top)).clamp(0.0, 1.0);
        let lost = lost.min((facial - oral - LEAST).max(0.0));
        faces[0].push(P2::new(z, facial - FACIALLY * lost));
        faces[1].push(P2::new(z, oral + (1.0 - FACIALLY) * lost));
    }
    let [facial, oral] = faces.map(|knots| Profile { knots });
    Ridge { facial, oral, crest: lowered(&ridge.crest, loss, half) }
}

/// The crest, lowered over the tooth and left at its neighbours.
fn lowered(crest: &Crest, loss: Lost, half: f64) -> Crest {
    let [near, far] = [0.5 * half, half + 1.0];
    let mut places: Vec<f64> = crest.knots.iter().map(|at| at.x).collect();
    places.extend([-far, -near, near, far]);
    order::ascend(&mut places);
    places.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    let knots = places.into_iter().map(|x| {
        let share = ((far - x.abs()) / (far - near)).clamp(0.0, 1.0);
        P2::new(x, polyline::value(&crest.knots, x) + share * loss.facial)
    });
    Crest {
        knots: knots.collect(),
        unharmed: crest.unharmed.clone(),
        oral_offset: crest.oral_offset + Mm::new(loss.oral - loss.facial),
    }
}
