//! How far courses of healing lie apart: 10th, 50th and 90th percentile over a year, for the learner's
//! treatment, that of the nearest sound plan, and none. Never one course, never a forecast.

use super::model::{Lost, Patient, Reads, Treatment, WEEKS};
use crate::chart::Case;
use crate::events::{Chance, Matter};
use crate::geometry::order;
use crate::measure::Measurements;
use crate::plan::Plan;
use crate::units::Mm;

/// Patients that are drawn. One more than a round number, so that a tenth, a half and nine tenths of
/// the way each fall on a patient.
pub const PATIENTS: usize = 4001;
/// Where the percentiles stand among them in ascending order, in tenths of the way.
const TENTHS: [usize; 3] = [1, 5, 9];
/// How far the picture goes, months.
const YEAR: i32 = 12;

/// What is shown of a site.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Width that the ridge has lost.
    Width,
    /// Height that the facial crest has lost.
    Facial,
}

impl Quantity {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Width, Self::Facial];

    const fn of(self, lost: Lost) -> f64 {
        match self {
            Self::Width => lost.width,
            Self::Facial => lost.facial,
        }
    }
}

/// Whose treatment it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// The plan's own.
    Yours,
    /// The nearest sound plan's.
    Nearest,
    /// Nobody's: extracted and left to heal.
    Untreated,
}

/// Why there is no fan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unknown {
    /// No tooth is taken out.
    ToothKept,
    /// An implant of the day where a wall is missing: what is published tells how much bone stood there
    /// later, not how much had gone.
    WallMissing,
}

/// Percentiles of what goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fan {
    /// What is done.
    pub treatment: Treatment,
    /// Weeks after which an implant is placed in the healed site, where one is: the model ends there.
    pub until: Option<i32>,
    /// Of what goes in the end: 10th, 50th, 90th percentile of each quantity on its own.
    end: [Lost; 3],
}

impl Fan {
    /// Of these patients with such a site; nothing is lost where there is none.
    #[must_use]
    pub fn of(
        patients: &[Patient],
        reads: Reads,
        treatment: Treatment,
        until: Option<i32>,
    ) -> Self {
        let lost: Vec<Lost> = patients.iter().map(|one| one.lost(reads, treatment)).collect();
        let [width, facial] = Quantity::ALL.map(|quantity| {
            let mut all: Vec<f64> = lost.iter().map(|one| quantity.of(*one)).collect();
            order::ascend_many(&mut all);
            let last = all.len().saturating_sub(1);
            TENTHS.map(|tenth| all.get(tenth * last / 10).copied().unwrap_or(0.0))
        });
        let end = [0, 1, 2].map(|at| Lost::of(width[at], facial[at]));
        Self { treatment, until, end }
    }

    /// The last month that the fan knows, 12 at most.
    #[must_use]
    pub fn last(&self) -> f64 {
        let year = f64::from(YEAR);
        self.until.map_or(year, |weeks| year.min(f64::from(weeks) / WEEKS))
    }

    /// Whole months from 0 on that the fan knows.
    pub fn months(&self) -> impl Iterator<Item = i32> + use<> {
        let last = self.last();
        (0..=YEAR).filter(move |month| f64::from(*month) <= last)
    }

    /// What has gone after so many months: 10th, 50th, 90th percentile. Millimetres, 0 or more.
    #[must_use]
    pub fn lost(&self, quantity: Quantity, months: f64) -> [Mm; 3] {
        self.end.map(|end| Mm::checked(quantity.of(end.after(months))).unwrap_or(Mm::ZERO))
    }
}

/// A treatment, whose it is, and what comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Arm {
    /// Whose it is: several of those that the model cannot tell apart.
    pub whose: Vec<Whose>,
    /// The fan, or why there is none.
    pub fan: Result<Fan, Unknown>,
}

/// The picture: treatments of one site.
#[derive(Debug, Clone, PartialEq)]
pub struct Illustration {
    /// What the model read of the site.
    pub reads: Reads,
    /// In the order yours, nearest, untreated; what the model cannot tell apart stands together.
    pub arms: Vec<Arm>,
    /// Whether the plan is the nearest sound one itself.
    pub sound: bool,
}

