//! Which tooth: the two-digit notation of ISO 3950.

use core::fmt;
use serde::{Deserialize, Serialize};

/// A permanent tooth, ISO 3950: quadrant 1 to 4, position 1 to 8 from the midline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct Tooth(u8);

/// Which jaw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Jaw {
    /// Upper jaw.
    Maxilla,
    /// Lower jaw.
    Mandible,
}

/// What sort of tooth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// First incisor.
    CentralIncisor,
    /// Second incisor.
    LateralIncisor,
    /// Canine.
    Canine,
    /// First premolar.
    FirstPremolar,
    /// Second premolar.
    SecondPremolar,
    /// Any molar.
    Molar,
}

impl Kind {
    /// The sort of tooth at a place of a quadrant, counted from the midline.
    #[must_use]
    pub const fn at(position: u8) -> Self {
        match position {
            1 => Self::CentralIncisor,
            2 => Self::LateralIncisor,
            3 => Self::Canine,
            4 => Self::FirstPremolar,
            5 => Self::SecondPremolar,
            _ => Self::Molar,
        }
    }
}

/// A number that names no permanent tooth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct UnknownTooth(
    /// The number as it came.
    pub u8,
);

impl fmt::Display for UnknownTooth {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "found tooth {}, expected two digits of ISO 3950: quadrant 1 to 4, then 1 to 8 from the midline",
            self.0
        )
    }
}

impl core::error::Error for UnknownTooth {}

impl Tooth {
    /// From its two digits.
    ///
    /// # Errors
    /// [`UnknownTooth`] where the digits name none.
    pub const fn new(iso: u8) -> Result<Self, UnknownTooth> {
        let (quadrant, position) = (iso / 10, iso % 10);
        if matches!(quadrant, 1..=4) && matches!(position, 1..=8) {
            Ok(Self(iso))
        } else {
            Err(UnknownTooth(iso))
        }
    }

    /// The two digits.
    #[must_use]
    pub const fn iso(self) -> u8 {
        self.0
    }

    /// 1 to 4.
    #[must_use]
    pub const fn quadrant(self) -> u8 {
        self.0 / 10
    }

    /// 1 to 8 from the midline.
    #[must_use]
    pub const fn position(self) -> u8 {
        self.0 % 10
    }

    /// Its jaw.
    #[must_use]
    pub const fn jaw(self) -> Jaw {
        if self.0 < 30 { Jaw::Maxilla } else { Jaw::Mandible }
    }

    /// Its sort.
    #[must_use]
    pub const fn kind(self) -> Kind {
        Kind::at(self.position())
    }

    /// Whether it is an incisor or a canine.
    #[must_use]
    pub const fn is_anterior(self) -> bool {
        self.position() <= 3
    }

    /// Whether this side of the mouth is drawn and exported with x mirrored (quadrants 2 and 4).
    #[must_use]
    pub const fn is_mirrored(self) -> bool {
        self.quadrant().is_multiple_of(2)
    }

    /// The number from 1 to 32, counted from the upper right third molar clockwise as seen from the front.
    #[must_use]
    pub const fn one_to_thirty_two(self) -> u8 {
        let position = self.position();
        match self.quadrant() {
            1 => 9 - position,
            2 => 8 + position,
            3 => 25 - position,
            _ => 24 + position,
        }
    }

    /// In words: *upper right central incisor*.
    #[must_use]
    pub fn words(self) -> String {
        let (jaw, side) = match self.quadrant() {
            1 => ("upper", "right"),
            2 => ("upper", "left"),
            3 => ("lower", "left"),
            _ => ("lower", "right"),
        };
        let kind = match self.position() {
            1 => "central incisor",
            2 => "lateral incisor",
            3 => "canine",
            4 => "first premolar",
            5 => "second premolar",
            6 => "first molar",
            7 => "second molar",
            _ => "third molar",
        };
        format!("{jaw} {side} {kind}")
    }
}

impl TryFrom<u8> for Tooth {
    type Error = UnknownTooth;
    fn try_from(iso: u8) -> Result<Self, UnknownTooth> {
        Self::new(iso)
    }
}

impl From<Tooth> for u8 {
    fn from(tooth: Tooth) -> Self {
        tooth.0
    }
}

impl fmt::Display for Tooth {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_count_to_thirty_two_runs_from_upper_right_to_lower_right() {
        let count = |iso| Tooth::new(iso).unwrap().one_to_thirty_two();
        assert_eq!([18, 11, 21, 28, 38, 31, 41, 48].map(count), [1, 8, 9, 16, 17, 24, 25, 32]);
    }

    #[test]
    fn digits_that_name_no_tooth_are_refused() {
        for iso in [0, 10, 19, 51, 99, 255] {
            assert_eq!(Tooth::new(iso), Err(UnknownTooth(iso)));
        }
    }
}
