//! What came of a set, from the attempts at its cases: each done again and judged.

use super::compact::Kept;
use super::outcome::{CaseOutcome, Outcome};
use crate::past::{Past, replay};
use engine::cases;
use engine::chart::Address;
use engine::plan::Plan;
use engine::rules::Local;
use engine::session::{Mode, Session};

/// A set, as attempts at it are looked for.
#[derive(Debug, Clone, Copy)]
pub struct Sat<'a> {
    /// Its name in addresses.
    pub name: &'a str,
    /// Its title.
    pub title: &'a str,
    /// Its cases in their order.
    pub addresses: &'a [Address],
    /// What it decides otherwise than the rules.
    pub local: &'a Local,
    /// Whether only attempts without verdicts on the way count.
    pub assessed: bool,
}

impl Sat<'_> {
    /// The attempt that counts for the case at a place from 0; `attempts` stand in order of time. One
    /// that came to its end is not undone by another that is begun.
    #[must_use]
    pub fn chosen<'k>(&self, place: usize, attempts: &'k [Kept]) -> Option<&'k Kept> {
        let address = self.addresses.get(place)?;
        let at = format!("#/set/{}/{}", self.name, place + 1);
        // Help is no answer, and what comes from elsewhere is held to what the set says.
        let counts = |one: &&Kept| {
            let head = &one.head;
            head.at.split('?').next() == Some(at.as_str())
                && head.is_own()
                && head.address == Some(*address)
                && head.local == *self.local
                && (!self.assessed || head.mode == Mode::Assessment)
        };
        let mut here = attempts.iter().filter(counts);
        let latest = here.clone().next_back();
        here.rfind(|one| one.head.ended.is_some()).or(latest)
    }

    /// What came of the case at a place from 0, by the attempt that counts. `known`: its mark, where
    /// somebody has it already.
    #[must_use]
    pub fn case(
        &self,
        place: usize,
        chosen: Option<&Kept>,
        known: Option<Option<f64>>,
    ) -> CaseOutcome {
        let name = format!("case-{}", place + 1);
        let address = self.addresses.get(place).map(ToString::to_string).unwrap_or_default();
        chosen
            .and_then(|one| case_of(&name, one, known).ok())
            .unwrap_or_else(|| CaseOutcome::untouched(&name, &address))
    }

    /// What came of all of it, by a learner of this code.
    #[must_use]
    pub fn outcome(&self, learner: &str, attempts: &[Kept]) -> Outcome {
        let case = |place| self.case(place, self.chosen(place, attempts), None);
        let cases = (0..self.addresses.len()).map(case).collect();
        Outcome::new(learner, self.name, self.title).with(cases)
    }
}

/// What came of one attempt. `known`: its mark, where somebody has it already.
///
/// # Errors
/// A sentence where it cannot be done again.
pub fn case_of(name: &str, kept: &Kept, known: Option<Option<f64>>) -> Result<CaseOutcome, String> {
    let Kept { head, events } = kept;
    let address = head.address.ok_or("its case has no address")?;
    let case = cases::at(address).map_err(|why| why.to_string())?;
    let session = replay(head, events, case).map_err(|why| why.to_string())?;
    let past = Past::of(head.clone(), events, &session);
    let mark = if session.is_over() { known.unwrap_or_else(|| mark_of(&session)) } else { None };
    Ok(CaseOutcome::of(name, &past, &session, events, mark))
}

/// The mark that the debrief shows, percent. It takes a search.
fn mark_of(session: &Session) -> Option<f64> {
    let case = session.opened();
    let sound = engine::search::sound_of(case);
    let reference = sound.and_then(|sound| Plan::from_draft(&sound, case).ok());
    session.debrief(reference.as_ref())?.mark.percent()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handing::trial::{careful, restless};
    use crate::record::Help;

    /// Attempts at the case of one seed, opened as the first of a set.
    fn attempts() -> Vec<Kept> {
        [careful(1), restless(1)]
            .into_iter()
            .map(|mut one| {
                one.head.at = "#/set/a-first-set/1?assessment".to_owned();
                one
            })
            .collect()
    }

    fn with<T>(addresses: &[Address], look: impl FnOnce(Sat<'_>) -> T) -> T {
        look(Sat {
            name: "a-first-set",
            title: "A first set",
            addresses,
            local: &Local::NONE,
            assessed: true,
        })
    }

    #[test]
    fn the_latest_attempt_that_ended_counts_and_help_another_case_or_another_set_does_not() {
        let mut all = attempts();
        let addresses = [all[0].head.address.unwrap()];
        let chosen = |all: &[Kept]| {
            with(&addresses, |sat| sat.chosen(0, all).map(|one| one.head.id.clone()))
        };
        let [first, second] = [all[0].head.id.clone(), all[1].head.id.clone()];
        assert_eq!(chosen(&all), Some(second.clone()));
        all[1].head.ended = None;
        assert_eq!(chosen(&all), Some(first));
        all[0].head.help.push(Help::Worked);
        assert_eq!(chosen(&all), Some(second));
        all[1].head.at = "#/set/a-first-set/10?assessment".to_owned();
        assert_eq!(chosen(&all), None);
        let elsewhere = [careful(2).head.address.unwrap()];
        assert!(with(&elsewhere, |sat| sat.chosen(0, &attempts()).is_none()));
        assert!(with(&addresses, |sat| sat.chosen(1, &attempts()).is_none()));
    }

    #[test]
    fn a_case_is_marked_once_it_is_over_and_one_that_nobody_began_is_there_too() {
        let all = attempts();
        let addresses = [all[0].head.address.unwrap(), careful(2).head.address.unwrap()];
        let told = with(&addresses, |sat| sat.outcome("learner-1", &all));
        assert_eq!(told.cases.len(), 2);
        assert!(told.cases[0].is_over && told.cases[0].mark.is_some_and(|mark| mark > 90.0));
        assert_eq!(told.total, told.cases[0].spent);
        assert!(!told.cases[1].is_begun() && !told.is_complete());
        let known = with(&addresses, |sat| sat.case(0, Some(&all[0]), Some(Some(12.0))));
        assert_eq!(known.mark, Some(12.0));
        let mut open = all[0].clone();
        open.events.truncate(3);
        assert_eq!(case_of("case-1", &open, Some(Some(12.0))).unwrap().mark, None);
        open.head.address = None;
        assert!(case_of("case-1", &open, None).unwrap_err().contains("address"));
    }
}
