//! What the learner has seen, could have seen, could not have known.

use crate::chart::{Case, Fact, Source};
use crate::plan::Plan;
use crate::plan::choices::SocketProbing;
use core::cell::OnceCell;

/// The standing of a fact at the end of what has been carried out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Knowledge {
    /// Seen, by this.
    Seen(Source),
    /// Not seen; it could have been, by this (the least invasive that would have shown it here).
    CouldHaveBeenSeenBy(Source),
    /// Nothing could have shown it.
    CouldNotBeKnown,
}

impl Knowledge {
    /// In words, as the debrief prints it.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::Seen(source) => format!("seen by {}", source.words()),
            Self::CouldHaveBeenSeenBy(source) => {
                format!("could have been seen by {}", source.words())
            }
            Self::CouldNotBeKnown => "could not be known".to_owned(),
        }
    }
}

/// Answers what is known in a plan.
#[derive(Debug)]
pub struct Known<'a> {
    case: &'a Case,
    plan: &'a Plan,
    kept: [OnceCell<Knowledge>; Fact::ALL.len()],
}

impl<'a> Known<'a> {
    /// Of this plan on this case.
    #[must_use]
    pub const fn of(case: &'a Case, plan: &'a Plan) -> Self {
        Self { case, plan, kept: [const { OnceCell::new() }; Fact::ALL.len()] }
    }

    /// The standing of a fact.
    #[must_use]
    pub fn fact(&self, fact: Fact) -> Knowledge {
        // Most facts are asked for by many rules.
        match self.kept.get(fact as usize) {
            Some(kept) => *kept.get_or_init(|| self.standing(fact)),
            None => self.standing(fact),
        }
    }

    fn standing(&self, fact: Fact) -> Knowledge {
        // A piece of the wall that comes with the root is in everybody's sight.
        if fact == Fact::FacialWall && self.case.broken.is_some() {
            return Knowledge::Seen(Source::ExtractedTooth);
        }
        let sources =
            || fact.shown_by().iter().copied().filter(|source| self.can_show(*source, fact));
        if let Some(source) = sources().find(|source| self.has_used(*source, fact)) {
            return Knowledge::Seen(source);
        }
        sources().next().map_or(Knowledge::CouldNotBeKnown, Knowledge::CouldHaveBeenSeenBy)
    }

    /// The worst standing among facts: what was not seen counts before what was.
    #[must_use]
    pub fn all(&self, facts: &[Fact]) -> Option<Knowledge> {
        let standings = facts.iter().map(|fact| self.fact(*fact));
        standings.max_by_key(|standing| match standing {
            Knowledge::Seen(_) => 0,
            Knowledge::CouldHaveBeenSeenBy(_) => 1,
            Knowledge::CouldNotBeKnown => 2,
        })
    }

    /// Whether the fact has been seen.
    #[must_use]
    pub fn is_seen(&self, fact: Fact) -> bool {
        matches!(self.fact(fact), Knowledge::Seen(_))
    }

    /// Whether this source would show the fact at this site. Sections do not show a plate thinner
    /// than the error they state, so they are no source for such a wall.
    fn can_show(&self, source: Source, fact: Fact) -> bool {
        use crate::plan::choices::Examination;
        match (source, fact) {
            (
                Source::Examination(Examination::Sections),
                Fact::FacialWall | Fact::FacialThickness,
            ) => self.case.readings.sections.facial_plate.is_some(),
            (Source::Examination(Examination::Sections), Fact::OralWall) => {
                self.case.readings.sections.oral_plate.is_some()
            }
            (Source::Examination(Examination::Film), Fact::ApicalLesion) => {
                self.case.readings.film_lesion.is_some()
                    || self.case.site.lesion == crate::anatomy::Lesion::None
            }
            _ => true,
        }
    }

    /// Whether this source was used, and reaches what the fact is about.
    pub(crate) fn has_used(&self, source: Source, fact: Fact) -> bool {
        let plan = self.plan;
        match source {
            Source::Chart => true,
            Source::Request(request) => {
                plan.chart.as_ref().is_some_and(|chart| chart.requests.has(request))
            }
            Source::Examination(examination) => {
                plan.examined.as_ref().is_some_and(|done| done.examinations.has(examination))
            }
            Source::SocketProbing => {
                plan.extraction.as_ref().is_some_and(|done| match done.probing {
                    SocketProbing::AllWalls => true,
                    SocketProbing::FacialOnly => fact != Fact::OralWall,
                    SocketProbing::Nothing => false,
                })
            }
            Source::Reflection => crate::measure::is_laid_bare(self.case, plan, fact),
            Source::ExtractedTooth => plan.extraction.is_some(),
            Source::Pilot => plan.implant.is_some(),
            Source::Seating => plan.implant.is_some() || plan.later.placement.is_some(),
        }
    }
}
