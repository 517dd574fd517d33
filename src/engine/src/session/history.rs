//! What the chart says: unasked, and when asked.

use crate::anatomy::LipLine;
use crate::chart::{
    Allergy, Anticoagulant, Antiresorptive, Case, Complaint, GraftView, Patient, RecentEvent, Sex,
};
use crate::plan::choices::{Request, Several};

/// What the chart tells unasked, one sentence a line.
#[must_use]
pub fn history_lines(case: &Case) -> Vec<String> {
    let patient = &case.patient;
    let tooth = case.site.tooth;
    let sex = match patient.sex {
        Sex::Female => "woman",
        Sex::Male => "man",
    };
    let mut lines = vec![
        format!(
            "{}, {}-year-old {sex}. Tooth {tooth}, {}.",
            patient.name,
            patient.age,
            tooth.words()
        ),
        complaint(patient.complaint).to_owned(),
        format!("Wishes: {}", patient.wish),
        format!(
            "Planned: a single crown, {:.1} mm wide at its contacts.",
            case.site.crown.width.get()
        ),
        format!("General health: ASA {}.", roman(patient.asa)),
    ];
    lines.extend(diseases(patient));
    lines.extend(drugs(patient));
    lines.push(match patient.cigarettes {
        0 => "Does not smoke.".to_owned(),
        count => format!("Smokes {count} cigarettes a day."),
    });
    if patient.parafunction {
        lines.push("Grinds the teeth at night.".to_owned());
    }
    if patient.opening.get() < 35.0 {
        lines.push(format!("Opens the mouth {:.0} mm.", patient.opening.get()));
    }
    lines
}

const fn complaint(complaint: Complaint) -> &'static str {
    match complaint {
        Complaint::RootFracture => "The root is suspected to be split lengthwise.",
        Complaint::CrownFracture => "The crown has broken off below the gum.",
        Complaint::EndodonticFailure => "The root treatment has failed twice.",
        Complaint::Caries => "Caries has gone too deep to restore.",
        Complaint::Periodontitis => "The tooth has lost its support.",
        Complaint::Resorption => "The root is being resorbed.",
        Complaint::Trauma => "The tooth was broken by a blow.",
        Complaint::Restorable => {
            "The patient asks for an implant; the crown is decayed, the root is whole and long."
        }
    }
}

const fn roman(class: u8) -> &'static str {
    match class {
        1 => "I",
        2 => "II",
        3 => "III",
        _ => "IV",
    }
}

fn diseases(patient: &Patient) -> Vec<String> {
    let mut lines = Vec::new();
    if patient.sugar.is_some() {
        lines.push("Diabetes.".to_owned());
    }
    if let Some(therapy) = &patient.radiotherapy {
        lines.push(format!(
            "Radiotherapy of the head and neck {} years ago.",
            tidy(therapy.years_since)
        ));
    }
    match patient.event {
        Some(RecentEvent::Infarction { days }) => {
            lines.push(format!("Heart attack {days} days ago."))
        }
        Some(RecentEvent::Stroke { days }) => lines.push(format!("Stroke {days} days ago.")),
        None => {}
    }
    if let Some(stent) = &patient.stent {
        lines.push(format!("Coronary stent set {} months ago.", stent.months));
    }
    if let Some(week) = patient.pregnancy_week {
        lines.push(format!("Pregnant, week {week}."));
    }
    if patient.bleeding.is_some() {
        lines.push("Under treatment for a disease of the blood.".to_owned());
    }
    if !patient.growth_complete {
        lines.push("Still growing, say the parents.".to_owned());
    }
    lines
}

