//! Attempts for tests as learners leave them: careful ones, restless ones, and ones by chance.

use super::compact::Kept;
use super::outcome::{CaseOutcome, Outcome};
use crate::past::Past;
use crate::record::{Done, Head};
use crate::trial::{DAY, START};
use engine::cases::{Constraints, Spread, generate_as, proof};
use engine::chart::{Case, Finding};
use engine::debrief::hash_of;
use engine::geometry::Outline;
use engine::hash::Fnv;
use engine::plan::{Kind, Value, is_asked};
use engine::session::{Event, Exposure, Mode, SURENESS, Session, wander};

/// The case that a seed draws.
pub fn case(seed: u64) -> Case {
    generate_as(Spread::WholeMouth, seed, &Constraints::default()).unwrap()
}

/// Numbers below others that look like chance.
pub struct Chance(Fnv);

impl Chance {
    pub fn of(seed: u64) -> Self {
        let mut hash = Fnv::new();
        hash.bytes(&seed.to_le_bytes());
        Self(hash)
    }

    pub fn below(&mut self, count: u64) -> u64 {
        self.0.bytes(&[3]);
        (self.0.value() >> 20) % count
    }
}

/// An attempt as it is kept, with seconds between one event and the next, and what they came to.
pub fn kept(session: &Session, seed: u64) -> Kept {
    let begun = START + seed * DAY / 24;
    let address = session.opened().address.map(|it| it.to_string()).unwrap_or_default();
    let mut chance = Chance::of(seed);
    let id = format!("{begun:011x}-{:08x}", chance.below(1 << 32));
    let mut head =
        Head::begin(id, format!("#/set/a-first-set/{seed}/{address}"), session, 1, begun);
    head.set = Some("a-first-set".to_owned());
    let mut now = begun;
    let events: Vec<Done> = session
        .events()
        .iter()
        .map(|event| {
            let longest = if chance.below(8) == 0 { 60_000 } else { 9000 };
            now += 700 + chance.below(longest);
            Done { at: Some(now), what: event.written() }
        })
        .collect();
    if session.is_over() {
        head.ended = Some(now);
        head.verdicts = format!("{:016x}", hash_of(&session.verdicts()));
    }
    Kept { head, events }
}

/// A learner who decides everything once, soundly.
pub fn careful(seed: u64) -> Kept {
    kept(&sound(seed, false), seed)
}

/// A learner who decides soundly in the end: who says how sure it is, writes findings down, takes
/// films again, draws outlines corner by corner and moves sliders there and back.
pub fn restless(seed: u64) -> Kept {
    kept(&sound(seed, true), seed)
}

/// A learner who decides by chance.
pub fn wandering(seed: u64) -> Kept {
    kept(&wander(case(seed), seed), seed)
}

/// The attempt that follows the plan which proves a case solvable.
pub fn sound(seed: u64, restless: bool) -> Session {
    let case = case(seed);
    let draft = proof(&case).unwrap().draft;
    let mut session = Session::open(case, Mode::Assessment);
    let mut chance = Chance::of(seed + 1000);
    while let Some(step) = session.due() {
        if restless {
            let percent = SURENESS[chance.below(5) as usize];
            let _ = session.apply(Event::Sure(step, Some(percent)));
            let _ = session.apply(Event::Expose(Exposure { vertical: 5, ..Exposure::PARALLEL }));
            for finding in Finding::ALL.into_iter().take(4) {
                let _ = session.apply(Event::Note(finding, Some(1)));
            }
        }
        let of_step: Vec<_> = draft
            .iter()
            .filter(|(decision, _)| decision.step() == step)
            .map(|(decision, value)| (decision, value.clone()))
            .collect();
        for (decision, value) in of_step {
            if session.is_settled(decision)
                || !is_asked(decision, session.draft(), session.opened())
            {
                continue;
            }
            let trials = if restless {
                tries(&value, decision.entry().kind, &mut chance)
            } else {
                Vec::new()
            };
            for tried in trials {
                let _ = session.apply(Event::Choose(decision, Some(tried)));
            }
            let _ = session.apply(Event::Choose(decision, Some(value)));
        }
        if session.apply(Event::CarryOut(step)).is_err() {
            break;
        }
    }
    session
}

/// What was tried before an answer stood.
fn tries(value: &Value, kind: Kind, chance: &mut Chance) -> Vec<Value> {
    match (value, kind) {
        (Value::Outline(outline), _) => {
            let mut points = outline.tenths().to_vec();
            let mut all = Vec::new();
            for corner in 0..points.len() {
                points[corner][1] += 4 + chance.below(30) as i32;
                points[corner][0] += chance.below(9) as i32;
                all.extend(Outline::new(points.clone()).map(Value::Outline));
            }
            all
        }
        (Value::Number(count), Kind::Number(number)) => (0..2 + chance.below(4))
            .map(|_| count + number.by * (chance.below(9) as i32 - 4))
            .filter(|count| number.allows(*count))
            .map(Value::Number)
            .collect(),
        (Value::One(_), Kind::One(options)) if chance.below(4) == 0 => {
            vec![Value::One(chance.below(options.len() as u64) as u8)]
        }
        (Value::Many(bits), Kind::Many(options)) => {
            // Boxes are ticked one by one.
            let mut so_far = 0;
            let ticked = (0..options.len()).filter(|place| (bits >> place) & 1 == 1);
            ticked
                .map(|place| {
                    so_far |= 1 << place;
                    Value::Many(so_far)
                })
                .collect()
        }
        _ => Vec::new(),
    }
}

/// A case of a set as it is handed in, with what it was made of.
pub fn handed(seed: u64) -> (CaseOutcome, Past, Session) {
    let of = if seed.is_multiple_of(2) { sound(seed, true) } else { wander(case(seed), seed) };
    let one = kept(&of, seed);
    let past = Past::of(one.head, &one.events, &of);
    let mark = of.debrief(None).and_then(|told| told.mark.percent());
    (CaseOutcome::of(&format!("case-{seed}"), &past, &of, &one.events, mark), past, of)
}

/// A sitting at a set of so many cases, all of them over.
pub fn outcome(cases: u64) -> Outcome {
    let mut outcome = Outcome::new("learner-7f3a", "a-first-set", "A first set");
    outcome.cases = (1..=cases).map(|seed| handed(seed).0).collect();
    outcome.hash = super::outcome::hash_of("the set");
    outcome.place = "#/set/a-first-set/1".to_owned();
    outcome.pass = Some(60);
    outcome.kept = super::compact::fit(&[careful(1)], 4096).unwrap();
    (outcome.session, outcome.total) = (754_560, 7_200_010);
    outcome
}
