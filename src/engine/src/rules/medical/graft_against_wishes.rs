//! No graft or membrane of an origin that the patient refuses.

use crate::chart::GraftView;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "graft-against-wishes",
    ledger: "graft-origin-consent",
    family: Family::Medical,
    step: Step::Graft,
    skill: Skill::Patient,
    statement: long!("Lay nothing of an origin that the patient refuses."),
    why: long!(
        "The patient said no. For some it is faith, for some it is fear, and neither is yours to weigh."
    ),
    mend: long!(
        "Choose the patient's own bone, a synthetic or a material that the patient accepts."
    ),
    scale: Scale::Situations(&[
        when("respected", "nothing of a refused origin was laid", Zone::Ideal),
        when(
            "against-wishes",
            "material of an origin that the patient refuses was laid",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::Membrane, Decision::SocketSeal],
    rests_on: &[Fact::GraftViews],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "habit of the trade",
            "ask about human and animal origin before choosing",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "a refusal is not weighed against benefit",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let view = judging.case.patient.graft_view;
    let laid = judging.plan.graft.as_ref()?;
    let material = laid.graft.as_ref().map(|graft| graft.material);
    let human = material.is_some_and(|material| {
        matches!(
            material,
            c::GraftMaterial::MineralisedAllograft
                | c::GraftMaterial::DemineralisedAllograft
                | c::GraftMaterial::AllograftBlend
        )
    });
    let animal = material == Some(c::GraftMaterial::Xenograft) || ask::lays_collagen(laid);
    let refused = match view {
        GraftView::Any => return None,
        GraftView::NoHuman => human,
        GraftView::NoAnimal => animal,
        GraftView::OwnOrSynthetic => human || animal,
    };
    situation(if refused { "against-wishes" } else { "respected" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn laid(view: GraftView, material: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.patient.graft_view = view;
        trial.keys(&[("graft-material", material)]);
        trial.zone(&RULE)
    }

    #[test]
    fn each_refusal_bars_its_origin_and_no_other() {
        assert_eq!(laid(GraftView::NoHuman, "allograft-blend"), Some(Zone::Unsafe));
        assert_eq!(laid(GraftView::NoHuman, "xenograft"), Some(Zone::Ideal));
        assert_eq!(laid(GraftView::NoAnimal, "xenograft"), Some(Zone::Unsafe));
        assert_eq!(laid(GraftView::NoAnimal, "mineralised-allograft"), Some(Zone::Ideal));
        assert_eq!(laid(GraftView::OwnOrSynthetic, "xenograft"), Some(Zone::Unsafe));
        assert_eq!(laid(GraftView::OwnOrSynthetic, "synthetic"), Some(Zone::Ideal));
        assert_eq!(laid(GraftView::Any, "xenograft"), None);
    }

    #[test]
    fn a_collagen_plug_is_of_animal_origin_too() {
        let mut trial = Trial::plain();
        trial.case.patient.graft_view = GraftView::NoAnimal;
        trial.course("graft-and-return").keys(&[("graft-material", "synthetic")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.keys(&[("socket-seal", "soft-tissue")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
