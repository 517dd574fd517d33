//! Where the fragment of the address leads. One grammar serves all addresses, so that any static
//! host under any sub-path works.

use engine::cases::{NotWithin, Within};
use engine::chart::Address;
use engine::session::{Mode, Shown};

/// A place in the room.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Route {
    /// Sets, a fresh case, the guided one.
    Home,
    /// What this tool is and is not.
    Briefing,
    /// One case.
    Case(CaseRoute),
    /// Two cases that differ in one thing, by the address of the second, and by the set, if any, as
    /// which has them judged.
    Pair(Address, Option<String>),
    /// Every rule with its limits.
    Protocol,
    /// One rule in full.
    Rule(String),
    /// What is not modelled.
    Limits,
    /// For whoever teaches.
    Guide,
    /// Where a set is written.
    Desk,
    /// A set that came by link, as the link holds it.
    Given(String),
    /// What is due, and a sitting.
    Today,
    /// What became of a sitting, by its name.
    Sitting(String),
    /// How it has gone so far.
    Review,
    /// A record to print.
    Portfolio,
    /// What is kept in this browser.
    Keeping,
    /// What a class handed in, for its instructor.
    Class,
    /// A kept attempt, by its name, and the rule whose verdict is looked for.
    Attempt(String, Option<String>),
    /// A fragment that leads nowhere, and why.
    Nowhere(String),
}

/// Which case, and how it is played.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CaseRoute {
    /// Which.
    pub from: From,
    /// When verdicts are shown.
    pub mode: Mode,
    /// Whether each step is talked through.
    pub guided: bool,
    /// How much of it is shown, worked.
    pub shown: Option<Shown>,
    /// The sitting that it belongs to, by its name.
    pub sitting: Option<String>,
}

impl CaseRoute {
    /// A case in study mode, on one's own.
    pub const fn study(from: From) -> Self {
        Self { from, mode: Mode::Study, guided: false, shown: None, sitting: None }
    }
}

/// Where a case comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum From {
    /// Its address.
    Address(Address),
    /// A bare seed, and how hard its case is to be.
    Seed(u64, Option<Within>),
    /// A case of a shipped set, by the set's name and place from 1.
    Set(String, usize),
}

impl Route {
    /// Reads a fragment, with or without its `#`.
    #[must_use]
    pub fn read(fragment: &str) -> Self {
        let path = fragment.trim_start_matches('#').trim_start_matches('/');
        let (path, query) = path.split_once('?').unwrap_or((path, ""));
        let parts: Vec<&str> = path.split('/').filter(|part| !part.is_empty()).collect();
        match parts.as_slice() {
            [] => Self::Home,
            ["briefing"] => Self::Briefing,
            ["protocol"] => Self::Protocol,
            ["protocol", id] => Self::Rule(shortened(id)),
            ["limits"] => Self::Limits,
            ["guide"] => Self::Guide,
            ["desk"] => Self::Desk,
            // Whole, however long: who reads it says what is wrong with it.
            ["given", set] => Self::Given((*set).to_owned()),
            ["today"] => Self::Today,
            ["sitting", id] => Self::Sitting(shortened(id)),
            ["review"] => Self::Review,
            ["portfolio"] => Self::Portfolio,
            ["keeping"] => Self::Keeping,
            ["class"] => Self::Class,
            ["kept", id] => Self::Attempt(shortened(id), None),
            ["kept", id, rule] => Self::Attempt(shortened(id), Some(shortened(rule))),
            ["case", which] => match from(which).and_then(|from| as_hard(from, query)) {
                Ok(from) => Self::case(from, query),
                Err(why) => Self::Nowhere(why),
            },
            ["pair", which] => match which.parse() {
                Ok(address) => Self::Pair(address, query.strip_prefix("set=").map(shortened)),
                Err(why) => {
                    let why: engine::chart::BadAddress = why;
                    Self::Nowhere(why.to_string())
                }
            },
            ["set", name, place] => match place.parse() {
                Ok(place) if place > 0 => Self::case(From::Set(shortened(name), place), query),
                _ => Self::Nowhere(format!(
                    "found case \"{}\", expected its number in the set",
                    shortened(place)
                )),
            },
            _ => Self::Nowhere(format!(
                "found \"{}\", which leads nowhere in this room",
                shortened(path)
            )),
        }
    }

    /// Reads what was typed: a case's address, a seed, or a whole address with its fragment.
    #[must_use]
    pub fn typed(text: &str) -> Self {
        if let Some((_, fragment)) = text.split_once('#') {
            return Self::read(fragment);
        }
        match from(text) {
            Ok(from) => Self::case(from, ""),
            Err(why) => Self::Nowhere(why),
        }
    }

    fn case(from: From, query: &str) -> Self {
        let has = |flag: &str| query.split('&').any(|part| part == flag);
        let mode = if has("assessment") { Mode::Assessment } else { Mode::Study };
        let shown = [(WORKED, Shown::Whole), (BEGUN, Shown::Begun)];
        let shown = shown.into_iter().find(|(flag, _)| has(flag)).map(|(_, shown)| shown);
        let sitting = query.split('&').find_map(|part| part.strip_prefix(SITTING)).map(shortened);
        Self::Case(CaseRoute { from, mode, guided: has("guided"), shown, sitting })
    }

