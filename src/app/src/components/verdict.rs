//! A verdict: word and shape, measured against its band, why, by whom, and what would mend it.

use super::decided::position;
use super::dispute::{Dispute, DisputeProps};
use super::scale::scale;
use super::term::with_terms;
use super::view::{keyed, view};
use crate::prose::Prose;
use crate::route::Route;
use engine::anatomy::Tooth;
use engine::debrief::{Verdict, asked, decided, explain};
use engine::rules::{Rule, Zone};
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

/// A sign that differs in shape, so that colour never carries the verdict alone.
#[must_use]
pub const fn sign(zone: Zone) -> &'static str {
    match zone {
        Zone::Ideal => "●",
        Zone::Acceptable => "◐",
        Zone::Debated => "◇",
        Zone::Suboptimal => "△",
        Zone::Compromising => "▲",
        Zone::Unsafe => "■",
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
            html! { <p class="with-terms"><strong>{ format!("{name} ") }</strong>{ with_terms(&tooth.named(text)) }</p> }
        }
    };
    html! {
        <details id={format!("verdict-{}", rule.id)} class={classes!("verdict", verdict.zone.key())} open={verdict.zone.is_fault()}>
            <summary>
                <span class="sign" aria-hidden="true">{ sign(verdict.zone) }</span>
                <span class="word">{ words.word }</span>
                <span class="statement">{ statement.clone() }</span>
            </summary>
            <div class="explanation">
                <p class="measured">{ format!("{} {}", words.measured, words.distance) }</p>
                { scale(verdict, tooth) }
                { paragraph("Asked:", &asked(bands.as_ref(), &statement)) }
                { paragraph("Your set:", &decided(verdict, position(verdict, long))) }
                { paragraph("Why:", why) }
                { paragraph("To mend it:", mend) }
                if let Prose::Trouble(trouble) = &prose { <p class="wrong">{ trouble }</p> }
                { paragraph("Known?", &words.known) }
                { paragraph("Where sources differ:", differ) }
                <details class="sources">
                    <summary>{ "Who says so" }</summary>
                    <ul>{ for sources.iter().map(|source| html! { <li>{ tooth.named(source).into_owned() }</li> }) }</ul>
                    <a href={Route::Rule(rule.id.to_owned()).fragment()}>{ "The whole rule" }</a>
                </details>
                { view::<Dispute>(DisputeProps { rule: rule.id }) }
                if let Some(light) = light {
                    <button type="button" class="quiet" aria-pressed={props.lit.to_string()} onclick={light}>{ "Show it on the figures" }</button>
                }
            </div>
        </details>
    }
}
