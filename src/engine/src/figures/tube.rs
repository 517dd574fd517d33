//! How a film is aimed: tooth, receptor and beam, from the side and from the biting edge.

use super::sheet::{Layout, Sheet};
use super::{Anchor, Figure, Ink, Window};
use crate::anatomy::{Jaw, Site};
use crate::debrief::with_unit;
use crate::geometry::{P2, P3, V3};
use crate::imaging::{Aim, View};

/// Half the width of each of the two views, mm, and how far apart their middles lie.
const HALF: f64 = 27.0;
const APART: f64 = 56.0;
/// How much of the beam is drawn before the tooth, mm.
const BEAM: f64 = 34.0;

/// From which side something is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum From {
    /// Facial to the right, apical up in the upper jaw and down in the lower.
    TheSide,
    /// Distal to the right, facial at the bottom.
    TheEdge,
}

/// The figure, to be drawn `px` CSS pixels wide.
#[must_use]
pub fn tube(site: &Site, aim: &Aim, px: f64) -> Figure {
    let window = Window { least: P2::new(-HALF, -HALF), most: P2::new(HALF + APART, HALF + 4.0) };
    let mut sheet = Sheet::new(window, px);
    let view = View::of(site, aim);
    for from in [From::TheSide, From::TheEdge] {
        drawn(&mut sheet, site, &view, from);
    }
    let low = HALF + 2.0;
    for (from, words) in [(From::TheSide, "from the side"), (From::TheEdge, "from the biting edge")]
    {
        let at = P2::new(middle(from), low);
        sheet.words(at, Anchor::Middle, words, Ink::Quiet);
    }
    let letter = sheet.letter();
    let layout = Layout {
        left: 10.0,
        right: 10.0,
        from: window.least.y + letter,
        to: window.most.y - letter,
        scale_bar: Some(10.0),
    };
    let title = format!("How the film is aimed: {}", site.tooth.words());
    sheet.finish("tube", title, says(aim), layout)
}

fn middle(from: From) -> f64 {
    match from {
        From::TheSide => 0.0,
        From::TheEdge => APART,
    }
}

/// Tooth, receptor and the middle ray, as they fall on one of the two planes.
fn drawn(sheet: &mut Sheet, site: &Site, view: &View, from: From) {
    let upper = site.tooth.jaw() == Jaw::Maxilla;
    let put = |at: P3| match from {
        From::TheSide => P2::new(at.y + 2.0, if upper { 3.0 - at.z } else { at.z - 3.0 }),
        From::TheEdge => P2::new(APART + at.x, at.y),
    };
    let stack = site.socket.as_one().stack();
    let side = match from {
        From::TheSide => 1,
        From::TheEdge => 0,
    };
    let edge = |sign: f64| {
        let rows = stack.knots().iter().map(move |knot| (knot.at, knot.share, sign));
        rows.map(|(at, share, sign)| {
            put(stack.frame.point(V3::new(0.0, 0.0, at)) + stack.radii(share)[side] * sign)
        })
        .collect::<Vec<_>>()
    };
    let mut ring = vec![put(site.crown.edge)];
    ring.extend(edge(1.0));
    ring.push(put(stack.apex()));
    ring.extend(edge(-1.0).into_iter().rev());
    if from == From::TheSide {
        sheet.area(vec![ring], Ink::Tooth);
    } else {
        let [across, facial] = stack.radii(1.0);
        let neck = stack.frame.point(V3::new(0.0, 0.0, stack.first_level()));
        let round = (0..24).map(|turn| {
            let (sin, cos) = libm::sincos(f64::from(turn) * core::f64::consts::TAU / 24.0);
            put(neck + across * cos + facial * sin)
        });
        sheet.area(vec![round.collect()], Ink::Tooth);
    }
    let [columns, rows] = view.pixels.map(f64::from);
    let at = |column, row| {
        let (ray, length) = view.ray(column, row);
        (ray, length, put(ray.at(length)))
    };
    let (ends, (ray, length, centre)) = match from {
        From::TheSide => {
            ([(columns / 2.0, 0.0), (columns / 2.0, rows)], at(columns / 2.0, rows / 2.0))
        }
        From::TheEdge => {
            ([(0.0, rows / 2.0), (columns, rows / 2.0)], at(columns / 2.0, rows / 2.0))
        }
    };
    sheet.line(&ends.map(|(column, row)| at(column, row).2), Ink::Outline);
    let tail = put(ray.at(length - BEAM));
    sheet.line(&[tail, centre], Ink::Fine);
    // The head of the arrow lies on the receptor.
    let back = P2::new(tail.x - centre.x, tail.y - centre.y);
    let far = libm::hypot(back.x, back.y).max(1.0);
    let (ux, uy) = (back.x / far, back.y / far);
    for sign in [-0.5, 0.5] {
        let tip =
            P2::new(centre.x + 2.0 * ux - sign * 1.6 * uy, centre.y + 2.0 * uy + sign * 1.6 * ux);
        sheet.line(&[centre, tip], Ink::Fine);
    }
}

