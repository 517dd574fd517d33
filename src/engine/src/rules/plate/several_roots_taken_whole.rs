//! A tooth with several roots taken out in one piece.

use crate::plan::choices::Sectioning;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "several-roots-taken-whole",
    ledger: "extraction-plate-protection",
    family: Family::Plate,
    step: Step::Extraction,
    skill: Skill::Extracting,
    statement: long!(
        "Section a tooth with several roots and take each root by itself where its socket is to hold an implant or a graft."
    ),
    why: long!(
        "Roots that part hold the septum and the plate between them; drawn out together they break one or the other."
    ),
    mend: long!("Section the crown down to the furcation and take the roots one by one."),
    scale: Scale::Situations(&[
        when("sectioned", "the roots were parted and taken one by one", Zone::Ideal),
        when("whole", "the tooth with several roots was taken in one piece", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Sectioning, Decision::Course],
    rests_on: &[Fact::RootForm],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Levine 2017, ten keys for immediate placement, Compendium",
            "Extract without facial luxation and, where possible, without a flap; section teeth with several roots.",
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
    let extraction = j.plan.extraction.as_ref()?;
    let intended = j.plan.intention.as_ref()?.course;
    if j.case.site.socket.furcation().is_none() || !ask::goes_beyond_extraction(intended) {
        return None;
    }
    situation(match extraction.sectioning {
        Sectioning::Sectioned => "sectioned",
        Sectioning::Whole => "whole",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_molar_is_sectioned_where_its_socket_is_to_hold_something() {
        let mut trial = Trial::molar();
        trial.keys(&[("sectioning", "whole")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("sectioning", "sectioned")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.course("return-early");
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn of_one_root_nothing_is_asked() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
