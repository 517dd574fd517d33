//! Which steps a course has, and which decisions are asked in it.

use super::catalogue::{Decision, Step};
use super::choices::{
    Component, Course, Examination, FlapDesign, GraftMaterial, HealedAct, LastAct, LateComponent,
    MembraneKind, Revision, SeatingAct, SecondAct, Several, TodayAct,
};
use super::draft::Draft;
use crate::anatomy::Jaw;
use crate::chart::Case;
use crate::events;

/// What every course begins with.
const ALWAYS: [Step; 3] = [Step::Chart, Step::Examination, Step::Intention];

/// The steps of this draft's course as it stands, in order. Later choices may change what follows,
/// never what has been.
#[must_use]
pub fn steps(draft: &Draft) -> Vec<Step> {
    let mut steps = Vec::with_capacity(Step::ALL.len());
    steps.extend(ALWAYS);
    let Some(intended) = draft.one::<Course>(Decision::Course) else {
        return steps;
    };
    if !comes_out(draft, intended) {
        steps.push(Step::Review);
        return steps;
    }
    steps.push(Step::Extraction);
    let after_extraction = revised(intended, draft.one(Decision::AfterExtraction));
    if !matches!(after_extraction, Course::PlaceToday | Course::GraftAndReturn) {
        steps.extend([Step::Closure, Step::Review]);
        later(draft, after_extraction, &mut steps);
        return steps;
    }
    steps.push(Step::Flap);
    let after_flap = revised(after_extraction, draft.one(Decision::AfterFlap));
    match after_flap {
        Course::PlaceToday => {
            steps.extend([Step::Implant, Step::Seating]);
            if seating_act(draft) != Some(SeatingAct::RemoveAndHeal) {
                steps.push(Step::Graft);
            }
        }
        Course::GraftAndReturn => steps.push(Step::Graft),
        _ => {}
    }
    steps.extend([Step::Closure, Step::Review]);
    if let Some(course) = course(draft) {
        later(draft, course, &mut steps);
    }
    steps
}

/// What follows the reviews in this course: only what the plan so far has brought about.
fn later(draft: &Draft, course: Course, steps: &mut Vec<Step>) {
    let submerged = match course {
        Course::PlaceToday => draft.one(Decision::Component) == Some(Component::CoverScrew),
        Course::GraftAndReturn | Course::ReturnEarly | Course::LetHeal => {
            steps.push(Step::ReEntry);
            let mut act = draft.one(Decision::HealedAct);
            if act == Some(HealedAct::Wait) {
                steps.push(Step::ReEntryAgain);
                act = draft.one(Decision::AgainAct);
                if act == Some(HealedAct::Wait) {
                    steps.push(Step::LastReEntry);
                    act = draft.one::<LastAct>(Decision::LastAct).map(HealedAct::from);
                }
            }
            if !act.is_some_and(HealedAct::places) {
                return;
            }
            steps.push(Step::LatePlacement);
            draft.one(Decision::LateComponent) == Some(LateComponent::CoverScrew)
        }
        _ => return,
    };
    if submerged {
        steps.push(Step::Uncovering);
    }
    steps.extend([Step::Restoration, Step::Recall]);
}

/// The course after all revisions made so far.
#[must_use]
pub fn course(draft: &Draft) -> Option<Course> {
    let intended = draft.one(Decision::Course)?;
    if !comes_out(draft, intended) {
        return Some(intended);
    }
    let course = revised(intended, draft.one(Decision::AfterExtraction));
    let course = if matches!(course, Course::PlaceToday | Course::GraftAndReturn) {
        revised(course, draft.one(Decision::AfterFlap))
    } else {
        course
    };
    if course != Course::PlaceToday {
        return Some(course);
    }
    Some(match seating_act(draft) {
        Some(SeatingAct::RemoveAndGraft) => Course::GraftAndReturn,
        Some(SeatingAct::RemoveAndHeal) => Course::LetHeal,
        Some(SeatingAct::Leave | SeatingAct::SeatWider | SeatingAct::SeatLonger) | None => course,
    })
}

/// Whether an implant is to be seated in the place of the first.
#[must_use]
pub fn seats_again(draft: &Draft) -> bool {
    matches!(draft.one(Decision::SeatingAct), Some(SeatingAct::SeatWider | SeatingAct::SeatLonger))
}

/// What becomes of the implant in the end: of the second one where there is one.
#[must_use]
pub fn seating_act(draft: &Draft) -> Option<SeatingAct> {
    if !seats_again(draft) {
        return draft.one(Decision::SeatingAct);
    }
    draft.one(Decision::SecondAct).map(|act| match act {
        SecondAct::Leave => SeatingAct::Leave,
        SecondAct::RemoveAndGraft => SeatingAct::RemoveAndGraft,
        SecondAct::RemoveAndHeal => SeatingAct::RemoveAndHeal,
    })
}

/// Whether the decision is asked only once the acts of its step are done and told: what always is
/// ([`Decision::weighs_findings`]), and what goes on a second implant once its torque has been read.
#[must_use]
pub fn weighs_findings(decision: Decision, draft: &Draft) -> bool {
    let on_the_second = matches!(
        decision,
        Decision::SecondAct | Decision::Component | Decision::ProvisionalContacts
    );
    decision.weighs_findings() || (on_the_second && seats_again(draft))
}

fn comes_out(draft: &Draft, intended: Course) -> bool {
    match intended {
        Course::KeepTooth => false,
        Course::SecondOpinion | Course::Postpone | Course::Refer => draft
            .many(Decision::Today)
            .is_some_and(|today: Several<TodayAct>| today.has(TodayAct::Extract)),
        _ => true,
    }
}

