//! The root whose room is left: handbook sizes, spread, axis.

use super::archetype::{Anchorage, Brief, Width};
use super::draw::{Draws, Field, hundredths};
use super::tooth_table::ToothRow;
use crate::anatomy::{Jaw, RootBody, Tooth};
use crate::chart::Sex;
use crate::units::{Deg, Mm};

/// Where the root lies between the plates: classes I to IV of the upper front teeth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sagittal {
    /// Against the facial plate.
    Facial,
    /// In the middle.
    Central,
    /// Against the oral plate.
    Oral,
    /// Against both.
    Engaged,
}

/// What the tooth brings to the site.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Rooted {
    pub tooth: Tooth,
    pub row: ToothRow,
    pub root: RootBody,
    /// Mesiodistal crown width.
    pub md: f64,
    /// Crown length.
    pub crown: f64,
    /// How far teeth of this mouth are above (or below) average, in standard deviations.
    pub mouth: f64,
    pub sagittal: Sagittal,
}

/// Spread of the mesiodistal crown width: 0.5 front, 0.6 behind (from memory).
pub(super) const fn width_sd(position: u8) -> f64 {
    if position <= 3 { 0.5 } else { 0.6 }
}

/// Share of the spread that all teeth of a mouth have in common (ours): 60 % of the variance.
pub(super) const SHARED: [f64; 2] = [0.774_596_669_241_483_4, 0.632_455_532_033_675_9];

/// Neck to crest 1 to 3 mm, growing with age (group means 1.6 to 3.1 in the surveys).
pub(super) fn neck(draws: &Draws, age: u8) -> f64 {
    let mean = 1.7 + 0.012 * (f64::from(age) - 30.0);
    draws.stream(Field::Neck).normal_within(mean, 0.4, 1.2, 3.0)
}

/// The root, its crest this far below its neck (`neck`, mm).
pub(super) fn draw(
    draws: &Draws,
    tooth: Tooth,
    row: ToothRow,
    sex: Sex,
    neck: f64,
    brief: &Brief,
) -> Rooted {
    // Men about 1.25 % above, women below the joint mean (from memory: 2 to 3 % between them).
    let sexed = if sex == Sex::Male { 1.0125 } else { 0.9875 };
    let mouth = draws.stream(Field::MouthSize).normal_within(0.0, 1.0, -2.0, 2.0);
    let mut widths = draws.stream(Field::Widths);
    let own_md = widths.normal_within(0.0, 1.0, -2.0, 2.0);
    let own_fo = match brief.socket {
        Width::Free => widths.normal_within(0.0, 1.0, -2.0, 2.0),
        Width::Narrow => widths.between(-1.8, -0.9),
        Width::Wide => widths.between(1.0, 2.2),
    };
    let joint = |own: f64| SHARED[0] * mouth + SHARED[1] * own;
    let md = row.md * sexed + width_sd(row.position) * joint(own_md);
    let tight = if brief.tight { 0.93 } else { 1.0 };
    let md_neck = row.md_neck * md / row.md * tight;
    let fo_neck = row.fo_neck * sexed
        + 0.5 * if brief.socket == Width::Free { joint(own_fo) } else { own_fo };
    let length = draws.stream(Field::RootLength).normal_within(
        row.root * sexed,
        row.root_sd,
        row.root - 2.2 * row.root_sd,
        row.root + 2.2 * row.root_sd,
    );
    // The taper law is its own continuation: widths at the crest, the same exponent below it.
    let at_crest = libm::pow(1.0 - neck / length, row.taper);
    let [tilt, tip] = axis(draws);
    let root = RootBody {
        x: Mm::ZERO,
        y: Mm::ZERO,
        tilt,
        tip,
        length: Mm::new(hundredths(length - neck)),
        neck: Mm::new(hundredths(neck)),
        half_md: Mm::new(hundredths(md_neck / 2.0 * at_crest)),
        half_fo: Mm::new(hundredths(fo_neck / 2.0 * at_crest * row.flare)),
        taper: row.taper,
    };
    let mut crowns = draws.stream(Field::CrownLength);
    let crown = crowns.normal_within(row.crown * sexed, 0.9, row.crown - 1.8, row.crown + 1.8);
    Rooted {
        tooth,
        row,
        root,
        md: hundredths(md),
        crown: hundredths(crown),
        mouth,
        sagittal: sagittal(draws, tooth, brief),
    }
}

/// Tilt and tip of the root; apices lean distally by a few degrees (ours).
fn axis(draws: &Draws) -> [Deg; 2] {
    let mut axis = draws.stream(Field::Axis);
    let tilt = axis.normal_within(0.0, 2.0, -5.0, 5.0);
    let tip = axis.normal_within(2.0, 2.0, -3.0, 7.0);
    [tilt, tip].map(|angle| Deg::new(hundredths(angle)))
}

/// Upper front: pooled frequencies of the surveys (81 / 8.5 / 1.3 / 9.2 %; Kong et al. 2020
/// confirmed, Kan et al. 2011 from memory). Lower front: facial 14, middle 77, lingual 8 %
/// (Moghaddas and Behravan 2020, confirmed). Premolars: middle.
fn sagittal(draws: &Draws, tooth: Tooth, brief: &Brief) -> Sagittal {
    let mut stream = draws.stream(Field::Sagittal);
    let upper = tooth.jaw() == Jaw::Maxilla;
    match brief.anchorage {
        Anchorage::Engaged => return Sagittal::Engaged,
        Anchorage::Good if upper => {
            let weights = [(Sagittal::Facial, 0.9), (Sagittal::Central, 0.1)];
            return if tooth.is_anterior() {
                stream.weighted(&weights, Sagittal::Facial)
            } else {
                Sagittal::Central
            };
        }
        _ => {}
    }
    let weights = match (upper, tooth.is_anterior()) {
        (true, true) => [
            (Sagittal::Facial, 0.81),
            (Sagittal::Central, 0.085),
            (Sagittal::Oral, 0.013),
            (Sagittal::Engaged, 0.092),
        ],
        (false, true) => [
            (Sagittal::Facial, 0.14),
            (Sagittal::Central, 0.77),
            (Sagittal::Oral, 0.08),
            (Sagittal::Engaged, 0.01),
        ],
        (_, false) => return Sagittal::Central,
    };
    stream.weighted(&weights, Sagittal::Facial)
}

/// A neighbour's root: handbook sizes at this mouth's scale, its crest 2 mm below its neck.
pub(super) fn neighbour(
    row: ToothRow,
    mouth: f64,
    x_of: impl Fn(f64) -> f64,
    lean: [f64; 2],
) -> RootBody {
    let neck = 2.0;
    let scale = 1.0 + width_sd(row.position) * SHARED[0] * mouth / row.md;
    let at_crest = libm::pow(1.0 - neck / row.root, row.taper);
    let half_md = hundredths(row.md_neck / 2.0 * scale * at_crest);
    let [tilt, tip] = lean;
    RootBody {
        x: Mm::new(hundredths(x_of(half_md))),
        y: Mm::ZERO,
        tilt: Deg::new(hundredths(tilt)),
        tip: Deg::new(hundredths(tip)),
        length: Mm::new(hundredths(row.root - neck)),
        neck: Mm::new(neck),
        half_md: Mm::new(half_md),
        half_fo: Mm::new(hundredths(row.fo_neck / 2.0 * scale * at_crest * row.flare)),
        taper: row.taper,
    }
}
