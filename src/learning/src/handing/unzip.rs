//! What lies in a zip archive that somebody hands in: where each file begins and ends, and how it is
//! packed. Nothing in an archive is trusted, and nothing is unpacked here: whoever has a decompressor
//! gives it the bytes, stops it at the size that the archive states, and has the outcome checked.
//!
//! The layout is that of the format's published description (APPNOTE 6.3, from memory); the tests read
//! what other writers wrote.

use super::check::crc;
use crate::class::order;
use crate::file::LONGEST_FILE;
use core::fmt;

/// An archive with more entries than this is not read (ours).
pub const MOST_ENTRIES: usize = 20_000;
/// More than this an archive may not unfold to, bytes (ours).
pub const MOST_UNFOLDED: u64 = 1 << 30;
/// Longer archives are refused unread, bytes (ours).
pub const LONGEST_ARCHIVE: usize = 256 << 20;

/// The record that ends an archive, with nothing behind it, bytes; a comment may follow.
const END: usize = 22;
const END_SIGN: u32 = 0x0605_4b50;
/// An entry of the directory without its name, and what stands before a file.
const ENTRY: usize = 46;
const ENTRY_SIGN: u32 = 0x0201_4b50;
const LOCAL: usize = 30;
const LOCAL_SIGN: u32 = 0x0403_4b50;
/// The bit of a file's flags that says that it is encrypted.
const ENCRYPTED: u16 = 1;

/// A file of an archive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Packed<'a> {
    /// What it is called there: for people to read, never a path to follow.
    pub name: String,
    /// Its bytes, or why it cannot be read.
    pub packed: Result<Bytes<'a>, Unread>,
}

/// The bytes of a file, as they are packed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bytes<'a> {
    /// As they stand in the archive.
    pub packed: &'a [u8],
    /// Whether they are deflated; as they are otherwise.
    pub deflated: bool,
    /// How many they are said to be unpacked: a decompressor is stopped there.
    pub size: usize,
    check: u32,
}

impl Bytes<'_> {
    /// Whether these are the bytes that the archive says.
    ///
    /// # Errors
    /// Where they are not.
    pub fn check(&self, unpacked: &[u8]) -> Result<(), Unread> {
        if unpacked.len() == self.size && crc(unpacked) == self.check {
            return Ok(());
        }
        Err(Unread::Changed)
    }
}

/// Why a file of an archive cannot be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unread {
    /// It is encrypted.
    Encrypted,
    /// It is packed in a way of this number.
    Method(u16),
    /// It is said to be as long as this, bytes.
    Long(u64),
    /// It is not what the archive says it is.
    Changed,
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Encrypted => {
                f.write_str("is encrypted: unpack it first, and hand in what is in it")
            }
            Self::Method(found) => write!(
                f,
                "found packing {found}, expected 0 (stored) or 8 (deflated): pack it anew as a plain zip file"
            ),
            Self::Long(found) => write!(
                f,
                "found {} MB, expected a file of attempts of at most {} MB",
                found >> 20,
                LONGEST_FILE >> 20
            ),
            Self::Changed => {
                f.write_str("is not what the zip file says it is: it was damaged on its way")
            }
        }
    }
}

impl core::error::Error for Unread {}

/// Why an archive cannot be read at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoZip {
    /// There is no end record.
    NoEnd,
    /// It is of the longer form of the format, or one of several parts.
    Form,
    /// What this names does not lie where the archive says.
    Cut(&'static str),
    /// Two files share bytes.
    Overlap,
    /// Too many entries.
    Count(usize),
    /// It would unfold to so many bytes.
    Unfolded(u64),
}

impl fmt::Display for NoZip {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoEnd => f.write_str(
                "found no end of a zip file, expected one: it is another kind of file, or did not come whole",
            ),
            Self::Form => f.write_str(
                "found a zip file of the long form (zip64) or in several parts, expected a plain one: pack it anew in smaller batches",
            ),
            Self::Cut(what) => write!(
                f,
                "found {what} outside the zip file or damaged, expected it within: it did not come whole"
            ),
            Self::Overlap => f.write_str("found files that share their bytes, expected each by itself: pack it anew"),
            Self::Count(found) => write!(f, "found {found} entries, expected at most {MOST_ENTRIES}: hand in smaller batches"),
            Self::Unfolded(found) => write!(
                f,
                "would unfold to {} MB, expected at most {}: hand in smaller batches",
                found >> 20,
                MOST_UNFOLDED >> 20
            ),
        }
    }
}

impl core::error::Error for NoZip {}

