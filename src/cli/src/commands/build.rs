//! `wallwise build`: the page as a folder of files.

use std::path::PathBuf;

use crate::site::{self, Workspace};
use crate::{Fault, Status, Streams};

#[derive(Debug, clap::Args)]
pub struct Args {
    /// Folder to write to [default: target/site in the repository]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
}

/// Builds, and prints the folder.
pub fn run(args: Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let workspace = Workspace::find()?;
    let folder = args.out.unwrap_or_else(|| workspace.default_site());
    site::build(&workspace, &folder, streams)?;
    streams.print(&format!("{}\n", folder.display()))?;
    Ok(Status::Done)
}
