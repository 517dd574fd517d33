//! One thing that a learner may not have noticed, where it stands clear of chance.
//!
//! The comparisons are few and fixed beforehand. Each is decided by an exact test, and the bar is
//! raised by how many had enough to go on (Bonferroni), so that chance is not sold as insight. Which
//! comparisons, what is enough, and the bar are ours [ours]. That attempts do not lean on each other is
//! taken for granted.

use super::exact::{at_least, fisher};
use super::median;
use super::times::seconds_of;
use crate::past::{Observed, Past};
use engine::anatomy::{Jaw, Tooth};
use engine::plan::Step;
use engine::rules::Skill;

/// Fewest attempts on either side of a comparison, and fewest faults in all [ours].
const SIDE: u32 = 5;
const FAULTS: u32 = 4;
/// Fewest answers about how sure one was [ours].
const ANSWERS: u32 = 10;
/// How often chance may pass for a remark, over all comparisons [ours].
const CHANCE: f64 = 0.05;

/// What stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// Faults of a skill at teeth of one jaw.
    Jaw(Skill, Jaw),
    /// Faults of a skill at front teeth (`true`) or at back teeth.
    Front(Skill, bool),
    /// Faults in a step when it was done quicker (`true`) or slower than one's own middle.
    Quick(Step, bool),
    /// Faults in spite of being 90 or 100 % sure.
    Sure,
    /// None in spite of being 50 or 60 % sure.
    Unsure,
}

/// Something that stands out, with its numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Remark {
    /// What.
    pub what: What,
    /// There: how often it came, out of how often it could have.
    pub here: [u32; 2],
    /// Elsewhere, likewise; nothing is compared with answers about how sure one was.
    pub elsewhere: [u32; 2],
    /// How often chance alone would do as much in one of the comparisons made, 0 to 1.
    pub chance: f64,
    /// How many comparisons were made.
    pub compared: u32,
}

/// The remark that chance is least likely to make, where it is unlikely enough; and how many
/// comparisons had enough to go on.
pub(super) fn remark(own: &[&Past]) -> (Option<Remark>, u32) {
    let mut found: Vec<Remark> = Vec::new();
    for skill in Skill::ALL {
        let answers = || own.iter().filter_map(move |past| Some((past, !past.answer(skill)?)));
        let lower = |past: &&&Past| past.tooth.jaw() == Jaw::Mandible;
        found.extend(split(answers().map(|(past, wrong)| (lower(&past), wrong)), |is_lower| {
            What::Jaw(skill, if is_lower { Jaw::Mandible } else { Jaw::Maxilla })
        }));
        let front = answers().map(|(past, wrong)| (Tooth::is_anterior(past.tooth), wrong));
        found.extend(split(front, |is_front| What::Front(skill, is_front)));
    }
    for step in Step::ALL {
        found.extend(split(paced(own, *step).into_iter(), |quick| What::Quick(*step, quick)));
    }
    found.extend(how_sure(own));
    let compared = u32::try_from(found.len()).unwrap_or(u32::MAX);
    for one in &mut found {
        one.compared = compared;
        one.chance = (one.chance * f64::from(compared)).min(1.0);
    }
    let clear = found.into_iter().filter(|one| one.chance <= CHANCE);
    (clear.reduce(|a, b| if b.chance < a.chance { b } else { a }), compared)
}

/// Compares wrong answers on two sides; `what` says which side has more of them.
fn split(
    answers: impl Iterator<Item = (bool, bool)>,
    what: impl Fn(bool) -> What,
) -> Option<Remark> {
    let mut sides = [[0; 2]; 2];
    for (side, wrong) in answers {
        let [hits, all] = &mut sides[usize::from(side)];
        *hits += u32::from(wrong);
        *all += 1;
    }
    let [no, yes] = sides;
    if no[1] < SIDE || yes[1] < SIDE || no[0] + yes[0] < FAULTS {
        return None;
    }
    // Rates compared without dividing.
    let more = yes[0] * no[1] > no[0] * yes[1];
    let (here, elsewhere) = if more { (yes, no) } else { (no, yes) };
    Some(Remark { what: what(more), here, elsewhere, chance: fisher(here, elsewhere), compared: 0 })
}

