//! The subcommands, one file each: its arguments, and a `run` that works through the libraries.

mod build;
pub mod case;
mod class;
mod explain;
mod judge;
mod package;
mod pair;
mod population;
mod protocol;
mod replay;
mod rules;
mod serve;
pub mod set;
mod standard;
mod statements;

use clap::Subcommand;

use crate::{Fault, Status, Streams};

#[derive(Debug, Subcommand)]
pub enum Command {
    /// Build the page into a folder that any static host can serve
    Build(build::Args),
    /// Build the page and serve it on this machine
    Serve(serve::Args),
    /// Print one case for the instructor, or write its solids and figures
    Case(case::Args),
    /// Judge a plan on a case
    Judge(judge::Args),
    /// Print two cases that differ in one thing, and what has to change between them
    Pair(pair::Args),
    /// Do attempts that a learner saved again, and print what comes of them
    Replay(replay::Args),
    /// Read what a class handed in: what it has understood, and what not
    Class(class::Args),
    /// Set a pass mark by judges' expectations or by ratings
    Standard(standard::Args),
    /// Check a set
    Set(set::Args),
    /// Pack a set and the page into one file for a learning management system
    Package(package::Args),
    /// Print what came of saved attempts as statements (xAPI 1.0.3)
    Statements(statements::Args),
    /// Hold the population draws against published figures
    Population(population::Args),
    /// List every rule with its limits
    Rules(rules::Args),
    /// Print one rule in full
    Explain(explain::Args),
}

/// Runs one subcommand.
pub fn run(command: Command, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    match command {
        Command::Build(args) => build::run(args, streams),
        Command::Serve(args) => serve::run(args, streams),
        Command::Case(args) => case::run(&args, streams),
        Command::Judge(args) => judge::run(&args, streams),
        Command::Pair(args) => pair::run(&args, streams),
        Command::Replay(args) => replay::run(&args, streams),
        Command::Class(args) => class::run(&args, streams),
        Command::Set(args) => set::run(&args, streams),
        Command::Standard(args) => standard::run(&args, streams),
        Command::Package(args) => package::run(args, streams),
        Command::Statements(args) => statements::run(&args, streams),
        Command::Population(args) => population::run(&args, streams),
        Command::Rules(args) => rules::run(&args, streams),
        Command::Explain(args) => explain::run(&args, streams),
    }
}
