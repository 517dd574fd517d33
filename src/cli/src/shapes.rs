//! What `--json` prints: shapes of the tool's own, so that the engine may change its types freely.
//! `tests/schemas` documents them; a test keeps it current.

mod blueprint;
mod class;
mod difficulty;
mod healing;
mod population;
mod protocol;
mod replayed;
mod room;
mod written;

pub use blueprint::{Blueprint, BlueprintCase, BlueprintRule};
pub use class::ClassReport;
pub use difficulty::Difficulty;
pub use healing::{Healed, Healing, Month};
pub use population::{OneFigure, Population};
use protocol::limits;
pub use protocol::{CheckedCase, CheckedSet, Limit, Protocol};
pub use replayed::{Replayed, ReplayedAttempt};
pub use room::{Play, Room, Roomiest};
pub use written::OneCase;

use engine::anatomy::Tooth;
use engine::chart::Case;
use engine::debrief::{
    self, CAUTION, Debrief, EVIDENCE_REVIEWED, Lost, RULE_SET, Verdict, explain,
};
use engine::rules::ledger;
use engine::rules::{Agreement, Bands, Reading, Rule, Scale, Zone};
use schemars::JsonSchema;
use serde::Serialize;
use std::borrow::Cow;

/// What `wallwise judge --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Judgement {
    /// What stands beside every verdict.
    pub caution: &'static str,
    /// Address of the case; null for one that was written out.
    pub case: Option<String>,
    /// What the set named with `--set` decides otherwise than the rules; null without one.
    pub protocol: Option<Protocol>,
    /// Number of the rule set.
    pub rule_set: &'static str,
    /// `sound`, `workable`, `compromised` or `unsafe`.
    #[schemars(extend("enum" = ["sound", "workable", "compromised", "unsafe"]))]
    pub plan: &'static str,
    /// The mark with its parts.
    pub mark: Mark,
    /// Faults by cause, the heaviest first.
    pub groups: Vec<Group>,
    /// Every verdict in the order of care.
    pub verdicts: Vec<OneVerdict>,
    /// What came by chance, in order, and what was done about it; chance itself is never marked.
    pub events: Vec<OneEvent>,
    /// The room that the case leaves for an implant, all else in the plan as it is; null where none is
    /// placed today.
    pub room: Option<Room>,
    /// How far courses of healing lie apart; null unless it was asked for.
    pub healing: Option<Healing>,
}

/// What came by chance.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneEvent {
    /// The step that brought it.
    pub step: &'static str,
    /// What it concerns.
    pub title: String,
    /// What happened, one sentence each.
    pub lines: Vec<String>,
    /// The decision that answers it.
    pub decision: &'static str,
    /// Key of what was chosen.
    pub answer: &'static str,
    /// The same in words.
    pub label: &'static str,
}

/// The mark with its parts.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Mark {
    /// 0 to 100; null when nothing was left to mark.
    pub percent: Option<f64>,
    /// What the case's rules weigh.
    pub full_weight: f64,
    /// Of it, what is not marked in this plan.
    pub set_aside: f64,
    /// What was lost, and why.
    pub lost: Vec<LostWeight>,
}

/// Weight that was lost.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct LostWeight {
    /// `acceptable`, `not-reached` or `faults`.
    #[schemars(extend("enum" = ["acceptable", "not-reached", "faults"]))]
    pub why: &'static str,
    /// The rule, or the rules of the group.
    pub rules: Vec<&'static str>,
    /// How much.
    pub weight: f64,
}

/// Faults with one cause.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Group {
    /// The cause as a sentence; null for a fault of its own.
    pub cause: Option<String>,
    /// The rules that see it, the worst first.
    pub rules: Vec<&'static str>,
    /// What it costs, once.
    pub cost: u32,
}

/// One verdict.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneVerdict {
    /// Id of the rule.
    pub rule: &'static str,
    /// Id of its ledger entry.
    pub ledger: &'static str,
    /// Step of care.
    pub step: &'static str,
    /// The number read; null for a rule that tells situations apart.
    pub measured: Option<f64>,
    /// The situation found; null for a rule that measures a number.
    pub situation: Option<&'static str>,
    /// Unit of the number; empty for a bare ratio.
    pub unit: &'static str,
    /// Zones of the number from the lowest up; empty for situations.
    pub band: Vec<Stretch>,
    /// `ideal`, `acceptable`, `debated`, `outside-suboptimal`, `outside-likely-to-compromise`, `unsafe`.
    #[schemars(extend("enum" = zones()))]
    pub verdict: &'static str,
    /// What a fault costs; 0 without one.
    pub cost: u32,
    /// What could be known of it; null when it rests on choices alone.
    pub information: Option<String>,
    /// The explanation.
    pub words: Words,
}

