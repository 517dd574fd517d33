//! Small classes: whether the same learner would pass the next case too, and how many cases a decision
//! needs that can be depended on.
//!
//! Below 30 learners the coefficients of items say little ([`super::Footing`]); what carries a decision
//! then is how far parallel cases agree. Items are cases here, right is passed.
//!
//! Components of variance of learners crossed with cases, both taken for drawn at random. Where every
//! learner reached every case they are those of the analysis of variance; where some did not, those of
//! the same sums with the coefficients that the missing answers leave them: Henderson's method 1 (1953),
//! which Brennan (2001) calls analogous analysis of variance. Nothing is put in a gap; the estimates hold
//! as long as what was missed says nothing about what it would have been, and a learner who gave up
//! where it got hard breaks that. Method: a tutorial of PyPI `generalizit`, confirmed; its form for one
//! answer at most in a cell: worked out here, checked against that package and against projections in
//! numpy over random tables with gaps, and on synthetic data set 1 of Brennan (2001). Indices: two pages
//! on decision studies, confirmed; Brennan's numbers come out. Below 30 learners the components
//! themselves are rough: they say *about so many cases*, not *so many*.

use super::{Answer, Answers, Share};

/// How often two cases of the same learner come out the same.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Agreement {
    /// Over how many learners: those who reached two cases at least. Each counts once, however many.
    pub persons: usize,
    /// How many are left out because they reached fewer.
    pub left_out: usize,
    /// The share of pairs of cases with the same outcome, 0 to 1.
    pub found: f64,
    /// What it would be if learners were all alike and cases differed in difficulty alone.
    pub by_chance: f64,
}

impl Agreement {
    /// Of a class; nothing where nobody reached two cases.
    #[must_use]
    pub fn of(answers: &Answers) -> Option<Self> {
        let passed = |share: &Share| share.value().unwrap_or(0.0);
        let passed: Vec<f64> = Share::of_items(answers).iter().map(passed).collect();
        let rows = (0..answers.persons()).map(|person| answers.row(person));
        let (mut persons, mut found, mut by_chance) = (0, 0.0, 0.0);
        for [agree, expected] in rows.filter_map(|row| of_one(row, &passed)) {
            persons += 1;
            found += agree;
            by_chance += expected;
        }
        let count = persons as f64;
        (persons > 0).then(|| Self {
            persons,
            left_out: answers.persons() - persons,
            found: found / count,
            by_chance: by_chance / count,
        })
    }

    /// How far it goes beyond chance: 0 is chance, 1 is always (Conger's kappa 1980, from memory; of two
    /// cases Cohen's). Nothing where everybody passes, or nobody, so that chance alone always agrees.
    #[must_use]
    pub fn beyond_chance(self) -> Option<f64> {
        let room = 1.0 - self.by_chance;
        (room > NOISE).then(|| (self.found - self.by_chance) / room)
    }
}

/// Agreement of one learner, and what it would be by chance: the shares of ordered pairs of the cases
/// that they reached.
fn of_one(row: &[Answer], passed: &[f64]) -> Option<[f64; 2]> {
    let (mut share, mut chance) = (Share::default(), [[0.0; 2]; 2]);
    for (answer, passed) in row.iter().zip(passed) {
        share.count(*answer);
        if *answer != Answer::NotReached {
            for ([sum, squares], p) in chance.iter_mut().zip([*passed, 1.0 - passed]) {
                *sum += p;
                *squares += p * p;
            }
        }
    }
    let pairs = |count: u32| f64::from(count) * (f64::from(count) - 1.0);
    let all = pairs(share.all());
    let by_chance: f64 = chance.iter().map(|[sum, squares]| sum * sum - squares).sum();
    let agree = pairs(share.right) + pairs(share.wrong);
    (share.all() > 1).then(|| [agree / all, by_chance / all])
}

/// Of 0 and 1, what is smaller than this is a last bit.
const NOISE: f64 = 1e-12;

/// One component of variance. An estimate below 0 is counted as 0, and says that it was below.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Variance(f64);

impl Variance {
    fn of(estimate: f64) -> Self {
        Self(if estimate.abs() < NOISE { 0.0 } else { estimate })
    }

