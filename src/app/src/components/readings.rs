//! What was read, and what was there.

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
        html! {
            <tr>
                <th scope="row">{ tooth.named(one.finding.words()) }</th>
                <td>{ words(one, one.noted).unwrap_or_else(|| "—".to_owned()) }</td>
                <td>{ words(one, one.truth).unwrap_or_else(|| "none".to_owned()) }</td>
                <td>{ one.remark.words() }</td>
            </tr>
        }
    };
    html! {
        <>
            <h3>{ "What you read, and what was there" }</h3>
            <table class="readings">
                <thead><tr><th>{ "Finding" }</th><th>{ "You wrote" }</th><th>{ "It is" }</th><th>{ "Remark" }</th></tr></thead>
                <tbody>{ for all.iter().map(row) }</tbody>
            </table>
        </>
    }
}
