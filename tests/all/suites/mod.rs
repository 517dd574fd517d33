//! The suites, in the order in which they run: the quickest to say no come first.

mod browser;
mod code;
mod outside;
mod site;

use crate::suite::Suite;

/// Every suite. A new one is a file here and a line in this list.
pub static ALL: &[Suite] = &[
    code::FORMAT,
    code::LINTS,
    code::RUST,
    code::DOCS,
    site::SITE,
    browser::BROWSER,
    outside::OUTSIDE,
];
