//! The tables of a report as CSV files.

use crate::{Fault, Why};
use learning::class::{Answer, Report};
use learning::csv::Csv;
use std::fs;
use std::path::Path;

/// Writes them; what is there under the same names is written over.
pub fn write(folder: &Path, report: &Report) -> Result<(), Fault> {
    fs::create_dir_all(folder).why(|| format!("cannot make {}", folder.display()))?;
    for (name, table) in [
        ("rules", rules(report)),
        ("cases", cases(report)),
        ("learners", learners(report)),
        ("unsafe", grave(report)),
    ] {
        let path = folder.join(name).with_extension("csv");
        fs::write(&path, table.text()).why(|| format!("cannot write {}", path.display()))?;
    }
    Ok(())
}

fn rules(report: &Report) -> Csv {
    let mut table = Csv::with(&[
        "rule",
        "skill",
        "attempts kept",
        "attempts missed",
        "learners kept",
        "learners missed",
    ]);
    for one in &report.rules {
        let counts =
            [one.attempts.right, one.attempts.wrong, one.learners.right, one.learners.wrong]
                .map(|count| count.to_string());
        let [a, b, c, d] = &counts;
        table.row(&[one.rule.id, one.rule.skill.key(), a, b, c, d]);
    }
    table
}

fn cases(report: &Report) -> Csv {
    let mut table =
        Csv::with(&["case", "tooth", "sound", "workable", "compromised", "unsafe", "unfinished"]);
    for one in &report.cases {
        let [sound, workable, compromised, grave] = one.words.map(|count| count.to_string());
        let (tooth, unfinished) = (one.case.tooth.to_string(), one.unfinished.to_string());
        table.row(&[&one.case.name, &tooth, &sound, &workable, &compromised, &grave, &unfinished]);
    }
    table
}

/// A row for each learner, a column for each rule: 1 kept, 0 missed, empty not reached.
fn learners(report: &Report) -> Csv {
    let rules: Vec<&str> = engine::rules::all().map(|rule| rule.id).collect();
    let mut columns =
        vec!["learner", "cases passed", "cases not passed", "unfinished", "unsafe acts"];
    columns.extend(&rules);
    let mut table = Csv::with(&columns);
    for one in &report.learners {
        let counts = [one.cases.right, one.cases.wrong, one.unfinished, one.grave]
            .map(|count| count.to_string());
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

fn grave(report: &Report) -> Csv {
    let mut table = Csv::with(&["learner", "case", "rule"]);
    for one in &report.grave {
        table.row(&[&one.code, &one.case.name, one.rule.id]);
    }
    table
}
