//! Noise of one exposure: the same for the same case and the same exposure number.

use crate::chart::Case;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Exposures have streams of their own, past those of drawn cases.
const STREAM: u64 = 2000;

/// The key of a case: its address, byte by byte; of a case that was written out, its title.
#[must_use]
pub fn key(case: &Case) -> [u8; 32] {
    let mut key = [0_u8; 32];
    if let Some(address) = case.address {
        key[..8].copy_from_slice(&address.seed.to_le_bytes());
        key[8..12].copy_from_slice(&address.attempt.to_le_bytes());
        key[12..14].copy_from_slice(&address.generator.to_le_bytes());
    } else {
        for (place, byte) in case.title.bytes().enumerate() {
            key[place % 30] = key[place % 30].wrapping_mul(31).wrapping_add(byte);
        }
    }
    // No drawn field has this level.
    key[14] ^= 0x80;
    key
}

/// The noise.
#[derive(Debug, Clone)]
pub struct Noise(ChaCha8Rng);

impl Noise {
    /// Of an exposure of a key: 0 for the first film or section of a case, and so on.
    #[must_use]
    pub fn of(key: [u8; 32], exposure: u32) -> Self {
        let mut generator = ChaCha8Rng::from_seed(key);
        generator.set_stream(STREAM + u64::from(exposure));
        Self(generator)
    }

    /// Nearly normal with mean 0 and spread 1: four uniform numbers of 16 bits, summed. Its tails end at
    /// 3.5, which no eye misses in a picture.
    pub fn normal(&mut self) -> f64 {
        let bits = self.0.next_u64();
        let sum: u64 = (0..4).map(|part| (bits >> (16 * part)) & 0xffff).sum();
        // Mean 2 and variance 4/12 of four uniform numbers; a half for the middle of each cell.
        ((sum + 2) as f64 / 65_536.0 - 2.0) * 1.732_050_807_568_877_2
    }

    /// Uniform from `low` up to `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        const STEP: f64 = 1.0 / 9_007_199_254_740_992.0;
        low + (high - low) * ((self.0.next_u64() >> 11) as f64 * STEP)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn noise_has_its_mean_and_spread() {
        let mut noise = Noise::of([5; 32], 0);
        let values: Vec<f64> = (0..40_000).map(|_| noise.normal()).collect();
        let mean = values.iter().sum::<f64>() / 40_000.0;
        let variance = values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / 40_000.0;
        assert!(mean.abs() < 0.02 && (variance - 1.0).abs() < 0.03, "{mean} {variance}");
    }

    #[test]
    fn the_same_exposure_is_the_same_and_the_next_one_is_not() {
        let case = Trial::plain().case;
        let first = |case: &Case, exposure| Noise::of(key(case), exposure).normal().to_bits();
        assert_eq!(first(&case, 3), first(&case, 3));
        assert_ne!(first(&case, 3), first(&case, 4));
        let other = Case { title: "Another".to_owned(), ..case.clone() };
        assert_ne!(first(&case, 3), first(&other, 3));
    }
}