fn drugs(patient: &Patient) -> Vec<String> {
    let mut lines = Vec::new();
    match patient.anticoagulant {
        Some(Anticoagulant::VitaminK { .. }) => {
            lines.push("Takes a vitamin K antagonist.".to_owned())
        }
        Some(Anticoagulant::Direct { doses_a_day }) => lines.push(format!(
            "Takes a direct oral anticoagulant, {} a day.",
            if doses_a_day == 1 { "once" } else { "twice" }
        )),
        None => {}
    }
    match patient.antiplatelets {
        0 => {}
        1 => lines.push("Takes one platelet inhibitor.".to_owned()),
        _ => lines.push("Takes two platelet inhibitors.".to_owned()),
    }
    match patient.antiresorptive {
        Some(Antiresorptive::Oral { years }) => {
            lines.push(format!("Takes tablets against osteoporosis for {} years.", tidy(years)));
        }
        Some(Antiresorptive::Injected { months_since }) => lines.push(format!(
            "Has half-yearly injections against osteoporosis, the last {months_since} months ago."
        )),
        Some(Antiresorptive::CancerDose) => {
            lines.push("Has monthly infusions against bone metastases.".to_owned());
        }
        None => {}
    }
    if let Some(steroid) = &patient.steroid {
        lines.push(format!(
            "Takes prednisolone {} mg a day for {} weeks.",
            tidy(steroid.mg),
            steroid.weeks
        ));
    }
    lines
}

/// What is answered to what was asked for, one sentence a line.
#[must_use]
pub fn asked_lines(case: &Case, requests: Several<Request>) -> Vec<String> {
    requests.iter().map(|request| answer(case, request)).collect()
}

fn answer(case: &Case, request: Request) -> String {
    let patient = &case.patient;
    match request {
        Request::Allergies if patient.allergies.is_empty() => "No known allergies.".to_owned(),
        Request::Allergies => {
            let names: Vec<_> = patient.allergies.iter().map(|one| allergy(*one)).collect();
            format!("Does not tolerate {}.", names.join(", "))
        }
        Request::BloodPressure => format!(
            "Blood pressure {}/{} mmHg after five minutes' rest{}.",
            patient.pressure[0],
            patient.pressure[1],
            if patient.pressure_symptoms { ", with headache and blurred sight" } else { "" }
        ),
        Request::Inr => match patient.anticoagulant {
            Some(Anticoagulant::VitaminK { inr }) => format!("INR {inr:.1}."),
            _ => "INR 1.0.".to_owned(),
        },
        Request::Hba1c => match &patient.sugar {
            Some(sugar) => format!("HbA1c {:.1} %.", sugar.hba1c),
            None => "HbA1c 5.4 %.".to_owned(),
        },
        Request::BloodCounts => match &patient.bleeding {
            Some(counts) => format!(
                "Neutrophils {:.1}, platelets {:.0} (10^9 per litre).",
                counts.neutrophils, counts.platelets
            ),
            None => "Blood counts within the normal range.".to_owned(),
        },
        Request::DoseRecord => match &patient.radiotherapy {
            Some(therapy) => format!("Dose at this site: {:.0} Gy.", therapy.gray_at_site),
            None => "No radiotherapy on record.".to_owned(),
        },
        Request::GrowthRecords if patient.growth_complete => {
            "Serial records: facial growth is finished.".to_owned()
        }
        Request::GrowthRecords => "Serial records: the face is still growing.".to_owned(),
        Request::PlaqueAndBleeding => {
            format!("Full-mouth bleeding score {} %.", patient.bleeding_score)
        }
        Request::GraftViews => match patient.graft_view {
            GraftView::Any => "Has no objection to any graft.",
            GraftView::NoHuman => "Wants nothing of human origin.",
            GraftView::NoAnimal => "Wants nothing of animal origin.",
            GraftView::OwnOrSynthetic => "Wants only own bone or synthetic material.",
        }
        .to_owned(),
    }
}

const fn allergy(allergy: Allergy) -> &'static str {
    match allergy {
        Allergy::Penicillin => "penicillin",
        Allergy::Chlorhexidine => "chlorhexidine",
        Allergy::Collagen => "bovine collagen",
        Allergy::Latex => "latex",
    }
}

/// What shows at full smile, in words.
pub(super) const fn smile(lip: LipLine) -> &'static str {
    match lip {
        LipLine::High => "gum shows at full smile",
        LipLine::Middle => "the crown and the papillae show at full smile",
        LipLine::Low => "the margin stays hidden at full smile",
    }
}

/// A number without places that say nothing.
fn tidy(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0").map_or(text.clone(), ToOwned::to_owned)
}
