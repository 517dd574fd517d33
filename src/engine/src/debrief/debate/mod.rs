//! Where sources differ on what a plan does: what each side would do here. Nothing of it is marked.

mod otherwise;

use super::verdict::Verdict;
use super::words::{number_that_agrees, with_unit};
use crate::rules::{Bands, Reading, Zone};
use otherwise::otherwise;

/// A verdict on which sources differ, with what either side would make of it.
#[derive(Debug, Clone)]
pub struct Debate<'a> {
    /// The verdict.
    pub verdict: &'a Verdict,
    /// What the side that allows it says of it here.
    pub leaves: String,
    /// What the side that does not would have changed.
    pub asks: String,
}

/// Every debated verdict, in the order of care.
#[must_use]
pub fn debates(verdicts: &[Verdict]) -> Vec<Debate<'_>> {
    let debated = verdicts.iter().filter(|verdict| verdict.zone == Zone::Debated);
    debated
        .map(|verdict| match (verdict.bands(), verdict.reading) {
            (Some(bands), Reading::Number(value)) => {
                let number = with_unit(&number_that_agrees(&bands, value), bands.unit);
                let (leaves, asks) = match asks(&bands, value) {
                    Some(asks) => (format!("One side leaves it at {number}."), asks),
                    None => (
                        format!("You have {number}."),
                        "No value near this satisfies both sides.".to_owned(),
                    ),
                };
                Debate { verdict, leaves, asks }
            }
            (_, Reading::Situation(key)) => {
                let leaves = "One side leaves it as you have it.".to_owned();
                let does = otherwise(verdict.rule.id, key);
                let asks = does.map_or_else(String::new, |does| format!("The other {does}."));
                Debate { verdict, leaves, asks }
            }
            _ => Debate { verdict, leaves: String::new(), asks: String::new() },
        })
        .collect()
}

/// Where the nearest stretch begins on which all agree; none where there is none.
fn asks(bands: &Bands<'_>, value: f64) -> Option<String> {
    let agreed = bands.zones().filter(|(_, _, zone)| *zone < Zone::Debated);
    let ends = agreed.filter_map(|(from, to, _)| match (from, to) {
        (Some(from), _) if value <= from => Some((from - value, from, "or more")),
        (_, Some(to)) if to <= value => Some((value - to, to, "or less")),
        _ => None,
    });
    let (gap, end, way) = ends.min_by(|a, b| a.0.total_cmp(&b.0))?;
    let with = |number: f64| with_unit(&number_that_agrees(bands, number), bands.unit);
    Some(if gap > 0.0 {
        format!("The other asks for {} {way}.", with(end))
    } else {
        format!("The other asks for what lies beyond {}.", with(end))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::{self, Cut, Scale};

    const DEPTH: Bands<'_> = Bands {
        quantity: "depth",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(1.5, Zone::Debated),
            Cut::from(2.0, Zone::Ideal),
            Cut::past(4.0, Zone::Debated),
            Cut::past(5.0, Zone::Suboptimal),
        ],
    };

    #[test]
    fn the_stricter_side_names_the_end_on_which_all_agree() {
        let said = |value| asks(&DEPTH, value).unwrap();
        assert_eq!(said(1.6), "The other asks for 2 mm or more.");
        assert_eq!(said(4.4), "The other asks for 4 mm or less.");
        const NEVER: Bands<'_> = Bands { cuts: &[Cut::from(1.5, Zone::Debated)], ..DEPTH };
        assert_eq!(asks(&NEVER, 2.0), None);
    }

    #[test]
    fn only_debated_verdicts_are_debates_and_every_one_says_what_would_be_done() {
        let mut count = 0;
        for rule in rules::all() {
            let readings: Vec<Reading> = match &rule.scale {
                Scale::Situations(all) => {
                    all.iter().map(|one| Reading::Situation(one.key)).collect()
                }
                Scale::Bands(bands) => {
                    bands.cuts.iter().map(|cut| Reading::Number(cut.at + 0.01)).collect()
                }
            };
            for reading in readings {
                let zone = rule.zone_of(reading).unwrap();
                let verdicts =
                    [Verdict { rule, reading, zone, knowledge: None, missed: None, here: None }];
                let found = debates(&verdicts);
                assert_eq!(found.len(), usize::from(zone == Zone::Debated), "{}", rule.id);
                for debate in found {
                    count += 1;
                    let both = debate.leaves.starts_with("One side leaves it")
                        && debate.asks.starts_with("The other ");
                    let neither = debate.leaves.starts_with("You have ")
                        && debate.asks.ends_with("satisfies both sides.");
                    assert!(both || neither, "{} {} {}", rule.id, debate.leaves, debate.asks);
                }
            }
        }
        assert!(count > 60, "{count}");
    }
}
