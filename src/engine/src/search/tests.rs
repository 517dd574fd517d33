//! Sweep, room, nearest sound plan and edges under a set's own protocol.

use super::{Grid, Placement, Sweep, holds, nearest, room};
use crate::cases::{generate, proof, proof_with};
use crate::chart::{Aspect, Case};
use crate::debrief::{PlanWord, Verdict, judge};
use crate::plan::choices::Course;
use crate::plan::{Draft, Plan};
use crate::rules::{Debated, Held, Local, Moved, Protocol, Reading, Side, Worth, Zone, find};

fn moving(rule: &str, from: f64, to: f64) -> Local {
    let bands = vec![Moved { rule: rule.to_owned(), from, to }];
    let local = Local { level: None, protocol: Protocol { bands, ..Protocol::default() } };
    local.check().unwrap();
    local
}

fn holding(rule: &str, worth: Worth) -> Local {
    let debated = Debated::All(worth);
    let positions = vec![Held { rule: rule.to_owned(), holds: Side::One, debated }];
    let local = Local { level: None, protocol: Protocol { positions, ..Protocol::default() } };
    local.check().unwrap();
    local
}

fn judged(case: &Case, draft: &Draft) -> Vec<Verdict> {
    judge(case, &Plan::from_draft(draft, case).unwrap())
}

/// Cases with a sound plan, as it stands and under a protocol.
fn proved(local: &Local, count: usize) -> Vec<(Case, Draft)> {
    let one = |seed| {
        let case = generate(seed).ok()?;
        let draft = proof(&case)?.draft;
        Some((case.under(local.clone()), draft))
    };
    (1..60).filter_map(one).take(count).collect()
}

#[test]
fn the_nearest_sound_plan_under_a_stricter_margin_is_sound_under_it() {
    let id = "membrane-short-of-intact-bone";
    let rule = find(id).unwrap();
    let local = moving(id, 2.0, 3.0);
    let mut mended = 0;
    for (case, draft) in proved(&local, 40) {
        let before = judged(&case, &draft);
        let margin = before.iter().find(|verdict| verdict.rule == rule);
        let Some(margin) = margin.filter(|verdict| verdict.zone.is_fault()) else { continue };
        // As the rule stands the same plan is sound.
        assert!(margin.zone_unmoved() < Zone::Debated, "{:?}", case.address);
        let Some(found) = nearest(&case, &draft) else { continue };
        let after = judged(&case, &found.draft);
        assert_eq!(PlanWord::of(&after), PlanWord::Sound, "{:?}", case.address);
        let margin = after.iter().find(|verdict| verdict.rule == rule);
        if let Some(Reading::Number(value)) = margin.map(|verdict| verdict.reading) {
            assert!(value >= 2.999_5, "{:?} {value}", case.address);
        }
        assert!(!found.changes.is_empty());
        mended += 1;
        if mended == 3 {
            break;
        }
    }
    assert!(mended > 0, "no plan ended between two and three millimetres");
}

#[test]
fn the_proof_of_a_case_is_sound_under_its_set() {
    let local = moving("too-near-an-implant", 2.0, 3.0);
    for (case, _) in proved(&local, 6) {
        let draft = proof(&case).unwrap().draft;
        assert_eq!(PlanWord::of(&judged(&case, &draft)), PlanWord::Sound, "{:?}", case.address);
    }
}

#[test]
fn a_sweep_under_a_protocol_decides_as_the_judge_does_and_leaves_less_room_when_stricter() {
    let strict = holding("platform-too-far-facial", Worth::Suboptimal);
    let moved = moving("platform-too-far-oral", 4.0, 3.0);
    let [mut fewer, mut all] = [0, 0];
    for seed in [3, 8] {
        let open = generate(seed).unwrap();
        let Some(draft) = proof_with(&open, Course::PlaceToday).map(|proof| proof.draft) else {
            continue;
        };
        let Some(free) = room(&open, &draft) else { continue };
        for local in [&strict, &moved] {
            let case = open.clone().under(local.clone());
            let bound = room(&case, &draft).unwrap();
            fewer += free.standing - bound.standing;
            all += 1;
            let grid = Grid::of(&case.site);
            let plan = Plan::from_draft(&draft, &case).unwrap();
            let mut sweep = Sweep::of(&case, &plan).unwrap();
            let region = sweep.region(&grid);
            // Where both differ, and at every so many of the rest.
            for place in 0..grid.len() {
                let one = grid.at(place).unwrap();
                if place % 9_973 != 0 && free.region.stands(place) == region.stands(place) {
                    continue;
                }
                if place % 7 == 0 || place % 9_973 == 0 {
                    let found = placed(&case, &plan, one);
                    assert_eq!(region.stands(place), found, "{seed} {one:?}");
                    assert_eq!(sweep.stands(one), found, "{seed} {one:?}");
                }
            }
        }
    }
    assert!(all >= 2 && fewer > 0, "{all} {fewer}");
}

/// Whether no rule of placement faults a placement, all else as it is.
fn placed(case: &Case, plan: &Plan, at: Placement) -> bool {
    let mut plan = plan.clone();
    at.put(plan.implant.as_mut().unwrap());
    let faults = judge(case, &plan);
    !faults.iter().any(|one| one.is_fault() && super::sweep::is_of_placement(one.rule))
}

#[test]
fn where_a_plan_breaks_follows_the_limits_of_the_set() {
    let id = "bleeding-gums-not-treated-first";
    let rule = find(id).unwrap();
    let open = generate(3).unwrap();
    let draft = proof(&open).unwrap().draft;
    // Up to which score the plan keeps its word about bleeding gums.
    let edge = |case: Case| {
        let plan = Plan::from_draft(&draft, &case).unwrap();
        let found = holds(&case, &plan, Aspect::BleedingScore).unwrap();
        assert_eq!(found.ends[1].rule(), Some(rule));
        found.ends[1].last()
    };
    assert_eq!(edge(open.clone()), 20);
    assert_eq!(edge(open.clone().under(holding(id, Worth::Acceptable))), 25);
    assert_eq!(edge(open.under(moving(id, 20.0, 23.0))), 23);
}

#[test]
fn a_side_turns_the_word_of_a_whole_sound_plan_and_a_change_brings_it_back() {
    let mut turned = 0;
    for (case, draft) in proved(&Local::NONE, 12) {
        let debated = judged(&case, &draft);
        let Some(one) = debated.iter().find(|verdict| {
            verdict.zone == Zone::Debated
                && verdict.knowledge != Some(crate::rules::Knowledge::CouldNotBeKnown)
        }) else {
            continue;
        };
        let case = case.under(holding(one.rule.id, Worth::Suboptimal));
        assert_eq!(PlanWord::of(&judged(&case, &draft)), PlanWord::Workable, "{}", one.rule.id);
        if let Some(found) = nearest(&case, &draft) {
            assert_eq!(PlanWord::of(&judged(&case, &found.draft)), PlanWord::Sound);
            assert!(!found.changes.is_empty());
        }
        turned += 1;
    }
    assert!(turned > 2, "{turned}");
}
