//! What is kept in this browser, and where, in words.

use crate::components::plain::{el, line, live, said};
use crate::shelf::Shelf;
use yew::prelude::*;

/// What is kept, where, and how to keep it safe.
pub fn told([attempts, events, notes]: [usize; 3], space: &str, shelf: &Shelf) -> Vec<Html> {
    let practice = format!(
        "{attempts} attempts, {events} things done in them with the time of each, {notes} notes. In the browser's database (IndexedDB) named wallwise. Choices only: verdicts are worked out anew each time."
    );
    let kept = vec![
        line("dt", "", "Your practice"),
        said("dd", "", practice),
        line("dt", "", "Marks, a code and sets"),
        line(
            "dd",
            "",
            "That the briefing was read, that attempts are kept, and the code that your instructor gave you, if you entered one; sets that came by link, and the one that you are writing; which sets you began, with the time that they gave, and which cases were opened here. In the browser's local storage.",
        ),
        line("dt", "", "The room itself"),
        line(
            "dd",
            "",
            "Its program and texts, so that it opens without a connection. In the browser's cache.",
        ),
        line("dt", "", "Space"),
        el("dd", "", vec![live(space.to_owned())]),
    ];
    let mut parts = vec![
        line("h1", "", "What is kept, and where"),
        line(
            "p",
            "lead",
            "All of it in this browser, on this device, for this address. There is no account, nobody counts your visits, and nothing is sent anywhere. Another browser, a private window or another device knows nothing of it.",
        ),
        el("dl", "", kept),
    ];
    // Its place is there all the same: the framework matches a list from its end.
    parts.push(unreadable(shelf));
    parts.push(line("h2", "", "Keep it safe"));
    parts.push(line("p", "", "A browser may clear what it stores: when space runs short, when history is cleared, in some browsers after a week without a visit. A file of your own is the only safe copy."));
    parts
}

/// What stays as it is; nothing where all could be read.
fn unreadable(shelf: &Shelf) -> Html {
    if shelf.aside.is_empty() {
        return Html::default();
    }
    let aside = shelf.aside.iter().map(|(id, why)| said("li", "", format!("{id}: {why}")));
    let parts = [
        line("h2", "", "Kept, and not readable here"),
        el("ul", "", aside.collect()),
        line("p", "", "They stay as they are."),
    ];
    parts.into_iter().collect()
}
