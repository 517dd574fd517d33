use super::*;
use crate::cases::{
    Archetype, Constraints, NoCase, Spread, changed, generate, generate_as, generate_with, proof,
    value_of,
};
use crate::chart::{Aspect, Change};
use crate::rules;
use crate::search;

fn of(case: &Case) -> Difficulty {
    difficulty(case, &proof(case).expect("a sound plan").draft).expect("a whole plan")
}

#[test]
fn less_room_another_rule_and_another_hidden_fact_each_make_it_harder() {
    let all: Vec<&'static Rule> = rules::all().collect();
    let room = |mm: f64| Some([Mm::new(mm), Mm::new(5.0)]);
    let hard = |room: Option<[Mm; 2]>, rules: usize, hidden: usize| {
        let (rules, hidden) = (all[..rules].to_vec(), Fact::ALL[..hidden].to_vec());
        Difficulty { room, rules, hidden }.value()
    };
    assert!(hard(None, 10, 5) < hard(room(3.0), 10, 5), "nothing to place is easier");
    for (more, less) in [(3.0, 2.0), (1.0, 0.4), (0.1, 0.0)] {
        assert!(hard(room(more), 10, 5) < hard(room(less), 10, 5), "{more} {less}");
    }
    for count in 0..50 {
        assert!(hard(None, count, 3) < hard(None, count + 1, 3), "{count}");
    }
    for count in 0..15 {
        assert!(hard(None, 20, count) < hard(None, 20, count + 1), "{count}");
    }
    assert!(hard(None, 0, 0).abs() < 1e-12);
    assert!((hard(room(0.0), 60, 20) - 1.0).abs() < 1e-12);
}

#[test]
fn the_shorter_way_decides_how_much_room_there_is() {
    let hard = |room: [f64; 2]| Difficulty {
        room: Some(room.map(Mm::new)),
        rules: Vec::new(),
        hidden: Vec::new(),
    };
    assert_eq!(hard([0.4, 3.0]).parts(), hard([3.0, 0.4]).parts());
    assert_eq!(hard([0.4, 3.0]).words(), "0.14: 0.4 mm of room, 0 rules in play, 0 hidden facts");
}

#[test]
fn planted_the_same_plan_has_more_room_where_bone_goes_on_for_longer() {
    let (mut met, mut more) = (0, 0);
    for aspect in [Aspect::BoneToCanal, Aspect::BoneToFloor, Aspect::OralPlate] {
        for case in (1..=40).filter_map(|seed| generate(seed).ok()) {
            let Some(now) = value_of(&case, aspect) else { continue };
            let change = Change { aspect, to: now + 20 };
            let Ok(roomier) = changed(&case, change) else { continue };
            let sound = proof(&case).unwrap().draft;
            let rooms = [&case, &roomier].map(|case| difficulty(case, &sound).unwrap().room);
            if let [Some(tight), Some(wide)] = rooms {
                met += 1;
                let sum = |room: [Mm; 2]| room[0].get() + room[1].get();
                assert!(sum(wide) >= sum(tight), "{aspect:?} {:?}", case.address);
                more += u32::from(sum(wide) > sum(tight));
            }
        }
    }
    assert!(met >= 10 && more >= 3, "{met} {more}");
}

#[test]
fn planted_a_history_brings_rules_and_facts_into_play() {
    let asked = Constraints { archetype: Some(Archetype::SteadyInr), ..Constraints::default() };
    for seed in [1, 2, 3] {
        let case = generate_with(seed, &asked).unwrap();
        let sound = proof(&case).unwrap().draft;
        let with = difficulty(&case, &sound).unwrap();
        let mut plain = case.clone();
        plain.patient.anticoagulant = None;
        let without = of(&plain);
        assert!(with.hidden.contains(&Fact::Inr) && !without.hidden.contains(&Fact::Inr));
        assert!(with.rules.len() > without.rules.len(), "{seed}");
        assert!(with.value() > without.value(), "{seed}");
    }
}

#[test]
fn a_tooth_that_can_be_kept_is_easier_than_any_wall_that_is_gone() {
    let drawn = |archetype| {
        let asked = Constraints { archetype: Some(archetype), ..Constraints::default() };
        of(&generate_with(5, &asked).unwrap()).value()
    };
    let kept = drawn(Archetype::Restorable);
    for archetype in [Archetype::DefectV, Archetype::DefectU, Archetype::OralDefect] {
        assert!(drawn(archetype) > kept + 0.3, "{archetype:?}");
    }
}

#[test]
fn the_room_is_that_which_the_sweep_finds_about_the_same_plan() {
    let mut met = 0;
    for seed in 1..=14 {
        let case = generate(seed).unwrap();
        let sound = proof(&case).unwrap().draft;
        let plan = Plan::from_draft(&sound, &case).unwrap();
        if plan.implant_in_place().is_none() {
            continue;
        }
        met += 1;
        let play = search::room(&case, &sound).unwrap().yours.unwrap();
        let most = f64::from(FARTHEST) / 10.0;
        let capped = |ways: [Mm; 2]| ways.iter().map(|way| way.get().min(most)).sum::<f64>();
        let room = of(&case).room.unwrap().map(Mm::get);
        assert!((room[0] - capped(play.facial)).abs() < 1e-9, "{seed}");
        assert!((room[1] - capped(play.depth)).abs() < 1e-9, "{seed}");
    }
    assert!(met >= 6, "{met}");
}

#[test]
fn a_seed_gives_a_case_within_what_is_asked_and_its_address_brings_it_back() {
    for (spread, range) in [
        (Spread::Teaching, "0.6-0.7"),
        (Spread::Teaching, "0-0.3"),
        (Spread::WholeMouth, "0.75-1"),
        (Spread::Population, "0.5-0.7"),
    ] {
        let within: Within = range.parse().unwrap();
        let asked = Constraints { difficulty: Some(within), ..Constraints::default() };
        let case = generate_as(spread, 11, &asked).unwrap();
        assert!(within.holds(of(&case).value()), "{range}: {}", of(&case).words());
        assert_eq!(crate::cases::at(case.address.unwrap()).unwrap(), case);
    }
}

#[test]
fn what_no_case_can_be_is_given_up_with_a_way_out() {
    let asked = Constraints {
        archetype: Some(Archetype::Restorable),
        difficulty: Some("0.9-1".parse().unwrap()),
        ..Constraints::default()
    };
    let refused = generate_with(3, &asked).unwrap_err();
    assert!(matches!(refused, NoCase::NoneSoHard { seed: 3, .. }));
    assert!(refused.to_string().contains("0.9-1") && refused.to_string().contains("widen it"));
}

#[test]
fn a_range_reads_back_and_nonsense_is_refused_in_words() {
    for text in ["0-1", "0.3-0.6", "0.05-0.1"] {
        let within: Within = text.parse().unwrap();
        assert_eq!(within.to_string(), text);
        assert_eq!(Within::try_from(<[u8; 2]>::from(within)), Ok(within));
    }
    for text in ["", "0.5", "0.6-0.3", "0.3-0.33", "-1-2", "0-1.2", "a-b", "NaN-1", "0.5-inf"] {
        let why = text.parse::<Within>().unwrap_err().to_string();
        assert!(why.contains("expected two numbers from 0 to 1"), "{text}: {why}");
    }
    assert!(Within::try_from([200, 20]).is_err());
}