/// What would come of this plan, of the sound plan that is `nearest` to it, and of none, on the case as
/// the plan's own events have `left` it. The same case and plans give the same picture to the bit.
#[must_use]
pub fn illustration(left: &Case, mine: &Plan, nearest: Option<&Plan>) -> Illustration {
    let reads = Reads::of(&Measurements::of(left, mine));
    let mut chance = Chance::of(left, Matter::Fan);
    let patients: Vec<Patient> =
        (0..PATIENTS).map(|_| Patient::drawn(reads, &mut chance)).collect();
    let plans = [(Whose::Yours, Some(mine)), (Whose::Nearest, nearest)];
    let planned =
        plans.into_iter().filter_map(|(whose, plan)| Some((whose, course_of(left, plan?))));
    let untreated = (Whose::Untreated, Ok((Treatment::Nothing, None)));
    let mut arms: Vec<(Course, Arm)> = Vec::new();
    for (whose, course) in planned.chain([untreated]) {
        if let Some((_, arm)) = arms.iter_mut().find(|(other, _)| *other == course) {
            arm.whose.push(whose);
            continue;
        }
        let fan = course.map(|(treatment, until)| Fan::of(&patients, reads, treatment, until));
        arms.push((course, Arm { whose: vec![whose], fan }));
    }
    let arms = arms.into_iter().map(|(_, arm)| arm).collect();
    Illustration { reads, arms, sound: nearest == Some(mine) }
}

/// What the model tells apart about a plan: what is done, and until when it knows.
type Course = Result<(Treatment, Option<i32>), Unknown>;

