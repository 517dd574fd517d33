//! One number for a range of cases and debriefs, the same natively, on the page and in the worker.

use engine::cases;
use engine::debrief::{explain, hash_of};
use engine::session::wander;
use std::fmt::Write;

/// The digest of the cases with seeds `first .. first + count`, each with the debrief of a plan that
/// chance decided, as 16 hexadecimal digits. Whatever differs between targets shows in it.
#[must_use]
pub fn digest(first: u32, count: u32) -> String {
    let mut hash = Fnv::START;
    for number in 0..count {
        one(first.wrapping_add(number), &mut hash);
    }
    format!("{:016x}", hash.0)
}

/// Writes one case and its debrief out in full. A hash takes any text, so writing cannot fail.
fn one(seed: u32, into: &mut Fnv) {
    match cases::generate(u64::from(seed)) {
        Ok(case) => {
            // Debug prints the shortest text that reads back to the same double: every bit shows.
            let _ = write!(into, "{case:?}");
            let session = wander(case, u64::from(seed));
            let verdicts = session.verdicts();
            let _ = write!(into, "{:016x}", hash_of(&verdicts));
            for verdict in &verdicts {
                let _ = write!(into, "{:?}", explain(verdict));
            }
            let mark = session.debrief().and_then(|debrief| debrief.mark.percent());
            let _ = write!(into, "{:?}", mark.map(f64::to_bits));
        }
        Err(fault) => {
            let _ = write!(into, "{fault}");
        }
    }
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
        assert_eq!(digest(0, 3), digest(0, 3));
        assert_ne!(digest(0, 3), digest(1, 3));
        assert_ne!(digest(0, 3), digest(0, 4));
    }

    #[test]
    fn the_digest_of_nothing_is_the_hash_s_published_start() {
        assert_eq!(digest(7, 0), "cbf29ce484222325");
    }
}
