//! No implant into acute infection.

use crate::anatomy::Lesion;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "placed-on-acute-infection",
    ledger: "iip-acute-infection",
    family: Family::Timing,
    step: Step::Implant,
    skill: Skill::Course,
    statement: long!("Place no implant today where there is pus, spreading swelling or fever."),
    why: long!(
        "A socket that drains pus feeds the implant surface with it. Four to eight weeks later the same site is clean."
    ),
    mend: long!(
        "Drain or extract, clean the socket and plan the implant for four to eight weeks later."
    ),
    scale: Scale::Situations(&[
        when("not-placed", "no implant was placed into the acute infection", Zone::Ideal),
        when(
            "placed-on-local-pus",
            "an implant was placed into a socket with pus",
            Zone::Compromising,
        ),
        when(
            "placed-on-spreading-infection",
            "an implant was placed while infection was spreading",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::AfterExtraction, Decision::AfterFlap, Decision::Diameter],
    rests_on: &[Fact::AcuteInfection],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Textbook teaching on the immediate implant in an extraction socket",
            "pus, spreading swelling or fever: postpone",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "Tonetti 2019, extraction socket and timing of implant placement, J Clin Periodontol",
            "infection and an implant that cannot gain stability are the first considerations against placing on the day",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "textbook teaching on the interval",
            "the site is commonly planned again at 4 to 8 weeks",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let lesion = &judging.case.site.lesion;
    if !ask::is_acute(lesion) {
        return None;
    }
    situation(match (ask::placed(judging.plan)?, lesion) {
        (false, _) => "not-placed",
        (true, Lesion::Spreading { .. }) => "placed-on-spreading-infection",
        (true, _) => "placed-on-local-pus",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn infected(lesion: Lesion) -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.lesion = lesion;
        trial
    }

    #[test]
    fn pus_at_the_site_compromises_and_spread_is_unsafe() {
        let diameter = Mm::new(4.0);
        assert_eq!(infected(Lesion::Abscess { diameter }).zone(&RULE), Some(Zone::Compromising));
        assert_eq!(infected(Lesion::Spreading { diameter }).zone(&RULE), Some(Zone::Unsafe));
    }

    #[test]
    fn waiting_with_the_implant_keeps_the_rule() {
        let mut trial = infected(Lesion::Abscess { diameter: Mm::new(4.0) });
        trial.course("return-early");
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_chronic_lesion_is_another_rules_business() {
        assert_eq!(infected(Lesion::Chronic { diameter: Mm::new(4.0) }).zone(&RULE), None);
    }
}
