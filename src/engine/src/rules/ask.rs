//! Questions that several rules ask of a case and a plan.

use crate::anatomy::{DefectKind, Kind, Lesion, Wall};
use crate::chart::{Anticoagulant, Antiresorptive, Case, Patient, RecentEvent};
use crate::measure::Measurements;
use crate::plan::choices::{Course, MembraneKind, SocketSeal, TissueGraft, TodayAct};
use crate::plan::{GraftAndMembrane, Implant, Plan};
use crate::rules::Judging;
use crate::units::Mm;

/// Millimetres along the oral wall that count as one beyond the apex, where hold is judged [ours].
pub(crate) const ORAL_FOR_ONE: f64 = 2.0;

/// How close counts as near: twice what is to stay between drill and nerve.
pub(crate) const NEAR_A_STRUCTURE: f64 = 4.0;

/// Whether the first intention takes the tooth out; `None` before there is one.
pub(super) fn tooth_comes_out(plan: &Plan) -> Option<bool> {
    let intention = plan.intention.as_ref()?;
    Some(match intention.course {
        Course::KeepTooth => false,
        Course::SecondOpinion | Course::Postpone | Course::Refer => {
            intention.today.as_ref().is_some_and(|today| today.acts.has(TodayAct::Extract))
        }
        _ => true,
    })
}

/// Whether the first intention is elective surgery: an implant or a graft beside the extraction.
/// Taking out a diseased tooth is not elective. `None` before there is an intention.
pub(super) fn is_elective(plan: &Plan) -> Option<bool> {
    Some(goes_beyond_extraction(plan.intention.as_ref()?.course))
}

/// Whether this course adds an implant or a graft to the extraction today.
pub(crate) const fn goes_beyond_extraction(course: Course) -> bool {
    matches!(course, Course::PlaceToday | Course::GraftAndReturn)
}

/// Whether an implant was placed today, whatever became of it; `None` while it is still to come.
pub(super) fn placed(plan: &Plan) -> Option<bool> {
    if plan.implant.is_some() {
        return Some(true);
    }
    match plan.course()? {
        Course::PlaceToday if plan.returns.is_none() => None,
        _ => Some(false),
    }
}

/// The widest facial defect that reaches the crest; a fenestration does not.
pub(crate) fn dehiscence(case: &Case) -> Option<DefectKind> {
    case.site
        .defects_of(Wall::Facial)
        .map(|defect| defect.kind)
        .filter(|kind| *kind != DefectKind::Fenestration)
        .max()
}

/// Whether there is pus or worse.
pub(crate) const fn is_acute(lesion: &Lesion) -> bool {
    matches!(lesion, Lesion::Abscess { .. } | Lesion::Spreading { .. })
}

/// Whether a layer of graft lies on the outside of the facial wall.
pub(super) fn has_contour_layer(plan: &Plan) -> bool {
    plan.graft_laid().and_then(|graft| graft.contour).is_some_and(|layer| layer.get() > 0.0)
}

/// Whether a connective tissue graft was laid today.
pub(super) fn has_tissue_graft(plan: &Plan) -> bool {
    plan.graft.as_ref().is_some_and(|graft| graft.tissue == TissueGraft::Now)
}

/// Whether a membrane or a plug of collagen was laid.
pub(super) fn lays_collagen(laid: &GraftAndMembrane) -> bool {
    laid.seal == Some(SocketSeal::Plug)
        || laid.membrane.as_ref().is_some_and(|membrane| {
            matches!(membrane.kind, MembraneKind::NativeCollagen | MembraneKind::CrossLinked)
        })
}

