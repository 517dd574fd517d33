//! Every stock size on a grid of places, decided by the rules that read a placement.
//!
//! The rules are asked in an order of their own: those that a single number settles first, once for
//! that number; then the one that refused last, because what fails one placement mostly fails the next.
//! The order changes how long it takes, never what is found.

use super::placement::{PLACED_BY, Placement};
use crate::chart::Case;
use crate::events;
use crate::measure::{Ground, Measurements};
use crate::plan::{Plan, Step};
use crate::rules::{self, Judging, Known, Rule};
use std::borrow::Cow;
use std::collections::BTreeMap;

/// A plan that places an implant, ready to be tried with any other placement.
#[derive(Debug)]
pub struct Sweep<'a> {
    opened: &'a Case,
    before: Ground,
    /// As the plan's own events left it, where that is another.
    left: Option<(Case, Ground)>,
    plan: Plan,
    /// Rules that one number settles, with what they said of it.
    single: Vec<Single>,
    /// The rest; the one that refused last stands first.
    several: Vec<&'static Rule>,
}

#[derive(Debug)]
struct Single {
    rule: &'static Rule,
    /// Place of its number among the seven.
    of: usize,
    said: BTreeMap<i32, bool>,
}

impl<'a> Sweep<'a> {
    /// Of a plan on a case; `None` where the plan places no implant.
    #[must_use]
    pub fn of(case: &'a Case, plan: &Plan) -> Option<Self> {
        plan.implant_in_place()?;
        let left = match events::after(case, plan) {
            Cow::Borrowed(_) => None,
            Cow::Owned(left) => Some((left.clone(), Ground::of(&left.site))),
        };
        let (mut single, mut several) = (Vec::new(), Vec::new());
        for rule in
            rules::all().filter(|rule| rule.step <= Step::Seating && reads_a_placement(rule))
        {
            match PLACED_BY.iter().position(|one| rule.reads == [*one]) {
                Some(of) => single.push(Single { rule, of, said: BTreeMap::new() }),
                None => several.push(rule),
            }
        }
        let before = Ground::of(&case.site);
        Some(Self { opened: case, before, left, plan: plan.clone(), single, several })
    }

    /// Whether no rule that reads a placement faults this one, all else in the plan as it is.
    pub fn stands(&mut self, placement: Placement) -> bool {
        self.refused_by(placement).is_none()
    }

    /// A rule that faults this placement, all else in the plan as it is; of several, any.
    pub fn refused_by(&mut self, placement: Placement) -> Option<&'static Rule> {
        let counts = placement.counts();
        let settled = self.single.iter().find(|one| one.said.get(&counts[one.of]) == Some(&true));
        if let Some(settled) = settled {
            return Some(settled.rule);
        }
        placement.put(self.plan.implant.as_mut()?);
        let (opened, plan) = (self.opened, &self.plan);
        let early = Measurements::on(&self.before, opened, plan);
        let late = match &self.left {
            Some((case, ground)) => Measurements::on(ground, case, plan),
            None => Measurements::on(&self.before, opened, plan),
        };
        let known = [&early, &late].map(|m| Known::of(m.case, plan));
        let judging = [(&early, &known[0]), (&late, &known[1])].map(|(m, known)| Judging {
            case: m.case,
            plan,
            m,
            known,
        });
        let faults = |rule: &'static Rule| {
            let judging = &judging[usize::from(rule.step >= Step::Extraction)];
            crate::debrief::verdict(rule, judging).is_some_and(|verdict| verdict.is_fault())
        };
        for one in &mut self.single {
            let count = counts[one.of];
            if *one.said.entry(count).or_insert_with(|| faults(one.rule)) {
                return Some(one.rule);
            }
        }
        let refused = self.several.iter().position(|rule| faults(rule))?;
        self.several[..=refused].rotate_right(1);
        self.several.first().copied()
    }
}

/// Whether a rule reads any of the seven numbers.
fn reads_a_placement(rule: &Rule) -> bool {
    rule.reads.iter().any(|read| PLACED_BY.contains(read))
}

/// Placements at even steps about one of them: every stock size, and for each the platform moved in
/// the section and along the arch and the axis leant.
#[derive(Debug, Clone)]
pub struct Grid {
    /// Diameters, lengths, facial offsets, distal offsets, levels, tilts and tips.
    axes: [Vec<i32>; 7],
}

impl Grid {
    /// About a placement. At the finest it holds [`Self::len`] placements.
    #[must_use]
    pub fn about(at: Placement) -> Self {
        let about = |middle: i32, step: i32, each_way: i32| {
            (-each_way..=each_way).map(|k| middle + k * step).collect()
        };
        Self {
            axes: [
                (30..=60).step_by(5).collect(),
                (80..=160).step_by(10).collect(),
                about(at.facial, 5, 4),
                about(at.distal, 5, 1),
                about(at.depth, 5, 3),
                about(at.tilt, 4, 2),
                vec![at.tip],
            ],
        }
    }

    /// How many placements it holds.
    #[must_use]
    pub fn len(&self) -> usize {
        self.axes.iter().map(Vec::len).product()
    }

    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The placement at a place in the order of the grid.
    #[must_use]
    pub fn at(&self, place: usize) -> Option<Placement> {
        if place >= self.len() {
            return None;
        }
        let mut rest = place;
        let mut counts = [0; 7];
        for (count, axis) in counts.iter_mut().zip(&self.axes).rev() {
            *count = *axis.get(rest % axis.len())?;
            rest /= axis.len();
        }
        Some(Placement::of_counts(counts))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{generate, proof_with};
    use crate::plan::choices::Course;

    #[test]
    #[ignore = "a look at the time"]
    fn time() {
        for seed in 1..12 {
            let case = generate(seed).unwrap();
            let Some(proof) = proof_with(&case, Course::PlaceToday) else { continue };
            let Ok(plan) = Plan::from_draft(&proof.draft, &case) else { continue };
            let Some(mut sweep) = Sweep::of(&case, &plan) else { continue };
            let grid = Grid::about(Placement::in_draft(&proof.draft).unwrap());
            let start = std::time::Instant::now();
            let mut stand = 0;
            let mut by: BTreeMap<&str, u32> = BTreeMap::new();
            for place in 0..grid.len() {
                match sweep.refused_by(grid.at(place).unwrap()) {
                    None => stand += 1,
                    Some(rule) => *by.entry(rule.id).or_default() += 1,
                }
            }
            let took = start.elapsed();
            println!("{seed} {} stand {stand} {took:?} {:?}", grid.len(), by);
            // Which rules cost most on a placement that stands.
            let start = std::time::Instant::now();
            let at = Placement::in_draft(&proof.draft).unwrap();
            for _ in 0..1000 {
                std::hint::black_box(sweep.refused_by(at));
            }
            println!("   one that stands {:?}", start.elapsed() / 1000);
            let ground = Ground::of(&case.site);
            let mut costs: Vec<(u128, &str)> = sweep
                .several
                .iter()
                .map(|rule| {
                    let start = std::time::Instant::now();
                    for _ in 0..200 {
                        let m = Measurements::on(&ground, &case, &plan);
                        let known = Known::of(&case, &plan);
                        let j = Judging { case: &case, plan: &plan, m: &m, known: &known };
                        std::hint::black_box((rule.measure)(&j));
                    }
                    ((start.elapsed() / 200).as_nanos(), rule.id)
                })
                .collect();
            costs.sort();
            costs.reverse();
            println!("   {:?}", &costs[..14.min(costs.len())]);
        }
    }
}
