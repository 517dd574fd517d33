//! What a reader may rely on about the repository itself, whichever file is opened.

mod files;
mod layout;
mod lengths;
mod words;
