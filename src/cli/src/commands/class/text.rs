//! The report for a person.

use engine::debrief::{CAUTION, RULE_SET};
use learning::class::{Grave, OfCase, OfRule, Report, told};

/// So many lines of a list are printed; the rest is counted.
const MOST: usize = 20;

/// All of it.
pub fn of(report: &Report, aside: &[String]) -> String {
    let mut text = head(report);
    section(&mut text, "What the class misses", &rules(report));
    section(&mut text, "Skills, the most lacked first", &skills(report));
    section(&mut text, "Acts that can hurt somebody: no mark makes up for one", &grave(report));
    section(&mut text, "Learners who need a word", &words(report));
    section(&mut text, "Cases, the hardest first", &lines(&report.cases, |one| case(one, report)));
    section(&mut text, "What the outcomes together can carry", &told::together(report));
    section(
        &mut text,
        "Held against verdicts",
        &lines(&report.objections, |one| {
            format!("{}, {}, {}: {}", one.code, one.case.name, one.rule, one.reason)
        }),
    );
    section(&mut text, "Set aside", aside);
    text
}

fn head(report: &Report) -> String {
    let mut text = format!(
        "{}\n{CAUTION}\nEverything follows from choices, judged by rule set {RULE_SET}; \
         that these are the learner's own choices no file can prove.\n",
        told::size(report)
    );
    for line in told::besides(report) {
        text.push_str(&format!("{line}\n"));
    }
    text
}

fn section(text: &mut String, title: &str, lines: &[String]) {
    if !lines.is_empty() {
        text.push_str(&format!("\n{title}\n"));
        for line in lines {
            text.push_str(&format!("  {line}\n"));
        }
    }
}

fn lines<T>(all: &[T], line: impl Fn(&T) -> String) -> Vec<String> {
    let mut lines: Vec<String> = all.iter().take(MOST).map(line).collect();
    if all.len() > MOST {
        lines.push(format!("and {} more (--json or --csv has all)", all.len() - MOST));
    }
    lines
}

fn rules(report: &Report) -> Vec<String> {
    let missed: Vec<&OfRule> = report.rules.iter().filter(|one| one.learners.wrong > 0).collect();
    lines(&missed, |one| {
        let notion = one
            .notion
            .map_or_else(String::new, |notion| format!("\n      {}", told::notion(&notion)));
        format!(
            "{}: {}\n      {}{notion}",
            told::learners(one.learners),
            one.rule.id,
            one.rule.statement
        )
    })
}

fn skills(report: &Report) -> Vec<String> {
    let lacked: Vec<_> = report.skills.iter().filter(|(_, share)| share.wrong > 0).collect();
    lines(&lacked, |(skill, share)| format!("{}: {}", skill.words(), told::attempts(*share)))
}

fn grave(report: &Report) -> Vec<String> {
    if report.grave.is_empty() {
        return Vec::new();
    }
    let act = |one: &Grave| format!("{}, {}: {}", one.code, one.case.name, one.rule.statement);
    let mut told = vec![format!("{}.", told::pass_line(report))];
    told.extend(lines(&report.grave, act));
    told
}

fn words(report: &Report) -> Vec<String> {
    lines(&report.needing_a_word(), |(one, why)| format!("{}: {}", one.code, why.join("; ")))
}

fn case(one: &OfCase, report: &Report) -> String {
    let odd: String =
        one.odd.iter().map(|odd| format!("\n      Look at it: {}.", odd.words())).collect();
    format!(
        "{}, tooth {}: {}{}{odd}",
        one.case.name,
        one.case.tooth,
        told::words(one),
        told::item(one, &report.together)
    )
}
