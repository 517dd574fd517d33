//! What the outcomes say: medians, means, ratios against random order, each with the interval in which
//! 95 % of bootstrap samples of learners lie.

use crate::draws::SKILLS;
use crate::learner::{Ranges, WORLDS};
use crate::practice::{DOSE, MOST, Order, Outcome, World};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use std::fmt::Write as _;
use std::thread;

/// How many learners practise in the usual world, and in each of the others.
pub const LEARNERS: [u64; 2] = [500, 200];
/// How many samples of them are drawn for an interval.
const SAMPLES: usize = 1000;

const HEAD: &str = "\
# Simulated learners, each practising in three orders, written by
# `cargo run --release -p tests --example simulated-learners`; what it means stands in
# simulated_learners.md. known, estimated: cases until every skill was known in truth, and mastered by
# the estimate that a learner sees (300: not within 300). held: the share of skills that is known 30
# days after the 60th case, without practice between. Worlds: tests/learners/learner.rs.
";

/// The outcomes of so many learners of a world, learner by learner.
pub fn outcomes(world: &World, ranges: &Ranges, learners: u64) -> Vec<Outcome> {
    let of = |from: u64, to: u64| -> Vec<Outcome> {
        let each = |number| Order::ALL.map(|order| world.practise(ranges, number, order));
        (from..to).flat_map(each).collect()
    };
    let middle = learners / 2;
    thread::scope(|scope| {
        let others = scope.spawn(|| of(middle, learners));
        let mut all = of(0, middle);
        all.extend(others.join().expect("practice does not panic"));
        all
    })
}

pub fn row(one: &Outcome) -> String {
    format!(
        "{},{},{},{},{},{:.6}",
        one.world,
        one.learner,
        one.order.key(),
        one.known,
        one.estimated,
        one.held
    )
}

/// As a file.
pub fn written(all: &[Outcome]) -> String {
    let rows: String = all.iter().map(|one| row(one) + "\n").collect();
    format!("{HEAD}world,learner,order,known,estimated,held\n{rows}")
}

/// From a file.
pub fn read(text: &str) -> Vec<Outcome> {
    let rows = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    rows.map(|row| {
        let cells: Vec<&str> = row.split(',').collect();
        let order = Order::ALL.into_iter().find(|order| order.key() == cells[2]);
        let world = WORLDS.iter().find(|one| one.name == cells[0]);
        Outcome {
            world: world.expect("a world").name,
            learner: cells[1].parse().expect("a number"),
            order: order.expect("an order"),
            known: cells[3].parse().expect("a count"),
            estimated: cells[4].parse().expect("a count"),
            held: cells[5].parse().expect("a share"),
        }
    })
    .collect()
}

/// A value and the interval of its bootstrap samples.
#[derive(Debug, Clone, Copy)]
pub struct Estimate {
    pub value: f64,
    pub interval: [f64; 2],
}

/// What is measured of one learner in one order.
pub type Quantity = fn(&Outcome) -> f64;

pub const KNOWN: Quantity = |one| f64::from(one.known);
pub const ESTIMATED: Quantity = |one| f64::from(one.estimated);
pub const HELD: Quantity = |one| one.held;

/// How values of many learners become one.
pub type Summary = fn(&mut [f64]) -> f64;

pub fn median(values: &mut [f64]) -> f64 {
    let half = values.len() / 2;
    let odd = values.len() % 2 == 1;
    let (below, middle, _) = values.select_nth_unstable_by(half, f64::total_cmp);
    let middle = *middle;
    if odd { middle } else { (below.iter().copied().fold(f64::MIN, f64::max) + middle) / 2.0 }
}

