//! What goes with the attempts of a portfolio, and what is done with them.

use super::choose::tick;
use crate::components::hold::Held;
use crate::components::plain::{disabled, el, line, live, press, text, together, typed, with};
use crate::effects;
use learning::file::is_name;
use yew::prelude::*;

/// What the learner has chosen.
#[derive(Clone, Default)]
pub struct Chosen {
    /// Which attempts are left out, by their places; what lies beyond is in.
    pub out: Vec<bool>,
    /// Whether notes are printed, and objections.
    pub with: [bool; 2],
    /// A name that is printed.
    pub name: String,
    /// The code that an instructor gave, as it was typed; what cannot be one is left out of files.
    pub code: String,
}

impl Chosen {
    /// As the page opens.
    pub fn first() -> Self {
        Self { code: effects::code(), ..Self::default() }
    }
}

/// Printing and saving, and how many are chosen.
pub fn acts(ids: Vec<String>, count: usize, on_save: &Callback<Vec<String>>) -> Html {
    let (none, status) = (ids.is_empty(), format!("{} of {count} chosen.", ids.len()));
    let print = Callback::from(|_: MouseEvent| effects::print());
    let save = on_save.reform(move |_: MouseEvent| ids.clone());
    let button = |words: &str, onclick| press(&[disabled(none)], words.to_owned(), onclick);
    let status = live(status);
    el("p", "row", vec![button("Print", print), button("Save these attempts", save), status])
}

/// What is printed beside the records: notes, objections, a name.
pub fn beside(chosen: &Held<Chosen>) -> Vec<Html> {
    let also = |which: usize, words: &'static str| {
        let now = chosen.clone();
        let turn = Callback::from(move |_: Event| {
            let mut turned = Chosen::clone(&now);
            turned.with[which] = !turned.with[which];
            now.set(turned);
        });
        tick(line("span", "", words), chosen.with[which], turn)
    };
    let now = chosen.clone();
    let name = Callback::from(move |name: String| now.set(Chosen { name, ..Chosen::clone(&now) }));
    let whose = [("id", "whose"), ("maxlength", "120"), ("aria-describedby", "whose-says")];
    let says = "It is printed and never kept: it is gone when you leave this page, and is in no file. Do not enter a patient.";
    vec![
        line("h2", "", "Printed with it"),
        also(0, "Your own notes"),
        also(1, "What you held against verdicts"),
        labelled("whose", "A name, if you like"),
        el("p", "", vec![typed(&whose, "", name)]),
        with("p", &[("id", "whose-says"), ("class", "from")], vec![text(says.to_owned())]),
        line("h2", "", "Handing in"),
        code(chosen),
    ]
}

/// The code that goes into the saved file, so that an instructor knows whose it is and nobody else does.
fn code(chosen: &Held<Chosen>) -> Html {
    let now = chosen.clone();
    let then = Callback::from(move |typed: String| {
        let code = typed.trim().to_owned();
        effects::remember_code(&code);
        now.set(Chosen { code, ..Chosen::clone(&now) });
    });
    let wrong = !chosen.code.is_empty() && !is_name(&chosen.code);
    let (class, says) = match wrong {
        true => (
            "wrong",
            "A code has letters without accents, digits and hyphens only, 60 at most. As it is, it is left out of the file.",
        ),
        false => (
            "from",
            "It goes into the file that you save here, and stays in this browser. Leave it empty if you have none.",
        ),
    };
    let invalid = if wrong { "true" } else { "false" };
    let field = [
        ("id", "code"),
        ("maxlength", "80"),
        ("aria-describedby", "code-says"),
        ("aria-invalid", invalid),
    ];
    let told = [("id", "code-says"), ("class", class), ("role", "status")];
    together(vec![
        labelled("code", "The code that your instructor gave you (never your name)"),
        el("p", "", vec![typed(&field, &chosen.code, then)]),
        with("p", &told, vec![text(says.to_owned())]),
    ])
}

fn labelled(field: &str, words: &str) -> Html {
    el("p", "", vec![with("label", &[("for", field)], vec![text(words.to_owned())])])
}
