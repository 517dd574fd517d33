//! Where drawn numbers come from: `ChaCha8` by name, one stream for each drawn field.
//!
//! A field has its own stream, so that drawing one differently redraws nothing else. Every draw is
//! our own arithmetic over `next_u64`: the same bits on every target, whatever a library's
//! distributions do in a later version.

use crate::chart::Address;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// How many attempts of one seed keep to one archetype before the next is drawn: a draw that is
/// rejected does not thin out its archetype.
pub(super) const BLOCK: u32 = 16;

/// What is drawn. The number is the stream's: it is never reused, and a new field takes the next one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u64)]
pub(super) enum Field {
    Archetype = 1,
    Tooth = 2,
    Sex = 3,
    Age = 4,
    Name = 5,
    Cigarettes = 6,
    MouthSize = 7,
    RootLength = 8,
    Neck = 9,
    Widths = 10,
    Axis = 11,
    CrownAngle = 12,
    Sagittal = 13,
    FacialPlate = 14,
    OralPlate = 15,
    RidgeBeyond = 16,
    Undercut = 18,
    CrestPeaks = 19,
    CrestLoss = 20,
    OralOffset = 21,
    FacialDefect = 22,
    OralDefect = 23,
    MesialNeighbour = 24,
    DistalNeighbour = 25,
    Floor = 26,
    Canal = 27,
    Foramen = 28,
    Loop = 29,
    Nasopalatine = 30,
    Density = 31,
    Lesion = 32,
    GumThickness = 33,
    Keratinised = 34,
    Margin = 35,
    Recession = 36,
    Contacts = 37,
    Lip = 38,
    Complaint = 39,
    Wish = 40,
    History = 41,
    Gate = 42,
    Pressure = 43,
    Allergies = 44,
    GraftView = 45,
    SectionError = 46,
    Sections = 47,
    Sounding = 48,
    Probing = 49,
    Film = 50,
    Parafunction = 51,
    Opening = 52,
    BleedingScore = 53,
    CrownLength = 54,
    Trunk = 55,
    RootLengths = 56,
    RootLeans = 57,
    // Of the whole mouth; what comes next for teaching draws goes on from 61.
    RootCount = 58,
    ThirdMolar = 59,
    Septum = 60,
    // Population draws alone.
    Cause = 80,
    Phenotype = 81,
    Disease = 82,
    WallForm = 83,
    Illness = 84,
    Survey = 85,
}

/// The draws of one address.
#[derive(Debug, Clone)]
pub(super) struct Draws {
    address: Address,
}

/// The numbers of one field.
#[derive(Debug, Clone)]
pub(super) struct Stream(ChaCha8Rng);

impl Draws {
    pub(super) const fn of(address: Address) -> Self {
        Self { address }
    }

    pub(super) const fn address(&self) -> Address {
        self.address
    }

    /// The stream of a field in this very attempt.
    pub(super) fn stream(&self, field: Field) -> Stream {
        self.keyed(field, self.address.attempt, 0)
    }

    /// The stream of a field that a whole block of attempts shares.
    pub(super) fn block_stream(&self, field: Field) -> Stream {
        self.keyed(field, self.address.attempt / BLOCK, 1)
    }

    /// The key is the address itself, byte by byte: no mixing function stands between.
    fn keyed(&self, field: Field, attempt: u32, level: u8) -> Stream {
        let mut key = [0_u8; 32];
        key[..8].copy_from_slice(&self.address.seed.to_le_bytes());
        key[8..12].copy_from_slice(&attempt.to_le_bytes());
        key[12..14].copy_from_slice(&self.address.generator.to_le_bytes());
        key[14] = level;
        let mut generator = ChaCha8Rng::from_seed(key);
        generator.set_stream(field as u64);
        Stream(generator)
    }
}

impl Stream {
    /// Uniform in [0, 1), on a grid of 2^-53.
    pub(super) fn unit(&mut self) -> f64 {
        const STEP: f64 = 1.0 / 9_007_199_254_740_992.0;
        (self.0.next_u64() >> 11) as f64 * STEP
    }

    /// Uniform from `low` up to `high`.
    pub(super) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// A whole number from 0 to `count - 1`; 0 when `count` is 0. The high half of a product: off
    /// from uniform by less than `count` in 2^64.
    pub(super) fn whole(&mut self, count: u64) -> u64 {
        let product = u128::from(self.0.next_u64()) * u128::from(count);
        (product >> 64) as u64
    }

    /// True with this probability.
    pub(super) fn chance(&mut self, probability: f64) -> bool {
        self.unit() < probability
    }

