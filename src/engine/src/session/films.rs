//! Films that were taken: the first by whoever holds the tube that day, others as the learner aims.
//!
//! A repeat is counted and told, and never marked: that a bad angle costs an exposure is seen in the
//! count.

use super::Session;
use super::film_report::Newest;
use crate::chart::Case;
use crate::imaging::{Aim, Noise, Size, Time, key};
use crate::plan::choices::Examination;
use crate::plan::{Later, Plan, Refusal, Step};
use crate::units::{Deg, Mm};
use serde::{Deserialize, Serialize};

/// How far the tube is off in a first film at most, degrees (ours: a usual day with a holder).
const FIRST: f64 = 9.0;

/// How the learner aims one film. Angles are seen from the tooth; all nought is the paralleling
/// technique done well.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Exposure {
    /// The beam against a right angle to the tooth, degrees, -40 to 40; positive from further apical.
    pub vertical: i8,
    /// The beam against a right angle to the arch, degrees, -40 to 40; positive from further distal.
    pub horizontal: i8,
    /// The receptor against the tooth's long axis, degrees, 0 to 40: its apical end further oral.
    pub lean: u8,
    /// The receptor's size, 0 to 2.
    pub size: u8,
}

impl Exposure {
    /// Degrees to either side within which a tube can be aimed.
    pub const MOST: i8 = 40;

    /// The paralleling technique done well.
    pub const PARALLEL: Self = Self { vertical: 0, horizontal: 0, lean: 0, size: 2 };

    /// Whether a tube and a receptor can stand so.
    #[must_use]
    pub const fn is_possible(self) -> bool {
        let most = Self::MOST.unsigned_abs();
        self.vertical.unsigned_abs() <= most
            && self.horizontal.unsigned_abs() <= most
            && self.lean <= most
            && self.size <= 2
    }

    /// Where that puts tube and receptor at a site.
    #[must_use]
    pub fn aim(self, usual: Aim) -> Aim {
        let size = [Size::Zero, Size::One, Size::Two][usize::from(self.size.min(2))];
        // A receptor that leans lies against the crown and away from the apex.
        let object = if self.lean == 0 { usual.object } else { Mm::new(5.0) };
        Aim {
            size,
            vertical: Deg::new(f64::from(self.vertical)),
            horizontal: Deg::new(f64::from(self.horizontal)),
            lean: Deg::new(f64::from(self.lean)),
            object,
            ..usual
        }
    }
}

/// At which moment a film was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Moment {
    /// At the examination, before anything was done.
    Examined,
    /// Once the implant was seated.
    Seated,
    /// At the returns, half a year later.
    FollowedUp,
}

impl Moment {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Examined => "before treatment",
            Self::Seated => "after seating",
            Self::FollowedUp => "at follow-up",
        }
    }

    /// What time has made of the site by then.
    #[must_use]
    pub const fn time(self) -> Time {
        match self {
            Self::Examined | Self::Seated => Time::Operation,
            Self::FollowedUp => Time::FollowUp,
        }
    }
}

/// One film.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Taken {
    /// When.
    pub moment: Moment,
    /// How it was aimed.
    pub exposure: Exposure,
    /// Its number among all films of the attempt, from 0: what seeds its noise.
    pub number: u8,
}

impl Session {
    /// The films taken so far, in order.
    #[must_use]
    pub fn films(&self) -> Vec<Taken> {
        let examined = self.shown.examined.as_ref();
        let at_first = examined.is_some_and(|done| done.examinations.has(Examination::Film));
        let seated = self.shown.implant.as_ref().is_some_and(|done| done.seating_film);
        let mut films: Vec<Taken> = Vec::new();
        for moment in [Moment::Examined, Moment::Seated, Moment::FollowedUp] {
            let first = match moment {
                Moment::Examined => at_first.then(|| self.first_try()),
                Moment::Seated if films.is_empty() => seated.then(|| self.first_try()),
                Moment::Seated => seated.then_some(Exposure::PARALLEL),
                // Nobody takes it unasked.
                Moment::FollowedUp => None,
            };
            let chosen = self.repeats.iter().filter(|(when, _)| *when == moment);
            let all = first.into_iter().chain(chosen.map(|(_, exposure)| *exposure));
            films.extend(all.map(|exposure| Taken { moment, exposure, number: 0 }));
        }
        for (film, number) in films.iter_mut().zip(0..) {
            film.number = number;
        }
        films
    }

    /// How many of the films were repeats: the first at follow-up is none.
    #[must_use]
    pub fn repeats(&self) -> usize {
        let followed = self.repeats.iter().any(|(when, _)| *when == Moment::FollowedUp);
        self.repeats.len() - usize::from(followed)
    }

