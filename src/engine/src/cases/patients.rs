//! What of a patient is a number that can be changed alone.

use crate::chart::{Anticoagulant, Antiresorptive, Aspect, Patient, RecentEvent};

/// In steps; none where the patient has nothing of the kind.
pub(super) fn value(patient: &Patient, aspect: Aspect) -> Option<i32> {
    let tenths = |value: f64| libm::round(value * 10.0) as i32;
    match aspect {
        Aspect::Age => Some(patient.age.into()),
        Aspect::Cigarettes => Some(patient.cigarettes.into()),
        Aspect::Systolic => Some(patient.pressure[0].into()),
        Aspect::BleedingScore => Some(patient.bleeding_score.into()),
        Aspect::Hba1c => patient.sugar.as_ref().map(|sugar| tenths(sugar.hba1c)),
        Aspect::Inr => match patient.anticoagulant {
            Some(Anticoagulant::VitaminK { inr }) => Some(tenths(inr)),
            _ => None,
        },
        Aspect::Stent => patient.stent.as_ref().map(|stent| stent.months.into()),
        Aspect::Tablets => match patient.antiresorptive {
            Some(Antiresorptive::Oral { years }) => Some(tenths(years)),
            _ => None,
        },
        Aspect::Gray => {
            patient.radiotherapy.as_ref().map(|past| libm::round(past.gray_at_site) as i32)
        }
        Aspect::Event => patient.event.as_ref().map(|event| match event {
            RecentEvent::Infarction { days } | RecentEvent::Stroke { days } => i32::from(*days),
        }),
        Aspect::Platelets => {
            patient.bleeding.as_ref().map(|counts| libm::round(counts.platelets) as i32)
        }
        Aspect::Neutrophils => patient.bleeding.as_ref().map(|counts| tenths(counts.neutrophils)),
        _ => None,
    }
}

/// Sets what the patient has; ranges of aspects lie within the numbers' own.
pub(super) fn set(patient: &mut Patient, aspect: Aspect, to: i32) {
    let tenth = f64::from(to) / 10.0;
    let small = u8::try_from(to).unwrap_or(u8::MAX);
    let large = u16::try_from(to).unwrap_or(u16::MAX);
    match aspect {
        Aspect::Age => patient.age = small,
        Aspect::Cigarettes => patient.cigarettes = small,
        Aspect::Systolic => patient.pressure[0] = large,
        Aspect::BleedingScore => patient.bleeding_score = small,
        Aspect::Hba1c => {
            if let Some(sugar) = &mut patient.sugar {
                sugar.hba1c = tenth;
            }
        }
        Aspect::Inr => {
            if let Some(Anticoagulant::VitaminK { inr }) = &mut patient.anticoagulant {
                *inr = tenth;
            }
        }
        Aspect::Stent => {
            if let Some(stent) = &mut patient.stent {
                stent.months = small;
            }
        }
        Aspect::Tablets => {
            if let Some(Antiresorptive::Oral { years }) = &mut patient.antiresorptive {
                *years = tenth;
            }
        }
        Aspect::Gray => {
            if let Some(past) = &mut patient.radiotherapy {
                past.gray_at_site = f64::from(to);
            }
        }
        Aspect::Event => match &mut patient.event {
            Some(RecentEvent::Infarction { days } | RecentEvent::Stroke { days }) => *days = large,
            None => {}
        },
        Aspect::Platelets | Aspect::Neutrophils => {
            if let Some(counts) = &mut patient.bleeding {
                match aspect {
                    Aspect::Platelets => counts.platelets = f64::from(to),
                    _ => counts.neutrophils = tenth,
                }
            }
        }
        _ => {}
    }
}
