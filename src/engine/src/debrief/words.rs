//! The words of a verdict: a function of the verdict and of the tooth that names its sides, so that
//! page and terminal say the same.

use super::local::{self, decided};
use super::verdict::Verdict;
use crate::anatomy::Tooth;
use crate::casing::capital;
use crate::rules::{Agreement, Bands, Evidence, Reading, Rule, Scale, Zone};
use crate::units::{comparable, decimal};
use std::borrow::Cow;

/// What is said about one verdict, part by part.
#[derive(Debug, Clone, PartialEq)]
pub struct Explanation {
    /// The verdict's word.
    pub word: &'static str,
    /// What was measured or found.
    pub measured: String,
    /// What was asked.
    pub asked: String,
    /// By how much it misses or clears; empty where nothing can be counted.
    pub distance: String,
    /// Why it matters.
    pub why: Cow<'static, str>,
    /// The smallest change that would mend it; empty when nothing needs mending.
    pub mend: Cow<'static, str>,
    /// Whether it could have been known; empty when it rests on choices alone.
    pub known: String,
    /// Who says so, one a line.
    pub sources: Vec<String>,
    /// Where sources differ; empty where they agree.
    pub differ: String,
    /// What the set that gives the case has decided otherwise; empty where it has decided nothing.
    pub local: String,
}

/// Words a verdict on a plan for this tooth: rules speak of both jaws, a verdict of one.
#[must_use]
pub fn explain(verdict: &Verdict, tooth: Tooth) -> Explanation {
    let rule = verdict.rule;
    let named = |words: &str| tooth.named(words).into_owned();
    let bands = verdict.bands();
    let (measured, distance) = match (&rule.scale, &bands, verdict.reading) {
        (_, Some(bands), Reading::Number(value)) => {
            let number = with_unit(&number_that_agrees(bands, value), bands.unit);
            let measured = format!("{}: {number}.", capital(&tooth.named(bands.quantity)));
            (measured, distance(bands, value, verdict.zone))
        }
        (Scale::Situations(situations), _, Reading::Situation(key)) => {
            let words = situations.iter().find(|one| one.key == key).map_or("", |one| one.words);
            (format!("Here {}.", tooth.named(words)), String::new())
        }
        _ => (String::new(), String::new()),
    };
    Explanation {
        word: verdict.zone.word(),
        measured,
        asked: named(&asked(bands.as_ref(), rule.statement)),
        distance,
        why: tooth.named(rule.why),
        mend: tooth.named(if verdict.zone.is_fault() { rule.mend } else { "" }),
        known: verdict.knowledge.map(|known| capital(&known.words()) + ".").unwrap_or_default(),
        sources: sources(rule).iter().map(|source| named(source)).collect(),
        differ: named(&differ(rule)),
        local: named(&decided(verdict, local::position(verdict))),
    }
}

/// Who says what of a rule, one a line; empty texts without feature `prose`.
#[must_use]
pub fn sources(rule: &Rule) -> Vec<String> {
    let line = |one: &Evidence| format!("{} — {}", one.says, one.attribution());
    rule.evidence.iter().map(line).collect()
}

/// Where the sources of a rule differ; empty where they agree.
#[must_use]
pub fn differ(rule: &Rule) -> String {
    match (rule.positions, rule.agreement) {
        (Some(both), _) => format!("{} {}", both.one, both.other),
        (None, Agreement::NumberVaries) => "The direction is agreed; the number varies.".to_owned(),
        (None, _) => String::new(),
    }
}

/// What a rule asks: its statement, then its stretches that are no fault where it has bands.
#[must_use]
pub fn asked(bands: Option<&Bands<'_>>, statement: &str) -> String {
    match bands {
        None => statement.to_owned(),
        Some(bands) => {
            let zones: Vec<String> = [Zone::Ideal, Zone::Acceptable, Zone::Debated]
                .into_iter()
                .filter_map(|zone| stretches(bands, zone))
                .collect();
            format!("{statement} {}.", capital(&zones.join("; ")))
        }
    }
}

/// The stretches of a zone in words: "ideal 3 to 4 mm", "acceptable from 2 mm".
fn stretches(bands: &Bands<'_>, wanted: Zone) -> Option<String> {
    let stretches: Vec<String> = bands
        .zones()
        .filter(|(_, _, zone)| *zone == wanted)
        .map(|(from, to, _)| match (from, to) {
            // Where one of them is negative, each end needs a unit of its own.
            (Some(from), Some(to)) if from < 0.0 => format!(
                "{} to {}",
                with_unit(&plain(from), bands.unit),
                with_unit(&plain(to), bands.unit)
            ),
            (Some(from), Some(to)) => {
                format!("{} to {}", plain(from), with_unit(&plain(to), bands.unit))
            }
            (Some(from), None) => format!("from {}", with_unit(&plain(from), bands.unit)),
            (None, Some(to)) => format!("up to {}", with_unit(&plain(to), bands.unit)),
            (None, None) => "always".to_owned(),
        })
        .collect();
    (!stretches.is_empty()).then(|| format!("{} {}", wanted.word(), stretches.join(" and ")))
}