    /// At which moment a film would be taken now; `None` where there is none to repeat, once the mouth
    /// is no longer what the last one showed, and once the course is over.
    #[must_use]
    pub fn exposing(&self) -> Option<Moment> {
        match self.due()? {
            Step::Review => Some(Moment::FollowedUp),
            _ => {
                self.films().last().map(|film| film.moment).filter(|moment| self.still_is(*moment))
            }
        }
    }

    /// Whether the mouth is still as a film of this moment shows it.
    const fn still_is(&self, moment: Moment) -> bool {
        let shown = &self.shown;
        match moment {
            Moment::Examined => shown.extraction.is_none(),
            Moment::Seated => shown.graft.is_none() && shown.closure.is_none(),
            // The returns change it at once.
            Moment::FollowedUp => false,
        }
    }

    /// The film that the report of the examination is read off: the newest from before treatment.
    pub(super) fn newest_before_treatment(&self) -> Newest {
        let films = self.films();
        let before = films.iter().filter(|film| film.moment == Moment::Examined);
        let newest = before.zip(1..).last();
        newest.map_or(Newest { exposure: Exposure::PARALLEL, number: 1 }, |(film, number)| Newest {
            exposure: film.exposure,
            number,
        })
    }

    /// What had been carried out when a film was taken, as far as it shows on one.
    #[must_use]
    pub fn plan_at(&self, moment: Moment) -> Plan {
        let shown = &self.shown;
        match moment {
            Moment::Examined => Plan::default(),
            Moment::Seated => Plan {
                extraction: shown.extraction.clone(),
                implant: shown.implant.clone(),
                seating: shown.seating.clone(),
                ..Plan::default()
            },
            // What the returns decide comes after this film: no crown stands yet.
            Moment::FollowedUp => Plan { returns: None, later: Later::NONE, ..shown.clone() },
        }
    }

    /// The case that a film of this moment shows: as it was opened, or as the acts have left it.
    #[must_use]
    pub fn case_at(&self, moment: Moment) -> &Case {
        match moment {
            Moment::Examined => self.opened(),
            Moment::Seated | Moment::FollowedUp => self.case(),
        }
    }

    /// The last film once more, aimed so; at the returns a film of how it has healed.
    pub(super) fn repeat(&mut self, exposure: Exposure) -> Result<(), Refusal> {
        let moment = self.exposing().ok_or(Refusal::NoFilm)?;
        if !exposure.is_possible() {
            return Err(Refusal::NoSuchAim);
        }
        // Each is a picture to keep, and nobody exposes a patient so often.
        if self.repeats.len() >= MOST {
            return Err(Refusal::TooManyFilms);
        }
        self.repeats.push((moment, exposure));
        Ok(())
    }

    /// How the first film is aimed: a little off, as the case's own seed says.
    fn first_try(&self) -> Exposure {
        let mut chance = Noise::of(key(&self.opened), AIM);
        let mut off = || libm::round(chance.between(-FIRST, FIRST));
        #[expect(clippy::cast_possible_truncation, reason = "within 9")]
        let [vertical, horizontal] = [off() as i8, off() as i8];
        Exposure { vertical, horizontal, ..Exposure::PARALLEL }
    }
}

