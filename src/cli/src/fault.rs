//! Why a command could not run, in words that help.

use std::error::Error;
use std::fmt;
use std::io;

use clap::error::ErrorKind;

/// What went wrong, what lies behind it, and what to try. Lower case, no full stop.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    what: String,
    causes: Vec<String>,
    hints: Vec<String>,
    broken_pipe: bool,
}

impl Fault {
    /// A fault that says what was found, what was expected and where.
    #[must_use]
    pub fn new(what: impl Into<String>) -> Self {
        Self { what: what.into(), causes: Vec::new(), hints: Vec::new(), broken_pipe: false }
    }

    /// A command line that could not be read; clap words it, usage and hints included.
    #[must_use]
    pub fn usage(error: &clap::Error) -> Self {
        let text = error.render().to_string();
        if error.kind() == ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand {
            return Self::new(format!(
                "found no command, expected one of these\n\n{}",
                text.trim_end()
            ));
        }
        Self::new(text.strip_prefix("error: ").unwrap_or(&text).trim_end())
    }

    /// Adds what lies behind it, link by link.
    #[must_use]
    pub fn because(mut self, cause: &(dyn Error + 'static)) -> Self {
        self.broken_pipe |= cause
            .downcast_ref::<io::Error>()
            .is_some_and(|error| error.kind() == io::ErrorKind::BrokenPipe);
        let mut link = Some(cause);
        while let Some(cause) = link {
            self.causes.push(cause.to_string());
            link = cause.source();
        }
        self
    }

    /// Adds a way out.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hints.push(hint.into());
        self
    }

    /// Whether the reader of the results went away.
    #[must_use]
    pub fn is_broken_pipe(&self) -> bool {
        self.broken_pipe
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "error: {}", self.what)?;
        for cause in &self.causes {
            write!(formatter, "\n  cause: {cause}")?;
        }
        for hint in &self.hints {
            write!(formatter, "\n  hint: {hint}")?;
        }
        Ok(())
    }
}

impl Error for Fault {}

/// Says what a failed operation was for.
pub trait Why<T> {
    /// The value, or a fault whose first line is `what()`.
    ///
    /// # Errors
    /// When the operation failed.
    fn why(self, what: impl FnOnce() -> String) -> Result<T, Fault>;
}

impl<T, E: Error + 'static> Why<T> for Result<T, E> {
    fn why(self, what: impl FnOnce() -> String) -> Result<T, Fault> {
        self.map_err(|error| Fault::new(what()).because(&error))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_prints_what_then_causes_then_hints() {
        let missing: Result<(), _> = Err(io::Error::new(io::ErrorKind::NotFound, "no such file"));
        let fault = missing.why(|| "cannot read x".to_owned()).unwrap_err().hint("write x first");
        assert_eq!(
            fault.to_string(),
            "error: cannot read x\n  cause: no such file\n  hint: write x first"
        );
        assert!(!fault.is_broken_pipe());
    }

    #[test]
    fn a_reader_that_went_away_is_told_from_a_failure() {
        let gone: Result<(), _> = Err(io::Error::from(io::ErrorKind::BrokenPipe));
        assert!(gone.why(String::new).unwrap_err().is_broken_pipe());
    }
}
