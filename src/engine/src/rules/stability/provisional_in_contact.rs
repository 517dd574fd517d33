//! A provisional crown that meets the other teeth.

use crate::plan::{Component, choices::Contacts};
use crate::rules::prelude::*;

/// Keep a provisional crown on a fresh implant out of all contact.
pub(super) static RULE: Rule = Rule {
    id: "provisional-in-contact",
    ledger: "provisional-occlusion",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!("Keep a provisional crown on a fresh implant out of all contact."),
    why: long!(
        "Every meeting with a tooth opposite rocks the implant while bone is trying to reach it."
    ),
    mend: long!("Grind the provisional clear in closing and in every excursion."),
    scale: Scale::Situations(&[
        when("clear", "the provisional is out of all contact", Zone::Ideal),
        when("closing-only", "the provisional meets lightly when closing only", Zone::Debated),
        when("full", "the provisional is in full contact", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("Out of all contact, closing included."),
        other: long!("Out of contact in excursions; a light meeting when closing may stay."),
    }),
    reads: &[Decision::Component, Decision::ProvisionalContacts],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023",
            "A provisional has no eccentric contacts, light contacts with its neighbours and a concave profile below the gum.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Greenstein and Cavallaro 2017, Compendium",
            "Movement at the interface past 100 to 150 micrometres is harmful.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let Component::Provisional(contacts) = j.plan.component()? else {
        return None;
    };
    Some(Reading::Situation(match contacts {
        Contacts::OutOfContact => "clear",
        Contacts::CentricOnly => "closing-only",
        Contacts::Full => "full",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn full_contact_compromises_and_none_is_ideal() {
        let mut trial = Trial::plain();
        trial.keys(&[("component", "provisional")]);
        let mut zone = |contacts| trial.keys(&[("provisional-contacts", contacts)]).zone(&RULE);
        assert_eq!(zone("none"), Some(Zone::Ideal));
        assert_eq!(zone("centric"), Some(Zone::Debated));
        assert_eq!(zone("full"), Some(Zone::Compromising));
    }

    #[test]
    fn without_a_provisional_there_is_nothing_to_ask() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
