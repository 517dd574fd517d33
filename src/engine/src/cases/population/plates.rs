//! How much bone lies over the root, and where it begins.
//!
//! Thicknesses are lognormal at crest, mid-root and apex. Where surveys of one tooth disagree, one is
//! generated and the others stand beside it in `tests/data/population.csv`:
//!
//! - upper front, crest: sockets at extraction (Huynh-Ba et al. 2010: at most 1 mm in 87 %); mid-root:
//!   Braut et al. 2011 (498 teeth: 1 mm or more in 9.8 %);
//! - upper premolars, crest: the same sockets (59 % at most 1 mm, 9 % 2 mm), split so that 15 is the
//!   thicker at every level (72 + 72 teeth, J Oral Implantol 2017) and 14 thin enough for Braut;
//! - lower teeth, crest: means of Heimes et al. 2021; below it ours inside pooled ranges (68 studies).

use crate::anatomy::{Jaw, Tooth};
use crate::cases::draw::{Draws, Field, Stream};
use crate::cases::ridge::Levels;
use crate::cases::socket::{Rooted, Sagittal};
use crate::cases::tooth_table::{ToothRow, facial_plate, log_moments, oral_plate};

/// A mean and a standard deviation at crest, mid-root and apex, mm.
type Published = [(f64, f64); 3];

/// A plate as drawn.
pub(super) struct Plate {
    pub levels: Levels,
    /// Its thickness at the crest, in standard deviations of the logarithm above the median.
    pub cover: f64,
}

/// Correlation of neighbouring levels (ours), and what is left of the spread beside it.
const ALONG: [f64; 2] = [0.7, 0.714];
/// Share of plate and gum in the phenotype: together a correlation of 0.4 (thin gum over thin bone:
/// direction confirmed in 47 patients, size ours).
pub(super) const IN_PHENOTYPE: [f64; 2] = [0.632, 0.775];

/// Millimetres from neck to crest before any disease: lognormal, mean rising by 0.014 a year. Upper
/// teeth 2.8 at 54 years, inside group means of 2.24 to 3.08 (30 subjects, confirmed); lower front 2.3
/// (2.32 +- 0.78, 100 scans, confirmed); lower premolars 2.5 (ours).
pub(super) fn neck(draws: &Draws, row: ToothRow, age: u8) -> f64 {
    let (mean, sd) = match (row.jaw, row.position) {
        (Jaw::Maxilla, _) => (3.0, 1.65),
        (Jaw::Mandible, 1..=3) => (2.2, 0.7),
        (Jaw::Mandible, _) => (2.5, 0.9),
    };
    let (mu, sigma) = log_moments((mean + 0.014 * (f64::from(age) - 54.0), sd));
    let most = (0.45 * row.root).min(6.2);
    let drawn = draws.stream(Field::Neck).normal_within(mu, sigma, -1.0, libm::log(most));
    libm::exp(drawn).max(0.8)
}

/// The phenotype of this mouth: thick is positive.
pub(super) fn phenotype(draws: &Draws) -> f64 {
    draws.stream(Field::Phenotype).standard()
}

/// Facial and oral plate.
pub(super) fn draw(draws: &Draws, rooted: &Rooted) -> [Plate; 2] {
    let (tooth, sagittal) = (rooted.tooth, rooted.sagittal);
    let mut stream = draws.stream(Field::FacialPlate);
    let cover = IN_PHENOTYPE[0] * phenotype(draws) + IN_PHENOTYPE[1] * stream.standard();
    let facial = levels(
        &mut stream,
        facial_of(tooth),
        shares(tooth, |class| facial_factors(tooth, class), sagittal),
        cover,
    );
    let mut stream = draws.stream(Field::OralPlate);
    let own = stream.standard();
    let oral = levels(
        &mut stream,
        oral_plate(tooth).levels,
        shares(tooth, |class| oral_factors(tooth, class), sagittal),
        own,
    );
    [Plate { levels: facial, cover }, Plate { levels: oral, cover: own }]
}

