//! The next case of a sitting: which skill it is for, of which kinds it may be, how hard it should be.
//!
//! A pure function of what was done and of the time. Design rules that follow from the evidence stand
//! beside their numbers in [`crate::parameters`].

use crate::called::{hardness, place, shares};
use crate::parameters::{
    BLOCK, CALLS_OFTEN, DIFFICULTIES, KINDS, LATELY, LEAST_WIDTH, MIDDLE, OF_ONE_ARCHETYPE,
    OFF_DIFFICULTY, SEEN_LATELY, SITTING, SLOPE, SUCCESS, TRACING,
};
use crate::past::{Observed, Past};
use crate::standing::{Standing, of};
use crate::today::{Why, due, why};
use engine::cases::{Archetype, Within};
use engine::chart::Address;
use engine::geometry::order;
use engine::rules::{Rule, Skill};

pub use crate::today::{Due, today};

/// What comes next.
#[derive(Debug, Clone, PartialEq)]
pub enum Next {
    /// A case.
    Case(Wanted),
    /// The sitting is over.
    End(End),
}

/// Why a sitting is over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// It had as many cases as a sitting has.
    Enough,
    /// Everything is mastered, and nothing is due.
    NothingDue,
}

/// Whether to go on where nothing is due.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wish {
    /// Only what is due.
    Due,
    /// One more case all the same.
    Anyway,
}

/// The case that is wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Wanted {
    /// The skill that it is for.
    pub focus: Skill,
    /// Why that one.
    pub why: Option<Why>,
    /// What may decide something in it, the best first; at most [`KINDS`].
    pub kinds: Vec<Archetype>,
    /// How hard it should be; nothing where that does not matter.
    pub within: Option<Within>,
    /// How much each skill is wanted, 0 to 1, in the order of [`Skill::ALL`].
    pub wants: [f64; Skill::ALL.len()],
    /// Where something was just missed: a second case that differs in one thing is wanted before all
    /// else, if there is one.
    pub pair: Option<PairWanted>,
}

/// A paired case that is wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct PairWanted {
    /// The case that something was missed in.
    pub of: Address,
    /// The rules that were, the worst first.
    pub rules: Vec<&'static Rule>,
}

/// What comes next in the sitting of this name. `pasts`: every attempt in order of time, those of the
/// sitting among them (`head.sitting`), the open one left out; `now`: milliseconds since 1970.
#[must_use]
pub fn next(pasts: &[Past], sitting: &str, now: u64, wish: Wish) -> Next {
    let of_sitting = |past: &Past| past.head.sitting.as_deref() == Some(sitting);
    let done: Vec<usize> = (0..pasts.len()).filter(|place| of_sitting(&pasts[*place])).collect();
    if wish == Wish::Due && done.len() >= SITTING {
        return Next::End(End::Enough);
    }
    let standings = of(pasts, now);
    let all = due(&standings, pasts, now);
    if wish == Wish::Due && all.is_empty() {
        return Next::End(End::NothingDue);
    }
    // Which skill was in focus is not kept: it follows from what had been done by then.
    let mut focus = None;
    for place in &done {
        let before = &pasts[..*place];
        let then = pasts[*place].head.begun.unwrap_or(now);
        focus = Some(focus_of(&of(before, then), before, then, focus));
    }
    let missed = focus;
    let focus = focus_of(&standings, pasts, now, focus);
    let standing = &standings[place(focus)];
    let wants = standings.each_ref().map(want);
    let within = within(standing.now());
    let of_sitting: Vec<&Past> = done.iter().map(|place| &pasts[*place]).collect();
    Next::Case(Wanted {
        focus,
        why: why(standing, pasts, now),
        kinds: kinds(focus, &wants, within, pasts, &of_sitting),
        within,
        wants,
        pair: missed.and_then(|missed| pair(&of_sitting, missed)),
    })
}

/// How much a skill is wanted, 0 to 1.
fn want(standing: &Standing) -> f64 {
    1.0 - standing.now()
}

