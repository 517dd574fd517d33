//! Tables to try things on.

use super::{Answer, Answers, Brought, Handed, Marks};
use engine::debrief::{PlanWord, Verdict};
use engine::rules::{Reading, Zone, all};

/// Ten persons and five items whose every statistic is a short fraction (computed by hand).
pub(super) const TEN_BY_FIVE: [&str; 10] =
    ["11111", "11110", "11101", "11010", "11100", "10100", "11000", "01000", "10000", "00000"];

/// One row of 1, 0 and - (not reached) for each person.
pub(super) fn table(rows: &[&str]) -> Answers {
    let items = rows.first().map_or(0, |row| row.len());
    Answers::of(rows.len(), items, &|person, item| match rows[person].as_bytes()[item] {
        b'1' => Answer::Right,
        b'0' => Answer::Wrong,
        _ => Answer::NotReached,
    })
}

/// A table that chance fills: able persons get more right, late items are missed now and then.
pub(super) fn chance(seed: u32, persons: usize, items: usize, missing: u32) -> Answers {
    let mut state = seed.wrapping_mul(2_654_435_761).wrapping_add(1);
    let mut below = |count: u32| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (state >> 16) % count
    };
    let able: Vec<u32> = (0..persons).map(|_| below(100)).collect();
    let cells: Vec<Answer> = able
        .iter()
        .flat_map(|able| (0..items).map(move |item| (*able, item as u32)))
        .map(|(able, item)| {
            let easy = 1 + (item * 37) % 100;
            match below(100) {
                roll if roll < missing => Answer::NotReached,
                _ if below(200) < able + easy => Answer::Right,
                _ => Answer::Wrong,
            }
        })
        .collect();
    Answers::of(persons, items, &|person, item| cells[person * items + item])
}

/// The persons in another order: every third, then what is left over.
pub(super) fn shuffled(answers: &Answers) -> Answers {
    let mut order: Vec<usize> = (0..answers.persons()).collect();
    order.sort_by_key(|person| (person % 3, usize::MAX - person));
    Answers::of(answers.persons(), answers.items(), &|person, item| {
        answers.answer(order[person], item)
    })
}

/// Every person twice.
pub(super) fn doubled(answers: &Answers) -> Answers {
    let persons = answers.persons();
    Answers::of(2 * persons, answers.items(), &|person, item| {
        answers.answer(person % persons, item)
    })
}

pub(super) fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "{found}, expected {expected}");
}

/// An attempt at the case 1.1.7.0 that reached the first four rules of the register, with these faults.
pub(super) fn handed(id: &str, faults: &[(u8, Zone)]) -> Handed {
    let verdicts: Vec<Verdict> = (0_u8..4)
        .zip(all())
        .map(|(place, rule)| {
            let zone = faults.iter().find(|one| one.0 == place).map_or(Zone::Ideal, |one| one.1);
            let reading = Reading::Number(0.0);
            Verdict { rule, reading, zone, knowledge: None, missed: None, here: None }
        })
        .collect();
    Handed {
        id: id.to_owned(),
        case: "1.1.7.0".to_owned(),
        tooth: 11,
        set: None,
        over: true,
        own: true,
        word: PlanWord::of(&verdicts),
        marks: Marks::of(&verdicts),
        brought: Brought { faults: faults.to_vec(), ..Brought::default() },
        chosen: Vec::new(),
        objections: Vec::new(),
        otherwise: None,
        opened_before: false,
        late: false,
        events: 1,
    }
}