/// Whether elective surgery would be outside every published limit for this patient.
pub(crate) fn is_gate_shut(patient: &Patient) -> bool {
    matches!(patient.antiresorptive, Some(Antiresorptive::CancerDose))
        || patient.sugar.as_ref().is_some_and(|sugar| sugar.hba1c > 8.0)
        || patient.pressure[0] >= 200
        || patient.pressure[1] >= 120
        || patient.pressure_symptoms
        || matches!(&patient.anticoagulant, Some(Anticoagulant::VitaminK { inr }) if *inr >= 4.0)
        || patient.stent.as_ref().is_some_and(|stent| stent.months < 1)
        || patient.radiotherapy.as_ref().is_some_and(|past| past.gray_at_site >= 60.0)
        || patient.event.as_ref().is_some_and(is_recent)
        || patient.pregnancy_week.is_some()
        || patient.bleeding.as_ref().is_some_and(|it| it.neutrophils < 1.0 || it.platelets < 50.0)
        || patient.asa >= 4
}

/// Whether nothing in this patient gives any published position a reason to wait.
pub(super) fn is_gate_open(patient: &Patient) -> bool {
    !is_gate_shut(patient)
        && patient.asa <= 2
        && patient.growth_complete
        && patient.cigarettes <= 10
        && patient.sugar.as_ref().is_none_or(|sugar| sugar.hba1c <= 7.0)
        && patient.pressure[0] < 160
        && patient.pressure[1] < 100
        && patient.anticoagulant.is_none()
        && patient.antiplatelets == 0
        && patient.stent.is_none()
        && patient.antiresorptive.is_none()
        && patient.radiotherapy.is_none()
        && patient.event.is_none()
        && patient.bleeding.is_none()
        && patient.steroid.is_none()
        && patient.bleeding_score <= 20
}

const fn is_recent(event: &RecentEvent) -> bool {
    match event {
        RecentEvent::Infarction { days } => *days < 60,
        RecentEvent::Stroke { days } => *days < 91,
    }
}

/// How far apical of the furcation the room in a septum is looked at, as in the survey that asks for it.
pub(crate) const BELOW_FURCATION: Mm = Mm::new(2.0);

/// Whether a septum could hold an implant here: between the roots of a molar. Those of upper first
/// premolars stand too close.
pub(crate) fn has_septum(case: &Case) -> bool {
    case.site.tooth.kind() == Kind::Molar && case.site.socket.furcation().is_some()
}

/// Whether a wide implant stands on the walls of a molar's socket: the widest of the stock, half of its
/// side below the furcation in bone (ours).
pub(super) fn stands_on_walls(m: &Measurements<'_>, implant: &Implant) -> bool {
    implant.diameter >= Mm::new(6.0)
        && m.septum_hold().is_some_and(|hold| hold.in_bone.get() >= 0.5 * hold.below.get())
}

/// Whether the site holds an implant by every position: bone beyond the apex past the longest figure
/// quoted; of a molar a septum that contains the narrowest implant in use there; of other teeth with
/// several roots no position speaks.
pub(super) fn holds_by_every_position(judging: &Judging<'_>) -> bool {
    let Judging { case, m, .. } = *judging;
    match case.site.socket.furcation() {
        None => m.bone_beyond_apex().is_some_and(|bone| bone.get() >= 5.0),
        Some(_) if !has_septum(case) => false,
        Some(_) => m.septum_room(BELOW_FURCATION).is_some_and(|room| room.get() >= 4.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn taking_the_tooth_out_today_can_go_with_putting_the_implant_off() {
        let mut trial = Trial::plain();
        trial.course("postpone").keys(&[("today", "extract")]);
        assert_eq!(tooth_comes_out(&trial.plan()), Some(true));
        trial.keys(&[("today", "relieve-pain")]);
        assert_eq!(tooth_comes_out(&trial.plan()), Some(false));
    }

    #[test]
    fn a_healthy_patient_passes_every_gate_and_one_reason_shuts_it() {
        let mut patient = Trial::plain().case.patient;
        assert!(is_gate_open(&patient) && !is_gate_shut(&patient));
        patient.pregnancy_week = Some(10);
        assert!(is_gate_shut(&patient) && !is_gate_open(&patient));
    }

    #[test]
    fn between_the_published_limits_the_gate_is_neither_open_nor_shut() {
        let mut patient = Trial::plain().case.patient;
        patient.pressure = [184, 104];
        assert!(!is_gate_open(&patient) && !is_gate_shut(&patient));
    }
}
