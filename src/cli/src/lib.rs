//! The `wallwise` tool as a library: arguments and two streams in, a status out.
//!
//! Results go to `out`, talk goes to `talk`, and the exit code says how it went: 0 done, 1 findings,
//! 2 could not run. Each subcommand is one file under `commands`.
//!
//! ```
//! use wallwise::{Status, Streams, run};
//!
//! let (mut out, mut talk) = (Vec::new(), Vec::new());
//! let status = run(["wallwise", "--version"], &mut Streams::new(&mut out, &mut talk));
//! assert_eq!(status, Ok(Status::Done));
//! assert!(out.starts_with(b"wallwise "));
//! ```

mod args;
mod commands;
mod fault;
mod http;
mod input;
pub mod shapes;
mod site;
mod streams;

use std::ffi::OsString;
use std::io;
use std::process::ExitCode;

use clap::Parser;

pub use fault::{Fault, Why};
pub use streams::Streams;

/// How a command that could run went.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Status {
    /// Nothing to complain about.
    Done,
    /// It ran, and found something wrong in what it was given.
    Findings,
}

/// The whole tool, from the process's arguments to its exit code.
#[must_use]
pub fn main() -> ExitCode {
    let (mut out, mut talk) = (io::stdout(), io::stderr());
    let mut streams = Streams::new(&mut out, &mut talk);
    match run(std::env::args_os(), &mut streams) {
        Ok(Status::Done) => ExitCode::SUCCESS,
        Ok(Status::Findings) => ExitCode::from(1),
        // The reader went away (`wallwise … | head`): it has what it wanted.
        Err(fault) if fault.is_broken_pipe() => ExitCode::SUCCESS,
        Err(fault) => {
            streams.say(&fault.to_string());
            ExitCode::from(2)
        }
    }
}

/// Runs one command line, the first word of which is the program's own name.
///
/// # Errors
/// When the command could not run: found, expected, where, and a way out.
pub fn run<I, T>(arguments: I, streams: &mut Streams<'_>) -> Result<Status, Fault>
where
    I: IntoIterator<Item = T>,
    T: Into<OsString> + Clone,
{
    match args::Args::try_parse_from(arguments) {
        Ok(args) => commands::run(args.command, streams),
        Err(error) if error.use_stderr() => Err(Fault::usage(&error)),
        // `--help` and `--version` are what was asked for.
        Err(error) => streams.print(&error.render().to_string()).map(|()| Status::Done),
    }
}
