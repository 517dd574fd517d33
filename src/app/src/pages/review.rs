//! The review: what a learner's attempts say about them over time.

use crate::components::caution::caution;
use crate::components::plain::{el, line, link, nothing_yet, said, section};
use crate::components::review::{notes, plotted, stands_out, sureness};
use crate::effects;
use crate::prose::Prose;
use crate::shelf::Shelf;
use engine::rules::Skill;
use learning::past::Sure;
use learning::review::Review;
use learning::standing::{self, Standing};
use learning::tables;
use plots::{mastery_plot, mix_plot, time_plot};
use yew::prelude::*;

/// How wide a plot is laid out at most, and what stands beside it on a phone, CSS pixels.
const WIDE: f64 = 648.0;
const BESIDE: f64 = 54.0;

/// The review; told the attempt's id and the new text of a note.
pub fn review(shelf: &Shelf, prose: &Prose, on_note: &Callback<(String, String)>) -> Html {
    let review = Review::of(&shelf.pasts, shelf.clock);
    if review.own.is_empty() {
        return empty(!shelf.pasts.is_empty());
    }
    let wide = WIDE.min(effects::page_width() - BESIDE);
    let mut sure: Vec<Sure> = Vec::new();
    for place in &review.own {
        sure.extend_from_slice(&shelf.pasts[*place].sure);
    }
    let onward =
        link("#/portfolio".to_owned(), "Print or hand on attempts: the portfolio".to_owned());
    let parts = vec![
        line("h1", "", "Review"),
        said("p", "lead", over(shelf, &review)),
        caution(),
        stands_out(shelf, &review, prose),
        section("skills", "Skills over time", skills(shelf, wide)),
        section("mix", "Verdicts", mix(&review, wide)),
        section("sure", "How sure, and how it went", sureness(&sure, wide)),
        section("times", "Time per step", times(&review, wide)),
        section("notes", "Your notes", vec![notes(shelf, on_note)]),
        el("p", "", vec![onward]),
    ];
    el("article", "page review", parts)
}

fn skills(shelf: &Shelf, wide: f64) -> Vec<Html> {
    let standings = standing::of(&shelf.pasts, shelf.now);
    let is_unmet = |one: &&Standing| one.answers.is_empty();
    let unmet: Vec<&str> = standings.iter().filter(is_unmet).map(|one| one.skill.words()).collect();
    if unmet.len() == Skill::ALL.len() {
        return vec![line("p", "", "Finished attempts are shown here, skill by skill.")];
    }
    let figure = mastery_plot(&standings, shelf.now, shelf.clock, wide);
    let mut parts = vec![
        line(
            "p",
            "",
            "A line rises with each attempt that keeps all rules of a skill and falls with each that does not; on the dashed line it counts as mastered. A model of answers, not of hands.",
        ),
        plotted("skills-over-time", figure, tables::mastery(&standings, shelf.clock)),
    ];
    if !unmet.is_empty() {
        parts.push(said("p", "from", format!("Not met yet: {}.", unmet.join("; "))));
    }
    parts
}

fn mix(review: &Review, wide: f64) -> Vec<Html> {
    let older = match review.mix.older {
        0 => String::new(),
        count => format!(" {count} earlier months are left out."),
    };
    let says = "Each bar is all verdicts of its time, and the number says how many. Faults that nobody could have known of are left out.";
    let plot = plotted("verdicts", mix_plot(&review.mix, wide), tables::mix(&review.mix).csv());
    vec![said("p", "", format!("{says}{older}")), plot]
}

fn times(review: &Review, wide: f64) -> Vec<Html> {
    if review.times.is_empty() {
        return vec![line("p", "", "No times are known of these attempts.")];
    }
    let says = "The bar ends at your middle time, the line runs from the shortest to the longest. Pauses count for five minutes at most.";
    let figure = time_plot(&review.times, wide);
    vec![line("p", "", says), plotted("time-per-step", figure, tables::times(&review.times).csv())]
}

/// How many attempts, since when, and whether any were left out.
fn over(shelf: &Shelf, review: &Review) -> String {
    let count = review.own.len();
    let attempts = if count == 1 { "attempt" } else { "attempts" };
    let first = review.own.iter().find_map(|place| shelf.pasts[*place].when());
    let since =
        first.map_or_else(String::new, |at| format!(" since {}", shelf.clock.date(at).words()));
    let all = shelf.pasts.len() == count;
    let shown = if all { "" } else { " Cases of which steps were shown are left out." };
    format!("{count} {attempts}{since}.{shown}")
}

fn empty(only_shown: bool) -> Html {
    let why = if only_shown {
        "So far only cases of which steps were shown: what was shown is nobody's answer."
    } else {
        "Nothing to look back on yet."
    };
    nothing_yet(
        "Review",
        why,
        "After your first case this page says which faults came back, how each skill goes over time, whether you are right as often as you are sure, and where your time goes. It is worked out in this browser and stays there.",
    )
}
