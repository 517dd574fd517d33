//! Simulated learners against the committed report, and what the report claims.

mod draws;
mod learner;
mod memory;
mod practice;
mod report;

use engine::cases::Archetype;
use engine::rules::Skill;
use learner::{Learner, WORLDS};
use practice::{Order, Outcome, World};
use report::{HELD, KNOWN, mean, median};

const DRAWN: &str = include_str!("../data/drawn_cases.csv");
const ROWS: &str = include_str!("../data/simulated_learners.csv");
const TOLD: &str = include_str!("../data/simulated_learners.md");
const README: &str = include_str!("../../README.md");
/// How many learners practise again here, in the usual world and in each of the others.
const AGAIN: [u64; 2] = [15, 2];

#[test]
fn drawn_cases_are_drawn_again_as_they_were_written_down() {
    let all = draws::read(DRAWN);
    assert_eq!(draws::written(&all), DRAWN);
    // A case of every ninth kind, a different one of each.
    for (row, kind) in Archetype::ALL.iter().enumerate().step_by(9) {
        let seed = 1 + row % draws::OF_EACH;
        let written = &all[row * draws::OF_EACH + seed - 1];
        assert_eq!(draws::drawn(*kind, seed as u64).row(), written.row());
    }
}

#[test]
fn what_kinds_of_case_call_for_is_what_was_measured_on_drawn_cases() {
    let all = draws::read(DRAWN);
    let mut mean = [0.0; Skill::ALL.len()];
    for (row, kind) in Archetype::ALL.iter().enumerate() {
        let of_kind = &all[row * draws::OF_EACH..(row + 1) * draws::OF_EACH];
        let of_group = Archetype::ALL.iter().filter(|one| one.group() == kind.group()).count();
        for (place, skill) in Skill::ALL.into_iter().enumerate() {
            let calls = of_kind.iter().filter(|one| one.calls()[place]).count() as f64;
            let share = calls / draws::OF_EACH as f64;
            let held = learning::called::share(Some(*kind), skill);
            assert!((share - held).abs() < 0.005 + 1e-9, "{}, {skill:?}: {share}", kind.key());
            mean[place] += share / (8 * of_group) as f64;
        }
    }
    for (row, kind) in Archetype::ALL.iter().enumerate() {
        let of_kind = &all[row * draws::OF_EACH..(row + 1) * draws::OF_EACH];
        let hard = of_kind.iter().map(|one| one.difficulty).sum::<f64>() / of_kind.len() as f64;
        let held = learning::called::hardness(*kind);
        assert!((hard - held).abs() < 0.005 + 1e-9, "{}: {hard}", kind.key());
    }
    for (mean, held) in mean.into_iter().zip(learning::called::shares(None)) {
        assert!((mean - held).abs() < 0.005 + 1e-9, "{mean}, {held}");
    }
}

#[test]
fn learners_practise_again_as_they_were_written_down_to_the_bit() {
    let world = World::of(draws::read(DRAWN));
    for (place, ranges) in WORLDS.iter().enumerate() {
        let count = AGAIN[usize::from(place > 0)];
        let again = report::outcomes(&world, ranges, count);
        let rows: Vec<String> = again.iter().map(report::row).collect();
        let name = format!("{},", ranges.name);
        let written: Vec<&str> = ROWS.lines().filter(|line| line.starts_with(&name)).collect();
        assert_eq!(written.len() as u64, 3 * report::LEARNERS[usize::from(place > 0)]);
        assert_eq!(rows, written[..rows.len()]);
    }
}

#[test]
fn the_readable_report_tells_what_the_rows_say() {
    let all = report::read(ROWS);
    assert_eq!(report::written(&all), ROWS);
    assert_eq!(report::told(&all), TOLD);
}

