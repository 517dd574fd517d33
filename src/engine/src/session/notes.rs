//! What the learner writes down of the findings, and how it compares with what is there.

use super::Session;
use crate::chart::{Finding, Noted};
use crate::debrief::{Compared, compared};
use crate::plan::{Refusal, Step};

impl Session {
    /// What has been written down.
    #[must_use]
    pub fn notes(&self) -> &[(Finding, Noted)] {
        &self.notes
    }

    /// Whether findings can be written down: at the examination, once it has shown something.
    #[must_use]
    pub fn may_note(&self) -> bool {
        self.weighing == Some(Step::Examination)
    }

    /// What was written down beside what is there; nothing before the end.
    #[must_use]
    pub fn compared(&self) -> Vec<Compared> {
        if !self.is_over() {
            return Vec::new();
        }
        compared(&self.opened, &self.plan, &self.notes)
    }

    pub(super) fn note(&mut self, finding: Finding, noted: Option<Noted>) -> Result<(), Refusal> {
        let applies = finding.applies(&self.opened.site);
        if !self.may_note() || !applies || noted.is_some_and(|noted| !finding.allows(noted)) {
            return Err(Refusal::NotToBeNoted);
        }
        self.notes.retain(|(one, _)| *one != finding);
        self.notes.extend(noted.map(|noted| (finding, noted)));
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::session::{Event, Mode};

    /// A session whose examination has shown something that is still to be weighed.
    fn examining(trial: &Trial) -> Session {
        let mut session = Session::open(trial.case.clone(), Mode::Study);
        for (decision, value) in
            trial.draft.iter().filter(|(decision, _)| !decision.weighs_findings())
        {
            session.apply(Event::Choose(decision, Some(value.clone()))).unwrap();
        }
        while session.weighing() != Some(Step::Examination) {
            if let Some(step) = session.weighing() {
                for (decision, value) in trial.draft.iter().filter(|(one, _)| one.step() == step) {
                    // What is settled stays as it is.
                    let _ = session.apply(Event::Choose(decision, Some(value.clone())));
                }
            }
            session.apply(Event::CarryOut(session.due().unwrap())).unwrap();
        }
        session
    }

    #[test]
    fn a_finding_is_written_over_taken_back_and_kept_in_the_attempt() {
        let trial = Trial::plain();
        let mut session = examining(&trial);
        let width = Finding::DefectWidth;
        for noted in [Some(30), Some(42), None, Some(55)] {
            session.apply(Event::Note(width, noted)).unwrap();
        }
        assert_eq!(session.notes(), [(width, 55)]);
        let again = Session::replay(trial.case.clone(), Mode::Study, session.events()).unwrap();
        assert_eq!(again.notes(), session.notes());
        assert!(session.compared().is_empty(), "nothing is told before the end");
    }

    #[test]
    fn nothing_is_written_down_before_it_is_seen_or_out_of_range() {
        let trial = Trial::plain();
        let mut session = Session::open(trial.case.clone(), Mode::Study);
        let note = Event::Note(Finding::FacialDefect, Some(1));
        assert_eq!(session.apply(note.clone()), Err(Refusal::NotToBeNoted));
        let mut session = examining(&trial);
        assert_eq!(session.apply(note), Ok(()));
        let none = Event::Note(Finding::SeptumClass, Some(0));
        assert_eq!(session.apply(none), Err(Refusal::NotToBeNoted), "one root has no septum");
        let far = Event::Note(Finding::FacialThickness, Some(61));
        assert_eq!(session.apply(far), Err(Refusal::NotToBeNoted));
    }
}
