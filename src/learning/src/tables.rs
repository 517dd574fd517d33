//! The numbers behind each plot as a table: to be saved as comma-separated values, and to be said in
//! words to whoever cannot see the plot.

use crate::calibration::Calibration;
use crate::class::{OfRule, told};
use crate::csv::Csv;
use crate::date::Clock;
use crate::review::{Mix, StepTime, ZONES};
use crate::standing::Standing;

/// A table: the first cell of a row names it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    columns: Vec<&'static str>,
    rows: Vec<Vec<String>>,
}

impl Table {
    fn with(columns: &[&'static str]) -> Self {
        Self { columns: columns.to_vec(), rows: Vec::new() }
    }

    /// As comma-separated values.
    #[must_use]
    pub fn csv(&self) -> Csv {
        let mut csv = Csv::with(&self.columns);
        for row in &self.rows {
            let cells: Vec<&str> = row.iter().map(String::as_str).collect();
            csv.row(&cells);
        }
        csv
    }

    /// In words, row by row: *Chart: 6 attempts, 20 seconds in the middle.* What is nothing is left out.
    #[must_use]
    pub fn says(&self) -> String {
        let mut says = String::new();
        for row in &self.rows {
            let mut before = ": ";
            for (place, cell) in row.iter().enumerate() {
                if place == 0 {
                    says.push_str(cell);
                } else if cell != "0" {
                    says.push_str(before);
                    says.push_str(cell);
                    says.push(' ');
                    says.push_str(self.columns[place]);
                    before = ", ";
                }
            }
            says.push_str(". ");
        }
        says
    }

    fn row<const N: usize>(&mut self, name: &str, numbers: [f64; N], places: usize) {
        let mut row = vec![name.to_owned()];
        for number in numbers {
            // Counts among the numbers are whole.
            let places = if libm::floor(number) == number { 0 } else { places };
            row.push(format!("{number:.places$}"));
        }
        self.rows.push(row);
    }
}

/// How verdicts divide: a row for each bar.
#[must_use]
pub fn mix(mix: &Mix) -> Table {
    let [a, b, c, d, e, f] = ZONES.map(|zone| zone.word());
    let mut table = Table::with(&["when", "attempts", a, b, c, d, e, f]);
    for bar in &mix.bars {
        let [a, b, c, d, e, f] = bar.counts.map(f64::from);
        table.row(&bar.label, [f64::from(bar.attempts), a, b, c, d, e, f], 0);
    }
    table
}

/// Time per step: a row for each step.
#[must_use]
pub fn times(times: &[StepTime]) -> Table {
    let columns = [
        "step",
        "attempts",
        "seconds in the middle",
        "seconds at the shortest",
        "seconds at the longest",
    ];
    let mut table = Table::with(&columns);
    for one in times {
        let [least, most] = one.range;
        let count = f64::from(u32::try_from(one.count).unwrap_or(u32::MAX));
        table.row(one.step.label(), [count, one.median, least, most], 1);
    }
    table
}

/// Confidence against outcome: a row for each answer that was given.
#[must_use]
pub fn calibration(shown: &Calibration) -> Table {
    let columns = [
        "sure",
        "answers",
        "right",
        "percent right",
        "percent at the low end of the band",
        "percent at its high end",
    ];
    let mut table = Table::with(&columns);
    for one in &shown.groups {
        let [share, low, high] =
            [one.observed, one.band[0], one.band[1]].map(|share| 100.0 * share);
        let numbers = [f64::from(one.count), f64::from(one.right), share, low, high];
        table.row(&format!("{} %", one.percent), numbers, 1);
    }
    table
}

/// How many of a class miss each rule, with where that share may lie in truth: a row for each rule.
#[must_use]
pub fn missed(rules: &[&OfRule]) -> Table {
    let columns = [
        "rule",
        "learners missed it",
        "learners met it",
        "percent",
        "percent at the low end of the interval",
        "percent at its high end",
    ];
    let mut table = Table::with(&columns);
    for one in rules {
        let of = one.learners;
        let share = 100.0 * f64::from(of.wrong) / f64::from(of.all().max(1));
        let [low, high] = told::missing(of).unwrap_or_default();
        let numbers = [f64::from(of.wrong), f64::from(of.all()), share, low, high];
        table.row(one.rule.id, numbers, 1);
    }
    table
}

/// Skills over time: a row for each answer.
#[must_use]
pub fn mastery(standings: &[Standing], clock: Clock) -> Csv {
    let mut table = Csv::with(&["skill", "date", "right", "chance known after"]);
    for one in standings {
        for answer in &one.answers {
            let date = answer.at.map(|at| clock.date(at).iso()).unwrap_or_default();
            let right = if answer.right { "yes" } else { "no" };
            table.row(&[one.skill.key(), &date, right, &format!("{:.3}", answer.mastery)]);
        }
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::past::{Past, Sure};
    use crate::review::{Bar, Span};
    use crate::trial;
    use engine::plan::Step;
    use engine::rules::{Skill, Zone};

    #[test]
    fn each_table_has_a_row_for_each_thing_that_its_plot_shows() {
        let bar = Bar { label: "2 Nov".to_owned(), attempts: 2, counts: [9, 4, 1, 0, 2, 0] };
        let told = mix(&Mix { by: Span::Day, bars: vec![bar], older: 0 });
        assert_eq!(
            told.says(),
            "2 Nov: 2 attempts, 9 ideal, 4 acceptable, 1 debated, 2 outside: likely to compromise. "
        );
        let csv = told.csv();
        let rows: Vec<&str> = csv.text().lines().collect();
        assert_eq!(
            rows,
            [
                "when,attempts,ideal,acceptable,debated,outside: suboptimal,outside: likely to compromise,unsafe",
                "2 Nov,2,9,4,1,0,2,0"
            ]
        );
        let time = StepTime { step: Step::Flap, count: 3, median: 61.25, range: [5.0, 300.0] };
        assert!(times(&[time]).csv().text().ends_with("\r\nFlap,3,61.2,5,300\r\n"));
        let sure = |n| Sure { step: Step::Flap, percent: 75, right: n < 24 };
        let shown = Calibration::of(&(0..32).map(sure).collect::<Vec<_>>()).unwrap();
        assert!(calibration(&shown).csv().text().contains("\r\n75 %,32,24,75,6"));
    }

    #[test]
    fn skills_over_time_have_a_row_for_each_answer_with_its_day() {
        let mut past: Past = trial::attempt(20_784 * 24 * 3_600_000);
        past.head.ended = past.head.begun;
        past.observed.push(trial::observed(trial::rule(Skill::Covering), Zone::Unsafe));
        let standings = crate::standing::of(&[past], 20_790 * 24 * 3_600_000);
        let table = mastery(&standings, Clock(0));
        assert_eq!(table.text().lines().count(), 2);
        assert!(table.text().contains("covering,2026-11-27,no,0."), "{}", table.text());
    }
}
