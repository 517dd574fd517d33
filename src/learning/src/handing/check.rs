//! The check of archives and of kept states: CRC-32 as the zip format and many others have it (reflected,
//! polynomial 0xEDB88320, begun and ended with all bits set).

/// The remainders of all half bytes, so that the table stays small.
const TABLE: [u32; 16] = table();

const fn table() -> [u32; 16] {
    let mut table = [0; 16];
    let mut at = 0;
    while at < 16 {
        let (mut left, mut bit) = (at, 0);
        while bit < 4 {
            left = if left & 1 == 1 { (left >> 1) ^ 0xEDB8_8320 } else { left >> 1 };
            bit += 1;
        }
        table[at as usize] = left;
        at += 1;
    }
    table
}

/// The CRC-32 of bytes.
#[must_use]
pub fn crc(bytes: &[u8]) -> u32 {
    let half = |sum: u32, half: u32| (sum >> 4) ^ TABLE[((sum ^ half) & 15) as usize];
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        let byte = u32::from(*byte);
        half(half(sum, byte), byte >> 4)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_check_is_the_published_one() {
        // The check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms (from
        // memory; Python's zipfile holds it again in tests/outside).
        assert_eq!(crc(b"123456789"), 0xCBF4_3926);
        assert_eq!(crc(b""), 0);
    }

    #[test]
    fn any_one_bit_changes_it() {
        let text = b"a socket with four walls".to_vec();
        for place in 0..text.len() {
            for bit in 0..8 {
                let mut other = text.clone();
                other[place] ^= 1 << bit;
                assert_ne!(crc(&other), crc(&text));
            }
        }
    }
}
