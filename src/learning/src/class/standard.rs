//! Where a pass mark lies: by what judges expect (Angoff), and by how examiners rated performances as a
//! whole (borderline regression). Descriptions confirmed in reviews, formulas from memory, numbers
//! checked against an outside library.

use super::{Answers, Share};
use core::fmt;
use engine::debrief::plain;
use libm::sqrt;

/// What a judge gives.
pub(super) const A_CHANCE: &str = "a chance from 0 to 1 (60 % is 0.6)";

/// Why no standard can be set.
#[derive(Debug, Clone, PartialEq)]
pub enum NoStandard {
    /// Nobody judged, or nothing was judged.
    Empty,
    /// A judge left items out, or judged some that are not there.
    Uneven {
        /// Which judge, from 0.
        judge: usize,
        /// How many numbers they gave.
        found: usize,
        /// How many the first judge gave.
        expected: usize,
    },
    /// A judge's number is no chance.
    NoChance {
        /// Which judge, from 0.
        judge: usize,
        /// Which item, from 0.
        item: usize,
        /// The number.
        found: f64,
    },
    /// Judges and class have not the same items.
    OtherItems {
        /// How many were judged.
        found: usize,
        /// How many were answered.
        expected: usize,
    },
    /// A mark is none.
    NoMark {
        /// Whose, from 0.
        place: usize,
        /// The number.
        found: f64,
    },
    /// The borderline rating is no number.
    NoRating {
        /// What was said.
        found: f64,
    },
    /// Too few performances for a line with a scatter about it.
    TooFew {
        /// How many.
        found: usize,
    },
    /// All were rated the same, so that there is no line.
    OneRating,
}

impl fmt::Display for NoStandard {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str(
                "found no number, expected one from each judge for each item; ask one judge at least",
            ),
            Self::Uneven { judge, found, expected } => write!(
                f,
                "judge {}: found {found} numbers, expected {expected} as from judge 1; ask for the \
                 missing ones or leave the judge out",
                judge + 1
            ),
            Self::NoChance { judge, item, found } => write!(
                f,
                "judge {}, item {}: found {}, expected {A_CHANCE}",
                judge + 1,
                item + 1,
                plain(*found)
            ),
            Self::OtherItems { found, expected } => write!(
                f,
                "found {found} items judged, expected the {expected} that were answered; leave out \
                 what is in one list alone"
            ),
            Self::NoMark { place, found } => {
                write!(f, "performance {}: found {}, expected a mark from 0 to 100", place + 1, plain(*found))
            }
            Self::NoRating { found } => {
                write!(f, "found {} as the borderline rating, expected a number on the scale", plain(*found))
            }
            Self::TooFew { found } => {
                write!(f, "found {found} rated performances, expected 3 at least; rate more of them")
            }
            Self::OneRating => f.write_str(
                "found one and the same rating for all, expected two at least; rate others as well",
            ),
        }
    }
}

impl core::error::Error for NoStandard {}

/// What judges expect of somebody who can just be let pass: for each item the chance to get it right.
///
/// Beginners at judging drift to about 0.5, and judges agree little with what the class did (BMC Medical
/// Education 2020, confirmed): so the difficulty stands beside each number ([`Self::beside`]).
#[derive(Debug, Clone, PartialEq)]
pub struct Angoff {
    /// Judge by judge, all of one length, 1 at least, each 0 to 1.
    judges: Vec<Vec<f64>>,
    items: usize,
}

/// An item as it was judged and as it came out.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// The number of each judge, 0 to 1.
    pub judged: Vec<f64>,
    /// Their mean.
    pub mean: f64,
    /// Who got it right of those who reached it.
    pub found: Share,
}

