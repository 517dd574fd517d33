//! The judge and what leans on it: rules, proofs, debriefs, the protocol. The build splits it off the
//! module, and the room fetches it once a case or a rule is asked for: the first case never waits.

use crate::components::choice::Explain;
use crate::components::decided::{Decided, DecidedProps, decides, local_of};
use crate::components::dispute::disputable;
use crate::components::figure::Handles;
use crate::components::handle::handles;
use crate::components::hatchings::hatchings_of_plots;
use crate::components::last::last_verdicts;
use crate::components::outline::{OutlineField, outline_field};
use crate::components::pair::{PairPage, PairProps};
use crate::components::plates::plates;
use crate::components::sat::{instead, over};
use crate::components::sure::sure;
use crate::components::term::with_terms;
use crate::components::view::view;
use crate::components::worked::{WorkedProps, WorkedSheet};
use crate::guide::note;
use crate::keep::Kept;
use crate::keep::keeper::{self, Tell};
use crate::keep::key::Key;
use crate::library::Library;
use crate::pages::debrief::{DebriefProps, DebriefView};
use crate::pages::limits::limits;
use crate::pages::own::{OwnPages, OwnProps};
use crate::pages::protocol::protocol;
use crate::pages::rule::{RulePage, RuleProps};
use crate::pages::teach::teach;
use crate::parity::digest;
use crate::prose::{self, Prose};
use crate::results;
use crate::store::{Action, Bench, Room};
use crate::terms::{Term, terms};
use core::fmt;
use engine::cases::{self, Constraints, Within};
use engine::chart::{Address, Case};
use engine::figures::{self, Figure, Show};
use engine::plan::Step;
use engine::rules::{Local, Protocol};
use engine::session::{Lesson, Report, Session, Shown};
use std::rc::Rc;
use wasm_split_helpers::{SplitLoaderError, wasm_split};
use yew::prelude::*;

