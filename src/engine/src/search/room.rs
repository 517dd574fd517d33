//! How much room a case leaves for an implant: in how many stock sizes, and over how many millimetres.

use super::bearing::{DEPTH, DIAMETER, FACIAL, LENGTH};
use super::{Grid, Region, Sweep};
use crate::anatomy::Tooth;
use crate::chart::Case;
use crate::geometry::order;
use crate::plan::Placement;
use crate::plan::{Draft, Plan};
use crate::units::Mm;

/// How far a placement is followed each way, tenths of a millimetre: more than any ridge is wide.
const FARTHEST: i32 = 120;

/// How far an implant may be moved, all else as it is, before a rule faults it: millimetres, in steps
/// of a tenth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Play {
    /// Orally and facially.
    pub facial: [Mm; 2],
    /// Coronally and apically.
    pub depth: [Mm; 2],
}

impl Play {
    /// From the oral end to the facial one, in the section.
    #[must_use]
    pub fn across(&self) -> Mm {
        self.facial[0] + self.facial[1]
    }

    /// From the shallowest to the deepest.
    #[must_use]
    pub fn along(&self) -> Mm {
        self.depth[0] + self.depth[1]
    }
}

/// The room that a case leaves, all else in a plan as it is.
#[derive(Debug, Clone)]
pub struct Room {
    /// Which placements stand.
    pub region: Region,
    /// How many were decided.
    pub tried: usize,
    /// How many of them stand.
    pub standing: usize,
    /// Stock sizes, diameter by length, that stand somewhere.
    pub sizes: usize,
    /// Stock sizes that there are.
    pub of: usize,
    /// The placement with the most room about it, and how much; of several that nearest to the
    /// learner's. `None` where none stands.
    pub roomiest: Option<(Placement, Play)>,
    /// The learner's own placement.
    pub own: Placement,
    /// How far the learner's own implant may be moved; `None` where it does not stand.
    pub yours: Option<Play>,
}

/// The room of a case about a plan; `None` where the plan places no implant today.
#[must_use]
pub fn room(case: &Case, draft: &Draft) -> Option<Room> {
    let plan = Plan::from_draft(draft, case).ok()?;
    let own = Placement::in_draft(draft)?;
    let mut sweep = Sweep::of(case, &plan)?;
    let region = sweep.region(&Grid::of(&case.site));
    Some(sweep.room(own, region))
}

impl Sweep<'_> {
    /// The room about the learner's own placement, from a region that was swept.
    #[must_use]
    pub fn room(&mut self, own: Placement, region: Region) -> Room {
        let (sizes, of) = region.sizes();
        let roomiest = region.roomiest(own).map(|at| (at, self.play(at)));
        let yours = self.stands(own).then(|| self.play(own));
        let (tried, standing) = (region.grid().len(), region.standing().count());
        Room { tried, standing, sizes, of, roomiest, own, yours, region }
    }

    /// How far a placement that stands may be moved.
    fn play(&mut self, at: Placement) -> Play {
        let mut free = |axis: usize, way: i32| {
            let mut stands = |steps: &i32| {
                let mut counts = at.counts();
                counts[axis] += way * steps;
                self.stands(Placement::of_counts(counts))
            };
            Mm::from_tenths(
                (1..=FARTHEST).map_while(|k| stands(&k).then_some(k)).last().unwrap_or(0),
            )
        };
        Play {
            facial: [-1, 1].map(|way| free(FACIAL, way)),
            depth: [-1, 1].map(|way| free(DEPTH, way)),
        }
    }
}

impl Region {
    /// How many stock sizes stand somewhere, and of how many.
    fn sizes(&self) -> (usize, usize) {
        let size = |at: Placement| (at.diameter, at.length);
        let stand = order::set_of(self.standing().map(size));
        let axes = &self.grid().axes;
        (stand.len(), axes[DIAMETER].len() * axes[LENGTH].len())
    }

