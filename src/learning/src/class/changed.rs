//! Verdicts that a later rule set changed: what they were, and what they are.

use engine::debrief::Verdict;
use engine::rules;

/// An attempt that today's rules judge otherwise than those that it was sat under.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Changed {
    /// The rule set that it was sat under.
    pub rule_set: String,
    /// What was outside or unsafe then and is not so today, each as `rule:zone`; nothing where the file
    /// does not say what was.
    pub then: Option<Vec<String>>,
    /// What is so today and was not then; everything where the file does not say what was.
    pub today: Vec<String>,
}

impl Changed {
    /// Of what a record says that its faults were, and today's verdicts.
    #[must_use]
    pub fn of(rule_set: String, said: &str, verdicts: &[Verdict]) -> Self {
        let today = crate::past::faults_of(verdicts);
        let without = |some: &str, others: &str| -> Vec<String> {
            let is_new = |one: &&str| others.split(' ').all(|other| other != *one);
            some.split(' ')
                .filter(|one| !one.is_empty())
                .filter(is_new)
                .map(str::to_owned)
                .collect()
        };
        // Only what rules of this register say is told: a file is anybody's.
        let known = |one: &str| {
            let rule = one.split_once(':').map(|(rule, _)| rule);
            rule.is_some_and(|rule| rules::find(rule).is_some())
        };
        let then = (!said.is_empty()).then(|| {
            let mut gone = without(said, &today);
            gone.retain(|one| known(one));
            gone
        });
        Self { rule_set, then, today: without(&today, said) }
    }

    /// In words.
    #[must_use]
    pub fn words(&self) -> String {
        let list = |all: &[String]| match all.is_empty() {
            true => "nothing else".to_owned(),
            false => all.join(", ").replace(':', " "),
        };
        let today = list(&self.today);
        let then = self.then.as_ref();
        let then = then.map_or_else(|| "not said in the file".to_owned(), |then| list(then));
        format!("under rule set {} {then}; today {today}", self.rule_set)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trial::attempt;
    use engine::cases::teaching_at;
    use engine::debrief::judge;
    use engine::session::wander;

    #[test]
    fn what_went_and_what_came_is_told_and_what_stayed_is_not() {
        let address = "1.1.2.0".parse().unwrap();
        let session = wander(teaching_at(address).unwrap(), 2);
        let verdicts = judge(session.opened(), session.plan());
        let all = crate::past::faults_of(&verdicts);
        let faults: Vec<&str> = all.split(' ').collect();
        assert!(faults.len() > 2, "{all}");
        let gone = "graft-dry:outside-suboptimal";
        assert!(!all.contains(gone), "{all}");
        let said = format!("{gone} {} <b>:unsafe", faults[1..].join(" "));
        let changed = Changed::of("1".to_owned(), &said, &verdicts);
        assert_eq!(changed.then.as_deref(), Some([gone.to_owned()].as_slice()));
        assert_eq!(changed.today, [faults[0]]);
        let words = changed.words();
        assert!(words.contains("graft-dry outside-suboptimal; today "), "{words}");
        let unsaid = Changed::of("1".to_owned(), "", &verdicts);
        assert_eq!(unsaid.today.len(), faults.len());
        assert!(unsaid.words().contains("not said in the file"));
        assert!(attempt(0).head.faults.is_empty());
    }
}
