//! Seeded cases: `address -> case`, the same bits everywhere and for ever.
//!
//! Every drawn field has a stream of its own (`draw`). A teaching case binds a few draws to one
//! archetype ([`Archetype`]) and leaves the rest in ordinary bounds; a population case ([`population`])
//! binds nothing. What follows from the draws (width of the ridge, its concavity, the angle between
//! root and ridge) is never drawn again. A case is kept only when a plan is known that every rule
//! calls sound; otherwise the next attempt is drawn, and the address counts it.
//!
//! The generator's number in an address says how its cases are spread ([`Spread`]): 1 over decisions,
//! at teeth of one root, 2 as in the population, 3 over decisions in the whole mouth. A change that moves any drawn value is a new number; the old one stays.

mod archetype;
mod around;
mod aspects;
mod constraints;
mod defects;
mod difficulty;
mod draw;
mod form;
mod holds;
mod kin;
mod mouth;
mod names;
mod parted;
mod patient;
mod patients;
pub mod population;
mod proof;
mod readings;
mod ridge;
mod shape;
mod slips;
mod socket;
mod soft;
pub mod tooth_table;

#[cfg(test)]
mod tests;

pub use archetype::{Archetype, Group};
pub use around::class_of;
pub(crate) use aspects::defect_of;
pub use aspects::{changed, value as value_of};
pub use constraints::{Constraints, Impossible};
pub(crate) use defects::{on_map, u_form};
pub use difficulty::{Difficulty, NotWithin, Within, difficulty};
pub use form::{AS_HARD, form};
pub use kin::kin;
pub use parted::{PARTED, PartedRow, RootRow, parted_socket};
pub use proof::{Proof, proof, proof_with};
pub(crate) use readings::{
    FAR, NEAR, NEAREST, SHALLOW, from_margin_to_bone, gum_margin, on_the_scale,
};

use crate::anatomy::{Site, Socket, Tooth};
use crate::casing::capital;
use crate::chart::{Address, Case, Patient};
use crate::rules::Given;
use archetype::Brief;
use core::fmt;
use draw::{BLOCK, Draws, Field};
pub use holds::holds;
pub(crate) use holds::holds_together;
use serde::{Deserialize, Serialize};
pub use slips::{Slip, slips, usual};
use tooth_table::ToothRow;

/// Version of the address notation.
pub const FORMAT: u16 = 1;
/// Number of the generator of teaching cases.
pub const GENERATOR: u16 = 1;
/// Number of the generator of population cases.
pub const POPULATION: u16 = 2;
/// Number of the generator of teaching cases of the whole mouth.
pub const WHOLE_MOUTH: u16 = 3;
/// How many attempts are made for one seed before a search gives up.
pub const MOST_ATTEMPTS: u32 = 200_000;
/// How many cases with a sound plan are weighed before a search for a difficulty gives up.
pub const MOST_WEIGHED: u32 = 200;
/// How many of them in one block of attempts.
const MOST_OF_BLOCK: u32 = 4;

/// Why an address gives no case.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoCase {
    /// The address is written in a later notation.
    Format {
        /// The notation's number.
        found: u16,
    },
    /// The generator is not known to this version.
    Generator {
        /// Its number.
        found: u16,
    },
    /// This attempt of the seed was rejected when it was drawn.
    Rejected {
        /// The address.
        address: Address,
        /// Why.
        why: &'static str,
    },
    /// The constraints contradict each other.
    Impossible(Impossible),
    /// No attempt of this seed met the constraints.
    NotFound {
        /// The seed.
        seed: u64,
    },
    /// No case of this seed was as hard as that.
    NoneSoHard {
        /// The seed.
        seed: u64,
        /// What was asked.
        within: Within,
    },
}