    /// The placement that is farthest from where the standing ones end, facio-orally and in depth: the
    /// shorter of both ways decides, then their sum, then how little it differs from another.
    fn roomiest(&self, own: Placement) -> Option<Placement> {
        let differs = |at: Placement| -> u32 {
            at.counts().iter().zip(own.counts()).map(|(a, b)| a.abs_diff(b)).sum()
        };
        let rank = |at: &Placement| {
            let [a, b] = [FACIAL, DEPTH].map(|axis| self.run(*at, axis));
            (a.min(b), a + b, std::cmp::Reverse(differs(*at)))
        };
        self.standing().max_by_key(rank)
    }

    /// Steps to the nearer end of the unbroken run of standing placements through one, along one of the
    /// numbers.
    fn run(&self, at: Placement, axis: usize) -> usize {
        let [before, after] = [-1, 1].map(|way| {
            let mut counts = at.counts();
            let next = |counts: &[i32; 7]| self.holds(Placement::of_counts(*counts));
            let step = self.grid().step(axis) * way;
            std::iter::from_fn(|| {
                counts[axis] += step;
                next(&counts).then_some(())
            })
            .count()
        });
        before.min(after)
    }
}

impl Room {
    /// The stock size whose places are worth showing, diameter and length: the learner's own where it
    /// stands anywhere, the one with the most room otherwise.
    #[must_use]
    pub fn shown(&self) -> Option<[i32; 2]> {
        let own = [self.own.diameter, self.own.length];
        let stands = !self.region.platforms(own[0], own[1]).is_empty();
        let (roomiest, _) = self.roomiest?;
        Some(if stands { own } else { [roomiest.diameter, roomiest.length] })
    }

    /// In a few sentences, to the learner.
    #[must_use]
    pub fn words(&self, tooth: Tooth) -> String {
        let Some((at, play)) = &self.roomiest else {
            return format!(
                "With the rest of your plan no stock size stands anywhere without a fault of its place: {} placements were tried.",
                self.tried
            );
        };
        let tenth = |count: i32| format!("{:.1}", f64::from(count) / 10.0);
        let sizes = match self.sizes {
            1 => format!("One of {} stock sizes stands", self.of),
            sizes => format!("{sizes} of {} stock sizes stand", self.of),
        };
        let mut said = format!(
            "{sizes} somewhere without a fault of the place, in {} of {} placements tried. The most room has an implant of {} by {} mm: {} from {} to facial and {} in depth.",
            self.standing,
            self.tried,
            tenth(at.diameter),
            tenth(at.length),
            mm(play.across()),
            tooth.oral_word(),
            mm(play.along()),
        );
        said.push(' ');
        said.push_str(&self.yours.map_or_else(
            || "Yours has a fault where it stands.".to_owned(),
            |play| {
                let [oral, facial] = play.facial.map(mm);
                let [up, down] = play.depth.map(mm);
                format!(
                    "Yours has {oral} left to the {} side, {facial} to the facial side, {up} coronally and {down} apically.",
                    tooth.oral_word()
                )
            },
        ));
        said
    }
}

