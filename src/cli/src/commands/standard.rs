//! `wallwise standard`: where a pass mark lies, by what judges expect or by how examiners rated
//! performances as a whole. Unsafe acts have a pass line of their own, which no mark makes up for.

mod judges;
mod ratings;
mod table;

use crate::{Fault, Status, Streams};
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub struct Args {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, clap::Subcommand)]
enum What {
    /// By what judges expect of somebody who can just be let pass (Angoff): a table with a row for each
    /// judge and a column for each case, chances from 0 to 1
    Judges {
        /// The table, CSV: judge, then a case in each column
        file: PathBuf,
        /// What the class handed in, to stand beside each judge's number
        #[arg(value_name = "PATH")]
        handed_in: Vec<PathBuf>,
    },
    /// By how examiners rated performances as a whole (borderline regression): marks come from what the
    /// class handed in, done again
    Ratings {
        /// The table, CSV: learner, case, rating
        file: PathBuf,
        /// What the class handed in
        #[arg(required = true, value_name = "PATH")]
        handed_in: Vec<PathBuf>,
        /// The rating of a performance that is neither a clear pass nor a clear fail
        #[arg(long, value_name = "RATING")]
        borderline: f64,
    },
}

/// Sets the standard that is asked for.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    match &args.what {
        What::Judges { file, handed_in } => judges::run(file, handed_in, streams),
        What::Ratings { file, handed_in, borderline } => {
            ratings::run(file, handed_in, *borderline, streams)
        }
    }
}