/// The skill to practise: the one before, until its last answers are right twice in a row; then the
/// most wanted of the others.
fn focus_of(standings: &[Standing], pasts: &[Past], now: u64, before: Option<Skill>) -> Skill {
    if let Some(before) = before
        && standings[place(before)].in_a_row() < BLOCK
    {
        return before;
    }
    let all = due(standings, pasts, now);
    let other = all.iter().find(|one| Some(one.skill) != before).or(all.first());
    other.map_or_else(|| least_held(standings), |one| one.skill)
}

fn least_held(standings: &[Standing]) -> Skill {
    let mut least = &standings[0];
    for one in standings {
        if one.now() < least.now() {
            least = one;
        }
    }
    least.skill
}

/// The kinds of case that call for the skill in focus and for most of what else is wanted; those that
/// the sitting has had twice are left out, those seen lately wait.
fn kinds(
    focus: Skill,
    wants: &[f64],
    within: Option<Within>,
    pasts: &[Past],
    sitting: &[&Past],
) -> Vec<Archetype> {
    let had = |kind: Archetype| sitting.iter().filter(|past| past.archetype == Some(kind)).count();
    let lately = &pasts[pasts.len().saturating_sub(LATELY)..];
    let seen = |kind: Archetype| lately.iter().filter(|past| past.archetype == Some(kind)).count();
    let mut ranked: Vec<([f64; 2], Archetype)> = Archetype::ALL
        .iter()
        .copied()
        .filter(|kind| had(*kind) < OF_ONE_ARCHETYPE)
        .map(|kind| {
            let called = shares(Some(kind));
            let gain: f64 = called.iter().zip(wants).map(|(share, want)| share * want).sum();
            let waits = f64::from(u32::try_from(seen(kind)).unwrap_or(u32::MAX)) * SEEN_LATELY;
            let of_focus = called[place(focus)].min(CALLS_OFTEN);
            let off = OFF_DIFFICULTY * off(within, hardness(kind));
            ([-of_focus, waits + off - gain], kind)
        })
        .collect();
    order::sort_short(&mut ranked, |(one, _), (other, _)| {
        one[0].total_cmp(&other[0]).then(one[1].total_cmp(&other[1]))
    });
    ranked.into_iter().take(KINDS).map(|(_, kind)| kind).collect()
}

/// How far a difficulty lies from where it should; what does not matter is met by every case.
pub(crate) fn off(within: Option<Within>, difficulty: f64) -> f64 {
    let [low, high] = within.map_or([0.0, 1.0], Within::ends);
    (low - difficulty).max(difficulty - high).max(0.0)
}

/// How hard a case should be: the log odds of success fall with difficulty from what the chance that
/// the skill is known promises at middling difficulty, and success should have the chance of
/// [`SUCCESS`]. Kept to what is drawn.
fn within(known: f64) -> Option<Within> {
    let odds = |chance: f64| libm::log(chance / (1.0 - chance));
    let at = |success: f64| MIDDLE + (odds(TRACING.correct(known)) - odds(success)) / SLOPE;
    let [low, high] = DIFFICULTIES;
    let middle = (at(SUCCESS[1]) + at(SUCCESS[0])) / 2.0;
    let half = ((at(SUCCESS[0]) - at(SUCCESS[1])) / 2.0).max(LEAST_WIDTH / 2.0);
    let middle = middle.clamp(low + half, high - half);
    let hundredths = |value: f64| libm::round(value * 100.0) / 100.0;
    Within::new(hundredths(middle - half), hundredths(middle + half)).ok()
}

/// A pair is wanted where the last case of the sitting was done alone, missed what it was for, and was
/// no second of a pair itself.
fn pair(sitting: &[&Past], focus: Skill) -> Option<PairWanted> {
    let last = sitting.last().filter(|past| past.is_own() && past.is_over())?;
    let of = last.head.address.filter(|address| address.changed.is_none())?;
    let of_focus = |one: &&Observed| one.is_fault() && one.rule.skill == focus;
    let mut missed: Vec<_> = last.observed.iter().filter(of_focus).collect();
    order::sort_short_by_key(&mut missed, |one| core::cmp::Reverse(one.zone));
    let rules: Vec<_> = missed.into_iter().map(|one| one.rule).collect();
    (!rules.is_empty()).then_some(PairWanted { of, rules })
}

#[cfg(test)]
mod tests;
