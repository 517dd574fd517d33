use super::*;
use crate::record::Help;
use crate::trial::{DAY, HOUR, START, attempt, mastered, some_address};

const SITTING_NAME: &str = "a";

fn wanted(pasts: &[Past], now: u64) -> Wanted {
    match next(pasts, SITTING_NAME, now, Wish::Due) {
        Next::Case(wanted) => wanted,
        Next::End(end) => panic!("found {end:?}"),
    }
}

fn here(hour: u64) -> Past {
    attempt(START + hour * HOUR).within(SITTING_NAME)
}

#[test]
fn the_first_case_is_for_something_untried() {
    let found = wanted(&[], START);
    assert_eq!(found.why, Some(Why::Untried));
    assert_eq!(found.kinds.len(), KINDS);
    assert_eq!(found.pair, None);
    assert!(found.wants.iter().all(|want| (want - 0.7).abs() < 1e-12));
}

#[test]
fn what_was_missed_is_wanted_next_in_a_case_that_calls_for_it() {
    for skill in Skill::ALL {
        let pasts = [attempt(START).all_but(&[skill])];
        let found = wanted(&pasts, START + DAY);
        assert_eq!(found.focus, skill);
        assert!(matches!(found.why, Some(Why::Missed { days: 1, .. })), "{found:?}");
        for kind in found.kinds {
            assert!(shares(Some(kind))[place(skill)] >= CALLS_OFTEN, "{skill:?}: {kind:?}");
        }
    }
}

#[test]
fn a_skill_is_practised_in_a_block_until_two_successes_in_a_row() {
    let missed = [Skill::Grafting, Skill::Covering];
    let mut pasts = vec![attempt(START - DAY).all_but(&missed)];
    let first = wanted(&pasts, START).focus;
    assert!(missed.contains(&first));
    // Whatever the answers on others, the focus stays until its own are right twice.
    pasts.push(here(0).all_but(&[Skill::Patient]));
    assert_eq!(wanted(&pasts, START + HOUR).focus, first);
    pasts.push(here(1).all_but(&[]));
    let then = wanted(&pasts, START + 2 * HOUR).focus;
    assert_ne!(then, first);
    // And then others come between: the one before is not the next again.
    pasts.push(here(2).all_but(&[first]));
    assert_ne!(wanted(&pasts, START + 3 * HOUR).focus, first);
}

#[test]
fn a_sitting_has_at_most_two_cases_of_one_kind() {
    let kind = Archetype::DefectU;
    let missed = |hour| here(hour).all_but(&[Skill::Covering]).about(kind);
    // Long ago, so that the kind was not seen lately.
    let old = |k| attempt(START - 90 * DAY + k).all_but(&[]).about(Archetype::Steroids);
    let mut pasts: Vec<Past> = (0..10).map(old).collect();
    pasts.push(missed(0));
    pasts.push(missed(1));
    let found = wanted(&pasts, START + 2 * HOUR);
    assert!(!found.kinds.contains(&kind), "{:?}", found.kinds);
}

#[test]
fn a_kind_that_was_seen_lately_waits() {
    let first = wanted(&[], START).kinds[0];
    let pasts = [attempt(START).all_but(&Skill::ALL).about(first)];
    let next = wanted(&pasts, START + DAY).kinds;
    assert_ne!(next[0], first);
}

#[test]
fn a_pair_is_wanted_for_what_was_just_missed_and_not_after_a_pair() {
    let address = some_address();
    let skill = wanted(&[], START).focus;
    let missed = here(0).all_but(&[skill, Skill::FollowingUp]).at_case(address);
    let pair = wanted(std::slice::from_ref(&missed), START + HOUR).pair.unwrap();
    assert_eq!(pair.of, address);
    assert!(pair.rules.iter().all(|rule| rule.skill == skill) && pair.rules.len() == 1);
    // Not where the focus went well, not after a pair, not where it was shown.
    let fine = here(0).all_but(&[Skill::FollowingUp]).at_case(address);
    assert_eq!(wanted(&[fine], START + HOUR).pair, None);
    let changed = format!("{address}.facial-loss.45").parse().unwrap();
    let second = here(1).all_but(&[skill]).at_case(changed);
    assert_eq!(wanted(&[missed.clone(), second], START + 2 * HOUR).pair, None);
    assert_eq!(wanted(&[missed.with(Help::Worked)], START + HOUR).pair, None);
}

#[test]
fn no_pair_is_wanted_for_another_sitting_s_misses() {
    let yesterday = attempt(START - DAY).all_but(&[Skill::Placing]).within("b");
    let yesterday = yesterday.at_case(some_address());
    assert_eq!(wanted(&[yesterday], START).pair, None);
}

#[test]
fn a_sitting_ends_after_its_cases_unless_one_more_is_asked_for() {
    let count = u64::try_from(SITTING).unwrap();
    let pasts: Vec<Past> = (0..count).map(|hour| here(hour).all_but(&[])).collect();
    let ask = |pasts: &[Past], wish| next(pasts, SITTING_NAME, START + count * HOUR, wish);
    assert_eq!(ask(&pasts, Wish::Due), Next::End(End::Enough));
    assert!(matches!(ask(&pasts[1..], Wish::Due), Next::Case(_)));
    assert!(matches!(ask(&pasts, Wish::Anyway), Next::Case(_)));
}

#[test]
fn where_all_is_mastered_and_nothing_due_a_sitting_is_over() {
    let (pasts, last) = mastered();
    let ask = |now, wish| next(&pasts, SITTING_NAME, now, wish);
    assert_eq!(ask(last + DAY, Wish::Due), Next::End(End::NothingDue));
    let Next::Case(anyway) = ask(last + DAY, Wish::Anyway) else { panic!("asked for anyway") };
    assert_eq!(anyway.why, None);
    let Next::Case(later) = ask(last + 200 * DAY, Wish::Due) else { panic!("due by then") };
    assert!(matches!(later.why, Some(Why::Fading { .. })), "{later:?}");
}

#[test]
fn who_knows_more_is_given_harder_cases() {
    let middle = |known: f64| {
        let [low, high] = within(known).unwrap().ends();
        assert!(high - low >= LEAST_WIDTH - 0.011, "{low}, {high}");
        (low + high) / 2.0
    };
    let all = [0.0, 0.3, 0.6, 0.8, 0.95, 1.0].map(middle);
    assert!(all.windows(2).all(|pair| pair[0] <= pair[1]), "{all:?}");
    assert!(all[0] < 0.35 && all[5] > 0.75, "{all:?}");
}

#[test]
fn the_difficulty_that_is_asked_for_leaves_the_wanted_chance_of_success() {
    // Where it is not cut off by what is drawn.
    let known = 0.75;
    let [low, high] = within(known).unwrap().ends();
    let odds = |chance: f64| libm::log(chance / (1.0 - chance));
    let success = |difficulty: f64| {
        let at = odds(TRACING.correct(known)) - SLOPE * (difficulty - MIDDLE);
        1.0 / (1.0 + libm::exp(-at))
    };
    let [hard, easy] = [success(high), success(low)];
    assert!((hard - SUCCESS[0]).abs() < 0.02 && (easy - SUCCESS[1]).abs() < 0.02, "{hard} {easy}");
}

#[test]
fn the_same_history_at_the_same_time_wants_the_same() {
    let (mut pasts, last) = mastered();
    pasts.push(attempt(last + DAY).all_but(&[Skill::Course]).within(SITTING_NAME));
    let ask = || next(&pasts, SITTING_NAME, last + DAY + HOUR, Wish::Due);
    assert_eq!(ask(), ask());
}
