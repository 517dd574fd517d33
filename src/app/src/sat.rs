//! How a set is sat in this browser: begun, on whose clock, and whether its verdicts may be seen. None of
//! it is a lock: it is kept beside the attempts, in the learner's own browser.

use crate::effects;
use crate::library::{Library, ShippedSet};
use crate::results::store;
use crate::route::From;
use crate::store::{Bench, Room};
use engine::scenario::{Conditions, Verdicts};
use learning::past::Past;
use learning::record::Limit;

/// Where this browser keeps the sets that were begun, and the cases that were opened, behind the name of
/// the room's store: two learners of one host never see each other's.
const SITTINGS: &str = "-begun";
const OPENED: &str = "-opened";
/// The most sets, and the most cases, that are remembered; the oldest go.
const MOST_SITTINGS: usize = 100;
const MOST_OPENED: usize = 3000;

/// A set that was begun here.
struct Begun {
    set: String,
    /// Its time, where it has one.
    limit: Option<Limit>,
    /// Whether its verdicts may be seen.
    shown: bool,
}

impl Begun {
    /// In a line: whether verdicts are shown, the time, the set.
    fn line(&self) -> String {
        let (from, minutes) = self.limit.map_or((0, 0), |limit| (limit.from, limit.minutes));
        format!("{} {from} {minutes} {}", u8::from(self.shown), self.set)
    }

    fn of_line(line: &str) -> Option<Self> {
        let mut parts = line.splitn(4, ' ');
        let shown = parts.next()? == "1";
        let (from, minutes) = (parts.next()?.parse().ok()?, parts.next()?.parse().ok()?);
        let limit = (minutes > 0).then_some(Limit { from, minutes });
        Some(Self { set: parts.next()?.to_owned(), limit, shown })
    }
}

fn named(name: &str) -> String {
    format!("{}{name}", store())
}

fn all() -> Vec<Begun> {
    let text = effects::kept_text(&named(SITTINGS)).unwrap_or_default();
    text.lines().filter_map(Begun::of_line).collect()
}

fn keep(all: &[Begun]) {
    let lines: Vec<String> = all.iter().map(Begun::line).collect();
    effects::keep_text(&named(SITTINGS), &lines.join("\n"));
}

fn begun(set: &str) -> Option<Begun> {
    all().into_iter().find(|one| one.set == set)
}

/// Begins a set: its clock runs from now on, for as many minutes.
pub fn begin(set: &str, minutes: Option<u32>) {
    let mut sittings = all();
    // Whole seconds: no host keeps more.
    let from = effects::now() / 1000 * 1000;
    let limit = minutes.map(|minutes| Limit { from, minutes });
    sittings.retain(|one| one.set != set);
    sittings.insert(0, Begun { set: set.to_owned(), limit, shown: false });
    sittings.truncate(MOST_SITTINGS);
    keep(&sittings);
}

/// Lets the verdicts of a set be seen from now on.
pub fn show(set: &str) {
    let mut sittings = all();
    if let Some(one) = sittings.iter_mut().find(|one| one.set == set) {
        one.shown = true;
    }
    keep(&sittings);
}

/// The time of a set that was begun here, where it has one.
pub fn limit(set: &str) -> Option<Limit> {
    begun(set)?.limit
}

/// The conditions of a set; none where they cannot be read, as a link's were checked when it was opened.
pub fn conditions(set: &ShippedSet) -> Conditions {
    Conditions::of_line(&set.conditions).unwrap_or_default()
}

/// The set that the case on the bench belongs to, where it is sat under conditions.
pub fn set_of<'a>(bench: &Bench, room: &'a Room) -> Option<&'a ShippedSet> {
    let (From::Set(name, _), Library::Here(sets)) = (&bench.asked.from, &room.library) else {
        return None;
    };
    sets.iter().find(|set| set.name == *name && !set.conditions.is_empty())
}

/// Whether a set is still to be begun here.
pub fn is_new(set: &ShippedSet) -> bool {
    begun(&set.name).is_none()
}

/// Whether the verdicts of a set wait.
pub fn waits(set: &ShippedSet) -> bool {
    !set.conditions.is_empty()
        && conditions(set).verdicts != Verdicts::AfterCase
        && !begun(&set.name).is_some_and(|one| one.shown)
}

/// Takes out the attempts whose verdicts wait; how many there are.
pub fn hold_back(pasts: &mut Vec<Past>, library: &Library) -> usize {
    let Library::Here(sets) = library else { return 0 };
    let waiting: Vec<&str> =
        sets.iter().filter(|set| waits(set)).map(|set| set.name.as_str()).collect();
    let before = pasts.len();
    pasts.retain(|past| past.head.set.as_deref().is_none_or(|set| !waiting.contains(&set)));
    before - pasts.len()
}

/// Notes that a case is opened; whether it had been before.
pub fn open(case: &str) -> bool {
    let text = effects::kept_text(&named(OPENED)).unwrap_or_default();
    if text.lines().any(|one| one == case) {
        return true;
    }
    let earlier = text.lines().take(MOST_OPENED - 1);
    let lines: Vec<&str> = core::iter::once(case).chain(earlier).collect();
    effects::keep_text(&named(OPENED), &lines.join("\n"));
    false
}

/// Forgets which sets were begun and which cases were opened.
pub fn forget() {
    [SITTINGS, OPENED].into_iter().for_each(|name| effects::forget_text(&named(name)));
}
