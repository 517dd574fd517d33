//! `wallwise set link FILE`: the link of a set, which the room and its desk open.

use crate::site::in_link;
use crate::{Fault, Status, Streams, Why, input};
use engine::scenario::Set;
use flate2::Compression;
use flate2::write::ZlibEncoder;
use learning::handing::compact::letters;
use std::io::Write;
use std::path::Path;

/// The form of the link, before its letters.
const VERSION: &str = "1.";

/// Prints the link, and beside it what it leaves behind.
pub fn run(
    file: &Path,
    set: &Set,
    room: Option<&str>,
    streams: &mut Streams<'_>,
) -> Result<Status, Fault> {
    let mut small = ZlibEncoder::new(Vec::new(), Compression::best());
    let squeezed = small.write_all(&in_link(file)?).and_then(|()| small.finish());
    let squeezed = squeezed.why(|| format!("cannot squeeze {}", file.display()))?;
    let room = room.unwrap_or_default().trim_end_matches('#');
    streams.print(&format!("{room}#/given/{VERSION}{}\n", letters::spell(&squeezed)))?;
    for left in left_behind(set, &input::read(file)?) {
        streams.say(&format!("left behind: {left}"));
    }
    Ok(Status::Done)
}

/// What of a file no link holds.
fn left_behind(set: &Set, text: &str) -> Vec<String> {
    let comments = text.lines().filter(|line| line.trim_start().starts_with('#')).count();
    let asks = set.cases.iter().filter(|case| case.ask.is_some()).count();
    let expected = set.cases.iter().filter(|case| !case.expect.is_empty()).count();
    let counts = [
        (comments, "lines of comment"),
        (asks, "questions to ask after a case"),
        (expected, "cases with what a plan is expected to get"),
    ];
    counts
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, of)| format!("{count} {of}"))
        .collect()
}
