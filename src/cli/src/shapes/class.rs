//! What a class handed in, read together.

use engine::debrief::{CAUTION, RULE_SET};
use learning::class::{
    CaseSeen, Changed, Chosen, Item, Notion, OfCase, OfLearner, OfRule, Report, Share, Together,
    alternative,
};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// What `wallwise class --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassReport {
    /// What stands beside every verdict.
    pub caution: &'static str,
    /// The rule set that everything is judged by.
    pub rule_set: &'static str,
    /// How many attempts there are.
    pub attempts: usize,
    /// How many of them count: of several of a learner at one case the first.
    pub counted: usize,
    /// How many of those did not come to their end.
    pub unfinished: usize,
    /// How many were shown or begun for the learner, and count for nothing.
    pub helped: usize,
    /// How many came more than once.
    pub again: u32,
    /// Attempts that are judged otherwise than under the rule set that they were sat under, by that.
    pub judged_otherwise: BTreeMap<String, u32>,
    /// What changed in those that count, learner by learner.
    pub changed: Vec<ClassChanged>,
    /// What was set aside, each with the reason.
    pub set_aside: Vec<String>,
    /// Rules, the most missed first.
    pub rules: Vec<ClassRule>,
    /// Skills, the most lacked first.
    pub skills: Vec<ClassSkill>,
    /// Cases, the hardest first.
    pub cases: Vec<ClassCase>,
    /// Learners.
    pub learners: Vec<ClassLearner>,
    /// Every act that can hurt somebody, one by one.
    pub unsafe_acts: Vec<UnsafeAct>,
    /// What was held against verdicts.
    pub objections: Vec<Held>,
    /// What the outcomes of cases together can carry.
    pub together: ClassTogether,
}

/// How many were right, of how many, and where that share may lie in truth.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Right {
    /// Right.
    pub right: u32,
    /// Of.
    pub of: u32,
    /// Lower and upper end of Wilson's 90 % interval; null where there is nothing.
    pub within: Option<[f64; 2]>,
}

/// A rule.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassRule {
    /// Id.
    pub rule: &'static str,
    /// What it asks.
    pub statement: &'static str,
    /// Key of its skill.
    pub skill: &'static str,
    /// Attempts in which it was kept.
    pub attempts: Right,
    /// Learners who always kept it.
    pub learners: Right,
    /// The choice that sets those who missed it apart; null where none does.
    pub notion: Option<Chose>,
}

/// A choice that those who missed a rule made and the others did not, or left out.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Chose {
    /// Key of the decision.
    pub decision: &'static str,
    /// What was chosen, or left out.
    pub chose: &'static str,
    /// Whether leaving it out is what sets them apart.
    pub left_out: bool,
    /// Attempts that missed the rule with this choice, and all that missed it.
    pub missed: [u32; 2],
    /// Attempts that kept the rule with this choice, and all that kept it.
    pub kept: [u32; 2],
}

/// A skill.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassSkill {
    /// Key.
    pub skill: &'static str,
    /// Its plain name.
    pub words: &'static str,
    /// Attempts that call for it in which none of its rules was missed.
    pub attempts: Right,
}

/// A case.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassCase {
    /// Its address, or what stands for one.
    pub case: String,
    /// Tooth, two digits.
    pub tooth: u8,
    /// Plans that are sound.
    pub sound: u32,
    /// Plans with suboptimal faults only.
    pub workable: u32,
    /// Plans with a fault that is likely to compromise.
    pub compromised: u32,
    /// Plans that can hurt somebody.
    #[serde(rename = "unsafe")]
    pub grave: u32,
    /// Attempts that did not come to the end.
    pub unfinished: u32,
    /// Corrected point-biserial; null below 30 learners, and where there is none.
    pub corrected: Option<f64>,
    /// Upper-lower discrimination; null likewise.
    pub upper_lower: Option<f64>,
    /// Alpha of the other cases; null likewise.
    pub alpha_without: Option<f64>,
    /// Why somebody should look at it.
    pub odd: Vec<&'static str>,
    /// What was chosen, decision by decision in the order of care.
    pub decisions: Vec<ClassDecision>,
}

