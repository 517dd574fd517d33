//! Bytes as letters that every host keeps as they are: base64 with the alphabet that is safe in
//! addresses, without padding (RFC 4648, section 5).

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Bytes in letters.
pub fn spell(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 4 / 3 + 2);
    for three in bytes.chunks(3) {
        let number = three.iter().fold(0_u32, |sum, byte| (sum << 8) | u32::from(*byte));
        let number = number << (8 * (3 - three.len()));
        for place in 0..=three.len() {
            let letter = (number >> (18 - 6 * place)) & 63;
            text.push(char::from(LETTERS[letter as usize]));
        }
    }
    text
}

/// The bytes of letters; nothing where another letter is among them, or where no bytes are spelt so.
pub fn read(text: &[u8]) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() * 3 / 4);
    for four in text.chunks(4) {
        let mut number = 0_u32;
        for letter in four {
            let place = LETTERS.iter().position(|one| one == letter)?;
            number = (number << 6) | u32::try_from(place).ok()?;
        }
        number <<= 6 * (4 - four.len());
        let [_, parts @ ..] = number.to_be_bytes();
        let (whole, rest) = parts.split_at(four.len() - 1);
        // A lone letter holds no byte, and one byte is spelt in one way only.
        if four.len() == 1 || rest.iter().any(|byte| *byte != 0) {
            return None;
        }
        bytes.extend_from_slice(whole);
    }
    Some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_letters_are_those_of_the_standard() {
        // RFC 4648, section 10, without the padding.
        for (plain, spelt) in [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(spell(plain.as_bytes()), spelt);
            assert_eq!(read(spelt.as_bytes()).as_deref(), Some(plain.as_bytes()));
        }
        assert_eq!(spell(&[0xFB, 0xFF]), "-_8");
    }

    #[test]
    fn bytes_are_spelt_in_one_way_only() {
        for wrong in ["Z", "Zh", "Zm9", "Zg==", "Z g", "Zg+"] {
            assert_eq!(read(wrong.as_bytes()), None, "{wrong}");
        }
    }
}
