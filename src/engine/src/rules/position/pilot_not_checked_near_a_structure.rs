//! No film with the pilot drill in place although something must not be hit.

use crate::rules::prelude::*;
use crate::units::{Mm, comparable};

/// Take a film with the pilot drill in place when a nerve, a floor or a root is near.
pub(super) static RULE: Rule = Rule {
    id: "pilot-not-checked-near-a-structure",
    ledger: "pos-ian-canal",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Take a film with the pilot drill in place when a nerve, a floor or a root is near."
    ),
    why: long!(
        "At the pilot you can still change depth and angle; after the last drill they are set."
    ),
    mend: long!("Stop at the pilot and take the check film."),
    scale: Scale::Situations(&[
        when(
            "checked",
            "a film with the pilot drill shows depth and angle near the structure",
            Zone::Ideal,
        ),
        when(
            "unchecked-floor",
            "no film is taken with the pilot drill although a floor or a canal of the palate is near",
            Zone::Suboptimal,
        ),
        when(
            "unchecked-nerve",
            "no film is taken with the pilot drill although a nerve is near",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::PilotFilm, Decision::Length, Decision::Depth, Decision::Tilt],
    rests_on: &[],
    causes: &[Cause::ImplantTooDeep],
    evidence: &[
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Greenstein, Cavallaro and Tarnow 2008, practical anatomy, J Periodontol",
            "2 mm stay between implant and canal, and the error of measuring and the drill past its mark come on top.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "film after the early steps",
            "A pilot drill for angle and depth comes first, and a film is taken after the early steps and after seating.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "what counts as near",
            "Near means that the drill ends within 4 mm of the structure.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let done = j.plan.implant.as_ref()?;
    let near = |distance: Option<Mm>| {
        distance.is_some_and(|mm| comparable(mm.get()) <= ask::NEAR_A_STRUCTURE)
    };
    let nerve = near(j.m.to_canal()) || near(j.m.to_foramen());
    let floor = near(j.m.to_floor()) || near(j.m.to_nasopalatine());
    situation(nerve, floor, done.pilot_film)
}

fn situation(nerve: bool, floor: bool, film: bool) -> Option<Reading> {
    Some(Reading::Situation(match (nerve, floor, film) {
        (false, false, _) => return None,
        (_, _, true) => "checked",
        (true, _, false) => "unchecked-nerve",
        (false, true, false) => "unchecked-floor",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, FloorKind};
    use crate::rules::trial::Trial;

    #[test]
    fn a_nerve_nearby_weighs_more_than_a_floor() {
        let zone = |nerve, floor, film| {
            situation(nerve, floor, film).and_then(|reading| RULE.zone_of(reading))
        };
        assert_eq!(zone(true, true, false), Some(Zone::Compromising));
        assert_eq!(zone(false, true, false), Some(Zone::Suboptimal));
        assert_eq!(zone(true, false, true), Some(Zone::Ideal));
        assert_eq!(zone(false, false, false), None);
    }

    #[test]
    fn a_floor_within_four_millimetres_of_the_apex_asks_for_the_film() {
        let mut trial = Trial::plain();
        trial.keys(&[("pilot-film", "no")]);
        let mut zone = |level| {
            let z = Mm::new(level);
            trial.case.site.vital.floor = Some(Floor { kind: FloorKind::Nose, z, rise: 0.0 });
            trial.zone(&RULE)
        };
        assert_eq!(zone(16.0), Some(Zone::Suboptimal));
        assert_eq!(zone(25.0), None);
    }
}