/// What was chosen for a decision of a case.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassDecision {
    /// Key of the decision.
    pub decision: &'static str,
    /// Attempts in which something was chosen for it.
    pub of: u32,
    /// Each alternative, in the order of its list, with in how many attempts it was chosen.
    pub alternatives: Vec<ClassAlternative>,
}

/// An alternative.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassAlternative {
    /// What it says.
    pub says: &'static str,
    /// In how many attempts it was chosen.
    pub chosen: u32,
}

/// An attempt that today's rules judge otherwise than those that it was sat under.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassChanged {
    /// Number, or code where codes are asked for.
    pub learner: String,
    /// Its case.
    pub case: String,
    /// The rule set that it was sat under.
    pub rule_set: String,
    /// What was outside or unsafe then and is not so today, as `rule:zone`; null where the file does not
    /// say what was.
    pub then: Option<Vec<String>>,
    /// What is so today and was not then.
    pub today: Vec<String>,
}

/// A learner.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassLearner {
    /// Number, or code where codes are asked for.
    pub learner: String,
    /// Cases passed: the plan is sound or workable.
    pub cases: Right,
    /// Cases begun and not ended.
    pub unfinished: u32,
    /// Cases that had been opened in the same browser before.
    pub opened_before: u32,
    /// Cases that were gone on with after the time of their set was over.
    pub late: u32,
    /// Acts that can hurt somebody.
    pub unsafe_acts: u32,
    /// Rules missed in two cases or more, with in how many.
    pub recurring: Vec<(&'static str, u32)>,
    /// Why somebody should have a word.
    pub needs: Vec<String>,
}

/// An act that can hurt somebody.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct UnsafeAct {
    /// Whose.
    pub learner: String,
    /// At which case.
    pub case: String,
    /// Id of the rule.
    pub rule: &'static str,
    /// What it asks.
    pub statement: &'static str,
}

/// Something held against a verdict.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Held {
    /// Whose.
    pub learner: String,
    /// At which case.
    pub case: String,
    /// Id of the rule.
    pub rule: String,
    /// The reason.
    pub reason: String,
}

/// What the outcomes of cases together can carry.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ClassTogether {
    /// Learners who ended two shared cases or more.
    pub learners: usize,
    /// Cases that two learners or more ended.
    pub cases: usize,
    /// KR-20 (alpha); null below 30 learners who ended every shared case.
    pub alpha: Option<f64>,
    /// Standard error of measurement of a total, cases; null likewise.
    pub error: Option<f64>,
    /// Share of pairs of cases of one learner with the same outcome; null where nobody ended two.
    pub agreement: Option<f64>,
    /// What that would be by chance.
    pub agreement_by_chance: Option<f64>,
    /// Index of dependability of as many cases as there are; null where it cannot be told.
    pub dependability: Option<f64>,
    /// Cases that a decision needs to be dependable at 0.70 and at 0.90; null where it cannot be told.
    pub cases_needed: [Option<u32>; 2],
}

impl From<Share> for Right {
    fn from(share: Share) -> Self {
        Self { right: share.right, of: share.all(), within: share.band() }
    }
}

