//! Who says so, and whether the figure was read.

/// A text that the page fetches after the first case: there with feature `prose`, empty without it,
/// so that the page's module need not carry it.
#[cfg(feature = "prose")]
macro_rules! long {
    ($text:expr) => {
        $text
    };
}
#[cfg(not(feature = "prose"))]
macro_rules! long {
    ($text:expr) => {
        ""
    };
}

/// One source of a rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Evidence {
    /// Author, year, subject, journal: as the ledger gives it.
    pub cite: &'static str,
    /// What sort of source.
    pub source: Source,
    /// Whether the figure was read in it.
    pub status: Status,
    /// What it says, in one sentence, with its figure.
    pub says: &'static str,
}

/// What sort of source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// Systematic review or meta-analysis.
    SystematicReview,
    /// Randomised or controlled trial.
    Trial,
    /// Cohort or case series.
    Cohort,
    /// Consensus report or guideline.
    Consensus,
    /// Narrative review or expert opinion.
    Opinion,
    /// Animal or bench work.
    Laboratory,
    /// Survey of images or anatomy.
    Anatomy,
    /// Textbook or teaching page.
    Textbook,
    /// A habit of the trade.
    CommonPractice,
    /// This project's own choice.
    Ours,
}

/// Whether the figure was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Status {
    /// Read in the source itself.
    Confirmed,
    /// Read in a later paper, guideline page or textbook that restates it.
    ConfirmedSecondary,
    /// Document or concept seen, exact figure not.
    Partly,
    /// Not re-read.
    FromMemory,
    /// A habit of the trade without a source.
    NoSource,
    /// This project's own choice.
    Ours,
}

impl Source {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::SystematicReview => "systematic review",
            Self::Trial => "trial",
            Self::Cohort => "cohort or series",
            Self::Consensus => "consensus or guideline",
            Self::Opinion => "review or expert opinion",
            Self::Laboratory => "animal or bench work",
            Self::Anatomy => "survey of anatomy",
            Self::Textbook => "textbook",
            Self::CommonPractice => "common practice",
            Self::Ours => "our own choice",
        }
    }
}

impl Status {
    /// The mark that stands beside the figure.
    #[must_use]
    pub const fn mark(self) -> &'static str {
        match self {
            Self::Confirmed => "confirmed",
            Self::ConfirmedSecondary => "confirmed (secondary)",
            Self::Partly => "partly confirmed",
            Self::FromMemory => "from memory",
            Self::NoSource => "common practice, no source",
            Self::Ours => "ours",
        }
    }

    /// Whether the source may be printed as the source of the figure.
    #[must_use]
    pub const fn figure_was_read(self) -> bool {
        matches!(self, Self::Confirmed | Self::ConfirmedSecondary)
    }
}

impl Evidence {
    /// The citation as it may be printed: a figure that was not read is attributed, not cited.
    #[must_use]
    pub fn attribution(&self) -> String {
        match self.status {
            Status::Confirmed | Status::ConfirmedSecondary => {
                format!("{} ({})", self.cite, self.status.mark())
            }
            Status::Partly | Status::FromMemory => {
                format!("widely taught, figure not re-read, attributed to {}", self.cite)
            }
            Status::NoSource | Status::Ours => self.status.mark().to_owned(),
        }
    }
}
