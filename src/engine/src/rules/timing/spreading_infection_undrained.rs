//! Spreading infection is drained or goes to hospital the same day.

use crate::anatomy::Lesion;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "spreading-infection-undrained",
    ledger: "iip-acute-infection",
    family: Family::Timing,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!("Drain a spreading infection, or send the patient to hospital the same day."),
    why: long!(
        "Pus that spreads can close the airway within hours. Antibiotics alone do not empty it."
    ),
    mend: long!("Drain today and refer to hospital the same day."),
    scale: Scale::Situations(&[
        when(
            "drained-and-referred",
            "the infection is drained and the patient goes to hospital the same day",
            Zone::Ideal,
        ),
        when("hospital-the-same-day", "the patient goes to hospital the same day", Zone::Ideal),
        when(
            "drained-and-seen-soon",
            "the infection is drained and the patient is seen within two days",
            Zone::Acceptable,
        ),
        when(
            "extracted-and-physician-told",
            "taking the tooth out drains it and a physician is told",
            Zone::Acceptable,
        ),
        when(
            "drained-and-nobody-told",
            "the infection is drained, but no hospital or physician hears of it and nobody looks at it within two days",
            Zone::Compromising,
        ),
        when(
            "neither-drained-nor-referred",
            "spreading infection is neither drained nor sent to hospital the same day",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Advices,
        Decision::Course,
        Decision::Today,
        Decision::ByWhen,
        Decision::ReferTo,
    ],
    rests_on: &[Fact::AcuteInfection],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Textbook teaching on the immediate implant in an extraction socket",
            "acute suppuration, cellulitis or systemic signs: no implant; drain or extract, debride, review; spreading infection also needs medical referral",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "Tonetti 2019, extraction socket and timing of implant placement, J Clin Periodontol",
            "infection and an implant that cannot gain stability are the first considerations against placing on the day",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Textbook case of an infected implant site",
            "drained and the implant removed, the infection settled within 24 hours",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !matches!(judging.case.site.lesion, Lesion::Spreading { .. }) {
        return None;
    }
    let intention = judging.plan.intention.as_ref()?;
    let Some(today) = &intention.today else {
        let told = judging.plan.chart.as_ref()?.advice.has(c::Advice::PhysicianLetter);
        return situation(if told {
            "extracted-and-physician-told"
        } else {
            "drained-and-nobody-told"
        });
    };
    let drained = today.acts.has(c::TodayAct::Drain) || today.acts.has(c::TodayAct::Extract);
    let hospital = today.refer_to == Some(c::ReferTo::Hospital);
    let soon = matches!(today.by_when, c::ByWhen::SameDay | c::ByWhen::TwoDays);
    situation(match (drained, hospital) {
        (true, true) => "drained-and-referred",
        (false, true) => "hospital-the-same-day",
        (true, false) if soon => "drained-and-seen-soon",
        (true, false) => "drained-and-nobody-told",
        (false, false) => "neither-drained-nor-referred",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn spreading(acts: &str, refer_to: &str, by_when: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Spreading { diameter: Mm::new(5.0) };
        trial.course("refer").keys(&[
            ("today", acts),
            ("refer-to", refer_to),
            ("by-when", by_when),
        ]);
        trial.zone(&RULE)
    }

    #[test]
    fn an_antibiotic_alone_neither_drains_nor_refers() {
        assert_eq!(spreading("antibiotic-for-spread", "specialist", "week"), Some(Zone::Unsafe));
    }

    #[test]
    fn hospital_the_same_day_is_enough_and_draining_is_when_seen_soon() {
        assert_eq!(spreading("relieve-pain", "hospital", "same-day"), Some(Zone::Ideal));
        assert_eq!(spreading("drain", "nobody", "two-days"), Some(Zone::Acceptable));
        assert_eq!(spreading("drain", "nobody", "week"), Some(Zone::Compromising));
    }

    #[test]
    fn without_spread_the_rule_is_silent() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