impl Angoff {
    /// Of each judge's chances, item by item.
    ///
    /// # Errors
    /// [`NoStandard`] where a number is missing or is no chance.
    pub fn of(judges: Vec<Vec<f64>>) -> Result<Self, NoStandard> {
        let items = judges.first().map_or(0, Vec::len);
        if items == 0 {
            return Err(NoStandard::Empty);
        }
        for (judge, chances) in judges.iter().enumerate() {
            if chances.len() != items {
                let found = chances.len();
                return Err(NoStandard::Uneven { judge, found, expected: items });
            }
            let wrong = chances.iter().position(|chance| !(0.0..=1.0).contains(chance));
            if let Some((item, found)) = wrong.and_then(|item| Some((item, *chances.get(item)?))) {
                return Err(NoStandard::NoChance { judge, item, found });
            }
        }
        Ok(Self { judges, items })
    }

    /// How many items were judged, 1 at least.
    #[must_use]
    pub const fn items(&self) -> usize {
        self.items
    }

    /// The total that each judge expects, items.
    #[must_use]
    pub fn sums(&self) -> Vec<f64> {
        self.judges.iter().map(|chances| chances.iter().sum()).collect()
    }

    /// The mean over judges for each item.
    #[must_use]
    pub fn means(&self) -> Vec<f64> {
        let of = |item| mean(&self.of_item(item));
        (0..self.items).map(of).collect()
    }

    /// The pass mark, items: the mean total that judges expect.
    #[must_use]
    pub fn cut(&self) -> f64 {
        mean(&self.sums())
    }

    /// The standard error of the pass mark, items: how far it would scatter with other judges. Nothing
    /// with one judge.
    #[must_use]
    pub fn error(&self) -> Option<f64> {
        let sums = self.sums();
        let (count, squares) = (sums.len() as f64, off(&sums));
        (count > 1.0).then(|| sqrt(squares / (count - 1.0) / count))
    }

    /// Each item as it was judged beside how it came out.
    ///
    /// # Errors
    /// [`NoStandard::OtherItems`] where the class answered more items or fewer.
    pub fn beside(&self, answers: &Answers) -> Result<Vec<Beside>, NoStandard> {
        if answers.items() != self.items {
            let (found, expected) = (self.items, answers.items());
            return Err(NoStandard::OtherItems { found, expected });
        }
        let shares = Share::of_items(answers).into_iter().enumerate();
        Ok(shares.map(|(item, found)| self.beside_one(item, found)).collect())
    }

    fn beside_one(&self, item: usize, found: Share) -> Beside {
        let judged = self.of_item(item);
        Beside { mean: mean(&judged), judged, found }
    }

    fn of_item(&self, item: usize) -> Vec<f64> {
        self.judges.iter().filter_map(|chances| chances.get(item).copied()).collect()
    }
}

/// A performance with its mark and how an examiner rated it as a whole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rated {
    /// The rating, on a scale of steps: the more the better.
    pub rating: u8,
    /// The mark, 0 to 100.
    pub mark: f64,
}

/// The line of marks over ratings, and the mark that it has at the borderline rating.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Borderline {
    /// Marks to a step of the rating. At 0 or below, marks and ratings contradict each other, and the
    /// pass mark means nothing: to be told beside it.
    pub slope: f64,
    /// The mark of the line at rating 0.
    pub intercept: f64,
    /// The pass mark: that of the line at the borderline rating.
    pub cut: f64,
    /// The share of the variance of marks that the line explains, 0 to 1; nothing where all marks are the
    /// same.
    pub explained: Option<f64>,
    /// Root of the mean square about the line, marks, over two fewer than there are performances.
    pub scatter: f64,
    /// Standard error of the pass mark, marks: of the line at that point.
    pub error: f64,
    /// Whether the borderline rating lies outside all ratings that were given, so that the line is drawn
    /// out to it.
    pub is_drawn_out: bool,
}