/// Whence the tube comes at a positive and at a negative angle, up and down.
pub const UP_AND_DOWN: [&str; 2] = ["the apical side", "the biting side"];
/// The same along the arch.
pub const TO_AND_FRO: [&str; 2] = ["distal", "mesial"];

/// An angle of the tube in words, in whole degrees.
#[must_use]
pub fn tube_words(degrees: f64, [more, less]: [&str; 2]) -> String {
    match degrees {
        0.0 => "at a right angle".to_owned(),
        degrees => {
            let from = if degrees > 0.0 { more } else { less };
            format!("{} from {from}", in_degrees(degrees.abs()))
        }
    }
}

/// A size in whole degrees.
fn in_degrees(size: f64) -> String {
    with_unit(&format!("{size:.0}"), "degrees")
}

/// The aim in words.
fn says(aim: &Aim) -> String {
    let vertical = tube_words(aim.vertical.get(), UP_AND_DOWN);
    let horizontal = tube_words(aim.horizontal.get(), TO_AND_FRO);
    let receptor = match aim.lean.get() {
        0.0 => "stands parallel to the tooth".to_owned(),
        lean => format!("leans {} against the tooth, its apical end further in", in_degrees(lean)),
    };
    format!(
        "Seen from the side the beam comes {vertical}; seen from the biting edge, {horizontal}. The receptor {receptor}."
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::Item;
    use crate::rules::trial::Trial;
    use crate::units::Deg;

    /// The receptor's ends in each of the two views.
    fn receptors(figure: &Figure) -> Vec<[P2; 2]> {
        let lines = figure.items.iter().filter_map(|item| match item {
            Item::Path { rings, ink: Ink::Outline, closed: false } => {
                Some([rings[0][0], rings[0][1]])
            }
            _ => None,
        });
        lines.collect()
    }

    #[test]
    fn a_receptor_that_leans_is_drawn_leaning_and_said_so() {
        let site = Trial::plain().case.site;
        let usual = Aim { size: crate::imaging::Size::Zero, ..Aim::usual(&site) };
        let leaning = Aim { lean: Deg::new(30.0), ..usual };
        let slope = |aim: &Aim| {
            let [a, b] = receptors(&tube(&site, aim, 400.0))[0];
            libm::atan2((b.x - a.x).abs(), (b.y - a.y).abs()).to_degrees()
        };
        assert!((slope(&leaning) - slope(&usual)).abs() > 20.0);
        assert!(tube(&site, &leaning, 400.0).says.contains("leans 30 degrees"));
    }

    #[test]
    fn each_angle_is_said_with_the_side_it_comes_from() {
        let site = Trial::plain().case.site;
        let aim = Aim { vertical: Deg::new(12.0), horizontal: Deg::new(-7.0), ..Aim::usual(&site) };
        let says = tube(&site, &aim, 400.0).says;
        assert!(says.contains("12 degrees from the apical side"), "{says}");
        assert!(says.contains("7 degrees from mesial"), "{says}");
    }
}
