//! Who sits in the chair: age, habits and a history that hangs together.
//!
//! Frequencies of background conditions are ours, rising with age so that most patients over 70
//! bring something; the values that a gate needs come from its archetype.

use super::archetype::{Apex, Archetype, Brief, Crestal, Facial};
use super::draw::{Draws, Field, Stream};
use super::names;
use crate::anatomy::{Site, Tooth};
use crate::chart::{
    Allergy, Anticoagulant, Antiresorptive, Bleeding, Complaint, GraftView, Patient, Radiotherapy,
    RecentEvent, Sex, Stent, Steroid, Sugar,
};
use crate::units::Mm;

/// Sex and age come before the site: roots follow the one, crests the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Person {
    pub sex: Sex,
    pub age: u8,
}

/// Sex: even, but for pregnancy. Age: normal 54, 14, within 20 to 88 (ours) or the gate's span.
pub(super) fn person(draws: &Draws, brief: &Brief) -> Person {
    let female = draws.stream(Field::Sex).chance(0.5);
    let sex =
        if female || brief.gate == Some(Archetype::Pregnancy) { Sex::Female } else { Sex::Male };
    let (mean, low, high) = match brief.gate {
        Some(Archetype::Pregnancy) => (30.0, 20.0, 42.0),
        Some(Archetype::GrowthUnfinished) => (15.0, 13.0, 16.9),
        Some(Archetype::OralAntiresorptive | Archetype::InjectedAntiresorptive) => {
            (69.0, 56.0, 88.0)
        }
        Some(Archetype::CancerDose | Archetype::Radiotherapy) => (62.0, 42.0, 82.0),
        Some(
            Archetype::HighInr
            | Archetype::SteadyInr
            | Archetype::DirectAnticoagulant
            | Archetype::Antiplatelets
            | Archetype::RecentStent
            | Archetype::RecentInfarction
            | Archetype::RecentStroke,
        ) => (66.0, 48.0, 86.0),
        Some(Archetype::PoorSugar | Archetype::ControlledSugar | Archetype::HighPressure) => {
            (59.0, 36.0, 82.0)
        }
        _ => (54.0, 21.0, 88.0),
    };
    let age = draws.stream(Field::Age).normal_within(mean, 14.0, low, high);
    // Within u8 by the limits above.
    Person { sex, age: libm::floor(age) as u8 }
}

pub(super) fn draw(draws: &Draws, person: Person, site: &Site, brief: &Brief) -> Patient {
    let Person { sex, age } = person;
    let mut patient = Patient {
        name: names::draw(&mut draws.stream(Field::Name), sex),
        age,
        sex,
        complaint: complaint(&mut draws.stream(Field::Complaint), site.tooth, brief),
        wish: wish(&mut draws.stream(Field::Wish), site, brief).to_owned(),
        asa: 1,
        growth_complete: age >= 21,
        cigarettes: cigarettes(&mut draws.stream(Field::Cigarettes), age),
        sugar: None,
        pressure: pressure(&mut draws.stream(Field::Pressure), age),
        pressure_symptoms: false,
        anticoagulant: None,
        antiplatelets: 0,
        stent: None,
        antiresorptive: None,
        radiotherapy: None,
        event: None,
        pregnancy_week: None,
        bleeding: None,
        steroid: None,
        bleeding_score: bleeding_score(&mut draws.stream(Field::BleedingScore)),
        allergies: vec![],
        graft_view: GraftView::Any,
        parafunction: draws.stream(Field::Parafunction).chance(0.15),
        opening: Mm::new(libm::round(
            draws.stream(Field::Opening).normal_within(46.0, 5.0, 36.0, 58.0),
        )),
    };
    background(draws, &mut patient, brief);
    if let Some(gate) = brief.gate {
        apply(&mut draws.stream(Field::Gate), gate, &mut patient);
    }
    patient.asa = asa(&patient);
    patient
}

/// Current smokers about one adult in five (confirmed secondary), here light ones.
fn cigarettes(stream: &mut Stream, age: u8) -> u8 {
    let smokes = stream.chance(0.18);
    let count = stream.whole(7) + 2;
    // At most 8.
    if smokes && age >= 18 { count as u8 } else { 0 }
}

/// Rises with age; kept below any published limit.
fn pressure(stream: &mut Stream, age: u8) -> [u16; 2] {
    let over = f64::from(age) - 30.0;
    let systolic = stream.normal_within(118.0 + 0.4 * over, 9.0, 100.0, 154.0);
    let diastolic = stream.normal_within(75.0 + 0.12 * over, 6.0, 58.0, 92.0);
    [libm::round(systolic) as u16, libm::round(diastolic) as u16]
}

fn bleeding_score(stream: &mut Stream) -> u8 {
    libm::round(stream.normal_within(12.0, 4.0, 3.0, 19.0)) as u8
}