/// Everything that the room asks of the judge. What is named here and nowhere else comes with it.
#[derive(Clone, Copy)]
pub struct Judging {
    /// The case of a seed: a search, which keeps a case only with a plan that every rule calls sound,
    /// and only as hard as is asked.
    pub generate: fn(u64, Option<Within>) -> Result<Case, String>,
    /// The case of an address that is no teaching case's.
    pub replay: fn(Address) -> Result<Case, String>,
    /// The sound plan of a case, to be told; nothing where none is known.
    pub lesson: fn(&Case, Shown) -> Option<Lesson>,
    /// What stands in place of a case: before its set is begun, and while verdicts wait.
    pub instead: fn(&Rc<Bench>, &UseReducerHandle<Room>) -> Option<Html>,
    /// What stands over a case: the clock of its set.
    pub over: fn(&Bench, &Room) -> Html,
    /// Opens the browser's database and says what is kept there.
    pub open: fn(Tell),
    /// Writes down what has been done on the bench.
    pub follow: fn(&Bench, &Kept, &Tell),
    /// Fetches a kept attempt for the bench.
    pub fetch: fn(Key, Tell),
    /// A step of a worked case.
    pub worked: fn(Rc<Bench>, UseReducerHandle<Room>) -> Html,
    /// What study mode says of the step before the one that is due.
    pub last: fn(&Bench, &UseReducerHandle<Room>, Step) -> Html,
    /// The terms of a step.
    pub terms: fn(Step) -> &'static [Term],
    /// Lets the terms in a text explain themselves.
    pub explain: Explain,
    /// What is said beside a step in a guided case.
    pub note: fn(Step) -> &'static str,
    /// Asks how sure the learner is of a step.
    pub sure: fn(&Session, Step, &Callback<Action>) -> Html,
    /// Draws what can be taken hold of on a figure.
    pub handles: Handles,
    /// Asks for an outline.
    pub outline: OutlineField,
    /// What examinations and acts have reported.
    pub reports: fn(&Session) -> Vec<Report>,
    /// The section of a tooth with several roots: no case has one before the judge is here.
    pub section: fn(&Show<'_>) -> Figure,
    /// The gap all round, and along the implant once there is one.
    pub gap: fn(&Show<'_>) -> Vec<Figure>,
    /// The section of a site that has healed, once a learner has come back to it.
    pub healed: fn(&Show<'_>) -> Option<Figure>,
    /// Films and sections.
    pub plates: fn(Rc<Bench>, Callback<Action>) -> Html,
    /// The debrief.
    pub debrief: fn(Rc<Bench>, UseReducerHandle<Room>) -> Html,
    /// Reads the long texts of the rules.
    pub prose: fn(&str) -> Result<Prose, String>,
    /// Pages on what one has done oneself: what is due, a sitting, the review, the portfolio, what is kept.
    pub own: fn(UseReducerHandle<Room>) -> Html,
    /// What the results put into a part of the room.
    pub results: fn(results::Part, UseReducerHandle<Room>) -> Html,
    /// Every rule.
    pub protocol: fn(&Prose) -> Html,
    /// What is not modelled.
    pub limits: fn() -> Html,
    /// For whoever teaches, and what they hand out: the guide, the desk, a set that came by link.
    pub teach: fn(UseReducerHandle<Room>) -> Html,
    /// One rule in full, by its id.
    pub rule: fn(String) -> Html,
    /// Two cases that differ in one thing, as a set has them judged.
    pub pair: fn(Address, Option<&str>, &Library) -> Html,
    /// What a shipped set decides otherwise than the rules.
    pub decides: fn(&str) -> Protocol,
    /// The same as it is told beside a case.
    pub decided: fn(&Local) -> Html,
    /// The hatchings of the plots beside verdicts.
    pub hatchings: fn() -> Html,
    /// The digest that parity is held by.
    pub parity: fn(u32, u32) -> String,
}

impl fmt::Debug for Judging {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Judging")
    }
}

impl PartialEq for Judging {
    /// There is one judge.
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

/// Why the judge is not there.
#[derive(Debug)]
pub struct NoJudge;

impl From<SplitLoaderError> for NoJudge {
    fn from(_: SplitLoaderError) -> Self {
        Self
    }
}

impl fmt::Display for NoJudge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(
            "The rules could not be fetched: check the connection, or load the page again. The case goes on without findings and verdicts.",
        )
    }
}

/// Fetches the judge, once for the whole page.
///
/// # Errors
/// [`NoJudge`]; the next call tries again.
#[wasm_split(judging, fallible)]
pub fn judging() -> Result<Judging, NoJudge> {
    Ok(Judging {
        generate: |seed, difficulty| {
            let asked = Constraints { difficulty, ..Constraints::default() };
            cases::generate_with(seed, &asked).map_err(|fault| fault.to_string())
        },
        replay: |address| cases::at(address).map_err(|fault| fault.to_string()),
        lesson: Lesson::of,
        instead,
        over,
        open: keeper::open,
        follow: keeper::follow,
        fetch: keeper::fetch,
        worked: |bench, room| view::<WorkedSheet>(WorkedProps { bench, room }),
        last: |bench, room, due| disputable(bench, room, last_verdicts(&bench.session, due)),
        terms,
        explain: with_terms,
        note,
        sure,
        handles,
        outline: outline_field,
        reports: Session::reports,
        section: figures::section,
        gap: |show| {
            let along = show.has_implant().then(|| figures::gap_profile(show));
            core::iter::once(figures::gap_clock(show)).chain(along).collect()
        },
        healed: figures::healed_section,
        plates,
        debrief: |bench, room| {
            let debrief =
                view::<DebriefView>(DebriefProps { bench: bench.clone(), room: room.clone() });
            disputable(&bench, &room, debrief)
        },
        prose: prose::read,
        own: |room| view::<OwnPages>(OwnProps { room }),
        results: results::shown,
        protocol,
        limits,
        teach,
        rule: |id| view::<RulePage>(RuleProps { id }),
        pair: |address, set, library| match local_of(set, library) {
            Some(local) => {
                view::<PairPage>(PairProps { address, local, set: set.map(str::to_owned) })
            }
            None => html! { <p class="page">{ "The set is on its way." }</p> },
        },
        decides,
        decided: |local| view::<Decided>(DecidedProps { local: local.clone() }),
        hatchings: hatchings_of_plots,
        parity: digest,
    })
}
