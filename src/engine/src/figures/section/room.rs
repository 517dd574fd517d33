//! The room for an implant in the section: where the middle of its platform may stand.

use super::{Cutting, several};
use crate::figures::scene::{Scene, mm};
use crate::figures::sheet::Margin;
use crate::figures::{Figure, Ink, Show};
use crate::geometry::{Cone, P2};
use crate::measure::cone_of;
use crate::search::{Placement, Room};
use crate::units::Mm;
use std::collections::{BTreeMap, BTreeSet};

/// Half of the step between places of the platform, in halves of a tenth of a millimetre.
const HALF: i32 = 5;

/// The section of the site as it really is, over it where the platform of an implant may stand: of the
/// learner's own stock size where that stands anywhere, of the one with the most room otherwise. That
/// one is dashed.
#[must_use]
pub fn room_section(show: &Show<'_>, room: &Room) -> Figure {
    let show = &Show { reveal: true, lit: None, ..*show };
    let scene = Scene::of(show);
    let (mut cutting, window) = Cutting::of(&scene, several::below(&scene));
    cutting.site();
    let said = cutting.all_room(room);
    cutting.levels();
    cutting.sides();
    let words = room.words(scene.tooth());
    let layout = cutting.layout(window);
    let says = [words, said].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>();
    cutting.sheet.finish("room", scene.title("Room for an implant"), says.join(" "), layout)
}

impl Cutting<'_, '_> {
    /// The area, the implants and their labels; what of that is told in words.
    fn all_room(&mut self, room: &Room) -> String {
        if let Some(own) = self.scene.body() {
            self.contour(&own, Ink::Outline);
        }
        let shown = room.shown();
        let said = shown.map_or_else(String::new, |size| self.platforms(room, size));
        if let Some((roomiest, _)) = room.roomiest
            && let Some(body) = self.body_at(roomiest)
        {
            self.contour(&body, Ink::Dashed);
            let at = body.axis_at(0.8 * body.length);
            let target = self.put(at.y - body.radius(0.8 * body.length), at.z);
            let words = format!("most room: {}", size_words(roomiest));
            self.sheet.note(Margin::Left, target, words, Ink::Words);
        }
        if let Some(own) = self.scene.body() {
            let at = self.put(own.frame.origin.y, own.frame.origin.z);
            self.sheet.circle(at, 2.5 * self.sheet.pixel(), Ink::Mark);
            self.sheet.note(Margin::Left, at, "your platform", Ink::Words);
        }
        said
    }

    /// The outline of an implant, the section seen through it.
    pub(super) fn contour(&mut self, body: &Cone, ink: Ink) {
        let mut ring = self.put_all(&Self::silhouette(body));
        ring.extend(ring.first().copied());
        self.sheet.line(&ring, ink);
    }

    /// The body of the plan's implant at another place.
    fn body_at(&self, at: Placement) -> Option<Cone> {
        let mut implant = self.scene.implant()?.clone();
        at.put(&mut implant);
        Some(cone_of(&implant))
    }

    /// Where the platform of a size may stand.
    fn platforms(&mut self, room: &Room, [diameter, length]: [i32; 2]) -> String {
        let places = room.region.platforms(diameter, length);
        let Some((first, last)) = places.first().zip(places.last()) else {
            return String::new();
        };
        let (oral, facial) = (first[0], last[0]);
        let rings = rings(&places).into_iter().map(|ring| {
            let at = |[y, z]: [i32; 2]| self.put(f64::from(y) / 20.0, f64::from(z) / 20.0);
            ring.into_iter().map(at).collect()
        });
        let rings: Vec<Vec<P2>> = rings.collect();
        self.sheet.area(rings, Ink::BandAcceptable);
        let size = size_words(Placement::of_counts([diameter, length, 0, 0, 0, 0, 0]));
        let tenth = |count: i32| f64::from(count) / 10.0;
        let target = self.put(tenth(last[0]), tenth(last[1]));
        let words = format!("here the platform's middle may stand, of {size}");
        self.sheet.note(Margin::Right, target, words, Ink::Words);
        let depths = places.iter().map(|at| at[1]);
        let (shallow, deep) =
            depths.fold((i32::MAX, i32::MIN), |(a, b), depth| (a.min(depth), b.max(depth)));
        let span = |from: i32, to: i32| mm(Mm::from_tenths(to - from));
        if places.len() == 1 {
            return format!(
                "Of places half a millimetre apart, the middle of the platform of {size} may stand in one."
            );
        }
        format!(
            "The middle of the platform of {size} may stand in {} places half a millimetre apart: over {} from {} to facial and {} in depth.",
            places.len(),
            span(oral, facial),
            self.scene.oral(),
            span(shallow, deep),
        )
    }
}

