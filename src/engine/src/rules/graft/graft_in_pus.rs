//! Graft: do not graft a socket that suppurates.

use crate::anatomy::Lesion;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "graft-in-pus",
    ledger: "graft-not-in-pus",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Do not graft a socket that suppurates."),
    why: long!("Grains in pus are foreign bodies: they feed the infection and come out with it."),
    mend: long!("Drain and clean today, and graft or place once the site is quiet."),
    scale: Scale::Situations(&[
        when("nothing-grafted", "nothing was grafted into the infected socket", Zone::Ideal),
        when(
            "chronic-cleaned",
            "a long-standing lesion was cleaned out before grafting",
            Zone::Acceptable,
        ),
        when(
            "chronic-left",
            "graft was laid over tissue of a long-standing lesion",
            Zone::Compromising,
        ),
        when("pus", "graft was laid into an actively suppurating socket", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Debridement, Decision::GraftMaterial],
    rests_on: &[Fact::AcuteInfection, Fact::ApicalLesion],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Textbook,
            Status::FromMemory,
            "textbook teaching on grafting of infected sockets",
            "An actively suppurating socket is not grafted; a debrided chronic one may be.",
        ),
        says(
            Source::Opinion,
            Status::Partly,
            "Darby 2008, ridge preservation, review",
            "Debridement is recommended before grafting.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let grafted = j.plan.graft.as_ref()?.graft.is_some();
    let cleaned = j.plan.extraction.as_ref()?.debridement == c::Debridement::CuretteAndIrrigate;
    situation(match j.case.site.lesion {
        Lesion::None => return None,
        _ if !grafted => "nothing-grafted",
        Lesion::Chronic { .. } if cleaned => "chronic-cleaned",
        Lesion::Chronic { .. } => "chronic-left",
        Lesion::Abscess { .. } | Lesion::Spreading { .. } => "pus",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn graft_into_pus_is_likely_to_compromise_even_when_cleaned() {
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Abscess { diameter: Mm::new(4.0) };
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn a_chronic_lesion_may_be_grafted_once_it_is_cleaned_out() {
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Chronic { diameter: Mm::new(4.0) };
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Chronic { diameter: Mm::new(4.0) };
        trial.keys(&[("debridement", "rinse")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn an_infected_socket_left_empty_is_ideal_and_a_quiet_one_is_not_judged() {
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Abscess { diameter: Mm::new(4.0) };
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
