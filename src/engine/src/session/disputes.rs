//! What a learner holds against a verdict. It travels with the attempt and changes no verdict.

use super::{Event, Session};

/// How long a reason may be, characters.
pub const LONGEST_REASON: usize = 1000;
/// How long a rule's id may be.
const LONGEST_ID: usize = 80;

/// Whether this can be the id of a rule, of this rule set or another: small letters, digits and hyphens.
pub(super) fn is_id(text: &str) -> bool {
    let allowed = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-';
    !text.is_empty() && text.len() <= LONGEST_ID && text.bytes().all(allowed)
}

/// A reason as it is kept: without blanks at its ends, nothing where nothing was written.
fn kept(reason: &str) -> Option<String> {
    let reason: String = reason.trim().chars().take(LONGEST_REASON).collect();
    (!reason.is_empty()).then_some(reason)
}

impl Session {
    /// Keeps the reason, in place of an earlier one; an empty one takes it back.
    pub(super) fn dispute(&mut self, rule: &str, reason: &str) {
        self.disputes.retain(|(other, _)| other != rule);
        if let Some(reason) = kept(reason) {
            self.disputes.push((rule.to_owned(), reason));
        }
    }

    /// How often anything was done that a verdict could hang on.
    #[must_use]
    pub fn acts(&self) -> usize {
        self.events
            .iter()
            .filter(|event| !matches!(event, Event::Dispute(..) | Event::Sure(..)))
            .count()
    }

    /// Verdicts that the learner holds something against, by rule: (id, reason), in the order written.
    #[must_use]
    pub fn disputes(&self) -> &[(String, String)] {
        &self.disputes
    }

    /// What the learner holds against the verdict of this rule.
    #[must_use]
    pub fn disputed(&self, rule: &str) -> Option<&str> {
        let found = self.disputes.iter().find(|(other, _)| other == rule);
        found.map(|(_, reason)| reason.as_str())
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Mode, Written};
    use super::*;
    use crate::debrief::{hash_of, judge};
    use crate::rules::trial::Trial;

    fn dispute(rule: &str, reason: &str) -> Event {
        Event::Dispute(rule.to_owned(), reason.to_owned())
    }

    #[test]
    fn a_reason_travels_with_the_attempt_and_changes_no_verdict() {
        let trial = Trial::plain();
        let mut session = Session::open(trial.case.clone(), Mode::Study);
        let hash = |session: &Session| hash_of(&judge(session.opened(), session.plan()));
        let before = hash(&session);
        session.apply(dispute("too-near-a-root", "  The film was misread. ")).unwrap();
        session.apply(dispute("gap-too-narrow", "I would graft less.")).unwrap();
        session.apply(dispute("too-near-a-root", "Second thought.")).unwrap();
        assert_eq!(session.disputed("too-near-a-root"), Some("Second thought."));
        assert_eq!(hash(&session), before);
        let written: Vec<Written> = session.events().iter().map(Event::written).collect();
        let text = serde_json::to_string(&written).unwrap();
        let back: Vec<Written> = serde_json::from_str(&text).unwrap();
        let events: Vec<Event> = back.iter().map(|one| Event::try_from(one).unwrap()).collect();
        let again = Session::replay(trial.case.clone(), Mode::Study, &events).unwrap();
        assert_eq!(again.disputes(), session.disputes());
        assert_eq!(
            judge(&trial.case, again.plan()).len(),
            judge(&trial.case, session.plan()).len()
        );
    }

    #[test]
    fn an_empty_reason_takes_it_back_and_a_long_one_is_cut() {
        let mut session = Session::open(Trial::plain().case, Mode::Study);
        session.apply(dispute("gap-too-narrow", &"x".repeat(5000))).unwrap();
        assert_eq!(session.disputed("gap-too-narrow").unwrap().len(), LONGEST_REASON);
        session.apply(dispute("gap-too-narrow", " \n ")).unwrap();
        assert!(session.disputes().is_empty());
    }

    #[test]
    fn only_what_can_be_a_rule_s_id_is_read() {
        assert!(is_id("too-near-a-root") && is_id("a-rule-of-2030"));
        let long = "a".repeat(81);
        for id in ["", "Too Near", "<b>", &long] {
            assert!(!is_id(id), "{id}");
        }
    }
}
