use super::super::zip::{Entry as File, zip};
use super::*;

/// By Python's zipfile: `a.json` deflated (forty times *a*), a folder, `../b.json` stored (1 to 9).
const PYTHON: &str = concat!(
    "504b030414000000080000002100258a5bc9060000002800000006000000612e6a736f6e4b4c240e0000504b",
    "030414000000000000002100000000000000000000000000040000007375622f504b03041400000000000000",
    "21002639f4cb0900000009000000090000002e2e2f622e6a736f6e313233343536373839504b010214001400",
    "0000080000002100258a5bc90600000028000000060000000000000000000000800100000000612e6a736f6e",
    "504b010214001400000000000000210000000000000000000000000004000000000000000000000080012a00",
    "00007375622f504b01021400140000000000000021002639f4cb090000000900000009000000000000000000",
    "000080014c0000002e2e2f622e6a736f6e504b050600000000030003009d0000007c0000000000",
);

fn python() -> Vec<u8> {
    let two = |two: &[u8]| u8::from_str_radix(std::str::from_utf8(two).unwrap(), 16).unwrap();
    PYTHON.as_bytes().chunks(2).map(two).collect()
}

fn ours() -> Vec<u8> {
    let one = File { name: "a.json", bytes: b"123456789" };
    zip(&[one, File { name: "b/c.json", bytes: b"{}" }]).unwrap()
}

/// The archive with a number written over at each place.
fn with(mut archive: Vec<u8>, at: usize, bytes: &[u8]) -> Vec<u8> {
    archive[at..at + bytes.len()].copy_from_slice(bytes);
    archive
}

/// Where the directory of an archive without a comment begins.
fn directory_of(archive: &[u8]) -> usize {
    long(archive, archive.len() - 6).unwrap() as usize
}

#[test]
fn what_another_writer_packed_is_found_with_how_it_is_packed() {
    let archive = python();
    let files = unzip(&archive).unwrap();
    let names: Vec<&str> = files.iter().map(|file| file.name.as_str()).collect();
    // The folder is left out, and a path in a name is a name.
    assert_eq!(names, ["a.json", "../b.json"]);
    let [one, other] = [&files[0], &files[1]].map(|file| file.packed.unwrap());
    // The six bytes are those of zlib's raw deflate.
    assert_eq!((one.deflated, one.size, one.packed.len()), (true, 40, 6));
    assert_eq!((other.deflated, other.packed), (false, &b"123456789"[..]));
    one.check(&[b'a'; 40]).unwrap();
    other.check(other.packed).unwrap();
    for wrong in [&[b'a'; 39][..], &[b'b'; 40]] {
        assert_eq!(one.check(wrong), Err(Unread::Changed));
    }
}

#[test]
fn our_own_archives_come_back_and_a_comment_behind_them_does_not_matter() {
    let archive = ours();
    assert_eq!(unzip(&archive).unwrap().len(), 2);
    let mut commented = with(archive.clone(), archive.len() - 2, &9_u16.to_le_bytes());
    commented.extend_from_slice(b"PK\x05\x06 says");
    assert_eq!(unzip(&commented).unwrap().len(), 2);
    assert_eq!(unzip(&zip(&[]).unwrap()), Ok(Vec::new()));
}

#[test]
fn an_archive_cut_off_anywhere_is_refused_and_never_read_in_part() {
    for archive in [ours(), python()] {
        for length in 0..archive.len() {
            unzip(&archive[..length]).unwrap_err();
            unzip(&archive[archive.len() - length..]).unwrap_err();
        }
    }
}

#[test]
fn any_byte_may_be_any_other_and_nothing_reaches_outside_the_archive() {
    for archive in [ours(), python()] {
        for at in 0..archive.len() {
            for byte in [0, 1, 0x7f, 0x80, 0xff, archive[at] ^ 1] {
                let changed = with(archive.clone(), at, &[byte]);
                let Ok(files) = unzip(&changed) else { continue };
                for file in files {
                    if let Ok(bytes) = file.packed {
                        assert!(bytes.packed.len() <= archive.len() && bytes.size <= LONGEST_FILE);
                    }
                }
            }
        }
    }
}

#[test]
fn files_that_share_bytes_are_refused() {
    let archive = ours();
    let at = directory_of(&archive);
    // The second entry of the directory leads to the first file, with its length.
    let second = at + ENTRY + "a.json".len();
    let twice = with(with(archive, second + 42, &[0; 4]), second + 20, &[2, 0, 0, 0]);
    assert_eq!(unzip(&twice), Err(NoZip::Overlap));
}

#[test]
fn a_bomb_is_refused_by_what_it_says_and_stopped_by_what_it_is() {
    let archive = python();
    let at = directory_of(&archive);
    let large = with(archive.clone(), at + 24, &(80_u32 << 20).to_le_bytes());
    let files = unzip(&large).unwrap();
    assert_eq!(files[0].packed, Err(Unread::Long(80 << 20)));
    // Who says less than it is stops the decompressor at what it says, and fails the check.
    let small = with(archive.clone(), at + 24, &8_u32.to_le_bytes());
    let bytes = unzip(&small).unwrap()[0].packed.unwrap();
    assert_eq!((bytes.size, bytes.check(b"aaaaaaaa")), (8, Err(Unread::Changed)));
    let huge = with(archive, at + 24, &0xF000_0000_u32.to_le_bytes());
    assert!(matches!(unzip(&huge), Err(NoZip::Unfolded(_))));
}

#[test]
fn what_is_encrypted_or_packed_otherwise_says_so_and_the_rest_is_read() {
    let archive = python();
    let at = directory_of(&archive);
    for (place, value, expected) in [(8, 1_u16, Unread::Encrypted), (10, 14, Unread::Method(14))] {
        let changed = with(archive.clone(), at + place, &value.to_le_bytes());
        let files = unzip(&changed).unwrap();
        assert_eq!(files[0].packed, Err(expected));
        assert!(files[1].packed.is_ok());
        assert!(expected.to_string().contains("pack"), "{expected}");
    }
}

#[test]
fn the_long_form_and_parts_of_archives_are_refused_with_a_way_out() {
    let archive = ours();
    let end = archive.len() - END;
    for (at, bytes) in [(4, &[1, 0][..]), (8, &[0xff; 4]), (12, &[0xff; 4]), (16, &[0xff; 4])] {
        let long = with(archive.clone(), end + at, bytes);
        assert_eq!(unzip(&long), Err(NoZip::Form));
    }
    let at = directory_of(&archive);
    assert_eq!(unzip(&with(archive, at + 24, &[0xff; 4])), Err(NoZip::Form));
    assert!(NoZip::Form.to_string().contains("pack it anew"));
    assert_eq!(unzip(b"{\"kind\":\"attempts\"}"), Err(NoZip::NoEnd));
}
