//! `wallwise explain RULE`: one rule in full.

use crate::shapes::{OneRule, agreement};
use crate::{Fault, Status, Streams};
use engine::debrief::{CAUTION, allowed, asked};
use engine::rules::{self, Rule, Scale};
use engine::scenario::nearest;

#[derive(Debug, clap::Args)]
pub struct Args {
    /// Id of the rule, as `wallwise rules` lists it
    rule: String,
    /// Print JSON for programs
    #[arg(long)]
    json: bool,
}

/// How many rules are named to who wrote a part of a name.
const MOST_NAMED: usize = 8;

/// Prints it.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let Some(rule) = rules::find(&args.rule) else {
        let fault = Fault::new(format!("found the rule \"{}\", which does not exist", args.rule));
        let part = args.rule.trim().to_lowercase();
        let with_part: Vec<&str> = rules::all()
            .map(|rule| rule.id)
            .filter(|id| part.len() >= 3 && id.contains(&part))
            .take(MOST_NAMED)
            .collect();
        return Err(match nearest(&args.rule, rules::all().map(|rule| rule.id)) {
            Some(near) => fault.hint(format!("did you mean \"{near}\"?")),
            None if !with_part.is_empty() => {
                fault.hint(format!("rules with that in their name: {}", with_part.join(", ")))
            }
            None => fault.hint("`wallwise rules` lists them all"),
        });
    };
    if args.json {
        streams.print_json(&OneRule::of(rule))?;
    } else {
        streams.print(&text(rule))?;
    }
    Ok(Status::Done)
}

fn text(rule: &Rule) -> String {
    let mut text = format!(
        "{}\n{}\n\n{}\n\nLedger: {}. Family: {}. Step: {}.\nWorst verdict: {}. Sources: {}.\n",
        rule.id,
        asked(rule.bands(), rule.statement),
        CAUTION,
        rule.ledger,
        rule.family.words(),
        rule.step.label(),
        rule.cost().word(),
        agreement(rule.agreement),
    );
    if let Scale::Situations(situations) = &rule.scale {
        for one in *situations {
            text.push_str(&format!("  {}: {}\n", one.zone.word(), one.words));
        }
    }
    for line in allowed(rule) {
        text.push_str(&format!("{line}\n"));
    }
    text.push_str("\nSources\n");
    for one in rule.evidence {
        text.push_str(&format!(
            "  {} — {} ({})\n",
            one.says,
            one.attribution(),
            one.source.words()
        ));
    }
    if let Some(prose) = rules::prose(rule.id) {
        text.push_str(&format!("\n{}\n", prose.trim_end()));
    }
    text
}
