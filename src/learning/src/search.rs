//! The search for a case that exercises what is wanted, seed by seed, in steps so short that a page
//! can breathe between them.
//!
//! A kind of case is sifted by what it mostly calls for ([`crate::called`]); a few finalists are
//! weighed by what the case itself calls for. The same seed finds the same case.

use crate::called::place;
use crate::next::{Wanted, off};
use crate::parameters::{MOST_WEIGHED, OFF_DIFFICULTY};
use engine::cases::{Archetype, FORMAT, Proof, Spread, archetype_at, at, difficulty, proof};
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
        let off = off(self.wanted.within, candidate.difficulty);
        let gain: f64 = self
            .wanted
            .wants
            .iter()
            .zip(candidate.calls)
            .map(|(want, calls)| if calls { *want } else { 0.0 })
            .sum();
        // The skill in focus first, then what else is wanted, then how hard it is.
        let worth = if calls { 100.0 } else { 0.0 } + gain - OFF_DIFFICULTY * off;
        if self.best.as_ref().is_none_or(|(most, _)| worth > *most) {
            self.best = Some((worth, candidate));
        }
        (calls && off <= 0.0) || self.weighed >= MOST_WEIGHED
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

    /// Goes on a little: looks through some hundred draws for a case of the right kind, or proves one
    /// solvable, or weighs one. A proof took 8 ms on average and 150 at most, weighing 41 and 260 (1,020
    /// cases, natively); for WebAssembly built small count some times that, so a page steps in its
    /// worker.
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::next::{Next, Wish, next};
    use crate::trial::{START, attempt};
    use engine::cases::{Constraints, Within, generate_as};

    fn wanted(focus: Skill, kinds: &[Archetype], within: Option<[f64; 2]>) -> Wanted {
        let Next::Case(first) = next(&[], "a", START, Wish::Due) else { panic!("nothing is due") };
        let within = within.map(|[low, high]| Within::new(low, high).unwrap());
        Wanted { focus, kinds: kinds.to_vec(), within, ..first }
    }

    fn candidate(seed: u64, difficulty: f64, calls: &[Skill]) -> Candidate {
        let address = format!("1.3.{seed}.0").parse().unwrap();
        let calls = Skill::ALL.map(|skill| calls.contains(&skill));
        Candidate { address, kind: Archetype::DefectV, difficulty, calls }
    }

    #[test]
    fn the_sieve_stops_at_the_first_that_calls_for_the_focus_and_is_as_hard_as_wanted() {
        let asked = wanted(Skill::Covering, &[Archetype::DefectV], Some([0.4, 0.6]));
        let right = candidate(3, 0.5, &[Skill::Covering]);
        assert!(Sieve::of(asked.clone()).offer(right.clone()));
        let not_the_focus = candidate(1, 0.5, &[Skill::Placing]);
        let too_hard = candidate(2, 0.7, &[Skill::Covering]);
        for other in [not_the_focus, too_hard] {
            let mut sieve = Sieve::of(asked.clone());
            assert!(!sieve.offer(other));
            assert!(sieve.offer(right.clone()));
            assert_eq!(sieve.best().unwrap().address.seed, 3);
        }
    }

    #[test]
    fn where_none_is_right_the_sieve_keeps_the_best_of_a_few() {
        let asked = wanted(Skill::Covering, &[Archetype::DefectV], Some([0.4, 0.6]));
        let placing = candidate(1, 0.5, &[Skill::Placing]);
        let [hardest, hard] = [0.9, 0.7].map(|hard| candidate(2, hard, &[Skill::Covering]));
        for (offers, best) in
            [([&placing, &hard], &hard), ([&hardest, &hard], &hard), ([&hard, &hardest], &hard)]
        {
            let mut sieve = Sieve::of(asked.clone());
            let over = offers.map(|one| sieve.offer(one.clone()));
            assert_eq!(over, [false, true], "{MOST_WEIGHED} are weighed");
            assert_eq!(sieve.best().as_ref(), Some(best));
        }
    }

    #[test]
    fn kinds_take_turns_the_best_first() {
        let kinds = [Archetype::DefectV, Archetype::Abscess];
        let mut sieve = Sieve::of(wanted(Skill::Covering, &kinds, None));
        let mut seen = Vec::new();
        for seed in 0..3 {
            seen.push(sieve.kind().unwrap());
            sieve.offer(candidate(seed, 0.5, &[]));
        }
        assert_eq!(seen, [kinds[0], kinds[1], kinds[0]]);
        assert_eq!(Sieve::of(wanted(Skill::Covering, &[], None)).kind(), None);
    }

    #[test]
    fn a_search_finds_a_case_of_the_kind_that_calls_for_the_focus_the_same_every_time() {
        for spread in [Spread::Teaching, Spread::WholeMouth] {
            let asked = wanted(Skill::Covering, &[Archetype::Abscess], Some([0.3, 0.7]));
            let found = Search::of(asked.clone(), spread, 11).finish().unwrap();
            assert_eq!(archetype_at(found.address), Archetype::Abscess);
            assert_eq!(found.address.generator, spread.generator());
            assert!(found.calls[place(Skill::Covering)]);
            // Its address gives the case, and the case has a sound plan.
            assert!(proof(&at(found.address).unwrap()).is_some());
            assert_eq!(Search::of(asked, spread, 11).finish().unwrap(), found);
        }
    }

    #[test]
    fn a_search_draws_what_the_generator_draws_of_that_seed() {
        let kind = Archetype::Pregnancy;
        let asked = Constraints { archetype: Some(kind), ..Constraints::default() };
        let drawn = generate_as(Spread::Teaching, 5, &asked).unwrap();
        let wanted = wanted(Skill::Course, &[kind], None);
        let found = Search::of(wanted, Spread::Teaching, 5).finish().unwrap();
        assert_eq!(found.address, drawn.address.unwrap());
    }

    #[test]
    fn a_search_that_cannot_find_anything_ends() {
        // Several roots are not drawn among teeth of one.
        let asked = wanted(Skill::Placing, &[Archetype::WideSeptum], None);
        assert_eq!(Search::of(asked, Spread::Teaching, 1).finish(), None);
        let asked = wanted(Skill::Placing, &[Archetype::DefectV], None);
        assert_eq!(Search::of(asked.clone(), Spread::Population, 1).finish(), None);
        let mut over = Search::of(asked, Spread::Population, 1);
        assert_eq!([over.step(), over.step()], [Progress::Nothing, Progress::Nothing]);
    }

    #[test]
    fn what_follows_from_a_history_can_be_found() {
        let pasts = [attempt(START).all_but(&[Skill::Covering]).within("a")];
        let Next::Case(asked) = next(&pasts, "a", START, Wish::Due) else { panic!("due") };
        let found = Search::of(asked.clone(), Spread::WholeMouth, 3).finish().unwrap();
        assert!(asked.kinds.contains(&found.kind));
        assert!(found.calls[place(asked.focus)]);
    }
}