impl Borderline {
    /// Of rated performances, at a borderline rating; it may lie between two steps.
    ///
    /// # Errors
    /// [`NoStandard`] where a number is none, or there is no line.
    pub fn of(rated: &[Rated], at: f64) -> Result<Self, NoStandard> {
        if !at.is_finite() {
            return Err(NoStandard::NoRating { found: at });
        }
        let wrong = |(_, one): &(usize, &Rated)| !(0.0..=100.0).contains(&one.mark);
        if let Some((place, one)) = rated.iter().enumerate().find(wrong) {
            return Err(NoStandard::NoMark { place, found: one.mark });
        }
        if rated.len() < 3 {
            return Err(NoStandard::TooFew { found: rated.len() });
        }
        let ratings: Vec<f64> = rated.iter().map(|one| f64::from(one.rating)).collect();
        let marks: Vec<f64> = rated.iter().map(|one| one.mark).collect();
        let wide = off(&ratings);
        if wide <= 0.0 {
            return Err(NoStandard::OneRating);
        }
        Ok(Self::drawn(&ratings, &marks, wide, at))
    }

    /// The line by least squares; `wide` is the sum of squares of ratings about their mean, above 0.
    fn drawn(ratings: &[f64], marks: &[f64], wide: f64, at: f64) -> Self {
        let (middle, level) = (mean(ratings), mean(marks));
        let pairs = || ratings.iter().zip(marks);
        let together: f64 = pairs().map(|(rating, mark)| (rating - middle) * (mark - level)).sum();
        let slope = together / wide;
        let line = |rating: f64| level + slope * (rating - middle);
        let about: f64 = pairs()
            .map(|(rating, mark)| {
                let off = mark - line(*rating);
                off * off
            })
            .sum();
        let (count, high) = (ratings.len() as f64, off(marks));
        let scatter = sqrt(about / (count - 2.0));
        let away = at - middle;
        Self {
            slope,
            intercept: line(0.0),
            cut: line(at),
            explained: (high > 0.0).then(|| (1.0 - about / high).max(0.0)),
            scatter,
            error: scatter * sqrt(1.0 / count + away * away / wide),
            is_drawn_out: ratings.iter().all(|rating| *rating < at)
                || ratings.iter().all(|rating| *rating > at),
        }
    }
}

