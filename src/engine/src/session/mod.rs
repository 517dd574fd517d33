//! Event in, View out: the one facade that page and tool drive. An attempt is its list of events and
//! replays to the same debrief.

mod disputes;
mod event;
mod film_report;
mod films;
mod history;
mod notes;
mod operated;
mod reports;
mod returns;
mod soundings;
mod sure;
#[cfg(test)]
mod tests;
mod view;
mod wander;
mod worked;
mod written;

pub use disputes::LONGEST_REASON;
pub use event::{Event, Unreadable};
pub use films::{Exposure, Moment, Taken};
pub use history::{asked_lines, history_lines};
pub use operated::happened;
use reports::reports;
pub use reports::{Report, all_reports};
pub use soundings::{Depth, Sounded, Spot, Standing};
pub use sure::SURENESS;
pub use view::{DecisionView, KnownFact, StepState, StepView, View};
pub use wander::{came_to_the_end, wander};
pub use worked::{Lesson, Shown, Told};
pub use written::{Plain, Written, WrittenSpot};

use crate::chart::{Case, Finding, Noted};
use crate::debrief::{self, Debrief, Verdict};
use crate::events;
use crate::plan::{
    Decision, Draft, Kind, Later, Plan, Refusal, Rescue, Step, Value, is_asked, steps,
    weighs_findings,
};
use crate::search::{self, Nearest};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// When verdicts are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mode {
    /// Each step is explained once it is carried out.
    Study,
    /// Everything waits for the end.
    Assessment,
}

/// One attempt at one case, as it stands.
#[derive(Debug, Clone)]
pub struct Session {
    /// As it was drawn or written.
    opened: Case,
    /// As the acts so far have left it, where an event has changed it.
    harmed: Option<Box<Case>>,
    mode: Mode,
    draft: Draft,
    plan: Plan,
    /// The plan with the acts of a step whose findings are still to be weighed: only ever shown.
    shown: Plan,
    weighing: Option<Step>,
    done: Vec<Step>,
    /// Films taken again: at which moment, and how they were aimed.
    repeats: Vec<(Moment, Exposure)>,
    /// Where the learner put the probe, in order.
    probed: Vec<Spot>,
    /// What was written down of the findings.
    notes: Vec<(Finding, Noted)>,
    /// What the learner holds against verdicts, by rule.
    disputes: Vec<(String, String)>,
    /// How sure the learner was of each step, percent.
    sure: Vec<(Step, u8)>,
    events: Vec<Event>,
}

const NOTHING_DONE: Plan = Plan {
    chart: None,
    examined: None,
    intention: None,
    extraction: None,
    flap: None,
    implant: None,
    seating: None,
    graft: None,
    closure: None,
    returns: None,
    later: Later::NONE,
    rescue: Rescue {
        tip: None,
        lining: None,
        bleed: None,
        floor: None,
        nerve: None,
        exposure: None,
        infection: None,
    },
};

impl Session {
    /// Opens a case.
    #[must_use]
    pub const fn open(case: Case, mode: Mode) -> Self {
        Self {
            opened: case,
            harmed: None,
            mode,
            draft: Draft::empty(),
            plan: NOTHING_DONE,
            shown: NOTHING_DONE,
            weighing: None,
            done: Vec::new(),
            repeats: Vec::new(),
            probed: Vec::new(),
            notes: Vec::new(),
            disputes: Vec::new(),
            sure: Vec::new(),
            events: Vec::new(),
        }
    }

    /// Does one thing.
    ///
    /// # Errors
    /// A [`Refusal`]; nothing has changed then.
    pub fn apply(&mut self, event: Event) -> Result<(), Refusal> {
        match &event {
            Event::Choose(decision, value) => {
                if self.is_settled(*decision) {
                    return Err(Refusal::Past { decision: *decision });
                }
                match value {
                    Some(value) => self.draft.choose(*decision, value.clone())?,
                    None => self.draft.clear(*decision),
                }
            }
            Event::CarryOut(step) => {
                let due = self.due();
                if due != Some(*step) {
                    return Err(Refusal::OutOfOrder { asked: *step, due });
                }
                if self.waits_for_its_findings(*step) {
                    self.shown.carry_out(*step, &self.unweighed(*step), &self.opened)?;
                    self.weighing = Some(*step);
                } else {
                    self.plan.carry_out(*step, &self.draft, &self.opened)?;
                    self.shown.clone_from(&self.plan);
                    self.weighing = None;
                    self.done.push(*step);
                }
                self.harmed = match events::after(&self.opened, &self.shown) {
                    Cow::Owned(case) => Some(Box::new(case)),
                    Cow::Borrowed(_) => None,
                };
            }
            Event::Expose(exposure) => self.repeat(*exposure)?,
            Event::Sound(spot) => self.sound(*spot)?,
            Event::Note(finding, noted) => self.note(*finding, *noted)?,
            Event::Dispute(rule, reason) => self.dispute(rule, reason),
            Event::Sure(step, percent) => self.be_sure(*step, *percent)?,
        }
        self.events.push(event);
        Ok(())
    }

    /// Whether carrying out the step does its acts only: all that is undecided in it asks what they
    /// find, and nobody can weigh a finding before it is there.
    fn waits_for_its_findings(&self, step: Step) -> bool {
        let missing = self.draft.undecided(step, &self.opened);
        self.weighing != Some(step)
            && !missing.is_empty()
            && missing.iter().all(|decision| weighs_findings(*decision, &self.draft))
    }