const fn revised(course: Course, revision: Option<Revision>) -> Course {
    match revision {
        None | Some(Revision::CarryOn) => course,
        Some(Revision::ToPlaceToday) => Course::PlaceToday,
        Some(Revision::ToGraftAndReturn) => Course::GraftAndReturn,
        Some(Revision::ToReturnEarly) => Course::ReturnEarly,
        Some(Revision::ToLetHeal) => Course::LetHeal,
        Some(Revision::ToRefer) => Course::Refer,
    }
}

/// Whether the decision is asked in this draft of this case.
#[must_use]
pub fn is_asked(decision: Decision, draft: &Draft, case: &Case) -> bool {
    has_step(decision.step(), draft) && is_asked_there(decision, draft, case)
}

/// Whether this draft's course has the step.
pub(super) fn has_step(step: Step, draft: &Draft) -> bool {
    ALWAYS.contains(&step) || steps(draft).contains(&step)
}

/// Whether the decision is asked where its step is one of the course. It is asked of every decision at
/// every step: nothing is worked out here before it is needed.
pub(super) fn is_asked_there(decision: Decision, draft: &Draft, case: &Case) -> bool {
    match decision {
        Decision::FilmQuestion => examined(draft, Examination::Film),
        Decision::SectionsQuestion => examined(draft, Examination::Sections),
        Decision::Today | Decision::ByWhen => course_is_put_off(draft),
        Decision::ReferTo => {
            draft.one(Decision::Course) == Some(Course::Refer)
                || draft.one(Decision::Course) == Some(Course::SecondOpinion)
                || draft.one(Decision::Course) == Some(Course::Postpone)
        }
        Decision::MarginPlan | Decision::Interim | Decision::AntibioticBefore => {
            !course_is_put_off(draft)
        }
        Decision::Guidance | Decision::ScrewChannel => {
            draft.one(Decision::Course) == Some(Course::PlaceToday)
        }
        Decision::ReleaseSide => draft.one(Decision::FlapDesign) == Some(FlapDesign::Triangular),
        Decision::FlapOutline | Decision::Papillae | Decision::PeriostealRelease => raised(draft),
        Decision::Component => implant_stays(draft),
        Decision::ProvisionalContacts => {
            implant_stays(draft) && draft.one(Decision::Component) == Some(Component::Provisional)
        }
        Decision::GrainSize
        | Decision::Wetting
        | Decision::Packing
        | Decision::GraftAmount
        | Decision::FillLevel => grafted(draft),
        Decision::ContourLayer => grafted(draft) && raised(draft),
        Decision::MembraneOutline | Decision::Trim | Decision::Fold | Decision::Fixation => {
            covered(draft)
        }
        Decision::ActOrder => grafted(draft) && covered(draft),
        Decision::SocketSeal => !implant_stays(draft),
        Decision::NeedlePath => covered(draft),
        Decision::AntisepticDays => {
            draft.one(Decision::Antiseptic) == Some(super::choices::Antiseptic::Chlorhexidine)
        }
        Decision::SensationCheck => case.site.tooth.jaw() == Jaw::Mandible,
        Decision::SuturesOut => has_step(Step::Closure, draft),
        Decision::MembraneOut => {
            matches!(
                draft.one(Decision::Membrane),
                Some(
                    MembraneKind::DensePtfe
                        | MembraneKind::ExpandedPtfe
                        | MembraneKind::ReinforcedPtfe
                )
            ) && has_step(Step::Graft, draft)
        }
        _ => is_asked_by_events(decision, draft, case),
    }
}

fn examined(draft: &Draft, examination: Examination) -> bool {
    let chosen: Option<Several<Examination>> = draft.many(Decision::Examinations);
    chosen.is_some_and(|chosen| chosen.has(examination))
}

fn implant_stays(draft: &Draft) -> bool {
    course(draft) == Some(Course::PlaceToday)
}

fn raised(draft: &Draft) -> bool {
    draft.one(Decision::FlapDesign).is_some_and(|design: FlapDesign| design != FlapDesign::NoFlap)
}

fn grafted(draft: &Draft) -> bool {
    let graft: Option<GraftMaterial> = draft.one(Decision::GraftMaterial);
    graft.is_some_and(|graft| graft != GraftMaterial::NoGraft)
}

fn covered(draft: &Draft) -> bool {
    let membrane: Option<MembraneKind> = draft.one(Decision::Membrane);
    membrane.is_some_and(|membrane| membrane != MembraneKind::NoMembrane)
}

/// Whether what happens in this draft asks the decision; what no event brings in always is.
fn is_asked_by_events(decision: Decision, draft: &Draft, case: &Case) -> bool {
    match decision {
        Decision::BrokenPlate => events::Pulled::in_draft(draft)
            .is_some_and(|pulled| events::broken_plate(case, pulled).is_some()),
        Decision::LostTip => events::tip_in(draft, case).is_some(),
        Decision::TornLining => events::lining_in(draft, case).is_some(),
        Decision::SecondAct => seats_again(draft),
        Decision::BleedsAgain => events::bleeding_in(draft, case),
        Decision::SwollenFloor => events::floor_in(draft, case),
        Decision::NumbLip => events::numbness_in(draft, case),
        Decision::BareMembrane => events::exposure_in(draft, case).is_some(),
        Decision::Infected => events::infection_in(draft, case).is_some(),
        _ => true,
    }
}

/// Whether the course neither treats the gap today nor plans to: the patient is put off, handed on,
/// or keeps the tooth.
fn course_is_put_off(draft: &Draft) -> bool {
    matches!(
        draft.one(Decision::Course),
        Some(Course::KeepTooth | Course::SecondOpinion | Course::Postpone | Course::Refer)
    )
}
