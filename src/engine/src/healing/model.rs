//! The numbers of the model, each with its source and whether it was read there; every use of the model
//! goes through here.
//!
//! Time runs as 1 - exp(-t / tau), tau 2.0 months for width and 1.5 for height: two thirds of the width
//! that goes is gone after 2.2 months (Schropp 2003, confirmed (secondary)). What goes in the end:
//!
//! - Width: normal, 3.6 +/- 1.1 mm, of molars 4.6 +/- 1.3. Means of 3.79 (Tan 2012, confirmed) and 3.87
//!   mm (Van der Weijden 2009, confirmed); the spread between patients is ours.
//! - Facial height: lognormal about 1.3 exp(1.1 (1 - b)) mm, b the facial plate in mm 1 mm below the
//!   crest, none where the wall is lost; logarithmic spread 0.45 (ours). Means of 1.24 (Tan 2012,
//!   confirmed) and 1.71 mm (Couso-Queiruga 2021, confirmed). Upper front teeth with a plate under
//!   1 mm lose far more in 4 of 10 (ours): 6.5 +/- 1.5 mm (7.5 in Chappuis 2013, confirmed by its
//!   successor of 2015).
//! - A grafted socket keeps 1.7 +/- 0.6 mm of that width (1.86: Bassir 2018, confirmed) and
//!   1.5 +/- 0.8 mm of that height (1.47: Vignoletti 2012, confirmed); the spreads are ours.
//! - Beside an implant of the day with whole walls: facially 1.4 +/- 0.6 mm of width and 0.9 +/- 0.6 mm
//!   of height (1.07 and 0.78 with and without grafts: Lee 2014, confirmed (secondary); 1.6 without one:
//!   Sanz 2017, confirmed); the spreads are ours. A grafted gap keeps 0.45 +/- 0.3 mm of that width
//!   (0.5: Sanz 2017, confirmed) and 0.25 +/- 0.25 mm of that height (ours). Of what is left to go, a
//!   plate under 1 mm loses 1.5 times as much, one over 2 mm 0.6 times, a premolar 0.8 times: which way
//!   is confirmed (Ferrus 2010), how much is ours. The oral side loses 0.62 mm of width more (Lee 2014,
//!   confirmed (secondary)), the same in everyone, for want of a spread.
//! - No graft adds to what is lost, and 0.2 mm go at least (ours).
//! - Orally as much height goes as facially, and no more than 1.44 mm (Couso-Queiruga 2021, confirmed).
//! - Two thirds of the width go on the facial side (56 against 30 % beside implants: Botticelli 2004,
//!   from memory), evenly to 1 mm below the crest and then less and less down to the apex (ours).
//! - Bone fills the socket as 1 - exp(-t / 1.5 months) (ours); gum closes over it by four weeks
//!   (timing classes, Hammerle 2004, confirmed).

use crate::anatomy::{Jaw, Kind};
use crate::events::Chance;
use crate::measure::Measurements;
use crate::units::Mm;

/// Weeks in a month.
pub(super) const WEEKS: f64 = 4.345;
/// Months in which all but 1/e of what will go has gone: of width, of height.
const WIDTH: f64 = 2.0;
const HEIGHT: f64 = 1.5;
/// The same of what bone will fill.
pub(super) const SOCKET: f64 = 1.5;
/// What goes at least, and the height that goes at most, mm.
const LEAST: f64 = 0.2;
const HIGHEST: f64 = 8.0;
/// Width that goes orally beside an implant, mm.
const ORALLY: f64 = 0.62;

/// The share of a change that has happened.
pub(super) fn share(months: f64, tau: f64) -> f64 {
    1.0 - libm::exp(-months / tau)
}

/// What the model tells apart among treatments of a socket.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Treatment {
    /// Left to heal.
    Nothing,
    /// Grafted, without an implant.
    Preserved,
    /// An implant of the day between whole walls, its gap left to the clot.
    Implant,
    /// The same with its gap grafted.
    GraftedImplant,
}

/// What the model reads of a site.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reads {
    /// Sort of tooth.
    pub kind: Kind,
    /// Its jaw.
    pub jaw: Jaw,
    /// Facial plate 1 mm below the crest, millimetres; 0 where the wall is lost.
    pub plate: Mm,
}

