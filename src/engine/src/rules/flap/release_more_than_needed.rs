//! Flap: prefer an envelope; add one release, then two, only as advancement demands.

use crate::plan::Releases;
use crate::rules::prelude::*;
use crate::rules::regeneration;
use crate::units::comparable;

pub(super) static RULE: Rule = Rule {
    id: "release-more-than-needed",
    ledger: "flap-type-choice",
    family: Family::Flap,
    step: Step::Closure,
    skill: Skill::FlapDesign,
    statement: long!("Prefer an envelope; add one release, then two, only as advancement demands."),
    why: long!(
        "Each vertical cut costs blood supply and leaves a scar, and without a periosteal release it gains you hardly any reach."
    ),
    mend: long!("Take the smaller flap, or release the periosteum for reach."),
    scale: Scale::Situations(&[
        when("envelope", "the flap has no vertical release", Zone::Ideal),
        when(
            "needed",
            "the flap has to travel further than an unreleased one reaches, or the wall is lost",
            Zone::Ideal,
        ),
        when("one-for-exposure", "one release gives sight of a defect", Zone::Acceptable),
        when(
            "two-for-exposure",
            "two releases were cut though little advancement is asked for",
            Zone::Suboptimal,
        ),
        when(
            "no-defect",
            "the walls are whole, little advancement is asked for, and the flap has releases",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::FlapDesign,
        Decision::Component,
        Decision::GraftMaterial,
        Decision::FillLevel,
        Decision::ContourLayer,
        Decision::Closure,
    ],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::Laboratory,
        Status::Confirmed,
        "Traboulsi-Garet 2021, flap advancement, J Oral Implantol",
        "Without periosteal release any design advances about 5.14 mm; with it 7.37 mm, the trapezoid most.",
    )],
    measure,
};

/// Millimetres that any flap advances without a periosteal release.
const REACH: f64 = 5.14;

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let closure = j.plan.closure.as_ref()?;
    let releases = j.plan.raised()?.releases;
    let far = match closure.kind {
        c::ClosureKind::Primary => comparable(j.m.advancement_needed()?.get()) > REACH,
        c::ClosureKind::LeftOpen => false,
    };
    let needed = far || !regeneration::is_contained(j.case);
    let defect = regeneration::has_wall_defect(j.case);
    Some(Reading::Situation(match releases {
        Releases::None => "envelope",
        _ if needed => "needed",
        _ if !defect => "no-defect",
        Releases::One(_) => "one-for-exposure",
        Releases::Two => "two-for-exposure",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::repaired;

    #[test]
    fn an_envelope_is_never_too_much() {
        let mut trial = repaired();
        trial.keys(&[("flap-design", "envelope"), ("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn for_exposure_alone_one_release_is_acceptable_and_two_are_not() {
        let mut trial = repaired();
        trial.keys(&[
            ("flap-design", "triangular"),
            ("release-side", "distal"),
            ("closure", "open"),
        ]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.keys(&[("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn a_lost_wall_needs_them() {
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn over_whole_walls_a_release_has_no_reason() {
        let mut trial = repaired();
        trial.case.site.defects.clear();
        trial.keys(&[("closure", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn closing_across_the_socket_needs_them_and_closing_around_an_abutment_does_not() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("component", "healing-abutment"), ("fold", "punched-around")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
