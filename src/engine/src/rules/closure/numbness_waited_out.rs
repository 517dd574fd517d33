//! Closure and follow-up: act on the day on a lip that stays numb.

use crate::plan::choices::NerveRescue;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "numbness-waited-out",
    ledger: "rescue-nerve",
    family: Family::Closure,
    step: Step::Review,
    skill: Skill::FollowingUp,
    statement: long!(
        "Image a lip that stays numb on the same day, back the implant off or take it out, and refer."
    ),
    why: long!(
        "A nerve that is pressed on may recover within about a day of relief, and hardly later."
    ),
    mend: long!("Bring the patient in today."),
    scale: Scale::Situations(&[
        when("same-day", "the nerve was relieved on the day", Zone::Ideal),
        when("drugs-only", "the numb lip was given drugs and a week", Zone::Unsafe),
        when("waited", "the numb lip was left to the next review", Zone::Unsafe),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::NumbLip],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Implant-induced inferior alveolar nerve neuropathy (Renton)",
            "Removal within 30 hours; the evidence is called weak.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Juodzbalys 2011, COIR",
            "Early treatment fares better.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Shavit 2014",
            "Early treatment fares better.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.rescue.nerve? {
        NerveRescue::SameDay => "same-day",
        NerveRescue::Drugs => "drugs-only",
        NerveRescue::Wait => "waited",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Tube;
    use crate::chart::Case;
    use crate::events::numbness_in;
    use crate::geometry::P3;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    /// A lower site with a canal at this level under the implant, and its case `n`.
    fn over_a_canal(z: f64, n: u32) -> Trial {
        let mut trial = lower(Trial::plain());
        let (from, to) = (P3::new(-20.0, -3.0, z), P3::new(20.0, -3.0, z));
        trial.case.site.vital.canal = Some(Tube { from, to, radius: Mm::new(1.5) });
        trial.case = Case { title: n.to_string(), ..trial.case };
        trial
    }

    #[test]
    fn a_numb_lip_is_seen_to_on_the_day() {
        let numb = |n: &u32| {
            let trial = over_a_canal(14.0, *n);
            numbness_in(&trial.draft, &trial.case)
        };
        let mut trial = over_a_canal(14.0, (0..200).find(numb).unwrap());
        for (answer, zone) in
            [("same-day", Zone::Ideal), ("drugs", Zone::Unsafe), ("wait", Zone::Unsafe)]
        {
            trial.keys(&[("numb-lip", answer)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{answer}");
        }
    }

    #[test]
    fn nine_of_ten_in_the_canal_and_next_to_none_far_from_it() {
        let count = |z: f64| {
            let numb = |n: &u32| {
                let trial = over_a_canal(z, *n);
                numbness_in(&trial.draft, &trial.case)
            };
            (0..100).filter(numb).count()
        };
        assert!(count(14.0) > 75, "{}", count(14.0));
        assert!(count(30.0) < 6, "{}", count(30.0));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
