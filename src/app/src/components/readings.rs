//! What was read, and what was there.

use super::plain::{self, el, line, table, together};
use engine::anatomy::Tooth;
use engine::debrief::Compared;
use yew::prelude::*;

/// What was written down at the examination, beside what is there.
pub fn readings(all: &[Compared], tooth: Tooth) -> Html {
    if all.is_empty() {
        return Html::default();
    }
    let words =
        |one: &Compared, noted: Option<_>| noted.map(|noted| one.finding.noted_words(noted));
    let row = |one: &Compared| {
        let wrote = words(one, one.noted).unwrap_or_else(|| "—".to_owned());
        let is = words(one, one.truth).unwrap_or_else(|| "none".to_owned());
        let remark = one.remark.words().to_owned();
        plain::row(tooth.named(one.finding.words()).into_owned(), vec![wrote, is, remark])
    };
    let rows = el("tbody", "", all.iter().map(row).collect());
    let heads = ["Finding", "You wrote", "It is", "Remark"];
    together(vec![
        line("h3", "", "What you read, and what was there"),
        table("readings", &heads, rows),
    ])
}
