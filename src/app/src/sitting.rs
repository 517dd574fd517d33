//! From one case of a sitting to the next.

use crate::components::breaks::second_case;
use crate::effects::{self, Breath};
use crate::keep::key::fresh_id;
use crate::route::{CaseRoute, From, Route};
use engine::cases::{self, Spread};
use engine::chart::Address;
use engine::search::sound_of;
use learning::next::{End, Next, PairWanted, Wanted, Wish, next};
use learning::past::Past;
use learning::search::{Progress, Search};

/// Longer ago than this, milliseconds, nobody goes on with a sitting [ours].
const STILL_OPEN: u64 = 6 * 60 * 60 * 1000;

/// What follows.
#[derive(Debug, Clone, PartialEq)]
pub enum Onto {
    /// A case, at this place.
    Case(Route),
    /// The end of the sitting.
    Over(End),
    /// No case was found.
    Nothing,
}

/// The name of a sitting that begins now.
pub fn fresh() -> String {
    fresh_id(effects::now(), effects::chance())
}

/// The sitting that was begun last and may be gone on with.
pub fn open_one(pasts: &[Past], now: u64) -> Option<&str> {
    let last = pasts.iter().rev().find(|past| past.head.sitting.is_some())?;
    let lately = last.head.begun.is_some_and(|begun| now.saturating_sub(begun) < STILL_OPEN);
    let sitting = last.head.sitting.as_deref().filter(|_| lately)?;
    let over = matches!(next(pasts, sitting, now, Wish::Due), Next::End(_));
    (!over || !last.is_over()).then_some(sitting)
}

/// The attempt of a sitting that has not come to its end.
pub fn unfinished<'a>(pasts: &'a [Past], sitting: &str) -> Option<&'a Past> {
    let of_sitting = |past: &&Past| past.head.sitting.as_deref() == Some(sitting);
    pasts.iter().rev().find(of_sitting).filter(|past| !past.is_over())
}

/// How many cases of a sitting have come to their end.
pub fn done(pasts: &[Past], sitting: &str) -> usize {
    let of_sitting = |past: &&Past| past.head.sitting.as_deref() == Some(sitting);
    pasts.iter().filter(of_sitting).filter(|past| past.is_over()).count()
}

/// What comes next in a sitting; the page has its turn while a case is looked for.
pub async fn onto(pasts: &[Past], sitting: &str, wish: Wish) -> Onto {
    if let Some(open) = unfinished(pasts, sitting) {
        return Onto::Case(Route::read(&open.head.at));
    }
    let wanted = match next(pasts, sitting, effects::now(), wish) {
        Next::Case(wanted) => wanted,
        Next::End(end) => return Onto::Over(end),
    };
    let mut breath = Breath::now();
    let pair = match &wanted.pair {
        Some(pair) => paired(pair, &mut breath).await,
        None => None,
    };
    let address = match pair {
        Some(address) => Some(address),
        None => found(wanted, &mut breath).await,
    };
    address.map_or(Onto::Nothing, |address| {
        let sitting = Some(sitting.to_owned());
        Onto::Case(Route::Case(CaseRoute { sitting, ..CaseRoute::study(From::Address(address)) }))
    })
}

/// The second case of a pair whose first one something was missed in.
async fn paired(wanted: &PairWanted, breath: &mut Breath) -> Option<Address> {
    let case = cases::at(wanted.of).ok()?;
    breath.take_now().await;
    let sound = sound_of(&case)?;
    second_case(&case, &sound, &wanted.rules, true, breath).await
}

async fn found(wanted: Wanted, breath: &mut Breath) -> Option<Address> {
    let mut search = Search::of(wanted, Spread::WholeMouth, effects::fresh_seed());
    loop {
        breath.take().await;
        match search.step() {
            Progress::Going => {}
            Progress::Found(candidate) => return Some(candidate.address),
            Progress::Nothing => return None,
        }
    }
}
