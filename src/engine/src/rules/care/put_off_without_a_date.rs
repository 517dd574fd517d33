//! Who is put off is seen again by a date.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "put-off-without-a-date",
    ledger: "care-disease-today",
    family: Family::Care,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!(
        "Give every patient that you put off a date, and a near one where there is disease."
    ),
    why: long!("Without a date nobody looks, and the disease chooses when."),
    mend: long!("Set when the patient is seen again."),
    scale: Scale::Situations(&[
        when("dated", "the patient is seen again in good time", Zone::Ideal),
        when("too-late", "pus is seen again later than a week from now", Zone::Suboptimal),
        when("no-date", "the patient is put off without a date", Zone::Suboptimal),
        when(
            "no-date-with-disease",
            "the patient is put off with pus and without a date",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::ByWhen],
    rests_on: &[Fact::AcuteInfection],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Textbook teaching on the immediate implant in an extraction socket",
            "pus: drain or extract, debride and review",
        ),
        says(Source::Ours, Status::Ours, "this project", "a week for pus; a date for everybody"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    let intention = plan.intention.as_ref()?;
    let today = intention.today.as_ref()?;
    if intention.course == c::Course::KeepTooth {
        return None;
    }
    let acute = ask::is_acute(&case.site.lesion);
    let soon = matches!(today.by_when, c::ByWhen::SameDay | c::ByWhen::TwoDays | c::ByWhen::Week);
    situation(match today.by_when {
        c::ByWhen::NotSet if acute => "no-date-with-disease",
        c::ByWhen::NotSet => "no-date",
        _ if acute && !soon => "too-late",
        _ => "dated",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Lesion;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn seen(lesion: Lesion, by_when: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.site.lesion = lesion;
        trial.course("postpone").keys(&[("by-when", by_when)]);
        trial.zone(&RULE)
    }

    #[test]
    fn pus_is_seen_within_a_week_and_everybody_has_a_date() {
        let abscess = || Lesion::Abscess { diameter: Mm::new(4.0) };
        assert_eq!(seen(abscess(), "week"), Some(Zone::Ideal));
        assert_eq!(seen(abscess(), "four-to-eight-weeks"), Some(Zone::Suboptimal));
        assert_eq!(seen(abscess(), "not-set"), Some(Zone::Compromising));
        assert_eq!(seen(Lesion::None, "not-set"), Some(Zone::Suboptimal));
        assert_eq!(seen(Lesion::None, "when-controlled"), Some(Zone::Ideal));
    }
}
