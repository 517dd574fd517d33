//! The gap over depth, facially and orally, as two lines.

use crate::backend::{FINE, Plate, figure, filled, style, words};
use engine::figures::{Facing, Figure, Ink, Item};
use engine::measure::Opening;
use plotters::prelude::*;
use plotters_backend::text_anchor::{HPos, VPos};

const CAPITAL: f64 = 7.6;

/// The gap over the depth below the platform, `px` CSS pixels wide: facially a firm line, orally a
/// dashed one; where no bone is met the stretch is hatched. `oral` names the oral side on screen.
/// `None` without any row.
#[must_use]
pub fn gap_plot(rows: &[Facing], oral: &str, px: f64) -> Option<Figure> {
    let last = rows.last()?.depth.get();
    let px = if px.is_finite() { px.clamp(200.0, 4000.0) } else { 360.0 };
    let tall = (0.55 * px).clamp(150.0, 360.0);
    let met = |opening: Opening| match opening {
        Opening::Bone(length) => Some(length.get()),
        Opening::AboveCrest | Opening::Open => None,
    };
    let widest = rows
        .iter()
        .flat_map(|row| [met(row.facial), met(row.oral)])
        .flatten()
        .fold(2.0_f64, f64::max);
    let top = (widest + 0.3).ceil();
    let mut items = Vec::new();
    // The backend cannot fail; what plotters itself refuses would leave the plot without a part.
    let _ = draw(&mut items, rows, oral, [last, top], [px, tall]);
    let says = says(rows, oral);
    Some(figure("gap-plot", "Gap over depth".to_owned(), says, [px, tall], items))
}

type Refused = Box<dyn core::error::Error>;

/// A side of the implant, read off a row.
type SideOf = fn(&Facing) -> Opening;

/// Runs of depths over which the opening is of one kind.
fn runs(rows: &[Facing], of: SideOf, wanted: fn(Opening) -> bool) -> Vec<Vec<(f64, f64)>> {
    rows.split(|row| !wanted(of(row)))
        .filter(|run| run.len() > 1)
        .map(|run| {
            run.iter()
                .map(|row| match of(row) {
                    Opening::Bone(length) => (row.depth.get(), length.get()),
                    Opening::AboveCrest | Opening::Open => (row.depth.get(), 0.0),
                })
                .collect()
        })
        .collect()
}

fn draw(
    items: &mut Vec<Item>,
    rows: &[Facing],
    oral: &str,
    [last, top]: [f64; 2],
    [px, tall]: [f64; 2],
) -> Result<(), Refused> {
    let units = |pixels: f64| (pixels * FINE) as i32;
    let room = |pixels: f64| (pixels * FINE) as u32;
    let area = Plate::new(items, px, tall).into_drawing_area();
    let mut chart = ChartBuilder::on(&area)
        .margin_top(room(26.0))
        .margin_right(room(14.0))
        .margin_left(room(4.0))
        .margin_bottom(room(20.0))
        .set_label_area_size(LabelAreaPosition::Left, room(26.0))
        .set_label_area_size(LabelAreaPosition::Bottom, room(20.0))
        .build_cartesian_2d(0.0..last, 0.0..top)?;
    for run in runs(rows, |row| row.facial, |one| one == Opening::Open) {
        if let (Some(first), Some(end)) = (run.first(), run.last()) {
            let corners = [(first.0, 0.0), (end.0, top)];
            chart.draw_series([Rectangle::new(corners, filled(Ink::Lost))])?;
        }
    }
    chart
        .configure_mesh()
        .disable_mesh()
        .axis_style(style(Ink::Fine))
        .label_style(words(Ink::Quiet, CAPITAL, HPos::Center, VPos::Top))
        .x_labels(8)
        .y_labels(6)
        .set_all_tick_mark_size(room(4.0))
        .x_label_formatter(&|depth| format!("{depth:.0}"))
        .y_label_formatter(&|gap| format!("{gap:.0}"))
        .draw()?;
    for (of, ink) in [
        ((|row: &Facing| row.facial) as SideOf, Ink::Outline),
        (|row: &Facing| row.oral, Ink::Dashed),
    ] {
        for run in runs(rows, of, |one| matches!(one, Opening::Bone(_))) {
            chart.draw_series(LineSeries::new(run, style(ink)))?;
        }
    }
    let quiet = |across| words(Ink::Quiet, CAPITAL, across, VPos::Bottom);
    let key = format!("gap, mm: firm line facial, dashed line {oral}");
    area.draw(&Text::new(key, (units(8.0), units(15.0)), quiet(HPos::Left)))?;
    let depth = "depth below the platform, mm";
    let at = (units(px - 14.0), units(tall - 8.0));
    area.draw(&Text::new(depth, at, quiet(HPos::Right)))?;
    Ok(())
}

