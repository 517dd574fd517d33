//! The healed section: when it shows, what it says, and what can be taken hold of in it.

use super::*;
use crate::plan::{Step, choices::HealedAct};

/// A socket that is left to heal; after half a year an implant goes into it.
fn waiting(iso: u8) -> Trial {
    let mut trial = Trial::plain();
    trial.case.site.tooth = Tooth::new(iso).unwrap();
    trial.course("let-heal");
    trial
        .keys(&[("healed-act", "place"), ("sensation-check", "yes")])
        .number(Decision::PlaceAfter, 26);
    trial
}

/// How many steps come before this one.
fn before(trial: &Trial, step: Step) -> usize {
    steps(&trial.draft).into_iter().position(|it| it == step).unwrap()
}

fn drawn(trial: &Trial, done: usize) -> Option<Figure> {
    let plan = carried(trial, done);
    let known = Known::of(&trial.case, &plan);
    let (case, draft) = (&trial.case, &trial.draft);
    let show =
        Show { case, plan: &plan, draft, known: &known, reveal: false, lit: None, px: 360.0 };
    healed_section(&show)
}

/// The implant being tried, or in place.
fn tried(trial: &Trial) -> Figure {
    drawn(trial, before(trial, Step::LatePlacement)).unwrap()
}

#[test]
fn nobody_sees_what_a_site_heals_to_before_coming_back_to_it() {
    let trial = waiting(11);
    let back = before(&trial, Step::ReEntry);
    for done in 0..=back {
        assert!(drawn(&trial, done).is_none(), "after {done} steps");
    }
    let figure = drawn(&trial, back + 1).unwrap();
    assert!(figure.says.contains("teaching model"), "{}", figure.says);
    assert!(figure.says.contains("26 weeks"), "{}", figure.says);
    assert!(holds_ink(&figure, Ink::Dashed) && holds_ink(&figure, Ink::Outline));
}

#[test]
fn bone_that_has_not_come_yet_is_drawn_as_socket_and_goes_with_time() {
    let mut trial = waiting(11);
    trial.number(Decision::PlaceAfter, 6);
    assert!(holds_ink(&tried(&trial), Ink::Socket));
    trial.number(Decision::PlaceAfter, 60);
    assert!(!holds_ink(&tried(&trial), Ink::Socket));
}

#[test]
fn the_words_hold_the_bone_that_rules_measure() {
    let trial = waiting(11);
    let plan = trial.plan();
    let m = Measurements::of(&trial.case, &plan);
    let bone = m.late_facial_bone().unwrap();
    let said = format!("below its platform, is {:.1} mm", bone.get());
    let figure = drawn(&trial, steps(&trial.draft).len()).unwrap();
    assert!(figure.says.contains(&said), "{said} in {}", figure.says);
    assert!(words(&figure).join(" ").contains(&format!("{:.1}", bone.get())));
    assert_eq!(plan.later.re_entry.unwrap().act, HealedAct::Place);
}

#[test]
fn the_late_implant_goes_where_its_handles_are_taken_and_stays_once_placed() {
    const COUNTS: i32 = 2;
    for iso in [11, 21, 31, 41] {
        let trial = waiting(iso);
        let grips = tried(&trial).handles;
        assert_eq!(grips.len(), 2, "{iso}");
        for (place, across) in [(0, true), (0, false), (1, true)] {
            let grip = &grips[place];
            let (decision, rate) = if across { grip.across } else { grip.down }.unwrap();
            let mut next = trial.clone();
            let count = next.draft.number(decision).unwrap();
            next.number(decision, count + COUNTS);
            let to = tried(&next).handles[place].at;
            let gone = if across { to.x - grip.at.x } else { to.y - grip.at.y };
            let off = (gone - f64::from(COUNTS) / rate).abs();
            assert!(off < 0.02 * gone.abs() && gone != 0.0, "{iso} {decision:?}: {gone}");
        }
        let placed = before(&trial, Step::LatePlacement) + 1;
        assert!(drawn(&trial, placed).unwrap().handles.is_empty(), "{iso}");
    }
}
