//! What a class misses.

use super::cases::place;
use super::table::save;
use crate::components::figure::still;
use crate::components::plain::{el, folded, line, link, said, section, text, with};
use crate::prose::Prose;
use crate::route::Route;
use engine::anatomy::Tooth;
use engine::rules::Rule;
use learning::class::{Grave, OfRule, Report, tables, told};
use plots::missed_plot;
use std::rc::Rc;
use yew::prelude::*;

/// So many rules are shown and drawn; the others are folded away.
const SHOWN: usize = 15;

/// Rules, the most missed first.
pub fn missed(report: &Rc<Report>, prose: &Prose, wide: f64) -> Html {
    let missed: Vec<&OfRule> = report.rules.iter().filter(|one| one.learners.wrong > 0).collect();
    if missed.is_empty() {
        let none = line("p", "", "No rule was missed by anybody.");
        return section("missed-by-class", "What the class misses", vec![none]);
    }
    let shown: Vec<&OfRule> = missed.iter().take(SHOWN).copied().collect();
    let figure = missed_plot(&shown, wide);
    let mut parts = vec![
        line(
            "p",
            "",
            "Each bar is the share of learners who missed the rule at least once, of those who met it; the line over it shows where that share may lie in truth (90 %).",
        ),
        still(figure, Some("missed".into())),
    ];
    let mut told: Vec<Html> = missed.iter().map(|one| rule(one, prose)).collect();
    let rest = told.split_off(SHOWN.min(told.len()));
    parts.push(el("ol", "", told));
    if !rest.is_empty() {
        let more = format!("{} more, missed by fewer", rest.len());
        // The numbers of the map.
        let next = (SHOWN + 1).to_string();
        parts.push(folded("", more, vec![with("ol", &[("start", &next)], rest)]));
    }
    parts.push(save("rules", report, tables::rules));
    section("missed-by-class", "What the class misses", parts)
}

fn rule(one: &OfRule, prose: &Prose) -> Html {
    let mut parts = vec![
        el("p", "", vec![el("strong", "", vec![named(one.rule, prose)])]),
        said("p", "from", format!("{}. {}", told::learners(one.learners), one.rule.skill.words())),
    ];
    if let Some(notion) = &one.notion {
        parts.push(said("p", "", capital(&told::notion(notion))));
    }
    el("li", "", parts)
}

/// Stars mark an alternative in plain text; here its place is plain enough.
fn capital(words: &str) -> String {
    format!("{}.", words.replace('*', "“").replacen("“ (", "” (", 1))
}

/// What a rule asks, leading to it in full.
pub fn named(rule: &Rule, prose: &Prose) -> Html {
    link(Route::Rule(rule.id.to_owned()).fragment(), prose.statement(rule))
}

/// Skills, the most lacked first.
pub fn skills(report: &Rc<Report>) -> Html {
    let lacked = report.skills.iter().filter(|(_, share)| share.wrong > 0);
    let one = |(skill, share): &(engine::rules::Skill, learning::class::Share)| {
        let words = vec![
            said("strong", "", skill.words().to_owned()),
            text(format!(": {}", told::attempts(*share))),
        ];
        el("li", "", words)
    };
    let parts =
        vec![el("ul", "", lacked.map(one).collect()), save("skills", report, tables::skills)];
    section("lacked", "Skills, the most lacked first", parts)
}

/// Every act that can hurt somebody.
pub fn grave(report: &Rc<Report>, prose: &Prose) -> Html {
    if report.grave.is_empty() {
        let none = vec![line("p", "", "None in these attempts.")];
        return section("grave", "Acts that can hurt somebody", none);
    }
    let one = |act: &Grave| {
        let says = format!("{}, {}: ", act.code, place(&act.case));
        let asks = prose.statement(act.rule);
        let asks = Tooth::try_from(act.case.tooth)
            .map_or(asks.clone(), |tooth| tooth.named(&asks).into_owned());
        el("li", "", vec![said("strong", "", says), text(asks)])
    };
    let mut told: Vec<Html> = report.grave.iter().map(one).collect();
    let rest = told.split_off((2 * SHOWN).min(told.len()));
    let mut parts = vec![
        said(
            "p",
            "",
            format!(
                "{}. No mark makes up for an act that can hurt somebody. Below is what was asked each time, and not done.",
                told::pass_line(report)
            ),
        ),
        el("ul", "", told),
    ];
    if !rest.is_empty() {
        parts.push(folded("", format!("{} more", rest.len()), vec![el("ul", "", rest)]));
    }
    parts.push(save("unsafe", report, tables::grave));
    section("grave", "Acts that can hurt somebody", parts)
}