/// The explanation of a verdict.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Words {
    /// What was measured or found.
    pub measured: String,
    /// What was asked.
    pub asked: String,
    /// By how much it misses or clears.
    pub distance: String,
    /// Why it matters.
    pub why: Cow<'static, str>,
    /// The smallest change that would mend it.
    pub mend: Cow<'static, str>,
    /// Who says so.
    pub sources: Vec<String>,
    /// Where sources differ.
    pub differ: String,
    /// What the set decides otherwise about it; empty where it decides nothing.
    pub protocol: String,
}

/// One zone of a scale.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Stretch {
    /// Lower end; null when open.
    pub from: Option<f64>,
    /// Upper end; null when open.
    pub to: Option<f64>,
    /// The zone.
    #[schemars(extend("enum" = zones()))]
    pub zone: &'static str,
}

/// What `wallwise rules --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct RuleBook {
    /// What stands beside every verdict.
    pub caution: &'static str,
    /// Number of the rule set.
    pub rule_set: &'static str,
    /// Date of the last evidence review.
    pub evidence_reviewed: &'static str,
    /// Every rule, family by family.
    pub rules: Vec<OneRule>,
    /// Entries of the ledger of evidence that no decision can break.
    pub facts: Vec<OneEntry>,
    /// Entries of the ledger that were left out, each with the reason.
    pub left_out: Vec<OneEntry>,
}

/// An entry of the ledger of evidence that is no rule.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneEntry {
    /// Its id.
    pub ledger: &'static str,
    /// What it says, with source and mark; or why it was left out.
    pub says: &'static str,
}

/// One rule.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneRule {
    /// Id.
    pub id: &'static str,
    /// Id of its ledger entry.
    pub ledger: &'static str,
    /// Family.
    pub family: &'static str,
    /// Step of care.
    pub step: &'static str,
    /// What it asks.
    pub statement: &'static str,
    /// What is measured; empty for situations.
    pub quantity: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// Zones from the lowest up; empty for situations.
    pub band: Vec<Stretch>,
    /// Limits that a set may move, and how far; empty where all stay.
    pub movable: Vec<Limit>,
    /// Situations; empty for a number.
    pub situations: Vec<OneSituation>,
    /// The worst verdict that it can give.
    #[schemars(extend("enum" = zones()))]
    pub worst: &'static str,
    /// `agreed`, `number-varies` or `contested`.
    #[schemars(extend("enum" = ["agreed", "number-varies", "contested"]))]
    pub agreement: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// What mends a fault.
    pub mend: &'static str,
    /// Who says so.
    pub evidence: Vec<OneSource>,
}

/// A situation that a rule tells apart.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneSituation {
    /// Its key.
    pub key: &'static str,
    /// In words.
    pub words: &'static str,
    /// Its zone.
    #[schemars(extend("enum" = zones()))]
    pub zone: &'static str,
}

/// A source.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneSource {
    /// Citation.
    pub cite: &'static str,
    /// What sort of source.
    pub kind: &'static str,
    /// Whether the figure was read.
    pub mark: &'static str,
    /// What it says.
    pub says: &'static str,
}

impl Judgement {
    /// Of a debrief on a case; its tooth names the sides.
    #[must_use]
    pub fn of(
        address: Option<String>,
        case: &Case,
        debrief: &Debrief,
        events: Vec<OneEvent>,
        room: Option<Room>,
    ) -> Self {
        let ids = |group: &debrief::Group| {
            group.faults.iter().map(|place| debrief.verdicts[*place].rule.id).collect()
        };
        let tooth = case.site.tooth;
        Self {
            caution: CAUTION,
            case: address,
            protocol: Protocol::of(&case.local),
            rule_set: RULE_SET,
            plan: debrief.word.word(),
            mark: Mark {
                percent: debrief.mark.percent(),
                full_weight: debrief.mark.full,
                set_aside: debrief.mark.set_aside,
                lost: debrief
                    .mark
                    .lost
                    .iter()
                    .map(|(why, weight)| lost(why, *weight, debrief))
                    .collect(),
            },
            groups: debrief
                .groups
                .iter()
                .map(|group| Group {
                    cause: group.cause(tooth),
                    rules: ids(group),
                    cost: group.cost,
                })
                .collect(),
            verdicts: debrief.verdicts.iter().map(|one| OneVerdict::of(one, tooth)).collect(),
            events,
            room,
            healing: None,
        }
    }
}

