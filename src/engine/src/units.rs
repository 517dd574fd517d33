//! Quantities with their units.
//!
//! Each type holds a finite `f64` in one base unit. Only the operators that mean something exist:
//! a length over a length is a bare number, a length plus an angle does not compile.
//!
//! ```compile_fail
//! use engine::units::{Deg, Mm};
//! let nonsense = Mm::new(1.0) + Deg::new(1.0);
//! ```

mod decimal;

pub use decimal::decimal;

use core::fmt;
use core::ops::{Add, Div, Mul, Neg, Sub};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// A limit compares the value rounded to this many millimetres (degrees, Ncm): the one place where
/// the project says how exact a comparison is.
pub const COMPARISON_STEP: f64 = 0.001;

/// Rounds a measured value to [`COMPARISON_STEP`], so that 1.9999999 against a limit of 2 is 2.
#[must_use]
pub fn comparable(value: f64) -> f64 {
    let scaled = value / COMPARISON_STEP;
    let whole = libm::round(scaled);
    // Dividing by 1000 gives the double nearest to the decimal; multiplying by 0.001 does not.
    whole / 1000.0
}

/// What was wrong with a number that was to become a quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NotFinite {
    /// The value as it came.
    pub found: f64,
    /// The unit it was to have.
    pub unit: &'static str,
}

impl fmt::Display for NotFinite {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "found {}, expected a finite number of {}", self.found, self.unit)
    }
}

impl core::error::Error for NotFinite {}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $unit:literal, $places:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// The unit as it is printed.
            pub const UNIT: &'static str = $unit;
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            /// Wraps a finite literal. Input from people goes through [`Self::checked`].
            ///
            /// # Panics
            /// On NaN or an infinity; in a `const` that is a compile error.
            #[must_use]
            pub const fn new(value: f64) -> Self {
                assert!(value.is_finite(), "a quantity is finite");
                Self(value)
            }

            /// Wraps a value that may be anything.
            ///
            /// # Errors
            /// [`NotFinite`] on NaN or an infinity.
            pub const fn checked(value: f64) -> Result<Self, NotFinite> {
                if value.is_finite() {
                    Ok(Self(value))
                } else {
                    Err(NotFinite { found: value, unit: $unit })
                }
            }

            /// The bare number, for drawing, serialising and arithmetic inside the engine.
            #[must_use]
            pub const fn get(self) -> f64 {
                self.0
            }

            /// The smaller of two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                if other.0 < self.0 { other } else { self }
            }

            /// The larger of two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                if other.0 > self.0 { other } else { self }
            }

            /// Its size without its sign.
            #[must_use]
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self(self.0 + other.0) }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self(self.0 - other.0) }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self { Self(-self.0) }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self { Self(self.0 * factor) }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self { Self(self.0 / divisor) }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 { self.0 / other.0 }
        }
        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(values: I) -> Self {
                values.fold(Self::ZERO, Add::add)
            }
        }
        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                let places = f.precision().unwrap_or($places);
                write!(f, "{:.*} {}", places, self.0, $unit)
            }
        }
        impl fmt::Debug for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{} {}", self.0, $unit)
            }
        }
        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_f64(self.0)
            }
        }
        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                Self::checked(f64::deserialize(from)?).map_err(de::Error::custom)
            }
        }
    };
}

quantity!(
    /// A length in millimetres.
    Mm, "mm", 1
);
quantity!(
    /// An area in square millimetres.
    Mm2, "mm2", 1
);
quantity!(
    /// A volume in cubic millimetres; 1000 of them are one cc.
    Mm3, "mm3", 1
);
quantity!(
    /// An angle in degrees.
    Deg, "degrees", 0
);
quantity!(
    /// A seating torque in newton centimetres.
    Ncm, "Ncm", 0
);
quantity!(
    /// A force in newton.
    Newton, "N", 2
);
quantity!(
    /// A bare ratio.
    Ratio, "", 2
);

impl Mul for Mm {
    type Output = Mm2;
    fn mul(self, other: Self) -> Mm2 {
        Mm2(self.0 * other.0)
    }
}

impl Mul<Mm> for Mm2 {
    type Output = Mm3;
    fn mul(self, other: Mm) -> Mm3 {
        Mm3(self.0 * other.0)
    }
}

impl Mm {
    /// From the integer steps of a plan: 0.1 mm each.
    #[must_use]
    pub const fn from_tenths(tenths: i32) -> Self {
        // An integer over ten is the double nearest to that decimal.
        Self(tenths as f64 / 10.0)
    }
}

impl Mm3 {
    /// In cubic centimetres, as grafts are bought.
    #[must_use]
    pub const fn cc(self) -> f64 {
        self.0 / 1000.0
    }

    /// From cubic centimetres.
    #[must_use]
    pub const fn from_cc(cc: f64) -> Self {
        Self(cc * 1000.0)
    }
}

impl Deg {
    /// In radians, for `libm`.
    #[must_use]
    pub const fn radians(self) -> f64 {
        self.0 * (core::f64::consts::PI / 180.0)
    }

    /// From radians.
    #[must_use]
    pub const fn from_radians(radians: f64) -> Self {
        Self(radians * (180.0 / core::f64::consts::PI))
    }
}

/// A number that is refused, as the message shows it: what is no number is named, and what is very
/// large or very small is shortened.
#[derive(Debug, Clone, Copy)]
pub struct Found(pub f64);

impl fmt::Display for Found {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.abs();
        if self.0.is_nan() {
            f.write_str("nan, which is no number")
        } else if size.is_infinite() {
            f.write_str("an infinite number")
        } else if size >= 1e9 || (size > 0.0 && size < 1e-9) {
            write!(f, "{:e}", self.0)
        } else {
            write!(f, "{}", self.0)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_finite_stops_at_the_border_by_name() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let refused = Mm::checked(bad).unwrap_err();
            assert!(refused.to_string().contains("finite number of mm"), "{refused}");
        }
    }

    #[test]
    fn a_comparison_rounds_to_a_thousandth_and_no_coarser() {
        assert_eq!(comparable(1.999_999_9), 2.0);
        assert_eq!(comparable(1.999), 1.999);
        assert_eq!(comparable(-0.000_4), 0.0);
    }

    #[test]
    fn tenths_are_the_nearest_doubles() {
        assert_eq!(Mm::from_tenths(19), Mm::new(1.9));
        assert_eq!(Mm::from_tenths(-7), Mm::new(-0.7));
    }

    #[test]
    fn a_quantity_prints_its_unit_and_as_many_places_as_asked() {
        assert_eq!(format!("{}", Mm::new(1.25)), "1.2 mm");
        assert_eq!(format!("{:.2}", Mm::new(1.25)), "1.25 mm");
        assert_eq!(format!("{}", Ncm::new(34.6)), "35 Ncm");
    }

    #[test]
    fn reading_a_quantity_back_gives_the_same_bits() {
        let written = serde_json::to_string(&Mm::new(0.1 + 0.2)).unwrap();
        let read: Mm = serde_json::from_str(&written).unwrap();
        assert_eq!(read.get().to_bits(), (0.1_f64 + 0.2).to_bits());
    }

    #[test]
    fn a_refused_number_is_named_or_kept_short() {
        let shown: Vec<String> = [f64::NAN, f64::NEG_INFINITY, 1e308, -4.0, 4.25, 1e-320, 0.0]
            .map(|number| Found(number).to_string())
            .to_vec();
        let expected =
            ["nan, which is no number", "an infinite number", "1e308", "-4", "4.25", "1e-320", "0"];
        assert_eq!(shown, expected);
    }
}