/// The files of an archive, in the order of its directory; folders are left out.
///
/// # Errors
/// Why it cannot be read at all; a file that alone cannot be read says so itself.
pub fn unzip(archive: &[u8]) -> Result<Vec<Packed<'_>>, NoZip> {
    let (count, at, end) = directory(archive)?;
    let mut files = Vec::new();
    let mut taken = Vec::new();
    let (mut from, mut unfolded) = (at, 0_u64);
    for _ in 0..count {
        let head = archive.get(from..end).filter(|rest| rest.len() >= ENTRY);
        let head = head.filter(|head| long(head, 0) == Some(ENTRY_SIGN));
        let entry = head.and_then(Entry::read).ok_or(NoZip::Cut("a directory entry"))?;
        from += entry.length;
        if from > end {
            return Err(NoZip::Cut("a directory entry"));
        }
        let (whole, bytes) = entry.bytes(archive, at)?;
        taken.push(whole);
        unfolded = unfolded.saturating_add(u64::from(entry.size));
        if !entry.name.ends_with(['/', '\\']) {
            files.push(Packed { packed: entry.packed(bytes), name: entry.name });
        }
    }
    order::by(&mut taken, &|one: &[usize; 2], other| one.cmp(other));
    if taken.windows(2).any(|two| matches!(two, [one, other] if one[1] > other[0])) {
        return Err(NoZip::Overlap);
    }
    if unfolded > MOST_UNFOLDED {
        return Err(NoZip::Unfolded(unfolded));
    }
    Ok(files)
}

/// How many entries the directory has, where it begins, and where it ends.
fn directory(archive: &[u8]) -> Result<(usize, usize, usize), NoZip> {
    // The last end record whose comment ends with the archive: a comment may hold the sign too.
    let last = archive.len().checked_sub(END).ok_or(NoZip::NoEnd)?;
    let first = last.saturating_sub(usize::from(u16::MAX));
    let ends = |at: &usize| {
        let record = archive.get(*at..).unwrap_or_default();
        long(record, 0) == Some(END_SIGN)
            && short(record, 20)
                .is_some_and(|comment| at + END + usize::from(comment) == archive.len())
    };
    let end = (first..=last).rev().find(ends).ok_or(NoZip::NoEnd)?;
    let record = archive.get(end..).unwrap_or_default();
    let part = |at| short(record, at).unwrap_or(u16::MAX);
    let whole = |at| long(record, at).unwrap_or(u32::MAX);
    let (count, size, at) = (part(10), whole(12), whole(16));
    // The largest numbers stand for the longer form.
    let several = part(4) != 0 || part(6) != 0 || part(8) != count;
    if several || count == u16::MAX || size == u32::MAX || at == u32::MAX {
        return Err(NoZip::Form);
    }
    if usize::from(count) > MOST_ENTRIES {
        return Err(NoZip::Count(usize::from(count)));
    }
    let at = usize::try_from(at).map_err(|_| NoZip::Form)?;
    let size = usize::try_from(size).map_err(|_| NoZip::Form)?;
    let until = at.checked_add(size).filter(|until| *until <= end);
    Ok((usize::from(count), at, until.ok_or(NoZip::Cut("the directory"))?))
}

/// An entry of the directory.
struct Entry {
    name: String,
    flags: u16,
    method: u16,
    check: u32,
    packed: u32,
    size: u32,
    at: u32,
    /// How long the entry is, bytes.
    length: usize,
}

impl Entry {
    fn read(head: &[u8]) -> Option<Self> {
        let [name, extra, comment] = [28, 30, 32].map(|at| short(head, at).map(usize::from));
        let (name, extra, comment) = (name?, extra?, comment?);
        let letters = head.get(ENTRY..ENTRY + name)?;
        Some(Self {
            name: String::from_utf8_lossy(letters).into_owned(),
            flags: short(head, 8)?,
            method: short(head, 10)?,
            check: long(head, 16)?,
            packed: long(head, 20)?,
            size: long(head, 24)?,
            at: long(head, 42)?,
            length: ENTRY + name + extra + comment,
        })
    }

    /// Where its head begins and its bytes end, and these: before the directory, behind a head of its own.
    fn bytes<'a>(
        &self,
        archive: &'a [u8],
        directory: usize,
    ) -> Result<([usize; 2], &'a [u8]), NoZip> {
        if [self.at, self.packed, self.size].contains(&u32::MAX) {
            return Err(NoZip::Form);
        }
        let cut = NoZip::Cut("a file");
        let at = usize::try_from(self.at).map_err(|_| cut)?;
        let packed = usize::try_from(self.packed).map_err(|_| cut)?;
        let head = archive.get(at..directory).filter(|head| long(head, 0) == Some(LOCAL_SIGN));
        let head = head.ok_or(cut)?;
        let [name, extra] = [26, 28].map(|at| short(head, at).map(usize::from));
        let behind = LOCAL + name.ok_or(cut)? + extra.ok_or(cut)?;
        let bytes = head.get(behind..behind.saturating_add(packed)).ok_or(cut)?;
        Ok(([at, at + behind + packed], bytes))
    }

    fn packed<'a>(&self, packed: &'a [u8]) -> Result<Bytes<'a>, Unread> {
        if self.flags & ENCRYPTED != 0 {
            return Err(Unread::Encrypted);
        }
        let deflated = match self.method {
            0 => false,
            8 => true,
            other => return Err(Unread::Method(other)),
        };
        let size = usize::try_from(self.size).unwrap_or(usize::MAX);
        if size > LONGEST_FILE {
            return Err(Unread::Long(u64::from(self.size)));
        }
        Ok(Bytes { packed, deflated, size, check: self.check })
    }
}

fn short(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_le_bytes(bytes.get(at..at + 2)?.try_into().ok()?))
}

fn long(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_le_bytes(bytes.get(at..at + 4)?.try_into().ok()?))
}

#[cfg(test)]
mod tests;
