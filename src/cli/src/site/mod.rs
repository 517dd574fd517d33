//! The page as a folder: compile, bind, gather, name, list, press, write.
//!
//! Every address inside the folder is relative and every file but two is named for its content, so
//! any static host can serve it under any path and cache it for ever; the entry and the worker that
//! keeps the page offline have to be asked for anew each time.

mod asset;
mod bind;
mod brief;
mod cache;
mod compile;
mod fold;
mod folder;
mod functions;
mod given;
mod names;
mod offline;
mod order;
mod page;
mod press;
mod single;
mod strands;
mod workspace;

use std::path::Path;

pub use given::{in_link, of_one_set};
pub use page::{Page, hands_in};
pub use single::{ENTRY, read, single};
pub use workspace::Workspace;

use crate::{Fault, Streams};
use asset::Asset;
use cache::Cache;

/// The length of the part of a file name that stands for its content.
pub const HASH_DIGITS: usize = 16;

/// Builds a page of `workspace` into `folder`.
pub fn build(
    workspace: &Workspace,
    page: Page,
    folder: &Path,
    streams: &mut Streams<'_>,
) -> Result<(), Fault> {
    folder::refuse_foreign(folder)?;
    compile::ensure_target(streams)?;
    streams.say("compiling the page to WebAssembly (a minute or two the first time)");
    let module = compile::page(workspace, page)?;
    streams.say("writing the bindings");
    let mut assets = bind::bind(&module, &workspace.scratch(page.bindings()))?;
    let mut written = Asset::read_folder(&workspace.www())?;
    written.iter_mut().for_each(bind::shorten);
    page.mark(&mut written);
    assets.extend(written);
    assets.extend(given::given(&workspace.scenarios())?);
    let assets = offline::write(names::name(assets)?)?;
    let pressed = if page == Page::Packaged {
        // A package is stored as it is, and no server sends this folder.
        press::plain(assets)
    } else {
        streams.say("compressing");
        let mut cache = Cache::open(workspace.scratch("cache"))?;
        let pressed = press::press(assets, &mut cache)?;
        cache.forget_unused();
        pressed
    };
    let size = folder::write(folder, &pressed)?;
    streams.say(&format!(
        "built {} files into {}: {} kB, {} kB as sent",
        pressed.len(),
        folder.display(),
        size.raw.div_ceil(1000),
        size.sent.div_ceil(1000),
    ));
    Ok(())
}
