//! What holds for every figure, and what each promises.

mod handles;
mod healed;
mod lengths;
mod several;
mod shown;
mod sweep;

use super::*;
use crate::anatomy::{Defect, DefectKind, Profile, Tooth, Tube, Wall};
use crate::geometry::{Outline, P2, P3};
use crate::measure::{Measurements, Opening};
use crate::plan::{Decision, Plan, Value, steps};
use crate::rules::Known;
use crate::rules::trial::Trial;
use crate::units::{Deg, Mm};

const FIGURES: [fn(&Show<'_>) -> Figure; 4] = [section, facial_map, gap_clock, gap_profile];

/// A trial with its first steps carried out.
fn carried(trial: &Trial, count: usize) -> Plan {
    let mut plan = Plan::default();
    for step in steps(&trial.draft).into_iter().take(count) {
        plan.carry_out(step, &trial.draft, &trial.case).unwrap();
    }
    plan
}

fn draw(trial: &Trial, done: usize, reveal: bool, px: f64, of: fn(&Show<'_>) -> Figure) -> Figure {
    let plan = carried(trial, done);
    let known = Known::of(&trial.case, &plan);
    let show = Show {
        case: &trial.case,
        plan: &plan,
        draft: &trial.draft,
        known: &known,
        reveal,
        lit: None,
        px,
    };
    of(&show)
}

fn dehiscence() -> Defect {
    let outline = Outline::new(vec![[-22, -10], [22, -10], [22, 0], [8, 60], [-8, 60], [-22, 0]]);
    Defect { wall: Wall::Facial, kind: DefectKind::DehiscenceV, outline: outline.unwrap() }
}

/// A facial dehiscence under flap, membrane, graft and contour layer.
fn covered() -> Trial {
    let mut trial = Trial::plain();
    trial.case.site.defects = vec![dehiscence()];
    trial.keys(&[
        ("flap-design", "trapezoidal"),
        ("papillae", "left"),
        ("periosteal-release", "yes"),
        ("membrane", "native-collagen"),
        ("trim", "rounded"),
        ("fold", "facial-only"),
        ("fixation", "tucked"),
        ("act-order", "membrane-first"),
        ("needle-path", "crest-outward"),
    ]);
    trial.outline(Decision::FlapOutline, &[[-90, -15], [90, -15], [105, 130], [-105, 130]]);
    trial.outline(Decision::MembraneOutline, &[[-50, -5], [50, -5], [50, 90], [-50, 90]]);
    trial.number(Decision::ContourLayer, 15).number(Decision::OralElevation, 30);
    trial
}

fn lower() -> Trial {
    let mut trial = Trial::plain();
    trial.case.site.tooth = Tooth::new(35).unwrap();
    trial.case.site.vital.canal = Some(Tube {
        from: P3::new(-12.0, -2.0, 16.0),
        to: P3::new(12.0, -1.0, 16.5),
        radius: Mm::new(1.4),
    });
    trial.case.site.vital.foramen = Some(P3::new(-3.0, 4.0, 14.0));
    trial.keys(&[("sensation-check", "yes")]);
    trial
}

fn trials() -> Vec<Trial> {
    let mut trials = vec![Trial::plain(), covered(), lower()];
    trials.extend([several::premolar(), several::lower_molar(), several::upper_molar()]);
    for seed in 1..=5 {
        let mut drawn = covered();
        drawn.case = crate::cases::generate(seed).unwrap();
        drawn.keys(&[("sensation-check", "yes")]);
        trials.push(drawn);
    }
    trials
}

/// Every figure of every trial, before anything, once the tooth is out, at the end and revealed.
fn every(px: f64) -> Vec<(String, Figure)> {
    let mut all = Vec::new();
    for (number, trial) in trials().iter().enumerate() {
        for (done, reveal) in [(0, false), (5, false), (10, true)] {
            for of in FIGURES {
                let figure = draw(trial, done, reveal, px, of);
                all.push((
                    format!("trial {number}, {} after {done}, {reveal}", figure.name),
                    figure,
                ));
            }
        }
    }
    all
}

fn points(item: &Item) -> Vec<P2> {
    match item {
        Item::Path { rings, .. } => rings.concat(),
        Item::Circle { middle, radius, .. } => vec![
            P2::new(middle.x - radius, middle.y - radius),
            P2::new(middle.x + radius, middle.y + radius),
        ],
        Item::Words { at, .. } => vec![*at],
    }
}

fn holds_ink(figure: &Figure, wanted: Ink) -> bool {
    figure.items.iter().any(|item| ink(item) == wanted)
}

fn ink(item: &Item) -> Ink {
    match item {
        Item::Path { ink, .. } | Item::Circle { ink, .. } | Item::Words { ink, .. } => *ink,
    }
}

fn words(figure: &Figure) -> Vec<&str> {
    let items = figure.items.iter();
    items
        .filter_map(|item| match item {
            Item::Words { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect()
}

/// Lines of an ink that are one straight stretch.
fn stretches(figure: &Figure, wanted: Ink) -> Vec<[P2; 2]> {
    let items = figure.items.iter().filter(|item| ink(item) == wanted);
    items
        .filter_map(|item| match item {
            Item::Path { rings, .. } => Some([*rings[0].first()?, *rings[0].last()?]),
            _ => None,
        })
        .collect()
}

fn length([a, b]: [P2; 2]) -> f64 {
    libm::hypot(a.x - b.x, a.y - b.y)
}
