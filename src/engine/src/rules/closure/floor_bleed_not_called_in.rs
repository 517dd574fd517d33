//! Closure and follow-up: a floor of the mouth that swells is an emergency, and the airway comes first.

use crate::plan::choices::FloorRescue;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "floor-bleed-not-called-in",
    ledger: "rescue-floor-of-mouth-bleed",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!(
        "When the floor of the mouth swells, sit the patient up, press it from both sides and call an ambulance: the airway comes first."
    ),
    why: long!(
        "An artery bleeds where no pack reaches it, and the tongue is pushed up until your patient cannot breathe."
    ),
    mend: long!("Call first, press from both sides, and never leave the patient."),
    scale: Scale::Situations(&[
        when(
            "called-in",
            "the swelling was pressed from both sides and an ambulance was called",
            Zone::Ideal,
        ),
        when(
            "watched",
            "the swelling was pressed and watched, and nobody was called",
            Zone::Unsafe,
        ),
        when(
            "sent-home",
            "the patient was sent home with a swelling floor of the mouth",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::SwollenFloor],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Law 2017, floor-of-mouth haematoma review, J Oral Maxillofac Surg",
            "Of 25 cases 68 % needed the airway secured and 72 % surgery in hospital.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Limongelli 2015, haematoma after flapless surgery",
            "25 minutes of bimanual pressure stopped one case.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.rescue.floor? {
        FloorRescue::PressAndCall => "called-in",
        FloorRescue::PressAndWatch => "watched",
        FloorRescue::PackAndSendHome => "sent-home",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Case;
    use crate::events::floor_in;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::Trial;

    /// A lower site drilled through its lingual face.
    fn perforated() -> Trial {
        let mut trial = lower(Trial::plain());
        for knot in &mut trial.case.site.ridge.oral.knots {
            knot.y = -5.2;
        }
        trial.number(Decision::Tilt, -30);
        trial
    }

    #[test]
    fn whoever_swells_is_pressed_and_called_in() {
        let mut trial = perforated();
        let cases = || (0..1000).map(|n| Case { title: n.to_string(), ..perforated().case });
        trial.case = cases().find(|case| !floor_in(&trial.draft, case)).unwrap();
        assert_eq!(trial.zone(&RULE), None);
        trial.case = cases().find(|case| floor_in(&trial.draft, case)).unwrap();
        for (answer, zone) in [
            ("press-and-call", Zone::Ideal),
            ("press-and-watch", Zone::Unsafe),
            ("pack-and-send-home", Zone::Unsafe),
        ] {
            trial.keys(&[("swollen-floor", answer)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{answer}");
        }
    }

    #[test]
    fn an_upper_site_never_asks() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