    /// The draft with any answer to what is still to be weighed: for showing what the acts find,
    /// which no such answer changes.
    fn unweighed(&self, step: Step) -> Draft {
        let mut draft = self.draft.clone();
        // An answer may bring another question in; what cannot be answered so stays open and is said.
        while let Some(decision) = draft.undecided(step, &self.opened).first().copied() {
            let first = match decision.entry().kind {
                Kind::Many(_) => Value::Many(0),
                _ => Value::One(0),
            };
            if draft.choose(decision, first).is_err() {
                break;
            }
        }
        draft
    }

    /// Whether the decision can no longer be changed.
    #[must_use]
    pub fn is_settled(&self, decision: Decision) -> bool {
        let step = decision.step();
        self.done.contains(&step)
            || (self.weighing == Some(step) && !weighs_findings(decision, &self.draft))
    }

    /// The step whose acts are done while their findings are still to be weighed.
    #[must_use]
    pub const fn weighing(&self) -> Option<Step> {
        self.weighing
    }

    /// Replays events on a case.
    ///
    /// # Errors
    /// The place of the first event that was refused, and why.
    pub fn replay(case: Case, mode: Mode, events: &[Event]) -> Result<Self, (usize, Refusal)> {
        let mut session = Self::open(case, mode);
        for (place, event) in events.iter().enumerate() {
            session.apply(event.clone()).map_err(|refusal| (place, refusal))?;
        }
        Ok(session)
    }

    /// The step that is due; `None` once the course is at its end.
    #[must_use]
    pub fn due(&self) -> Option<Step> {
        steps(&self.draft)
            .into_iter()
            .find(|step| !self.done.contains(step))
            .filter(|_| !self.is_over())
    }

    /// Whether everything has been carried out.
    #[must_use]
    pub fn is_over(&self) -> bool {
        let course = steps(&self.draft);
        self.done.contains(&Step::Review) && course.iter().all(|step| self.done.contains(step))
    }

    /// The case as the acts so far have left it: what figures and reports are of.
    #[must_use]
    pub fn case(&self) -> &Case {
        self.harmed.as_deref().unwrap_or(&self.opened)
    }

    /// The case as it was opened: what is stored, proved and judged.
    #[must_use]
    pub const fn opened(&self) -> &Case {
        &self.opened
    }

    /// When verdicts are shown.
    #[must_use]
    pub const fn mode(&self) -> Mode {
        self.mode
    }

    /// What has been chosen.
    #[must_use]
    pub const fn draft(&self) -> &Draft {
        &self.draft
    }

    /// What has been carried out.
    #[must_use]
    pub const fn plan(&self) -> &Plan {
        &self.plan
    }

    /// The same, of an attempt that nobody goes on with.
    #[must_use]
    pub fn into_plan(self) -> Plan {
        self.plan
    }

    /// What has been carried out, the acts included whose findings are still to be weighed: for
    /// figures and reports, never for verdicts.
    #[must_use]
    pub const fn shown(&self) -> &Plan {
        &self.shown
    }

    /// The steps carried out, in order.
    #[must_use]
    pub fn done(&self) -> &[Step] {
        &self.done
    }

    /// What was done, in order.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        &self.events
    }

    /// The draft with choices tried out, as many as a drag moves at once: what it shows before it
    /// ends.
    #[must_use]
    pub fn tried(&self, events: &[Event]) -> Draft {
        let mut draft = self.draft.clone();
        for event in events {
            if let Event::Choose(decision, Some(value)) = event
                && !self.is_settled(*decision)
            {
                // A preview that does not fit leaves the draft unchanged.
                let _ = draft.choose(*decision, value.clone());
            }
        }
        draft
    }

    /// Verdicts that may be shown now: of finished steps in study mode, all of them at the end.
    #[must_use]
    pub fn verdicts(&self) -> Vec<Verdict> {
        if self.mode == Mode::Study || self.is_over() {
            debrief::judge(&self.opened, &self.plan)
        } else {
            Vec::new()
        }
    }

    /// The debrief; `None` before the end. `reference` is a sound plan of the case, by which the full
    /// mark is fixed.
    #[must_use]
    pub fn debrief(&self, reference: Option<&Plan>) -> Option<Debrief> {
        self.is_over().then(|| debrief::debrief(&self.opened, &self.plan, reference))
    }

    /// The sound plan that is nearest to this one, once the course is over: a search of some ten
    /// thousandths of a second to some tenths.
    #[must_use]
    pub fn nearest(&self) -> Option<Nearest> {
        self.is_over().then(|| search::nearest(&self.opened, &self.draft))?
    }

    /// What page and tool show.
    #[must_use]
    pub fn view(&self) -> View {
        view::view(self)
    }

    /// What examinations and acts have reported so far, in order. It measures and has much to say, so
    /// a page may ask for it apart from the rest of its [`View`].
    #[must_use]
    pub fn reports(&self) -> Vec<Report> {
        let mut reports = reports(self);
        reports.extend(operated::operation(self.case(), &self.shown, &self.plan));
        reports
    }

    /// Whether a decision is asked as things stand: one that weighs findings once they are there.
    #[must_use]
    pub fn is_asked(&self, decision: Decision) -> bool {
        let step = decision.step();
        let found = self.weighing == Some(step) || self.done.contains(&step);
        is_asked(decision, &self.draft, &self.opened)
            && (found || !weighs_findings(decision, &self.draft))
    }
}
