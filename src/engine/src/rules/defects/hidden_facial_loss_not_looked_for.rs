//! A facial wall that is missing under gum that looks normal.

use crate::anatomy::Wall;
use crate::rules::prelude::*;

/// Find out whether the facial wall is there before you decide, however normal the gum looks.
pub(super) static RULE: Rule = Rule {
    id: "hidden-facial-loss-not-looked-for",
    ledger: "class-elian",
    family: Family::Defects,
    step: Step::Extraction,
    skill: Skill::ReadingWalls,
    statement: long!(
        "Find out whether the facial wall is there before you decide, however normal the gum looks."
    ),
    why: long!(
        "The socket that deceives is the one with good gum over a missing wall: you plan for bone that is not there."
    ),
    mend: long!("Sound the bone under anaesthesia, or probe all walls of the fresh socket."),
    scale: Scale::Situations(&[
        when("found", "the wall is missing under normal gum, and you found it", Zone::Ideal),
        when(
            "not-looked-for",
            "the wall is missing under normal gum, and nothing that you did could show it",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Examinations, Decision::SocketProbing],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Elian 2007, simplified socket classification, Pract Proced Aesthet Dent",
            "In type II the soft tissue is normal and part of the facial plate is missing.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Chu 2015, subclassification of sockets with facial dehiscence, Compendium",
            "Type II is divided by depth from the free margin: about 5 to 6 mm, 7 to 9 mm, 10 mm or more.",
        ),
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Domic 2021, J Periodontol",
            "Sections are not to be trusted for plates of 1 mm or less: specificity 12.5 %.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.extraction.as_ref()?;
    let site = &j.case.site;
    let normal_gum = site.soft.margin_below_twin.get() <= 0.0;
    if !normal_gum || site.defects_of(Wall::Facial).next().is_none() {
        return None;
    }
    situation(if j.known.is_seen(Fact::FacialWall) { "found" } else { "not-looked-for" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::defect;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn trap() -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceU));
        trial
    }

    #[test]
    fn a_film_and_a_look_do_not_find_it() {
        let mut trial = trap();
        trial.keys(&[("examinations", "look film"), ("socket-probing", "nothing")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn sounding_before_or_probing_after_finds_it() {
        let mut trial = trap();
        trial.keys(&[("examinations", "look film bone-sounding"), ("socket-probing", "nothing")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("examinations", "look film"), ("socket-probing", "facial-only")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn recession_gives_it_away_so_it_is_no_trap() {
        let mut trial = trap();
        trial.case.site.soft.margin_below_twin = Mm::new(1.0);
        assert_eq!(trial.zone(&RULE), None);
        assert_eq!(Trial::plain().zone(&RULE), None, "nor is a whole wall");
    }
}
