//! What a set may ask of the cases that it draws by seed.

use super::archetype::Archetype;
use super::{Spread, Within};
use crate::anatomy::{Jaw, Site, Tooth};
use serde::{Deserialize, Serialize};

/// Conditions on a drawn case; what is `None` is free.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default, rename_all = "kebab-case")]
pub struct Constraints {
    /// What decides something in it.
    pub archetype: Option<Archetype>,
    /// Which tooth.
    pub tooth: Option<Tooth>,
    /// Upper or lower.
    pub upper: Option<bool>,
    /// Whether the margin shows at full smile.
    pub aesthetic: Option<bool>,
    /// How hard it is.
    pub difficulty: Option<Within>,
}

/// Why no case can meet some constraints.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Impossible {
    /// A molar, asked of draws of one root.
    Molar {
        /// Which.
        tooth: Tooth,
    },
    /// A third molar, asked of draws of the whole mouth.
    ThirdMolar {
        /// Which.
        tooth: Tooth,
    },
    /// The archetype cannot stand at this tooth, or in this jaw.
    Misplaced {
        /// Which archetype.
        archetype: Archetype,
    },
    /// Nothing decides a population case before it is drawn.
    NoArchetypes,
    /// The tooth is in the other jaw.
    OtherJaw {
        /// Which tooth.
        tooth: Tooth,
    },
}

impl core::fmt::Display for Impossible {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Molar { tooth } => write!(
                f,
                "found tooth {tooth}, expected a tooth with one root: positions 1 to 5 of a quadrant; molars are drawn where the seed is spread over the whole mouth"
            ),
            Self::ThirdMolar { tooth } => write!(
                f,
                "found tooth {tooth}, expected positions 1 to 7 of a quadrant: third molars are not drawn"
            ),
            Self::Misplaced { archetype } => write!(
                f,
                "{} does not occur at that site; leave the tooth out, or choose among {}{}",
                archetype.key(),
                archetype.teeth().iter().map(ToString::to_string).collect::<Vec<_>>().join(", "),
                if archetype.teeth().is_empty() {
                    "the teeth of several roots, with the seed spread over the whole mouth"
                } else {
                    ""
                }
            ),
            Self::NoArchetypes => f.write_str(
                "population cases have no archetype: ask for tooth, upper or aesthetic, or spread the seed for teaching",
            ),
            Self::OtherJaw { tooth } => {
                write!(f, "tooth {tooth} stands in the other jaw: change one of the two")
            }
        }
    }
}

impl core::error::Error for Impossible {}

impl Constraints {
    /// Whether some case could meet them.
    ///
    /// # Errors
    /// [`Impossible`] with the reason.
    pub fn check(&self) -> Result<(), Impossible> {
        self.check_among(Archetype::teeth)?;
        match self.tooth {
            Some(tooth) if tooth.position() > 5 => Err(Impossible::Molar { tooth }),
            _ => Ok(()),
        }
    }

    fn check_among(&self, teeth: impl Fn(Archetype) -> Vec<Tooth>) -> Result<(), Impossible> {
        if let Some(tooth) = self.tooth
            && self.upper.is_some_and(|upper| upper != (tooth.jaw() == Jaw::Maxilla))
        {
            return Err(Impossible::OtherJaw { tooth });
        }
        if let Some(archetype) = self.archetype
            && !teeth(archetype).into_iter().any(|tooth| self.allows_tooth(tooth))
        {
            return Err(Impossible::Misplaced { archetype });
        }
        Ok(())
    }

    /// Whether some case that is spread so could meet them.
    ///
    /// # Errors
    /// [`Impossible`] with the reason.
    pub fn check_for(&self, spread: Spread) -> Result<(), Impossible> {
        match (spread, self.tooth) {
            (Spread::Population, _) if self.archetype.is_some() => Err(Impossible::NoArchetypes),
            (Spread::WholeMouth, Some(tooth)) if tooth.position() > 7 => {
                Err(Impossible::ThirdMolar { tooth })
            }
            (Spread::WholeMouth, _) => self.check_among(Archetype::teeth_of_mouth),
            _ => self.check(),
        }
    }

    /// Whether a drawn archetype and tooth meet them: cheap, before anything else is drawn.
    pub(super) fn allows(&self, archetype: Archetype, tooth: Tooth) -> bool {
        self.archetype.is_none_or(|asked| asked == archetype) && self.allows_tooth(tooth)
    }

    pub(super) fn allows_archetype(&self, archetype: Archetype) -> bool {
        self.archetype.is_none_or(|asked| asked == archetype)
    }

    pub(super) fn allows_tooth(&self, tooth: Tooth) -> bool {
        self.tooth.is_none_or(|asked| asked == tooth)
            && self.upper.is_none_or(|upper| upper == (tooth.jaw() == Jaw::Maxilla))
    }

    /// Whether a drawn site meets them.
    pub(super) fn allows_site(&self, site: &Site) -> bool {
        self.aesthetic.is_none_or(|asked| asked == site.is_aesthetic())
    }
}
