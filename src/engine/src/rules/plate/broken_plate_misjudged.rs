//! A piece of the facial plate that broke away, kept or taken out against what holds it.

use crate::chart::Fragment;
use crate::plan::choices::PlateRescue;
use crate::rules::prelude::*;

/// Press back a broken plate that hangs on its periosteum, and take out one that is loose.
pub(super) static RULE: Rule = Rule {
    id: "broken-plate-misjudged",
    ledger: "rescue-plate-fracture",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Extracting,
    statement: long!(
        "Press back a broken plate that hangs on its periosteum, and take out one that is loose."
    ),
    why: long!(
        "What hangs on its periosteum is still fed and heals in place; what is loose is dead bone under your graft."
    ),
    mend: long!("Look at what holds the piece: keep it if the periosteum does, else take it out."),
    scale: Scale::Situations(&[
        when("pressed-back", "the piece that hangs on its periosteum is pressed back", Zone::Ideal),
        when("taken-out", "the loose piece is taken out", Zone::Ideal),
        when(
            "left-hanging",
            "the piece that could be pressed back is left as it lies",
            Zone::Suboptimal,
        ),
        when("thrown-away", "a piece that was still fed is taken out", Zone::Compromising),
        when("kept-loose", "a loose piece stays in the wound", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::BrokenPlate],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::FromMemory,
            "textbooks of surgery of mouth and jaws",
            "A fractured plate on its periosteum is repositioned and kept; a loose one is removed.",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023",
            "Damage during extraction is among the factors that decide on immediate placement, in 59 studies.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let answer = j.plan.extraction.as_ref()?.plate?;
    Some(Reading::Situation(match (j.case.broken?, answer) {
        (Fragment::OnPeriosteum, PlateRescue::Keep) => "pressed-back",
        (Fragment::OnPeriosteum, PlateRescue::Leave) => "left-hanging",
        (Fragment::OnPeriosteum, PlateRescue::Remove) => "thrown-away",
        (Fragment::Loose, PlateRescue::Remove) => "taken-out",
        (Fragment::Loose, PlateRescue::Keep | PlateRescue::Leave) => "kept-loose",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Case;
    use crate::events::{Pulled, broken_plate};
    use crate::rules::trial::Trial;

    /// The plain case under a title with which levering breaks its plate so.
    fn broken(fragment: Fragment) -> Trial {
        let mut trial = Trial::plain();
        trial.keys(&[("technique", "lever-on-facial-plate")]);
        let pulled = Pulled::in_draft(&trial.draft).unwrap();
        let mut cases = (0..1000).map(|n| Case { title: n.to_string(), ..trial.case.clone() });
        trial.case = cases.find(|case| broken_plate(case, pulled) == Some(fragment)).unwrap();
        trial
    }

    #[test]
    fn a_plate_that_stayed_whole_asks_nothing() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn what_hangs_is_kept_and_what_is_loose_is_not() {
        let said = [
            (Fragment::OnPeriosteum, "keep", Zone::Ideal),
            (Fragment::OnPeriosteum, "leave", Zone::Suboptimal),
            (Fragment::OnPeriosteum, "remove", Zone::Compromising),
            (Fragment::Loose, "remove", Zone::Ideal),
            (Fragment::Loose, "keep", Zone::Compromising),
            (Fragment::Loose, "leave", Zone::Compromising),
        ];
        for (fragment, answer, zone) in said {
            let mut trial = broken(fragment);
            trial.keys(&[("broken-plate", answer)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{fragment:?} {answer}");
        }
    }
}
