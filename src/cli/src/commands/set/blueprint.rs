//! `wallwise set blueprint FILE`: rules against cases. A rule is in play in a case where one answer off its
//! sound plan breaks it.

use crate::shapes::Blueprint;
use crate::{Fault, Status, Streams};
use engine::debrief::CAUTION;
use engine::rules::Skill;
use engine::scenario::Set;

/// Prints it; a case without a sound plan is a finding.
pub fn run(set: &Set, json: bool, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let found = Blueprint::of(set);
    if json {
        streams.print_json(&found)?;
    } else {
        streams.print(&text(&found))?;
    }
    let whole = found.cases.iter().all(|case| case.difficulty.is_some());
    Ok(if whole { Status::Done } else { Status::Findings })
}

fn text(found: &Blueprint) -> String {
    let mut text = format!("{}\n{CAUTION}\n\nCases\n", found.title);
    for case in &found.cases {
        let hard = case.difficulty.map_or_else(
            || "no sound plan is known".to_owned(),
            |hard| format!("difficulty {hard:.2}"),
        );
        text.push_str(&format!(
            "  {}. {}, {hard}, {} rules in play\n",
            case.place, case.title, case.rules
        ));
    }
    text.push_str("\nRules in play, and in which cases\n");
    for skill in Skill::ALL {
        let of_skill: Vec<_> =
            found.rules.iter().filter(|rule| rule.skill == skill.key()).collect();
        if of_skill.is_empty() {
            continue;
        }
        text.push_str(&format!("  {}\n", skill.words()));
        for rule in of_skill {
            let cases: Vec<String> = rule.cases.iter().map(ToString::to_string).collect();
            text.push_str(&format!("    {}: {}\n", rule.rule, cases.join(", ")));
        }
    }
    text.push_str(&format!(
        "\nLeft out: {} of {} rules\n",
        found.left_out.len(),
        found.left_out.len() + found.rules.len()
    ));
    for skill in Skill::ALL {
        let of_skill: Vec<&str> = found
            .left_out
            .iter()
            .filter(|id| engine::rules::find(id).is_some_and(|rule| rule.skill == skill))
            .copied()
            .collect();
        if !of_skill.is_empty() {
            text.push_str(&format!("  {}: {}\n", skill.words(), of_skill.join(", ")));
        }
    }
    text
}
