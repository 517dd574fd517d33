//! A plan by the book, before placement and cover.

use crate::anatomy::{Jaw, Lesion, Site};
use crate::chart::{
    Allergy, Anticoagulant, Antiresorptive, Case, Complaint, Fragment, GraftView, Patient,
};
use crate::measure::Measurements;
use crate::plan::choices::{self as c, Course};
use crate::plan::{Decision, Draft, Plan, Value, prepared_for};
use crate::rules::ask;

/// Courses to try, the likeliest first. Which of them is sound is for the rules to say.
pub(super) fn courses(case: &Case) -> Vec<Course> {
    let site = &case.site;
    if case.patient.complaint == Complaint::Restorable {
        return vec![Course::KeepTooth, Course::SecondOpinion, Course::Refer];
    }
    if bone_cannot_heal(&case.patient) {
        return vec![Course::Refer, Course::Postpone];
    }
    if ask::is_gate_shut(&case.patient) || !case.patient.growth_complete {
        return vec![
            Course::Postpone,
            Course::Refer,
            Course::LetHeal,
            Course::ReturnEarly,
            Course::GraftAndReturn,
        ];
    }
    if has_no_septum(case) {
        return vec![
            Course::GraftAndReturn,
            Course::ReturnEarly,
            Course::LetHeal,
            Course::Postpone,
        ];
    }
    let put_off = [Course::LetHeal, Course::Postpone, Course::Refer];
    let mut courses = match site.lesion {
        Lesion::Spreading { .. } => vec![Course::Refer, Course::ReturnEarly, Course::Postpone],
        Lesion::Abscess { .. } => vec![Course::ReturnEarly],
        _ if site.is_aesthetic() && ask::dehiscence(case).is_some() => {
            vec![Course::GraftAndReturn, Course::PlaceToday, Course::ReturnEarly]
        }
        _ => vec![Course::PlaceToday, Course::GraftAndReturn, Course::ReturnEarly],
    };
    courses.extend(put_off);
    courses
}

/// Whether the septum of a molar is too thin to hold an implant by any position.
fn has_no_septum(case: &Case) -> bool {
    let plan = Plan::default();
    let m = Measurements::of(case, &plan);
    ask::has_septum(case)
        && !ask::is_acute(&case.site.lesion)
        && m.septum_room(ask::BELOW_FURCATION).is_some_and(|room| room.get() < 2.0)
}

/// Whether bone at the site heals badly for good: a matter for specialist hands.
fn bone_cannot_heal(patient: &Patient) -> bool {
    matches!(patient.antiresorptive, Some(Antiresorptive::CancerDose))
        || patient.radiotherapy.as_ref().is_some_and(|past| past.gray_at_site >= 50.0)
}

/// Everything that no placement decides.
pub(super) fn draft(case: &Case, course: Course) -> Draft {
    let mut book = Book(Draft::empty());
    chart(&mut book, case);
    examination(&mut book, case);
    intention(&mut book, case, course);
    extraction(&mut book, case);
    drilling(&mut book, case);
    grafting(&mut book, case);
    closure(&mut book, case);
    returns(&mut book, course);
    book.0
}

/// The draft with its answers to what its extraction did; `now` is the case as that left it.
pub(super) fn answering(now: &Case, draft: Draft) -> Draft {
    let mut book = Book(draft);
    if now.broken == Some(Fragment::Loose) {
        book.one(Decision::BrokenPlate, c::PlateRescue::Remove);
    }
    let lost = now.broken.is_some() && ask::dehiscence(now).is_some();
    if lost && book.0.one(Decision::Course) == Some(Course::PlaceToday) && now.site.is_aesthetic() {
        book.one(Decision::AfterExtraction, c::Revision::ToGraftAndReturn);
        book.number(Decision::PlaceAfter, 26);
    }
    let on = crate::plan::course(&book.0).is_some_and(ask::goes_beyond_extraction);
    if on && crate::events::tip_in(&book.0, now).is_some() {
        book.one(Decision::AfterExtraction, c::Revision::ToRefer);
    }
    book.0
}

/// A draft that is filled in by the book.
pub(super) struct Book(pub Draft);

impl Book {
    pub(super) fn one<A: c::Alternative>(&mut self, decision: Decision, chosen: A) {
        self.put(decision, Value::one(chosen));
    }

