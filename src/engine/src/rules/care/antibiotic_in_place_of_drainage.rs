//! An antibiotic does not take the place of drainage.

use crate::anatomy::Lesion;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "antibiotic-in-place-of-drainage",
    ledger: "care-disease-today",
    family: Family::Care,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!(
        "Give an antibiotic for spreading or systemic signs only, and beside drainage, not in its place."
    ),
    why: long!(
        "The drug does not reach a closed pocket of pus. Given for nothing, it costs everybody."
    ),
    mend: long!("Drain or extract, and keep the antibiotic for spread."),
    scale: Scale::Situations(&[
        when(
            "with-drainage",
            "infection is spreading, and the antibiotic goes with drainage or hospital",
            Zone::Ideal,
        ),
        when(
            "without-need",
            "an antibiotic is given without spreading or systemic signs",
            Zone::Suboptimal,
        ),
        when("in-its-place", "an antibiotic is given in the place of drainage", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::Today, Decision::ReferTo],
    rests_on: &[Fact::AcuteInfection],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Textbook teaching on the immediate implant in an extraction socket",
            "pus: drain or extract, debride, review",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Greenstein & Tarnow 2020, Compendium",
            "antibiotics around implants are controversial; stewardship keeps them for need",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    let today = plan.intention.as_ref()?.today.as_ref()?;
    if !today.acts.has(c::TodayAct::AntibioticForSpread) {
        return None;
    }
    let opened = today.acts.has(c::TodayAct::Drain)
        || today.acts.has(c::TodayAct::Extract)
        || today.refer_to == Some(c::ReferTo::Hospital);
    situation(match (&case.site.lesion, opened) {
        (Lesion::Spreading { .. }, true) => "with-drainage",
        (Lesion::Spreading { .. } | Lesion::Abscess { .. }, false) => "in-its-place",
        _ => "without-need",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn given(lesion: Lesion, acts: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.site.lesion = lesion;
        trial.course("postpone").keys(&[("today", acts)]);
        trial.zone(&RULE)
    }

    #[test]
    fn only_spread_with_drainage_deserves_it() {
        let diameter = Mm::new(4.0);
        let spreading = || Lesion::Spreading { diameter };
        assert_eq!(given(spreading(), "drain antibiotic-for-spread"), Some(Zone::Ideal));
        assert_eq!(given(spreading(), "antibiotic-for-spread"), Some(Zone::Compromising));
        assert_eq!(
            given(Lesion::Abscess { diameter }, "antibiotic-for-spread"),
            Some(Zone::Compromising)
        );
        assert_eq!(
            given(Lesion::Abscess { diameter }, "drain antibiotic-for-spread"),
            Some(Zone::Suboptimal)
        );
        assert_eq!(given(Lesion::None, "antibiotic-for-spread"), Some(Zone::Suboptimal));
        assert_eq!(given(Lesion::None, "relieve-pain"), None);
    }
}