pub fn mean(values: &mut [f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn of(all: &[Outcome], order: Order, quantity: Quantity) -> Vec<f64> {
    all.iter().filter(|one| one.order == order).map(quantity).collect()
}

/// A summary of an order.
pub fn summary(all: &[Outcome], order: Order, quantity: Quantity, how: Summary) -> Estimate {
    estimate(&[of(all, order, quantity)], |[values]| how(values))
}

/// The ratio of an order's summary to that of random order, over the same learners.
pub fn ratio(all: &[Outcome], order: Order, quantity: Quantity, how: Summary) -> Estimate {
    let two = [of(all, order, quantity), of(all, Order::Random, quantity)];
    estimate(&two, |[one, random]| how(one) / how(random))
}

/// The value over all learners, and over samples of them with replacement.
fn estimate<const N: usize>(
    lists: &[Vec<f64>; N],
    of: impl Fn(&mut [Vec<f64>; N]) -> f64,
) -> Estimate {
    let mut random = ChaCha8Rng::seed_from_u64(5);
    let count = lists[0].len();
    let mut samples: Vec<f64> = (0..SAMPLES)
        .map(|_| {
            let drawn: Vec<usize> =
                (0..count).map(|_| crate::learner::below(&mut random, count)).collect();
            of(&mut lists.each_ref().map(|list| drawn.iter().map(|place| list[*place]).collect()))
        })
        .collect();
    samples.sort_by(f64::total_cmp);
    let at = |share: f64| samples[(share * SAMPLES as f64) as usize];
    Estimate { value: of(&mut lists.clone()), interval: [at(0.025), at(0.975)] }
}

fn cell(estimate: Estimate, digits: usize) -> String {
    let [low, high] = estimate.interval;
    format!("{:.digits$} ({low:.digits$} to {high:.digits$})", estimate.value)
}

fn table(all: &[Outcome], title: &str, quantity: Quantity, digits: usize) -> String {
    let mut text = format!(
        "\n## {title}\n\n| order | median | mean | median against random | mean against random |\n|---|---|---|---|---|\n"
    );
    for order in Order::ALL {
        let of = |how| cell(summary(all, order, quantity, how), digits);
        let against = |how| cell(ratio(all, order, quantity, how), 2);
        let _ = writeln!(
            text,
            "| {} | {} | {} | {} | {} |",
            order.key(),
            of(median),
            of(mean),
            against(median),
            against(mean)
        );
    }
    text
}

/// The outcomes of a world.
pub fn of_world(all: &[Outcome], name: &str) -> Vec<Outcome> {
    all.iter().filter(|one| one.world == name).cloned().collect()
}

/// The readable report.
pub fn told(all: &[Outcome]) -> String {
    let usual = &of_world(all, WORLDS[0].name);
    let mut text = format!(
        "# Simulated learners\n\n\
         Written by `cargo run --release -p tests --example simulated-learners`; a test holds it to its data.\n\
         {} learners with parameters of their own (`tests/learners/learner.rs`), each in three orders: by the scheduler (`learning::next` and the sieve of `learning::search`), in random order of teaching draws, and kind after kind.\n\
         Five cases every other day; what a case calls for is that of real draws (`drawn_cases.csv`).\n\
         In brackets: where 95 % of bootstrap samples of learners lie.\n\n\
         What it can say: whether the order of cases, by itself, saves cases in a world like this one, {SKILLS} skills of which most cases call for most and two are called for seldom.\n\
         What it cannot: how people learn; paired cases and difficulty earn nothing here, a paired case counts as the case that it is a pair of.\n",
        LEARNERS[0]
    );
    text += &table(usual, "Cases until every skill is known in truth", KNOWN, 0);
    text += &table(usual, "Cases until every skill is mastered by the estimate", ESTIMATED, 0);
    let title = format!("Share of skills held 30 days after {DOSE} cases");
    text += &table(usual, &title, HELD, 3);
    let never = |order, quantity: Quantity| {
        of(usual, order, quantity).iter().filter(|cases| **cases >= f64::from(MOST)).count()
    };
    let _ = writeln!(text, "\n## Not within {MOST} cases (they count as {MOST})\n");
    for order in Order::ALL {
        let [known, estimated] = [never(order, KNOWN), never(order, ESTIMATED)];
        let _ = writeln!(text, "- {}: {known} in truth, {estimated} by the estimate", order.key());
    }
    text + &others(all)
}

/// How far the result carries into other worlds.
fn others(all: &[Outcome]) -> String {
    let mut text = format!(
        "\n## Other worlds\n\n\
         Cases until every skill is known in truth, medians, {} learners in each of the others; the share held is the mean after {DOSE} cases and 30 days.\n\n\
         | world | | scheduled | random | scheduled against random | held, scheduled | held, random |\n|---|---|---|---|---|---|---|\n",
        LEARNERS[1]
    );
    for ranges in &WORLDS {
        let here = of_world(all, ranges.name);
        let cases = |order| cell(summary(&here, order, KNOWN, median), 0);
        let held = |order| cell(summary(&here, order, HELD, mean), 2);
        let _ = writeln!(
            text,
            "| {} | {} | {} | {} | {} | {} | {} |",
            ranges.name,
            ranges.says,
            cases(Order::Scheduled),
            cases(Order::Random),
            cell(ratio(&here, Order::Scheduled, KNOWN, median), 2),
            held(Order::Scheduled),
            held(Order::Random)
        );
    }
    text
}