/// The mean; of one at least.
fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// Squares about the mean, added up; of one at least.
fn off(values: &[f64]) -> f64 {
    let mean = mean(values);
    values.iter().map(|value| (value - mean) * (value - mean)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::trial::{TEN_BY_FIVE, close, table};

    fn near(found: f64, expected: f64, half_a_unit: f64) {
        assert!((found - expected).abs() <= half_a_unit, "{found}, expected {expected}");
    }

    fn three_judges() -> Angoff {
        let judges = [[0.6, 0.7, 0.5, 0.8, 0.4], [0.5, 0.65, 0.55, 0.75, 0.45], {
            [0.7, 0.7, 0.45, 0.85, 0.5]
        }];
        Angoff::of(judges.map(Vec::from).to_vec()).unwrap()
    }

    /// Twelve performances (computed; an outside library repeats them).
    fn twelve() -> Vec<Rated> {
        let ratings = [1, 1, 2, 2, 2, 3, 3, 3, 3, 4, 4, 5];
        let marks = [38, 44, 50, 55, 52, 60, 64, 58, 66, 72, 75, 88].map(f64::from);
        ratings.into_iter().zip(marks).map(|(rating, mark)| Rated { rating, mark }).collect()
    }

    #[test]
    fn three_judges_of_five_items_set_their_pass_mark() {
        let found = three_judges();
        let means = [0.6, 2.05 / 3.0, 0.5, 0.8, 0.45];
        found.means().iter().zip(means).for_each(|(found, mean)| close(*found, mean));
        found.sums().iter().zip([3.0, 2.9, 3.2]).for_each(|(found, sum)| close(*found, sum));
        near(found.cut(), 3.0333, 5e-5);
        near(found.error().unwrap(), 0.088_19, 5e-6);
    }

    #[test]
    fn what_the_class_did_stands_beside_what_each_judge_said() {
        let found = three_judges().beside(&table(&TEN_BY_FIVE)).unwrap();
        assert_eq!(found[0].judged, [0.6, 0.5, 0.7]);
        close(found[0].mean, 0.6);
        assert_eq!(found[0].found, Share { right: 8, wrong: 2 });
        let fault = three_judges().beside(&table(&["1111"])).unwrap_err();
        assert_eq!(fault, NoStandard::OtherItems { found: 5, expected: 4 });
    }

    #[test]
    fn one_judge_has_no_error_and_judges_who_agree_have_none_to_speak_of() {
        let one = Angoff::of(vec![vec![0.5, 0.7]]).unwrap();
        assert_eq!(one.error(), None);
        close(one.cut(), 1.2);
        let agreed = Angoff::of(vec![vec![0.5, 0.75]; 4]).unwrap();
        assert_eq!(agreed.error(), Some(0.0));
    }

    #[test]
    fn what_is_no_judgement_is_told_with_its_place() {
        let of = |judges: &[&[f64]]| Angoff::of(judges.iter().map(|one| one.to_vec()).collect());
        assert_eq!(of(&[]), Err(NoStandard::Empty));
        assert_eq!(of(&[&[]]), Err(NoStandard::Empty));
        let uneven = NoStandard::Uneven { judge: 1, found: 1, expected: 2 };
        assert_eq!(of(&[&[0.5, 0.5], &[0.5]]), Err(uneven));
        let fault = of(&[&[0.5, 60.0]]).unwrap_err();
        assert_eq!(
            fault.to_string(),
            "judge 1, item 2: found 60, expected a chance from 0 to 1 (60 % is 0.6)"
        );
        assert!(of(&[&[f64::NAN]]).is_err());
    }

    #[test]
    fn twelve_performances_set_their_pass_mark() {
        let found = Borderline::of(&twelve(), 2.0).unwrap();
        near(found.slope, 11.230_769, 5e-7);
        near(found.intercept, 29.282_051, 5e-7);
        near(found.cut, 51.743_590, 5e-7);
        near(found.explained.unwrap(), 0.958_810, 5e-7);
        near(found.scatter, 2.967_344, 5e-7);
        near(found.error, 1.019_094, 5e-7);
        assert!(!found.is_drawn_out);
        assert!(Borderline::of(&twelve(), 0.5).unwrap().is_drawn_out);
        // The line at the middle rating has the least error.
        let middle = Borderline::of(&twelve(), 33.0 / 12.0).unwrap();
        close(middle.error, middle.scatter / 12.0_f64.sqrt());
    }

    #[test]
    fn no_line_is_drawn_through_too_little() {
        let of = |rated: &[(u8, f64)], at| {
            let rated: Vec<Rated> =
                rated.iter().map(|(rating, mark)| Rated { rating: *rating, mark: *mark }).collect();
            Borderline::of(&rated, at)
        };
        let two = of(&[(1, 40.0), (2, 50.0)], 2.0);
        assert_eq!(two, Err(NoStandard::TooFew { found: 2 }));
        let one_rating = of(&[(2, 40.0), (2, 50.0), (2, 60.0)], 2.0);
        assert_eq!(one_rating, Err(NoStandard::OneRating));
        let no_mark = of(&[(2, 40.0), (2, 150.0), (2, 60.0)], 2.0);
        assert_eq!(no_mark, Err(NoStandard::NoMark { place: 1, found: 150.0 }));
        assert!(of(&[(1, 40.0), (2, 50.0), (3, 60.0)], f64::NAN).is_err());
        let same_marks = of(&[(1, 50.0), (2, 50.0), (3, 50.0)], 2.0).unwrap();
        assert_eq!((same_marks.explained, same_marks.cut), (None, 50.0));
        let falling = of(&[(1, 60.0), (2, 50.0), (3, 40.0)], 2.0).unwrap();
        assert!(falling.slope < 0.0 && falling.scatter < 1e-12);
    }
}
