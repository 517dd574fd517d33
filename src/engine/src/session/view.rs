//! What page and tool show of a session: plain data, no measurement of its own.

use super::{Session, history_lines};
use crate::anatomy::Tooth;
use crate::chart::Fact;
use crate::plan::{Decision, Entry, Refusal, Step, Value, steps};
use crate::rules::{Knowledge, Known};

/// Where a step stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StepState {
    /// Carried out.
    Done,
    /// Due now.
    Due,
    /// Still to come in this course.
    ToCome,
    /// Not part of this course as it stands.
    NotInCourse,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepView {
    /// Which.
    pub step: Step,
    /// Where it stands.
    pub state: StepState,
}

/// One decision that is asked.
#[derive(Debug, Clone)]
pub struct DecisionView {
    /// All that is said about it.
    pub entry: &'static Entry,
    /// The answer so far.
    pub value: Option<Value>,
    /// Whether it can no longer be changed.
    pub settled: bool,
}

/// Something that is known, with where it came from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownFact {
    /// What.
    pub fact: Fact,
    /// Its standing.
    pub knowledge: Knowledge,
}

/// Everything to show.
#[derive(Debug, Clone)]
pub struct View {
    /// The tooth: it names the sides in what is asked and told.
    pub tooth: Tooth,
    /// All steps, in order.
    pub steps: Vec<StepView>,
    /// The step that is due.
    pub due: Option<Step>,
    /// Whether its acts are done and only their findings are still to be weighed.
    pub weighing: bool,
    /// Decisions of every step of the course as it stands, in order.
    pub decisions: Vec<DecisionView>,
    /// What is still undecided in the step that is due.
    pub missing: Vec<Decision>,
    /// What the chart tells unasked.
    pub history: Vec<String>,
    /// Facts seen, with their sources.
    pub known: Vec<KnownFact>,
}

impl View {
    /// Why the step that is due cannot be carried out yet; `None` when it can.
    #[must_use]
    pub fn refusal(&self) -> Option<Refusal> {
        let step = self.due?;
        (!self.missing.is_empty())
            .then(|| Refusal::Undecided { step, missing: self.missing.clone() })
    }
}

pub(super) fn view(session: &Session) -> View {
    let course = steps(session.draft());
    let due = session.due();
    let state = |step: &Step| {
        if session.done().contains(step) {
            StepState::Done
        } else if due == Some(*step) {
            StepState::Due
        } else if course.contains(step) {
            StepState::ToCome
        } else {
            StepState::NotInCourse
        }
    };
    let known = Known::of(session.case(), session.shown());
    View {
        tooth: session.case().site.tooth,
        steps: Step::ALL.iter().map(|step| StepView { step: *step, state: state(step) }).collect(),
        due,
        weighing: session.weighing().is_some(),
        decisions: Decision::ALL
            .iter()
            .filter(|entry| session.is_asked(entry.decision))
            .map(|entry| DecisionView {
                entry,
                value: session.draft().value(entry.decision).cloned(),
                settled: session.is_settled(entry.decision),
            })
            .collect(),
        missing: due
            .map(|step| session.draft().undecided(step, session.opened()))
            .unwrap_or_default()
            .into_iter()
            .filter(|decision| session.is_asked(*decision))
            .collect(),
        history: history_lines(session.case()),
        known: Fact::ALL
            .iter()
            .map(|fact| KnownFact { fact: *fact, knowledge: known.fact(*fact) })
            .filter(|known| matches!(known.knowledge, Knowledge::Seen(_)))
            .collect(),
    }
}
