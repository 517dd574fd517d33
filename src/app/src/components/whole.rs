//! The word for the whole plan, and how its mark adds up.

use super::plain::{folded, items, line, said, with};
use crate::prose::Prose;
use engine::anatomy::Tooth;
use engine::debrief::{Debrief, Lost, PlanWord};
use engine::rules;
use yew::prelude::*;

/// The word, what it means, and the mark.
pub fn whole(debrief: &Debrief, tooth: Tooth, prose: &Prose) -> Html {
    let class = match debrief.word {
        PlanWord::Sound => "whole sound",
        PlanWord::Workable => "whole workable",
        PlanWord::Compromised => "whole compromised",
        PlanWord::Unsafe => "whole unsafe",
    };
    let mark = &debrief.mark;
    let percent =
        mark.percent().map_or("not marked".to_owned(), |percent| format!("{percent:.0} of 100"));
    let lost = mark.lost.iter().map(|(why, weight)| {
        let why = lost_words(why, debrief, tooth, prose);
        format!("{} — {weight:.1}", tooth.named(&why))
    });
    let adds_up = format!(
        "Full weight of this case: {:.0}. Set aside, because sources differ, because it could not be known, or because it was rightly not reached: {:.0}. Lost: {:.1}.",
        mark.full,
        mark.set_aside,
        mark.lost_weight()
    );
    let adds_up = vec![said("p", "", adds_up), items("", lost.collect())];
    let parts = vec![
        said("p", "whole-word", format!("This plan is {}.", debrief.word.word())),
        line("p", "", debrief.word.meaning()),
        said("p", "mark", format!("Mark: {percent}.")),
        folded("", "How the mark adds up".to_owned(), adds_up),
    ];
    with("div", &[("class", class), ("role", "status")], parts)
}

fn lost_words(why: &Lost, debrief: &Debrief, tooth: Tooth, prose: &Prose) -> String {
    let statement =
        |id: &str| rules::find(id).map_or_else(String::new, |rule| prose.statement(rule));
    match why {
        Lost::Acceptable(id) => format!("acceptable, not ideal: {}", statement(id)),
        Lost::NotReached(id) => format!("not reached: {}", statement(id)),
        Lost::Group(place) => {
            let group = &debrief.groups[*place];
            let first = group.faults.first().map(|place| debrief.verdicts[*place].rule);
            let first = first.map_or_else(String::new, |rule| prose.statement(rule));
            group.cause(tooth).unwrap_or_else(|| format!("fault: {first}"))
        }
    }
}
