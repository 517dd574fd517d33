//! Bone sounding: the first round by habit, as the case reads, then wherever the learner puts the probe.
//!
//! A reading is off as the readings of a drawn case are: too shallow by more than 1 mm in 12 of 100
//! (190 teeth, Kan 2003, confirmed), the rest near. The same place reads the same the first time, and
//! the second time, in every attempt at a case; going there again is another reading.

use super::Session;
use crate::anatomy::{Site, Wall};
use crate::cases::{FAR, NEAR, NEAREST, SHALLOW, from_margin_to_bone, on_the_scale};
use crate::chart::{Case, Readings};
use crate::geometry::order;
use crate::imaging::{Noise, key};
use crate::plan::Refusal;
use crate::plan::choices::Examination;
use crate::units::{Mm, comparable};
use serde::{Deserialize, Serialize};

/// A place of the probe on the gum's margin.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Spot {
    /// On which side.
    pub wall: Wall,
    /// Tenths of a millimetre along the arch from the middle of the tooth, positive distally.
    pub tenths: i8,
}

impl Spot {
    /// How far to either side of its middle the neck of a site's tooth goes, tenths of a millimetre.
    #[must_use]
    pub fn reach(site: &Site) -> i8 {
        #[expect(clippy::cast_possible_truncation, reason = "a tooth's half, held to 12 mm")]
        let reach = libm::floor(site.coronal().half_md.get().clamp(0.0, 12.0) * 10.0) as i8;
        reach
    }

    /// Whether the probe can stand there at a site.
    #[must_use]
    pub fn is_possible(self, site: &Site) -> bool {
        self.tenths.unsigned_abs() <= Self::reach(site).unsigned_abs()
    }

    /// Millimetres along the arch.
    #[must_use]
    pub fn along(self) -> f64 {
        f64::from(self.tenths) / 10.0
    }

    /// In words, without the side.
    #[must_use]
    pub fn words(self) -> String {
        match self.tenths {
            0 => "in the middle".to_owned(),
            tenths if tenths > 0 => format!("{:.1} mm distally", self.along()),
            _ => format!("{:.1} mm mesially", -self.along()),
        }
    }
}

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sounded {
    /// Where.
    pub spot: Spot,
    /// From the gum's margin to the bone as read, to half a millimetre.
    pub depth: Mm,
    /// Whether the learner chose the place; the first round is taken by habit.
    pub chosen: bool,
}

impl Sounded {
    /// Its class.
    #[must_use]
    pub fn class(&self) -> Depth {
        Depth::of(self.depth)
    }
}

/// Class of a depth (0 to 3, 3 to 5, 6 to 8, 8 and more: Caplanis 2005, confirmed; what closes the holes
/// between them, ours).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Depth {
    /// Up to 3 mm.
    UpToThree,
    /// Above 3 up to 5 mm.
    UpToFive,
    /// Above 5 and below 8 mm.
    BelowEight,
    /// 8 mm and more.
    EightAndMore,
}

impl Depth {
    /// The class of a depth.
    #[must_use]
    pub fn of(depth: Mm) -> Self {
        match comparable(depth.get()) {
            depth if depth <= 3.0 => Self::UpToThree,
            depth if depth <= 5.0 => Self::UpToFive,
            depth if depth < 8.0 => Self::BelowEight,
            _ => Self::EightAndMore,
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::UpToThree => "0 to 3 mm",
            Self::UpToFive => "above 3 to 5 mm",
            Self::BelowEight => "above 5, below 8 mm",
            Self::EightAndMore => "8 mm and more",
        }
    }
}

/// What the readings of one side come to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// None is past what is normal.
    Normal,
    /// One is, and nothing beside it says that bone is missing.
    Suspect(Spot),
    /// One is, and lies 2 mm or more deeper than one beside it.
    Lost(Spot),
}

impl Session {
    /// What sounding has read so far: the first round, then wherever the learner put the probe.
    #[must_use]
    pub fn soundings(&self) -> Vec<Sounded> {
        if !self.sounds() {
            return Vec::new();
        }
        let case = self.opened();
        let mut all = first_round(case).to_vec();
        for (place, spot) in self.probed.iter().enumerate() {
            let before = self.probed[..place].iter().filter(|one| *one == spot);
            let depth = read(case, *spot, before.zip(1..).last().map_or(0, |(_, count)| count));
            all.push(Sounded { spot: *spot, depth, chosen: true });
        }
        all
    }

    /// Whether the probe can be put in: that was chosen, and the tooth still stands.
    #[must_use]
    pub fn may_sound(&self) -> bool {
        self.sounds() && self.shown.extraction.is_none() && !self.is_over()
    }

    fn sounds(&self) -> bool {
        let examined = self.shown.examined.as_ref();
        examined.is_some_and(|done| done.examinations.has(Examination::BoneSounding))
    }

