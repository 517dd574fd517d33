//! Practice in three orders: by the scheduler's own code, in random order of drawn cases, and by a
//! fixed curriculum, one kind after another.

use crate::draws::{Drawn, OF_EACH, SKILLS};
use crate::learner::{Learner, Ranges, below};
use engine::anatomy::Tooth;
use engine::cases::{Archetype, Group};
use engine::chart::Address;
use engine::debrief::{PlanWord, RULE_SET};
use engine::rules::{Local, Rule, Skill, Zone, all};
use engine::session::Mode;
use learning::next::{Next, Wanted, Wish, next};
use learning::past::{Observed, Past};
use learning::record::{Head, RECORD_FORMAT};
use learning::search::{Candidate, Sieve};
use learning::standing;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;

/// Cases of a day of practice; every other day is one.
const OF_DAY: u32 = 5;
const EVERY: u32 = 2;
const DAY: u64 = 24 * 60 * 60 * 1000;
/// Practice ends after so many cases, mastered or not.
pub const MOST: u32 = 300;
/// After so many cases it is measured what will be held.
pub const DOSE: u32 = 60;
/// Days without practice.
const PAUSE: f64 = 30.0;

/// In which order cases come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Order {
    Scheduled,
    Random,
    Fixed,
}

impl Order {
    pub const ALL: [Self; 3] = [Self::Scheduled, Self::Random, Self::Fixed];

    pub const fn key(self) -> &'static str {
        match self {
            Self::Scheduled => "scheduled",
            Self::Random => "random",
            Self::Fixed => "fixed",
        }
    }

    const fn number(self) -> u64 {
        match self {
            Self::Scheduled => 0,
            Self::Random => 1,
            Self::Fixed => 2,
        }
    }
}

/// What came of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    pub world: &'static str,
    pub learner: u64,
    pub order: Order,
    /// Cases until every skill was known; [`MOST`] where that never came.
    pub known: u32,
    /// Cases until every skill was mastered by the estimate that the learner sees, likewise.
    pub estimated: u32,
    /// The share of skills held 30 days after the 60th case.
    pub held: f64,
}

/// All drawn cases, and a rule of each skill to speak for it.
pub struct World {
    drawn: Vec<Drawn>,
    rules: [&'static Rule; SKILLS],
}

impl World {
    pub fn of(drawn: Vec<Drawn>) -> Self {
        assert_eq!(drawn.len(), Archetype::ALL.len() * OF_EACH);
        let rules = Skill::ALL.map(|skill| all().find(|rule| rule.skill == skill).expect("a rule"));
        Self { drawn, rules }
    }

    fn any_of(&self, kind: Archetype, random: &mut ChaCha8Rng) -> &Drawn {
        let row = Archetype::ALL.iter().position(|one| *one == kind).expect("a closed list");
        &self.drawn[row * OF_EACH + below(random, OF_EACH)]
    }

    /// As the generator draws: the group first, then one of the group.
    fn any(&self, random: &mut ChaCha8Rng) -> &Drawn {
        let group = Group::ALL[below(random, Group::ALL.len())];
        let kinds: Vec<Archetype> =
            Archetype::ALL.iter().copied().filter(|one| one.group() == group).collect();
        self.any_of(kinds[below(random, kinds.len())], random)
    }

    /// What the search finds; the second of a pair is the same case but for one thing.
    fn wanted(&self, wanted: Wanted, random: &mut ChaCha8Rng) -> (&Drawn, bool) {
        if let Some(pair) = &wanted.pair
            && let Some(case) = self.drawn.iter().find(|one| one.address == pair.of)
        {
            return (case, true);
        }
        let mut sieve = Sieve::of(wanted);
        loop {
            let kind = sieve.kind().expect("kinds are wanted");
            let case = self.any_of(kind, random);
            let over = sieve.offer(Candidate {
                address: case.address,
                kind,
                difficulty: case.difficulty,
                calls: case.calls(),
            });
            if over {
                let best = sieve.best().expect("one was offered").address;
                let case = self.drawn.iter().find(|one| one.address == best);
                return (case.expect("it was drawn"), false);
            }
        }
    }

    /// The attempt as the room would keep it.
    fn past(&self, case: &Drawn, is_pair: bool, answers: [Option<bool>; SKILLS], at: u64) -> Past {
        let observed = answers.iter().zip(self.rules).filter_map(|(answer, rule)| {
            let zone = if (*answer)? { Zone::Ideal } else { Zone::Compromising };
            Some(Observed { rule, zone, counts: true, charged: zone.is_fault() })
        });
        let address = if is_pair { changed(case.address) } else { case.address };
        Past {
            head: head(address, at),
            // The scheduler does not look at it.
            tooth: Tooth::new(11).expect("a tooth"),
            archetype: Some(case.kind),
            word: PlanWord::Sound,
            observed: observed.collect(),
            sure: Vec::new(),
            spent: Vec::new(),
            objections: Vec::new(),
            verdicts: 0,
        }
    }

    /// A learner practises in an order.
    pub fn practise(&self, ranges: &Ranges, number: u64, order: Order) -> Outcome {
        let mut learner = Learner::of(ranges, number, order.number());
        let mut random = ChaCha8Rng::seed_from_u64(number);
        random.set_stream(100 + order.number());
        let mut pasts: Vec<Past> = Vec::new();
        let mut found = Outcome {
            world: ranges.name,
            learner: number,
            order,
            known: MOST,
            estimated: MOST,
            held: 0.0,
        };
        for count in 0..MOST {
            let day = count / OF_DAY * EVERY;
            if count % OF_DAY == 0 {
                learner.wake(day);
            }
            let now = u64::from(day + 1) * DAY + u64::from(count % OF_DAY) * 600_000;
            let (case, is_pair) = match order {
                Order::Random => (self.any(&mut random), false),
                Order::Fixed => {
                    let kind = Archetype::ALL[count as usize % Archetype::ALL.len()];
                    (self.any_of(kind, &mut random), false)
                }
                Order::Scheduled => match next(&pasts, &sitting(now), now, Wish::Anyway) {
                    Next::Case(wanted) => self.wanted(wanted, &mut random),
                    Next::End(end) => unreachable!("asked for anyway, found {end:?}"),
                },
            };
            let answers = learner.attempt(case);
            pasts.push(self.past(case, is_pair, answers, now));
            let (done, standings) = (count + 1, standing::of(&pasts, now));
            if learner.knows_all() {
                found.known = found.known.min(done);
            }
            if standings.iter().all(standing::Standing::is_mastered) {
                found.estimated = found.estimated.min(done);
            }
            if done == DOSE {
                found.held = learner.will_hold(PAUSE);
            }
            if done >= DOSE && found.known < MOST && found.estimated < MOST {
                break;
            }
        }
        found
    }
}

fn sitting(at: u64) -> String {
    (at / DAY).to_string()
}

fn changed(address: Address) -> Address {
    format!("{address}.facial-loss.45").parse().expect("an address")
}

fn head(address: Address, at: u64) -> Head {
    Head {
        format: RECORD_FORMAT,
        id: String::new(),
        at: String::new(),
        address: Some(address),
        set: None,
        local: Local::NONE,
        mode: Mode::Study,
        number: 1,
        help: Vec::new(),
        sitting: Some(sitting(at)),
        opened_before: false,
        limit: None,
        begun: Some(at),
        ended: Some(at),
        rule_set: RULE_SET.to_owned(),
        verdicts: String::new(),
        faults: String::new(),
    }
}