impl ClassReport {
    /// Of a report.
    #[must_use]
    pub fn of(report: &Report, set_aside: Vec<String>) -> Self {
        let needs = report.needing_a_word();
        let needs = |one: &OfLearner| {
            let found = needs.iter().find(|(other, _)| other.code == one.code);
            found.map(|(_, why)| why.clone()).unwrap_or_default()
        };
        let enough = report.together.footing != learning::class::Footing::TooFew;
        Self {
            caution: CAUTION,
            rule_set: RULE_SET,
            attempts: report.attempts[0],
            counted: report.attempts[1],
            unfinished: report.unfinished,
            helped: report.helped,
            again: report.again,
            judged_otherwise: report.otherwise.clone(),
            changed: report.changed.iter().map(changed).collect(),
            set_aside,
            rules: report.rules.iter().map(rule).collect(),
            skills: report
                .skills
                .iter()
                .map(|(skill, share)| ClassSkill {
                    skill: skill.key(),
                    words: skill.words(),
                    attempts: (*share).into(),
                })
                .collect(),
            cases: report.cases.iter().map(|one| case(one, enough)).collect(),
            learners: report.learners.iter().map(|one| learner(one, needs(one))).collect(),
            unsafe_acts: report
                .grave
                .iter()
                .map(|one| UnsafeAct {
                    learner: one.code.clone(),
                    case: one.case.name.clone(),
                    rule: one.rule.id,
                    statement: one.rule.statement,
                })
                .collect(),
            objections: report
                .objections
                .iter()
                .map(|one| Held {
                    learner: one.code.clone(),
                    case: one.case.name.clone(),
                    rule: one.rule.clone(),
                    reason: one.reason.clone(),
                })
                .collect(),
            together: together(&report.together),
        }
    }
}

fn rule(one: &OfRule) -> ClassRule {
    let chose = |notion: &Notion| Chose {
        decision: notion.decision.key(),
        chose: notion.words().1,
        left_out: notion.left_out,
        missed: notion.missed,
        kept: notion.kept,
    };
    ClassRule {
        rule: one.rule.id,
        statement: one.rule.statement,
        skill: one.rule.skill.key(),
        attempts: one.attempts.into(),
        learners: one.learners.into(),
        notion: one.notion.as_ref().map(chose),
    }
}

fn case(one: &OfCase, enough: bool) -> ClassCase {
    let of_item =
        |value: fn(&Item) -> Option<f64>| one.item.as_ref().filter(|_| enough).and_then(value);
    let [sound, workable, compromised, grave] = one.words;
    ClassCase {
        case: one.case.name.clone(),
        tooth: one.case.tooth,
        sound,
        workable,
        compromised,
        grave,
        unfinished: one.unfinished,
        corrected: of_item(|item| item.corrected),
        upper_lower: of_item(|item| item.upper_lower),
        alpha_without: of_item(|item| item.alpha_without),
        odd: one.odd.iter().map(|odd| odd.words()).collect(),
        decisions: one.chosen.iter().map(decision).collect(),
    }
}

fn decision(one: &Chosen) -> ClassDecision {
    let counts = (0_u8..).zip(&one.counts);
    let alternatives = counts.map(|(place, chosen)| ClassAlternative {
        says: alternative(one.decision, place),
        chosen: *chosen,
    });
    ClassDecision { decision: one.decision.key(), of: one.of, alternatives: alternatives.collect() }
}

fn changed((learner, case, one): &(String, CaseSeen, Changed)) -> ClassChanged {
    ClassChanged {
        learner: learner.clone(),
        case: case.name.clone(),
        rule_set: one.rule_set.clone(),
        then: one.then.clone(),
        today: one.today.clone(),
    }
}

fn learner(one: &OfLearner, needs: Vec<String>) -> ClassLearner {
    ClassLearner {
        learner: one.code.clone(),
        cases: one.cases.into(),
        unfinished: one.unfinished,
        opened_before: one.opened_before,
        late: one.late,
        unsafe_acts: one.grave,
        recurring: one.recurring.iter().map(|(rule, times)| (rule.id, *times)).collect(),
        needs,
    }
}

fn together(of: &Together) -> ClassTogether {
    let cases = u32::try_from(of.size[1]).unwrap_or(u32::MAX);
    ClassTogether {
        learners: of.size[0],
        cases: of.size[1],
        alpha: of.reliability.map(|found| found.alpha),
        error: of.reliability.map(|found| found.error),
        agreement: of.agreement.map(|found| found.found),
        agreement_by_chance: of.agreement.map(|found| found.by_chance),
        dependability: of.components.and_then(|found| found.phi(cases)),
        cases_needed: of.needed,
    }
}