    /// Standard normal by the method of Box and Muller; one of its pair is used.
    pub(super) fn standard(&mut self) -> f64 {
        // 1 - unit lies in (0, 1], where the logarithm is finite.
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.unit()));
        radius * libm::cos(2.0 * core::f64::consts::PI * self.unit())
    }

    /// Normal, drawn again until it lies within; clamped after 64 draws in vain. Where the site
    /// leaves no room between the limits, the lower one holds.
    pub(super) fn normal_within(&mut self, mean: f64, sd: f64, low: f64, high: f64) -> f64 {
        let high = high.max(low);
        for _ in 0..64 {
            let value = mean + sd * self.standard();
            if (low..=high).contains(&value) {
                return value;
            }
        }
        mean.clamp(low, high)
    }

    /// One of a list.
    pub(super) fn pick<T: Copy>(&mut self, from: &[T], otherwise: T) -> T {
        let place = self.whole(from.len() as u64);
        usize::try_from(place).ok().and_then(|place| from.get(place)).copied().unwrap_or(otherwise)
    }

    /// One of a list with weights; the last when rounding leaves a rest.
    pub(super) fn weighted<T: Copy>(&mut self, from: &[(T, f64)], otherwise: T) -> T {
        let whole: f64 = from.iter().map(|(_, weight)| weight).sum();
        let mut rest = self.unit() * whole;
        for (one, weight) in from {
            if rest < *weight {
                return *one;
            }
            rest -= weight;
        }
        from.last().map_or(otherwise, |(one, _)| *one)
    }
}

/// A drawn length as the case keeps it: on a grid of 0.01, so that a case that is written out reads
/// back to the same bits and to numbers that a person can read.
pub(super) fn hundredths(value: f64) -> f64 {
    // The double nearest to the decimal; a negative zero becomes zero.
    libm::round(value * 100.0) / 100.0 + 0.0
}

/// Rounded to tenths, as reports give lengths.
pub(super) fn tenths(value: f64) -> f64 {
    libm::round(value * 10.0) / 10.0 + 0.0
}

/// Rounded to halves, as a probe is read.
pub(super) fn halves(value: f64) -> f64 {
    libm::round(value * 2.0) / 2.0 + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn draws(seed: u64, attempt: u32) -> Draws {
        Draws::of(Address { format: 1, generator: 1, seed, attempt, changed: None })
    }

    #[test]
    fn the_first_numbers_of_a_field_never_change() {
        // Worked out apart from this code: 8 rounds of the published ChaCha block function, written
        // in Python, key = seed 2024, attempt 0, generator 1, level 0 (little-endian), stream 8.
        let expected =
            [3_233_877_645_827_654_797, 4_623_080_900_647_278_427, 12_202_571_863_072_241_915];
        let mut stream = draws(2024, 0).stream(Field::RootLength);
        let first: Vec<u64> = (0..3).map(|_| stream.0.next_u64()).collect();
        assert_eq!(first, expected);
    }

    #[test]
    fn fields_seeds_attempts_and_levels_have_streams_of_their_own() {
        let mut first = vec![
            draws(1, 0).stream(Field::Age).unit(),
            draws(1, 0).stream(Field::Sex).unit(),
            draws(2, 0).stream(Field::Age).unit(),
            draws(1, 1).stream(Field::Age).unit(),
            draws(1, 0).block_stream(Field::Age).unit(),
        ];
        first.sort_by(f64::total_cmp);
        first.dedup();
        assert_eq!(first.len(), 5);
    }

    #[test]
    fn a_block_of_attempts_shares_its_block_streams() {
        let at = |attempt| draws(9, attempt).block_stream(Field::Archetype).unit();
        assert_eq!(at(0).to_bits(), at(BLOCK - 1).to_bits());
        assert_ne!(at(0).to_bits(), at(BLOCK).to_bits());
    }

    #[test]
    fn normal_draws_have_their_mean_and_spread_and_keep_within() {
        let mut stream = draws(5, 0).stream(Field::Age);
        let n = 20_000;
        let values: Vec<f64> = (0..n).map(|_| stream.standard()).collect();
        let mean = values.iter().sum::<f64>() / f64::from(n);
        let variance = values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / f64::from(n);
        // Four standard errors of each at this count.
        assert!(mean.abs() < 4.0 / libm::sqrt(f64::from(n)), "{mean}");
        assert!((variance - 1.0).abs() < 4.0 * libm::sqrt(2.0 / f64::from(n)), "{variance}");
        for _ in 0..1000 {
            assert!((-0.5..=0.2).contains(&stream.normal_within(0.0, 1.0, -0.5, 0.2)));
        }
        assert_eq!(stream.normal_within(0.0, 0.1, 50.0, 60.0), 50.0);
    }

    #[test]
    fn whole_numbers_reach_both_ends_and_weights_are_kept() {
        let mut stream = draws(6, 0).stream(Field::Age);
        let mut counts = [0_u32; 3];
        for _ in 0..9000 {
            counts[usize::try_from(stream.whole(3)).unwrap()] += 1;
        }
        assert!(counts.iter().all(|count| (2800..3200).contains(count)), "{counts:?}");
        let heavy = (0..9000).filter(|_| stream.weighted(&[(true, 2.0), (false, 1.0)], false));
        assert!((5820..6180).contains(&heavy.count()));
    }
}