/// One condition at most that needs no more than care, likelier with age; allergies and views.
fn background(draws: &Draws, patient: &mut Patient, brief: &Brief) {
    let mut stream = draws.stream(Field::History);
    // 8 % at 40, half at 68, most at 85 (ours).
    let odds = libm::exp((f64::from(patient.age) - 68.0) / 11.5);
    let has = stream.chance(odds / (1.0 + odds));
    let which = stream.weighted(&[(0_u8, 0.4), (1, 0.3), (2, 0.15), (3, 0.15)], 0);
    let value = stream.unit();
    if has && brief.gate.is_none() {
        match which {
            0 => patient.sugar = Some(Sugar { hba1c: super::draw::tenths(6.2 + 0.7 * value) }),
            1 => patient.antiplatelets = 1,
            2 => {
                patient.anticoagulant =
                    Some(Anticoagulant::Direct { doses_a_day: if value < 0.5 { 1 } else { 2 } });
            }
            _ => {
                patient.antiresorptive =
                    Some(Antiresorptive::Oral { years: super::draw::halves(1.0 + 2.0 * value) });
            }
        }
    }
    let mut allergies = draws.stream(Field::Allergies);
    if allergies.chance(0.08) {
        patient.allergies.push(Allergy::Penicillin);
    }
    for (allergy, odds) in
        [(Allergy::Chlorhexidine, 0.01), (Allergy::Collagen, 0.01), (Allergy::Latex, 0.03)]
    {
        if allergies.chance(odds) {
            patient.allergies.push(allergy);
        }
    }
    patient.graft_view = draws.stream(Field::GraftView).weighted(
        &[
            (GraftView::Any, 0.82),
            (GraftView::NoHuman, 0.07),
            (GraftView::NoAnimal, 0.07),
            (GraftView::OwnOrSynthetic, 0.04),
        ],
        GraftView::Any,
    );
}

/// What a gate brings.
fn apply(stream: &mut Stream, gate: Archetype, patient: &mut Patient) {
    use super::draw::{halves, tenths};
    match gate {
        Archetype::PoorSugar => {
            patient.sugar = Some(Sugar { hba1c: tenths(stream.between(8.4, 10.5)) });
        }
        Archetype::ControlledSugar => {
            patient.sugar = Some(Sugar { hba1c: tenths(stream.between(6.0, 7.0)) });
        }
        Archetype::HighPressure => {
            patient.pressure =
                [whole(stream, 202.0, 216.0) as u16, whole(stream, 112.0, 122.0) as u16];
            patient.pressure_symptoms = stream.chance(0.25);
        }
        Archetype::Radiotherapy => {
            patient.radiotherapy = Some(Radiotherapy {
                gray_at_site: whole(stream, 61.0, 68.0),
                years_since: halves(stream.between(0.5, 8.0)),
            });
        }
        Archetype::RecentInfarction => {
            let days = whole(stream, 12.0, 52.0) as u16;
            patient.event = Some(RecentEvent::Infarction { days });
            patient.antiplatelets = 1;
        }
        Archetype::RecentStroke => {
            let days = whole(stream, 15.0, 80.0) as u16;
            patient.event = Some(RecentEvent::Stroke { days });
            patient.antiplatelets = 1;
        }
        Archetype::Pregnancy => patient.pregnancy_week = Some(whole(stream, 6.0, 36.0) as u8),
        Archetype::LowCounts => {
            patient.bleeding = Some(Bleeding {
                neutrophils: tenths(stream.between(0.4, 0.9)),
                platelets: whole(stream, 24.0, 46.0),
            });
        }
        Archetype::ActivePeriodontitis => patient.bleeding_score = whole(stream, 38.0, 70.0) as u8,
        Archetype::GrowthUnfinished => patient.growth_complete = false,
        Archetype::HeavySmoker => patient.cigarettes = whole(stream, 22.0, 35.0) as u8,
        Archetype::Allergies => {
            let known = [Allergy::Penicillin, Allergy::Chlorhexidine, Allergy::Collagen];
            let allergy = stream.pick(&known, Allergy::Penicillin);
            if !patient.allergies.contains(&allergy) {
                patient.allergies.insert(0, allergy);
            }
            let views = [GraftView::NoHuman, GraftView::NoAnimal, GraftView::OwnOrSynthetic];
            patient.graft_view = stream.pick(&views, GraftView::NoAnimal);
        }
        drug => prescribe(stream, drug, patient),
    }
}

/// A whole number within a range.
fn whole(stream: &mut Stream, low: f64, high: f64) -> f64 {
    libm::round(stream.between(low, high))
}

