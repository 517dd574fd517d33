//! The board: linked figures of one case, which stay in view.

use super::figure::{FigureProps, drawn};
use crate::effects;
use crate::judging::Judging;
use crate::store::{Action, Bench, Said};
use engine::figures::{self, Figure, Show};
use engine::plan::Draft;
use engine::rules::Known;
use yew::prelude::*;

/// The board. What shows the gap comes with the judge, long before there is an implant to show it of.
pub fn board(bench: &Bench, judging: Option<Judging>, act: &Callback<Action>) -> Html {
    let draft = bench.session.tried(&bench.tried);
    let over = bench.session.is_over();
    let px = figure_width();
    let figures = figures(bench, judging, &draft, over, px).into_iter().map(|figure| {
        // Handles move the draft as it was before the drag, so that a drag adds up once.
        let held = (!over && !bench.is_told()).then(|| bench.session.draft().clone());
        let handles = judging.map(|judging| judging.handles);
        let is_here = |said: &&Said| {
            let decisions = figure.handles.iter().filter_map(|handle| handle.vertex);
            decisions.map(|(decision, _)| decision).any(|decision| decision == said.about)
        };
        let said = bench.said.as_ref().filter(is_here).cloned();
        let (tooth, act) = (Some(bench.session.case().site.tooth), act.clone());
        let over = Html::default();
        drawn(FigureProps { figure, id: None, draft: held, handles, over, tooth, said, act })
    });
    let shown = Callback::from(|event: FocusEvent| effects::bring_into_view(&event));
    html! { <section class="board" aria-label="Figures of the case" tabindex="0" onfocusin={shown}>{ for figures }</section> }
}

fn figures(
    bench: &Bench,
    judging: Option<Judging>,
    draft: &Draft,
    reveal: bool,
    px: f64,
) -> Vec<Figure> {
    let (case, plan) = (bench.session.case(), bench.session.shown());
    let known = Known::of(case, plan);
    let show = Show { case, plan, draft, known: &known, reveal, lit: bench.lit, px };
    let section = judging
        .filter(|_| case.site.socket.only().is_none())
        .map_or(figures::section_of_one as fn(&Show<'_>) -> Figure, |judging| judging.section);
    let mut figures = vec![figures::facial_map(&show), section(&show)];
    let Some(judging) = judging else { return figures };
    let Some(healed) = (judging.healed)(&show) else {
        figures.extend((judging.gap)(&show));
        return figures;
    };
    // What is worked on comes first; what shows the open socket says that it is the past.
    for figure in &mut figures {
        figure.title.push_str(", before it healed");
    }
    figures.insert(0, healed);
    figures
}

/// About how wide a figure will be drawn, CSS pixels: letters are sized for it. The shares are those
/// of the stylesheet's three layouts.
fn figure_width() -> f64 {
    let page = effects::page_width();
    if page <= 640.0 {
        0.86 * page - 49.0
    } else if page <= 1088.0 {
        0.5 * page - 60.0
    } else {
        0.27 * page - 30.0
    }
}
