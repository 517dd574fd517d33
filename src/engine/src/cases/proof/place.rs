//! Where an implant can stand: stock sizes on a coarse grid, judged by the rules that read the
//! placement, the one that failed last asked first.

use super::base::Book;
use super::{Workshop, septum};
use crate::anatomy::{Jaw, Neighbour, Site};
use crate::cases::shape::{deepest, face, root_at, socket_at};
use crate::chart::Case;
use crate::plan::{Decision, Draft, PLACED_BY, Placement, Plan, Step};
use crate::rules::{self, Judging, Known, Rule, ask};
use crate::units::Deg;
use std::collections::BTreeSet;

/// How many placements are handed on: the first of each of the first sizes that find one.
const MOST: usize = 3;

/// Drafts with a placement that no rule of placement faults: the first of each of the first sizes
/// that find one, found as they are asked for.
pub(super) fn placements<'a>(
    site: &'a Workshop<'a>,
    base: &'a Draft,
) -> impl Iterator<Item = Draft> + 'a {
    let case = site.case;
    let mut plan = ready(case, base);
    let mut bench = Bench::new();
    let mut found = None;
    let places: Box<dyn Iterator<Item = Placement> + '_> = match ask::has_septum(case) {
        true => Box::new(septum::grid(case)),
        false => Box::new(grid(case)),
    };
    places
        .filter(move |place| {
            // One placement of a size is enough.
            let new = found != Some(place.diameter);
            let stands = new && plan.as_mut().is_some_and(|plan| bench.stands(site, plan, *place));
            if stands {
                found = Some(place.diameter);
            }
            stands
        })
        .take(MOST)
        .map(|place| written(base, place))
}

/// Rules that read the placement, with what they have refused.
struct Bench {
    /// The one that failed last stands first.
    tests: Vec<Test>,
}

struct Test {
    rule: &'static Rule,
    /// Which of the placement's numbers it reads.
    reads: [bool; 7],
    /// What it refused, as far as it reads: the same again needs no measuring.
    refused: BTreeSet<[i32; 7]>,
}

impl Bench {
    fn new() -> Self {
        let tests = rules::all()
            .filter(|rule| rule.step <= Step::Implant)
            .map(|rule| Test {
                rule,
                reads: PLACED_BY.map(|decision| rule.reads.contains(&decision)),
                refused: BTreeSet::new(),
            })
            .filter(|test| test.reads.contains(&true))
            .collect();
        Self { tests }
    }

    fn stands(&mut self, site: &Workshop<'_>, plan: &mut Plan, place: Placement) -> bool {
        let counts = place.counts();
        if self.tests.iter().any(|test| test.refused.contains(&test.seen(counts))) {
            return false;
        }
        let Some(implant) = plan.implant.as_mut() else { return false };
        place.put(implant);
        let case = site.case;
        let (m, known) = (site.measured(plan), Known::of(case, plan));
        let judging = Judging { case, plan, m: &m, known: &known };
        let failed = self.tests.iter().position(|test| {
            let zone =
                (test.rule.measure)(&judging).and_then(|read| case.local.zone_of(test.rule, read));
            zone.is_some_and(rules::Zone::is_fault)
        });
        // What fails one placement fails the next: ask it first.
        if let Some(failed) = failed {
            let seen = self.tests[failed].seen(counts);
            self.tests[failed].refused.insert(seen);
            self.tests[..=failed].rotate_right(1);
        }
        failed.is_none()
    }
}

impl Test {
    /// The numbers that a refusal is kept for. A rule names the decisions that a learner would look
    /// at, not every number that moves it by a hair; only where it reads a single one (a length out
    /// of range, a diameter too wide) are the others surely without effect, and left blank.
    fn seen(&self, counts: [i32; 7]) -> [i32; 7] {
        let alone = self.reads.iter().filter(|reads| **reads).count() == 1;
        let mut seen = counts;
        for (count, reads) in seen.iter_mut().zip(self.reads) {
            if !reads && alone {
                *count = 0;
            }
        }
        seen
    }
}

