//! Attempts for tests, put together by hand.

use crate::past::{Observed, Past};
use crate::record::{Head, Help, RECORD_FORMAT};
use engine::anatomy::Tooth;
use engine::cases::{Archetype, Constraints, generate_with};
use engine::chart::Address;
use engine::debrief::{PlanWord, RULE_SET};
use engine::rules::{Local, Rule, Skill, Zone, all};
use engine::session::Mode;

pub const HOUR: u64 = 60 * 60 * 1000;
pub const DAY: u64 = 24 * HOUR;
/// Some morning.
pub const START: u64 = 20_000 * DAY + 9 * HOUR;

/// A rule of a skill that can say each of the faults' words or is taken to.
pub fn rule(skill: Skill) -> &'static Rule {
    all().find(|rule| rule.skill == skill).unwrap()
}

/// An attempt that is over, at a time.
pub fn attempt(at: u64) -> Past {
    Past {
        head: Head {
            format: RECORD_FORMAT,
            id: "a".to_owned(),
            at: String::new(),
            address: None,
            set: None,
            local: Local::NONE,
            mode: Mode::Study,
            number: 1,
            help: Vec::new(),
            sitting: None,
            opened_before: false,
            limit: None,
            begun: Some(at),
            ended: Some(at),
            rule_set: RULE_SET.to_owned(),
            verdicts: String::new(),
            faults: String::new(),
        },
        tooth: Tooth::new(11).unwrap(),
        archetype: Some(Archetype::DefectV),
        word: PlanWord::Sound,
        observed: Vec::new(),
        sure: Vec::new(),
        spent: Vec::new(),
        objections: Vec::new(),
        verdicts: 0,
    }
}

/// A verdict that counts unless it is debated; a fault is charged.
pub fn observed(rule: &'static Rule, zone: Zone) -> Observed {
    Observed { rule, zone, counts: zone != Zone::Debated, charged: zone.is_fault() }
}

impl Past {
    pub fn saw(mut self, rule: &'static Rule, zone: Zone) -> Self {
        self.observed.push(observed(rule, zone));
        self
    }

    pub fn right(self, skill: Skill) -> Self {
        self.saw(rule(skill), Zone::Ideal)
    }

    pub fn wrong(self, skill: Skill) -> Self {
        self.saw(rule(skill), Zone::Compromising)
    }

    /// Right in everything but these.
    pub fn all_but(mut self, wrong: &[Skill]) -> Self {
        for skill in Skill::ALL {
            self = if wrong.contains(&skill) { self.wrong(skill) } else { self.right(skill) };
        }
        self
    }

    pub fn about(mut self, kind: Archetype) -> Self {
        self.archetype = Some(kind);
        self
    }

    pub fn with(mut self, help: Help) -> Self {
        self.head.help.push(help);
        self
    }

    pub fn within(mut self, sitting: &str) -> Self {
        self.head.sitting = Some(sitting.to_owned());
        self
    }

    pub fn at_case(mut self, address: Address) -> Self {
        self.head.address = Some(address);
        self
    }
}

/// A learner who has mastered everything, in weekly pairs of cases that together call for all, and the
/// time of the last answer.
pub fn mastered() -> (Vec<Past>, u64) {
    let at = |week: u64| START + 7 * week * DAY;
    let pair = |week| {
        let stopped = attempt(at(week)).about(Archetype::Pregnancy);
        let stopped = stopped.right(Skill::Patient).right(Skill::Course);
        [stopped, attempt(at(week)).about(Archetype::DefectU).all_but(&[])]
    };
    ((0..6).flat_map(pair).collect(), at(5))
}

/// The address of a drawn case.
pub fn some_address() -> Address {
    generate_with(7, &Constraints::default()).unwrap().address.unwrap()
}
