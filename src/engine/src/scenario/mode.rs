//! Who does the cases of a set.

use serde::{Deserialize, Serialize};

/// Who does the cases, and when explanations come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mode {
    /// Each case is shown, act by act with the reasons: there is nothing to hand in.
    Worked,
    /// The learner, explained as each step is carried out.
    Study,
    /// The learner, explained at the end.
    Assessment,
}

impl Mode {
    /// Every one, with what files hold.
    pub(super) const KEYED: [(&'static str, Self); 3] =
        [("worked", Self::Worked), ("study", Self::Study), ("assessment", Self::Assessment)];

    /// What files hold.
    #[must_use]
    pub const fn key(self) -> &'static str {
        Self::KEYED[self as usize].0
    }
}