    /// What is counted with, 0 or more.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0.max(0.0)
    }

    /// What the answers gave. Below 0 it is a sign of too few answers, or of none of this variance.
    #[must_use]
    pub const fn estimate(self) -> f64 {
        self.0
    }

    /// Whether the estimate was below 0 and is counted as 0: to be told wherever the number is.
    #[must_use]
    pub const fn is_set_to_zero(self) -> bool {
        self.0 < 0.0
    }
}

/// Where the differences between outcomes come from: learners, cases, and all else.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Components {
    /// Learners differ by this: what a decision is about.
    pub persons: Variance,
    /// Cases differ in difficulty by this.
    pub cases: Variance,
    /// A case is harder for one than for another, and chance.
    pub rest: Variance,
    /// How many answers there are.
    pub answered: usize,
    /// How many are missing.
    pub missing: usize,
}

impl Components {
    /// Of a class. Nothing where no learner reached two cases, no case was reached by two, or answers
    /// are too few to tell the three apart.
    #[must_use]
    pub fn of(answers: &Answers) -> Option<Self> {
        let (persons, cases) =
            (Margin::of(&Share::of_persons(answers)), { Margin::of(&Share::of_items(answers)) });
        let (all, right) = (persons.all, persons.right);
        // With as many answers as learners and cases take up there is no rest to see.
        if all + 1.0 <= persons.count + cases.count {
            return None;
        }
        // Sums of squares, uncorrected: of every answer (0 and 1 are their own squares) and of the mean.
        let (cells, mean) = (right, right * right / all);
        // Learners leave, within each, what cases and the rest make; cases leave what learners and it make.
        let within_persons = ratio(cells - persons.squares, all - persons.count)?;
        let within_cases = ratio(cells - cases.squares, all - cases.count)?;
        let weighed =
            (all - persons.overlap) * within_cases + (all - cases.overlap) * within_persons;
        let tied = all + 1.0 - persons.overlap - cases.overlap;
        let rest = ratio(weighed - (cells - mean), tied)?;
        let answered = all as usize;
        Some(Self {
            persons: Variance::of(within_cases - rest),
            cases: Variance::of(within_persons - rest),
            rest: Variance::of(rest),
            answered,
            missing: answers.persons() * answers.items() - answered,
        })
    }

    /// The index of dependability of the mean over so many cases, 0 to 1: how much of what decides is the
    /// learner, where a pass mark decides and not a place in the class. It is about the mark itself; a
    /// decision far from the pass mark is safer than it says. Nothing where all outcomes are the same, or
    /// of no case.
    #[must_use]
    pub fn phi(&self, cases: u32) -> Option<f64> {
        self.index(cases, self.cases.value() + self.rest.value())
    }

    /// The coefficient of generalizability, for a place in the class: that all had the same cases then
    /// costs nothing. Over as many cases as there were, and none missing, it is alpha.
    #[must_use]
    pub fn relative(&self, cases: u32) -> Option<f64> {
        self.index(cases, self.rest.value())
    }

    fn index(&self, cases: u32, error: f64) -> Option<f64> {
        let error = error / f64::from(cases);
        let all = self.persons.value() + error;
        (cases > 0 && all > 0.0).then(|| self.persons.value() / all)
    }

    /// The least number of cases whose [`Self::phi`] reaches so much, above 0 and below 1
    /// ([`crate::parameters::DEPENDABLE`]). Nothing where learners do not differ beyond chance: no number
    /// of cases would do then, or one does not tell.
    #[must_use]
    pub fn needed(&self, dependable: f64) -> Option<u32> {
        let error = self.cases.value() + self.rest.value();
        let asked = dependable > 0.0 && dependable < 1.0 && self.persons.value() > 0.0;
        asked.then(|| {
            let cases = dependable / (1.0 - dependable) * error / self.persons.value();
            // A whole number must not become the next one for its last bits.
            libm::ceil(cases * (1.0 - NOISE)).max(1.0) as u32
        })
    }
}

