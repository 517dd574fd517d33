//! Attempts with planted outcomes, for tests.

use crate::past::{Observed, Past};
use crate::record::{Head, RECORD_FORMAT};
use engine::anatomy::Tooth;
use engine::debrief::PlanWord;
use engine::rules::{self, Local, Rule, Skill, Zone};
use engine::session::Mode;

/// An attempt begun then in which nothing was judged.
pub(crate) fn attempt(begun: u64) -> Past {
    let head = Head {
        format: RECORD_FORMAT,
        id: format!("a{begun}"),
        at: "#/case/1.1.7.0".to_owned(),
        address: None,
        set: None,
        local: Local::NONE,
        mode: Mode::Study,
        number: 1,
        help: vec![],
        sitting: None,
        begun: Some(begun),
        ended: None,
        rule_set: "1".to_owned(),
        verdicts: String::new(),
    };
    Past {
        head,
        tooth: Tooth::new(11).unwrap(),
        archetype: None,
        word: PlanWord::Sound,
        observed: vec![],
        sure: vec![],
        spent: vec![],
        objections: vec![],
        verdicts: 0,
    }
}

/// Some rule of a skill.
pub(crate) fn rule_of(skill: Skill) -> &'static Rule {
    rules::all().find(|rule| rule.skill == skill).unwrap()
}

/// A verdict that counts; a fault is charged.
pub(crate) fn observed(rule: &'static Rule, zone: Zone) -> Observed {
    Observed { rule, zone, counts: zone != Zone::Debated, charged: zone.is_fault() }
}
