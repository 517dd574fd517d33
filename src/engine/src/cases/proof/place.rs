//! Where an implant can stand: stock sizes on a coarse grid, judged by the rules that read the
//! placement, the one that failed last asked first.

use super::base::Book;
use crate::anatomy::{Jaw, Neighbour};
use crate::cases::shape::{apex, root_at};
use crate::chart::Case;
use crate::measure::Measurements;
use crate::plan::{Decision, Draft, Plan, Step};
use crate::rules::{self, Judging, Known, Rule};
use crate::units::{Deg, Mm};

/// How many placements are handed on: the first of each of the first sizes that find one.
const MOST: usize = 3;

/// A placement in the steps of the plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Place {
    diameter: i32,
    length: i32,
    facial: i32,
    distal: i32,
    depth: i32,
    tilt: i32,
    tip: i32,
}

const PLACED_BY: [Decision; 7] = [
    Decision::Diameter,
    Decision::Length,
    Decision::OffsetFacial,
    Decision::OffsetDistal,
    Decision::Depth,
    Decision::Tilt,
    Decision::Tip,
];

/// Drafts with a placement that no rule of placement faults.
pub(super) fn placements(case: &Case, base: &Draft) -> Vec<Draft> {
    let Some(mut plan) = ready(case, base) else { return Vec::new() };
    let mut rules: Vec<&'static Rule> = rules::all()
        .filter(|rule| rule.step <= Step::Implant)
        .filter(|rule| rule.reads.iter().any(|read| PLACED_BY.contains(read)))
        .collect();
    let mut found: Vec<Place> = Vec::new();
    for place in grid(case) {
        if found.iter().any(|earlier| earlier.diameter == place.diameter) {
            continue;
        }
        if stands(case, &mut plan, place, &mut rules) {
            found.push(place);
            if found.len() == MOST {
                break;
            }
        }
    }
    found.into_iter().map(|place| written(base, place)).collect()
}

/// The plan up to the implant, with any placement in it.
fn ready(case: &Case, base: &Draft) -> Option<Plan> {
    let any = Place { diameter: 35, length: 100, facial: 0, distal: 0, depth: 0, tilt: 0, tip: 0 };
    let mut draft = written(base, any);
    let mut book = Book(draft);
    // Access is decided later; none is needed to try a placement.
    book.one(Decision::FlapDesign, crate::plan::choices::FlapDesign::NoFlap);
    book.number(Decision::OralElevation, 0);
    draft = book.0;
    let mut plan = Plan::default();
    let steps = [
        Step::Chart,
        Step::Examination,
        Step::Intention,
        Step::Extraction,
        Step::Flap,
        Step::Implant,
    ];
    for step in steps {
        plan.carry_out(step, &draft, case).ok()?;
    }
    Some(plan)
}

fn written(base: &Draft, place: Place) -> Draft {
    let mut book = Book(base.clone());
    let counts = [
        place.diameter,
        place.length,
        place.facial,
        place.distal,
        place.depth,
        place.tilt,
        place.tip,
    ];
    for (decision, count) in PLACED_BY.into_iter().zip(counts) {
        book.number(decision, count);
    }
    book.0
}