/// Films of one attempt at most, the first aside.
const MOST: usize = 12;
/// The stream that the first aim is drawn from, past those of exposures.
const AIM: u32 = 900;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Step;
    use crate::rules::trial::Trial;
    use crate::session::{Event, Mode};

    const FILM: [(&str, &str); 2] =
        [("examinations", "look film"), ("film-question", "root-and-apex")];

    /// A session of a trial's choices, carried out up to the step.
    fn until(trial: &Trial, last: Step) -> Session {
        let mut session = Session::open(trial.case.clone(), Mode::Study);
        for (decision, value) in trial.draft.iter() {
            session.apply(Event::Choose(decision, Some(value.clone()))).unwrap();
        }
        while let Some(due) = session.due() {
            session.apply(Event::CarryOut(due)).unwrap();
            if due == last {
                break;
            }
        }
        session
    }

    #[test]
    fn a_film_is_there_once_it_was_taken_and_the_same_case_is_aimed_at_in_the_same_way() {
        let mut trial = Trial::plain();
        trial.keys(&FILM);
        assert!(until(&trial, Step::Chart).films().is_empty());
        let [one, again] = [until(&trial, Step::Examination), until(&trial, Step::Extraction)];
        assert_eq!(one.films().len(), 1);
        assert_eq!(one.films(), again.films());
        assert!(one.films()[0].exposure.is_possible());
        assert_eq!(one.plan_at(Moment::Examined), Plan::default());
    }

    #[test]
    fn repeats_are_counted_belong_to_their_moment_and_replay() {
        let mut trial = Trial::plain();
        trial.keys(&FILM).keys(&[("seating-film", "yes")]);
        let steep = Exposure { vertical: 25, ..Exposure::PARALLEL };
        let mut session = until(&trial, Step::Examination);
        session.apply(Event::Expose(steep)).unwrap();
        for step in [Step::Intention, Step::Extraction, Step::Flap, Step::Implant] {
            session.apply(Event::CarryOut(step)).unwrap();
        }
        session.apply(Event::Expose(Exposure::PARALLEL)).unwrap();
        let films = session.films();
        let moments: Vec<Moment> = films.iter().map(|film| film.moment).collect();
        use Moment::{Examined, Seated};
        assert_eq!(moments, [Examined, Examined, Seated, Seated]);
        assert_eq!((films[1].exposure, films[3].number, session.repeats()), (steep, 3, 2));
        assert!(session.plan_at(Seated).implant.is_some());
        let again = Session::replay(trial.case.clone(), Mode::Study, session.events()).unwrap();
        assert_eq!(again.films(), films);
    }

    #[test]
    fn no_film_is_taken_again_of_a_mouth_that_has_changed_since() {
        let mut trial = Trial::plain();
        trial.keys(&FILM).keys(&[("seating-film", "yes")]);
        let at = |last| until(&trial, last).exposing();
        assert_eq!(at(Step::Intention), Some(Moment::Examined));
        assert_eq!(at(Step::Extraction), None);
        assert_eq!(at(Step::Implant), Some(Moment::Seated));
        assert_eq!(at(Step::Graft), None);
        assert_eq!(at(Step::Closure), Some(Moment::FollowedUp));
        assert_eq!(at(Step::Review), None);
    }

    #[test]
    fn a_film_at_follow_up_is_taken_at_the_review_shows_what_was_done_and_is_no_repeat() {
        let mut trial = Trial::plain();
        trial.keys(&[("examinations", "look"), ("seating-film", "no")]);
        let mut session = until(&trial, Step::Closure);
        assert_eq!(session.exposing(), Some(Moment::FollowedUp));
        assert_eq!(session.films().len(), 0);
        session.apply(Event::Expose(Exposure::PARALLEL)).unwrap();
        session.apply(Event::Expose(Exposure { horizontal: 10, ..Exposure::PARALLEL })).unwrap();
        let films = session.films();
        assert!(films.iter().all(|film| film.moment == Moment::FollowedUp));
        assert_eq!((films.len(), session.repeats()), (2, 1));
        let before = session.plan_at(Moment::FollowedUp);
        assert!(before.implant.is_some() && before.graft == session.shown().graft);
        while let Some(due) = session.due() {
            session.apply(Event::CarryOut(due)).unwrap();
        }
        assert_eq!(session.plan_at(Moment::FollowedUp), before, "the picture stays what it was");
        assert_eq!(session.apply(Event::Expose(Exposure::PARALLEL)), Err(Refusal::NoFilm));
        let again = Session::replay(trial.case.clone(), Mode::Study, session.events()).unwrap();
        assert_eq!(again.films(), films);
    }

    #[test]
    fn the_report_of_a_film_follows_its_newest_aim() {
        let mut trial = Trial::plain();
        trial.keys(&FILM);
        let mut session = until(&trial, Step::Examination);
        let told = |session: &Session| {
            let reports = session.reports();
            reports.iter().find(|one| one.title == "Periapical film").unwrap().lines.join(" ")
        };
        assert!(told(&session).contains("Root from crest to apex"));
        let bad = Exposure { vertical: 40, lean: 40, ..Exposure::PARALLEL };
        session.apply(Event::Expose(bad)).unwrap();
        assert!(told(&session).starts_with("Read off film 2. The root is drawn too short"));
        session.apply(Event::Expose(Exposure::PARALLEL)).unwrap();
        assert!(told(&session).contains("Root from crest to apex"));
    }

    #[test]
    fn no_film_is_repeated_that_was_never_taken_or_that_no_tube_could_take() {
        let mut trial = Trial::plain();
        trial.keys(&FILM);
        let mut session = until(&trial, Step::Chart);
        assert_eq!(session.apply(Event::Expose(Exposure::PARALLEL)), Err(Refusal::NoFilm));
        session = until(&trial, Step::Examination);
        let far = Exposure { horizontal: -41, ..Exposure::PARALLEL };
        assert_eq!(session.apply(Event::Expose(far)), Err(Refusal::NoSuchAim));
        for _ in 0..MOST {
            session.apply(Event::Expose(Exposure::PARALLEL)).unwrap();
        }
        assert_eq!(session.apply(Event::Expose(Exposure::PARALLEL)), Err(Refusal::TooManyFilms));
        assert_eq!(session.films().len(), MOST + 1);
    }
}
