//! Running programs where a person can watch, while keeping what they say.

use std::io::{self, BufRead, BufReader, Read, Write};
use std::process::{Command, Stdio};
use std::thread;

/// How a program ended, and everything it said on both streams.
#[derive(Debug)]
pub struct Ran {
    pub succeeded: bool,
    pub text: String,
}

/// Says a line.
pub fn say(line: &str) {
    let mut out = io::stdout().lock();
    // Nobody may be listening any more; the exit code still tells.
    let _ = writeln!(out, "{line}").and_then(|()| out.flush());
}

/// Runs a program to its end, showing each line that `show` lets through.
///
/// # Errors
/// The sentence that says why it could not be started.
pub fn run(command: &mut Command, show: fn(&str) -> bool) -> Result<Ran, String> {
    let program = command.get_program().to_string_lossy().into_owned();
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .map_err(|error| format!("cannot start {program}: {error}; is it installed?"))?;
    let (out, talk) = (child.stdout.take(), child.stderr.take());
    let listener = thread::spawn(move || listen(talk, show));
    let mut text = listen(out, show);
    text += &listener.join().unwrap_or_default();
    let status = child.wait().map_err(|error| format!("cannot wait for {program}: {error}"))?;
    Ok(Ran { succeeded: status.success(), text })
}

/// Runs a program of which only a failure is worth showing.
///
/// # Errors
/// `what` and the last lines that it said.
pub fn must(command: &mut Command, what: &str) -> Result<(), String> {
    let ran = run(command, |_| false)?;
    if ran.succeeded {
        return Ok(());
    }
    let lines: Vec<&str> = ran.text.lines().collect();
    let end = lines[lines.len().saturating_sub(15)..].join("\n  ");
    Err(format!("{what} failed; it said:\n  {end}"))
}

/// Everything: for programs that say little.
pub fn all(_: &str) -> bool {
    true
}

fn listen(stream: Option<impl Read>, show: fn(&str) -> bool) -> String {
    let mut text = String::new();
    let Some(stream) = stream else { return text };
    let mut lines = BufReader::new(stream).split(b'\n');
    while let Some(Ok(line)) = lines.next() {
        let line = String::from_utf8_lossy(&line);
        let line = line.trim_end_matches('\r');
        if show(line) {
            say(line);
        }
        text.push_str(line);
        text.push('\n');
    }
    text
}
