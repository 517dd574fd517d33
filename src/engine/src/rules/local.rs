//! A set's own protocol: for whom it is, which limits it moves inside what is published, and which side
//! it takes where sources differ.
//!
//! It changes what a reading is worth, never what is read: [`Local::zone_of`] is asked in place of
//! [`Rule::zone_of`] wherever a plan on a case is judged. What it may change is worked out from the
//! rules' own data ([`movable`]), so a rule that is added can be moved as far as its figures allow.

use super::bands::{Bands, Belongs, Cut, Zone};
use super::movable::bands_moved;
use super::rule::{Reading, Rule, Scale, Situation};
use serde::{Deserialize, Serialize};
use std::ops::Deref;
use std::sync::Arc;

/// For whom a set is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// Students.
    Student,
    /// Residents.
    Resident,
}

/// How a case is judged in the set that gives it.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Local {
    /// For whom it is given; none outside a set, where nothing hangs on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub level: Option<Level>,
    /// What the set decides otherwise than the rules.
    #[serde(default, skip_serializing_if = "Protocol::is_empty")]
    pub protocol: Protocol,
}

/// What a set decides otherwise than the rules as they stand.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Protocol {
    /// Why, in a sentence; shown with the case.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Limits that it moves.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub bands: Vec<Moved>,
    /// Sides that it takes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub positions: Vec<Held>,
}

/// A limit that is moved.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Moved {
    /// Id of the rule.
    pub rule: String,
    /// Where the limit stands in the rule, in the unit of its scale.
    pub from: f64,
    /// Where the set has it.
    pub to: f64,
}

/// A side that is taken on a rule whose sources differ.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Held {
    /// Id of the rule.
    pub rule: String,
    /// Which of its two positions.
    pub holds: Side,
    /// What that makes of what is debated.
    pub debated: Debated,
}

/// Which of the two positions of a rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// The first.
    One,
    /// The second.
    Other,
}

/// What a side makes of what is debated.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Debated {
    /// All of it the same.
    All(Worth),
    /// Each situation by its key; what is not named stays debated.
    Each(Vec<(String, Worth)>),
}

/// What a debated choice can be worth to a set: good enough, or not what it teaches. Never more: what
/// sources disagree on neither hurts a patient nor is likely to compromise (ours).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Worth {
    /// Acceptable.
    #[serde(rename = "acceptable")]
    Acceptable,
    /// Outside, suboptimal.
    #[serde(rename = "outside-suboptimal")]
    Suboptimal,
}

impl Worth {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Acceptable, Self::Suboptimal];

    /// The zone.
    #[must_use]
    pub const fn zone(self) -> Zone {
        match self {
            Self::Acceptable => Zone::Acceptable,
            Self::Suboptimal => Zone::Suboptimal,
        }
    }
}

impl Protocol {
    /// Whether nothing is decided otherwise.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.note.is_none() && self.bands.is_empty() && self.positions.is_empty()
    }
}

impl Held {
    /// What a debated situation, or the debated stretch of a scale, is worth.
    fn worth(&self, situation: Option<&str>) -> Option<Worth> {
        match &self.debated {
            Debated::All(worth) => Some(*worth),
            Debated::Each(each) => {
                let key = situation?;
                each.iter().find(|(one, _)| one == key).map(|(_, worth)| *worth)
            }
        }
    }
}

/// How a case is judged that a set has given, or none has: shared by all that is made of the case.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Given(Option<Arc<Local>>);

impl Given {
    /// No set.
    pub const NONE: Self = Self(None);
}

impl From<Local> for Given {
    fn from(local: Local) -> Self {
        if local.is_none() { Self::NONE } else { Self(Some(Arc::new(local))) }
    }
}

impl Deref for Given {
    type Target = Local;

    fn deref(&self) -> &Local {
        static NONE: Local = Local::NONE;
        self.0.as_deref().unwrap_or(&NONE)
    }
}

impl Local {
    /// No set: every rule as it stands.
    pub const NONE: Self = Self {
        level: None,
        protocol: Protocol { note: None, bands: Vec::new(), positions: Vec::new() },
    };

    /// Whether there is no set to speak of.
    #[must_use]
    pub const fn is_none(&self) -> bool {
        self.level.is_none() && self.protocol.is_empty()
    }

    /// What a reading is worth here; `None` when it is not of this rule's kind.
    #[must_use]
    pub fn zone_of(&self, rule: &Rule, reading: Reading) -> Option<Zone> {
        match self.of(rule) {
            Some(here) => here.zone_of(reading),
            None => rule.zone_of(reading),
        }
    }

    /// The worst that a rule can say here.
    #[must_use]
    pub fn cost_of(&self, rule: &Rule) -> Zone {
        self.of(rule).map_or_else(|| rule.cost(), |here| here.cost())
    }

