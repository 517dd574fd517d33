//! Where results go: the one seam. In a package the room tells what came of the set after every
//! carried-out step, and a sink hands it to the host, holds it for a file, or lets it be. Views know this
//! module's surface and no sink: another is one more arm in `sink.rs`, with a file of its own.
//!
//! All of that is compiled only with the feature `package`, into the page that packages carry: the
//! ordinary room hands in nowhere, and everybody would carry it for nothing. It has the same surface with
//! nothing behind it (`none.rs`), and nobody beyond this file can tell the two apart.

#[cfg(feature = "package")]
mod file;
#[cfg(feature = "package")]
mod handing;
#[cfg(feature = "package")]
mod host;
#[cfg(not(feature = "package"))]
mod none;
#[cfg(feature = "package")]
mod outcome;
#[cfg(feature = "package")]
mod package;
#[cfg(feature = "package")]
mod page;
#[cfg(feature = "package")]
mod sink;
#[cfg(feature = "package")]
mod told;

#[cfg(not(feature = "package"))]
pub use none::{is_packaged, resume, shown, store};
#[cfg(feature = "package")]
pub use told::{is_packaged, resume, shown, store};

/// A part of the room that the results have something to put into, where it is packaged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// Above the page: what went wrong.
    Above,
    /// In place of the first page: the set, and what came of it.
    Home,
    /// Under everything: where what is done goes.
    Foot,
}
