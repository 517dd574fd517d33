//! What a set may decide otherwise, over every rule that there is.

use super::*;
use crate::cases::{generate, proof};
use crate::debrief::{PlanWord, decided, hash_of, judge};
use crate::plan::Plan;
use crate::rules::trial::Trial;
use crate::rules::{Movable, Unfit, all, check_move, check_side, find, movable};

fn local(bands: Vec<Moved>, positions: Vec<Held>) -> Local {
    Local { level: None, protocol: Protocol { note: None, bands, positions } }
}

fn moved(rule: &str, from: f64, to: f64) -> Moved {
    Moved { rule: rule.to_owned(), from, to }
}

fn held(rule: &str, debated: Debated) -> Held {
    Held { rule: rule.to_owned(), holds: Side::One, debated }
}

/// Every limit that may be moved, with its rule.
fn limits() -> Vec<(&'static Rule, Movable)> {
    let of = |rule: &'static Rule| movable(rule).into_iter().map(move |one| (rule, one));
    all().flat_map(of).filter(|(_, one)| one.moves()).collect()
}

/// The figures that a rule's sources give, from the least to the greatest; a debated stretch between
/// two limits is one of them.
fn published(rule: &Rule) -> [f64; 2] {
    let Scale::Bands(bands) = &rule.scale else { panic!("{}", rule.id) };
    let figures = bands.cuts.iter().flat_map(|cut| cut.published);
    figures.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], one| [a.min(one), b.max(one)])
}

/// Values just below, at and just above each limit of a rule, and where it was moved to.
fn readings(rule: &Rule, also: &[f64]) -> Vec<Reading> {
    match &rule.scale {
        Scale::Situations(all) => all.iter().map(|one| Reading::Situation(one.key)).collect(),
        Scale::Bands(bands) => {
            let ends = bands.cuts.iter().map(|cut| cut.at).chain(also.iter().copied());
            ends.flat_map(|at| [at - 0.001, at, at + 0.001]).map(Reading::Number).collect()
        }
    }
}

#[test]
fn a_limit_is_moved_only_within_what_is_published_for_its_rule() {
    let limits = limits();
    assert!(limits.len() > 50, "{}", limits.len());
    for (rule, one) in &limits {
        let [least, most] = published(rule);
        assert!(least <= one.allowed[0] && one.allowed[1] <= most, "{}: {one:?}", rule.id);
        assert!(one.spread[0] <= one.allowed[0] && one.allowed[1] <= one.spread[1], "{}", rule.id);
        assert!((one.allowed[0]..=one.allowed[1]).contains(&one.cut.at), "{}: {one:?}", rule.id);
    }
}

#[test]
fn at_the_ends_of_the_spread_a_move_is_accepted_and_just_outside_it_is_refused() {
    for (rule, one) in limits() {
        let [least, most] = one.allowed;
        for to in [least, most] {
            let to = moved(rule.id, one.cut.at, to);
            assert_eq!(check_move(rule, &to), Ok(()), "{}: {to:?}", rule.id);
        }
        for to in [least - 0.001, most + 0.001] {
            // Another limit at the same value may have a spread of its own.
            let twin = movable(rule).iter().filter(|other| other.cut.at == one.cut.at).count() > 1;
            let to = moved(rule.id, one.cut.at, to);
            assert!(twin || check_move(rule, &to).is_err(), "{}: {to:?}", rule.id);
        }
    }
}

#[test]
fn what_lies_outside_is_refused_with_the_spread_named() {
    let rule = find("membrane-short-of-intact-bone").unwrap();
    let said = |from, to| check_move(rule, &moved(rule.id, from, to)).unwrap_err().to_string();
    assert_eq!(
        said(2.0, 3.5),
        "found 3.5 mm; published figures run from 2 to 3 mm: choose one of these"
    );
    assert_eq!(said(2.2, 2.5), "found 2.2 mm, expected a limit of this rule: 1 mm, 2 mm, 3 mm");
    assert!(matches!(check_move(rule, &moved(rule.id, 2.0, f64::NAN)), Err(Unfit::Outside { .. })));
    let situations = find("facial-plate-levered").unwrap();
    let none = check_move(situations, &moved(situations.id, 1.0, 2.0));
    assert_eq!(none, Err(Unfit::NoLimits));
}

