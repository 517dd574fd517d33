//! How likely it is that skills are known, over time.

use crate::backend::figure;
use crate::pen::{END, Pen, START, laid_out};
use engine::figures::{Figure, Ink};
use learning::date::Clock;
use learning::parameters::MASTERY;
use learning::standing::{Answer, Standing};
use plotters_backend::text_anchor::{HPos, VPos};

/// From panel to panel down, and the room within, pixels.
const PANEL: f64 = 78.0;
const ROOM: f64 = 44.0;
/// Two panels stand beside each other from this width on; the space between them.
const BESIDE: f64 = 560.0;
const BETWEEN: f64 = 28.0;
/// Blank to the left and to the right of the room, pixels.
const LEFT: f64 = 32.0;
const RIGHT: f64 = 34.0;
/// Most answers that get a dot each.
const DOTS: usize = 30;

/// A panel for each skill, `px` CSS pixels wide, on one time axis that ends now: a step at each answer,
/// the dashed line where a skill counts as mastered. Skills without an answer are left out; an answer of
/// which nobody knows when stands at the beginning.
#[must_use]
pub fn mastery_plot(standings: &[Standing], now: u64, clock: Clock, px: f64) -> Figure {
    let px = laid_out(px);
    let courses: Vec<&Standing> = standings.iter().filter(|one| !one.answers.is_empty()).collect();
    let columns = if px < BESIDE { 1 } else { 2 };
    let rows = courses.len().div_ceil(columns);
    let tall = (0..rows).fold(22.0, |tall, _| tall + PANEL);
    let size = [px, tall];
    let mut items = Vec::new();
    let first = courses.iter().flat_map(|one| &one.answers).filter_map(|one| one.at).min();
    let axis = Axis { from: first.unwrap_or(now).min(now), to: now, clock };
    let pen = Pen::on(&mut items, size);
    let count = if columns == 1 { 1.0 } else { 2.0 };
    let wide = (px - BETWEEN * (count - 1.0)) / count;
    let mut corner = [0.0, 0.0];
    for (place, course) in courses.iter().enumerate() {
        // Down the first column, then down the second.
        if place == rows {
            corner = [wide + BETWEEN, 0.0];
        }
        panel(&pen, course, &axis, corner, wide);
        corner[1] += PANEL;
        if place + 1 == rows || place + 1 == courses.len() {
            axis.draw(&pen, corner, wide);
        }
    }
    let title = "How likely it is that you know it".to_owned();
    drop(pen);
    figure("bands", title, says(&courses, &axis), size, items)
}

/// The common time axis.
struct Axis {
    from: u64,
    to: u64,
    clock: Clock,
}

impl Axis {
    /// 0 at its beginning, 1 at its end.
    #[expect(clippy::cast_precision_loss, reason = "far below 2^53 milliseconds")]
    fn share(&self, at: u64) -> f64 {
        let whole = self.to.saturating_sub(self.from).max(1) as f64;
        (at.saturating_sub(self.from) as f64 / whole).min(1.0)
    }

    fn draw(&self, pen: &Pen<'_>, [left, y]: [f64; 2], wide: f64) {
        let y = y + 4.0;
        let from = self.clock.date(self.from).words();
        pen.words(&from, [left + LEFT, y], Ink::Quiet, (HPos::Left, VPos::Top));
        let ends = (HPos::Right, VPos::Top);
        pen.words("now", [left + wide - RIGHT, y], Ink::Quiet, ends);
    }
}

fn panel(pen: &Pen<'_>, course: &Standing, axis: &Axis, [left, top]: [f64; 2], wide: f64) {
    let (from, to) = (left + LEFT, left + wide - RIGHT);
    let foot = top + PANEL - 6.0;
    let x = |one: &Answer| from + axis.share(one.at.unwrap_or(0)) * (to - from);
    let y = |known: f64| foot - known * ROOM;
    pen.words(course.skill.words(), [left, top + 12.0], Ink::Words, START);
    pen.line(&[[from, y(1.0)], [from, foot], [to, foot]], Ink::Fine);
    pen.words("0", [from - 5.0, foot - 3.0], Ink::Quiet, END);
    pen.line(&[[from, y(MASTERY)], [to, y(MASTERY)]], Ink::Dashed);
    pen.words(&short(MASTERY), [from - 5.0, y(MASTERY)], Ink::Quiet, END);
    let mut line: Vec<[f64; 2]> = Vec::new();
    for one in &course.answers {
        if let Some([_, before]) = line.last().copied() {
            line.push([x(one), before]);
        }
        line.push([x(one), y(one.mastery)]);
    }
    if let Some([_, last]) = line.last().copied() {
        line.push([to, last]);
    }
    pen.line(&line, Ink::Incision);
    if course.answers.len() <= DOTS {
        // What was not called for says next to nothing.
        for one in course.called() {
            pen.dot([x(one), y(one.mastery)], 1.8);
        }
    }
    pen.words(&short(course.mastery), [to + 6.0, y(course.mastery)], Ink::Words, START);
}

