//! Event in, View out: the one facade that page and tool drive. An attempt is its list of events and
//! replays to the same debrief.

mod attempt;
mod event;
mod history;
mod reports;
#[cfg(test)]
mod tests;
mod view;
mod wander;

pub use attempt::{ATTEMPT_FORMAT, Attempt, Broken, CaseRef};
pub use event::{Event, Plain, Unreadable, Written};
pub use history::{asked_lines, history_lines};
pub use reports::{Report, all_reports, reports};
pub use view::{DecisionView, KnownFact, StepState, StepView, View};
pub use wander::{came_to_the_end, wander};

use crate::chart::Case;
use crate::debrief::{self, Debrief, Verdict};
use crate::plan::{Draft, Plan, Refusal, Step, is_asked, steps};
use serde::{Deserialize, Serialize};

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
    case: Case,
    mode: Mode,
    draft: Draft,
    plan: Plan,
    done: Vec<Step>,
    events: Vec<Event>,
}

impl Session {
    /// Opens a case.
    #[must_use]
    pub const fn open(case: Case, mode: Mode) -> Self {
        Self {
            case,
            mode,
            draft: Draft::empty(),
            plan: Plan {
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
            },
            done: Vec::new(),
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
                if self.done.contains(&decision.step()) {
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
                self.plan.carry_out(*step, &self.draft, &self.case)?;
                self.done.push(*step);
            }
        }
        self.events.push(event);
        Ok(())
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
        self.done.contains(&Step::Returns)
    }

    /// The case.
    #[must_use]
    pub const fn case(&self) -> &Case {
        &self.case
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
                && !self.done.contains(&decision.step())
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
            debrief::judge(&self.case, &self.plan)
        } else {
            Vec::new()
        }
    }

    /// The debrief; `None` before the end. `reference` is a sound plan of the case, by which the full
    /// mark is fixed.
    #[must_use]
    pub fn debrief(&self, reference: Option<&Plan>) -> Option<Debrief> {
        self.is_over().then(|| debrief::debrief(&self.case, &self.plan, reference))
    }

    /// What page and tool show.
    #[must_use]
    pub fn view(&self) -> View {
        view::view(self)
    }

    /// Whether a decision is asked as things stand.
    #[must_use]
    pub fn is_asked(&self, decision: crate::plan::Decision) -> bool {
        is_asked(decision, &self.draft, &self.case)
    }
}
