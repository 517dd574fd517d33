//! How sure a learner is that no scored rule of a step will be outside or unsafe, said before the step
//! is carried out, and so before anything is told of it.

use super::Session;
use crate::plan::{Refusal, Step};

/// The five answers, percent: from no better than chance to certain. The steps between are ours.
pub const SURENESS: [u8; 5] = [50, 60, 75, 90, 100];

impl Session {
    /// Keeps the answer for the step that is due, in place of an earlier one; none takes it back.
    pub(super) fn be_sure(&mut self, step: Step, percent: Option<u8>) -> Result<(), Refusal> {
        let due = self.due();
        if due != Some(step) {
            return Err(Refusal::OutOfOrder { asked: step, due });
        }
        self.sure.retain(|(other, _)| *other != step);
        self.sure.extend(percent.map(|percent| (step, percent)));
        Ok(())
    }

    /// How sure the learner was, step by step, percent.
    #[must_use]
    pub fn sure(&self) -> &[(Step, u8)] {
        &self.sure
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Event, Mode, Written};
    use super::*;
    use crate::debrief::{hash_of, judge};
    use crate::rules::trial::Trial;

    fn open() -> Session {
        Session::open(Trial::plain().case, Mode::Study)
    }

    #[test]
    fn an_answer_stands_for_the_step_that_is_due_and_may_be_changed_until_then() {
        let mut session = open();
        session.apply(Event::Sure(Step::Chart, Some(60))).unwrap();
        session.apply(Event::Sure(Step::Chart, Some(90))).unwrap();
        assert_eq!(session.sure(), [(Step::Chart, 90)]);
        let early = session.apply(Event::Sure(Step::Flap, Some(90)));
        assert!(matches!(early, Err(Refusal::OutOfOrder { asked: Step::Flap, .. })));
        session.apply(Event::Sure(Step::Chart, None)).unwrap();
        assert!(session.sure().is_empty());
    }

    #[test]
    fn it_changes_no_verdict_and_reads_back() {
        let mut session = open();
        let hash = |session: &Session| hash_of(&judge(session.opened(), session.plan()));
        let before = hash(&session);
        session.apply(Event::Sure(Step::Chart, Some(75))).unwrap();
        assert_eq!(hash(&session), before);
        assert_eq!(session.acts(), 0);
        let written: Vec<Written> = session.events().iter().map(Event::written).collect();
        let text = serde_json::to_string(&written).unwrap();
        assert_eq!(text, r#"[{"sure":"chart","percent":75}]"#);
        let back: Vec<Written> = serde_json::from_str(&text).unwrap();
        assert_eq!(Event::try_from(&back[0]).unwrap(), Event::Sure(Step::Chart, Some(75)));
    }

    #[test]
    fn only_the_five_answers_are_read() {
        for (text, says) in [
            (r#"{"sure":"chart","percent":55}"#, "50, 60, 75, 90, 100"),
            (r#"{"sure":"lunch","percent":75}"#, "lunch"),
        ] {
            let written: Written = serde_json::from_str(text).unwrap();
            assert!(Event::try_from(&written).unwrap_err().to_string().contains(says), "{text}");
        }
    }
}
