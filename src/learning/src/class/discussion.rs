//! A case for discussion: what a class chose at one case, without names and in no order that gives
//! anybody away.

use super::gathered::{CaseSeen, Class, Row};
use super::marks::placed;
use super::{Answer, MOST_RULES, order};
use core::cmp::Ordering;
use engine::chart::Address;
use engine::debrief::Verdict;
use engine::geometry::Outline;
use engine::plan::{Implant, Plan};
use engine::rules::{Local, Rule, Zone, all};

/// From so many learners on nobody is told from the others in a picture of all (ours).
pub const UNTOLD_FROM: u32 = 8;

/// What a discussion of an attempt needs, and its mark ([`Class::marks_at`]). The page keeps it; a class
/// that is only counted does not ([`Class::counted_only`]).
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Brought {
    /// The plan as it was carried out.
    pub plan: Plan,
    /// The protocol of its set.
    pub local: Local,
    /// Its faults: the place of the rule in the register, and the zone.
    pub(super) faults: Vec<(u8, Zone)>,
}

impl Brought {
    /// Of a plan, the protocol of its set, and what the rules say of it.
    #[must_use]
    pub fn of(plan: Plan, local: Local, verdicts: &[Verdict]) -> Self {
        let of_faults = placed(verdicts).filter(|(_, one)| one.is_fault());
        // No place is out of a byte's reach, as there are [`MOST_RULES`].
        let faults =
            of_faults.filter_map(|(place, one)| Some((u8::try_from(place).ok()?, one.zone)));
        Self { plan, local, faults: faults.collect() }
    }
}

/// What a class chose at one case, and what came of it rule by rule.
#[derive(Debug, Clone, PartialEq)]
pub struct Discussion {
    /// How many learners saw the case through; what others began is not shown.
    pub learners: u32,
    /// Every implant that stands in the fresh socket, the narrowest first.
    pub implants: Vec<Implant>,
    /// What every membrane covers, in the order of its corners' numbers.
    pub membranes: Vec<Outline>,
    /// Every rule that anybody missed or held something against, in the order of care.
    pub rules: Vec<Discussed>,
    /// How many rules everybody kept who reached them, and nobody held anything against.
    pub kept: usize,
}

/// A rule at that case.
#[derive(Debug, Clone, PartialEq)]
pub struct Discussed {
    /// Which.
    pub rule: &'static Rule,
    /// How many kept it, missed it, and did not reach it.
    pub counts: [u32; 3],
    /// Whether somebody's verdict lies in the unsafe zone: it is set aside for no class.
    pub grave: bool,
    /// What was held against it, in the order of the alphabet.
    pub reasons: Vec<String>,
}

impl Discussion {
    /// The cases that can be discussed: drawn by their address, and brought to the end by somebody.
    #[must_use]
    pub fn cases(class: &Class) -> Vec<CaseSeen> {
        let mut ends = vec![false; class.cases.len()];
        for row in class.firsts().values().filter(|row| row.over) {
            if let Some(ended) = ends.get_mut(row.case as usize) {
                *ended = true;
            }
        }
        let drawn = |seen: &CaseSeen| seen.name.parse::<Address>().is_ok();
        let all = class.cases.iter().zip(ends).filter(|(seen, ended)| *ended && drawn(seen));
        all.map(|(seen, _)| seen.clone()).collect()
    }

    /// Of the case of this name.
    #[must_use]
    pub fn of(class: &Class, case: &str) -> Self {
        let (mut implants, mut membranes) = (Vec::new(), Vec::new());
        let rows = class.at(case);
        for (_, brought) in &rows {
            implants.extend(brought.plan.implant_in_place().cloned());
            membranes.extend(brought.plan.membrane().map(|one| one.outline.clone()));
        }
        order::by(&mut implants, &by_size);
        order::by(&mut membranes, &|one: &Outline, other| one.tenths().cmp(other.tenths()));
        let rows: Vec<&Row> = rows.into_iter().map(|(row, _)| row).collect();
        let (mut rules, mut kept) = (Vec::new(), 0);
        for (place, rule) in all().take(MOST_RULES).enumerate() {
            let one = discussed(&rows, place, rule);
            if one.counts[1] > 0 || !one.reasons.is_empty() {
                rules.push(one);
            } else if one.counts[0] > 0 {
                kept += 1;
            }
        }
        order::by(&mut rules, &|one, other| one.rule.step.cmp(&other.rule.step));
        let learners = u32::try_from(rows.len()).unwrap_or(u32::MAX);
        Self { learners, implants, membranes, rules, kept }
    }

    /// Whether nobody is told from the others without having agreed to it.
    #[must_use]
    pub const fn is_untold(&self) -> bool {
        self.learners >= UNTOLD_FROM
    }
}

