//! Where a command writes: results and talk never mix.

use std::fmt;
use std::io::Write;

use crate::{Fault, Why};

/// The two streams of a command.
pub struct Streams<'a> {
    out: &'a mut dyn Write,
    talk: &'a mut dyn Write,
}

impl fmt::Debug for Streams<'_> {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("Streams")
    }
}

impl<'a> Streams<'a> {
    /// Results to `out`, talk to `talk`.
    pub fn new(out: &'a mut dyn Write, talk: &'a mut dyn Write) -> Self {
        Self { out, talk }
    }

    /// Writes a result, at once: the reader may be a program that waits for it.
    ///
    /// # Errors
    /// When the stream cannot be written.
    pub fn print(&mut self, text: &str) -> Result<(), Fault> {
        let written = self.out.write_all(text.as_bytes()).and_then(|()| self.out.flush());
        written.why(|| "cannot write the result".to_owned())
    }

    /// Writes a result as JSON for programs.
    ///
    /// # Errors
    /// When the stream cannot be written.
    pub fn print_json<T: serde::Serialize>(&mut self, value: &T) -> Result<(), Fault> {
        let text = serde_json::to_string_pretty(value).why(|| "cannot write JSON".to_owned())?;
        self.print(&(text + "\n"))
    }

    /// Says a line to the person. Talk that nobody can hear is no reason to stop.
    pub fn say(&mut self, line: &str) {
        let _ = writeln!(self.talk, "{line}");
    }
}