    pub(super) fn sound(&mut self, spot: Spot) -> Result<(), Refusal> {
        if !self.may_sound() {
            return Err(Refusal::NotToBeSounded);
        }
        if !spot.is_possible(&self.opened().site) {
            return Err(Refusal::NoSuchPlace);
        }
        if self.probed.len() >= MOST {
            return Err(Refusal::TooManySoundings);
        }
        self.probed.push(spot);
        Ok(())
    }
}

/// Soundings of one attempt at most, the first round aside.
const MOST: usize = 30;
/// The streams of readings, past those of exposures and of the first aim.
const STREAMS: u32 = 0x1_0000;

/// The first round, as the case reads.
pub(super) fn first_round(case: &Case) -> [Sounded; 4] {
    #[expect(clippy::cast_possible_truncation, reason = "within a tooth")]
    let beside = libm::round(0.75 * f64::from(Spot::reach(&case.site))) as i8;
    let [mesial, middle, distal, oral] = case.readings.sounding.map(|one| one.depth);
    [
        (Wall::Facial, -beside, mesial),
        (Wall::Facial, 0, middle),
        (Wall::Facial, beside, distal),
        (Wall::Oral, 0, oral),
    ]
    .map(|(wall, tenths, depth)| Sounded { spot: Spot { wall, tenths }, depth, chosen: false })
}

/// What the probe reads at a place after it has been there `before` times.
fn read(case: &Case, spot: Spot, before: u32) -> Mm {
    let side = u32::from(spot.wall == Wall::Oral);
    let place = u32::from(spot.tenths.wrapping_add(i8::MIN).cast_unsigned());
    let mut noise = Noise::of(key(case), STREAMS + ((before * 2 + side) << 8) + place);
    let shallow = noise.between(0.0, 1.0) < SHALLOW;
    let off = if shallow {
        -noise.between(FAR[0], FAR[1])
    } else {
        (NEAR * noise.normal()).clamp(NEAREST[0], NEAREST[1])
    };
    on_the_scale(from_margin_to_bone(&case.site, spot.wall, spot.along()) + off)
}

/// What the readings of one side come to. Where a place was read more than once, the deepest counts:
/// what is off by much is too shallow.
#[must_use]
pub(super) fn standing(all: &[Sounded], wall: Wall) -> Standing {
    let places = by_place(all, wall);
    let deepest = |place: usize| {
        let (spot, depths) = &places[place];
        (*spot, depths.iter().copied().fold(0.0, f64::max))
    };
    let mut worst = Standing::Normal;
    for place in 0..places.len() {
        let (spot, depth) = deepest(place);
        if comparable(depth) <= Readings::NORMAL_SOUNDING {
            continue;
        }
        let beside = [place.checked_sub(1), Some(place + 1)].into_iter().flatten();
        let beside = beside.filter(|next| *next < places.len()).map(|next| deepest(next).1);
        let shallower = beside.fold(f64::INFINITY, f64::min);
        if comparable(depth - shallower) >= Readings::DEEPER {
            return Standing::Lost(spot);
        }
        worst = Standing::Suspect(spot);
    }
    worst
}

/// The places of one side from mesial to distal, each with what was read there.
fn by_place(all: &[Sounded], wall: Wall) -> Vec<(Spot, Vec<f64>)> {
    let mut places: Vec<(Spot, Vec<f64>)> = Vec::new();
    for one in all.iter().filter(|one| one.spot.wall == wall) {
        match places.iter_mut().find(|(spot, _)| *spot == one.spot) {
            Some((_, depths)) => depths.push(one.depth.get()),
            None => places.push((one.spot, vec![one.depth.get()])),
        }
    }
    order::sort_short(&mut places, |a, b| a.0.cmp(&b.0));
    places
}

/// The report: each place with its readings, and what they come to.
pub(super) fn report(site: &Site, all: &[Sounded]) -> Vec<String> {
    let oral = site.tooth.oral_word();
    let mut lines = Vec::new();
    for (wall, name) in [(Wall::Facial, "facial"), (Wall::Oral, oral)] {
        let places = by_place(all, wall);
        let told: Vec<String> = places.iter().map(|(spot, depths)| at(*spot, depths)).collect();
        lines.push(format!("Margin to bone, {name}: {}.", told.join("; ")));
    }
    for (wall, name) in [(Wall::Facial, "facial"), (Wall::Oral, oral)] {
        match standing(all, wall) {
            Standing::Normal => {}
            Standing::Suspect(spot) => lines.push(format!(
                "More than 3.5 mm on the {name} side, {}: suspect. Sound it again, there and on either side of it.",
                spot.words()
            )),
            Standing::Lost(spot) => lines.push(format!(
                "On the {name} side, {}, it is 2 mm or more deeper than beside it: bone is missing there.",
                spot.words()
            )),
        }
    }
    lines
}

fn at(spot: Spot, depths: &[f64]) -> String {
    let read: Vec<String> = depths.iter().map(|depth| format!("{depth:.1}")).collect();
    format!("{} mm {}", read.join(" and "), spot.words())
}

#[cfg(test)]
mod tests;
