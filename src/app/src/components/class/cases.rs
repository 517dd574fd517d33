//! Cases of a class: how they came out, what was chosen, what all of them can carry.

use super::set_aside::set_aside;
use super::table::{counts, save, table};
use crate::components::fields::one_of;
use crate::components::plain::{el, folded, items, line, link, said, section, text};
use crate::prose::Prose;
use crate::route::{CaseRoute, From, Route};
use learning::class::{CaseSeen, Objection, OfCase, Report, tables, told};
use std::rc::Rc;
use yew::prelude::*;

/// Every case, the hardest first.
pub fn cases(report: &Rc<Report>, prose: &Prose) -> Html {
    let adjusted = !report.aside.is_empty();
    let row = |one: &OfCase| {
        let [sound, workable, compromised, grave] = one.words;
        let mut cells = counts(&[sound, workable, compromised, grave, one.unfinished]);
        let odd: Vec<&str> = one.odd.iter().map(|odd| odd.words()).collect();
        cells.push(text(odd.join("; ")));
        if adjusted {
            cells.extend(counts(&[one.passed().right, one.adjusted[0] + one.adjusted[1]]));
        }
        (case(one), cells)
    };
    let mut columns =
        vec!["Case", "sound", "workable", "compromised", "unsafe", "unfinished", "Look at it"];
    if adjusted {
        columns.extend(["Passed, computed", "Passed, adjusted"]);
    }
    let rows = report.cases.iter().map(row).collect();
    let each: Vec<String> = report
        .cases
        .iter()
        .map(|one| (one, told::item(one, &report.together)))
        .filter(|(_, item)| !item.is_empty())
        .map(|(one, item)| format!("{}{item}", one.case.name))
        .collect();
    let mut parts =
        vec![set_aside(&report.aside, prose), table("Cases and how they came out", &columns, rows)];
    if !each.is_empty() {
        parts.push(folded("", "Each case as an item".to_owned(), vec![items("", each)]));
    }
    parts.push(save("cases", report, tables::cases));
    parts.push(save("alternatives", report, tables::alternatives));
    parts.push(line(
        "p",
        "from",
        "The second file has what was chosen for each decision of each case.",
    ));
    section("of-cases", "Cases, the hardest first", parts)
}

/// A case by its address and tooth.
pub fn named(case: &CaseSeen) -> String {
    format!("{} at {}", case.name, case.tooth)
}

/// The same in a sentence.
pub fn place(case: &CaseSeen) -> String {
    format!("case {}", named(case))
}

/// A case by its address and tooth, leading to it where it has one.
fn case(one: &OfCase) -> Html {
    let says = named(&one.case);
    match one.case.name.parse() {
        Ok(address) => link(Route::Case(CaseRoute::study(From::Address(address))).fragment(), says),
        Err(_) => text(says),
    }
}

/// One of these cases, or none yet.
pub fn one_case(id: &str, cases: &[CaseSeen], chosen: &str, then: Callback<String>) -> Html {
    let words: Vec<String> = cases.iter().map(named).collect();
    let mut all = vec![("", "none chosen")];
    all.extend(cases.iter().map(|one| one.name.as_str()).zip(words.iter().map(String::as_str)));
    el("div", "choosing", vec![one_of(id, "Case", &all, chosen, then)])
}

/// What the outcomes of all cases together can carry.
pub fn together(report: &Report) -> Html {
    section(
        "together",
        "What the outcomes together can carry",
        vec![items("", told::together(report))],
    )
}

/// What was held against verdicts: words of learners, shown as text.
pub fn objections(report: &Rc<Report>) -> Html {
    if report.objections.is_empty() {
        return Html::default();
    }
    let one = |one: &Objection| {
        let says = format!("{}, {}, {}: ", one.code, place(&one.case), one.rule.replace('-', " "));
        el("li", "", vec![said("strong", "", says), said("q", "", one.reason.clone())])
    };
    let parts = vec![
        el("ul", "", report.objections.iter().map(one).collect()),
        save("objections", report, tables::objections),
    ];
    section("objections", "Held against verdicts", parts)
}