fn course_of(left: &Case, plan: &Plan) -> Course {
    if plan.extraction.is_none() {
        return Err(Unknown::ToothKept);
    }
    let grafted = plan.graft_laid().is_some();
    if plan.implant_in_place().is_some() {
        // Whichever wall it is: what is published is of sockets with whole walls.
        return match (left.site.defects.is_empty(), grafted) {
            (false, _) => Err(Unknown::WallMissing),
            (true, true) => Ok((Treatment::GraftedImplant, None)),
            (true, false) => Ok((Treatment::Implant, None)),
        };
    }
    let placed = plan.later.placement.as_ref().and_then(|_| plan.later.found());
    let treatment = if grafted { Treatment::Preserved } else { Treatment::Nothing };
    Ok((treatment, placed.map(|found| found.after)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::plan::Decision;
    use crate::rules::regeneration::{defect, preserved};
    use crate::rules::trial::Trial;

    fn waiting() -> Trial {
        let mut trial = Trial::plain();
        trial.course("let-heal");
        trial
    }

    fn shown(mine: &Trial, nearest: Option<&Trial>) -> Illustration {
        let nearest = nearest.map(Trial::plan);
        illustration(&mine.case, &mine.plan(), nearest.as_ref())
    }

    fn fan_of(shown: &Illustration, whose: Whose) -> Fan {
        let arm = shown.arms.iter().find(|arm| arm.whose.contains(&whose)).unwrap();
        arm.fan.unwrap()
    }

    #[test]
    fn each_plan_is_read_as_the_treatment_that_it_is() {
        let of = |trial: &Trial| shown(trial, None).arms[0].fan.map(|fan| fan.treatment);
        assert_eq!(of(&waiting()), Ok(Treatment::Nothing));
        assert_eq!(of(&preserved()), Ok(Treatment::Preserved));
        let placed = Trial::plain();
        assert!(placed.plan().graft_laid().is_some());
        assert_eq!(of(&placed), Ok(Treatment::GraftedImplant));
        let mut empty = Trial::plain();
        empty.keys(&[("graft-material", "no-graft")]);
        assert_eq!(of(&empty), Ok(Treatment::Implant));
        let mut lost = Trial::plain();
        lost.case.site.defects.push(defect(crate::anatomy::Wall::Facial, DefectKind::DehiscenceV));
        assert_eq!(of(&lost), Err(Unknown::WallMissing));
        let mut kept = Trial::plain();
        kept.course("refer");
        assert_eq!(of(&kept), Err(Unknown::ToothKept));
    }

    #[test]
    fn percentiles_are_in_order_and_more_time_never_gives_back() {
        for trial in [waiting(), preserved(), Trial::plain()] {
            let shown = shown(&trial, Some(&preserved()));
            for fan in shown.arms.iter().filter_map(|arm| arm.fan.ok()) {
                for quantity in Quantity::ALL {
                    let months: Vec<_> =
                        fan.months().map(|month| fan.lost(quantity, f64::from(month))).collect();
                    assert_eq!(months[0], [Mm::ZERO; 3]);
                    for lost in &months[1..] {
                        // A graft that keeps more than would go leaves the least that goes.
                        assert!(lost[0] <= lost[1] && lost[1] < lost[2], "{lost:?}");
                    }
                    for pair in months.windows(2) {
                        assert!((0..3).all(|at| pair[0][at] < pair[1][at]), "{pair:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn a_graft_never_loses_more_than_none_and_the_same_case_gives_the_same_bits() {
        let (with, without) = (preserved(), waiting());
        let both = shown(&with, Some(&without));
        assert_eq!(both, shown(&with, Some(&without)));
        let mut bare = Trial::plain();
        bare.keys(&[("graft-material", "no-graft")]);
        let beside = shown(&Trial::plain(), Some(&bare));
        for shown in [&both, &beside] {
            let [grafted, none] = [Whose::Yours, Whose::Nearest].map(|one| fan_of(shown, one));
            for quantity in Quantity::ALL {
                let lost = |fan: Fan| fan.lost(quantity, 3.0);
                assert!((0..3).all(|at| lost(grafted)[at] <= lost(none)[at]), "{quantity:?}");
                assert!(lost(grafted)[1] < lost(none)[1], "{quantity:?}");
            }
        }
        // Another title is another patient: its draws differ, by no more than their error.
        let mut other = preserved();
        other.case.title = "another".to_owned();
        let [a, b] = [&with, &other].map(|trial| fan_of(&shown(trial, None), Whose::Yours));
        let [a, b] = [a, b].map(|fan| fan.lost(Quantity::Width, 6.0)[1].get());
        assert!(a.to_bits() != b.to_bits() && (a - b).abs() < 0.15, "{a} {b}");
    }

    #[test]
    fn what_the_model_cannot_tell_apart_stands_together_and_a_band_ends_at_the_late_implant() {
        let alike = shown(&waiting(), Some(&waiting()));
        assert!(alike.sound);
        assert_eq!(alike.arms.len(), 1);
        assert_eq!(alike.arms[0].whose, [Whose::Yours, Whose::Nearest, Whose::Untreated]);
        let mut late = waiting();
        late.keys(&[("healed-act", "place")]).number(Decision::PlaceAfter, 8);
        let shown = shown(&late, None);
        assert_eq!(shown.arms.len(), 2);
        let fan = fan_of(&shown, Whose::Yours);
        assert!((fan.last() - 8.0 / 4.345).abs() < 1e-9);
        assert_eq!(fan.months().collect::<Vec<_>>(), [0, 1]);
        assert_eq!(fan_of(&shown, Whose::Untreated).months().last(), Some(12));
    }

    #[test]
    fn the_one_course_that_re_entry_finds_is_of_the_same_model() {
        // A thousand patients as re-entry finds them lie about the bands as the bands say.
        let (trial, plan) = (waiting(), waiting().plan());
        let fan = fan_of(&shown(&trial, None), Whose::Yours);
        let [low, middle, high] = fan.lost(Quantity::Facial, 26.0 / 4.345).map(Mm::get);
        let mut below = [0; 3];
        for n in 0..1000 {
            let case = Case { title: n.to_string(), ..trial.case.clone() };
            let lowered =
                super::super::healed(&Measurements::of(&case, &plan), 26).unwrap().lowered;
            for (count, edge) in below.iter_mut().zip([low, middle, high]) {
                *count += i32::from(lowered.get() < edge);
            }
        }
        // Four standard deviations of counts near 100, 500 and 900.
        for ((count, expected), error) in below.iter().zip([100, 500, 900]).zip([40, 66, 40]) {
            assert!((count - expected).abs() < error, "{below:?}");
        }
    }
}