impl fmt::Display for NoCase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Format { found } => write!(
                f,
                "the case address is of format {found}, this version reads format {FORMAT}: use a newer version"
            ),
            Self::Generator { found } => write!(
                f,
                "the case address names generator {found}, this version has generators 1 to {WHOLE_MOUTH}: use a newer version, or the case written out in full"
            ),
            Self::Rejected { address, why } => write!(
                f,
                "the address {address} is no case: {why}; give the bare seed {} to find its case",
                address.seed
            ),
            Self::Impossible(why) => write!(f, "{why}"),
            Self::NotFound { seed } => write!(
                f,
                "seed {seed} gave no case that meets the constraints in {MOST_ATTEMPTS} attempts: loosen one, or try another seed"
            ),
            Self::NoneSoHard { seed, within } => write!(
                f,
                "none of the first {MOST_WEIGHED} cases of seed {seed} has a difficulty of {within}: widen it, ask for another archetype, or try another seed"
            ),
        }
    }
}

impl core::error::Error for NoCase {}

/// How cases are spread over what can be drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Spread {
    /// Evenly over the decisions that they train, at teeth of one root.
    #[default]
    Teaching,
    /// As teeth occur, by published frequencies.
    Population,
    /// Evenly over the decisions that they train, at 28 teeth, those with several roots among them.
    WholeMouth,
}

impl Spread {
    /// All ways.
    pub const ALL: [Self; 3] = [Self::Teaching, Self::Population, Self::WholeMouth];

    /// What files and the command line hold.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Teaching => "teaching",
            Self::Population => "population",
            Self::WholeMouth => "whole-mouth",
        }
    }

    /// The generator whose addresses are spread so.
    #[must_use]
    pub const fn generator(self) -> u16 {
        match self {
            Self::Teaching => GENERATOR,
            Self::Population => POPULATION,
            Self::WholeMouth => WHOLE_MOUTH,
        }
    }
}

/// The teaching case of a seed: the first attempt that stands.
///
/// # Errors
/// [`NoCase::NotFound`], should every attempt be rejected.
pub fn generate(seed: u64) -> Result<Case, NoCase> {
    generate_with(seed, &Constraints::default())
}

/// The first case of a seed, spread in any of the ways, that meets constraints. Its address replays it
/// without them.
///
/// # Errors
/// [`NoCase::Impossible`] or [`NoCase::NotFound`].
pub fn generate_as(spread: Spread, seed: u64, constraints: &Constraints) -> Result<Case, NoCase> {
    constraints.check_for(spread).map_err(NoCase::Impossible)?;
    match spread {
        Spread::Teaching => generate_with(seed, constraints),
        Spread::Population => population_case(seed, constraints),
        Spread::WholeMouth => mouth::search(seed, constraints),
    }
}

fn population_case(seed: u64, constraints: &Constraints) -> Result<Case, NoCase> {
    let mut attempt = 0;
    let mut weighing = Weighing::of(seed, constraints);
    while attempt < MOST_ATTEMPTS {
        let draws = Draws::of(Address {
            format: FORMAT,
            generator: POPULATION,
            seed,
            attempt,
            changed: None,
        });
        if !constraints.allows_tooth(population::tooth_of(&draws)) {
            // The whole block has this tooth.
            attempt = (attempt / BLOCK + 1) * BLOCK;
            continue;
        }
        if let Ok(case) = population::draw(&draws)
            && constraints.allows_site(&case.site)
            && weighing.keeps(&case)?
        {
            return Ok(case);
        }
        attempt = weighing.next(attempt);
    }
    Err(NoCase::NotFound { seed })
}

/// The first teaching case of a seed that meets constraints. Its address replays it without them.
///
/// # Errors
/// [`NoCase::Impossible`] or [`NoCase::NotFound`].
pub fn generate_with(seed: u64, constraints: &Constraints) -> Result<Case, NoCase> {
    constraints.check().map_err(NoCase::Impossible)?;
    let drawn = Drawing { generator: GENERATOR, archetype_of, tooth_of, draw };
    drawn.search(seed, constraints)
}

