//! The numbers that decide: `ChaCha8` by name, keyed by the case, one stream for each matter.

use crate::chart::Case;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// What chance decides. The number is the stream's: it is never reused, and a new matter takes the
/// next one. Past the streams of drawn fields and before those of exposures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u64)]
pub enum Matter {
    /// The facial plate at extraction.
    Plate = 1000,
    /// Seating torque: of the first implant, of a second, of one in the healed site.
    Torque = 1001,
    /// The lining of the sinus.
    Sinus = 1002,
    /// Bleeding after closure.
    Bleed = 1003,
    /// The lip the next day.
    Numbness = 1004,
    /// The membrane at review.
    Exposure = 1005,
    /// The floor of the mouth.
    Floor = 1006,
    /// The wound in the first weeks.
    Infection = 1007,
    /// The tip of the root at extraction.
    Tip = 1008,
    /// What a site heals to; what follows has a hundred of its own.
    Healing = 1100,
    /// How far courses of healing lie apart.
    Fan = 1101,
}

/// The numbers of one matter in one case, in order.
#[derive(Debug, Clone)]
pub struct Chance(ChaCha8Rng);

impl Chance {
    /// The numbers of a matter. See [`chance_of`].
    #[must_use]
    pub fn of(case: &Case, matter: Matter) -> Self {
        let mut key = [0_u8; 32];
        key[..8].copy_from_slice(&chance_of(case).to_le_bytes());
        // No drawn field and no exposure has this mark.
        key[14] = 0x40;
        let mut generator = ChaCha8Rng::from_seed(key);
        generator.set_stream(matter as u64);
        Self(generator)
    }

    /// Uniform in [0, 1), on a grid of 2^-53.
    pub fn unit(&mut self) -> f64 {
        const STEP: f64 = 1.0 / 9_007_199_254_740_992.0;
        (self.0.next_u64() >> 11) as f64 * STEP
    }

    /// Standard normal by the method of Box and Muller; one of its pair is used.
    pub fn standard(&mut self) -> f64 {
        // 1 - unit lies in (0, 1], where the logarithm is finite.
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.unit()));
        radius * libm::cos(core::f64::consts::TAU * self.unit())
    }

    /// Uniform from `low` up to `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }
}

/// What decides the events of a case: what it says of that itself, or else what a case keeps when it
/// is written out and read back, and nothing that a neighbouring case changes: its title, its patient,
/// and what was read off the patient. So an address and the file that was written from it meet the
/// same events.
#[must_use]
pub fn chance_of(case: &Case) -> i64 {
    if let Some(chance) = case.chance {
        return chance;
    }
    let mut hash = Hash(0xcbf2_9ce4_8422_2325);
    hash.bytes(case.title.as_bytes());
    hash.bytes(case.patient.name.as_bytes());
    hash.bytes(&case.patient.age.to_le_bytes());
    let readings = &case.readings;
    for depth in readings.sounding.iter().map(|one| one.depth).chain(readings.probing) {
        hash.bytes(&depth.get().to_bits().to_le_bytes());
    }
    i64::from_le_bytes(hash.0.to_le_bytes())
}

/// Fowler-Noll-Vo 1a, 64 bit.
struct Hash(u64);

impl Hash {
    fn bytes(&mut self, bytes: &[u8]) {
        for byte in bytes.iter().chain(&[0]) {
            self.0 ^= u64::from(*byte);
            self.0 = self.0.wrapping_mul(0x0100_0000_01b3);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn the_numbers_of_a_case_do_not_change() {
        const FIRST: [u64; 2] = [4_606_725_734_176_308_632, 4_605_769_351_267_417_156];
        // Value stability: another number here is another event in a case that somebody handed on.
        let case = Trial::plain().case;
        let mut chance = Chance::of(&case, Matter::Plate);
        assert_eq!([chance.unit(), chance.unit()].map(f64::to_bits), FIRST);
    }

    #[test]
    fn a_changed_wall_keeps_its_chance_and_another_patient_has_another() {
        let case = Trial::plain().case;
        let first = |case: &Case| Chance::of(case, Matter::Plate).unit().to_bits();
        let mut other = case.clone();
        other.site.socket.only_mut().unwrap().length = Mm::new(9.0);
        assert_eq!(first(&case), first(&other));
        other.patient.age += 1;
        assert_ne!(first(&case), first(&other));
    }

    #[test]
    fn the_numbers_are_spread_evenly() {
        let mut case = Trial::plain().case;
        let mut tenths = [0_u32; 10];
        for age in 0..10_000 {
            case.title = age.to_string();
            let place = (Chance::of(&case, Matter::Plate).unit() * 10.0) as usize;
            tenths[place] += 1;
        }
        // Five standard deviations of a count of 1000.
        assert!(tenths.iter().all(|count| count.abs_diff(1000) < 150), "{tenths:?}");
    }
}
