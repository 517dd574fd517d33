//! Numbers as bits, and bits as bytes by how likely they were: an adaptive binary range coder of the
//! common kind (32-bit range, carry held back), with chances that learn quickly, because what is kept
//! is short. Whole numbers only, so that every browser writes and reads the same.

/// Below this the range has lost a byte.
const NARROW: u32 = 1 << 24;
/// A chance never comes nearer to nothing or to certain than this, of 65,536.
const LEAST: i32 = 256;
/// After so many bits a chance learns no slower any more [ours].
const SLOWEST: i32 = 24;
/// No reading takes more bits than this: a text that was tampered with must not keep a page busy.
const MOST_BITS: u32 = 1 << 22;

/// How likely a bit is to be 0, of 65,536, and how often it has been seen.
#[derive(Debug, Clone, Copy)]
pub struct Chance {
    none: i32,
    seen: i32,
}

impl Chance {
    /// Nothing is known.
    pub const EVEN: Self = Self { none: 1 << 15, seen: 0 };

    /// The part of a range that stands for 0.
    const fn bound(self, range: u32) -> u32 {
        (range >> 16) * self.none.unsigned_abs()
    }

    fn learn(&mut self, bit: bool) {
        let goal = if bit { 0 } else { 1 << 16 };
        self.none += 2 * (goal - self.none) / (2 * self.seen + 3);
        self.none = self.none.clamp(LEAST, (1 << 16) - LEAST);
        self.seen = (self.seen + 1).min(SLOWEST);
    }
}

/// Where bits go or come from.
pub trait Bits {
    /// One bit: the writer takes it and hands it back, the reader says what was written.
    fn bit(&mut self, chance: &mut Chance, bit: bool) -> bool;
}

/// Writes.
#[derive(Debug)]
pub struct Writer {
    low: u64,
    range: u32,
    held: u8,
    pending: usize,
    bytes: Vec<u8>,
}

impl Writer {
    /// Nothing written.
    pub const fn new() -> Self {
        Self { low: 0, range: u32::MAX, held: 0, pending: 1, bytes: Vec::new() }
    }

    /// What was written.
    pub fn bytes(mut self) -> Vec<u8> {
        for _ in 0..5 {
            self.shift();
        }
        // The first byte only ever took the carry that cannot come.
        self.bytes.drain(..1);
        self.bytes
    }

    fn shift(&mut self) {
        let [_, _, _, carry, top, ..] = self.low.to_be_bytes();
        if top < 0xFF || carry != 0 {
            self.bytes.push(self.held.wrapping_add(carry));
            let rest = self.pending.saturating_sub(1);
            self.bytes.resize(self.bytes.len() + rest, 0xFF_u8.wrapping_add(carry));
            self.pending = 0;
            self.held = top;
        }
        self.pending += 1;
        self.low = (self.low & 0x00FF_FFFF) << 8;
    }
}

impl Bits for Writer {
    fn bit(&mut self, chance: &mut Chance, bit: bool) -> bool {
        let bound = chance.bound(self.range);
        if bit {
            self.low += u64::from(bound);
            self.range -= bound;
        } else {
            self.range = bound;
        }
        chance.learn(bit);
        while self.range < NARROW {
            self.range <<= 8;
            self.shift();
        }
        bit
    }
}

/// Reads.
#[derive(Debug)]
pub struct Reader<'a> {
    code: u32,
    range: u32,
    bytes: &'a [u8],
    at: usize,
    bits: u32,
}

impl<'a> Reader<'a> {
    /// Of bytes that a writer made.
    pub fn new(bytes: &'a [u8]) -> Self {
        let mut reader = Self { code: 0, range: u32::MAX, bytes, at: 0, bits: 0 };
        for _ in 0..4 {
            reader.take();
        }
        reader
    }

    fn take(&mut self) {
        let byte = self.bytes.get(self.at).copied().unwrap_or(0);
        self.at += 1;
        self.code = (self.code << 8) | u32::from(byte);
    }

    /// Whether more was read than there is: what came is not what was written.
    pub const fn is_spent(&self) -> bool {
        self.at > self.bytes.len() || self.bits > MOST_BITS
    }

    /// Whether all was read and nothing stands behind it.
    pub const fn is_at_the_end(&self) -> bool {
        self.at == self.bytes.len()
    }
}

