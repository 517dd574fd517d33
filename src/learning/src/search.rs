//! The search for a case that exercises what is wanted, seed by seed, in steps so short that a page
//! can breathe between them.
//!
//! A kind of case is sifted by what it mostly calls for ([`crate::called`]); a few finalists are
//! weighed by what the case itself calls for. The same seed finds the same case.

use crate::called::place;
use crate::next::Wanted;
use crate::parameters::MOST_WEIGHED;
use engine::cases::{
    Archetype, FORMAT, Proof, Spread, Within, archetype_at, at, difficulty, proof,
};
use engine::chart::{Address, Case};
use engine::rules::{Rule, Skill};

/// How many draws of a seed are looked through before the next seed.
const MOST_DRAWS: u32 = 20_000;
/// How many of them in one step: each costs a draw of the archetype.
const DRAWS_A_STEP: u32 = 400;
/// How many seeds are tried.
const MOST_SEEDS: u64 = 16;

/// A case that was weighed.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Where it comes from.
    pub address: Address,
    /// What decides something in it.
    pub kind: Archetype,
    /// How hard it is, 0 to 1.
    pub difficulty: f64,
    /// Whether it calls for each skill, in the order of [`Skill::ALL`].
    pub calls: [bool; Skill::ALL.len()],
}

/// Keeps the best of the candidates.
#[derive(Debug, Clone)]
pub struct Sieve {
    wanted: Wanted,
    weighed: usize,
    best: Option<(f64, Candidate)>,
}

impl Sieve {
    /// Of nothing yet.
    #[must_use]
    pub const fn of(wanted: Wanted) -> Self {
        Self { wanted, weighed: 0, best: None }
    }

    /// The kind of which the next candidate should be: the best one first, then in turn.
    #[must_use]
    pub fn kind(&self) -> Option<Archetype> {
        let kinds = &self.wanted.kinds;
        kinds.get(self.weighed % kinds.len().max(1)).copied()
    }

    /// Weighs a candidate; whether the search is over.
    pub fn offer(&mut self, candidate: Candidate) -> bool {
        self.weighed += 1;
        let calls = candidate.calls[place(self.wanted.focus)];
        // A difficulty that does not matter is met by every case.
        let [low, high] = self.wanted.within.map_or([0.0, 1.0], Within::ends);
        let off = (low - candidate.difficulty).max(candidate.difficulty - high).max(0.0);
        let fits = off <= 0.0;
        let gain: f64 = self
            .wanted
            .wants
            .iter()
            .zip(candidate.calls)
            .map(|(want, calls)| if calls { *want } else { 0.0 })
            .sum();
        // The skill in focus first, then what else is wanted, then how hard it is.
        let worth = if calls { 100.0 } else { 0.0 } + gain - off;
        if self.best.as_ref().is_none_or(|(most, _)| worth > *most) {
            self.best = Some((worth, candidate));
        }
        (calls && fits) || self.weighed >= MOST_WEIGHED
    }

    /// The best so far.
    #[must_use]
    pub fn best(self) -> Option<Candidate> {
        self.best.map(|(_, candidate)| candidate)
    }
}

/// How a search stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Progress {
    /// It goes on.
    Going,
    /// It is over, with this case.
    Found(Candidate),
    /// It is over, and no case was found.
    Nothing,
}

/// A search.
#[derive(Debug, Clone)]
pub struct Search {
    sieve: Option<Sieve>,
    spread: Spread,
    seed: u64,
    seeds: u64,
    attempt: u32,
    at: Place,
}

/// What the next step does.
#[derive(Debug, Clone)]
enum Place {
    Drawing,
    Proving(Box<Case>),
    Weighing(Box<Case>, Box<Proof>),
}

impl Search {
    /// From this seed on, among draws that are spread so ([`Spread::Population`] has no kinds, and
    /// finds nothing).
    #[must_use]
    pub fn of(wanted: Wanted, spread: Spread, seed: u64) -> Self {
        let sieve = Some(Sieve::of(wanted));
        Self { sieve, spread, seed, seeds: 0, attempt: 0, at: Place::Drawing }
    }

    /// Goes on a little: draws until a case of the right kind stands, or proves one, or weighs one.
    pub fn step(&mut self) -> Progress {
        match core::mem::replace(&mut self.at, Place::Drawing) {
            Place::Drawing => self.draw(),
            Place::Proving(case) => {
                if let Some(proof) = proof(&case) {
                    self.at = Place::Weighing(case, Box::new(proof));
                } else {
                    self.attempt += 1;
                }
                Progress::Going
            }
            Place::Weighing(case, proof) => self.weigh(&case, &proof),
        }
    }

    /// Steps until it is over.
    pub fn finish(&mut self) -> Option<Candidate> {
        loop {
            match self.step() {
                Progress::Going => {}
                Progress::Found(candidate) => return Some(candidate),
                Progress::Nothing => return None,
            }
        }
    }

    fn draw(&mut self) -> Progress {
        let Some(kind) = self.sieve.as_ref().and_then(Sieve::kind) else {
            return Progress::Nothing;
        };
        if self.spread == Spread::Population || self.seeds >= MOST_SEEDS {
            return self.over();
        }
        for _ in 0..DRAWS_A_STEP {
            if self.attempt >= MOST_DRAWS {
                self.next_seed();
                return Progress::Going;
            }
            let address = self.address();
            if archetype_at(address) == kind
                && let Ok(case) = at(address)
            {
                self.at = Place::Proving(Box::new(case));
                return Progress::Going;
            }
            self.attempt += 1;
        }
        Progress::Going
    }

    fn weigh(&mut self, case: &Case, proof: &Proof) -> Progress {
        let address = self.address();
        self.next_seed();
        let (Some(sieve), Some(found)) = (&mut self.sieve, difficulty(case, &proof.draft)) else {
            return Progress::Going;
        };
        let candidate = Candidate {
            address,
            kind: archetype_at(address),
            difficulty: found.value(),
            calls: calls(&found.rules),
        };
        if sieve.offer(candidate) { self.over() } else { Progress::Going }
    }

    fn over(&mut self) -> Progress {
        self.sieve.take().and_then(Sieve::best).map_or(Progress::Nothing, Progress::Found)
    }

    fn next_seed(&mut self) {
        self.seed = self.seed.wrapping_add(1);
        self.seeds += 1;
        self.attempt = 0;
    }

    const fn address(&self) -> Address {
        Address {
            format: FORMAT,
            generator: self.spread.generator(),
            seed: self.seed,
            attempt: self.attempt,
            changed: None,
        }
    }
}

/// The skills of the rules that are in play.
#[must_use]
pub fn calls(rules: &[&'static Rule]) -> [bool; Skill::ALL.len()] {
    Skill::ALL.map(|skill| rules.iter().any(|rule| rule.skill == skill))
}
