//! Look after a narrow band of attached tissue at uncovering.

use crate::rules::prelude::*;
use crate::units::comparable;

pub(super) static RULE: Rule = Rule {
    id: "narrow-band-punched-away",
    ledger: "iip-soft-tissue-phenotype",
    family: Family::Closure,
    step: Step::Uncovering,
    skill: Skill::FollowingUp,
    statement: long!(
        "Keep or widen a narrow band of attached tissue when you uncover the implant."
    ),
    why: long!("A punch takes the very tissue that the patient cleans against."),
    mend: long!("Move the band facially or graft soft tissue."),
    scale: Scale::Situations(&[
        when("kept", "the band is wide enough, or was moved or grafted", Zone::Ideal),
        when("wide-punched", "a wide band was punched through", Zone::Acceptable),
        when("narrow-split", "a band under 2 mm was cut in half", Zone::Debated),
        when("narrow-punched", "a band under 2 mm was punched out", Zone::Suboptimal),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("2 mm of keratinised tissue are wanted around an implant."),
        other: long!(
            "A clean patient does well with less; whether a minimum is needed is debated."
        ),
    }),
    reads: &[Decision::BandCare],
    rests_on: &[Fact::GumMargin],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "reviews of keratinised width and disease around implants",
            "2 mm is the cut-off that they use.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "hand-over to the restoration",
            "A firm band of attached tissue.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::BandCare as Of;
    let narrow = comparable(j.case.site.soft.keratinised.get()) < 2.0;
    situation(match (j.plan.later.uncovering.as_ref()?.band, narrow) {
        (Of::Moved | Of::Grafted, _) | (Of::Split, false) => "kept",
        (Of::Punch, false) => "wide-punched",
        (Of::Split, true) => "narrow-split",
        (Of::Punch, true) => "narrow-punched",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn two_millimetres_part_a_narrow_band_from_a_wide_one() {
        for (width, care, zone) in [
            (1.999, "punch", Zone::Suboptimal),
            (2.0, "punch", Zone::Acceptable),
            (2.001, "punch", Zone::Acceptable),
            (1.999, "split", Zone::Debated),
            (2.0, "split", Zone::Ideal),
            (1.999, "moved", Zone::Ideal),
            (1.999, "grafted", Zone::Ideal),
        ] {
            let mut trial = Trial::plain();
            trial.case.site.soft.keratinised = Mm::new(width);
            trial.keys(&[("component", "cover-screw"), ("band-care", care)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{width} {care}");
        }
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
