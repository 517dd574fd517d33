//! A pass mark by how examiners rated performances as a whole.

use super::cases::one_case;
use super::table::table;
use super::typed::{Typed, at, cell};
use crate::components::changed::use_worked;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{el, folded, items, line, press, text, with};
use crate::effects;
use learning::class::{Class, Discussion, told, typed};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties)]
pub struct RatingsProps {
    /// Everything that was handed in.
    pub class: Rc<RefCell<Class>>,
    /// How often it has been added to.
    pub count: u32,
    /// Learners in the order of their codes: the code, and what they are called on the page.
    pub called: Vec<[String; 2]>,
}

impl PartialEq for RatingsProps {
    fn eq(&self, other: &Self) -> bool {
        let same = Rc::ptr_eq(&self.class, &other.class);
        same && self.count == other.count && self.called == other.called
    }
}

/// The row of the borderline rating: no learner's code is empty.
const BORDERLINE: &str = "";

/// The part of the report.
#[component]
pub fn Ratings(props: &RatingsProps) -> Html {
    let (case, cells) = (use_held(String::new), use_held(Typed::new));
    let class = props.class.clone();
    let worked = use_worked((props.count, (*case).clone()), move |(_, case)| {
        let class = class.borrow();
        (Discussion::cases(&class), class.marks_at(case))
    });
    let (cases, marks) = &*worked;
    let choose = {
        let case = case.clone();
        Callback::from(move |one| case.set(one))
    };
    let mut parts = vec![
        line(
            "p",
            "",
            "For each learner whom an examiner saw at a case, type how the performance was rated as a whole, in whole steps: the more the better. Marks are worked out of the choices.",
        ),
        one_case("rated", cases, &case, choose),
    ];
    if !case.is_empty() {
        parts.extend(rating(&case, marks, &props.called, &cells));
    }
    folded("", "By how examiners rated (borderline regression)".to_owned(), parts)
}

/// The fields, and what follows from them.
fn rating(
    case: &str,
    marks: &[(String, f64)],
    all: &[[String; 2]],
    cells: &Held<Typed>,
) -> [Html; 4] {
    let row_of = |code: &str| format!("{case} {code}");
    let called = |code: &String| {
        let place = all.binary_search_by(|one| one[0].cmp(code));
        place.ok().and_then(|at| all.get(at)).map_or(String::new(), |one| one[1].clone())
    };
    let shown: Vec<(String, f64)> =
        marks.iter().map(|(code, mark)| (called(code), *mark)).collect();
    let row = |((code, _), (called, mark)): (&(String, f64), &(String, f64))| {
        let field = cell(cells, &row_of(code), 0, &format!("Rating of {called}"));
        (text(called.clone()), vec![text(format!("{mark:.1}")), field])
    };
    let rows = marks.iter().zip(&shown).map(row).collect();
    let ratings: Vec<String> =
        marks.iter().map(|(code, _)| at(cells, &row_of(code), 0).to_owned()).collect();
    let lines = match typed::ratings(&shown, &ratings, at(cells, BORDERLINE, 0)) {
        Ok(Some((line, at))) => told::rated(&line, at),
        Ok(None) => vec!["No pass mark yet: nobody has been rated.".to_owned()],
        Err(wrong) => wrong,
    };
    let says = "The rating of a performance that is neither a clear pass nor a clear fail";
    let field = cell(cells, BORDERLINE, 0, says);
    [
        table("Ratings and marks", &["Learner", "Mark", "Rating"], rows),
        el("label", "field", vec![line("span", "", says), field]),
        with("div", &[("role", "status")], vec![items("", lines)]),
        save(case.to_owned(), marks.to_vec(), ratings),
    ]
}

fn save(case: String, marks: Vec<(String, f64)>, typed: Vec<String>) -> Html {
    let save = Callback::from(move |_: MouseEvent| {
        effects::save("ratings.csv", typed::ratings_table(&case, &marks, &typed).text());
    });
    let press = press(&[("class", "quiet")], "Save ratings.csv".to_owned(), save);
    let says = " It names learners by their codes, as wallwise standard ratings needs them.";
    el("p", "choosing", vec![press, text(says.to_owned())])
}