impl Bits for Reader<'_> {
    fn bit(&mut self, chance: &mut Chance, _: bool) -> bool {
        let bound = chance.bound(self.range);
        let bit = self.code >= bound;
        if bit {
            self.code -= bound;
            self.range -= bound;
        } else {
            self.range = bound;
        }
        chance.learn(bit);
        self.bits = self.bits.saturating_add(1);
        while self.range < NARROW {
            self.range <<= 8;
            self.take();
        }
        bit
    }
}

/// Either of the two, so that what is said of numbers is compiled once: it weighs in the page.
#[derive(Debug)]
pub enum Coder<'a> {
    /// Writes.
    Writer(Writer),
    /// Reads.
    Reader(Reader<'a>),
}

impl Coder<'_> {
    /// Whether a reader read more than there is.
    pub const fn is_spent(&self) -> bool {
        matches!(self, Self::Reader(reader) if reader.is_spent())
    }
}

impl Bits for Coder<'_> {
    fn bit(&mut self, chance: &mut Chance, bit: bool) -> bool {
        match self {
            Self::Writer(writer) => writer.bit(chance, bit),
            Self::Reader(reader) => reader.bit(chance, bit),
        }
    }
}

/// Numbers, each under a subject: what is said of one subject teaches nothing about another.
#[derive(Debug)]
pub struct Numbers<B> {
    /// Where the bits go or come from.
    pub bits: B,
    /// What was learnt of each subject, in their order.
    chances: Vec<((u16, u32), Chance)>,
}

impl<B: Bits> Numbers<B> {
    /// Nothing learnt.
    pub const fn new(bits: B) -> Self {
        Self { bits, chances: Vec::new() }
    }

    fn bit(&mut self, about: u16, node: u32, bit: bool) -> bool {
        let key = (about, node);
        let at = self.chances.partition_point(|(one, _)| *one < key);
        if self.chances.get(at).is_none_or(|(one, _)| *one != key) {
            self.chances.insert(at, (key, Chance::EVEN));
        }
        let chance = self.chances.get_mut(at);
        chance.is_some_and(|(_, chance)| self.bits.bit(chance, bit))
    }

    /// A yes or a no.
    pub fn flag(&mut self, about: u16, flag: bool) -> bool {
        self.bit(about, 0, flag)
    }

    /// A number below 2 to the `width`, which is at most 16: as a way down a tree.
    pub fn tree(&mut self, about: u16, width: u32, number: u32) -> u32 {
        let mut node = 1;
        for place in (0..width.min(16)).rev() {
            let bit = self.bit(about, node, (number >> place) & 1 == 1);
            node = (node << 1) | u32::from(bit);
        }
        node - (1 << width.min(16))
    }

    /// Sixteen bits of which nothing is known.
    pub fn even(&mut self, number: u32) -> u32 {
        (0..16).rev().fold(0, |found, place| {
            let bit = self.bits.bit(&mut Chance::EVEN.clone(), (number >> place) & 1 == 1);
            (found << 1) | u32::from(bit)
        })
    }

    /// One of `count` places; a reader may find one past them.
    pub fn place(&mut self, about: u16, count: usize, place: usize) -> usize {
        let last = u32::try_from(count.saturating_sub(1)).unwrap_or(u32::MAX);
        let place = u32::try_from(place).unwrap_or(u32::MAX);
        let found = self.tree(about, u32::BITS - last.leading_zeros(), place);
        usize::try_from(found).unwrap_or(usize::MAX)
    }

    /// Any number: how many bits it has, then all but the first of them.
    pub fn size(&mut self, about: u16, number: u64) -> u64 {
        let width = self.tree(about, 7, u64::BITS - number.leading_zeros());
        if width == 0 || width > u64::BITS {
            return 0;
        }
        let mut found = 1;
        for place in (0..width - 1).rev() {
            let bit = (number >> place) & 1 == 1;
            // The first bits of small numbers say something, the rest is noise.
            let bit = if found < 4 {
                self.bit(about, 0x1_0000 | (width << 4) | u32::try_from(found).unwrap_or(0), bit)
            } else {
                self.bits.bit(&mut Chance::EVEN.clone(), bit)
            };
            found = (found << 1) | u64::from(bit);
        }
        found
    }

    /// Any number with its sign, small ones of either sign first.
    pub fn signed(&mut self, about: u16, number: i64) -> i64 {
        let folded = (number.cast_unsigned() << 1) ^ (number >> 63).cast_unsigned();
        let found = self.size(about, folded);
        (found >> 1).cast_signed() ^ -((found & 1).cast_signed())
    }