#[test]
fn the_scheduler_needs_at_most_sixty_cases_where_random_order_needs_a_hundred() {
    let all = report::of_world(&report::read(ROWS), "usual");
    for how in [median, mean] {
        let ratio = report::ratio(&all, Order::Scheduled, KNOWN, how);
        assert!(ratio.interval[1] <= 0.6, "{ratio:?}");
    }
    // And what was learnt is held no worse for it.
    let held = report::ratio(&all, Order::Scheduled, HELD, mean);
    assert!(held.interval[0] >= 1.0, "{held:?}");
}

#[test]
fn the_readme_quotes_the_report() {
    let all = report::read(ROWS);
    let of = |world, quantity, how: report::Summary| {
        let here = report::of_world(&all, world);
        let each = |order| report::summary(&here, order, quantity, how);
        let ratio = report::ratio(&here, Order::Scheduled, quantity, how);
        [each(Order::Scheduled), each(Order::Random), ratio]
    };
    let range = |one: report::Estimate, digits: usize| {
        let [low, high] = one.interval;
        format!("{low:.digits$} to {high:.digits$}")
    };
    let [scheduled, random, ratio] = of("usual", KNOWN, median);
    let [held, held_random, _] = of("usual", HELD, mean);
    let [_, _, erratic] = of("erratic", KNOWN, median);
    for expected in [
        format!("after {:.0} cases (median; {})", scheduled.value, range(scheduled, 0)),
        format!("after {:.0} ({}): {:.2} of them", random.value, range(random, 0), ratio.value),
        format!("of them ({})", range(ratio, 2)),
        format!("hold {:.2} of the skills", held.value),
        format!("against {:.2}.", held_random.value),
        format!("to {:.2} ({})", erratic.value, range(erratic, 2)),
    ] {
        assert!(README.contains(&expected), "expected in README.md: {expected}");
    }
}

#[test]
fn equal_outcomes_have_the_ratio_one_and_a_median_is_the_middle() {
    assert_eq!(median(&mut [3.0, 1.0, 2.0]), 2.0);
    assert_eq!(median(&mut [4.0, 1.0, 2.0, 3.0]), 2.5);
    assert_eq!(mean(&mut [1.0, 2.0, 6.0]), 3.0);
    let outcome = |learner, order, known| {
        let (world, estimated, held) = ("usual", 9, 0.5);
        Outcome { world, learner, order, known, estimated, held }
    };
    let twice = |learner: u64| {
        let cases = 10 + u32::try_from(learner % 7).expect("few");
        [outcome(learner, Order::Scheduled, cases), outcome(learner, Order::Random, 2 * cases)]
    };
    let all: Vec<Outcome> = (0..50).flat_map(twice).collect();
    // Samples are of learners, so the ratio of one who always needs half is a half in each.
    let ratio = report::ratio(&all, Order::Scheduled, KNOWN, mean);
    assert!((ratio.value - 0.5).abs() < 1e-12);
    assert!(ratio.interval.iter().all(|end| (end - 0.5).abs() < 1e-12), "{ratio:?}");
    let mean_of = report::summary(&all, Order::Scheduled, KNOWN, mean);
    assert!(mean_of.interval[0] < mean_of.value && mean_of.value < mean_of.interval[1]);
}

#[test]
fn a_learner_forgets_without_practice_and_holds_longer_for_practice() {
    let all = draws::read(DRAWN);
    let case = all.iter().find(|one| one.calls().iter().filter(|calls| **calls).count() > 8);
    let case = case.expect("a case that calls for most");
    let (mut idle, mut busy) = (0.0, 0.0);
    for number in 0..200 {
        let mut learner = Learner::of(&WORLDS[0], number, 0);
        for _ in 0..20 {
            learner.attempt(case);
        }
        let soon = learner.will_hold(1.0);
        assert!(soon > learner.will_hold(30.0), "{number}");
        idle += learner.will_hold(30.0);
        for day in 1..5 {
            learner.wake(day);
            learner.attempt(case);
        }
        busy += learner.will_hold(30.0);
    }
    assert!(busy > 1.3 * idle, "{busy}, {idle}");
}
