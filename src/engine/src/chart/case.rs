//! A case: a site, a patient, and what each examination would read there.

use super::{Aspect, Change, Patient};
use crate::anatomy::Site;
use crate::rules::{Given, Local};
use crate::units::Mm;
use core::fmt;
use core::str::FromStr;
use serde::{Deserialize, Serialize};

/// Everything about one case. Synthetic, not for treatment.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Case {
    /// Where it comes from; `None` for a case that was written out in full.
    pub address: Option<Address>,
    /// A short plain title.
    pub title: String,
    /// What is really there.
    pub site: Site,
    /// Who sits in the chair.
    pub patient: Patient,
    /// What the examinations would read, errors included.
    pub readings: Readings,
    /// What decides its events, where that is not to be made of the rest: a case that differs from
    /// another in one thing meets the same chances.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chance: Option<i64>,
    /// What the extraction has broken off the facial plate. Nothing in a case that is drawn or
    /// read: only [`events::after`](crate::events::after) says so, of the case as a plan left it.
    #[serde(skip)]
    pub broken: Option<Fragment>,
    /// How the set that gives the case judges it. It stands with the case so that whoever judges,
    /// proves, sweeps or searches does so under it; it is no part of what is written of the case.
    #[serde(skip)]
    pub local: Given,
}

impl Case {
    /// The case as a set gives it.
    #[must_use]
    pub fn under(self, local: Local) -> Self {
        Self { local: local.into(), ..self }
    }
}

/// A piece of the facial plate that broke away with the root.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fragment {
    /// It hangs on its periosteum.
    OnPeriosteum,
    /// Nothing holds it.
    Loose,
}

/// What examinations would read here, errors included; drawn once, with the case.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Readings {
    /// The written section report.
    pub sections: SectionReport,
    /// Bone sounding, mesial to distal on the facial side, then mid-oral.
    pub sounding: [SoundingReading; 4],
    /// Six probing depths: facial mesial, mid, distal; oral mesial, mid, distal.
    pub probing: [Mm; 6],
    /// Root length from crest to apex as the film shows it.
    pub film_root_length: Mm,
    /// Distance apex to floor as the film shows it, where a floor is near.
    pub film_floor: Option<Mm>,
    /// Lesion across as the film shows it; `None` when it does not show.
    pub film_lesion: Option<Mm>,
}

impl Readings {
    /// Millimetres: up to here a sounding over the middle of the facial wall is normal [ours].
    pub(crate) const NORMAL_SOUNDING: f64 = 3.5;
    /// Millimetres: how much deeper than its neighbours counts as loss [ours].
    pub(crate) const DEEPER: f64 = 2.0;

    /// Whether the middle of the facial wall sounds normal.
    #[must_use]
    pub fn sounds_normal(&self) -> bool {
        let [_, middle, _, _] = self.sounding;
        crate::units::comparable(middle.depth.get()) <= Self::NORMAL_SOUNDING
    }

    /// Whether sounding shows a loss in the middle of the facial wall: past what is normal, and 2 mm
    /// or more deeper than the shallower of its neighbours. A normal depth beside a shallow misreading
    /// is no loss.
    #[must_use]
    pub fn sounds_lost(&self) -> bool {
        let [mesial, middle, distal, _] = self.sounding;
        let beside = mesial.depth.min(distal.depth).get();
        !self.sounds_normal()
            && crate::units::comparable(middle.depth.get() - beside) >= Self::DEEPER
    }
}

/// Distances as a section report gives them, each with the same error of reading.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SectionReport {
    /// Half-width of the interval that the report states with every distance.
    pub error: Mm,
    /// Facial plate 1 mm below the crest; `None` reads *not discernible*.
    pub facial_plate: Option<Mm>,
    /// Oral plate 1 mm below the crest; `None` reads *not discernible*.
    pub oral_plate: Option<Mm>,
    /// Ridge width at the crest, at mid-root and at the apex.
    pub ridge_width: [Mm; 3],
    /// Deepest facial concavity under a line from the crest, and its level.
    pub concavity: Mm,
    /// Deepest lingual undercut; nothing in the maxilla.
    pub undercut: Mm,
    /// Apex to canal.
    pub canal: Option<Mm>,
    /// Apex to foramen.
    pub foramen: Option<Mm>,
    /// Length of the anterior loop; `Some(0)` reads *no loop*.
    pub loop_length: Option<Mm>,
    /// Apex to the floor of sinus or nose; negative when the root stands in it.
    pub floor: Option<Mm>,
    /// Root to nasopalatine canal.
    pub nasopalatine: Option<Mm>,
    /// Bone beyond the apex along the root's axis.
    pub beyond_apex: Mm,
    /// Lesion across, where one shows.
    pub lesion: Option<Mm>,
    /// Grey-level guess of the density class (grey values are not Hounsfield units).
    pub density: crate::anatomy::DensityClass,
}

