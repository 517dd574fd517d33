//! Real drawn cases: of each kind so many, with what they call for. What a simulated learner meets is
//! one of these, never made up.

use engine::cases::{Archetype, Constraints, Spread, difficulty, generate_as, proof};
use engine::chart::Address;
use engine::debrief::judge;
use engine::plan::Plan;
use engine::rules::Skill;
use std::fmt::Write as _;

/// Cases of each archetype.
pub const OF_EACH: usize = 20;
/// How many skills there are.
pub const SKILLS: usize = Skill::ALL.len();

const HEAD: &str = "\
# Cases drawn in the whole mouth, 20 of each archetype (seeds 1 to 20), written by
# `cargo run --release -p tests --example simulated-learners`. For each skill: rules in play (rules that
# fault the plan that proves the case solvable once one of its answers is another) / rules that judge
# that plan and count. A skill is called for where a rule of it is in play.
";

/// A drawn case.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawn {
    pub kind: Archetype,
    pub address: Address,
    pub difficulty: f64,
    /// For each skill: rules in play, rules judged.
    pub rules: [(u32, u32); SKILLS],
}

impl Drawn {
    /// Which skills it calls for.
    pub fn calls(&self) -> [bool; SKILLS] {
        self.rules.map(|(in_play, _)| in_play > 0)
    }

    pub fn row(&self) -> String {
        let mut row = format!("{},{},{:.3}", self.kind.key(), self.address, self.difficulty);
        for (in_play, judged) in self.rules {
            let _ = write!(row, ",{in_play}/{judged}");
        }
        row
    }
}

/// The case of this kind and seed.
pub fn drawn(kind: Archetype, seed: u64) -> Drawn {
    let asked = Constraints { archetype: Some(kind), ..Constraints::default() };
    let case = generate_as(Spread::WholeMouth, seed, &asked).expect("a case");
    let sound = proof(&case).expect("a sound plan").draft;
    let hard = difficulty(&case, &sound).expect("a whole plan");
    let plan = Plan::from_draft(&sound, &case).expect("a whole plan");
    let verdicts = judge(&case, &plan);
    let count = |count: usize| u32::try_from(count).expect("few");
    let rules = Skill::ALL.map(|skill| {
        let in_play = hard.rules.iter().filter(|rule| rule.skill == skill).count();
        let judged = verdicts.iter().filter(|one| one.counts() && one.rule.skill == skill).count();
        (count(in_play), count(judged))
    });
    let address = case.address.expect("a drawn case has one");
    Drawn { kind, address, difficulty: hard.value(), rules }
}

/// As a file.
pub fn written(all: &[Drawn]) -> String {
    let mut text = format!("{HEAD}archetype,address,difficulty");
    for skill in Skill::ALL {
        let _ = write!(text, ",{}", skill.key());
    }
    text.push('\n');
    for one in all {
        text.push_str(&one.row());
        text.push('\n');
    }
    text
}

/// From a file.
pub fn read(text: &str) -> Vec<Drawn> {
    let rows = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    rows.map(|row| {
        let cells: Vec<&str> = row.split(',').collect();
        let pair = |cell: &str| {
            let (in_play, judged) = cell.split_once('/').expect("two counts");
            (in_play.parse().expect("a count"), judged.parse().expect("a count"))
        };
        let mut rules = [(0, 0); SKILLS];
        for (skill, cell) in rules.iter_mut().zip(&cells[3..]) {
            *skill = pair(cell);
        }
        Drawn {
            kind: Archetype::from_key(cells[0]).expect("an archetype"),
            address: cells[1].parse().expect("an address"),
            difficulty: cells[2].parse().expect("a number"),
            rules,
        }
    })
    .collect()
}
