//! `wallwise case ADDRESS --worked`: the sound plan step by step, with what is found and why each
//! choice is made. To be read out, or printed for a class.

use engine::chart::Case;
use engine::debrief::{CAUTION, explain};
use engine::search::answer_words;
use engine::session::{Lesson, Mode, Session, Shown};

/// The text; `None` where no sound plan is known.
pub fn worked(case: &Case) -> Option<String> {
    let lesson = Lesson::of(case, Shown::Whole)?;
    let mut session = Session::open(case.clone(), Mode::Study);
    let mut text = format!("{}\n{CAUTION}\n", case.title);
    let mut reported = 0;
    while let Some(due) = session.due() {
        let weighing = session.weighing().is_some();
        let part = if weighing { " — what was found is weighed" } else { "" };
        text.push_str(&format!("\n{}{part}\n", due.label()));
        for told in lesson.told(&session) {
            text.push_str(&one(&told, case));
        }
        for event in lesson.events(&session) {
            // Its own answers fit: a test plays every kind of case to its end.
            session.apply(event).ok()?;
        }
        let reports = session.reports();
        for report in reports.iter().skip(reported) {
            text.push_str(&format!("  Found: {}\n", report.title));
            let lines = report.lines.iter().map(|line| format!("    - {line}\n"));
            text.extend(lines);
        }
        reported = reports.len();
    }
    Some(text)
}

fn one(told: &engine::session::Told<'_>, case: &Case) -> String {
    let tooth = case.site.tooth;
    let label = tooth.named(told.decision.entry().label);
    let mut text =
        format!("  {label}: {}\n", answer_words(told.decision, told.value, tooth).trim_end());
    for verdict in &told.because {
        let said = explain(verdict, tooth);
        let statement = tooth.named(verdict.rule.statement);
        let found = format!("{} {}", said.measured, said.distance);
        text.push_str(&format!("    {statement} {}\n", found.trim_end()));
    }
    text
}
