//! A learner who decides by chance: what parity and robustness are tried with. Any plan that can be
//! chosen must be judged, however absurd.

use super::{Event, Mode, Session};
use crate::chart::Case;
use crate::geometry::Outline;
use crate::plan::choices::Course;
use crate::plan::{Decision, Kind, Value};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Plays a case from chart to debrief with choices drawn from `seed`. Half of the plays place an
/// implant today, so that every step is reached often; the rest spread over all courses.
#[must_use]
pub fn wander(case: Case, seed: u64) -> Session {
    let mut chance = Chance(ChaCha8Rng::seed_from_u64(seed));
    let mut session = Session::open(case, Mode::Study);
    while let Some(step) = session.due() {
        let choices = chance.below(2) == 0;
        for entry in Decision::ALL.iter().filter(|entry| entry.step == step) {
            let value = if entry.decision == Decision::Course && choices {
                Value::one(Course::PlaceToday)
            } else {
                chance.answer(entry.kind)
            };
            // Every drawn answer is one that its decision allows.
            let _ = session.apply(Event::Choose(entry.decision, Some(value)));
        }
        if session.apply(Event::CarryOut(step)).is_err() {
            break;
        }
    }
    session
}

/// Plays whole cases only: whether the wanderer came to the end, which a test holds.
#[must_use]
pub fn came_to_the_end(session: &Session) -> bool {
    session.is_over()
}

struct Chance(ChaCha8Rng);

impl Chance {
    /// A whole number below `count`, by the high half of a product.
    fn below(&mut self, count: u32) -> u32 {
        let product = u128::from(self.0.next_u64()) * u128::from(count);
        // The high half of a product with a 32-bit number fits 32 bits.
        u32::try_from(product >> 64).unwrap_or(0)
    }

    fn between(&mut self, least: i32, most: i32) -> i32 {
        let width = most.abs_diff(least) + 1;
        least.saturating_add_unsigned(self.below(width))
    }

    fn answer(&mut self, kind: Kind) -> Value {
        match kind {
            Kind::One(options) => {
                let count = u32::try_from(options.len()).unwrap_or(1);
                Value::One(u8::try_from(self.below(count)).unwrap_or(0))
            }
            Kind::Many(options) => Value::Many(self.below(1 << options.len().min(31))),
            Kind::Number(kind) => {
                let steps = (kind.most - kind.least) / kind.by;
                Value::Number(kind.least + kind.by * self.between(0, steps))
            }
            Kind::Outline => Value::Outline(self.outline()),
        }
    }

    /// An octagon about a point near the crest; its corners keep their order, so it never crosses.
    fn outline(&mut self) -> Outline {
        let (s, t) = (self.between(-20, 20), self.between(-20, 60));
        let (wide, high) = (self.between(5, 90), self.between(5, 120));
        let (cut_s, cut_t) = (self.between(1, wide), self.between(1, high));
        let corners = vec![
            [s - wide, t - high + cut_t - 1],
            [s - wide + cut_s - 1, t - high],
            [s + wide - cut_s + 1, t - high],
            [s + wide, t - high + cut_t - 1],
            [s + wide, t + high - cut_t + 1],
            [s + wide - cut_s + 1, t + high],
            [s - wide + cut_s - 1, t + high],
            [s - wide, t + high - cut_t + 1],
        ];
        let plain = vec![
            [s - wide, t - high],
            [s + wide, t - high],
            [s + wide, t + high],
            [s - wide, t + high],
        ];
        // Corners that fall together make no outline; the plain rectangle always is one.
        Outline::new(corners).or_else(|_| Outline::new(plain)).unwrap_or_else(|_| Outline::patch())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::debrief::{explain, hash_of};
    use crate::rules::Reading;
    use crate::rules::trial::Trial;

    #[test]
    fn whatever_is_chosen_is_judged_and_worded() {
        let case = Trial::plain().case;
        let tooth = case.site.tooth;
        let (mut broken, mut bled, mut bare, mut infected) = (0, 0, 0, 0);
        for seed in 0..400 {
            // Under another title chance falls another way.
            let case = Case { title: seed.to_string(), ..case.clone() };
            let session = wander(case.clone(), seed);
            assert!(came_to_the_end(&session), "seed {seed}");
            if seed % 10 == 0 {
                let again = Session::replay(case, Mode::Study, session.events()).unwrap();
                assert_eq!(hash_of(&again.verdicts()), hash_of(&session.verdicts()), "seed {seed}");
            }
            broken += u32::from(session.case().broken.is_some());
            bled += u32::from(session.plan().rescue.bleed.is_some());
            bare += u32::from(session.plan().rescue.exposure.is_some());
            infected += u32::from(session.plan().rescue.infection.is_some());
            for verdict in session.verdicts() {
                assert!(!explain(&verdict, tooth).measured.is_empty(), "{}", verdict.rule.id);
                if let Reading::Number(value) = verdict.reading {
                    assert!(value.is_finite(), "{}: {value} at seed {seed}", verdict.rule.id);
                }
            }
            let percent = session.debrief(None).and_then(|debrief| debrief.mark.percent());
            assert!(percent.is_none_or(|percent| (0.0..=100.0).contains(&percent)), "seed {seed}");
        }
        assert!(broken > 20 && bled > 5 && bare > 5, "{broken} {bled} {bare}");
        assert!(infected > 2, "{infected}");
    }

    #[test]
    fn the_same_seed_wanders_the_same_way() {
        let case = Trial::plain().case;
        let [a, b] = [0, 0].map(|_| wander(case.clone(), 7));
        assert_eq!(a.events(), b.events());
        assert_eq!(hash_of(&a.verdicts()), hash_of(&b.verdicts()));
    }
}
