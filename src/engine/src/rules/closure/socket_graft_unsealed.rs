//! Closure and follow-up: cover a grafted socket; it needs a seal, not full closure.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "socket-graft-unsealed",
    ledger: "close-open-v-primary-arp",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Cover a grafted socket; it needs a seal, not full closure."),
    why: long!(
        "Without a cover your grains wash out, and pulling the gum over them moves the mucogingival line."
    ),
    mend: long!("Seal the socket with a plug, a soft-tissue graft or a membrane."),
    scale: Scale::Situations(&[
        when(
            "sealed",
            "the graft lies under a plug, a soft-tissue graft or a membrane, the edges left apart",
            Zone::Ideal,
        ),
        when("advanced", "the gum was advanced over the grafted socket", Zone::Debated),
        when("unsealed", "the graft lies open to the mouth", Zone::Suboptimal),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("Leave the edges apart over a seal."),
        other: long!("Close the gum over the graft."),
    }),
    reads: &[
        Decision::GraftMaterial,
        Decision::Membrane,
        Decision::Fold,
        Decision::SocketSeal,
        Decision::Closure,
    ],
    rests_on: &[],
    causes: &[Cause::DefectLeftOpen],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Bassir 2018, ridge preservation, IJOMI",
            "The kind of closure changed the effect (P = 0.033).",
        ),
        says(
            Source::Trial,
            Status::FromMemory,
            "Engler-Hamm 2011, closure in ridge preservation, J Periodontol",
            "Open healing is accepted; advancement moves the mucogingival line by about 3 to 4 mm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let closure = j.plan.closure.as_ref()?;
    let laid = j.plan.graft.as_ref()?;
    if !regeneration::is_preservation(j.plan) {
        return None;
    }
    let covering = laid.membrane.as_ref().is_some_and(|it| it.fold != c::Fold::FacialOnly);
    let sealed =
        covering || matches!(laid.seal, Some(c::SocketSeal::Plug | c::SocketSeal::SoftTissueSeal));
    situation(match (closure.kind, sealed) {
        (c::ClosureKind::Primary, _) => "advanced",
        (c::ClosureKind::LeftOpen, true) => "sealed",
        (c::ClosureKind::LeftOpen, false) => "unsealed",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::preserved;
    use crate::rules::trial::Trial;

    #[test]
    fn a_plug_or_a_soft_tissue_seal_is_enough() {
        assert_eq!(preserved().zone(&RULE), Some(Zone::Ideal));
        let mut trial = preserved();
        trial.keys(&[("socket-seal", "soft-tissue")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = preserved();
        trial.keys(&[("socket-seal", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn a_membrane_seals_only_when_it_is_there_and_folded_over() {
        let mut trial = preserved();
        trial.keys(&[("socket-seal", "membrane")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn full_closure_is_debated() {
        let mut trial = preserved();
        trial.keys(&[("closure", "primary")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = preserved();
        trial.keys(&[("closure", "primary"), ("socket-seal", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }

    #[test]
    fn beside_an_implant_there_is_no_socket_to_seal() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
