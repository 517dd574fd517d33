//! The report on a class.

use super::discussion::{Discuss, DiscussProps};
use super::judges::{Judges, JudgesProps};
use super::ratings::{Ratings, RatingsProps};
use super::{cases, learners, rules};
use crate::components::caution::caution;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{el, items, line, press, said, section};
use crate::components::portfolio::tick;
use crate::components::view::view;
use crate::effects;
use crate::prose::Prose;
use engine::debrief::RULE_SET;
use learning::class::{Class, Report, told};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// How wide a plot is laid out at most, and what stands beside it on a phone, CSS pixels.
const WIDE: f64 = 648.0;
const BESIDE: f64 = 54.0;

/// What it needs.
#[derive(Properties)]
pub struct ReportProps {
    /// Everything that was handed in.
    pub class: Rc<RefCell<Class>>,
    /// How often it has been added to: by this two states of it differ.
    pub count: u32,
}

impl PartialEq for ReportProps {
    fn eq(&self, other: &Self) -> bool {
        self.count == other.count && Rc::ptr_eq(&self.class, &other.class)
    }
}

/// The report.
#[component]
pub fn ClassReport(props: &ReportProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let codes = use_held(|| false);
    let aside = use_held(Vec::new);
    let mut report = Report::of(&props.class.borrow());
    if !aside.is_empty() {
        report.adjust(&props.class.borrow(), &aside);
    }
    let known: Vec<String> = report.learners.iter().map(|one| one.code.clone()).collect();
    if !*codes {
        report.hide_codes();
    }
    let called = known.into_iter().zip(report.learners.iter().map(|one| one.code.clone()));
    let called = called.map(|(code, called)| [code, called]).collect();
    let report = Rc::new(report);
    let wide = WIDE.min(effects::page_width() - BESIDE);
    let (class, count) = (props.class.clone(), props.count);
    let parts = vec![
        line("h2", "", "The report"),
        said("p", "lead", format!("{}.", told::size(&report))),
        caution(),
        said(
            "p",
            "from",
            format!(
                "Judged by rule set {RULE_SET}. Everything follows from choices; that these are a learner's own no file can prove."
            ),
        ),
        items("", told::besides(&report)),
        acts(&codes),
        rules::missed(&report, &prose, wide),
        rules::skills(&report),
        rules::grave(&report, &prose),
        learners::needing_a_word(&report),
        learners::map(&report, &prose, wide),
        learners::marks(&report),
        cases::cases(&report, &prose),
        view::<Discuss>(DiscussProps { class: class.clone(), count, aside }),
        cases::together(&report),
        section(
            "standard",
            "Where the pass mark lies",
            vec![
                line(
                    "p",
                    "",
                    "A pass mark is in no plan: people set it. Both ways tell how far it would scatter, and nothing of them is kept once you leave the page: save the table.",
                ),
                view::<Judges>(JudgesProps { report: report.clone() }),
                view::<Ratings>(RatingsProps { class, count, called }),
            ],
        ),
        cases::objections(&report),
    ];
    el("div", "of-class", parts)
}

/// Whether codes are shown, and printing.
fn acts(codes: &Held<bool>) -> Html {
    let turn = {
        let codes = codes.clone();
        Callback::from(move |_: Event| codes.set(!*codes))
    };
    let print = Callback::from(|_: MouseEvent| effects::print());
    let acts = vec![
        tick(line("span", "", "Show learners by their codes"), **codes, turn),
        el("p", "row", vec![press(&[], "Print the report".to_owned(), print)]),
    ];
    el("div", "choosing", acts)
}
