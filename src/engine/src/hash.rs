//! Fowler-Noll-Vo 1a, 64 bits: enough to tell two things apart, short enough to read.

/// A hash in the making.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fnv(u64);

impl Default for Fnv {
    fn default() -> Self {
        Self::new()
    }
}

impl Fnv {
    /// The hash of nothing: the published 64-bit offset.
    #[must_use]
    pub const fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    /// Takes bytes in, with the published prime.
    pub fn bytes(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 ^= u64::from(*byte);
            self.0 = self.0.wrapping_mul(0x0100_0000_01b3);
        }
    }

    /// Takes a text in and an end mark, so that two texts never run together.
    pub fn text(&mut self, text: &str) {
        self.bytes(text.as_bytes());
        self.bytes(&[0]);
    }

    /// The hash.
    #[must_use]
    pub const fn value(&self) -> u64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hash_is_the_published_one() {
        // Test vector of the FNV authors: FNV-1a 64 of "foobar".
        let mut hash = Fnv::new();
        hash.bytes(b"foobar");
        assert_eq!(hash.value(), 0x8594_4171_f739_67e8);
    }
}
