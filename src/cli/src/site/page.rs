//! Which page is built: the room, or the page that packages carry.

use super::asset::Asset;
use super::single::ENTRY;
use crate::Fault;

/// What the entry begins with, and what it says where the page can hand in.
const BEGIN: &str = "<html ";
const HANDS_IN: &str = "<html data-hands-in ";

/// One of the two pages.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Page {
    /// The room that anybody visits.
    Room,
    /// The same with what talks to the host of a package: no visitor of the room carries that.
    Packaged,
}

impl Page {
    /// The features that it is compiled with.
    pub const fn features(self) -> &'static [&'static str] {
        match self {
            Self::Room => &[],
            Self::Packaged => &["--features", "app/package"],
        }
    }

    /// The name of the folder where its bindings are written.
    pub const fn bindings(self) -> &'static str {
        match self {
            Self::Room => "bindings",
            Self::Packaged => "package-bindings",
        }
    }

    /// Has the entry say which page this is, so that no package is made of one that cannot hand in.
    pub fn mark(self, assets: &mut [Asset]) {
        if self == Self::Room {
            return;
        }
        for asset in assets.iter_mut().filter(|asset| asset.path == ENTRY) {
            let text = String::from_utf8_lossy(&asset.bytes).replacen(BEGIN, HANDS_IN, 1);
            asset.bytes = text.into_bytes();
        }
    }
}

/// Makes sure that the page of these files can hand in.
///
/// # Errors
/// When it is the room.
pub fn hands_in(assets: &[Asset], folder: &std::path::Path) -> Result<(), Fault> {
    let entry = assets.iter().find(|asset| asset.path == ENTRY);
    let text = entry.and_then(|asset| core::str::from_utf8(&asset.bytes).ok()).unwrap_or_default();
    if text.contains(HANDS_IN) {
        return Ok(());
    }
    Err(Fault::new(format!(
        "found the ordinary room in {}, which hands nothing in, expected the page that packages carry",
        folder.display()
    ))
    .hint("`wallwise build --for-packages --out DIR` builds that one; without `--site` it is built here"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::Path;

    #[test]
    fn a_page_that_hands_in_says_so_and_the_room_is_told_from_it() {
        let entry = include_str!("../../../../www/index.html").as_bytes().to_vec();
        let room = vec![Asset { path: ENTRY.to_owned(), bytes: entry }];
        let mut packaged = room.clone();
        Page::Packaged.mark(&mut packaged);
        assert!(hands_in(&packaged, Path::new("there")).is_ok());
        let mut same = room.clone();
        Page::Room.mark(&mut same);
        assert_eq!(same, room);
        let fault = hands_in(&room, Path::new("there")).unwrap_err().to_string();
        assert!(fault.contains("the ordinary room in there"), "{fault}");
    }
}
