//! For whoever teaches with the room: before, during and after a lesson, and what it can and cannot claim.

use crate::components::caution::caution;
use crate::components::plain::{el, line, list, onward};
use yew::prelude::*;

/// A part of the guide: its heading, what leads in, and its points.
struct Part {
    title: &'static str,
    lead: &'static str,
    points: &'static [&'static str],
}

/// The guide. Effect sizes with their sources; *confirmed* means that the figure was read there.
const PARTS: [Part; 7] = [
    Part {
        title: "What it can claim",
        lead: "A room to practise decisions in, between the lecture and the supervised patient. What is known of its kind:",
        points: &[
            "Against no teaching, virtual patients raise knowledge by 0.94 standard deviations (0.69 to 1.19), reasoning by 0.80 (0.52 to 1.08), other skills by 0.90 (0.61 to 1.19): Cook, Erwin and Triola 2010, confirmed.",
            "Against other teaching they do not raise knowledge (0.11, -0.17 to 0.39) and do raise skills (0.90, 0.49 to 1.32; 51 trials): Kononowicz and others 2019, confirmed.",
            "What helps in simulation: a range of difficulty (0.68), repetition (0.68), practice spread over days (0.66), interactivity (0.65), feedback (0.44): Cook and others 2013, 289 studies, confirmed.",
            "Feedback that explains (0.49) is worth far more than right or wrong (0.05): Van der Kleij and others 2015, confirmed.",
            "Cases that differ in one thing, compared before they are explained: 0.50 (0.44 to 0.56): Alfieri and others 2013, confirmed.",
        ],
    },
    Part {
        title: "What it cannot claim",
        lead: "Say so before the first case.",
        points: &[
            "Nobody's hands are trained here, and no outcome is forecast. Cases are synthetic; rules are rules of practice with their sources, and local guidelines and licensed practice come first.",
            "That a learner does better here does not show that a patient fares better: no study of this room exists.",
            "A mark follows from choices and cannot be typed in. Who chose, with whose help, no file can prove: what much hangs on belongs in a supervised room.",
        ],
    },
    Part {
        title: "Before: five minutes",
        lead: "A briefing, as the Healthcare Simulation Standards of Best Practice ask for one (INACSL 2021, confirmed).",
        points: &[
            "What they will be able to do: say it as the aim of the set says it.",
            "What is simulated and what is not: show the page Limits.",
            "That mistakes here are what the hour is for, and that nobody reads them but who is handed the file.",
            "How it goes: examine, choose, carry out, read why. One guided case together.",
        ],
    },
    Part {
        title: "An hour",
        lead: "For a class that has had the lecture. Times in minutes.",
        points: &[
            "0 to 5: briefing. 5 to 15: the guided case together, on the screen; stop before each act and ask what could still be found out.",
            "15 to 35: two cases each, alone, in study mode, saying how sure they are before each step.",
            "35 to 45: in pairs, the paired case: what is the same, what differs, what has to change? Answers first, the rule after.",
            "45 to 57: debriefing, one case on the screen. 57 to 60: each writes down one thing to take away; the portfolio saves it.",
        ],
    },
    Part {
        title: "After: questions for the debriefing",
        lead: "First what happened, then why, then what follows. Debriefing is worth about 0.67 (Tannenbaum and Cerasoli 2013, from memory); no way of doing it has been shown to be better than another (Duff and others 2024, confirmed).",
        points: &[
            "What did you know, and what did you take for granted, when you chose the course?",
            "Which finding would have made you choose otherwise? Did you look for it?",
            "Where did the plan stand nearest to an edge, and what would have shown it in time?",
            "Where sources differ: which side did you take, and could you defend the other?",
            "What will you do differently with the next socket? One thing.",
        ],
    },
    Part {
        title: "Reading a class",
        lead: "Give each learner a code, never a name. They type it into the portfolio and save; you choose all the files on the page A class, where nothing leaves your browser, or give them to wallwise class.",
        points: &[
            "Begin with what most of them miss and with the choice that those who miss it have in common: that is the next lesson.",
            "Acts that can hurt somebody are listed one by one: talk about each, whatever the mark.",
            "Below 30 learners trust counts and intervals, not coefficients; item statistics are shaky below 100 (Downing and Yudkowsky, restated, confirmed).",
            "Where a pass mark is needed, set it at the end of that page, by judges or by examiners' ratings; an act that can hurt somebody fails whatever the mark.",
            "A case that nobody passes, that the better learners fail or that many object to is a question about the case before it is one about the class.",
        ],
    },
    Part {
        title: "Writing a set",
        lead: "Never enter a real patient: there is no field for one.",
        points: &[
            "Write the aim first: one sentence, what a learner can do afterwards.",
            "Show one worked case of a kind, then one begun, then free ones; of one kind two or three until they hold, then mixed with others.",
            "Let difficulty rise on purpose, and vary the rest little: wallwise set check tells how hard each case is, wallwise set blueprint which rules the set tests and what it leaves out.",
            "Give each case one question to ask after it. wallwise set key prints what you need in the hand.",
            "To examine: verdicts that wait for the set's end or your word, a time with the extra that was agreed, one attempt, a link that opens with a code. A browser can hold back and can tell, not compel: each attempt says whether its case had been opened before and whether it came late. The host of a package is told marks at once: set there whether learners see them.",
            "Pilot it: let a colleague do it aloud.",
        ],
    },
];

/// The page.
pub fn guide() -> Html {
    let mut parts = vec![
        line("h1", "", "For whoever teaches"),
        line(
            "p",
            "lead",
            "One case at a time shows a class how it went once. Here everybody chooses, on the same case, and you see what they have not understood.",
        ),
    ];
    for part in &PARTS {
        parts.push(line("h2", "", part.title));
        parts.push(line("p", "", part.lead));
        parts.push(list(part.points));
    }
    parts.push(onward("#/class", "Read what a class handed in"));
    parts.push(caution());
    el("article", "page", parts)
}
