//! The tables of a report: to be saved as comma-separated values, on the page as by the tool.

use super::{Answer, OfCase, Report};
use crate::csv::Csv;

/// Writes a table of a report.
pub type Write = fn(&Report) -> Csv;

/// Every table, by the name of its file.
pub const TABLES: [(&str, Write); 7] = [
    ("rules", rules),
    ("skills", skills),
    ("cases", cases),
    ("alternatives", alternatives),
    ("learners", learners),
    ("unsafe", grave),
    ("objections", objections),
];

/// A row for each rule that was reached.
#[must_use]
pub fn rules(report: &Report) -> Csv {
    let mut table = Csv::with(&[
        "rule",
        "skill",
        "attempts kept",
        "attempts missed",
        "learners kept",
        "learners missed",
    ]);
    for one in &report.rules {
        let [a, b] = [one.attempts, one.learners].map(|of| [of.right, of.wrong].map(shown));
        table.row(&[one.rule.id, one.rule.skill.key(), &a[0], &a[1], &b[0], &b[1]]);
    }
    table
}

/// A row for each skill that was called for.
#[must_use]
pub fn skills(report: &Report) -> Csv {
    let mut table = Csv::with(&["skill", "attempts kept", "attempts missed"]);
    for (skill, share) in &report.skills {
        table.row(&[skill.key(), &shown(share.right), &shown(share.wrong)]);
    }
    table
}

/// A row for each case, the hardest first.
#[must_use]
pub fn cases(report: &Report) -> Csv {
    let mut columns =
        vec!["case", "tooth", "sound", "workable", "compromised", "unsafe", "unfinished"];
    if !report.aside.is_empty() {
        columns.extend(["sound, adjusted", "workable, adjusted", "compromised, adjusted"]);
        columns.extend(["unsafe, adjusted", "set aside"]);
    }
    let mut table = Csv::with(&columns);
    for one in &report.cases {
        let mut cells = vec![one.case.name.clone(), one.case.tooth.to_string()];
        cells.extend(one.words.map(shown));
        cells.push(shown(one.unfinished));
        if !report.aside.is_empty() {
            cells.extend(one.adjusted.map(shown));
            cells.push(notes(report, &one.case.name));
        }
        table.row(&cells.iter().map(String::as_str).collect::<Vec<_>>());
    }
    table
}

/// What was set aside at a case, and why.
fn notes(report: &Report, case: &str) -> String {
    let of = report.aside.iter().filter(|one| one.case == case);
    of.map(|one| format!("{}: {}", one.rule.id, one.note)).collect::<Vec<_>>().join("; ")
}

/// A row for each alternative of each decision of each case in which anybody chose something.
#[must_use]
pub fn alternatives(report: &Report) -> Csv {
    let mut table = Csv::with(&["case", "decision", "alternative", "chosen", "of"]);
    for OfCase { case, chosen, .. } in &report.cases {
        for one in chosen {
            for (place, count) in (0_u8..).zip(&one.counts) {
                let says = super::alternative(one.decision, place);
                let key = one.decision.key();
                table.row(&[&case.name, key, says, &shown(*count), &shown(one.of)]);
            }
        }
    }
    table
}

/// A row for each learner, a column for each rule: 1 kept, 0 missed, empty not reached.
#[must_use]
pub fn learners(report: &Report) -> Csv {
    let mut columns = vec!["learner", "cases passed", "cases not passed", "unfinished"];
    columns.extend(["unsafe acts", "opened before", "after the time"]);
    if !report.aside.is_empty() {
        columns.extend(["cases passed, adjusted", "cases not passed, adjusted"]);
    }
    columns.extend(engine::rules::all().map(|rule| rule.id));
    let mut table = Csv::with(&columns);
    for one in &report.learners {
        let passed = [one.cases.right, one.cases.wrong, one.unfinished];
        let counts = passed.into_iter().chain([one.grave, one.opened_before, one.late]);
        let mut counts: Vec<String> = counts.map(shown).collect();
        if !report.aside.is_empty() {
            counts.extend([one.adjusted.right, one.adjusted.wrong].map(shown));
        }
        let mut cells = vec![one.code.as_str()];
        cells.extend(counts.iter().map(String::as_str));
        cells.extend(one.rules.iter().map(|answer| match answer {
            Answer::Right => "1",
            Answer::Wrong => "0",
            Answer::NotReached => "",
        }));
        table.row(&cells);
    }
    table
}

/// A row for each act that can hurt somebody.
#[must_use]
pub fn grave(report: &Report) -> Csv {
    let mut table = Csv::with(&["learner", "case", "rule"]);
    for one in &report.grave {
        table.row(&[&one.code, &one.case.name, one.rule.id]);
    }
    table
}

/// A row for each objection.
#[must_use]
pub fn objections(report: &Report) -> Csv {
    let mut table = Csv::with(&["learner", "case", "rule", "reason"]);
    for one in &report.objections {
        table.row(&[&one.code, &one.case.name, &one.rule, &one.reason]);
    }
    table
}

fn shown(count: u32) -> String {
    count.to_string()
}