    /// The fragment that leads here, with its `#`.
    #[must_use]
    pub fn fragment(&self) -> String {
        match self {
            Self::Home | Self::Nowhere(_) => "#/".to_owned(),
            Self::Briefing => "#/briefing".to_owned(),
            Self::Pair(address, None) => format!("#/pair/{address}"),
            Self::Pair(address, Some(set)) => format!("#/pair/{address}?set={set}"),
            Self::Protocol => "#/protocol".to_owned(),
            Self::Rule(id) => format!("#/protocol/{id}"),
            Self::Limits => "#/limits".to_owned(),
            Self::Guide => "#/guide".to_owned(),
            Self::Desk => "#/desk".to_owned(),
            Self::Given(set) => format!("#/given/{set}"),
            Self::Today => "#/today".to_owned(),
            Self::Sitting(id) => format!("#/sitting/{id}"),
            Self::Review => "#/review".to_owned(),
            Self::Portfolio => "#/portfolio".to_owned(),
            Self::Keeping => "#/keeping".to_owned(),
            Self::Class => "#/class".to_owned(),
            Self::Attempt(id, None) => format!("#/kept/{id}"),
            Self::Attempt(id, Some(rule)) => format!("#/kept/{id}/{rule}"),
            Self::Case(case) => {
                let path = match &case.from {
                    From::Address(address) => format!("case/{address}"),
                    From::Seed(seed, _) => format!("case/{seed}"),
                    From::Set(name, place) => format!("set/{name}/{place}"),
                };
                let within = match case.from {
                    From::Seed(_, Some(within)) => Some(format!("{HARD}{within}")),
                    _ => None,
                };
                let flags: Vec<String> = [
                    (case.mode == Mode::Assessment).then(|| "assessment".to_owned()),
                    case.guided.then(|| "guided".to_owned()),
                    case.shown.map(|shown| {
                        (if shown == Shown::Whole { WORKED } else { BEGUN }).to_owned()
                    }),
                    within,
                    case.sitting.as_ref().map(|sitting| format!("{SITTING}{sitting}")),
                ]
                .into_iter()
                .flatten()
                .collect();
                let mark = if flags.is_empty() { "" } else { "?" };
                format!("#/{path}{mark}{}", flags.join("&"))
            }
        }
    }
}

/// How a seed's address says how hard its case is to be.
const HARD: &str = "difficulty=";
/// How an address says to which sitting a case belongs.
const SITTING: &str = "sitting=";
/// How an address says that a case is shown whole.
const WORKED: &str = "worked";
/// How it says that a case is begun for the learner.
const BEGUN: &str = "begun";

/// The same case of a seed, as hard as the query asks.
fn as_hard(from: From, query: &str) -> Result<From, String> {
    let asked = query.split('&').find_map(|part| part.strip_prefix(HARD));
    match (from, asked) {
        (From::Seed(seed, _), Some(asked)) => {
            let within = asked.parse().map_err(|why: NotWithin| why.to_string())?;
            Ok(From::Seed(seed, Some(within)))
        }
        (from, _) => Ok(from),
    }
}

fn from(which: &str) -> Result<From, String> {
    if !which.is_empty() && which.bytes().all(|b| b.is_ascii_digit()) {
        return which.parse().map(|seed| From::Seed(seed, None)).map_err(|_| {
            format!(
                "found the seed \"{}\", expected a whole number below 18446744073709551616",
                shortened(which)
            )
        });
    }
    which.parse().map(From::Address).map_err(|bad: engine::chart::BadAddress| bad.to_string())
}

/// What came from outside is shown shortened, and always as text.
fn shortened(text: &str) -> String {
    text.chars().take(60).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_route_reads_back_from_its_own_fragment() {
        for fragment in [
            "#/",
            "#/briefing",
            "#/protocol",
            "#/protocol/gap-too-narrow",
            "#/limits",
            "#/guide",
            "#/desk",
            "#/given/1.eJwrLs1VyC9KAQ-_0",
            "#/case/1.1.2024.3",
            "#/case/2024?assessment",
            "#/case/2024?difficulty=0.6-1",
            "#/case/7?guided&difficulty=0-0.5",
            "#/case/1.1.7.0?begun",
            "#/set/first-walls/1?worked",
            "#/pair/1.1.2024.3.facial-loss.45",
            "#/pair/1.1.2024.3.facial-loss.45?set=first-walls",
            "#/set/first-walls/2?guided",
            "#/case/1.3.77.0?sitting=0199-ab",
            "#/today",
            "#/sitting/0199-ab",
            "#/review",
            "#/portfolio",
            "#/keeping",
            "#/class",
            "#/kept/0199-ab",
            "#/kept/0199-ab/gap-too-narrow",
        ] {
            assert_eq!(Route::read(fragment).fragment(), fragment);
        }
    }

    #[test]
    fn what_is_typed_may_be_an_address_a_seed_or_a_whole_link() {
        let read = Route::read("#/case/1.1.2024.3");
        assert_eq!(Route::typed("1.1.2024.3"), read);
        assert_eq!(Route::typed("https://example.org/room/#/case/1.1.2024.3"), read);
        assert_eq!(Route::typed("2024"), Route::read("#/case/2024"));
        for text in ["", "x", "case/1", "1/2", "<b>"] {
            let Route::Nowhere(why) = Route::typed(text) else { panic!("{text}") };
            assert!(why.contains("expected"), "{text}: {why}");
        }
    }

    #[test]
    fn a_fragment_that_leads_nowhere_says_so() {
        for fragment in [
            "#/case/3?difficulty=9",
            "#/case/1.2.x.4",
            "#/set/a/0",
            "#/attic",
            "#/case/99999999999999999999999",
        ] {
            assert!(matches!(Route::read(fragment), Route::Nowhere(_)), "{fragment}");
        }
    }
}
