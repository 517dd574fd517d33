//! Every stock size at every place of a grid, decided by the rules that read a placement.
//!
//! A rule is asked as soon as all that it turns on is settled, so that one answer serves every
//! placement that shares it ([`bearing`](super::bearing)); a measurement that can be bounded is bounded
//! first and measured only where the bound leaves it open. None of that changes what is found: it is
//! what the judge of whole plans says of each placement, one by one.

use super::Grid;
use super::bearing::{self, Bearing, Bounded, Turns};
use super::region::Region;
use super::walk::Walk;
use crate::chart::Case;
use crate::events;
use crate::geometry::order;
use crate::measure::{Ground, Measurements};
use crate::plan::{PLACED_BY, Placement};
use crate::plan::{Plan, Step};
use crate::rules::{self, Judging, Knowledge, Known, Reading, Rule, Zone, ask};
use std::borrow::Cow;

/// A plan that places an implant, ready to be tried with any other placement.
#[derive(Debug)]
pub struct Sweep<'a> {
    pub(super) bench: Bench<'a>,
    pub(super) plan: Plan,
    pub(super) rules: Sorted,
}

/// Where placements are judged.
#[derive(Debug)]
pub(super) struct Bench<'a> {
    opened: &'a Case,
    before: Ground,
    /// As the plan's own events left it, where that is another.
    left: Option<(Case, Ground)>,
}

/// The rules that can fault a placement, by what they turn on.
#[derive(Debug, Default)]
pub(super) struct Sorted {
    /// Those that turn on some of the seven numbers, with which.
    pub(super) by_numbers: Vec<(&'static Rule, &'static [usize])>,
    pub(super) bounded: Vec<(&'static Rule, Bounded, Turns)>,
    pub(super) within: Vec<(&'static Rule, f64)>,
    pub(super) brief: Vec<&'static Rule>,
    pub(super) others: Vec<&'static Rule>,
}

impl Sorted {
    fn all(&self) -> impl Iterator<Item = &'static Rule> {
        let numbers = self.by_numbers.iter().map(|(rule, _)| *rule);
        let bounded = self.bounded.iter().map(|(rule, ..)| *rule);
        let within = self.within.iter().map(|(rule, _)| *rule);
        let rest = self.brief.iter().chain(&self.others).copied();
        numbers.chain(rest).chain(within).chain(bounded)
    }
}

impl Bench<'_> {
    /// The case that an implant is seated in, and its ground.
    pub(super) fn late(&self) -> (&Case, &Ground) {
        self.left.as_ref().map_or((self.opened, &self.before), |(case, ground)| (case, ground))
    }

    /// The first of these rules that faults the plan, by its place; whether the fault could be known is
    /// not asked again.
    pub(super) fn faulting(
        &self,
        plan: &Plan,
        mut rules: impl Iterator<Item = &'static Rule>,
    ) -> Option<usize> {
        let (case, ground) = self.late();
        let early = Measurements::on(&self.before, self.opened, plan);
        let late = Measurements::on(ground, case, plan);
        let known = [self.opened, case].map(|case| Known::of(case, plan));
        let judging = [(&early, &known[0]), (&late, &known[1])].map(|(m, known)| Judging {
            case: m.case,
            plan,
            m,
            known,
        });
        rules.position(|rule| {
            let judging = &judging[usize::from(rule.step >= Step::Extraction)];
            let zone = (rule.measure)(judging)
                .and_then(|reading| judging.case.local.zone_of(rule, reading));
            zone.is_some_and(Zone::is_fault)
        })
    }

    /// Whether a fault by this rule would count in this plan: sources agree, and it could be known. The
    /// numbers of a placement change neither.
    fn counts(&self, plan: &Plan, rule: &Rule) -> bool {
        let case = if rule.step >= Step::Extraction { self.late().0 } else { self.opened };
        let known = Known::of(case, plan).all(rule.rests_on);
        case.local.cost_of(rule).is_fault() && known != Some(Knowledge::CouldNotBeKnown)
    }

    /// Whether the room in the septum, which no placement changes, is no fault by this rule.
    fn septum_is_wide(&self, plan: &Plan, rule: &Rule) -> bool {
        let (case, ground) = self.late();
        let room = Measurements::on(ground, case, plan).septum_room(ask::BELOW_FURCATION);
        let zone = room.and_then(|room| case.local.zone_of(rule, Reading::Number(room.get())));
        !zone.is_some_and(Zone::is_fault)
    }