/// Gates that are drugs, and the stent that goes with some.
fn prescribe(stream: &mut Stream, gate: Archetype, patient: &mut Patient) {
    use super::draw::{halves, tenths};
    match gate {
        Archetype::CancerDose => patient.antiresorptive = Some(Antiresorptive::CancerDose),
        Archetype::HighInr => {
            patient.anticoagulant =
                Some(Anticoagulant::VitaminK { inr: tenths(stream.between(4.2, 5.2)) });
        }
        Archetype::SteadyInr => {
            patient.anticoagulant =
                Some(Anticoagulant::VitaminK { inr: tenths(stream.between(2.0, 3.0)) });
        }
        Archetype::DirectAnticoagulant => {
            let doses_a_day = if stream.chance(0.5) { 1 } else { 2 };
            patient.anticoagulant = Some(Anticoagulant::Direct { doses_a_day });
        }
        Archetype::Antiplatelets => {
            let stented = stream.chance(0.5);
            patient.antiplatelets = 1;
            patient.stent = stented.then(|| Stent { months: whole(stream, 16.0, 60.0) as u8 });
        }
        Archetype::RecentStent => {
            patient.antiplatelets = 2;
            patient.stent = Some(Stent { months: whole(stream, 1.0, 4.0) as u8 });
        }
        Archetype::OralAntiresorptive => {
            patient.antiresorptive =
                Some(Antiresorptive::Oral { years: halves(stream.between(1.0, 3.5)) });
        }
        Archetype::InjectedAntiresorptive => {
            let months_since = if stream.chance(0.5) { 3 } else { 4 };
            patient.antiresorptive = Some(Antiresorptive::Injected { months_since });
        }
        Archetype::Steroids => {
            patient.steroid = Some(Steroid {
                mg: halves(stream.between(5.0, 9.0)),
                weeks: whole(stream, 8.0, 120.0) as u16,
            });
        }
        _ => {}
    }
}

/// Class by history: 1 healthy, 2 mild, 3 severe (limits of the society's own examples, from memory).
pub(super) fn asa(patient: &Patient) -> u8 {
    let severe = matches!(patient.antiresorptive, Some(Antiresorptive::CancerDose))
        || patient.sugar.as_ref().is_some_and(|sugar| sugar.hba1c > 8.0)
        || patient.pressure[0] >= 180
        || patient.event.is_some()
        || patient.stent.as_ref().is_some_and(|stent| stent.months < 12)
        || patient.bleeding.is_some()
        || patient.radiotherapy.is_some();
    let mild = patient.sugar.is_some()
        || patient.pressure[0] >= 140
        || patient.cigarettes > 0
        || patient.anticoagulant.is_some()
        || patient.antiplatelets > 0
        || patient.antiresorptive.is_some()
        || patient.pregnancy_week.is_some()
        || patient.steroid.is_some();
    match (severe, mild) {
        (true, _) => 3,
        (false, true) => 2,
        (false, false) => 1,
    }
}

/// A reason that fits what is found; weights ours after reasons for extraction in the surveys.
fn complaint(stream: &mut Stream, tooth: Tooth, brief: &Brief) -> Complaint {
    use Complaint::{
        Caries, CrownFracture, EndodonticFailure, Periodontitis, Resorption, RootFracture, Trauma,
    };
    if brief.restorable {
        return Complaint::Restorable;
    }
    if brief.gate == Some(Archetype::ActivePeriodontitis) {
        return Periodontitis;
    }
    let weights: &[(Complaint, f64)] = match (brief.apex, brief.crest, brief.facial) {
        (Apex::Chronic, ..) => &[(EndodonticFailure, 0.9), (Caries, 0.1)],
        (Apex::Abscess | Apex::Spreading, ..) => {
            &[(EndodonticFailure, 0.55), (Caries, 0.25), (RootFracture, 0.2)]
        }
        (_, Crestal::Sunk | Crestal::Beside, _) => &[(Periodontitis, 1.0)],
        (_, _, Facial::V | Facial::U) => &[(RootFracture, 0.7), (Trauma, 0.3)],
        (_, _, Facial::Lost) => &[(RootFracture, 0.6), (Periodontitis, 0.4)],
        (_, _, Facial::Window) => &[(EndodonticFailure, 0.4), (Trauma, 0.3), (CrownFracture, 0.3)],
        _ if brief.oral_defect => &[(RootFracture, 1.0)],
        _ if tooth.is_anterior() => &[
            (CrownFracture, 0.3),
            (Trauma, 0.25),
            (Caries, 0.2),
            (RootFracture, 0.1),
            (Resorption, 0.15),
        ],
        _ => &[(CrownFracture, 0.35), (Caries, 0.35), (RootFracture, 0.2), (Resorption, 0.1)],
    };
    stream.weighted(weights, CrownFracture)
}

fn wish(stream: &mut Stream, site: &Site, brief: &Brief) -> &'static str {
    const SHOWS: [&str; 5] = [
        "No gap to show while it heals, and a tooth that nobody notices.",
        "A tooth that matches the one beside it.",
        "To smile without thinking about it.",
        "As few visits as possible, but not at the price of the looks.",
        "A fixed tooth; nothing to take out at night.",
    ];
    const HIDDEN: [&str; 5] = [
        "To chew on this side again.",
        "A fixed tooth; how it looks matters less.",
        "As few operations as possible.",
        "Something that lasts; time is no matter.",
        "To know what it costs in visits before anything is begun.",
    ];
    const KEEP: [&str; 2] = [
        "To keep the tooth if that is sensible.",
        "The tooth out today and an implant in, to be done with it.",
    ];
    let list: &[&'static str] = if brief.restorable {
        &KEEP
    } else if site.is_aesthetic() {
        &SHOWS
    } else {
        &HIDDEN
    };
    stream.pick(list, HIDDEN[0])
}
