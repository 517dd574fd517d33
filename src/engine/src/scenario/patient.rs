//! A patient and the readings of a case written out in full.

use super::read::Table;
use super::site::DENSITIES;
use crate::chart::{
    Allergy, Anticoagulant, Antiresorptive, Bleeding, Complaint, GraftView, Patient, Radiotherapy,
    Readings, RecentEvent, SectionReport, Sex, SoundingReading, Stent, Steroid, Sugar,
};
use crate::units::Mm;

pub(super) const SEXES: &[(&str, Sex)] = &[("female", Sex::Female), ("male", Sex::Male)];
pub(super) const COMPLAINTS: &[(&str, Complaint)] = &[
    ("root-fracture", Complaint::RootFracture),
    ("crown-fracture", Complaint::CrownFracture),
    ("endodontic-failure", Complaint::EndodonticFailure),
    ("caries", Complaint::Caries),
    ("periodontitis", Complaint::Periodontitis),
    ("resorption", Complaint::Resorption),
    ("trauma", Complaint::Trauma),
    ("restorable", Complaint::Restorable),
];
pub(super) const ALLERGIES: &[(&str, Allergy)] = &[
    ("penicillin", Allergy::Penicillin),
    ("chlorhexidine", Allergy::Chlorhexidine),
    ("collagen", Allergy::Collagen),
    ("latex", Allergy::Latex),
];
pub(super) const VIEWS: &[(&str, GraftView)] = &[
    ("any", GraftView::Any),
    ("no-human", GraftView::NoHuman),
    ("no-animal", GraftView::NoAnimal),
    ("own-or-synthetic", GraftView::OwnOrSynthetic),
];

/// A whole number within the range just checked.
fn small<T: TryFrom<i64>>(value: Option<i64>) -> Option<T> {
    value.and_then(|value| T::try_from(value).ok())
}