    /// Whether the rule has anything to read of this plan.
    fn reads(&self, plan: &Plan, rule: &Rule) -> bool {
        let (case, ground) = self.late();
        let m = &Measurements::on(ground, case, plan);
        let known = &Known::of(case, plan);
        (rule.measure)(&Judging { case, plan, m, known }).is_some()
    }
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
        let bench = Bench { opened: case, before: Ground::of(&case.site), left };
        let mut sorted = Sorted::default();
        for rule in rules::all().filter(|rule| is_of_placement(rule) && bench.counts(plan, rule)) {
            let thin = rule.id == "septum-too-thin-for-an-implant";
            if thin && bench.septum_is_wide(plan, rule) {
                continue;
            }
            match bearing::of(rule, bench.late().0, plan) {
                Bearing::Numbers(numbers) => sorted.by_numbers.push((rule, numbers)),
                Bearing::OnlyWithin(near) => sorted.within.push((rule, near)),
                Bearing::Brief => sorted.brief.push(rule),
                Bearing::Bounded(what) => match Turns::of(rule, &case.local) {
                    Some(_) if what.is_there_or_never() && !bench.reads(plan, rule) => {}
                    Some(turns) => sorted.bounded.push((rule, what, turns)),
                    None => sorted.others.push(rule),
                },
                Bearing::Anything => sorted.others.push(rule),
            }
        }
        order::sort_short_by_key(&mut sorted.bounded, |(_, what, _)| *what);
        Some(Self { bench, plan: plan.clone(), rules: sorted })
    }

    /// Whether no rule that reads a placement faults this one, all else in the plan as it is.
    pub fn stands(&mut self, placement: Placement) -> bool {
        self.refused_by(placement).is_none()
    }

    /// A rule that faults this placement, all else in the plan as it is; of several, any.
    pub fn refused_by(&mut self, placement: Placement) -> Option<&'static Rule> {
        placement.put(self.plan.implant.as_mut()?);
        let refused = self.bench.faulting(&self.plan, self.rules.all())?;
        self.rules.all().nth(refused)
    }

    /// Decides every placement of a grid.
    #[must_use]
    pub fn region(&mut self, grid: &Grid) -> Region {
        self.walk(grid).region()
    }

    /// The same part by part.
    pub fn walk<'s>(&'s mut self, grid: &'s Grid) -> Walk<'s> {
        Walk::over(self, grid)
    }
}

/// Whether a rule judges where an implant stands: it reads one of the seven numbers, no later than the
/// implant is seated. How much graft goes beside it is chosen after that.
pub(super) fn is_of_placement(rule: &Rule) -> bool {
    rule.step <= Step::Seating && rule.reads.iter().any(|read| PLACED_BY.contains(read))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{Constraints, Spread, generate, generate_as, proof_with};
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

    /// The counts one step of the grid on, along one of them.
    fn neighbours(grid: &Grid, at: Placement) -> Vec<Placement> {
        let one = |axis: usize, way: i32| {
            let mut counts = at.counts();
            let values = &grid.axes[axis];
            let place = values.iter().position(|value| *value == counts[axis])?;
            counts[axis] = *values.get(place.checked_add_signed(way.try_into().ok()?)?)?;
            Some(Placement::of_counts(counts))
        };
        (0..7).flat_map(|axis| [one(axis, -1), one(axis, 1)]).flatten().collect()
    }

    /// Compares at random places of a region, and all along its edge.
    fn compare(case: &Case, plan: &Plan, random: &mut ChaCha8Rng) -> [u32; 2] {
        let grid = Grid::of(&case.site);
        let region = Sweep::of(case, plan).unwrap().region(&grid);
        let size = u64::try_from(grid.len()).unwrap();
        for _ in 0..200 {
            let place = usize::try_from(random.next_u64() % size).unwrap();
            let one = grid.at(place).unwrap();
            let judged = judged(case, plan, one);
            assert_eq!(region.stands(place), judged, "{:?} {one:?}", case.address);
        }
        // Of a long edge every so many.
        let stands: Vec<Placement> = region.standing().collect();
        let every = (stands.len() / 40).max(1);
        let mut edges = 0;
        for at in stands.iter().step_by(every) {
            assert!(judged(case, plan, *at), "{:?} {at:?}", case.address);
            for next in neighbours(&grid, *at) {
                if !region.holds(next) {
                    assert!(!judged(case, plan, next), "{:?} {next:?}", case.address);
                    edges += 1;
                }
            }
        }
        [u32::try_from(stands.len()).unwrap(), edges]
    }

    #[test]
    fn two_thousand_placements_and_the_edge_of_the_region_are_decided_as_the_judge_decides_them() {
        let mut random = ChaCha8Rng::seed_from_u64(7);
        let mut all = [0, 0];
        for (case, plan, _) in placed(10) {
            let [stood, edges] = compare(&case, &plan, &mut random);
            all = [all[0] + stood, all[1] + edges];
        }
        assert!(all[0] > 10_000 && all[1] > 1_000, "{all:?}");
    }

    #[test]
    fn teeth_of_the_whole_mouth_are_decided_as_the_judge_decides_them() {
        let mut random = ChaCha8Rng::seed_from_u64(8);
        let whole_mouth =
            |seed| generate_as(Spread::WholeMouth, seed, &Constraints::default()).ok();
        let cases = (1..).filter_map(whole_mouth).filter_map(|case| {
            let draft = proof_with(&case, Course::PlaceToday)?.draft;
            let plan = Plan::from_draft(&draft, &case).ok()?;
            plan.implant_in_place()?;
            Some((case, plan))
        });
        let mut several = 0;
        for (case, plan) in cases.take(12) {
            compare(&case, &plan, &mut random);
            several += u32::from(case.site.socket.furcation().is_some());
        }
        assert!(several > 2, "{several}");
    }

    #[test]
    fn a_placement_by_itself_is_decided_as_in_its_region() {
        for (case, plan, at) in placed(3) {
            let mut sweep = Sweep::of(&case, &plan).unwrap();
            let grid = Grid::of(&case.site);
            let region = sweep.region(&grid);
            for place in (0..grid.len()).step_by(997) {
                let one = grid.at(place).unwrap();
                assert_eq!(sweep.stands(one), region.stands(place), "{one:?}");
            }
            assert!(sweep.stands(at));
        }
    }
}