fn levels(stream: &mut Stream, published: Published, factors: Levels, crest: f64) -> Levels {
    let mut joint = crest;
    let mut drawn = [0.0; 3];
    for (level, thickness) in drawn.iter_mut().enumerate() {
        if level > 0 {
            joint = ALONG[0] * joint + ALONG[1] * stream.standard();
        }
        let (mu, sigma) = log_moments(published[level]);
        // Less than 0.12 mm over a root would not be told from none; 16 mm is more than a ridge holds.
        *thickness = (factors[level] * libm::exp(mu + sigma * joint)).clamp(0.12, 16.0);
    }
    drawn
}

fn facial_of(tooth: Tooth) -> Published {
    match (tooth.jaw(), tooth.position()) {
        (Jaw::Maxilla, 1) => [(0.65, 0.34), (0.52, 0.27), (2.04, 1.01)],
        (Jaw::Maxilla, 2) => [(0.67, 0.35), (0.52, 0.27), (1.4, 0.7)],
        (Jaw::Maxilla, 3) => [(0.70, 0.37), (0.54, 0.29), (1.5, 0.8)],
        (Jaw::Maxilla, 4) => [(0.86, 0.52), (0.71, 0.39), (1.45, 0.8)],
        (Jaw::Maxilla, _) => [(1.28, 0.76), (1.70, 0.80), (2.2, 1.2)],
        (Jaw::Mandible, 4..) => [(1.20, 0.96), (1.5, 0.8), (2.1, 1.0)],
        _ => facial_plate(tooth).levels,
    }
}

/// How often a root lies where: the weights that `socket` draws by.
fn classes(tooth: Tooth) -> [(Sagittal, f64); 4] {
    let shares = match (tooth.jaw(), tooth.is_anterior()) {
        (Jaw::Maxilla, true) => [0.81, 0.085, 0.013, 0.092],
        (Jaw::Mandible, true) => [0.14, 0.77, 0.08, 0.01],
        (_, false) => [0.0, 1.0, 0.0, 0.0],
    };
    let [facial, central, oral, engaged] = shares;
    [
        (Sagittal::Facial, facial),
        (Sagittal::Central, central),
        (Sagittal::Oral, oral),
        (Sagittal::Engaged, engaged),
    ]
}

/// What a class makes of a plate, over what all classes make of it on average: the plate keeps its
/// published mean over all teeth.
fn shares(tooth: Tooth, factors: impl Fn(Sagittal) -> Levels, class: Sagittal) -> Levels {
    let mut all = [0.0; 3];
    for (one, weight) in classes(tooth) {
        for (sum, factor) in all.iter_mut().zip(factors(one)) {
            *sum += weight * factor;
        }
    }
    let of_class = factors(class);
    [of_class[0] / all[0], of_class[1] / all[1], of_class[2] / all[2]]
}

/// Upper front: against both plates 0.32 to 0.54, against the oral one 1.26 to 2.09 mm of facial bone
/// at 4 to 10 mm below the neck (47 patients, confirmed).
fn facial_factors(tooth: Tooth, class: Sagittal) -> Levels {
    let upper = tooth.jaw() == Jaw::Maxilla;
    match class {
        Sagittal::Facial if !upper => [0.8, 0.6, 0.6],
        Sagittal::Central if upper && tooth.is_anterior() => [1.1, 1.8, 1.8],
        Sagittal::Facial | Sagittal::Central => [1.0, 1.0, 1.0],
        Sagittal::Oral => [2.2, 2.6, 2.5],
        Sagittal::Engaged => [0.65, 0.70, 0.6],
    }
}

fn oral_factors(tooth: Tooth, class: Sagittal) -> Levels {
    let upper_front = tooth.jaw() == Jaw::Maxilla && tooth.is_anterior();
    match class {
        Sagittal::Central if upper_front => [1.0, 0.7, 0.6],
        Sagittal::Facial | Sagittal::Central => [1.0, 1.0, 1.0],
        Sagittal::Oral => [0.8, 0.5, 0.25],
        Sagittal::Engaged => [0.7, 0.4, 0.2],
    }
}