/// Two places, never rounded up to what it has not reached.
fn short(known: f64) -> String {
    format!("{:.2}", (known * 100.0 + 1e-9).floor() / 100.0)
}

fn says(courses: &[&Standing], axis: &Axis) -> String {
    let course = |one: &&Standing| {
        let lowest = one.answers.iter().map(|one| one.mastery).fold(1.0, f64::min);
        let mastered = if one.is_mastered() { ", mastered" } else { "" };
        let count = one.called().count();
        let answers = if count == 1 { "answer" } else { "answers" };
        format!(
            "{}: {count} {answers}, lowest {}, now {}{mastered}.",
            one.skill.words(),
            short(lowest),
            short(one.mastery)
        )
    };
    let all: Vec<String> = courses.iter().map(course).collect();
    format!(
        "From {} to now; mastered from {MASTERY} on. {}",
        axis.clock.date(axis.from).words(),
        all.join(" ")
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pen::tests::words_apart;
    use engine::figures::Item;
    use engine::rules::Skill;

    const DAY: u64 = 24 * 3_600_000;

    fn planted(count: usize) -> Vec<Standing> {
        let answers = [(20_000, 0.4), (20_010, 0.2), (20_015, 0.96)];
        let answers = answers.map(|(day, mastery)| Answer {
            past: 0,
            at: Some(day * DAY),
            right: true,
            called: true,
            mastery,
        });
        let of = |skill: &Skill| Standing {
            skill: *skill,
            answers: answers.to_vec(),
            mastery: 0.96,
            memory: None,
            last: None,
            due: None,
            held: 1.0,
        };
        Skill::ALL.iter().take(count).map(of).collect()
    }

    #[test]
    fn each_skill_has_a_panel_and_answers_stand_where_they_fell() {
        let plot = mastery_plot(&planted(2), 20_020 * DAY, Clock(0), 360.0);
        let lines: Vec<_> = plot
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Path { rings, ink: Ink::Incision, .. } => Some(&rings[0]),
                _ => None,
            })
            .collect();
        assert_eq!(lines.len(), 2);
        let line = lines[0];
        assert_eq!(line.len(), 6);
        let (from, to) = (line[0].x, line[5].x);
        assert!(((line[2].x - from) / (to - from) - 0.5).abs() < 0.01);
        assert!(((line[4].x - from) / (to - from) - 0.75).abs() < 0.01);
        let rise = (line[2].y - line[4].y) / ROOM;
        assert!((rise - 0.76).abs() < 0.01, "{rise}");
        assert!((lines[1][0].y - line[0].y - PANEL).abs() < 0.2);
    }

    #[test]
    fn every_word_stands_on_the_plot_and_on_no_other_at_every_width() {
        for px in [240.0, 318.0, 560.0, 760.0] {
            for count in [1, 5, 10] {
                let plot = mastery_plot(&planted(count), 20_020 * DAY, Clock(0), px);
                let words = words_apart(&plot);
                let names = Skill::ALL.iter().take(count).map(|skill| skill.words());
                for name in names.chain(["0.95", "now", "4 Oct 2024"]) {
                    assert!(words.iter().any(|word| word == name), "{name}: {words:?}");
                }
            }
        }
    }

    #[test]
    fn it_says_its_numbers_and_calls_nothing_mastered_that_is_not() {
        let mut courses = planted(2);
        courses[1].mastery = 0.9499;
        let says = mastery_plot(&courses, 20_020 * DAY, Clock(0), 360.0).says;
        assert!(
            says.contains("Clearing the patient: 3 answers, lowest 0.20, now 0.96, mastered."),
            "{says}"
        );
        assert!(says.contains("Reading the walls: 3 answers, lowest 0.20, now 0.94."), "{says}");
    }
}