/// `None` when a part is missing, `Some(None)` when it was there and faulty.
fn part<T>(
    table: Option<Table<'_>>,
    read: impl FnOnce(Table<'_>) -> Option<T>,
) -> Option<Option<T>> {
    match table {
        None => Some(None),
        Some(table) => read(table).map(Some),
    }
}

pub(super) fn read(mut table: Table<'_>) -> Option<Patient> {
    let name = table.text("name");
    let age = small(table.whole("age-years", 12..=105));
    let sex = table.one("sex", SEXES);
    let complaint = table.one("complaint", COMPLAINTS);
    let wish = table.text("wish");
    let asa = small(table.whole("asa", 1..=4));
    let growth_complete = table.truth("growth-complete");
    let cigarettes = small(table.whole("cigarettes-a-day", 0..=100));
    let pressure = table.need("pressure-mmhg").and_then(|node| {
        table.row::<2>("pressure-mmhg", node, &(40.0..=280.0)).map(|row| row.map(|v| v as u16))
    });
    let pressure_symptoms = table.truth("pressure-symptoms");
    let antiplatelets = small(table.whole("antiplatelets", 0..=3));
    let bleeding_score = small(table.whole("bleeding-score-percent", 0..=100));
    let allergies = allergies(&mut table);
    let graft_view = table.one("graft-view", VIEWS);
    let parafunction = table.truth("parafunction");
    let opening = table.mm("opening-mm", 5.0..=80.0);
    let history = history(&mut table);
    table.finish();
    let history = history?;
    Some(Patient {
        name: name?,
        age: age?,
        sex: sex?,
        complaint: complaint?,
        wish: wish?,
        asa: asa?,
        growth_complete: growth_complete?,
        cigarettes: cigarettes?,
        pressure: pressure?,
        pressure_symptoms: pressure_symptoms?,
        antiplatelets: antiplatelets?,
        bleeding_score: bleeding_score?,
        allergies: allergies?,
        graft_view: graft_view?,
        parafunction: parafunction?,
        opening: opening?,
        sugar: history.sugar,
        anticoagulant: history.anticoagulant,
        stent: history.stent,
        antiresorptive: history.antiresorptive,
        radiotherapy: history.radiotherapy,
        event: history.event,
        pregnancy_week: history.pregnancy_week,
        bleeding: history.bleeding,
        steroid: history.steroid,
    })
}

fn allergies(table: &mut Table<'_>) -> Option<Vec<Allergy>> {
    let node = table.need("allergies")?;
    let list = table.list_of("allergies", node, 4)?;
    let read: Vec<Option<Allergy>> = list
        .iter()
        .map(|node| {
            let super::node::Kind::Text(found) = &node.kind else {
                table.fault("allergies", node.place, "expected words");
                return None;
            };
            let known = ALLERGIES.iter().find(|(word, _)| word == found).map(|(_, one)| *one);
            if known.is_none() {
                let words = ALLERGIES.iter().map(|(word, _)| *word);
                table.fault("allergies", node.place, super::read::unknown_word(found, words));
            }
            known
        })
        .collect();
    read.into_iter().collect()
}

/// The parts of a history that most patients lack.
struct History {
    sugar: Option<Sugar>,
    anticoagulant: Option<Anticoagulant>,
    stent: Option<Stent>,
    antiresorptive: Option<Antiresorptive>,
    radiotherapy: Option<Radiotherapy>,
    event: Option<RecentEvent>,
    pregnancy_week: Option<u8>,
    bleeding: Option<Bleeding>,
    steroid: Option<Steroid>,
}

fn history(table: &mut Table<'_>) -> Option<History> {
    let hba1c = table.maybe_number("hba1c-percent", 3.5..=18.0);
    let stent = table.maybe_whole("stent-months", 0..=240);
    let pregnancy = table.maybe_whole("pregnancy-week", 1..=42);
    let anticoagulant = part(table.maybe_table("anticoagulant"), anticoagulant);
    let antiresorptive = part(table.maybe_table("antiresorptive"), antiresorptive);
    let radiotherapy = part(table.maybe_table("radiotherapy"), |mut table| {
        let gray = table.number("gray-at-site", 0.0..=90.0);
        let years = table.number("years-since", 0.0..=70.0);
        table.finish();
        Some(Radiotherapy { gray_at_site: gray?, years_since: years? })
    });
    let event = part(table.maybe_table("event"), |mut table| {
        let stroke = table.one("kind", &[("infarction", false), ("stroke", true)]);
        let days = small(table.whole("days-since", 0..=20_000));
        table.finish();
        let days = days?;
        Some(if stroke? { RecentEvent::Stroke { days } } else { RecentEvent::Infarction { days } })
    });
    let bleeding = part(table.maybe_table("counts"), |mut table| {
        let neutrophils = table.number("neutrophils-giga-per-litre", 0.0..=50.0);
        let platelets = table.number("platelets-giga-per-litre", 0.0..=1500.0);
        table.finish();
        Some(Bleeding { neutrophils: neutrophils?, platelets: platelets? })
    });
    let steroid = part(table.maybe_table("steroid"), |mut table| {
        let mg = table.number("mg-a-day", 0.5..=200.0);
        let weeks = small(table.whole("weeks", 0..=3000));
        table.finish();
        Some(Steroid { mg: mg?, weeks: weeks? })
    });
    Some(History {
        sugar: hba1c.map(|hba1c| Sugar { hba1c }),
        anticoagulant: anticoagulant?,
        stent: small(stent).map(|months| Stent { months }),
        antiresorptive: antiresorptive?,
        radiotherapy: radiotherapy?,
        event: event?,
        pregnancy_week: small(pregnancy),
        bleeding: bleeding?,
        steroid: steroid?,
    })
}

fn anticoagulant(mut table: Table<'_>) -> Option<Anticoagulant> {
    let direct = table.one("kind", &[("vitamin-k", false), ("direct", true)])?;
    let read = if direct {
        small(table.whole("doses-a-day", 1..=2))
            .map(|doses_a_day| Anticoagulant::Direct { doses_a_day })
    } else {
        table.number("inr", 0.8..=12.0).map(|inr| Anticoagulant::VitaminK { inr })
    };
    table.finish();
    read
}

fn antiresorptive(mut table: Table<'_>) -> Option<Antiresorptive> {
    let kinds = [("oral", 0_u8), ("injected", 1), ("cancer-dose", 2)];
    let read = match table.one("kind", &kinds)? {
        0 => table.number("years", 0.0..=40.0).map(|years| Antiresorptive::Oral { years }),
        1 => small(table.whole("months-since", 0..=60))
            .map(|months_since| Antiresorptive::Injected { months_since }),
        _ => Some(Antiresorptive::CancerDose),
    };
    table.finish();
    read
}

pub(super) fn readings(mut table: Table<'_>) -> Option<Readings> {
    let sections = table.table("sections").and_then(sections);
    let sounding = table.lengths::<4>("sounding-mm", 0.0..=25.0);
    let probing = table.lengths::<6>("probing-mm", 0.0..=25.0);
    let film_root_length = table.mm("film-root-length-mm", 3.0..=32.0);
    let film_floor = table.maybe_mm("film-floor-mm", -10.0..=40.0);
    let film_lesion = table.maybe_mm("film-lesion-mm", 0.2..=20.0);
    table.finish();
    Some(Readings {
        sections: sections?,
        sounding: sounding?.map(|depth| SoundingReading { depth }),
        probing: probing?,
        film_root_length: film_root_length?,
        film_floor,
        film_lesion,
    })
}

fn sections(mut table: Table<'_>) -> Option<SectionReport> {
    let error = table.mm("error-mm", 0.05..=2.0);
    let facial_plate = table.maybe_mm("facial-plate-mm", 0.1..=10.0);
    let oral_plate = table.maybe_mm("oral-plate-mm", 0.1..=10.0);
    let ridge_width = table.lengths::<3>("ridge-width-mm", 1.0..=30.0);
    let concavity = table.mm("concavity-mm", 0.0..=10.0);
    let undercut = table.mm("undercut-mm", 0.0..=12.0);
    let mut distance = |key: &str| -> Option<Mm> { table.maybe_mm(key, -10.0..=60.0) };
    let canal = distance("canal-mm");
    let foramen = distance("foramen-mm");
    let floor = distance("floor-mm");
    let nasopalatine = distance("nasopalatine-mm");
    let loop_length = table.maybe_mm("loop-length-mm", 0.0..=12.0);
    let beyond_apex = table.mm("beyond-apex-mm", 0.0..=40.0);
    let lesion = table.maybe_mm("lesion-mm", 0.2..=20.0);
    let density = table.one("density-class", DENSITIES);
    table.finish();
    Some(SectionReport {
        error: error?,
        facial_plate,
        oral_plate,
        ridge_width: ridge_width?,
        concavity: concavity?,
        undercut: undercut?,
        canal,
        foramen,
        loop_length,
        floor,
        nasopalatine,
        beyond_apex: beyond_apex?,
        lesion,
        density: density?,
    })
}
