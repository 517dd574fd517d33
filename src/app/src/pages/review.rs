//! The review: what a learner's attempts say about them over time.

use crate::components::caution::caution;
use crate::components::review::{Notes, Plotted, StandsOut, sureness};
use crate::effects;
use crate::shelf::Shelf;
use engine::rules::Skill;
use learning::past::{Past, Sure};
use learning::review::Review;
use learning::standing::{self, Standing};
use learning::tables;
use plots::{mastery_plot, mix_plot, time_plot};
use std::rc::Rc;
use yew::prelude::*;

/// How wide a plot is laid out at most, and what stands beside it on a phone, CSS pixels.
const WIDE: f64 = 648.0;
const BESIDE: f64 = 54.0;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct ReviewProps {
    /// The attempts.
    pub shelf: Shelf,
    /// Told the attempt's id and the new text of a note.
    pub on_note: Callback<(String, String)>,
}

/// The review.
#[component]
pub fn ReviewPage(props: &ReviewProps) -> Html {
    let shelf = &props.shelf;
    let seen = use_memo(shelf.clone(), Seen::of);
    let Seen { review, standings, sure } = &*seen;
    if review.own.is_empty() {
        return empty(!shelf.pasts.is_empty());
    }
    let wide = WIDE.min(effects::page_width() - BESIDE);
    let unmet = standings.iter().filter(|one| one.answers.is_empty());
    let unmet: Vec<&str> = unmet.map(|one| one.skill.words()).collect();
    let mastery = mastery_plot(standings, shelf.now, shelf.clock, wide);
    html! {
        <article class="page review">
            <h1>{ "Review" }</h1>
            <p class="lead">{ over(shelf, review) }</p>
            { caution() }
            <StandsOut shelf={shelf.clone()} review={review.clone()} />
            <section aria-labelledby="skills">
                <h2 id="skills">{ "Skills over time" }</h2>
                if unmet.len() < Skill::ALL.len() {
                    <p>{ "A line rises with each attempt that keeps all rules of a skill and falls with each that does not; on the dashed line it counts as mastered. A model of answers, not of hands." }</p>
                    <Plotted name="skills-over-time" figure={mastery} csv={tables::mastery(standings, shelf.clock).text().to_owned()} />
                } else {
                    <p>{ "Finished attempts are shown here, skill by skill." }</p>
                }
                if !unmet.is_empty() { <p class="from">{ format!("Not met yet: {}.", unmet.join("; ")) }</p> }
            </section>
            <section aria-labelledby="mix">
                <h2 id="mix">{ "Verdicts" }</h2>
                if review.mix.older > 0 { <p>{ format!("The last twelve months; {} earlier ones are left out.", review.mix.older) }</p> }
                <p>{ "Each bar is all verdicts of its time, and the number says how many. Faults that nobody could have known of are left out." }</p>
                <Plotted name="verdicts" figure={mix_plot(&review.mix, wide)} csv={tables::mix(&review.mix).text().to_owned()} />
            </section>
            <section aria-labelledby="sure">
                <h2 id="sure">{ "How sure, and how it went" }</h2>
                { sureness(sure, wide) }
            </section>
            <section aria-labelledby="times">
                <h2 id="times">{ "Time per step" }</h2>
                if review.times.is_empty() {
                    <p>{ "No times are known of these attempts." }</p>
                } else {
                    <p>{ "The bar ends at your middle time, the line runs from the shortest to the longest. Pauses count for five minutes at most." }</p>
                    <Plotted name="time-per-step" figure={time_plot(&review.times, wide)} csv={tables::times(&review.times).text().to_owned()} />
                }
            </section>
            <section aria-labelledby="notes">
                <h2 id="notes">{ "Your notes" }</h2>
                <Notes shelf={shelf.clone()} on_note={props.on_note.clone()} />
            </section>
            <p><a href="#/portfolio">{ "Print or hand on attempts: the portfolio" }</a></p>
        </article>
    }
}

/// What is worked out of the attempts, once for each change of them.
struct Seen {
    review: Rc<Review>,
    standings: [Standing; Skill::ALL.len()],
    sure: Vec<Sure>,
}

impl Seen {
    fn of(shelf: &Shelf) -> Self {
        let review = Review::of(&shelf.pasts, shelf.clock);
        let own = review.own.iter().filter_map(|place| shelf.pasts.get(*place));
        let mut sure = Vec::new();
        own.for_each(|past: &Past| sure.extend_from_slice(&past.sure));
        Self { review: Rc::new(review), standings: standing::of(&shelf.pasts, shelf.now), sure }
    }
}

/// How many attempts, since when, and how many were left out.
fn over(shelf: &Shelf, review: &Review) -> String {
    let count = review.own.len();
    let attempts = if count == 1 { "attempt" } else { "attempts" };
    let first = review.own.iter().find_map(|place| shelf.pasts[*place].when());
    let since =
        first.map_or_else(String::new, |at| format!(" since {}", shelf.clock.date(at).words()));
    let shown = match shelf.pasts.len() - count {
        0 => "",
        _ => " Cases of which steps were shown are left out.",
    };
    format!("{count} {attempts}{since}.{shown}")
}

fn empty(only_shown: bool) -> Html {
    let why = if only_shown {
        "So far only cases of which steps were shown: what was shown is nobody's answer."
    } else {
        "Nothing to look back on yet."
    };
    html! {
        <article class="page review">
            <h1>{ "Review" }</h1>
            <p class="lead">{ why }</p>
            <p>{ "After your first case this page says which faults came back, how each skill goes over time, whether you are right as often as you are sure, and where your time goes. It is worked out in this browser and stays there." }</p>
            <p><a href="#/">{ "To the first case" }</a></p>
        </article>
    }
}