/// What the answers come to along one side of the table; rows without an answer are none.
struct Margin {
    /// How many rows.
    count: f64,
    /// How many answers, and how many of them right.
    all: f64,
    right: f64,
    /// The square of what is right in each row over its answers.
    squares: f64,
    /// The square of the answers of each row, over all answers.
    overlap: f64,
}

impl Margin {
    fn of(rows: &[Share]) -> Self {
        let mut found = Self { count: 0.0, all: 0.0, right: 0.0, squares: 0.0, overlap: 0.0 };
        for row in rows.iter().filter(|row| row.all() > 0) {
            let (all, right) = (f64::from(row.all()), f64::from(row.right));
            found.count += 1.0;
            found.all += all;
            found.right += right;
            found.squares += right * right / all;
            found.overlap += all * all;
        }
        found.overlap /= found.all;
        found
    }
}

/// One over the other, where the other is above 0.
fn ratio(above: f64, below: f64) -> Option<f64> {
    (below > NOISE).then(|| above / below)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::Reliability;
    use crate::class::trial::{TEN_BY_FIVE, chance, close, shuffled, table};

    /// Components by the mean squares of a table that misses nothing, as textbooks have them.
    fn by_mean_squares(answers: &Answers) -> [f64; 3] {
        let (n, k) = (answers.persons() as f64, answers.items() as f64);
        let mean = |shares: Vec<Share>| -> Vec<f64> {
            shares.iter().map(|share| share.value().unwrap()).collect()
        };
        let (rows, columns) = (mean(Share::of_persons(answers)), mean(Share::of_items(answers)));
        let grand = rows.iter().sum::<f64>() / n;
        let off = |means: &[f64]| means.iter().map(|m| (m - grand) * (m - grand)).sum::<f64>();
        let [between, cases] = [k * off(&rows), n * off(&columns)];
        let rest = n * k * grand * (1.0 - grand) - between - cases;
        let rest = rest / ((n - 1.0) * (k - 1.0));
        [(between / (n - 1.0) - rest) / k, (cases / (k - 1.0) - rest) / n, rest]
    }

    #[test]
    fn a_table_that_misses_nothing_has_the_components_of_its_mean_squares() {
        for seed in 0..60 {
            let answers = chance(seed, 2 + seed as usize % 30, 2 + seed as usize % 9, 0);
            let found = Components::of(&answers).unwrap();
            let expected = by_mean_squares(&answers);
            for (part, expected) in [found.persons, found.cases, found.rest].iter().zip(expected) {
                close(part.estimate(), expected);
            }
        }
    }

    #[test]
    fn over_its_own_cases_the_relative_coefficient_is_alpha() {
        let mut compared = 0;
        for seed in 0..60 {
            let answers = chance(seed, 4 + seed as usize % 40, 2 + seed as usize % 9, 0);
            let cases = u32::try_from(answers.items()).unwrap();
            let found = Components::of(&answers).unwrap();
            let alpha = Reliability::of(&answers.complete()).map(|one| one.alpha);
            // Where a component is set to zero the two part.
            if let (Some(alpha), false) = (alpha, found.persons.is_set_to_zero()) {
                close(found.relative(cases).unwrap(), alpha);
                compared += 1;
            }
        }
        assert!(compared > 30);
    }

    #[test]
    fn missing_answers_leave_the_estimates_right_on_average() {
        // Draws of one big class with gaps: the mean over gaps is the estimate without them.
        let whole = chance(3, 24, 6, 0);
        let expected = by_mean_squares(&whole);
        let (mut sums, mut state) = ([0.0; 3], 9_u32);
        const DRAWS: u32 = 4000;
        for _ in 0..DRAWS {
            let gaps: Vec<bool> = (0..24 * 6)
                .map(|_| {
                    state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    state >> 16 < 13_000
                })
                .collect();
            let answer = |person, item| match gaps[person * 6 + item] {
                true => Answer::NotReached,
                false => whole.answer(person, item),
            };
            let found = Components::of(&Answers::of(24, 6, &answer)).unwrap();
            let parts = [found.persons, found.cases, found.rest];
            sums.iter_mut().zip(parts).for_each(|(sum, part)| *sum += part.estimate());
        }
        for (sum, expected) in sums.iter().zip(expected) {
            let mean = sum / f64::from(DRAWS);
            assert!((mean - expected).abs() < 0.004, "{mean}, expected {expected}");
        }
    }

    #[test]
    fn what_is_below_nothing_counts_as_nothing_and_says_so() {
        // Learners who all have one of two right: totals differ less than chance would have them.
        let found = Components::of(&table(&["10", "01", "10", "01"])).unwrap();
        assert!(found.persons.is_set_to_zero() && found.persons.estimate() < 0.0);
        assert_eq!(found.persons.value(), 0.0);
        assert_eq!((found.phi(5), found.needed(0.7)), (Some(0.0), None));
        let alike = Components::of(&table(&["11", "11", "11"])).unwrap();
        assert_eq!((alike.persons.estimate(), alike.phi(4), alike.needed(0.7)), (0.0, None, None));
    }

    #[test]
    fn the_number_of_cases_needed_is_the_least_that_reaches_what_is_asked() {
        let mut compared = 0;
        for seed in 0..80 {
            let answers = chance(seed, 12, 5, seed % 20);
            let Some(found) = Components::of(&answers) else { continue };
            for dependable in crate::parameters::DEPENDABLE {
                let Some(cases) = found.needed(dependable) else { continue };
                assert!(found.phi(cases).unwrap() >= dependable - 1e-9);
                let one_less = found.phi(cases - 1);
                assert!(one_less.is_none_or(|phi| phi < dependable));
                compared += 1;
            }
        }
        assert!(compared > 80, "{compared}");
    }

    #[test]
    fn the_exact_table_has_its_agreement() {
        let found = Agreement::of(&table(&TEN_BY_FIVE)).unwrap();
        // Pairs alike of ten, by total: 5 or 0 all, 4 or 1 six, 3 or 2 four.
        close(found.found, 0.6);
        // p .8 .7 .5 .3 .2: ordered pairs of passes 2.5^2 - 1.51, of fails the same, of twenty.
        close(found.by_chance, 2.0 * (6.25 - 1.51) / 20.0);
        close(found.beyond_chance().unwrap(), (0.6 - 0.474) / 0.526);
        assert_eq!((found.persons, found.left_out), (10, 0));
    }

    #[test]
    fn agreement_of_two_cases_is_cohen_s_kappa() {
        // 20 alike passed, 15 alike failed, 5 and 10 apart: kappa 0.4, the textbook table.
        let rows = [("11", 20), ("10", 5), ("01", 10), ("00", 15)];
        let rows: Vec<&str> = rows.iter().flat_map(|(row, n)| vec![*row; *n]).collect();
        let found = Agreement::of(&table(&rows)).unwrap();
        close(found.found, 0.7);
        close(found.by_chance, 0.5);
        close(found.beyond_chance().unwrap(), 0.4);
    }

    #[test]
    fn who_reached_one_case_agrees_with_nobody_and_is_counted() {
        let found = Agreement::of(&table(&["1-1", "0--", "10-"])).unwrap();
        assert_eq!((found.persons, found.left_out), (2, 1));
        close(found.found, 0.5);
        assert_eq!(Agreement::of(&table(&["1-", "-0"])), None);
        let everybody = Agreement::of(&table(&["11", "11"])).unwrap();
        assert_eq!((everybody.found, everybody.beyond_chance()), (1.0, None));
    }

    #[test]
    fn too_few_answers_say_nothing_and_order_does_not_matter() {
        for rows in
            [&[][..], &["1"], &["11"], &["1", "0"], &["1-", "-0"], &["--", "--"], &["1-", "10"]]
        {
            assert_eq!(Components::of(&table(rows)), None, "{rows:?}");
        }
        let answers = chance(5, 20, 6, 15);
        let (one, other) = (Components::of(&answers), Components::of(&shuffled(&answers)));
        let (one, other) = (one.unwrap(), other.unwrap());
        close(one.persons.estimate(), other.persons.estimate());
        close(one.phi(4).unwrap(), other.phi(4).unwrap());
        assert_eq!(one.answered + one.missing, 120);
        let (one, other) = (Agreement::of(&answers), Agreement::of(&shuffled(&answers)));
        close(one.unwrap().found, other.unwrap().found);
    }
}
