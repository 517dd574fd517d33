//! The memory of a skill against FSRS-6 as others have it: vectors of two ports in `tests/data`, and
//! the crate `fsrs` itself over random histories.

use crate::learner::below;
use fsrs::{FSRS, FSRSItem, FSRSReview, current_retrievability};
use learning::memory::{Grade, Memory};
use learning::parameters::WEIGHTS;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;

const TABLE: &str = include_str!("../data/memory_vectors.csv");
/// The crate counts in single precision.
const SINGLE: f64 = 1e-4;
/// What the ports print: half a unit of the last of at least four decimals, on six figures.
const PRINTED: f64 = 6e-5;

#[test]
fn every_vector_of_the_published_algorithm_is_met() {
    let rows = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    let mut memory = Memory::first(Grade::Good);
    let mut compared = 0;
    for row in rows {
        let cells: Vec<&str> = row.split(',').collect();
        let number = |place: usize| cells[place].parse::<f64>().ok();
        let days = cells[3].parse::<u32>().unwrap_or(0);
        let grade = cells[4].parse::<usize>().ok().map(|number| Grade::ALL[number - 1]);
        let given = |difficulty| Memory { stability: number(1).expect("days"), difficulty };
        match (cells[0], grade) {
            ("first", Some(grade)) => memory = Memory::first(grade),
            ("then", Some(grade)) => memory = memory.after(days, grade),
            ("step", Some(grade)) => {
                let before = given(number(2).expect("a difficulty"));
                close(row, before.held(f64::from(days)), number(5));
                memory = before.after(days, grade);
            }
            ("held", None) => close(row, given(5.0).held(f64::from(days)), number(5)),
            ("until", None) => {
                let until = given(5.0).until(number(5).expect("a chance"));
                // In single precision where it comes from.
                let days = number(8).expect("days");
                assert!((until.max(1.0) - days).abs() < 0.5 + days * 1e-6, "{row}: {until}");
                compared += 1;
                continue;
            }
            _ => panic!("found {row}"),
        }
        close(row, memory.stability, number(6));
        close(row, memory.difficulty, number(7));
        if let Some(days) = number(8) {
            assert_eq!(f64::from(memory.interval(0.9)), days, "{row}");
        }
        compared += 1;
    }
    assert_eq!(compared, 78);
}

fn close(row: &str, found: f64, expected: Option<f64>) {
    if let Some(expected) = expected {
        assert!((found - expected).abs() < PRINTED * expected.max(1.0), "{row}: {found}");
    }
}

#[test]
fn random_histories_leave_what_the_crate_makes_of_them() {
    let theirs = FSRS::new(&[]).expect("its own weights");
    let mut random = ChaCha8Rng::seed_from_u64(6);
    for _ in 0..2000 {
        let count = 1 + below(&mut random, 10);
        let answers: Vec<(u32, Grade)> = (0..count)
            .map(|_| {
                let longest = [1, 3, 30, 400][below(&mut random, 4)];
                let days = u32::try_from(below(&mut random, longest)).expect("few");
                (days, Grade::ALL[below(&mut random, 4)])
            })
            .collect();
        let reviews = answers.iter().enumerate().map(|(place, (days, grade))| FSRSReview {
            rating: 1 + Grade::ALL.iter().position(|one| one == grade).expect("one of four") as u32,
            delta_t: if place == 0 { 0 } else { *days },
        });
        let item = FSRSItem { reviews: reviews.collect() };
        let ours = answers[1..]
            .iter()
            .fold(Memory::first(answers[0].1), |memory, (days, grade)| memory.after(*days, *grade));
        let state = theirs.memory_state(item, None).expect("a state");
        near(ours.stability, state.stability, &answers);
        near(ours.difficulty, state.difficulty, &answers);
        let days = below(&mut random, 200) as f32;
        let decay = WEIGHTS[20] as f32;
        near(ours.held(f64::from(days)), current_retrievability(state, days, decay), &answers);
        near(ours.until(0.85), theirs.next_interval(Some(state.stability), 0.85, 3), &answers);
    }
}

fn near(ours: f64, theirs: f32, answers: &[(u32, Grade)]) {
    let theirs = f64::from(theirs);
    assert!((ours - theirs).abs() <= SINGLE * theirs, "{ours}, {theirs}: {answers:?}");
}