/// By how much a value misses the nearest stretch that is no fault, or clears the nearest fault.
fn distance(bands: &Bands<'_>, value: f64, zone: Zone) -> String {
    let value = comparable(value);
    let nearest = bands
        .zones()
        .filter(|(_, _, other)| other.is_fault() != zone.is_fault())
        .filter_map(|(from, to, _)| match (from, to) {
            (Some(from), _) if value <= from => Some(from - value),
            (_, Some(to)) if to <= value => Some(value - to),
            _ => None,
        })
        .min_by(f64::total_cmp);
    let Some(gap) = nearest else {
        return String::new();
    };
    let length = with_unit(&at_least_something(gap), bands.unit);
    if zone.is_fault() {
        format!("It misses by {length}.")
    } else if comparable(gap) == 0.0 {
        "It is just met.".to_owned()
    } else {
        format!("It clears the limit by {length}.")
    }
}

/// A value with as few places as still put it in its own zone: 1.96 against a limit of 2 never
/// prints as 2.0.
#[must_use]
pub fn number_that_agrees(bands: &Bands<'_>, value: f64) -> String {
    let value = comparable(value);
    let zone = bands.zone_of(value);
    for places in 1..=3 {
        let text = format!("{value:.places$}");
        let shown = decimal(&text).unwrap_or(value);
        let on_a_cut = bands.cuts.iter().any(|cut| cut.at == shown && cut.at != value);
        if bands.zone_of(shown) == zone && !on_a_cut {
            return trim(&text);
        }
    }
    trim(&format!("{value:.3}"))
}

fn at_least_something(gap: f64) -> String {
    for places in 1..=3 {
        let text = format!("{gap:.places$}");
        if text.bytes().any(|b| (b'1'..=b'9').contains(&b)) {
            return trim(&text);
        }
    }
    "0.001".to_owned()
}

/// *1 case*, *2 cases*.
#[must_use]
pub fn counted(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

/// A limit as its source prints it: no places that say nothing.
#[must_use]
pub fn plain(limit: f64) -> String {
    trim(&format!("{limit:.3}"))
}

fn trim(text: &str) -> String {
    let shorter =
        if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { text };
    if shorter == "-0" { "0".to_owned() } else { shorter.to_owned() }
}

/// A number with its unit, never with a bare sign: readings are defined so that what is negative has
/// passed where they begin (an overlap, a perforation, a platform above the crest).
#[must_use]
pub fn with_unit(number: &str, unit: &str) -> String {
    let (size, side) = match number.strip_prefix('-') {
        Some(size) => (size, " on the wrong side"),
        None => (number, ""),
    };
    let unit = match unit {
        // Units that are counted, not abbreviated: one day, two days.
        "days" | "weeks" | "months" | "degrees" | "reviews" if size == "1" => {
            unit.trim_end_matches('s')
        }
        _ => unit,
    };
    if unit.is_empty() { format!("{size}{side}") } else { format!("{size} {unit}{side}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::Cut;

    const MARGIN: Bands<'_> = Bands {
        quantity: "membrane margin",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(2.0, Zone::Acceptable),
            Cut::from(3.0, Zone::Ideal),
            Cut::past(4.0, Zone::Acceptable),
        ],
    };

    #[test]
    fn a_printed_number_never_contradicts_its_verdict() {
        for step in 0..6000 {
            let value = f64::from(step) / 1000.0;
            let shown: f64 = number_that_agrees(&MARGIN, value).parse().unwrap();
            assert_eq!(MARGIN.zone_of(shown), MARGIN.zone_of(value), "{value} is shown as {shown}");
        }
        assert_eq!(number_that_agrees(&MARGIN, 1.96), "1.96");
        assert_eq!(number_that_agrees(&MARGIN, 1.9996), "2");
        assert_eq!(number_that_agrees(&MARGIN, 1.42), "1.4");
    }

    #[test]
    fn what_is_asked_names_every_stretch_that_is_no_fault() {
        let asked = asked(Some(&MARGIN), "Cover intact bone all round.");
        assert_eq!(
            asked,
            "Cover intact bone all round. Ideal 3 to 4 mm; acceptable 2 to 3 mm and from 4 mm."
        );
    }

    #[test]
    fn no_number_is_printed_with_a_bare_sign() {
        assert_eq!(with_unit("-1.2", "mm"), "1.2 mm on the wrong side");
        assert_eq!(with_unit("1.2", "mm"), "1.2 mm");
        const FLOOR: Bands<'_> = Bands {
            lowest: Zone::Compromising,
            cuts: &[Cut::from(-2.0, Zone::Debated), Cut::from(1.0, Zone::Ideal)],
            ..MARGIN
        };
        let said = stretches(&FLOOR, Zone::Debated);
        assert_eq!(said.as_deref(), Some("debated 2 mm on the wrong side to 1 mm"));
    }

    #[test]
    fn the_distance_says_by_how_much_it_misses_or_clears() {
        assert_eq!(distance(&MARGIN, 1.4, Zone::Compromising), "It misses by 0.6 mm.");
        assert_eq!(distance(&MARGIN, 2.0, Zone::Acceptable), "It is just met.");
        assert_eq!(distance(&MARGIN, 3.5, Zone::Ideal), "It clears the limit by 1.5 mm.");
        assert_eq!(distance(&MARGIN, 1.998, Zone::Compromising), "It misses by 0.002 mm.");
    }
}
