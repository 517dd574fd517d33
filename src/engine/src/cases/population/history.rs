//! What patients bring: conditions one by one, likelier with age.
//!
//! Diabetes in 9.3 % (19 of 204 implant patients, Alberti et al. 2020, confirmed) and smoking in a
//! fifth of adults (confirmed secondary) are surveyed; the other shares are from memory, and every
//! value that goes with a condition is ours.

use crate::cases::draw::{Draws, Field, Stream, halves, tenths};
use crate::chart::{Anticoagulant, Antiresorptive, Patient, Sex, Sugar};

/// Odds that rise by a factor e for every `years` and are even at `even`.
fn aged(age: u8, even: f64, years: f64) -> f64 {
    let odds = libm::exp((f64::from(age) - even) / years);
    odds / (1.0 + odds)
}

pub(super) fn draw(draws: &Draws, patient: &mut Patient) {
    let mut stream = draws.stream(Field::Illness);
    let age = patient.age;
    // Every number is drawn whether it is used or not: none of them moves another.
    let sugar = stream.chance(aged(age, 101.0, 20.0));
    let hba1c = tenths(stream.normal_within(6.9, 0.9, 5.8, 10.5));
    patient.sugar = sugar.then_some(Sugar { hba1c });
    let thins = stream.unit();
    let inr = tenths(stream.normal_within(2.5, 0.5, 1.6, 5.0));
    let doses_a_day = if stream.chance(0.5) { 1 } else { 2 };
    // 8 to 15 % take one or the other (from memory).
    let odds = aged(age, 88.0, 13.0);
    patient.antiplatelets = u8::from(thins < 0.6 * odds);
    patient.anticoagulant = match thins / odds {
        share if (0.6..0.9).contains(&share) => Some(Anticoagulant::Direct { doses_a_day }),
        share if (0.9..1.0).contains(&share) => Some(Anticoagulant::VitaminK { inr }),
        _ => None,
    };
    patient.antiresorptive = against_loss(&mut stream, patient.sex, age);
    patient.cigarettes = cigarettes(&mut stream);
    patient.pressure = pressure(&mut stream, age);
}

/// Tablets 1.5 to 4, injections 0.1 to 0.3 % of patients (from memory): here women past 55 mostly.
fn against_loss(stream: &mut Stream, sex: Sex, age: u8) -> Option<Antiresorptive> {
    let place = stream.unit();
    let years = halves(stream.between(0.5, 8.0));
    let months_since = if stream.chance(0.5) { 3 } else { 5 };
    let odds = match (sex, age) {
        (_, ..55) => 0.002,
        (Sex::Female, _) => 0.10,
        (Sex::Male, _) => 0.015,
    };
    match place / odds {
        share if share < 0.93 => Some(Antiresorptive::Oral { years }),
        share if share < 1.0 => Some(Antiresorptive::Injected { months_since }),
        _ => None,
    }
}

fn cigarettes(stream: &mut Stream) -> u8 {
    let smokes = stream.chance(0.2);
    let count = libm::round(stream.normal_within(12.0, 7.0, 1.0, 40.0));
    if smokes { count as u8 } else { 0 }
}

/// Rises with age; a few stand past what is treated that day.
fn pressure(stream: &mut Stream, age: u8) -> [u16; 2] {
    let over = f64::from(age) - 30.0;
    let systolic = stream.normal_within(118.0 + 0.4 * over, 15.0, 95.0, 215.0);
    let diastolic = stream.normal_within(75.0 + 0.12 * over, 9.0, 50.0, 125.0);
    [libm::round(systolic) as u16, libm::round(diastolic) as u16]
}