#[test]
fn a_safety_limit_never_makes_a_reading_better_than_the_rule_has_it() {
    let mut tried = 0;
    for rule in all().filter(|rule| rule.cost() == Zone::Unsafe) {
        for one in movable(rule) {
            for to in one.spread {
                let by = moved(rule.id, one.cut.at, to);
                let there = local(vec![by.clone()], Vec::new());
                let laxer = |reading: &Reading| {
                    there.zone_of(rule, *reading).unwrap() < rule.zone_of(*reading).unwrap()
                };
                let laxer = readings(rule, &[to]).iter().any(laxer);
                assert!(!laxer, "{}: {by:?}", rule.id);
                tried += 1;
            }
        }
    }
    assert!(tried > 20, "{tried}");
    let pressure = find("systolic-pressure-too-high").unwrap();
    let said = check_move(pressure, &moved(pressure.id, 160.0, 180.0)).unwrap_err().to_string();
    assert!(said.contains("keeps patients safe") && said.contains("it stays"), "{said}");
    assert_eq!(check_move(pressure, &moved(pressure.id, 200.0, 180.0)), Ok(()));
}

#[test]
fn no_move_changes_another_rule_and_every_move_that_is_wide_enough_changes_its_own() {
    for (rule, one) in limits() {
        for to in one.allowed.into_iter().filter(|to| (to - one.cut.at).abs() > 0.01) {
            let there = local(vec![moved(rule.id, one.cut.at, to)], Vec::new());
            for other in all().filter(|other| *other != rule) {
                assert!(there.of(other).is_none(), "{} by {}", other.id, rule.id);
            }
            let here = there.of(rule).unwrap();
            if here.moved.is_empty() {
                // It would pass another limit of its rule, and so all of them stay.
                assert!(Local::check(&there).is_err(), "{} {to}", rule.id);
                continue;
            }
            let changes = |reading: &Reading| here.zone_of(*reading) != rule.zone_of(*reading);
            assert!(readings(rule, &[to]).iter().any(changes), "{} {to}", rule.id);
        }
    }
}

#[test]
fn limits_keep_their_order_and_a_debate_can_be_closed_from_either_end() {
    for (rule, one) in limits() {
        for to in one.allowed {
            let there = local(vec![moved(rule.id, one.cut.at, to)], Vec::new());
            let here = there.of(rule).unwrap();
            let bands = here.bands().unwrap();
            let rise = bands.cuts.windows(2).all(|pair| pair[0].at <= pair[1].at);
            let differ = bands.zones().collect::<Vec<_>>();
            let differ = differ.windows(2).all(|pair| pair[0].2 != pair[1].2);
            assert!(rise && differ, "{} {to}: {bands:?}", rule.id);
        }
    }
    let oral = find("platform-too-far-oral").unwrap();
    for (from, to, at_3_5) in [(3.0, 4.0, Zone::Ideal), (4.0, 3.0, Zone::Suboptimal)] {
        assert_eq!(oral.zone_of(Reading::Number(3.5)), Some(Zone::Debated));
        let there = local(vec![moved(oral.id, from, to)], Vec::new());
        let zone = there.zone_of(oral, Reading::Number(3.5)).unwrap();
        assert_eq!(zone.is_fault(), at_3_5.is_fault(), "{from} {to}: {zone:?}");
        assert_ne!(zone, Zone::Debated);
    }
}

#[test]
fn a_side_turns_what_is_debated_and_nothing_else() {
    let mut turned = 0;
    for rule in all() {
        for worth in Worth::ALL {
            let side = held(rule.id, Debated::All(worth));
            if check_side(rule, &side).is_err() {
                continue;
            }
            let there = local(Vec::new(), vec![side]);
            for reading in readings(rule, &[]) {
                let (was, is) = (rule.zone_of(reading), there.zone_of(rule, reading));
                let expected = if was == Some(Zone::Debated) { Some(worth.zone()) } else { was };
                assert_eq!(is, expected, "{}: {reading:?}", rule.id);
                turned += u32::from(was == Some(Zone::Debated));
            }
        }
    }
    assert!(turned > 100, "{turned}");
}

