//! `wallwise build`: the page as a folder of files.

use std::path::PathBuf;

use crate::site::{self, Page, Workspace};
use crate::{Fault, Status, Streams};

#[derive(Debug, clap::Args)]
pub struct Args {
    /// Build the page that packages carry instead, for `wallwise package --site DIR`
    #[arg(long)]
    for_packages: bool,
    /// Folder to write to [default: target/site in the repository, target/package-site for packages]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
}

/// Builds, and prints the folder.
pub fn run(args: Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let workspace = Workspace::find()?;
    let (page, usual) = if args.for_packages {
        (Page::Packaged, workspace.package_site())
    } else {
        (Page::Room, workspace.default_site())
    };
    let folder = args.out.unwrap_or(usual);
    site::build(&workspace, page, &folder, streams)?;
    streams.print(&format!("{}\n", folder.display()))?;
    Ok(Status::Done)
}
