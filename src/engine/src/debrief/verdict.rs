//! One rule's word on one plan.

use crate::chart::{Case, Fact};
use crate::events;
use crate::geometry::order;
use crate::hash::Fnv;
use crate::measure::Measurements;
use crate::plan::{Plan, Step};
use crate::rules::{
    self, Bands, Here, Judging, Knowledge, Known, Reading, Rule, Scale, Zone, weight_of,
};
use std::borrow::Cow;

/// What a rule says about a plan.
#[derive(Debug, Clone)]
pub struct Verdict {
    /// The rule.
    pub rule: &'static Rule,
    /// What it read.
    pub reading: Reading,
    /// What that is worth.
    pub zone: Zone,
    /// Whether what it rests on was seen; `None` when it rests on nothing but choices.
    pub knowledge: Option<Knowledge>,
    /// The first fact that was not seen though it could have been.
    pub missed: Option<Fact>,
    /// How the set that gives the case has the rule, where it has changed it.
    pub here: Option<Box<Here>>,
}

impl Verdict {
    /// Whether it counts: a fault that nobody could have known of is explained, never marked, and
    /// where sources disagree nothing is marked.
    #[must_use]
    pub fn counts(&self) -> bool {
        self.zone != Zone::Debated && self.knowledge != Some(Knowledge::CouldNotBeKnown)
    }

    /// Whether it is a fault that counts.
    #[must_use]
    pub fn is_fault(&self) -> bool {
        self.counts() && self.zone.is_fault()
    }

    /// The scale that it was judged by: the rule's, or that of the set; `None` for situations.
    #[must_use]
    pub fn bands(&self) -> Option<Bands<'_>> {
        match (&self.here, &self.rule.scale) {
            (Some(here), _) => here.bands(),
            (None, Scale::Bands(bands)) => Some(*bands),
            (None, Scale::Situations(_)) => None,
        }
    }

    /// What the rule says of the same reading as it stands, whatever the set has made of it.
    #[must_use]
    pub fn zone_unmoved(&self) -> Zone {
        self.rule.zone_of(self.reading).unwrap_or(self.zone)
    }

    /// What the rule weighs here.
    #[must_use]
    pub fn weight(&self) -> u32 {
        weight_of(self.here.as_ref().map_or_else(|| self.rule.cost(), |here| here.cost()))
    }

    /// What the fault costs: 3 when unsafe or likely to compromise, 1 when suboptimal.
    #[must_use]
    pub const fn weight_of_fault(&self) -> u32 {
        match self.zone {
            Zone::Unsafe | Zone::Compromising => 3,
            Zone::Suboptimal => 1,
            Zone::Ideal | Zone::Acceptable | Zone::Debated => 0,
        }
    }
}

/// Whether this step has been carried out.
pub(super) const fn is_done(plan: &Plan, step: Step) -> bool {
    match step {
        Step::Chart => plan.chart.is_some(),
        Step::Examination => plan.examined.is_some(),
        Step::Intention => plan.intention.is_some(),
        Step::Extraction => plan.extraction.is_some(),
        Step::Flap => plan.flap.is_some(),
        Step::Implant => plan.implant.is_some(),
        Step::Seating => plan.seating.is_some(),
        Step::Graft => plan.graft.is_some(),
        Step::Closure => plan.closure.is_some(),
        Step::Review => plan.returns.is_some(),
        Step::ReEntry => plan.later.re_entry.is_some(),
        Step::ReEntryAgain => plan.later.re_entry_again.is_some(),
        Step::LastReEntry => plan.later.last_re_entry.is_some(),
        Step::LatePlacement => plan.later.placement.is_some(),
        Step::Uncovering => plan.later.uncovering.is_some(),
        Step::Restoration => plan.later.restoration.is_some(),
        Step::Recall => plan.later.recall.is_some(),
    }
}

/// The last step carried out. A step before it was carried out too, or left out of a course that went
/// on past it: what was rightly not done is judged as well.
fn last_done(plan: &Plan) -> Option<Step> {
    Step::ALL.iter().rev().copied().find(|step| is_done(plan, *step))
}

/// Every rule that applies to what has been carried out, in the order of care. `case` is the case as
/// it was drawn or written; what the plan's own events did to it is worked out here.
#[must_use]
pub fn judge(case: &Case, plan: &Plan) -> Vec<Verdict> {
    let before = Measurements::of(case, plan);
    match events::after(case, plan) {
        Cow::Borrowed(_) => judge_by(&before, &before),
        Cow::Owned(now) => judge_by(&before, &Measurements::of(&now, plan)),
    }
}

/// The same from measurements that already stand, for many plans on one ground: of the case as it
/// was, by which all is judged that was decided before the tooth came out, and of the case as the
/// plan's events left it.
#[must_use]
pub fn judge_by(before: &Measurements<'_>, after: &Measurements<'_>) -> Vec<Verdict> {
    let known = [before, after].map(|m| Known::of(m.case, m.plan));
    let [before, after] = [(before, &known[0]), (after, &known[1])].map(|(m, known)| Judging {
        case: m.case,
        plan: m.plan,
        m,
        known,
    });
    let last = last_done(after.plan);
    let mut verdicts: Vec<Verdict> = rules::all()
        .filter(|rule| Some(rule.step) <= last)
        .filter_map(|rule| {
            verdict(rule, if rule.step < Step::Extraction { &before } else { &after })
        })
        .collect();
    order::sort_short_by_key(&mut verdicts, |verdict| verdict.rule.step);
    verdicts
}

fn verdict(rule: &'static Rule, judging: &Judging<'_>) -> Option<Verdict> {
    let reading = (rule.measure)(judging)?;
    // The one place where a set's own protocol comes in: what was read stays what it is.
    let local = &judging.case.local;
    let here = local.of(rule).map(Box::new);
    let zone = match &here {
        Some(here) => here.zone_of(reading)?,
        None => rule.zone_of(reading)?,
    };
    let missed = rule
        .rests_on
        .iter()
        .copied()
        .find(|fact| matches!(judging.known.fact(*fact), Knowledge::CouldHaveBeenSeenBy(_)));
    let knowledge = judging.known.all(rule.rests_on);
    Some(Verdict { rule, reading, zone, knowledge, missed, here })
}

/// A hash of verdicts (FNV-1a, 64 bit): rule, zone, reading to the bit, and what was known.
#[must_use]
pub fn hash_of(verdicts: &[Verdict]) -> u64 {
    let mut hash = Fnv::new();
    for verdict in verdicts {
        hash.text(verdict.rule.id);
        hash.text(verdict.zone.key());
        match verdict.reading {
            Reading::Number(value) => hash.bytes(&value.to_bits().to_le_bytes()),
            Reading::Situation(key) => hash.text(key),
        }
        if let Some(knowledge) = verdict.knowledge {
            hash.text(&knowledge.words());
        }
    }
    hash.value()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Lesion;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn what_was_rightly_left_out_is_judged_once_the_course_has_gone_past_it() {
        let mut trial = Trial::plain();
        trial.case.site.lesion = Lesion::Abscess { diameter: Mm::new(4.0) };
        trial.course("return-early");
        let mut plan = trial.plan();
        let word = |plan: &Plan| {
            let verdicts = judge(&trial.case, plan);
            verdicts.iter().find(|v| v.rule.id == "placed-on-acute-infection").map(|v| v.zone)
        };
        assert_eq!(word(&plan), Some(Zone::Ideal));
        plan.closure = None;
        plan.returns = None;
        plan.later = crate::plan::Later::NONE;
        assert_eq!(word(&plan), None, "before that an implant could still follow");
    }
}