fn lost(why: &Lost, weight: f64, debrief: &Debrief) -> LostWeight {
    let (why, rules) = match why {
        Lost::Acceptable(id) => ("acceptable", vec![*id]),
        Lost::NotReached(id) => ("not-reached", vec![*id]),
        Lost::Group(place) => {
            let faults = debrief.groups.get(*place).map(|group| group.faults.as_slice());
            let ids =
                faults.unwrap_or_default().iter().map(|fault| debrief.verdicts[*fault].rule.id);
            ("faults", ids.collect())
        }
    };
    LostWeight { why, rules, weight }
}

impl OneVerdict {
    fn of(verdict: &Verdict, tooth: Tooth) -> Self {
        let words = explain(verdict, tooth);
        let (measured, situation) = match verdict.reading {
            Reading::Number(value) => (Some(value), None),
            Reading::Situation(key) => (None, Some(key)),
        };
        Self {
            rule: verdict.rule.id,
            ledger: verdict.rule.ledger,
            step: verdict.rule.step.key(),
            measured,
            situation,
            unit: unit(&verdict.rule.scale),
            band: band(verdict.bands().as_ref()),
            verdict: verdict.zone.key(),
            cost: if verdict.is_fault() { verdict.weight_of_fault() } else { 0 },
            information: verdict.knowledge.map(|known| known.words()),
            words: Words {
                measured: words.measured,
                asked: words.asked,
                distance: words.distance,
                why: words.why,
                mend: words.mend,
                sources: words.sources,
                differ: words.differ,
                protocol: words.local,
            },
        }
    }
}

/// Every word of a verdict.
fn zones() -> Vec<&'static str> {
    use Zone::{Acceptable, Compromising, Debated, Ideal, Suboptimal, Unsafe};
    [Ideal, Acceptable, Debated, Suboptimal, Compromising, Unsafe].map(Zone::key).to_vec()
}

fn unit(scale: &Scale) -> &'static str {
    match scale {
        Scale::Bands(bands) => bands.unit,
        Scale::Situations(_) => "",
    }
}

fn band(bands: Option<&Bands<'_>>) -> Vec<Stretch> {
    let zones = bands.into_iter().flat_map(Bands::zones);
    zones.map(|(from, to, zone)| Stretch { from, to, zone: zone.key() }).collect()
}

impl RuleBook {
    /// Every rule, and what of the ledger is none.
    #[must_use]
    pub fn all() -> Self {
        let entry = |(ledger, says)| OneEntry { ledger, says };
        Self {
            caution: CAUTION,
            rule_set: RULE_SET,
            evidence_reviewed: EVIDENCE_REVIEWED,
            rules: engine::rules::all().map(OneRule::of).collect(),
            facts: ledger::facts().map(entry).collect(),
            left_out: ledger::left_out().map(entry).collect(),
        }
    }
}

impl OneRule {
    /// Of a rule.
    #[must_use]
    pub fn of(rule: &'static Rule) -> Self {
        let (quantity, situations) = match &rule.scale {
            Scale::Bands(bands) => (bands.quantity, Vec::new()),
            Scale::Situations(situations) => (
                "",
                situations
                    .iter()
                    .map(|one| OneSituation {
                        key: one.key,
                        words: one.words,
                        zone: one.zone.key(),
                    })
                    .collect(),
            ),
        };
        Self {
            id: rule.id,
            ledger: rule.ledger,
            family: rule.family.words(),
            step: rule.step.key(),
            statement: rule.statement,
            quantity,
            unit: unit(&rule.scale),
            band: band(rule.bands()),
            movable: limits(rule),
            situations,
            worst: rule.cost().key(),
            agreement: agreement(rule.agreement),
            why: rule.why,
            mend: rule.mend,
            evidence: rule
                .evidence
                .iter()
                .map(|one| OneSource {
                    cite: one.cite,
                    kind: one.source.words(),
                    mark: one.status.mark(),
                    says: one.says,
                })
                .collect(),
        }
    }
}

/// Key of an agreement.
#[must_use]
pub const fn agreement(agreement: Agreement) -> &'static str {
    match agreement {
        Agreement::Agreed => "agreed",
        Agreement::NumberVaries => "number-varies",
        Agreement::Contested => "contested",
    }
}
