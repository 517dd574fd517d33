//! The walk over a grid: number by number, leaving a branch at the first rule that settles it.

use super::Grid;
use super::bearing::{Bounded, DEPTH, DIAMETER, DISTAL, FACIAL, LENGTH, TILT, TIP, may_be_within};
use super::region::Region;
use super::sweep::{Bench, Sorted, Sweep};
use crate::anatomy::{Jaw, implant_cone};
use crate::geometry::{Cone, P3};
use crate::measure::{Bounds, Care};
use crate::plan::Placement;
use crate::plan::Plan;
use crate::rules::{Rule, ask};
use crate::units::{Deg, Mm};

/// The order in which the seven numbers are settled.
const NEST: [usize; 7] = [DIAMETER, TILT, TIP, FACIAL, DISTAL, DEPTH, LENGTH];

/// How many of them make a part of the walk.
const PART: usize = 3;

/// One walk over one grid, part by part.
#[derive(Debug)]
pub struct Walk<'s> {
    bench: &'s Bench<'s>,
    plan: &'s mut Plan,
    rules: &'s mut Sorted,
    bounds: Bounds<'s>,
    jaw: Jaw,
    septum: bool,
    grid: &'s Grid,
    /// Of each number the values that no rule refuses by themselves, with their places in the grid.
    left: [Vec<(usize, i32)>; 7],
    /// Rules by how many numbers of the nest have to be settled for them.
    levels: [Vec<&'static Rule>; 8],
    /// By how much a step of each number moves the place in the grid.
    strides: [usize; 7],
    /// The implant as far as it is settled.
    body: Cone,
    stands: Vec<bool>,
    /// How many parts have been walked.
    next: usize,
}

impl<'s> Walk<'s> {
    /// Nothing is walked yet.
    pub(super) fn over(sweep: &'s mut Sweep<'_>, grid: &'s Grid) -> Self {
        let Sweep { bench, plan, rules } = sweep;
        let bench: &'s Bench<'s> = bench;
        let (case, ground) = bench.late();
        let mut strides = [1; 7];
        for axis in (0..6).rev() {
            strides[axis] = strides[axis + 1] * grid.axes[axis + 1].len();
        }
        let body = implant_cone(P3::new(0.0, 0.0, 0.0), Mm::ZERO, Mm::ZERO, Deg::ZERO, Deg::ZERO);
        let mut walk = Self {
            bounds: Bounds::of(ground, &case.site),
            jaw: case.site.tooth.jaw(),
            septum: ask::has_septum(case),
            left: Default::default(),
            levels: Default::default(),
            stands: vec![false; grid.len()],
            next: 0,
            strides,
            body,
            bench,
            plan,
            rules,
            grid,
        };
        walk.sort();
        walk
    }

    /// Puts rules where all that they turn on is settled, and asks those that turn on one number.
    fn sort(&mut self) {
        let numbers = std::mem::take(&mut self.rules.by_numbers);
        for (rule, on) in &numbers {
            let settled = |number| NEST.iter().position(|one| *one == number);
            let level = on.iter().filter_map(|on| settled(*on)).max().map_or(0, |at| at + 1);
            if on.len() != 1 {
                self.levels[level].push(rule);
            }
        }
        let Some(first) = self.grid.at(0) else { return };
        for axis in 0..7 {
            let on_it = || numbers.iter().filter(|(_, on)| *on == [axis]).map(|(rule, _)| *rule);
            let values = self.grid.axes[axis].iter().copied().enumerate();
            let stays = values.filter(|(_, value)| {
                let mut counts = first.counts();
                counts[axis] = *value;
                self.put(counts);
                self.bench.faulting(self.plan, on_it()).is_none()
            });
            self.left[axis] = stays.collect();
        }
        self.rules.by_numbers = numbers;
    }

    /// Goes a part of the way: over one diameter at one lean. Whether there is more to go; a caller that
    /// must not hold up others takes a breath in between.
    pub fn go_on(&mut self) -> bool {
        let parts: usize = NEST[..PART].iter().map(|axis| self.left[*axis].len()).product();
        let first = self.grid.at(0).map(Placement::counts);
        let (Some(mut counts), true) = (first, self.next < parts) else { return false };
        if self.next == 0 && self.refused_at(0, counts) {
            self.next = parts;
            return false;
        }
        let (mut rest, mut place) = (self.next, 0);
        for axis in &NEST[..PART] {
            let values = &self.left[*axis];
            let (step, value) = values[rest % values.len()];
            rest /= values.len();
            counts[*axis] = value;
            place += step * self.strides[*axis];
        }
        self.body = Self::turned(counts);
        if !(1..=PART).any(|settled| self.refused_at(settled, counts)) {
            self.descend(PART, &mut counts, place);
        }
        self.next += 1;
        self.next < parts
    }