#[test]
fn no_side_is_taken_where_sources_agree_nor_to_the_lax_side_of_safety() {
    let said = |id: &str, debated| check_side(find(id).unwrap(), &held(id, debated)).unwrap_err();
    let lax = Debated::All(Worth::Acceptable);
    assert_eq!(said("membrane-short-of-intact-bone", lax.clone()), Unfit::NotDebated);
    assert_eq!(said("facial-plate-levered", lax.clone()), Unfit::NotDebated);
    assert_eq!(said("systolic-pressure-too-high", lax.clone()), Unfit::SafetyMadeLax);
    let each = |key: &str| Debated::Each(vec![(key.to_owned(), Worth::Suboptimal)]);
    assert_eq!(said("platform-too-far-oral", each("far")), Unfit::NoSituations);
    let unknown = said("wide-facial-loss-in-one-stage", each("staged")).to_string();
    assert!(unknown.ends_with("v-shaped, u-shaped"), "{unknown}");
    for rule in all() {
        let debated = rule.positions.is_some()
            && match &rule.scale {
                Scale::Bands(bands) => bands.zones().any(|(.., zone)| zone == Zone::Debated),
                Scale::Situations(all) => all.iter().any(|one| one.zone == Zone::Debated),
            };
        let strict = held(rule.id, Debated::All(Worth::Suboptimal));
        assert_eq!(check_side(rule, &strict).is_ok(), debated, "{}", rule.id);
    }
}

#[test]
fn without_a_set_nothing_changes() {
    for seed in 1..14 {
        let case = generate(seed).unwrap();
        let draft = proof(&case).unwrap().draft;
        let plan = Plan::from_draft(&draft, &case).unwrap();
        let verdicts = judge(&case, &plan);
        assert!(verdicts.iter().all(|one| one.here.is_none() && decided(one, "").is_empty()));
        for one in &verdicts {
            assert_eq!(one.rule.zone_of(one.reading), Some(one.zone), "{}", one.rule.id);
        }
        let hash = hash_of(&verdicts);
        assert_eq!(hash_of(&judge(&case.clone().under(Local::NONE), &plan)), hash);
    }
}

#[test]
fn a_side_turns_the_word_of_the_plan_and_the_verdict_says_by_what() {
    let mut trial = Trial::plain();
    let id = "platform-too-far-oral";
    trial.number(crate::plan::Decision::OffsetFacial, -25);
    let rule = find(id).unwrap();
    let word = |local: Local| {
        let case = trial.case.clone().under(local);
        let mut verdicts = judge(&case, &trial.plan());
        verdicts.retain(|one| one.rule == rule);
        (PlanWord::of(&verdicts), verdicts)
    };
    let (before, verdicts) = word(Local::NONE);
    assert_eq!((before, verdicts[0].zone), (PlanWord::Sound, Zone::Debated), "{verdicts:?}");
    let there = local(Vec::new(), vec![held(id, Debated::All(Worth::Suboptimal))]);
    let (after, verdicts) = word(there);
    assert_eq!((after, verdicts[0].weight()), (PlanWord::Workable, 1));
    let said = decided(&verdicts[0], "nobody seats one there.");
    assert_eq!(
        said,
        "Sources differ here, and your set holds: \u{201c}nobody seats one there\u{201d}. Without it this would be debated."
    );
}

#[test]
fn what_is_decided_twice_or_passes_another_limit_is_refused() {
    let id = "membrane-short-of-intact-bone";
    let said = |bands| local(bands, Vec::new()).check().map_err(|(_, why)| why);
    let (a, b) = (moved(id, 2.0, 2.5), moved(id, 2.0, 3.0));
    assert_eq!(said(vec![a.clone(), b]), Err(Unfit::Twice));
    assert_eq!(said(vec![a]), Ok(()));
    let far = moved("restored-too-early", 12.0, 15.0);
    assert!(matches!(said(vec![far.clone()]), Err(Unfit::Passes { .. })));
    assert_eq!(said(vec![far, moved("restored-too-early", 13.0, 16.0)]), Ok(()));
    assert!(matches!(said(vec![moved("nothing", 1.0, 2.0)]), Err(Unfit::NoRule(_))));
}
