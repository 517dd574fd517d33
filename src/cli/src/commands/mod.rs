//! The subcommands, one file each: its arguments, and a `run` that works through the libraries.

mod build;
mod serve;

use clap::Subcommand;

use crate::{Fault, Status, Streams};

#[derive(Debug, Subcommand)]
pub enum Command {
    /// Build the page into a folder that any static host can serve
    Build(build::Args),
    /// Build the page and serve it on this machine
    Serve(serve::Args),
}

/// Runs one subcommand.
pub fn run(command: Command, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    match command {
        Command::Build(args) => build::run(args, streams),
        Command::Serve(args) => serve::run(args, streams),
    }
}