/// Keeps a drawn case that has a sound plan and, where that is asked, the right difficulty.
struct Weighing {
    seed: u64,
    within: Option<Within>,
    weighed: u32,
    /// Those of them since the block began.
    of_block: u32,
}

impl Weighing {
    const fn of(seed: u64, constraints: &Constraints) -> Self {
        Self { seed, within: constraints.difficulty, weighed: 0, of_block: 0 }
    }

    fn keeps(&mut self, case: &Case) -> Result<bool, NoCase> {
        let (Some(proof), within) = (proof(case), self.within) else { return Ok(false) };
        let Some(within) = within else { return Ok(true) };
        if self.weighed == MOST_WEIGHED {
            return Err(NoCase::NoneSoHard { seed: self.seed, within });
        }
        self.weighed += 1;
        self.of_block += 1;
        Ok(difficulty(case, &proof.draft).is_some_and(|found| within.holds(found.value())))
    }

    /// The attempt after this one. What a block shares may be what makes its cases too easy or too
    /// hard: after a few of them the next block is tried.
    fn next(&mut self, attempt: u32) -> u32 {
        let block = (attempt / BLOCK + 1) * BLOCK;
        let next = if self.of_block < MOST_OF_BLOCK { attempt + 1 } else { block };
        if next == block {
            self.of_block = 0;
        }
        next
    }
}

/// How a generator of teaching cases draws: by archetype, then tooth, then the rest.
struct Drawing {
    generator: u16,
    archetype_of: fn(&Draws) -> Archetype,
    tooth_of: fn(&Draws, Archetype) -> Tooth,
    draw: fn(&Draws) -> Result<Case, &'static str>,
}

impl Drawing {
    /// The first case of a seed that meets constraints and has a sound plan.
    fn search(&self, seed: u64, constraints: &Constraints) -> Result<Case, NoCase> {
        let mut attempt = 0;
        let mut weighing = Weighing::of(seed, constraints);
        while attempt < MOST_ATTEMPTS {
            let address =
                Address { format: FORMAT, generator: self.generator, seed, attempt, changed: None };
            let draws = Draws::of(address);
            let archetype = (self.archetype_of)(&draws);
            if !constraints.allows_archetype(archetype) {
                // The whole block has this archetype.
                attempt = (attempt / BLOCK + 1) * BLOCK;
                continue;
            }
            if constraints.allows(archetype, (self.tooth_of)(&draws, archetype))
                && let Ok(case) = (self.draw)(&draws)
                && constraints.allows_site(&case.site)
                && weighing.keeps(&case)?
            {
                return Ok(case);
            }
            attempt = weighing.next(attempt);
        }
        Err(NoCase::NotFound { seed })
    }
}

/// Replays an address: one attempt, no search.
///
/// # Errors
/// [`NoCase::Format`], [`NoCase::Generator`] or [`NoCase::Rejected`].
pub fn at(address: Address) -> Result<Case, NoCase> {
    if let Some(change) = address.changed {
        let base = at(Address { changed: None, ..address })?;
        return changed(&base, change).map_err(|why| NoCase::Rejected { address, why });
    }
    let drawn = match address.generator {
        POPULATION if address.format == FORMAT => population::draw(&Draws::of(address)),
        WHOLE_MOUTH if address.format == FORMAT => mouth::draw(&Draws::of(address)),
        _ => return teaching_at(address),
    };
    drawn.map_err(|why| NoCase::Rejected { address, why })
}

/// Whether this address is drawn by [`at`] alone, not by [`teaching_at`].
#[must_use]
pub const fn is_drawn_with_the_judge(address: Address) -> bool {
    address.changed.is_some() || matches!(address.generator, POPULATION | WHOLE_MOUTH)
}

/// Replays the address of a teaching case of one root; to [`at`], it adds nothing that population cases need.
///
/// # Errors
/// As [`at`], and [`NoCase::Generator`] for every other case.
pub fn teaching_at(address: Address) -> Result<Case, NoCase> {
    if address.format != FORMAT {
        return Err(NoCase::Format { found: address.format });
    }
    if address.generator != GENERATOR {
        return Err(NoCase::Generator { found: address.generator });
    }
    draw(&Draws::of(address)).map_err(|why| NoCase::Rejected { address, why })
}

