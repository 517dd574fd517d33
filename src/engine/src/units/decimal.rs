//! Decimal numbers as people type them.

/// Most digits: a count of this many is a double exactly, and so is ten to this many places.
const LONGEST: usize = 15;

/// The number that a plain decimal says, *-2.5*, *.5*, *3.*: the double nearest to it, as the standard
/// library would read it, without the ten kilobytes of tables that its reader brings into the page for
/// what nobody types. Nothing where it is no plain decimal of at most fifteen digits.
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let digits = text.strip_prefix('-').or_else(|| text.strip_prefix('+')).unwrap_or(text);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let long = whole.len() + part.len();
    if long == 0
        || long > LONGEST
        || !whole.bytes().chain(part.bytes()).all(|one| one.is_ascii_digit())
    {
        return None;
    }
    let count = |sum: f64, digit: u8| sum * 10.0 + f64::from(digit - b'0');
    let count = whole.bytes().chain(part.bytes()).fold(0.0, count);
    // Both are exact, so that the quotient is the nearest there is.
    let size = count / part.bytes().fold(1.0, |ten, _| ten * 10.0);
    Some(if text.starts_with('-') { -size } else { size })
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand_chacha::ChaCha8Rng;
    use rand_chacha::rand_core::{Rng, SeedableRng};

    #[test]
    fn every_plain_decimal_is_read_as_the_standard_library_reads_it() {
        let mut chance = ChaCha8Rng::seed_from_u64(7);
        for _ in 0..200_000 {
            let long = 1 + chance.next_u64() % 15;
            let digits = (chance.next_u64() % 10_u64.pow(u32::try_from(long).unwrap())).to_string();
            let at = usize::try_from(chance.next_u64() % 16).unwrap().min(digits.len());
            let sign = ["", "-", "+"][usize::try_from(chance.next_u64() % 3).unwrap()];
            for text in
                [format!("{sign}{}.{}", &digits[..at], &digits[at..]), format!("{sign}{digits}")]
            {
                let read = decimal(&text).map(f64::to_bits);
                assert_eq!(read, text.parse().ok().map(f64::to_bits), "{text}");
            }
        }
    }

    #[test]
    fn what_is_no_plain_decimal_is_none() {
        for text in [
            "",
            "-",
            ".",
            "-.",
            "1e3",
            "inf",
            "NaN",
            "1.2.3",
            "1,5",
            " 1",
            "٣",
            "--1",
            "0x1",
            "1234567890123456",
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
    }
}