    /// Which placements stand, once there is no more to go.
    #[must_use]
    pub fn region(mut self) -> Region {
        while self.go_on() {}
        Region::of(self.grid.clone(), self.stands)
    }

    fn put(&mut self, counts: [i32; 7]) {
        if let Some(implant) = self.plan.implant.as_mut() {
            Placement::of_counts(counts).put(implant);
        }
    }

    /// Whether a rule refuses that turns on no more than so many numbers of the nest.
    fn refused_at(&mut self, settled: usize, counts: [i32; 7]) -> bool {
        if self.levels[settled].is_empty() {
            return false;
        }
        self.put(counts);
        self.bench.faulting(self.plan, self.levels[settled].iter().copied()).is_some()
    }

    fn descend(&mut self, settled: usize, counts: &mut [i32; 7], place: usize) {
        let Some(axis) = NEST.get(settled).copied() else {
            let stands = self.decide(*counts);
            self.stands[place] = stands;
            return;
        };
        for k in 0..self.left[axis].len() {
            let (step, value) = self.left[axis][k];
            counts[axis] = value;
            if !self.refused_at(settled + 1, *counts) {
                self.descend(settled + 1, counts, place + step * self.strides[axis]);
            }
        }
    }

    /// The implant's width and lean.
    fn turned(counts: [i32; 7]) -> Cone {
        let degrees = |count: i32| Deg::new(f64::from(count));
        let (width, lean) =
            (Mm::from_tenths(counts[DIAMETER]), [TILT, TIP].map(|at| degrees(counts[at])));
        implant_cone(P3::new(0.0, 0.0, 0.0), width, Mm::ZERO, lean[0], lean[1])
    }

    /// Whether a placement stands of which all is settled.
    fn decide(&mut self, counts: [i32; 7]) -> bool {
        let mm = |axis: usize| Mm::from_tenths(counts[axis]).get();
        let mut cone = Cone { length: mm(LENGTH), ..self.body };
        cone.frame.origin = P3::new(mm(DISTAL), mm(FACIAL), mm(DEPTH));
        let all = (1_u32 << self.rules.bounded.len()) - 1;
        let Some(open) = self.open(&cone, all, None) else { return false };
        self.put(counts);
        if !self.rules.brief.is_empty()
            && self.bench.faulting(self.plan, self.rules.brief.iter().copied()).is_some()
        {
            return false;
        }
        let Some(open) = self.open(&cone, open, Some(Care::Closer)) else { return false };
        let hold = self.rules.bounded.iter().position(|(_, what, _)| *what == Bounded::Anchorage);
        let hold = hold.map_or(0, |at| open & 1 << at);
        let Some(held) = self.open(&cone, hold, Some(Care::Thorough)) else { return false };
        let open = open & !hold | held;
        let bounds = &mut self.bounds;
        let within = self.rules.within.iter().filter(|(_, near)| {
            may_be_within(bounds, &cone, *near, Care::Quick(f64::INFINITY))
                && may_be_within(bounds, &cone, *near, Care::Closer)
        });
        let within: Vec<&'static Rule> = within.map(|(rule, _)| *rule).collect();
        if open == 0 && within.is_empty() && self.rules.others.is_empty() {
            return true;
        }
        let bounded = self.rules.bounded.iter().enumerate();
        let bounded = bounded.filter(|(k, _)| open >> k & 1 == 1).map(|(_, (rule, ..))| *rule);
        let rest = self.rules.others.iter().copied().chain(within).chain(bounded);
        self.bench.faulting(self.plan, rest).is_none()
    }

    /// Which of these bounded rules their bounds leave open; `None` where one surely faults. That one is
    /// asked first from then on: what refuses one placement mostly refuses the next. Without a care they are
    /// looked at quickly.
    fn open(&mut self, cone: &Cone, which: u32, care: Option<Care>) -> Option<u32> {
        let mut open = 0;
        for k in 0..self.rules.bounded.len() {
            if which >> k & 1 == 0 {
                continue;
            }
            let (_, what, turns) = &self.rules.bounded[k];
            let how = care.unwrap_or(Care::Quick(turns.enough()));
            let span = what.span(&mut self.bounds, self.jaw, self.septum, cone, how);
            match span.map_or(Some(false), |span| turns.settled(span)) {
                Some(true) => {
                    // A costly bound stays behind the others.
                    if care.is_none() && *what != Bounded::Anchorage {
                        self.rules.bounded[..=k].rotate_right(1);
                    }
                    return None;
                }
                Some(false) => {}
                None => open |= 1 << k,
            }
        }
        Some(open)
    }
}
