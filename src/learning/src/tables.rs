//! The numbers behind each plot, as comma-separated values.

use crate::calibration::Calibration;
use crate::csv::Csv;
use crate::date::Clock;
use crate::review::{Mix, StepTime, ZONES};
use crate::standing::Standing;

/// How verdicts divide: a row for each bar.
#[must_use]
pub fn mix(mix: &Mix) -> Csv {
    let [a, b, c, d, e, f] = ZONES.map(|zone| zone.key());
    let mut table = Csv::with(&["when", "attempts", a, b, c, d, e, f]);
    for bar in &mix.bars {
        let [a, b, c, d, e, f] = bar.counts.map(|count| count.to_string());
        table.row(&[&bar.label, &bar.attempts.to_string(), &a, &b, &c, &d, &e, &f]);
    }
    table
}

/// Time per step: a row for each step.
#[must_use]
pub fn times(times: &[StepTime]) -> Csv {
    let columns = ["step", "attempts", "median-seconds", "shortest-seconds", "longest-seconds"];
    let mut table = Csv::with(&columns);
    for one in times {
        let [median, least, most] =
            [one.median, one.range[0], one.range[1]].map(|seconds| fixed(seconds, 1));
        table.row(&[one.step.key(), &one.count.to_string(), &median, &least, &most]);
    }
    table
}

/// Confidence against outcome: a row for each answer that was given.
#[must_use]
pub fn calibration(shown: &Calibration) -> Csv {
    let mut table =
        Csv::with(&["sure-percent", "answers", "right", "share-right", "band-low", "band-high"]);
    for one in &shown.groups {
        let [share, low, high] =
            [one.observed, one.band[0], one.band[1]].map(|share| fixed(share, 4));
        let [sure, count, right] =
            [u32::from(one.percent), one.count, one.right].map(|count| count.to_string());
        table.row(&[&sure, &count, &right, &share, &low, &high]);
    }
    table
}

/// Skills over time: a row for each answer.
#[must_use]
pub fn mastery(standings: &[Standing], clock: Clock) -> Csv {
    let mut table = Csv::with(&["skill", "date", "right", "chance-known-after"]);
    for one in standings {
        for answer in &one.answers {
            let date = answer.at.map(|at| clock.date(at).iso()).unwrap_or_default();
            let right = if answer.right { "yes" } else { "no" };
            table.row(&[one.skill.key(), &date, right, &fixed(answer.mastery, 4)]);
        }
    }
    table
}

fn fixed(value: f64, places: usize) -> String {
    format!("{value:.places$}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::past::{Past, Sure};
    use crate::review::{Bar, Span, trial};
    use engine::plan::Step;
    use engine::rules::{Skill, Zone};

    #[test]
    fn each_table_has_a_row_for_each_thing_that_its_plot_shows() {
        let bar = Bar { label: "2 Nov".to_owned(), attempts: 2, counts: [9, 4, 1, 0, 2, 0] };
        let told = mix(&Mix { by: Span::Day, bars: vec![bar], older: 0 });
        let rows: Vec<&str> = told.text().lines().collect();
        assert_eq!(
            rows,
            [
                "when,attempts,ideal,acceptable,debated,outside-suboptimal,outside-likely-to-compromise,unsafe",
                "2 Nov,2,9,4,1,0,2,0"
            ]
        );
        let time = StepTime { step: Step::Flap, count: 3, median: 61.25, range: [5.0, 300.0] };
        assert!(times(&[time]).text().ends_with("\r\nflap,3,61.2,5.0,300.0\r\n"));
        let sure = |n| Sure { step: Step::Flap, percent: 75, right: n < 24 };
        let shown = Calibration::of(&(0..32).map(sure).collect::<Vec<_>>()).unwrap();
        assert!(calibration(&shown).text().contains("\r\n75,32,24,0.7500,0."));
    }

    #[test]
    fn skills_over_time_have_a_row_for_each_answer_with_its_day() {
        let mut past: Past = trial::attempt(20_784 * 24 * 3_600_000);
        past.head.ended = past.head.begun;
        past.observed.push(trial::observed(trial::rule_of(Skill::Covering), Zone::Unsafe));
        let standings = crate::standing::of(&[past], 20_790 * 24 * 3_600_000);
        let table = mastery(&standings, Clock(0));
        assert_eq!(table.text().lines().count(), 2);
        assert!(table.text().contains("covering,2026-11-27,no,0."), "{}", table.text());
    }
}