fn size_words(at: Placement) -> String {
    let tenth = |count: i32| f64::from(count) / 10.0;
    format!("{:.1} by {}", tenth(at.diameter), mm(Mm::from_tenths(at.length)))
}

/// The outline of squares about places, in halves of a tenth of a millimetre; squares that touch run
/// together.
fn rings(places: &BTreeSet<[i32; 2]>) -> Vec<Vec<[i32; 2]>> {
    const ROUND: [[i32; 2]; 4] = [[0, -1], [1, 0], [0, 1], [-1, 0]];
    let mut edges: BTreeMap<[i32; 2], Vec<[i32; 2]>> = BTreeMap::new();
    for [y, z] in places {
        for [across, along] in ROUND {
            if places.contains(&[y + HALF * across, z + HALF * along]) {
                continue;
            }
            // The side of the square that looks this way, walked with the square on one hand.
            let corner = |turn: i32| {
                [2 * y + HALF * (across - turn * along), 2 * z + HALF * (along + turn * across)]
            };
            edges.entry(corner(-1)).or_default().push(corner(1));
        }
    }
    let mut rings = Vec::new();
    while let Some(start) = edges.keys().next().copied() {
        let (mut ring, mut at) = (Vec::new(), start);
        while let Some(mut onward) = edges.remove(&at) {
            ring.push(at);
            let Some(next) = onward.pop() else { break };
            if !onward.is_empty() {
                edges.insert(at, onward);
            }
            at = next;
        }
        rings.push(ring);
    }
    rings
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::Item;
    use crate::geometry::polygon;

    fn area(ring: &[[i32; 2]]) -> i32 {
        let next = ring.iter().cycle().skip(1);
        ring.iter().zip(next).map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum::<i32>() / 2
    }

    #[test]
    fn the_outline_holds_the_squares_and_leaves_out_the_holes() {
        let one: BTreeSet<_> = [[10, 5]].into();
        assert_eq!(rings(&one).len(), 1);
        assert_eq!(area(&rings(&one)[0]).abs(), 100);
        // A ring of eight squares about a hole, and a square that stands by itself.
        let mut many: BTreeSet<[i32; 2]> =
            (-1..=1).flat_map(|y| (-1..=1).map(move |z| [5 * y, 5 * z])).collect();
        many.remove(&[0, 0]);
        many.insert([40, 0]);
        let rings = rings(&many);
        assert_eq!(rings.len(), 3);
        let areas: Vec<i32> = rings.iter().map(|ring| area(ring)).collect();
        assert_eq!(areas.iter().sum::<i32>().abs(), 900, "{areas:?}");
    }

    #[test]
    fn squares_that_meet_at_a_corner_keep_their_area() {
        let two: BTreeSet<_> = [[0, 0], [5, 5]].into();
        let areas: i32 = rings(&two).iter().map(|ring| area(ring)).sum();
        assert_eq!(areas.abs(), 200);
    }

    #[test]
    fn the_figure_shows_the_region_with_its_scale_and_says_what_it_shows() {
        let case = crate::rules::trial::Trial::plain().case;
        let draft = crate::cases::proof(&case).unwrap().draft;
        let plan = crate::plan::Plan::from_draft(&draft, &case).unwrap();
        let known = crate::rules::Known::of(&case, &plan);
        let (case, plan, draft, known) = (&case, &plan, &draft, &known);
        let show = Show { case, plan, draft, known, reveal: false, lit: None, px: 300.0 };
        let room = crate::search::room(case, draft).unwrap();
        let figure = room_section(&show, &room);
        let region = |item: &Item| match item {
            Item::Path { rings, ink: Ink::BandAcceptable, .. } => Some(rings.clone()),
            _ => None,
        };
        let rings = figure.items.iter().find_map(region).unwrap();
        // As much area as places, a quarter of a square millimetre each.
        let [diameter, length] = room.shown().unwrap();
        let places = room.region.platforms(diameter, length);
        let area: f64 = rings.iter().map(|ring| polygon::signed_area(ring)).sum();
        let all: i32 = places.iter().map(|_| 1).sum();
        assert!((area.abs() - 0.25 * f64::from(all)).abs() < 1e-9, "{area} {all}");
        assert!(figure.scale_bar.is_some() && figure.handles.is_empty());
        assert!(figure.says.contains("stock sizes") && figure.says.contains("may stand in"));
        let words = figure.items.iter().filter_map(|item| match item {
            Item::Words { text, .. } => Some(text.as_str()),
            _ => None,
        });
        assert!(words.collect::<Vec<_>>().join(" ").contains("your platform"));
    }
}
