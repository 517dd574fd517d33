//! Postponing the implant never postpones the disease.

use crate::anatomy::Lesion;
use crate::chart::Complaint;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "disease-left-today",
    ledger: "care-disease-today",
    family: Family::Care,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!("Treat pain and pus today, whatever becomes of the implant."),
    why: long!("You put off the operation; the abscess does not put itself off."),
    mend: long!("Drain or extract where there is pus, relieve pain where it hurts."),
    scale: Scale::Situations(&[
        when("treated", "the disease is treated today", Zone::Ideal),
        when(
            "pain-left",
            "the implant is put off and pain or disease is left as it is",
            Zone::Suboptimal,
        ),
        when("pus-left", "the implant is put off and pus is left where it is", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::Today, Decision::ReferTo],
    rests_on: &[Fact::AcuteInfection, Fact::ApicalLesion],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Textbook teaching on the immediate implant in an extraction socket",
            "pus: drain or extract, debride, review",
        ),
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "\"Is Oral Surgery Safe During Pregnancy?\"",
            "pain and infection are treated even where elective care waits",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    let today = plan.intention.as_ref()?.today.as_ref()?;
    let acts = today.acts;
    let opened = acts.has(c::TodayAct::Drain) || acts.has(c::TodayAct::Extract);
    let sent_at_once = today.refer_to == Some(c::ReferTo::Hospital);
    let eased = opened || acts.has(c::TodayAct::RelievePain);
    let aches = matches!(
        case.patient.complaint,
        Complaint::RootFracture
            | Complaint::EndodonticFailure
            | Complaint::Caries
            | Complaint::Trauma
    );
    situation(match case.site.lesion {
        // Spreading infection has a rule of its own.
        Lesion::Spreading { .. } => return None,
        Lesion::Abscess { .. } if opened || sent_at_once => "treated",
        Lesion::Abscess { .. } => "pus-left",
        Lesion::None if !aches => return None,
        _ if eased || sent_at_once => "treated",
        _ => "pain-left",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn put_off(lesion: Lesion, acts: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.site.lesion = lesion;
        trial.course("postpone").keys(&[("today", acts)]);
        trial.zone(&RULE)
    }

    #[test]
    fn pus_is_let_out_and_relief_alone_is_not_enough() {
        let abscess = || Lesion::Abscess { diameter: Mm::new(4.0) };
        assert_eq!(put_off(abscess(), "relieve-pain"), Some(Zone::Compromising));
        assert_eq!(put_off(abscess(), "drain"), Some(Zone::Ideal));
        assert_eq!(put_off(abscess(), "extract relieve-pain"), Some(Zone::Ideal));
    }

    #[test]
    fn a_chronic_lesion_asks_for_relief_and_a_quiet_site_for_nothing() {
        assert_eq!(
            put_off(Lesion::Chronic { diameter: Mm::new(4.0) }, "nothing"),
            Some(Zone::Suboptimal)
        );
        assert_eq!(
            put_off(Lesion::Chronic { diameter: Mm::new(4.0) }, "relieve-pain"),
            Some(Zone::Ideal)
        );
        assert_eq!(put_off(Lesion::None, "nothing"), None);
    }
}