    pub(super) fn many<A: c::Alternative>(&mut self, decision: Decision, chosen: &[A]) {
        self.put(decision, Value::many(chosen));
    }

    pub(super) fn number(&mut self, decision: Decision, count: i32) {
        self.put(decision, Value::Number(count));
    }

    pub(super) fn put(&mut self, decision: Decision, value: Value) {
        // A value that does not fit leaves the decision undecided, and the plan is then not sound.
        drop(self.0.choose(decision, value));
    }
}

fn chart(book: &mut Book, case: &Case) {
    use c::Request as Of;
    let patient = &case.patient;
    let mut requests =
        vec![Of::Allergies, Of::BloodPressure, Of::GraftViews, Of::PlaqueAndBleeding];
    let more = [
        (matches!(patient.anticoagulant, Some(Anticoagulant::VitaminK { .. })), Of::Inr),
        (patient.sugar.is_some(), Of::Hba1c),
        (patient.bleeding.is_some(), Of::BloodCounts),
        (patient.radiotherapy.is_some(), Of::DoseRecord),
        (patient.age <= 21 || !patient.growth_complete, Of::GrowthRecords),
    ];
    requests.extend(more.iter().filter(|(due, _)| *due).map(|(_, request)| *request));
    book.many(Decision::Requests, &requests);
    book.one(Decision::Drugs, drugs(patient));
    let mut advice = Vec::new();
    if patient.cigarettes > 0 {
        advice.push(c::Advice::StopSmoking);
    }
    if patient.bleeding_score > 20 {
        advice.push(c::Advice::GumTreatmentFirst);
    }
    if patient.asa > 2 || matches!(case.site.lesion, Lesion::Spreading { .. }) {
        advice.push(c::Advice::PhysicianLetter);
    }
    book.many(Decision::Advices, &advice);
}

fn drugs(patient: &Patient) -> c::DrugAction {
    match (&patient.anticoagulant, &patient.antiresorptive) {
        (Some(Anticoagulant::Direct { .. }), _) => c::DrugAction::TimeWithPrescriber,
        (_, Some(Antiresorptive::CancerDose | Antiresorptive::Injected { .. })) => {
            c::DrugAction::ContactPrescriber
        }
        _ if patient.bleeding.is_some() || patient.steroid.is_some() => {
            c::DrugAction::ContactPrescriber
        }
        _ => c::DrugAction::Leave,
    }
}

fn examination(book: &mut Book, case: &Case) {
    use c::Examination as Of;
    book.many(
        Decision::Examinations,
        &[
            Of::Look,
            Of::Probing,
            Of::Mobility,
            Of::Percussion,
            Of::Sensibility,
            Of::OcclusalContacts,
            Of::PhenotypeTest,
            Of::Film,
            Of::Sections,
            Of::BoneSounding,
        ],
    );
    book.one(Decision::FilmQuestion, c::FilmQuestion::RootAndApex);
    let report = &case.readings.sections;
    let near = [report.canal, report.foramen, report.floor, report.nasopalatine]
        .into_iter()
        .flatten()
        .any(|distance| distance.get() < 6.0);
    book.one(
        Decision::SectionsQuestion,
        if near { c::SectionsQuestion::NearStructure } else { c::SectionsQuestion::PlateAndRidge },
    );
    let harmed = case.site.defects_of(crate::anatomy::Wall::Facial).next().is_some();
    book.one(
        Decision::WallReading,
        if harmed { c::WallReading::Defect } else { c::WallReading::Whole },
    );
    book.one(Decision::WallGround, c::WallGround::SoundingAndSection);
}

