//! A class, read in the browser: what an instructor is told of what learners handed in.

use crate::components::class::{ClassReport, ReportProps, aside};
use crate::components::hold::{Held, use_held};
use crate::components::plain::{disabled, dropped_on, el, field, line, press, status, text, with};
use crate::components::view::view;
use crate::files;
use crate::reading::{Reading, Shown};
use std::rc::Rc;
use web_sys::DragEvent;
use yew::prelude::*;

/// The page.
#[component]
pub fn ClassPage() -> Html {
    let reading = use_held(Rc::<Reading>::default);
    let shown = use_held(Shown::default);
    let work: Rc<Reading> = Rc::clone(&reading);
    let drop = {
        let (work, shown) = (work.clone(), shown.clone());
        Callback::from(move |event: DragEvent| {
            event.prevent_default();
            work.take(files::dropped(&event), &shown);
        })
    };
    let mut parts = vec![line("h1", "", "A class")];
    parts.extend(head());
    parts.push(choose(&work, &reading, &shown));
    parts.push(status(shown.says.clone()));
    parts.push(aside(&work.aside.borrow()));
    // Its place is there before it is: the framework matches a list from its end.
    parts.push(match shown.ended > 0 && work.class.borrow().attempts() > 0 {
        true => view::<ClassReport>(ReportProps { class: work.class.clone(), count: shown.ended }),
        false => Html::default(),
    });
    dropped_on("page class", parts, drop)
}

fn head() -> [Html; 2] {
    [
        line(
            "p",
            "lead",
            "For whoever teaches: choose the files that learners saved, and read what the class has understood, and what not.",
        ),
        line(
            "p",
            "choosing",
            "Every attempt is done again by this room's own rules, in this browser. Nothing leaves it, and nothing of it is kept once you leave the page. That proves what follows from the choices, not who chose.",
        ),
    ]
}

/// Choosing files, stopping, beginning anew.
fn choose(work: &Rc<Reading>, reading: &Held<Rc<Reading>>, shown: &Held<Shown>) -> Html {
    let chosen = {
        let (work, shown) = (work.clone(), shown.clone());
        Callback::from(move |event: Event| work.take(files::chosen(&event), &shown))
    };
    let stop = {
        let work = work.clone();
        Callback::from(move |_: MouseEvent| work.stop())
    };
    let anew = {
        let (reading, shown) = (reading.clone(), shown.clone());
        Callback::from(move |_: MouseEvent| {
            reading.set(Rc::default());
            let says = "Begun anew: nothing has been read.".to_owned();
            shown.set(Shown { says, ..Shown::default() });
        })
    };
    let some = field(
        &[
            ("id", "handed-in"),
            ("type", "file"),
            ("multiple", "multiple"),
            ("accept", ".json,.zip,application/json,application/zip"),
        ],
        chosen.clone(),
    );
    let folder = [("id", "handed-in-folder"), ("type", "file"), ("webkitdirectory", "true")];
    let nothing = work.is_empty() || shown.busy;
    let acts = vec![
        press(&[disabled(!shown.busy)], "Stop".to_owned(), stop),
        press(&[disabled(nothing)], "Begin anew".to_owned(), anew),
    ];
    let parts = vec![
        line("p", "", "Drop files on this page, or choose them here. Several batches add up."),
        label("handed-in", "Files that learners saved (.json), or zip files of them"),
        el("p", "", vec![some]),
        label("handed-in-folder", "Or a whole folder"),
        el("p", "", vec![field(&folder, chosen)]),
        el("p", "row", acts),
    ];
    el("div", "choosing drop", parts)
}

fn label(of: &str, words: &str) -> Html {
    el("p", "", vec![with("label", &[("for", of)], vec![text(words.to_owned())])])
}
