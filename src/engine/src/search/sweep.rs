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
        for rule in rules::all().filter(|rule| is_of_placement(rule)) {
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

/// Whether a rule judges where an implant stands: it reads one of the seven numbers, no later than the
/// implant is seated. How much graft goes beside it is chosen after that.
fn is_of_placement(rule: &Rule) -> bool {
    rule.step <= Step::Seating && rule.reads.iter().any(|read| PLACED_BY.contains(read))
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
    use crate::debrief;
    use crate::plan::choices::Course;
    use rand::{Rng, SeedableRng};
    use rand_chacha::ChaCha8Rng;

    /// Cases with a whole plan that places an implant, and where.
    fn placed(count: usize) -> Vec<(Case, Plan, Placement)> {
        let one = |seed| {
            let case = generate(seed).ok()?;
            let draft = proof_with(&case, Course::PlaceToday)?.draft;
            let plan = Plan::from_draft(&draft, &case).ok()?;
            plan.implant_in_place()?;
            Some((case, plan, Placement::in_draft(&draft)?))
        };
        (1..).filter_map(one).take(count).collect()
    }

    /// Whether the judge of whole plans faults a rule of placement.
    fn judged(case: &Case, plan: &Plan, at: Placement) -> bool {
        let mut plan = plan.clone();
        at.put(plan.implant.as_mut().unwrap());
        let faults = debrief::judge(case, &plan);
        !faults.iter().any(|one| one.is_fault() && is_of_placement(one.rule))
    }

    #[test]
    fn two_thousand_placements_are_decided_as_the_judge_decides_them() {
        let mut random = ChaCha8Rng::seed_from_u64(7);
        let (mut tried, mut stood) = (0, 0);
        for (case, plan, at) in placed(10) {
            let mut sweep = Sweep::of(&case, &plan).unwrap();
            let grid = Grid::about(at);
            let size = u64::try_from(grid.len()).unwrap();
            for k in 0..200 {
                // Half of them anywhere, half near the one that stands.
                let place = usize::try_from(random.next_u64() % size).unwrap();
                let mut one = grid.at(place).unwrap();
                if k % 2 == 0 {
                    let off =
                        |random: &mut ChaCha8Rng| i32::try_from(random.next_u64() % 9).unwrap() - 4;
                    one = Placement {
                        facial: at.facial + off(&mut random),
                        distal: at.distal + off(&mut random),
                        depth: at.depth + off(&mut random),
                        tilt: at.tilt + off(&mut random),
                        ..at
                    };
                }
                let stands = sweep.stands(one);
                assert_eq!(stands, judged(&case, &plan, one), "{:?} {one:?}", case.address);
                tried += 1;
                stood += u32::from(stands);
            }
        }
        assert_eq!(tried, 2000);
        assert!(stood > 100, "{stood}");
    }

    #[test]
    fn along_the_edge_of_the_region_the_judge_agrees_on_both_sides() {
        let mut edges = 0;
        for (case, plan, at) in placed(5) {
            let mut sweep = Sweep::of(&case, &plan).unwrap();
            for way in [-1, 1] {
                for axis in 2..7 {
                    let at_step = |k: i32| {
                        let mut counts = at.counts();
                        counts[axis] += k * way;
                        Placement::of_counts(counts)
                    };
                    // Where it stands here and no longer one step on.
                    let edge = (0..60)
                        .find(|k| sweep.stands(at_step(*k)) && !sweep.stands(at_step(k + 1)));
                    let Some(edge) = edge else { continue };
                    assert!(judged(&case, &plan, at_step(edge)));
                    assert!(!judged(&case, &plan, at_step(edge + 1)));
                    edges += 1;
                }
            }
        }
        assert!(edges > 30, "{edges}");
    }

    #[test]
    fn a_grid_holds_each_of_its_placements_once_and_at_least_fifty_thousand() {
        let at = Placement {
            diameter: 40,
            length: 120,
            facial: -5,
            distal: 0,
            depth: 5,
            tilt: 3,
            tip: 0,
        };
        let grid = Grid::about(at);
        assert!(grid.len() >= 50_000);
        let all: std::collections::BTreeSet<_> =
            (0..grid.len()).filter_map(|place| grid.at(place)).collect();
        assert_eq!(all.len(), grid.len());
        assert!(all.contains(&at));
        assert_eq!(grid.at(grid.len()), None);
    }
}