    /// Bytes, after what stood in this place before: how much of it stays, what follows.
    pub fn bytes(&mut self, about: u16, before: &[u8], bytes: &[u8], most: usize) -> Vec<u8> {
        let alike = before.iter().zip(bytes).take_while(|(one, other)| one == other).count();
        let alike = self.size(about, u64::try_from(alike).unwrap_or(0));
        let alike = usize::try_from(alike).unwrap_or(usize::MAX).min(before.len());
        let rest = bytes.get(alike..).unwrap_or_default();
        let length = self.size(about + 1, u64::try_from(rest.len()).unwrap_or(0));
        let length = usize::try_from(length).unwrap_or(usize::MAX).min(most);
        let mut found = before.get(..alike).unwrap_or_default().to_vec();
        for place in 0..length {
            let byte = rest.get(place).copied().unwrap_or(0);
            let byte = self.tree(about + 2, 8, u32::from(byte));
            found.push(u8::try_from(byte).unwrap_or(0));
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::hash::Fnv;

    /// Numbers that look like chance.
    fn numbers(seed: u64) -> impl Iterator<Item = u64> {
        let mut hash = Fnv::new();
        hash.bytes(&seed.to_le_bytes());
        core::iter::repeat_with(move || {
            hash.bytes(&[7]);
            // The low bits of this hash are poor.
            hash.value() >> 16
        })
    }

    #[test]
    fn every_number_comes_back_and_the_end_is_met_exactly() {
        for seed in 0..200 {
            let list: Vec<u64> = numbers(seed).take(300).collect();
            let mut writer = Numbers::new(Writer::new());
            let run =
                |one: u64| (one % 3, u32::try_from(one >> 8 & 0xFF).unwrap(), one >> (one % 48));
            for one in &list {
                let (kind, small, any) = run(*one);
                match kind {
                    0 => drop(writer.tree(1, 8, small)),
                    1 => drop(writer.size(2, any)),
                    _ => drop(writer.signed(3, any.cast_signed() - (1 << 20))),
                }
            }
            let bytes = writer.bits.bytes();
            let mut reader = Numbers::new(Reader::new(&bytes));
            for one in &list {
                let (kind, small, any) = run(*one);
                match kind {
                    0 => assert_eq!(reader.tree(1, 8, 0), small),
                    1 => assert_eq!(reader.size(2, 0), any),
                    _ => assert_eq!(reader.signed(3, 0), any.cast_signed() - (1 << 20)),
                }
            }
            assert!(reader.bits.is_at_the_end() && !reader.bits.is_spent(), "seed {seed}");
        }
    }

    #[test]
    fn the_ends_of_the_range_of_numbers_come_back() {
        let mut writer = Numbers::new(Writer::new());
        let edges = [0, 1, 2, u64::MAX >> 1, u64::MAX];
        let signed = [i64::MIN, -1, 0, 1, i64::MAX];
        assert_eq!(edges.map(|one| writer.size(1, one)), edges);
        assert_eq!(signed.map(|one| writer.signed(2, one)), signed);
        let bytes = writer.bits.bytes();
        let mut reader = Numbers::new(Reader::new(&bytes));
        assert_eq!(edges.map(|_| reader.size(1, 0)), edges);
        assert_eq!(signed.map(|_| reader.signed(2, 0)), signed);
        assert!(reader.bits.is_at_the_end());
    }

    #[test]
    fn a_carry_runs_through_bytes_that_are_full() {
        // Long runs of the unlikely bit drive the low end up against its top.
        for seed in 0..400 {
            let list: Vec<bool> = numbers(seed).take(2000).map(|one| one % 29 != 0).collect();
            let mut writer = Numbers::new(Writer::new());
            assert!(list.iter().all(|bit| writer.flag(1, *bit) == *bit));
            let bytes = writer.bits.bytes();
            let mut reader = Numbers::new(Reader::new(&bytes));
            assert!(list.iter().all(|bit| reader.flag(1, false) == *bit), "seed {seed}");
            assert!(bytes.len() < 2000 / 8 / 2, "it learns: {}", bytes.len());
        }
    }

    #[test]
    fn what_repeats_costs_next_to_nothing() {
        let mut writer = Numbers::new(Writer::new());
        let text = b"01987f3a2c1-0badcafe";
        let mut before: &[u8] = &[];
        for _ in 0..50 {
            writer.bytes(10, before, text, 60);
            before = text;
        }
        let bytes = writer.bits.bytes();
        assert!(bytes.len() < 60, "{}", bytes.len());
    }
}
