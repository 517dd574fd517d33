//! Membrane: draw a folded membrane long enough to lie on oral bone.

use crate::rules::prelude::*;
use crate::units::comparable;

pub(super) static RULE: Rule = Rule {
    id: "folded-without-oral-seat",
    ledger: "membrane-margin",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Draw a folded membrane long enough to lie on oral bone."),
    why: long!(
        "A fold that ends over the socket has no bone to lie on, so it sinks in and leaves the oral side open."
    ),
    mend: long!(
        "Carry the outline across the socket and past the oral crest, or leave the membrane on its wall."
    ),
    scale: Scale::Situations(&[
        when("seated", "the folded membrane reaches oral bone", Zone::Ideal),
        when(
            "hanging",
            "the membrane is folded over and ends before it reaches oral bone",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Membrane, Decision::MembraneOutline, Decision::Fold, Decision::SocketSeal],
    rests_on: &[],
    causes: &[Cause::MembraneTooSmall],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "membrane on oral bone",
            "A membrane that crosses the crest engages oral bone.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "native bilayer membrane in ridge preservation, trial protocol",
            "The membrane reaches 2 to 3 mm past the rim of the socket.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.membrane()?.fold == c::Fold::FacialOnly {
        return None;
    }
    let oral = j.m.membrane_margin()?.oral;
    let seated = oral.is_some_and(|margin| comparable(margin.get()) > 0.0);
    situation(if seated { "seated" } else { "hanging" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;

    #[test]
    fn a_membrane_that_stays_on_its_wall_needs_no_oral_seat() {
        let mut trial = repaired();
        trial.keys(&[("fold", "facial-only")]);
        assert_eq!(trial.zone(&RULE), None);
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn a_fold_that_ends_at_the_oral_crest_hangs() {
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -60], [50, -60], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -84], [50, -84], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.outline(Decision::MembraneOutline, &[[-50, -85], [50, -85], [50, 95], [-50, 95]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