/// One sounding under anaesthesia: from the gum margin to the bone.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SoundingReading {
    /// Depth as read.
    pub depth: Mm,
}

/// Where a case comes from: `format.generator.seed.try`, and of a case that differs from that one in
/// one thing, `.aspect.steps` as well. `try` counts rejected draws, so that replay never searches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Address {
    /// Version of this notation: 1.
    pub format: u16,
    /// Number of the generator; a change that moves drawn values is a new number.
    pub generator: u16,
    /// The seed.
    pub seed: u64,
    /// Which draw of that seed.
    pub attempt: u32,
    /// What was changed of it afterwards.
    pub changed: Option<Change>,
}

/// Text that is no address.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadAddress {
    /// The text as it came, shortened.
    pub found: String,
    /// What is wrong with it.
    pub why: &'static str,
}

impl fmt::Display for BadAddress {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "found the case address \"{}\": {}; expected format.generator.seed.try, for example 1.1.2024.0, or a bare seed",
            self.found, self.why
        )
    }
}

impl core::error::Error for BadAddress {}

impl fmt::Display for Address {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}.{}.{}", self.format, self.generator, self.seed, self.attempt)?;
        self.changed.map_or(Ok(()), |change| write!(f, ".{change}"))
    }
}

impl FromStr for Address {
    type Err = BadAddress;

    fn from_str(text: &str) -> Result<Self, BadAddress> {
        let refuse = |why| BadAddress { found: text.chars().take(60).collect(), why };
        let parts: Vec<&str> = text.trim().split('.').collect();
        let (format, generator, seed, attempt, changed) = match *parts.as_slice() {
            [format, generator, seed, attempt] => (format, generator, seed, attempt, None),
            [format, generator, seed, attempt, aspect, to] => {
                (format, generator, seed, attempt, Some((aspect, to)))
            }
            _ => return Err(refuse("it has neither four parts nor six")),
        };
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
        if ![format, generator, seed, attempt].iter().all(|part| digits(part)) {
            return Err(refuse("a part is not a whole number"));
        }
        Ok(Self {
            format: format.parse().map_err(|_| refuse("the format is too large"))?,
            generator: generator.parse().map_err(|_| refuse("the generator is too large"))?,
            seed: seed.parse().map_err(|_| refuse("the seed is too large"))?,
            attempt: attempt.parse().map_err(|_| refuse("the try is too large"))?,
            changed: changed.map(|(aspect, to)| change(aspect, to).map_err(refuse)).transpose()?,
        })
    }
}

/// What an address says was changed.
fn change(aspect: &str, to: &str) -> Result<Change, &'static str> {
    let aspect =
        Aspect::from_key(aspect).ok_or("no case can be changed in what its fifth part names")?;
    let to = to.parse().map_err(|_| "its sixth part is no whole number of steps")?;
    let [least, most] = aspect.scaled().range;
    if (least..=most).contains(&to) {
        Ok(Change { aspect, to })
    } else {
        Err("its sixth part is beyond what is met in practice")
    }
}

impl Serialize for Address {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Address {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        String::deserialize(from)?.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_reads_back_as_it_was_written() {
        let address =
            Address { format: 1, generator: 1, seed: u64::MAX, attempt: 7, changed: None };
        assert_eq!(address.to_string().parse(), Ok(address));
        let changed = Some(Change { aspect: Aspect::BoneToFloor, to: -12 });
        let address = Address { changed, ..address };
        assert_eq!(address.to_string(), format!("1.1.{}.7.bone-to-floor.-12", u64::MAX));
        assert_eq!(address.to_string().parse(), Ok(address));
    }

    #[test]
    fn what_is_no_address_says_why() {
        for (text, why) in [
            ("1.1.5", "four parts"),
            ("1.1.5.0.gum", "four parts"),
            ("1.1.5.0.colour.3", "fifth part"),
            ("1.1.5.0.gum.x", "sixth part is no"),
            ("1.1.5.0.gum.999", "beyond what"),
            ("1.1.x.0", "whole number"),
            ("1.1.99999999999999999999.0", "seed is too large"),
            ("1.1.-5.0", "whole number"),
            ("", "four parts"),
        ] {
            let said = text.parse::<Address>().unwrap_err().to_string();
            assert!(said.contains(why), "{text}: {said}");
        }
    }
}
