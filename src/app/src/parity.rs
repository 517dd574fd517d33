//! One number for a range of computed things, the same natively, on the page and in the worker.

use std::fmt::Write;

use engine::plan::Step;

/// The digest of the things numbered `first .. first + count`, as 16 hexadecimal digits.
#[must_use]
pub fn digest(first: u32, count: u32) -> String {
    let mut hash = Fnv::START;
    for number in 0..count {
        thing(first.wrapping_add(number), &mut hash);
    }
    format!("{:016x}", hash.0)
}

/// Writes thing number `number` out in full: whatever differs between targets must show in it.
fn thing(number: u32, into: &mut Fnv) {
    let step = Step::ALL[number as usize % Step::ALL.len()];
    // A hash takes any text, so writing to it cannot fail.
    let _ = write!(into, "{number} {} {};", step.key(), step.label());
}

/// FNV-1a, 64 bits: enough to tell two runs apart, short enough to read.
struct Fnv(u64);

impl Fnv {
    const START: Self = Self(0xcbf2_9ce4_8422_2325);
    const PRIME: u64 = 0x0000_0100_0000_01b3;
}

impl Write for Fnv {
    fn write_str(&mut self, text: &str) -> std::fmt::Result {
        for byte in text.bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(Self::PRIME);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_digest_depends_on_where_the_range_starts_and_how_long_it_is() {
        assert_eq!(digest(0, 10), digest(0, 10));
        assert_ne!(digest(0, 10), digest(1, 10));
        assert_ne!(digest(0, 10), digest(0, 11));
    }

    #[test]
    fn the_digest_of_nothing_is_the_hash_s_published_start() {
        assert_eq!(digest(7, 0), "cbf29ce484222325");
    }
}
