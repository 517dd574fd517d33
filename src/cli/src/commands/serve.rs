//! `wallwise serve`: the page at an address of this machine.

use std::path::PathBuf;

use crate::http::Server;
use crate::site::{self, Page, Workspace};
use crate::{Fault, Status, Streams};

#[derive(Debug, clap::Args)]
pub struct Args {
    /// Port on 127.0.0.1; 0 takes any free one
    #[arg(long, value_name = "N", default_value_t = 8642)]
    port: u16,
    /// Folder to build into and serve [default: target/site in the repository]
    #[arg(long, value_name = "DIR")]
    folder: Option<PathBuf>,
    /// Serve the folder as it is
    #[arg(long)]
    no_build: bool,
}

/// Builds unless told not to, prints the address, and answers until the process is stopped.
pub fn run(args: Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    // First the port: whoever must pick another should not wait for a build to hear it.
    let port = Server::claim(args.port)?;
    let folder = match (args.folder, args.no_build) {
        (Some(folder), true) => folder,
        (None, true) => Workspace::find()?.default_site(),
        (folder, false) => {
            let workspace = Workspace::find()?;
            let folder = folder.unwrap_or_else(|| workspace.default_site());
            site::build(&workspace, Page::Room, &folder, streams)?;
            folder
        }
    };
    let server = Server::new(port, &folder)?;
    streams.print(&format!("{}\n", server.address()))?;
    streams.say("serving on this machine only; stop with Ctrl-C");
    server.run()
}
