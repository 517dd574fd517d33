//! Verdicts that a class sets aside: what its results are without them, beside what was computed.

use super::discussion::Brought;
use super::gathered::Class;
use super::report::{Report, passed, place_of};
use core::ptr;
use engine::debrief::PlanWord;
use engine::rules::{Rule, Zone, all};

/// A verdict that counts for nobody in a class.
#[derive(Debug, Clone, PartialEq)]
pub struct SetAside {
    /// The case, by its name.
    pub case: String,
    /// The rule whose verdict it is.
    pub rule: &'static Rule,
    /// Why.
    pub note: String,
}

impl Report {
    /// Works out what results are once these verdicts count for nobody. What was computed stays as it is.
    /// A verdict in the unsafe zone counts whatever is set aside: what can hurt somebody does so in
    /// every class.
    ///
    /// To be called before codes are hidden, with the class of which this is the report.
    pub fn adjust(&mut self, class: &Class, aside: &[SetAside]) {
        self.aside = aside.to_vec();
        for one in &mut self.learners {
            one.adjusted = one.cases;
        }
        for one in &mut self.cases {
            one.adjusted = one.words;
        }
        for case in &mut self.cases {
            let of: Vec<&SetAside> =
                aside.iter().filter(|one| one.case == case.case.name).collect();
            if of.is_empty() {
                continue;
            }
            for (row, brought) in class.at(&case.case.name) {
                let word = word_without(brought, &of);
                if word == row.word {
                    continue;
                }
                case.adjusted[place_of(row.word)] -= 1;
                case.adjusted[place_of(word)] += 1;
                let code = class.learners.get(row.learner as usize);
                let learner = self.learners.iter_mut().find(|one| Some(&one.code) == code);
                if let (Some(one), true) = (learner, passed(word) && !passed(row.word)) {
                    one.adjusted.right += 1;
                    one.adjusted.wrong -= 1;
                }
            }
        }
    }
}

/// The word for a plan over the verdicts that are left.
fn word_without(brought: &Brought, aside: &[&SetAside]) -> PlanWord {
    let counts = |(place, zone): &&(u8, Zone)| {
        let rule = all().nth(usize::from(*place));
        *zone == Zone::Unsafe
            || !aside.iter().any(|one| rule.is_some_and(|rule| ptr::eq(rule, one.rule)))
    };
    PlanWord::worst(brought.faults.iter().filter(counts).map(|(_, zone)| *zone).max())
}

#[cfg(test)]
mod tests {
    use super::super::tables;
    use super::super::trial::handed;
    use super::*;
    use Zone::{Compromising, Suboptimal, Unsafe};

    fn planted() -> Class {
        let mut class = Class::default();
        let plans: [&[(u8, Zone)]; 4] = [
            &[],
            &[(1, Compromising)],
            &[(1, Compromising), (2, Compromising), (3, Suboptimal)],
            &[(1, Unsafe), (3, Suboptimal)],
        ];
        for (place, faults) in (0..).zip(plans) {
            class.take(&format!("k-{place}"), handed(&format!("a-{place}"), faults), (place, 1));
        }
        class
    }

    fn without(places: &[usize]) -> Report {
        let class = planted();
        let mut report = Report::of(&class);
        let aside = |place: &usize| SetAside {
            case: "1.1.7.0".to_owned(),
            rule: all().nth(*place).unwrap(),
            note: format!("why {place}"),
        };
        report.adjust(&class, &places.iter().map(aside).collect::<Vec<_>>());
        report
    }

    /// Words of the case, and whether each learner passed it.
    fn adjusted(places: &[usize]) -> ([u32; 4], Vec<u32>) {
        let report = without(places);
        assert_eq!(report.cases[0].words, [1, 0, 2, 1], "what was computed stays");
        assert!(report.learners.iter().all(|one| one.cases.all() == one.adjusted.all()));
        let passed = report.learners.iter().map(|one| one.adjusted.right).collect();
        (report.cases[0].adjusted, passed)
    }

    #[test]
    fn with_none_aside_adjusted_is_computed() {
        assert_eq!(adjusted(&[]), ([1, 0, 2, 1], vec![1, 0, 0, 0]));
        assert!(!tables::cases(&without(&[])).text().contains("adjusted"));
    }

    #[test]
    fn one_that_is_set_aside_counts_for_nobody_but_where_it_is_unsafe() {
        assert_eq!(adjusted(&[1]), ([2, 0, 1, 1], vec![1, 1, 0, 0]));
    }

    #[test]
    fn with_all_aside_only_what_is_unsafe_is_left() {
        assert_eq!(adjusted(&[1, 2]), ([2, 1, 0, 1], vec![1, 1, 1, 0]));
        assert_eq!(adjusted(&[1, 2, 3]), ([3, 0, 0, 1], vec![1, 1, 1, 0]));
    }

    #[test]
    fn another_case_is_not_touched() {
        let class = planted();
        let mut report = Report::of(&class);
        let aside = SetAside {
            case: "1.1.7.1".to_owned(),
            rule: all().nth(1).unwrap(),
            note: "why".into(),
        };
        report.adjust(&class, &[aside]);
        assert_eq!(report.cases[0].adjusted, report.cases[0].words);
    }

    #[test]
    fn tables_have_both_and_the_note() {
        let report = without(&[1]);
        let cases = tables::cases(&report).text().to_owned();
        let rule = all().nth(1).unwrap().id;
        assert!(cases.ends_with(&format!("1,0,2,1,0,2,0,1,1,{rule}: why 1\r\n")), "{cases}");
        let learners = tables::learners(&report).text().to_owned();
        assert!(learners.contains("\"cases passed, adjusted\""), "{learners}");
        assert!(learners.contains("k-1,0,1,0,0,0,0,1,0,"), "{learners}");
    }
}