    /// How a rule judges here; `None` where it is left as it stands. What does not fit the rule leaves
    /// it as it stands too: whoever reads a protocol from outside refuses that first.
    #[must_use]
    pub fn of(&self, rule: &Rule) -> Option<Here> {
        let Protocol { bands, positions, .. } = &self.protocol;
        // In nearly every case there is nothing, and this is asked very often.
        if bands.is_empty() && positions.is_empty() {
            return None;
        }
        let moved: Vec<&Moved> = bands.iter().filter(|one| one.rule == rule.id).collect();
        let held = positions.iter().find(|one| one.rule == rule.id);
        if moved.is_empty() && held.is_none() {
            return None;
        }
        let (scale, moves) = match &rule.scale {
            Scale::Bands(bands) => {
                let (cuts, moves) = bands_moved(rule, bands, &moved);
                let worth = held.and_then(|held| held.worth(None)).map(Worth::zone);
                (HereScale::of(bands, cuts, worth), moves)
            }
            Scale::Situations(all) => (HereScale::Situations(turned(all, held)), Vec::new()),
        };
        let worth = held.and_then(|held| held.worth(None));
        Some(Here { scale, moved: moves, held: held.map(|held| held.holds), worth })
    }
}

/// The situations of a rule, the debated ones worth what a side makes of them.
fn turned(all: &[Situation], held: Option<&Held>) -> Vec<Situation> {
    let turn = |one: &Situation| {
        let worth =
            held.filter(|_| one.zone == Zone::Debated).and_then(|it| it.worth(Some(one.key)));
        Situation { zone: worth.map_or(one.zone, Worth::zone), ..*one }
    };
    all.iter().map(turn).collect()
}

/// How a rule judges in a set that has changed it.
#[derive(Debug, Clone, PartialEq)]
pub struct Here {
    scale: HereScale,
    /// Limits that were moved, as they stand in the rule, each with where the set has it.
    pub moved: Vec<(Cut, f64)>,
    /// The side that the set takes.
    pub held: Option<Side>,
    /// What that makes of all that is debated; `None` where it tells situations apart.
    pub worth: Option<Worth>,
}

#[derive(Debug, Clone, PartialEq)]
enum HereScale {
    Bands { bands: Bands<'static>, lowest: Zone, cuts: Vec<Cut> },
    Situations(Vec<Situation>),
}

impl HereScale {
    /// Bands with these cuts, where what is debated is worth this.
    fn of(bands: &Bands<'static>, mut cuts: Vec<Cut>, debated: Option<Zone>) -> Self {
        let turned = |zone| debated.filter(|_| zone == Zone::Debated).unwrap_or(zone);
        for cut in &mut cuts {
            cut.then = turned(cut.then);
        }
        // A stretch that was closed is gone, but for one that holds a single value.
        let mut left: Vec<Cut> = Vec::new();
        for cut in cuts {
            let closed = |last: &Cut| {
                let alone = last.belongs == Belongs::Above && cut.belongs == Belongs::Below;
                last.at >= cut.at && !alone
            };
            while left.last().is_some_and(closed) {
                left.pop();
            }
            left.push(cut);
        }
        let lowest = turned(bands.lowest);
        let mut zone = lowest;
        // And so is a limit between two stretches that are now worth the same.
        left.retain(|cut| std::mem::replace(&mut zone, cut.then) != cut.then);
        Self::Bands { bands: *bands, lowest, cuts: left }
    }
}

impl Here {
    /// The scale, where the rule measures a number.
    #[must_use]
    pub fn bands(&self) -> Option<Bands<'_>> {
        match &self.scale {
            HereScale::Bands { bands, lowest, cuts } => {
                Some(Bands { quantity: bands.quantity, unit: bands.unit, lowest: *lowest, cuts })
            }
            HereScale::Situations(_) => None,
        }
    }

    /// What a reading is worth.
    #[must_use]
    pub fn zone_of(&self, reading: Reading) -> Option<Zone> {
        match (&self.scale, reading) {
            (HereScale::Situations(all), Reading::Situation(key)) => {
                all.iter().find(|one| one.key == key).map(|one| one.zone)
            }
            (HereScale::Bands { .. }, Reading::Number(value)) => {
                self.bands().map(|bands| bands.zone_of(value))
            }
            _ => None,
        }
    }

    /// The worst that the rule can say.
    #[must_use]
    pub fn cost(&self) -> Zone {
        let worst = match &self.scale {
            HereScale::Bands { lowest, cuts, .. } => {
                cuts.iter().map(|cut| cut.then).chain([*lowest]).max()
            }
            HereScale::Situations(all) => all.iter().map(|one| one.zone).max(),
        };
        worst.unwrap_or(Zone::Ideal)
    }
}