fn stands(case: &Case, plan: &mut Plan, place: Place, rules: &mut [&'static Rule]) -> bool {
    let Some(implant) = plan.implant.as_mut() else { return false };
    implant.diameter = Mm::from_tenths(place.diameter);
    implant.length = Mm::from_tenths(place.length);
    implant.facial = Mm::from_tenths(place.facial);
    implant.distal = Mm::from_tenths(place.distal);
    implant.depth = Mm::from_tenths(place.depth);
    implant.tilt = Deg::new(f64::from(place.tilt));
    implant.tip = Deg::new(f64::from(place.tip));
    let (m, known) = (Measurements::of(case, plan), Known::of(case, plan));
    let judging = Judging { case, plan, m: &m, known: &known };
    let failed = rules.iter().position(|rule| {
        let zone = (rule.measure)(&judging).and_then(|reading| rule.zone_of(reading));
        zone.is_some_and(rules::Zone::is_fault)
    });
    // What fails one placement fails the next: ask it first.
    if let Some(failed) = failed {
        rules[..=failed].rotate_right(1);
    }
    failed.is_none()
}

/// Steps of a tenth, rounded.
#[expect(clippy::cast_possible_truncation, reason = "lengths of a site, far inside i32")]
fn tenths(value: f64) -> i32 {
    libm::round(value * 10.0) as i32
}

/// Whole degrees within the decision's range.
fn degrees(value: f64, most: i32) -> i32 {
    (tenths(value) / 10).clamp(-most, most)
}

/// Placements in the order in which they are tried.
fn grid(case: &Case) -> impl Iterator<Item = Place> + '_ {
    let site = &case.site;
    let upper = site.tooth.jaw() == Jaw::Maxilla;
    let diameters: &'static [i32] = match (upper, site.tooth.position()) {
        (true, 2) => &[35, 30, 40],
        (false, 1 | 2) => &[30, 35],
        (true, _) => &[40, 35, 45, 30],
        (false, _) => &[40, 45, 35, 30],
    };
    let root = site.root();
    let tip_z = apex(root).z;
    let centre = |z: f64| middle(case, z);
    let at_crest = tenths(centre(0.5)).clamp(-40, 40);
    let lean = libm::atan2(centre(tip_z + 2.0) - centre(0.5), tip_z + 1.5);
    let tip = degrees(Deg::from_radians(lean).get(), 25);
    let own = degrees(root.tilt.get(), 30);
    let tilts: &'static [i32] =
        if upper { &[-8, -12, -4, -16, 0, -20, 4] } else { &[0, -4, 4, -8, 8, -12, 12] };
    let depths = depths(case);
    diameters.iter().flat_map(move |&diameter| {
        let lengths = lengths(tip_z);
        let depths = depths.clone();
        depths.into_iter().flat_map(move |depth| {
            let faces = offsets(case, diameter, depth);
            lengths.clone().into_iter().flat_map(move |length| {
                let faces = faces.clone();
                tilts.iter().flat_map(move |&tilt| {
                    faces.clone().into_iter().flat_map(move |facial| {
                        [0, 5, -5].into_iter().map(move |aside| Place {
                            diameter,
                            length,
                            facial,
                            distal: (at_crest + aside).clamp(-40, 40),
                            depth,
                            tilt: (own + tilt).clamp(-35, 35),
                            tip,
                        })
                    })
                })
            })
        })
    })
}

/// Half way between the neighbours' surfaces at a level; the root's own middle where one is absent.
fn middle(case: &Case, z: f64) -> f64 {
    let own = root_at(case.site.root(), z.min(apex(case.site.root()).z)).x;
    let side = |neighbour: &Neighbour, inward: f64| match neighbour {
        Neighbour::Root(root) => {
            let at = root_at(root, z);
            Some(at.x + inward * at.half_md)
        }
        Neighbour::Implant(implant) => {
            // Twice as far is asked between implants.
            Some(implant.platform.x + inward * (implant.diameter.get() / 2.0 + 1.5))
        }
        Neighbour::Absent => None,
    };
    let beside = &case.site.neighbours;
    match (side(&beside.mesial, 1.0), side(&beside.distal, -1.0)) {
        (Some(mesial), Some(distal)) => f64::midpoint(mesial, distal),
        (Some(mesial), None) => own.max(mesial + 3.5),
        (None, Some(distal)) => own.min(distal - 3.5),
        (None, None) => own,
    }
}

/// Levels of the platform: 3 to 4 mm below the planned margin and not above the crest.
fn depths(case: &Case) -> Vec<i32> {
    let margin = tenths(case.site.crown.margin_z.get());
    let mut depths: Vec<i32> = [35, 39, 31, 44, 48]
        .into_iter()
        .map(|below| (margin + below).clamp(-60, 60))
        .filter(|depth| *depth >= 0)
        .collect();
    depths.extend([5, 10, 0, 15]);
    let mut seen = Vec::new();
    depths.retain(|depth| {
        let new = !seen.contains(depth);
        seen.push(*depth);
        new
    });
    depths.truncate(4);
    depths
}

/// Lengths that reach 3 to 5 mm past the socket, the middle one first.
fn lengths(apex_z: f64) -> Vec<i32> {
    let wanted = tenths(apex_z + 3.6);
    let mut lengths: Vec<i32> = (8..=16).map(|length| length * 10).collect();
    lengths.sort_by_key(|length| ((length - wanted).abs(), *length));
    lengths.truncate(5);
    lengths
}

/// Facial offsets that leave about 2 mm of gap, then less and more.
fn offsets(case: &Case, diameter: i32, depth: i32) -> Vec<i32> {
    let at = root_at(case.site.root(), f64::from(depth) / 10.0);
    let wall = tenths(at.y + at.half_fo);
    let aim = wall - 20 - diameter / 2;
    [0, -4, 4, -8, -12, 8, -16, 12].into_iter().map(|more| (aim + more).clamp(-60, 60)).collect()
}