fn says(rows: &[Facing], oral: &str) -> String {
    let at = |opening: Opening| match opening {
        Opening::Bone(length) => format!("{length}"),
        Opening::AboveCrest => "above the bone".to_owned(),
        Opening::Open => "open".to_owned(),
    };
    let every = rows.iter().filter(|row| {
        let millimetres = row.depth.get();
        (millimetres - millimetres.round()).abs() < 1e-9 && millimetres.round() % 2.0 == 0.0
    });
    let parts: Vec<String> = every
        .map(|row| {
            format!(
                "at {:.0} mm {} facially, {} on the {oral} side",
                row.depth.get(),
                at(row.facial),
                at(row.oral)
            )
        })
        .collect();
    format!("The gap below the platform: {}.", parts.join("; "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::units::Mm;

    /// A facial gap of 2 mm that is open from 4 to 6 mm, bone orally.
    fn rows() -> Vec<Facing> {
        (0..=100_i32)
            .map(|k| {
                let depth = Mm::from_tenths(k);
                let open = (40..=60).contains(&k);
                let facial = if open { Opening::Open } else { Opening::Bone(Mm::new(2.0)) };
                Facing { depth, facial, oral: Opening::Bone(Mm::ZERO) }
            })
            .collect()
    }

    #[test]
    fn a_line_breaks_where_no_bone_is_met_and_the_stretch_is_hatched() {
        let figure = gap_plot(&rows(), "palatal", 360.0).unwrap();
        let pieces = figure
            .items
            .iter()
            .filter(|item| matches!(item, Item::Path { closed: false, ink: Ink::Outline, .. }));
        assert_eq!(pieces.count(), 2);
        let hatched = figure.items.iter().find_map(|item| match item {
            Item::Path { rings, closed: true, ink: Ink::Lost } => {
                Some((rings[0][0].x, rings[0][1].x))
            }
            _ => None,
        });
        let (from, to) = hatched.unwrap();
        // From 4 to 6 of 10 mm along an axis that begins 30 px from the left and ends 14 px from the right.
        let at = |depth: f64| 30.0 + depth / 10.0 * (360.0 - 44.0);
        assert!((from - at(4.0)).abs() < 1.0 && (to - at(6.0)).abs() < 1.0, "{from} {to}");
    }

    #[test]
    fn it_says_the_gap_at_every_second_millimetre() {
        let figure = gap_plot(&rows(), "palatal", 360.0).unwrap();
        assert!(
            figure.says.contains("at 4 mm open facially, 0.0 mm on the palatal side"),
            "{}",
            figure.says
        );
        assert!(figure.says.contains("at 2 mm 2.0 mm facially"), "{}", figure.says);
    }

    #[test]
    fn the_same_rows_give_the_same_items() {
        assert_eq!(gap_plot(&rows(), "palatal", 360.0), gap_plot(&rows(), "palatal", 360.0));
        assert!(gap_plot(&[], "palatal", 360.0).is_none());
    }
}
