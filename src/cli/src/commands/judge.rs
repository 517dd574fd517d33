//! `wallwise judge CASE PLAN`: every verdict on a plan, by the judge that the page uses.

mod healing;

use super::{protocol, set};
use crate::shapes::{Healing, Judgement, OneEvent, Room};
use crate::{Fault, Status, Streams, input};
use engine::cases;
use engine::chart::Case;
use engine::debrief::{CAUTION, Debrief, PlanWord, RULE_SET, debrief, explain};
use engine::plan::{Draft, Kind, Plan, Value};
use engine::rules::Local;
use engine::search::{self, Nearest};
use engine::session::happened;
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub struct Args {
    /// A case file, an address such as 1.1.2024.0, or a bare seed
    case: String,
    /// A plan file
    plan: PathBuf,
    /// Judge as this set has it: by its level and its protocol
    #[arg(long, value_name = "FILE")]
    set: Option<PathBuf>,
    /// Print JSON for programs
    #[arg(long)]
    json: bool,
    /// Also say how far each finding of the case could be otherwise before the verdicts change
    #[arg(long, conflicts_with = "json")]
    breaks: bool,
    /// Also show how far courses of healing lie apart over a year, by a teaching model: after this plan,
    /// after the nearest sound one, and after none
    #[arg(long)]
    healing: bool,
}

/// Judges; a plan that is not sound is a finding.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let local = match &args.set {
        Some(file) => set::read(file)?.local(),
        None => Local::NONE,
    };
    let case = input::case(&args.case)?.under(local);
    let draft = input::draft(&args.plan)?;
    let plan = input::plan(&draft, &case, &args.plan)?;
    let sound = cases::proof(&case).and_then(|proof| Plan::from_draft(&proof.draft, &case).ok());
    let debrief = debrief(&case, &plan, sound.as_ref());
    let nearest = (!args.json || args.healing).then(|| search::nearest(&case, &draft)).flatten();
    let healing = args.healing.then(|| healing::shown(&case, &plan, nearest.as_ref()));
    if args.json {
        let events = events(&case, &plan, &draft);
        let address = case.address.map(|address| address.to_string());
        let room = search::room(&case, &draft);
        let room = room.as_ref().map(|room| Room::of(room, case.site.tooth));
        let mut judgement = Judgement::of(address, &case, &debrief, events, room);
        judgement.healing = healing.as_ref().map(Healing::of);
        streams.print_json(&judgement)?;
    } else {
        let mut said = text(&case, &events(&case, &plan, &draft), &debrief);
        said.push_str(&told(&case, nearest.as_ref()));
        if let Some(room) = search::room(&case, &draft) {
            said.push_str(&format!("\nRoom\n  {}\n", room.words(case.site.tooth)));
        }
        if args.breaks {
            said.push_str(&breaks(&case, &plan));
        }
        if let Some(shown) = &healing {
            said.push_str(&healing::table(shown));
        }
        streams.print(&said)?;
    }
    Ok(if debrief.word == PlanWord::Sound { Status::Done } else { Status::Findings })
}

/// What came by chance, and what the plan answers.
fn events(case: &Case, plan: &Plan, draft: &Draft) -> Vec<OneEvent> {
    let happened = happened(case, plan).into_iter();
    happened
        .map(|(decision, report)| {
            let answer = match (decision.entry().kind, draft.value(decision)) {
                (Kind::One(options), Some(Value::One(place))) => options.get(usize::from(*place)),
                _ => None,
            };
            OneEvent {
                step: report.step.key(),
                title: report.title,
                lines: report.lines,
                decision: decision.key(),
                answer: answer.map_or("", |answer| answer.key),
                label: answer.map_or("", |answer| answer.label),
            }
        })
        .collect()
}

/// The sound plan that is nearest to this one, change by change.
fn told(case: &Case, nearest: Option<&Nearest>) -> String {
    let Some(nearest) = nearest else {
        return "\nNo sound plan was found near this one.\n".to_owned();
    };
    let mut text = format!("\nThe nearest sound plan\n  {}\n", nearest.words());
    for change in &nearest.changes {
        let first = if nearest.first == Some(change.decision) { " (this first)" } else { "" };
        text.push_str(&format!("  - {}{first}\n", change.words(case.site.tooth)));
    }
    for rule in &nearest.forced_by {
        text.push_str(&format!("  Not kept within your course: {}.\n", rule.id));
    }
    text
}

/// Where the plan breaks, finding by finding.
fn breaks(case: &Case, plan: &Plan) -> String {
    let tooth = case.site.tooth;
    let mut text = "\nWhere the plan breaks\n".to_owned();
    for holds in search::breaks(case, plan) {
        text.push_str(&format!("  {}\n", holds.stays(tooth)));
        for end in &holds.ends {
            let statement = end.rule().map_or("", |rule| rule.statement);
            let past = holds.past(end, statement, tooth);
            if !past.is_empty() {
                text.push_str(&format!("    {past}\n"));
            }
        }
    }
    text
}

fn text(case: &Case, events: &[OneEvent], debrief: &Debrief) -> String {
    let tooth = case.site.tooth;
    let mark =
        debrief.mark.percent().map_or("not marked".to_owned(), |mark| format!("{mark:.0} of 100"));
    let mut text = format!(
        "{}\n\n{CAUTION}\n\nThis plan is {}. {}\nMark: {mark} (full weight {:.0}, set aside {:.0}, lost {:.1}). Rule set {RULE_SET}.\n",
        case.title,
        debrief.word.word(),
        debrief.word.meaning(),
        debrief.mark.full,
        debrief.mark.set_aside,
        debrief.mark.lost_weight(),
    );
    text.push_str(&protocol::text(&case.local));
    for event in events {
        text.push_str(&format!("\n{}: {}\n", event.title, event.lines.join(" ")));
        text.push_str(&format!("  Your answer: {}.\n", event.label));
    }
    if !debrief.groups.is_empty() {
        text.push_str("\nWhat to change first\n");
    }
    for group in &debrief.groups {
        if let Some(cause) = group.cause(tooth) {
            text.push_str(&format!("  {cause}\n"));
        }
        for fault in &group.faults {
            let verdict = &debrief.verdicts[*fault];
            let words = explain(verdict, tooth);
            text.push_str(&format!("  [{}] {}\n", words.word, verdict.rule.id));
            for line in [
                words.measured.as_str(),
                &words.asked,
                &words.local,
                &words.distance,
                &words.why,
                &words.mend,
                &words.known,
            ] {
                if !line.is_empty() {
                    text.push_str(&format!("      {line}\n"));
                }
            }
        }
    }
    text.push_str("\nEvery verdict, in the order of care\n");
    for verdict in &debrief.verdicts {
        let words = explain(verdict, tooth);
        text.push_str(&format!(
            "  {:<18} {:<30} {} — {}\n",
            verdict.rule.step.label(),
            words.word,
            verdict.rule.id,
            words.measured
        ));
        if !words.local.is_empty() {
            text.push_str(&format!("  {:<18} {}\n", "", words.local));
        }
    }
    text
}