fn intention(book: &mut Book, case: &Case, course: Course) {
    let Case { site, patient, .. } = case;
    book.one(Decision::Course, course);
    let spreading = matches!(site.lesion, Lesion::Spreading { .. });
    let acute = ask::is_acute(&site.lesion);
    let mut today = vec![c::TodayAct::RelievePain];
    if acute {
        today.insert(0, c::TodayAct::Drain);
    }
    if spreading {
        today.push(c::TodayAct::AntibioticForSpread);
    }
    book.many(Decision::Today, &today);
    let (by_when, refer_to) = match (course, &patient.pregnancy_week) {
        _ if spreading => (c::ByWhen::SameDay, c::ReferTo::Hospital),
        (_, Some(_)) => (c::ByWhen::AfterDelivery, c::ReferTo::Physician),
        (Course::Refer, _) => (c::ByWhen::Week, c::ReferTo::Specialist),
        (Course::KeepTooth, _) => (c::ByWhen::FourToEightWeeks, c::ReferTo::Nobody),
        _ => (c::ByWhen::WhenControlled, c::ReferTo::Physician),
    };
    book.one(Decision::ByWhen, by_when);
    book.one(Decision::ReferTo, refer_to);
    let below = site.soft.margin_below_twin.get() > 0.0;
    let margin = match (below, course) {
        (false, _) => c::MarginPlan::AsItIs,
        (true, Course::PlaceToday) => c::MarginPlan::GraftWithImplant,
        (true, _) => c::MarginPlan::CorrectFirst,
    };
    book.one(Decision::MarginPlan, margin);
    book.one(Decision::ScrewChannel, c::ScrewChannel::Straight);
    book.one(Decision::Guidance, c::Guidance::Guided);
    book.one(Decision::AntibioticBefore, c::AntibioticBefore::None);
    book.one(Decision::Interim, c::Interim::BondedTooth);
    use c::ConsentPoint as Of;
    let mut consent =
        vec![Of::Options, Of::Risks, Of::StopConditions, Of::GraftOrigin, Of::Fallback];
    if patient.asa > 1 {
        consent.push(Of::DrugRisk);
    }
    book.many(Decision::Consent, &consent);
}

fn extraction(book: &mut Book, case: &Case) {
    book.one(Decision::FlapFirst, c::YesNo::No);
    book.one(Decision::Technique, c::Technique::LuxateAndRotate);
    let sectioning = match case.site.socket.furcation() {
        None => c::Sectioning::Whole,
        Some(_) => c::Sectioning::Sectioned,
    };
    book.one(Decision::Sectioning, sectioning);
    book.one(Decision::Debridement, c::Debridement::CuretteAndIrrigate);
    book.one(Decision::SocketProbing, c::SocketProbing::AllWalls);
    book.one(Decision::BrokenPlate, c::PlateRescue::Keep);
    book.one(Decision::LostTip, c::TipRescue::ImageAndRefer);
    book.one(Decision::AfterExtraction, c::Revision::CarryOn);
    book.one(Decision::AfterFlap, c::Revision::CarryOn);
}

fn drilling(book: &mut Book, case: &Case) {
    let entry = match case.site.tooth.jaw() {
        _ if ask::has_septum(case) => c::Entry::Septum,
        Jaw::Maxilla => c::Entry::OralSlope,
        Jaw::Mandible => c::Entry::SocketApex,
    };
    book.one(Decision::Entry, entry);
    book.one(Decision::Preparation, prepared_for(case.site.density.class));
    book.one(Decision::Drilling, c::Drilling::CooledModerate);
    book.one(Decision::TornLining, c::LiningRescue::Patch);
    book.one(Decision::PilotFilm, c::YesNo::Yes);
    book.one(Decision::SeatingFilm, c::YesNo::Yes);
    book.one(Decision::SeatingAct, c::SeatingAct::Leave);
    book.one(Decision::SecondAct, c::SecondAct::Leave);
    book.one(Decision::Component, c::Component::CoverScrew);
    book.one(Decision::ProvisionalContacts, c::Contacts::OutOfContact);
}

/// Material by the patient's views; slow where both origins are welcome.
fn grafting(book: &mut Book, case: &Case) {
    let material = match case.patient.graft_view {
        GraftView::Any | GraftView::NoHuman => c::GraftMaterial::Xenograft,
        GraftView::NoAnimal => c::GraftMaterial::MineralisedAllograft,
        GraftView::OwnOrSynthetic => c::GraftMaterial::Synthetic,
    };
    book.one(Decision::GraftMaterial, material);
    book.one(Decision::GrainSize, c::GrainSize::Small);
    book.one(Decision::Wetting, c::Wetting::Saline);
    book.one(Decision::Packing, c::Packing::InLayers);
    book.number(Decision::FillLevel, 0);
    book.one(Decision::TissueGraft, tissue(&case.site));
    book.one(Decision::ActOrder, c::ActOrder::MembraneFirst);
    book.one(Decision::Trim, c::Trim::Rounded);
    let seal = match collagen_is_welcome(&case.patient) {
        true => c::SocketSeal::Plug,
        false => c::SocketSeal::SoftTissueSeal,
    };
    book.one(Decision::SocketSeal, seal);
}

