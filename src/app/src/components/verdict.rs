//! A verdict: word and measured against its band, why, by whom, and what would mend it.

use super::decided::position;
use super::dispute::{Dispute, DisputeProps};
use super::plain::{el, folded, items, line, link, said, toggle, with};
use super::scale::scale;
use super::sign::signed;
use super::term::with_terms;
use super::view::{keyed, view};
use crate::prose::Prose;
use crate::route::Route;
use engine::anatomy::Tooth;
use engine::debrief::{Verdict, asked, decided, explain};
use engine::rules::Rule;
use yew::prelude::*;

/// What a verdict needs.
#[derive(Properties)]
pub struct VerdictProps {
    /// The verdict.
    pub verdict: Verdict,
    /// The tooth: it names the sides.
    pub tooth: Tooth,
    /// Whether its fault is lit in the figures.
    pub lit: bool,
    /// Told to light it, or to let go; none where no figures stand beside it.
    pub on_light: Option<Callback<Option<&'static Rule>>>,
}

impl PartialEq for VerdictProps {
    fn eq(&self, other: &Self) -> bool {
        let (a, b) = (&self.verdict, &other.verdict);
        a.rule.id == b.rule.id
            && a.reading == b.reading
            && a.knowledge == b.knowledge
            && a.here == b.here
            && self.lit == other.lit
    }
}

/// The view of a verdict beside which no figures stand.
pub fn verdict(verdict: &Verdict, tooth: Tooth) -> Html {
    lightable(VerdictProps { verdict: verdict.clone(), tooth, lit: false, on_light: None })
}

/// The view of a verdict, by the key of its rule.
pub fn lightable(props: VerdictProps) -> Html {
    keyed::<VerdictView>(props.verdict.rule.id, props)
}

/// A verdict.
#[component]
pub fn VerdictView(props: &VerdictProps) -> Html {
    let (verdict, tooth) = (&props.verdict, props.tooth);
    let words = explain(verdict, tooth);
    let rule = verdict.rule;
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let statement = tooth.named(&prose.statement(rule)).into_owned();
    let long = prose.of(rule.id);
    let (why, mend) = long.map_or(("", ""), |long| (long.why.as_str(), long.mend.as_str()));
    let mend = if verdict.zone.is_fault() { mend } else { "" };
    let differ = long.map_or("", |long| long.differ.as_str());
    let sources = long.map_or(&[][..], |long| &long.sources);
    let (bands, lit) = (verdict.bands(), props.lit);
    let light = props.on_light.as_ref().filter(|_| verdict.zone.is_fault());
    let light = light.map(|tell| tell.reform(move |_: MouseEvent| (!lit).then_some(rule)));
    let paragraph = |name: &str, text: &str| {
        if text.is_empty() {
            Html::default()
        } else {
            let name = said("strong", "", format!("{name} "));
            el("p", "with-terms", vec![name, with_terms(&tooth.named(text))])
        }
    };
    let trouble = match &prose {
        Prose::Trouble(trouble) => said("p", "wrong", trouble.clone()),
        _ => Html::default(),
    };
    let light = light.map(|light| toggle("Show it on the figures".to_owned(), lit, light));
    let summary = vec![
        signed(verdict.zone),
        line("span", "word", words.word),
        said("span", "statement", statement.clone()),
    ];
    let explanation = vec![
        said("p", "measured", format!("{} {}", words.measured, words.distance)),
        scale(verdict, tooth),
        paragraph("Asked:", &asked(bands.as_ref(), &statement)),
        paragraph("Your set:", &decided(verdict, position(verdict, long))),
        paragraph("Why:", why),
        paragraph("To mend it:", mend),
        trouble,
        paragraph("Known?", &words.known),
        paragraph("Where sources differ:", differ),
        who_says_so(sources, rule, tooth),
        view::<Dispute>(DisputeProps { rule: rule.id }),
        light.unwrap_or_default(),
    ];
    let (id, class) = (format!("verdict-{}", rule.id), format!("verdict {}", verdict.zone.key()));
    let open = if verdict.zone.is_fault() { "open" } else { "" };
    let parts = vec![el("summary", "", summary), el("div", "explanation", explanation)];
    with("details", &[("id", &id), ("class", &class), ("open", open)], parts)
}

/// The sources, and the way to the rule in full.
fn who_says_so(sources: &[String], rule: &Rule, tooth: Tooth) -> Html {
    let sources = sources.iter().map(|source| tooth.named(source).into_owned()).collect();
    let whole = link(Route::Rule(rule.id.to_owned()).fragment(), "The whole rule".to_owned());
    folded("sources", "Who says so".to_owned(), vec![items("", sources), whole])
}
