//! What every rule must keep.

use super::*;
use crate::chart::{Fact, Source as FactSource};
use crate::plan::Decision;
use std::collections::BTreeSet;

/// Rules that can say *unsafe* though no figure of theirs was read, each with the reason.
const UNSAFE_WITHOUT_A_FIGURE: &[(&str, &str)] = &[
    ("chlorhexidine-despite-allergy", "an allergy on record is the patient's own fact"),
    ("collagen-despite-allergy", "an allergy on record is the patient's own fact"),
    ("graft-against-wishes", "a refusal is the patient's own, and no figure weighs it"),
    ("graft-origin-not-consented", "consent is a duty, and no figure weighs it"),
    ("consent-without-fallback", "consent is a duty, and no figure weighs it"),
];

fn faults(of: impl Fn(&'static Rule) -> Option<String>) -> Vec<String> {
    all().filter_map(|rule| of(rule).map(|fault| format!("{}: {fault}", rule.id))).collect()
}

fn assert_none(faults: &[String]) {
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

fn zones(rule: &Rule) -> Vec<Zone> {
    match &rule.scale {
        Scale::Bands(bands) => bands.zones().map(|(_, _, zone)| zone).collect(),
        Scale::Situations(situations) => situations.iter().map(|one| one.zone).collect(),
    }
}

#[test]
fn ids_are_unique_and_kebab_case() {
    let ids: BTreeSet<_> = all().map(|rule| rule.id).collect();
    assert_eq!(ids.len(), all().count());
    assert_none(&faults(|rule| {
        let plain = rule.id.split('-').all(|word| {
            !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        });
        (!plain).then(|| "not kebab-case".to_owned())
    }));
}

#[test]
fn ids_name_a_fault_and_give_no_order() {
    assert_none(&faults(|rule| {
        ["avoid-", "do-not-", "prefer-", "use-"]
            .iter()
            .find(|start| rule.id.starts_with(**start))
            .map(|start| format!("begins with {start}"))
    }));
}

#[test]
fn families_list_their_rules_in_the_order_of_care() {
    for (family, rules) in FAMILIES {
        assert!(!rules.is_empty(), "{family:?}");
        for rule in *rules {
            assert_eq!(rule.family, *family, "{}", rule.id);
        }
        for pair in rules.windows(2) {
            assert!(pair[0].step <= pair[1].step, "{} after {}", pair[1].id, pair[0].id);
        }
    }
}

#[test]
fn every_rule_is_found_by_its_id() {
    for rule in all() {
        assert!(find(rule.id).is_some_and(|found| core::ptr::eq(found, rule)), "{}", rule.id);
    }
}

#[test]
fn every_rule_cites_evidence_and_says_what_it_says() {
    assert_none(&faults(|rule| {
        let thin = rule.evidence.iter().any(|e| e.cite.trim().len() < 4 || e.says.trim().len() < 4);
        match () {
            () if rule.evidence.is_empty() => Some("no evidence".to_owned()),
            () if thin => Some("evidence without citation or statement".to_owned()),
            () => None,
        }
    }));
}

#[test]
fn sentences_are_sentences() {
    assert_none(&faults(|rule| {
        [rule.statement, rule.why, rule.mend]
            .into_iter()
            .find(|text| !text.ends_with('.') || text.trim() != *text || text.contains("  "))
            .map(|text| format!("\"{text}\""))
    }));
}

#[test]
fn cuts_rise_and_what_is_published_holds_each_cut() {
    assert_none(&faults(|rule| {
        let Scale::Bands(bands) = &rule.scale else { return None };
        // Two cuts at one value make a zone of that value alone: from it, and past it again.
        let rises = |pair: &[Cut]| {
            let alone = pair[0].belongs == Belongs::Above && pair[1].belongs == Belongs::Below;
            pair[0].at < pair[1].at || (pair[0].at == pair[1].at && alone)
        };
        if !bands.cuts.windows(2).all(rises) {
            return Some("cuts do not rise".to_owned());
        }
        let outside = |cut: &&Cut| cut.at < cut.published[0] || cut.published[1] < cut.at;
        bands.cuts.iter().find(outside).map(|cut| format!("{} outside what is published", cut.at))
    }));
}

#[test]
fn every_zone_of_a_numeric_rule_is_reached_and_neighbouring_zones_differ() {
    assert_none(&faults(|rule| {
        let Scale::Bands(bands) = &rule.scale else { return None };
        if bands.cuts.is_empty() {
            return Some("one zone only".to_owned());
        }
        bands.zones().find_map(|(from, to, zone)| {
            let middle = match (from, to) {
                (Some(from), Some(to)) => f64::midpoint(from, to),
                (Some(from), None) => from + 1.0,
                (None, Some(to)) => to - 1.0,
                (None, None) => 0.0,
            };
            (bands.zone_of(middle) != zone).then(|| format!("{zone:?} is not reached at {middle}"))
        })
    }));
    assert_none(&faults(|rule| {
        let Scale::Bands(_) = &rule.scale else { return None };
        zones(rule)
            .windows(2)
            .any(|pair| pair[0] == pair[1])
            .then(|| "a cut without effect".to_owned())
    }));
}

#[test]
fn situations_have_keys_of_their_own_and_words() {
    assert_none(&faults(|rule| {
        let Scale::Situations(situations) = &rule.scale else { return None };
        let keys: BTreeSet<_> = situations.iter().map(|one| one.key).collect();
        let wordless = situations
            .iter()
            .any(|one| one.words.is_empty() || one.words.ends_with('.') || one.key.contains(' '));
        match () {
            () if situations.is_empty() => Some("no situation".to_owned()),
            () if keys.len() != situations.len() => Some("a key twice".to_owned()),
            () if wordless => Some("a situation without words, or with a full stop".to_owned()),
            () => None,
        }
    }));
}

#[test]
fn a_reading_is_of_the_kind_of_its_scale() {
    // On the ready case and on each course; rules of rarer cases are read in their own files.
    let courses = ["place-today", "graft-and-return", "return-early", "let-heal", "postpone"];
    let mut read = BTreeSet::new();
    for course in courses {
        let mut trial = trial::Trial::plain();
        trial.course(course);
        for rule in all() {
            if let Some(reading) = trial.reading(rule) {
                assert!(rule.zone_of(reading).is_some(), "{}: {reading:?}", rule.id);
                read.insert(rule.id);
            }
        }
    }
    assert!(read.len() > 40, "only {} rules were read", read.len());
}

#[test]
fn unsafe_never_rests_on_memory_alone() {
    assert_none(&faults(|rule| {
        let excepted = UNSAFE_WITHOUT_A_FIGURE.iter().any(|(id, _)| *id == rule.id);
        let read = rule.evidence.iter().any(|evidence| evidence.status.figure_was_read());
        match (rule.cost() == Zone::Unsafe, read, excepted) {
            (true, false, false) => Some("unsafe, and no figure was read".to_owned()),
            (false, _, true) | (_, true, true) => Some("needs no exception".to_owned()),
            _ => None,
        }
    }));
    for (id, reason) in UNSAFE_WITHOUT_A_FIGURE {
        assert!(find(id).is_some() && !reason.is_empty(), "{id}");
    }
}

#[test]
fn what_can_be_unsafe_rests_on_facts_that_could_be_known_beforehand() {
    assert_none(&faults(|rule| {
        if rule.cost() != Zone::Unsafe {
            return None;
        }
        let beforehand = |source: &FactSource| {
            matches!(
                source,
                FactSource::Chart | FactSource::Request(_) | FactSource::Examination(_)
            )
        };
        let hidden = |fact: &&Fact| !fact.shown_by().iter().any(beforehand);
        rule.rests_on.iter().find(hidden).map(|fact| format!("rests on {fact:?}"))
    }));
}

/// What changes the course, or when the patient is back. Both are what they are after the revisions and
/// waits so far, so a rule on them may stand at an earlier step than one that is still to come.
const REVISIONS: &[Decision] = &[
    Decision::AfterExtraction,
    Decision::AfterFlap,
    Decision::SeatingAct,
    Decision::SecondAct,
    Decision::WaitFor,
    Decision::AgainAct,
    Decision::WaitForLast,
    Decision::LastAct,
];

#[test]
fn a_rule_reads_nothing_but_the_course_that_is_decided_after_its_step() {
    assert_none(&faults(|rule| {
        rule.reads
            .iter()
            .find(|decision| decision.step() > rule.step && !REVISIONS.contains(decision))
            .map(|decision| format!("reads {} at {:?}", decision.key(), rule.step))
    }));
}

#[test]
fn every_rule_reads_a_decision_and_none_twice() {
    assert_none(&faults(|rule| {
        let decisions: BTreeSet<_> = rule.reads.iter().collect();
        match decisions.len() {
            0 => Some("reads nothing".to_owned()),
            count if count < rule.reads.len() => Some("reads a decision twice".to_owned()),
            _ => None,
        }
    }));
}

#[test]
fn contested_rules_show_both_positions() {
    assert_none(&faults(|rule| {
        let debated = zones(rule).contains(&Zone::Debated);
        match (&rule.positions, rule.agreement) {
            (None, Agreement::Contested) => Some("contested without positions".to_owned()),
            (None, _) if debated => Some("debated without positions".to_owned()),
            (Some(positions), _) if positions.one == positions.other => {
                Some("both positions are one".to_owned())
            }
            _ => None,
        }
    }));
}