fn discussed(rows: &[&Row], place: usize, rule: &'static Rule) -> Discussed {
    let (mut counts, mut grave, mut reasons) = ([0; 3], false, Vec::new());
    for row in rows {
        counts[match row.marks.answer(place) {
            Answer::Right => 0,
            Answer::Wrong => 1,
            Answer::NotReached => 2,
        }] += 1;
        grave |= row.marks.grave().any(|one| one == place);
        let of = row.objections.iter().filter(|(id, _)| id == rule.id);
        reasons.extend(of.map(|(_, reason)| reason.clone()));
    }
    order::by(&mut reasons, &|one: &String, other| one.cmp(other));
    Discussed { rule, counts, grave, reasons }
}

fn by_size(one: &Implant, other: &Implant) -> Ordering {
    let measures = |of: &Implant| {
        [of.diameter, of.length, of.depth, of.facial, of.distal].map(engine::units::Mm::get)
    };
    let mut pairs = measures(one).into_iter().zip(measures(other));
    pairs
        .find(|(one, other)| one != other)
        .map_or(Ordering::Equal, |(one, other)| one.total_cmp(&other))
}

#[cfg(test)]
mod tests {
    use super::super::trial::handed;
    use super::*;
    use engine::plan::choices::{Alternative, MembraneKind};
    use engine::plan::{GraftAndMembrane, Membrane};

    /// So many learners at one case: every third misses the rule at place 1 of the register, the first
    /// of them unsafely where `grave`, and each holds something against it.
    fn class(count: u8, grave: bool) -> Class {
        let mut class = Class::default();
        for one in 0..count {
            let zone = if grave && one == 0 { Zone::Unsafe } else { Zone::Compromising };
            let faults: &[(u8, Zone)] = if one % 3 == 0 { &[(1, zone)] } else { &[] };
            let mut handed = handed(&format!("a-{one}"), faults);
            let rule = all().nth(1).map_or("", |rule| rule.id).to_owned();
            if !faults.is_empty() {
                handed.objections = vec![(rule, format!("<b>reason {}", 9 - one))];
            }
            handed.brought.plan.graft = Some(GraftAndMembrane {
                graft: None,
                membrane: Some(Membrane {
                    kind: MembraneKind::DensePtfe,
                    outline: Outline::new(vec![[-20, 0], [20, 0], [20, 90 - i32::from(one)]])
                        .unwrap(),
                    trim: Alternative::ALL[0],
                    fold: Alternative::ALL[0],
                    fixation: Alternative::ALL[0],
                }),
                tissue: Alternative::ALL[0],
                order: None,
                seal: None,
            });
            class.take(&format!("k-{one}"), handed, (u64::from(one), 1));
        }
        class
    }

    #[test]
    fn eight_are_untold_and_seven_are_not() {
        let told = |count| Discussion::of(&class(count, false), "1.1.7.0");
        assert_eq!([7, 8].map(|count| told(count).is_untold()), [false, true]);
        assert_eq!(told(7).learners, 7);
        assert_eq!(Discussion::of(&class(8, false), "1.1.7.1").learners, 0);
    }

    #[test]
    fn the_order_says_nothing_of_who_came_when() {
        let found = Discussion::of(&class(8, false), "1.1.7.0");
        assert_eq!(found.membranes.len(), 8);
        assert!(found.membranes.windows(2).all(|two| two[0].tenths() <= two[1].tenths()));
        let missed = found.rules.iter().find(|one| one.counts[1] > 0).unwrap();
        assert_eq!(missed.counts, [5, 3, 0]);
        assert_eq!(missed.reasons, ["<b>reason 3", "<b>reason 6", "<b>reason 9"]);
        assert!(found.rules.windows(2).all(|two| two[0].rule.step <= two[1].rule.step));
        // Of four that were reached one was missed.
        assert_eq!([found.rules.len(), found.kept], [1, 3]);
    }

    #[test]
    fn an_unsafe_verdict_is_told_from_the_others() {
        let grave = |is| {
            let found = Discussion::of(&class(8, is), "1.1.7.0");
            found.rules.iter().filter(|one| one.grave).count()
        };
        assert_eq!([grave(false), grave(true)], [0, 1]);
    }

    #[test]
    fn a_case_is_there_once_somebody_saw_it_through_and_only_where_attempts_are_kept() {
        let mut begun = Class::default();
        let mut one = handed("a", &[]);
        one.over = false;
        begun.take("k", one, (1, 1));
        assert_eq!(Discussion::cases(&begun), []);
        assert_eq!(Discussion::of(&begun, "1.1.7.0").learners, 0);
        assert_eq!(Discussion::cases(&class(1, false)).len(), 1);
        let mut counted = Class::counted_only();
        counted.take("k", handed("a", &[]), (1, 1));
        assert_eq!(counted.attempts(), 1);
        assert_eq!(Discussion::of(&counted, "1.1.7.0").learners, 0);
    }
}