/// Of each attempt that carried the step out with something in it that counts: whether it was done
/// quicker than the middle of them, and whether there was a fault.
fn paced(own: &[&Past], step: Step) -> Vec<(bool, bool)> {
    let of = |past: &&Past| {
        let counted = |one: &&Observed| one.counts && one.rule.step == step;
        past.observed.iter().find(counted)?;
        let wrong = past.observed.iter().filter(counted).any(Observed::is_fault);
        Some((seconds_of(past, step)?, wrong))
    };
    let all: Vec<(f64, bool)> = own.iter().filter_map(of).collect();
    let mut seconds: Vec<f64> = all.iter().map(|(seconds, _)| *seconds).collect();
    let middle = median(&mut seconds).unwrap_or(0.0);
    all.into_iter().map(|(seconds, wrong)| (seconds < middle, wrong)).collect()
}

/// Too sure, or not sure enough: answers against what they said, taken at its mildest.
fn how_sure(own: &[&Past]) -> impl Iterator<Item = Remark> {
    let count = |least: u8, most: u8, right: bool| {
        let answers = own.iter().flat_map(|past| &past.sure);
        let such = answers.filter(|one| (least..=most).contains(&one.percent));
        such.fold([0, 0], |[hits, all], one| [hits + u32::from(one.right == right), all + 1])
    };
    let of = |what, here: [u32; 2], p| {
        let chance = at_least(here[0], here[1], p);
        (here[1] >= ANSWERS).then_some(Remark {
            what,
            here,
            elsewhere: [0; 2],
            chance,
            compared: 0,
        })
    };
    [of(What::Sure, count(90, 100, false), 0.1), of(What::Unsure, count(50, 60, true), 0.6)]
        .into_iter()
        .flatten()
}

impl Remark {
    /// What was found, in sentences with its numbers.
    #[must_use]
    pub fn says(&self) -> String {
        let ([hits, all], [other, rest]) = (self.here, self.elsewhere);
        let most = format!("{hits} of your {}", hits + other);
        match self.what {
            What::Jaw(skill, jaw) => {
                let [here, there] = match jaw {
                    Jaw::Mandible => ["lower", "upper"],
                    Jaw::Maxilla => ["upper", "lower"],
                };
                format!(
                    "{}: {most} attempts with a fault were at teeth of the {here} jaw. There {hits} of {all} had one, in the {there} jaw {other} of {rest}.",
                    skill.words()
                )
            }
            What::Front(skill, front) => {
                let [here, there] = if front { ["front", "back"] } else { ["back", "front"] };
                format!(
                    "{}: {most} attempts with a fault were at {here} teeth. There {hits} of {all} had one, at {there} teeth {other} of {rest}.",
                    skill.words()
                )
            }
            What::Quick(step, quick) => {
                let [here, there] =
                    if quick { ["quicker", "slower"] } else { ["slower", "quicker"] };
                format!(
                    "{}: {most} attempts with a fault in it were {here} than your own middle time for it. Of the {here} ones {hits} of {all} had one, of the {there} ones {other} of {rest}.",
                    step.label()
                )
            }
            What::Sure => format!(
                "You were 90 or 100 % sure of {all} steps, and {hits} of them had a fault that counts."
            ),
            What::Unsure => format!(
                "You gave only 50 or 60 % to {all} steps, and {hits} of them had no fault that counts: you know more than you think."
            ),
        }
    }

    /// What chance would do, in sentences.
    #[must_use]
    pub fn says_of_chance(&self) -> String {
        let alone = match self.what {
            What::Sure => "Were you right nine times of ten, chance would bring as many faults",
            What::Unsure => "Were you right six times of ten, chance would bring as few faults",
            _ => "Were there no difference, chance would bring as uneven a split",
        };
        let percent = 100.0 * self.chance;
        let often =
            if percent < 0.1 { "less than 0.1".to_owned() } else { format!("{percent:.1}") };
        let among = match self.compared {
            1 => String::new(),
            count => format!(", with all {count} comparisons that were made counted in"),
        };
        format!("{alone} {often} times in 100{among}. It does not say why.")
    }
}

#[cfg(test)]
mod tests;
