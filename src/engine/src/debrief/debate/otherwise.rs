//! What the side that would have it otherwise does here: by the rule and the situation on which sources
//! differ.
//!
//! A rule's *to mend it* is written for its faults. On what is only debated it reads as if something
//! had been forgotten, so each debated situation has its own sentence, taken from the rule's positions.

/// Rule, debated situation, and what the other side does.
const OTHERWISE: &[(&str, &str, &str)] = &[
    (
        "advanced-repair-handed-on",
        "handed-on-as-a-resident",
        "takes the repair on, beside somebody who has done many",
    ),
    (
        "chronic-lesion-not-debrided",
        "placed-after-debridement",
        "lets the cleaned socket heal and places the implant later",
    ),
    (
        "placed-against-the-criteria",
        "thin-but-intact",
        "places none today: it grafts the socket and returns, or returns early",
    ),
    (
        "thin-gum-without-tissue",
        "thin-by-some",
        "calls this gum thin, and adds a connective tissue graft or stages the implant",
    ),
    (
        "implant-in-a-lost-facial-wall",
        "repaired-with-contour-and-tissue",
        "rebuilds the wall first and places the implant on a later day",
    ),
    (
        "implant-in-a-lost-facial-wall",
        "narrow-defect-repaired",
        "adds a connective tissue graft, or rebuilds the wall first and places the implant later",
    ),
    (
        "doac-dose-not-agreed",
        "dose-unchanged",
        "has the morning dose left out or delayed, as the prescriber agrees",
    ),
    (
        "stent-too-recent",
        "within-a-year",
        "asks the cardiologist, or waits until the stent is 12 months old",
    ),
    (
        "steroid-not-weighed",
        "unasked-small-dose",
        "calls the prescriber first, and leaves the tablets as they are",
    ),
    (
        "socket-graded-too-lightly",
        "three-placed",
        "grafts the socket first, and the implant follows",
    ),
    (
        "wide-facial-loss-in-one-stage",
        "v-shaped",
        "rebuilds the wall first, and the implant follows",
    ),
    (
        "wide-facial-loss-in-one-stage",
        "u-shaped",
        "rebuilds the wall first, and the implant follows",
    ),
    ("implant-held-by-no-septum", "wide-on-walls", "grafts the sockets and returns"),
    ("narrow-gap-left-empty", "empty", "lays graft into the gap for the sake of the contour"),
    (
        "at-risk-margin-without-tissue",
        "none-high-lip",
        "lays a connective tissue graft now, or plans it for uncovering",
    ),
    ("foramen-not-located", "kept-far", "takes sections and measures how far the foramen is"),
    ("loose-implant-left", "submerged", "takes the implant out, grafts and returns"),
    ("late-loose-implant-left", "submerged", "takes the implant out, grafts and returns"),
    ("provisional-in-contact", "closing-only", "grinds the provisional clear in closing too"),
    (
        "flapless-with-wall-defect",
        "internal-membrane",
        "raises a flap that lays the whole defect bare",
    ),
    ("overfilled-above-the-crest", "dual-zone", "stops at the crest"),
    ("turnover-ignored", "between", "waits the full four months"),
    (
        "defect-left-uncovered",
        "plugged",
        "lays a membrane over the defect, reaching at least 2 mm onto intact bone",
    ),
    (
        "folded-over-an-abutment",
        "custom-seal",
        "takes a cover screw and closes the regeneration over it",
    ),
    (
        "prophylaxis-taken-for-settled",
        "given",
        "leaves it out in a simple case: the gain is small and resistance is real",
    ),
    (
        "prophylaxis-taken-for-settled",
        "none",
        "gives one dose before the operation to everyone without an allergy",
    ),
    (
        "regeneration-left-open",
        "custom-seal",
        "releases the flap and brings the edges together over the membrane",
    ),
    (
        "socket-graft-unsealed",
        "advanced",
        "leaves the gum where it is, and the edges apart over a seal",
    ),
    ("antibiotic-course-too-long", "short", "gives none afterwards, because the evidence is weak"),
    (
        "uncovered-too-early",
        "between",
        "waits the usual time: three months in the upper jaw or beside a graft, two in the lower",
    ),
    ("narrow-band-punched-away", "narrow-split", "moves the band facially or grafts soft tissue"),
    (
        "sections-without-a-question",
        "with-a-question",
        "takes them for selected sites only, and spares the patient the dose here",
    ),
    (
        "sections-without-a-question",
        "none-taken",
        "takes them for every implant site, in a small field, for plate and ridge",
    ),
];

/// What the other side does where the rule with this id meets this situation.
pub(super) fn otherwise(rule: &str, situation: &str) -> Option<&'static str> {
    let found = OTHERWISE.iter().find(|(id, key, _)| *id == rule && *key == situation);
    found.map(|(_, _, does)| *does)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::{self, Scale, Zone};

    #[test]
    fn every_debated_situation_has_its_sentence_and_no_other_has() {
        let mut debated: Vec<(&str, &str)> = Vec::new();
        for rule in rules::all() {
            let Scale::Situations(all) = &rule.scale else { continue };
            let differ = all.iter().filter(|one| one.zone == Zone::Debated);
            debated.extend(differ.map(|one| (rule.id, one.key)));
        }
        debated.sort_unstable();
        let mut told: Vec<(&str, &str)> =
            OTHERWISE.iter().map(|(id, key, _)| (*id, *key)).collect();
        told.sort_unstable();
        assert_eq!(debated, told);
    }

    #[test]
    fn a_sentence_says_what_is_done_and_needs_no_full_stop() {
        for (rule, key, does) in OTHERWISE {
            assert!(does.starts_with(|first: char| first.is_lowercase()), "{rule} {key}");
            assert!(
                !does.ends_with('.') && !does.to_lowercase().contains("nothing"),
                "{rule} {key}"
            );
        }
    }
}