/// The plan up to the implant, with any placement in it.
fn ready(case: &Case, base: &Draft) -> Option<Plan> {
    let any =
        Placement { diameter: 35, length: 100, facial: 0, distal: 0, depth: 0, tilt: 0, tip: 0 };
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

fn written(base: &Draft, place: Placement) -> Draft {
    let mut book = Book(base.clone());
    for (decision, count) in PLACED_BY.into_iter().zip(place.counts()) {
        book.number(decision, count);
    }
    book.0
}

/// Steps of a tenth, rounded.
#[expect(clippy::cast_possible_truncation, reason = "lengths of a site, far inside i32")]
pub(super) fn tenths(value: f64) -> i32 {
    libm::round(value * 10.0) as i32
}

/// Whole degrees within the decision's range.
pub(super) fn degrees(value: f64, most: i32) -> i32 {
    (tenths(value) / 10).clamp(-most, most)
}

/// Placements in the order in which they are tried. Each one aims: mesiodistally half way between
/// the neighbours at both ends, in the section from its entry to the middle of the bone at its apex.
fn grid(case: &Case) -> impl Iterator<Item = Placement> + '_ {
    let site = &case.site;
    let upper = site.tooth.jaw() == Jaw::Maxilla;
    let diameters: &'static [i32] = match (upper, site.tooth.position()) {
        (true, 2) => &[35, 30],
        (false, 1 | 2) => &[30, 35],
        _ => &[40, 35, 30],
    };
    let apex_z = deepest(site);
    let (entry, end) = (middle(case, 0.5), middle(case, apex_z + 2.0));
    let tip = degrees(Deg::from_radians(libm::atan2(end - entry, apex_z + 1.5)).get(), 25);
    let at_crest = tenths(entry).clamp(-40, 40);
    let (depths, lengths) = (depths(case), lengths(apex_z));
    diameters.iter().flat_map(move |&diameter| {
        let (depths, lengths) = (depths.clone(), lengths.clone());
        depths.into_iter().flat_map(move |depth| {
            let lengths = lengths.clone();
            offsets(case, diameter, depth).into_iter().flat_map(move |facial| {
                lengths.clone().into_iter().flat_map(move |length| {
                    aims(case, depth, facial, length).into_iter().flat_map(move |tilt| {
                        [0, 5, -5].into_iter().map(move |aside| Placement {
                            diameter,
                            length,
                            facial,
                            distal: (at_crest + aside).clamp(-40, 40),
                            depth,
                            tilt,
                            tip,
                        })
                    })
                })
            })
        })
    })
}

/// Tilts from an entry to the middle of the bone at the apex, and a little to either side; within
/// 25 degrees of the planned crown.
pub(super) fn aims(case: &Case, depth: i32, facial: i32, length: i32) -> [i32; 3] {
    let site = &case.site;
    let (from, reach) = (f64::from(depth) / 10.0, f64::from(length) / 10.0);
    let z = from + reach;
    let across = f64::midpoint(face(&site.ridge.facial, z), face(&site.ridge.oral, z));
    let lean = libm::atan2(across - f64::from(facial) / 10.0, reach);
    let crown = degrees(site.crown.tilt.get(), 35);
    let aim = degrees(Deg::from_radians(lean).get(), 35);
    [0, 4, -4].map(|more| (aim + more).clamp(crown - 25, crown + 25).clamp(-35, 35))
}

/// Half way between the neighbours' surfaces at a level; the root's own middle where one is absent.
pub(super) fn middle(case: &Case, z: f64) -> f64 {
    let own = own_middle(&case.site, z.min(deepest(&case.site)));
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

/// The socket's own middle at a level.
fn own_middle(site: &Site, z: f64) -> f64 {
    let parts = socket_at(site, z);
    #[expect(clippy::cast_precision_loss, reason = "three roots at most")]
    let count = parts.len().max(1) as f64;
    parts.iter().map(|at| at.x).sum::<f64>() / count
}

/// Levels of the platform: 3 to 4 mm below the planned margin and not above the crest.
pub(super) fn depths(case: &Case) -> Vec<i32> {
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
    depths.truncate(3);
    depths
}

/// Lengths that reach past the socket: the shortest with 3 mm to spare first, then longer, then the
/// next shorter one.
fn lengths(apex_z: f64) -> Vec<i32> {
    // From half a millimetre below the crest.
    let least = 10 * tenths(libm::ceil(apex_z + 2.5) / 10.0);
    let mut lengths = Vec::new();
    for more in [0, 10, 20, -10] {
        let length = (least + more).clamp(80, 160);
        if !lengths.contains(&length) {
            lengths.push(length);
        }
    }
    lengths
}

/// Facial offsets that leave about 2 mm of gap, then less and more.
fn offsets(case: &Case, diameter: i32, depth: i32) -> Vec<i32> {
    let reach = socket_at(&case.site, f64::from(depth) / 10.0);
    let wall = tenths(reach.iter().map(|at| at.y + at.half_fo).fold(f64::NEG_INFINITY, f64::max));
    let aim = wall - 20 - diameter / 2;
    [0, -5, 4, -10, 8, -15].into_iter().map(|more| (aim + more).clamp(-60, 60)).collect()
}
