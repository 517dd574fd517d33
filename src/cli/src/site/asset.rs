//! A file of the page, in memory.

use std::fs;
use std::path::Path;

use sha2::{Digest, Sha256};

use crate::{Fault, Why};

/// A file's bytes, under its path within the page (`/` between the parts).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asset {
    pub path: String,
    pub bytes: Vec<u8>,
}

impl Asset {
    /// Every file under `root`, in order of path, leaving out those whose name begins with a dot.
    pub fn read_folder(root: &Path) -> Result<Vec<Self>, Fault> {
        let mut assets = Vec::new();
        gather(root, "", &mut assets)?;
        assets.sort_by(|one, other| one.path.cmp(&other.path));
        Ok(assets)
    }

    /// What follows the last dot of its name.
    pub fn extension(&self) -> &str {
        self.path.rsplit_once('.').map_or("", |(_, extension)| extension)
    }
}

/// SHA-256 in hexadecimal.
pub fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The same as the browser is told to hold a file to: `sha256-` and the hash in base 64.
pub fn sri(bytes: &[u8]) -> String {
    format!("sha256-{}", base64(&Sha256::digest(bytes)))
}

/// Bytes in base 64.
pub fn base64(bytes: &[u8]) -> String {
    const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut written = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for group in bytes.chunks(3) {
        let bits = (0..3).fold(0, |bits, place| {
            bits << 8 | u32::from(group.get(place).copied().unwrap_or_default())
        });
        for place in 0..4 {
            // A group of n bytes has n + 1 digits.
            let digit = DIGITS[(bits >> (18 - 6 * place) & 63) as usize];
            written.push(if place <= group.len() { char::from(digit) } else { '=' });
        }
    }
    written
}

fn gather(folder: &Path, prefix: &str, assets: &mut Vec<Asset>) -> Result<(), Fault> {
    let cannot = || format!("cannot read the folder {}", folder.display());
    for entry in fs::read_dir(folder).why(cannot)? {
        let entry = entry.why(cannot)?;
        let name = entry.file_name();
        let Some(name) = name.to_str() else {
            return Err(Fault::new(format!("found {name:?} in {}", folder.display()))
                .hint("a name that a browser is to ask for must be plain text"));
        };
        if name.starts_with('.') {
            continue;
        }
        let place = entry.path();
        if place.is_dir() {
            gather(&place, &format!("{prefix}{name}/"), assets)?;
        } else {
            let bytes = fs::read(&place).why(|| format!("cannot read {}", place.display()))?;
            assets.push(Asset { path: format!("{prefix}{name}"), bytes });
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bytes_in_base_64_are_as_published() {
        // RFC 4648, section 10.
        assert_eq!(
            ["", "f", "fo", "foobar"].map(|it| base64(it.as_bytes())),
            ["", "Zg==", "Zm8=", "Zm9vYmFy"]
        );
    }

    #[test]
    fn a_browser_is_told_the_hash_in_base_64() {
        // The published digest of no bytes at all, and of "abc".
        assert_eq!(sri(b""), "sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=");
        assert_eq!(sri(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
    }
}