/// What decides something in the case of this address: for instructors and for spreading cases.
#[must_use]
pub fn archetype_at(address: Address) -> Archetype {
    let draws = Draws::of(address);
    match address.generator {
        WHOLE_MOUTH => mouth::archetype_of(&draws),
        _ => archetype_of(&draws),
    }
}

fn archetype_of(draws: &Draws) -> Archetype {
    Archetype::draw(&mut draws.block_stream(Field::Archetype), &Group::OF_ONE_ROOT)
}

/// Stands in for an empty list, which no archetype has.
const FIRST: Tooth = match Tooth::new(11) {
    Ok(tooth) => tooth,
    Err(_) => panic!("11 is a tooth"),
};

fn tooth_of(draws: &Draws, archetype: Archetype) -> Tooth {
    draws.stream(Field::Tooth).pick(&archetype.teeth(), FIRST)
}

fn draw(draws: &Draws) -> Result<Case, &'static str> {
    let archetype = archetype_of(draws);
    let tooth = tooth_of(draws, archetype);
    draw_bound(draws, tooth, &archetype.brief())
}

/// Draws a case within a brief.
fn draw_bound(draws: &Draws, tooth: Tooth, brief: &Brief) -> Result<Case, &'static str> {
    let (site, patient) = site_and_patient(draws, tooth, brief)?;
    Ok(assembled(draws, site, patient))
}

/// Site and patient, with what examinations would read of them.
fn assembled(draws: &Draws, site: Site, patient: Patient) -> Case {
    let title = title(site.tooth, &patient);
    let readings = readings::unread();
    let mut case = Case {
        address: Some(draws.address()),
        title,
        site,
        patient,
        readings,
        chance: None,
        broken: None,
        local: Given::NONE,
    };
    case.readings = readings::draw(draws, &case);
    case
}

fn site_and_patient(
    draws: &Draws,
    tooth: Tooth,
    brief: &Brief,
) -> Result<(Site, Patient), &'static str> {
    let row = ToothRow::of(tooth).ok_or("a molar has more than one root")?;
    let person = patient::person(draws, brief);
    let neck = socket::neck(draws, person.age);
    let rooted = socket::draw(draws, tooth, row, person.sex, neck, brief);
    let neighbours = around::neighbours(draws, &rooted, brief);
    let ridge = ridge::draw(draws, &rooted, &neighbours, brief);
    let soft = soft::draw(draws, &rooted, &ridge, brief);
    let crown = soft::crown(draws, &rooted, &soft);
    let site = Site {
        tooth,
        defects: defects::draw(draws, &rooted, &ridge, brief),
        vital: around::vital(draws, &rooted, &ridge, &neighbours, person.sex, brief),
        density: around::density(draws, &rooted),
        lesion: around::lesion(draws, brief),
        socket: Socket::one(rooted.root),
        neighbours,
        ridge,
        soft,
        crown,
    };
    holds_together(&site)?;
    let patient = patient::draw(draws, person, &site, brief);
    Ok((site, patient))
}

/// Tooth and reason: what a referral says, and nothing that the learner is to find out.
fn title(tooth: Tooth, patient: &Patient) -> String {
    use crate::chart::Complaint;
    let reason = match patient.complaint {
        Complaint::RootFracture => "split root suspected",
        Complaint::CrownFracture => "crown broken below the gum",
        Complaint::EndodonticFailure => "root treatment failed",
        Complaint::Caries => "deep caries",
        Complaint::Periodontitis => "support lost",
        Complaint::Resorption => "root resorbing",
        Complaint::Trauma => "after a blow",
        Complaint::Restorable => "sent for extraction",
    };
    format!("{}: {reason}", capital(&tooth.words()))
}