impl Reads {
    /// Of a measured site.
    #[must_use]
    pub fn of(m: &Measurements<'_>) -> Self {
        let tooth = m.case.site.tooth;
        let plate = m.facial_plate().unwrap_or(Mm::ZERO);
        Self { kind: tooth.kind(), jaw: tooth.jaw(), plate }
    }

    /// Whether the site may lose its facial plate at once: an upper front tooth with a plate under 1 mm.
    fn may_collapse(self) -> bool {
        self.jaw == Jaw::Maxilla && self.kind <= Kind::Canine && self.plate.get() < 1.0
    }

    /// By how much more or less goes beside an implant here.
    fn beside_implant(self) -> f64 {
        let plate = match self.plate.get() {
            thin if thin < 1.0 => 1.5,
            thick if thick > 2.0 => 0.6,
            _ => 1.0,
        };
        let premolar = matches!(self.kind, Kind::FirstPremolar | Kind::SecondPremolar);
        if premolar { 0.8 * plate } else { plate }
    }
}

/// One patient as drawn: what would go in the end, and what each treatment would keep. Treatments are
/// compared on the same patients. Millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patient {
    width: f64,
    height: f64,
    /// Width and height that a graft keeps.
    kept: [f64; 2],
    /// Width and height that go on the facial side of an implant, and what a graft of its gap keeps.
    beside: [f64; 2],
    gap: [f64; 2],
}

impl Patient {
    /// The next patient with such a site.
    pub fn drawn(reads: Reads, chance: &mut Chance) -> Self {
        let mut normal = |mean: f64, spread: f64| mean + spread * chance.standard();
        let molar = reads.kind == Kind::Molar;
        let width = if molar { normal(4.6, 1.3) } else { normal(3.6, 1.1) };
        let median = 1.3 * libm::exp(1.1 * (1.0 - reads.plate.get()));
        let mut height = (median * libm::exp(normal(0.0, 0.45))).clamp(0.3, HIGHEST);
        let collapsed = normal(6.5, 1.5);
        let kept = [normal(1.7, 0.6), normal(1.5, 0.8)];
        if reads.may_collapse() && chance.unit() < 0.4 {
            height = collapsed;
        }
        // After all that one course is drawn from, so that this moved none.
        let mut normal = |mean: f64, spread: f64| mean + spread * chance.standard();
        let beside = [normal(1.4, 0.6), normal(0.9, 0.6)];
        let gap = [normal(0.45, 0.3), normal(0.25, 0.25)];
        Self { width, height, kept, beside, gap }
    }

    /// What this patient loses in the end.
    #[must_use]
    pub fn lost(&self, reads: Reads, treatment: Treatment) -> Lost {
        let less = |lost: f64, kept: f64| lost - kept.max(0.0);
        let factor = reads.beside_implant();
        let beside = |keep: [f64; 2]| {
            let [width, facial] = [0, 1].map(|way| factor * less(self.beside[way], keep[way]));
            [width.max(LEAST) + ORALLY, facial]
        };
        let [width, facial] = match treatment {
            Treatment::Nothing => [self.width, self.height],
            Treatment::Preserved => {
                [less(self.width, self.kept[0]), less(self.height, self.kept[1])]
            }
            Treatment::Implant => beside([0.0; 2]),
            Treatment::GraftedImplant => beside(self.gap),
        };
        Lost::of(width.max(LEAST), facial.clamp(LEAST, HIGHEST))
    }
}

/// What has gone of a site, millimetres, 0 or more.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lost {
    /// Of the ridge's width.
    pub width: f64,
    /// Of the height of the facial crest.
    pub facial: f64,
    /// Of the height of the oral crest.
    pub oral: f64,
}

impl Lost {
    /// In the end.
    pub(super) fn of(width: f64, facial: f64) -> Self {
        Self { width, facial, oral: facial.min(1.44) }
    }

    /// What of it has gone after so many months.
    #[must_use]
    pub fn after(self, months: f64) -> Self {
        let [width, height] = [WIDTH, HEIGHT].map(|tau| share(months, tau));
        Self { width: self.width * width, facial: self.facial * height, oral: self.oral * height }
    }
}