fn mm(length: Mm) -> String {
    format!("{:.1} mm", length.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Side;
    use crate::cases::proof_with;
    use crate::debrief;
    use crate::plan::Decision;
    use crate::plan::choices::Course;
    use crate::rules::trial::Trial;
    use crate::search::sweep::is_of_placement;

    /// The plain case with a plan by the book.
    fn plain() -> (Case, Draft) {
        let case = Trial::plain().case;
        let draft = proof_with(&case, Course::PlaceToday).unwrap().draft;
        (case, draft)
    }

    /// The same with the neighbours' roots, or the named one, moved towards the implant.
    fn nearer(case: &Case, sides: &[Side], by: f64) -> Case {
        let mut case = case.clone();
        for side in sides {
            let neighbours = &mut case.site.neighbours;
            let (neighbour, way) = match side {
                Side::Mesial => (&mut neighbours.mesial, 1.0),
                Side::Distal => (&mut neighbours.distal, -1.0),
            };
            let crate::anatomy::Neighbour::Root(root) = neighbour else { panic!("a root") };
            root.x = root.x + Mm::new(way * by);
        }
        case
    }

    #[test]
    fn neighbours_that_close_in_take_the_wide_sizes_first_and_then_all() {
        let (case, draft) = plain();
        let both = [Side::Mesial, Side::Distal];
        let all: Vec<Room> = [0.0, 0.8, 2.0, 3.2]
            .into_iter()
            .map(|by| room(&nearer(&case, &both, by), &draft).unwrap())
            .collect();
        let widest = |room: &Room| room.region.standing().map(|at| at.diameter).max();
        assert!(all[0].sizes > 0 && all[0].sizes <= all[0].of && all[0].of == 63);
        for pair in all.windows(2) {
            assert!(pair[1].sizes <= pair[0].sizes && widest(&pair[1]) <= widest(&pair[0]));
        }
        // Between the roots lie 10.8 mm at the crest; 4.0 less, and 1.5 on either side, leave 3.8;
        // half a millimetre more is still acceptable.
        assert_eq!(widest(&all[2]), Some(40));
        assert!(widest(&all[0]) > Some(40));
        assert_eq!((all[3].sizes, all[3].standing), (0, 0));
        assert!(all[3].roomiest.is_none() && all[3].yours.is_none() && all[3].shown().is_none());
        assert!(
            all[3].words(case.site.tooth).starts_with("With the rest of your plan no stock size")
        );
    }

    #[test]
    fn play_ends_where_the_judge_first_finds_a_fault_of_the_place() {
        let (case, draft) = plain();
        let found = room(&case, &draft).unwrap();
        let judged = |facial: i32, depth: i32| {
            let mut draft = draft.clone();
            for (decision, by) in [(Decision::OffsetFacial, facial), (Decision::Depth, depth)] {
                let count = draft.number(decision).unwrap() + by;
                draft.choose(decision, crate::plan::Value::Number(count)).unwrap();
            }
            let plan = Plan::from_draft(&draft, &case).unwrap();
            let all = debrief::judge(&case, &plan);
            !all.iter().any(|one| one.is_fault() && is_of_placement(one.rule))
        };
        let play = found.yours.unwrap();
        let steps = |length: Mm| (1..100).find(|k| Mm::from_tenths(*k) > length).unwrap();
        for (sign, [facial, depth]) in
            [-1, 1].into_iter().zip([0, 1].map(|way| [play.facial[way], play.depth[way]]))
        {
            assert!(judged(sign * (steps(facial) - 1), 0) && !judged(sign * steps(facial), 0));
            assert!(judged(0, sign * (steps(depth) - 1)) && !judged(0, sign * steps(depth)));
        }
    }

    #[test]
    fn the_roomiest_has_at_least_as_much_play_to_its_nearer_end_as_the_plan_by_the_book() {
        let (case, draft) = plain();
        let found = room(&case, &draft).unwrap();
        let (at, play) = found.roomiest.unwrap();
        assert!(found.region.holds(at));
        let nearer = |play: &Play| {
            let [a, b] = [play.facial, play.depth].map(|[a, b]| a.min(b));
            a.min(b)
        };
        // The grid goes by half a millimetre.
        assert!(nearer(&play) + Mm::new(0.5) >= nearer(&found.yours.unwrap()));
        assert!(play.across() >= play.facial[0] && play.along() >= play.depth[1]);
        let words = found.words(case.site.tooth);
        assert!(words.contains(&format!("{} of 63 stock sizes", found.sizes)), "{words}");
    }

    #[test]
    fn a_plan_without_an_implant_has_no_room_to_tell_of() {
        let (case, _) = plain();
        let draft = proof_with(&case, Course::GraftAndReturn).unwrap().draft;
        assert!(room(&case, &draft).is_none());
    }
}