/// Tissue where gum is thin, a wall is missing or the margin has fallen, and it shows.
fn tissue(site: &Site) -> c::TissueGraft {
    let risk = site.soft.thickness.get() <= 1.0
        || !site.defects.is_empty()
        || site.soft.margin_below_twin.get() > 0.0
        || site.soft.keratinised.get() < 2.0;
    if site.is_aesthetic() && risk { c::TissueGraft::Now } else { c::TissueGraft::NoTissue }
}

/// Whether bovine or porcine collagen may be used.
pub(super) fn collagen_is_welcome(patient: &Patient) -> bool {
    matches!(patient.graft_view, GraftView::Any | GraftView::NoHuman)
        && !patient.allergies.contains(&Allergy::Collagen)
}

fn closure(book: &mut Book, case: &Case) {
    let Case { site, patient, .. } = case;
    book.one(Decision::Closure, c::ClosureKind::LeftOpen);
    book.one(Decision::SutureSize, c::SutureSize::Five0);
    book.one(Decision::SutureMaterial, c::SutureMaterial::Monofilament);
    book.one(Decision::NeedlePath, c::NeedlePath::CrestOutward);
    use c::BleedingMeasure as Stop;
    book.many(Decision::Bleeding, &[Stop::Pressure, Stop::PackAndSuture, Stop::Checked]);
    use c::Instruction as Of;
    let mut told = vec![Of::Written, Of::EmergencyNumber, Of::Analgesia, Of::NoPressure];
    if site.tooth.jaw() == Jaw::Mandible {
        told.push(Of::FloorOfMouth);
    }
    book.many(Decision::Instructions, &told);
    let rinse = match patient.allergies.contains(&Allergy::Chlorhexidine) {
        true => c::Antiseptic::SalineRinse,
        false => c::Antiseptic::Chlorhexidine,
    };
    book.one(Decision::Antiseptic, rinse);
    book.number(Decision::AntisepticDays, 10);
    book.one(Decision::AntibioticAfter, c::AntibioticAfter::None);
    book.one(Decision::SensationCheck, c::YesNo::Yes);
    book.one(Decision::BleedsAgain, c::BleedRescue::Press);
    book.one(Decision::SwollenFloor, c::FloorRescue::PressAndCall);
}

fn returns(book: &mut Book, course: Course) {
    use c::Review as Of;
    book.number(Decision::SuturesOut, 10);
    book.number(Decision::MembraneOut, 28);
    book.many(
        Decision::Reviews,
        &[Of::TwoWeeks, Of::SixWeeks, Of::FourMonths, Of::Restoration, Of::Yearly],
    );
    let weeks = match course {
        Course::ReturnEarly => 6,
        Course::LetHeal => 28,
        _ => 26,
    };
    book.number(Decision::PlaceAfter, weeks);
    book.one(Decision::HealedAct, c::HealedAct::Augment);
    for wait in [Decision::WaitFor, Decision::WaitForLast] {
        book.number(wait, 12);
    }
    book.one(Decision::AgainAct, c::HealedAct::Augment);
    book.one(Decision::LastAct, c::LastAct::Augment);
    book.one(Decision::LateComponent, c::LateComponent::CoverScrew);
    book.number(Decision::UncoverAfter, 17);
    book.one(Decision::HoldTest, c::HoldTest::Tested);
    book.one(Decision::BandCare, c::BandCare::Moved);
    book.number(Decision::RecallEvery, 6);
    use c::RecallExam as At;
    book.many(Decision::RecallExam, &[At::Plaque, At::Probing, At::Film, At::Contacts]);
    book.number(Decision::RestoreAfter, 20);
    book.one(Decision::SeatCheck, c::SeatCheck::Film);
    book.one(Decision::NumbLip, c::NerveRescue::SameDay);
    book.one(Decision::BareMembrane, c::ExposureRescue::RinseAndKeep);
    book.one(Decision::Infected, c::InfectionRescue::Drain);
}
