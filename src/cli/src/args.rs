//! The command line; these comments are its help.

use clap::Parser;

use crate::commands::Command;

/// A rehearsal room for extraction-socket decisions: a teaching tool on synthetic cases, never
/// clinical advice.
#[derive(Debug, Parser)]
#[command(
    name = "wallwise",
    version,
    after_help = "Exit code: 0 done, 1 findings, 2 could not run."
)]
pub struct Args {
    #[command(subcommand)]
    pub command: Command,
}
