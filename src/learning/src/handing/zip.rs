//! A package as one file: a zip archive that stores its files as they are, in the order given and all
//! of one date, so that the same files always make the same archive. What is shipped is small and
//! mostly compressed; a compressor would weigh more in the page than it saves in the package.
//!
//! The layout is that of the format's published description (APPNOTE 6.3, from memory); Python's
//! `zipfile` reads it again in `tests/outside`.

use super::check::crc;
use super::name::{self, BadName};
use core::fmt;

/// A file of the archive.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Entry<'a> {
    /// Its path, `/` between the parts.
    pub name: &'a str,
    /// What it holds.
    pub bytes: &'a [u8],
}

/// Why there is no archive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unzippable {
    /// A name.
    Name(BadName),
    /// Too many files.
    Count {
        /// How many came.
        found: usize,
    },
    /// Too many bytes.
    Size,
}

impl fmt::Display for Unzippable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Name(why) => why.fmt(f),
            Self::Count { found } => {
                write!(f, "found {found} files, expected 65535 at most: leave some out")
            }
            Self::Size => f.write_str("found 4 GB or more, expected less: leave files out"),
        }
    }
}

impl core::error::Error for Unzippable {}

/// The version that a reader needs: 1.0, for files stored as they are.
const NEEDS: u16 = 10;
/// The first of January 1980, the first day that the format knows, at midnight.
const DAY: u16 = (1 << 5) | 1;

/// The archive.
///
/// # Errors
/// [`Unzippable`] with the first thing that an archive cannot hold.
pub fn zip(entries: &[Entry<'_>]) -> Result<Vec<u8>, Unzippable> {
    name::check(entries.iter().map(|entry| entry.name)).map_err(Unzippable::Name)?;
    let count =
        u16::try_from(entries.len()).map_err(|_| Unzippable::Count { found: entries.len() })?;
    let (mut archive, mut directory) = (Vec::new(), Vec::new());
    for entry in entries {
        let at = size(archive.len())?;
        let common = common(entry)?;
        archive.extend_from_slice(b"PK\x03\x04");
        archive.extend_from_slice(&common);
        archive.extend_from_slice(entry.name.as_bytes());
        archive.extend_from_slice(entry.bytes);
        directory.extend_from_slice(b"PK\x01\x02");
        directory.extend_from_slice(&NEEDS.to_le_bytes());
        directory.extend_from_slice(&common);
        // No comment, the first disk, no attributes.
        directory.extend_from_slice(&[0; 10]);
        directory.extend_from_slice(&at.to_le_bytes());
        directory.extend_from_slice(entry.name.as_bytes());
    }
    let (at, length) = (size(archive.len())?, size(directory.len())?);
    archive.append(&mut directory);
    archive.extend_from_slice(b"PK\x05\x06\0\0\0\0");
    archive.extend_from_slice(&count.to_le_bytes());
    archive.extend_from_slice(&count.to_le_bytes());
    archive.extend_from_slice(&length.to_le_bytes());
    archive.extend_from_slice(&at.to_le_bytes());
    archive.extend_from_slice(&[0; 2]);
    size(archive.len())?;
    Ok(archive)
}

/// What stands before a file and in the directory alike.
fn common(entry: &Entry<'_>) -> Result<Vec<u8>, Unzippable> {
    let length = size(entry.bytes.len())?.to_le_bytes();
    let name = u16::try_from(entry.name.len()).map_err(|_| Unzippable::Size)?;
    let mut all = Vec::with_capacity(26);
    // No flags, stored, midnight.
    for part in [NEEDS, 0, 0, 0, DAY] {
        all.extend_from_slice(&part.to_le_bytes());
    }
    all.extend_from_slice(&crc(entry.bytes).to_le_bytes());
    all.extend_from_slice(&length);
    all.extend_from_slice(&length);
    all.extend_from_slice(&name.to_le_bytes());
    all.extend_from_slice(&[0; 2]);
    Ok(all)
}

/// The largest number stands for the longer form of the format, which this is not.
fn size(length: usize) -> Result<u32, Unzippable> {
    u32::try_from(length).ok().filter(|length| *length < u32::MAX).ok_or(Unzippable::Size)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_archive_of_one_file_is_laid_out_as_the_format_says() {
        let archive = zip(&[Entry { name: "a.txt", bytes: b"123456789" }]).unwrap();
        // By Python's zipfile, ZIP_STORED, date_time (1980, 1, 1, 0, 0, 0), create_version and
        // extract_version 10, create_system and external_attr 0.
        let expected = EXPECTED
            .as_bytes()
            .chunks(2)
            .map(|two| u8::from_str_radix(std::str::from_utf8(two).unwrap(), 16).unwrap());
        assert_eq!(archive, expected.collect::<Vec<u8>>());
    }

    const EXPECTED: &str = concat!(
        "504b03040a0000000000000021002639f4cb090000000900000005000000612e747874313233343536373839",
        "504b01020a000a0000000000000021002639f4cb090000000900000005000000000000000000000000000000",
        "0000612e747874504b05060000000001000100330000002c0000000000",
    );

    #[test]
    fn the_same_files_make_the_same_archive_and_their_order_is_kept() {
        let files = [
            Entry { name: "imsmanifest.xml", bytes: b"<manifest/>" },
            Entry { name: "pkg/app.js", bytes: b"" },
        ];
        let archive = zip(&files).unwrap();
        assert_eq!(archive, zip(&files).unwrap());
        let [a, b] = files;
        let turned = zip(&[b, a]).unwrap();
        assert!(turned != archive && turned.len() == archive.len());
        assert_eq!(zip(&[]).unwrap().len(), 22);
    }

    #[test]
    fn what_an_archive_cannot_hold_is_refused() {
        let entry = |name| Entry { name, bytes: b"" };
        for wrong in [&[entry("../a")][..], &[entry("a"), entry("A")], &[entry("ä")]] {
            assert!(matches!(zip(wrong), Err(Unzippable::Name(_))));
        }
        assert_eq!(size(usize::try_from(u32::MAX).unwrap()), Err(Unzippable::Size));
    }
}
