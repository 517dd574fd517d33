//! How sure a learner was against how it went.

use crate::backend::figure;
use crate::pen::{END, MIDDLE, Pen, START, laid_out};
use engine::figures::{Figure, Ink};
use learning::calibration::{Calibration, Group};
use learning::tables;
use plotters_backend::text_anchor::{HPos, VPos};

/// The widest that it is drawn: it is as tall as it is wide.
const WIDEST: f64 = 395.0;
/// Blank above, to the left, below and to the right of the square, pixels.
const AROUND: [f64; 4] = [28.0, 34.0, 34.0, 34.0];
/// What is drawn along: from a little below the least sure answer to a little above the surest, percent.
const SAID: [f64; 2] = [46.0, 104.0];

/// A point for each answer that was given, `px` CSS pixels wide: how sure along, how often right
/// upwards, with the band in which that may lie and the count beside it; on the dashed line what was
/// said is what happened.
#[must_use]
pub fn calibration_plot(shown: &Calibration, px: f64) -> Figure {
    let px = laid_out(px).min(WIDEST);
    let mut items = Vec::new();
    draw(&Pen::on(&mut items, [px, px]), &shown.groups, px);
    let title = "How sure, and how often right".to_owned();
    figure("bands", title, tables::calibration(shown).says(), [px, px], items)
}

fn draw(pen: &Pen<'_>, groups: &[Group], px: f64) {
    let [above, left, below, right] = AROUND;
    let x = |said: f64| left + (said - SAID[0]) / (SAID[1] - SAID[0]) * (px - left - right);
    let y = |share: f64| above + (1.0 - share) * (px - above - below);
    pen.line(&[[left, y(1.0)], [left, y(0.0)], [px - right, y(0.0)]], Ink::Fine);
    for percent in [0, 25, 50, 75, 100] {
        let at = y(f64::from(percent) / 100.0);
        pen.line(&[[left - 4.0, at], [left, at]], Ink::Fine);
        pen.words(&percent.to_string(), [left - 7.0, at], Ink::Quiet, END);
    }
    for percent in engine::session::SURENESS {
        let at = x(f64::from(percent));
        pen.line(&[[at, y(0.0)], [at, y(0.0) + 4.0]], Ink::Fine);
        pen.words(&percent.to_string(), [at, y(0.0) + 12.0], Ink::Quiet, MIDDLE);
    }
    pen.words("right, %", [4.0, 12.0], Ink::Quiet, (HPos::Left, VPos::Center));
    pen.words("how sure, %", [px - 4.0, px - 8.0], Ink::Quiet, END);
    pen.line(&[[x(50.0), y(0.5)], [x(100.0), y(1.0)]], Ink::Dashed);
    for group in groups {
        let at = x(f64::from(group.percent));
        let band = group.band.map(y);
        pen.line(&[[at, band[0]], [at, band[1]]], Ink::Outline);
        for end in band {
            pen.line(&[[at - 4.0, end], [at + 4.0, end]], Ink::Outline);
        }
        pen.dot([at, y(group.observed)], 3.5);
        let beside = [at + 7.0, y(group.observed)];
        pen.words(&group.count.to_string(), beside, Ink::Words, START);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pen::tests::words_apart;
    use engine::figures::Item;
    use engine::plan::Step;
    use learning::past::Sure;

    fn planted() -> Calibration {
        let of = |(percent, right, all): (u8, u32, u32)| {
            (0..all).map(move |n| Sure { step: Step::Flap, percent, right: n < right })
        };
        let groups = [(50, 4, 8), (60, 5, 10), (75, 9, 12), (90, 6, 12), (100, 9, 10)];
        Calibration::of(&groups.into_iter().flat_map(of).collect::<Vec<_>>()).unwrap()
    }

    #[test]
    fn a_point_on_the_line_is_right_as_often_as_it_said_and_one_below_it_less_often() {
        let plot = calibration_plot(&planted(), 360.0);
        let dots: Vec<_> = plot
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Circle { middle, .. } => Some(*middle),
                _ => None,
            })
            .collect();
        let line = plot.items.iter().find_map(|item| match item {
            Item::Path { rings, ink: Ink::Dashed, .. } => Some([rings[0][0], rings[0][1]]),
            _ => None,
        });
        let [from, to] = line.unwrap();
        let over = |place: usize| {
            let dot = dots[place];
            from.y + (dot.x - from.x) / (to.x - from.x) * (to.y - from.y) - dot.y
        };
        assert_eq!(dots.len(), 5);
        assert!(over(0).abs() < 0.3 && over(2).abs() < 0.3, "{dots:?}");
        assert!(over(3) < -50.0, "half right at 90 % lies far below: {dots:?}");
    }

    #[test]
    fn counts_beside_points_of_one_height_keep_apart() {
        let of =
            |percent: u8| (0..120).map(move |n| Sure { step: Step::Flap, percent, right: n < 100 });
        let level = [50, 60, 75, 90, 100].into_iter().flat_map(of).collect::<Vec<_>>();
        let words = words_apart(&calibration_plot(&Calibration::of(&level).unwrap(), 240.0));
        assert_eq!(words.iter().filter(|word| *word == "120").count(), 5);
    }

    #[test]
    fn every_word_stands_on_the_plot_and_on_no_other_at_every_width() {
        for px in [240.0, 318.0, 720.0] {
            let words = words_apart(&calibration_plot(&planted(), px));
            for one in ["8", "12", "how sure, %", "right, %"] {
                assert!(words.iter().any(|word| word == one), "{one}: {words:?}");
            }
        }
    }

    #[test]
    fn it_says_its_numbers() {
        let says = calibration_plot(&planted(), 360.0).says;
        assert!(says.starts_with("50 %: 8 answers, 4 right, 50 percent right, 2"), "{says}");
    }
}
