//! `wallwise rules`: every rule with its limits.

use crate::shapes::{RuleBook, agreement};
use crate::{Fault, Status, Streams};
use engine::debrief::{CAUTION, EVIDENCE_REVIEWED, RULE_SET, allowed, asked};
use engine::rules::FAMILIES;
use engine::rules::ledger;

#[derive(Debug, clap::Args)]
pub struct Args {
    /// Print JSON for programs
    #[arg(long)]
    json: bool,
}

/// Prints them.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    if args.json {
        streams.print_json(&RuleBook::all())?;
        return Ok(Status::Done);
    }
    let mut text =
        format!("Rule set {RULE_SET}, evidence last reviewed {EVIDENCE_REVIEWED}.\n{CAUTION}\n");
    for (family, rules) in FAMILIES.iter().filter(|(_, rules)| !rules.is_empty()) {
        text.push_str(&format!("\n{}\n", family.words()));
        for rule in *rules {
            text.push_str(&format!(
                "  {}\n    {}\n    worst: {}; sources: {}\n",
                rule.id,
                asked(rule.bands(), rule.statement),
                rule.cost().word(),
                agreement(rule.agreement),
            ));
            for line in allowed(rule) {
                text.push_str(&format!("    {line}\n"));
            }
        }
    }
    text.push_str(&facts());
    streams.print(&text)?;
    Ok(Status::Done)
}

/// What the ledger of evidence says that no decision can break, and what was left out of the rules.
fn facts() -> String {
    let list = |head: &str, entries: &mut dyn Iterator<Item = (&str, &str)>| {
        let entries: String = entries.map(|(id, said)| format!("  {id}\n    {said}\n")).collect();
        format!("\n{head}\n{entries}")
    };
    list("Facts that no decision can break", &mut ledger::facts())
        + &list("Left out of the rules", &mut ledger::left_out())
}
