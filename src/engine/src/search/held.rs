//! Where a plan breaks, in words.

use super::breaks::{End, Holds};
use crate::anatomy::Tooth;
use crate::chart::Change;
use crate::rules::Zone;

impl Holds {
    /// A value of the aspect in its unit.
    #[must_use]
    pub fn value(&self, to: i32) -> String {
        Change { aspect: self.aspect, to }.words()
    }

    /// Whether nothing about this changes the verdicts, as far as was tried.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.ends.iter().all(|end| matches!(end, End::Open { .. }))
    }

    /// How near the nearer end is, in thousandths of what is met: least where least has to change before
    /// the plan is judged otherwise. More than any other where nothing changes.
    #[must_use]
    pub fn margin(&self) -> i32 {
        let [least, most] = self.aspect.scaled().range;
        let turns = self.ends.iter().filter_map(|end| match end {
            End::Turns { first, .. } => {
                Some((first - self.now).abs() * 1000 / (most - least).max(1))
            }
            End::Open { .. } => None,
        });
        turns.min().unwrap_or(i32::MAX)
    }

    /// What it is, and from where to where the verdicts stay: *Facial gum: 1.1 mm. The verdicts stay
    /// from 1.1 mm to 2.0 mm.*
    #[must_use]
    pub fn stays(&self, tooth: Tooth) -> String {
        let name = tooth.named(self.aspect.scaled().words);
        format!("{name}: {}. {}", self.value(self.now), self.span())
    }

    /// From where to where the verdicts stay: *The verdicts stay from 1.1 mm to 2.0 mm.*
    #[must_use]
    pub fn span(&self) -> String {
        let [low, high] = &self.ends;
        let turns = |end: &End| matches!(end, End::Turns { .. });
        let span = match (turns(low), turns(high)) {
            (false, false) => "whatever it is".to_owned(),
            (true, true) if low.last() == high.last() => "at this value alone".to_owned(),
            (false, true) if high.last() == self.now && low.last() == self.now => {
                "at this value alone".to_owned()
            }
            (true, true) => {
                format!("from {} to {}", self.value(low.last()), self.value(high.last()))
            }
            (true, false) => format!("from {} up", self.value(low.last())),
            (false, true) => format!("up to {}", self.value(high.last())),
        };
        format!("The verdicts stay {span}.")
    }

    /// What happens past one end, about a rule with this statement; empty where nothing does.
    #[must_use]
    pub fn past(&self, end: &End, statement: &str, tooth: Tooth) -> String {
        let End::Turns { first, words, returns, .. } = end else { return String::new() };
        let was_fault = words[0].is_some_and(Zone::is_fault);
        let rule = tooth.named(statement.trim_end_matches('.'));
        let turn = match words[1] {
            Some(zone) => format!("the verdict on \u{201c}{rule}\u{201d} becomes {}", zone.word()),
            None if was_fault => format!("\u{201c}{rule}\u{201d} is no longer broken"),
            None => format!("\u{201c}{rule}\u{201d} is no longer debated"),
        };
        let back =
            if *returns { " Farther out the verdicts are as they were once more." } else { "" };
        format!("At {} {turn}.{back}", self.value(*first))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Aspect;
    use crate::rules::find;

    fn holds(low: End, high: End) -> Holds {
        Holds { aspect: Aspect::Gum, now: 11, ends: [low, high] }
    }

    fn turns(last: i32, words: [Option<Zone>; 2], returns: bool) -> End {
        let rule = find("too-near-a-root").unwrap();
        End::Turns { last, first: last + 1, rule, words, returns }
    }

    #[test]
    fn the_stretch_is_named_by_its_ends() {
        let tooth = Tooth::new(11).unwrap();
        let open = |last| End::Open { last };
        let fault = [None, Some(Zone::Compromising)];
        let said = |low, high| holds(low, high).stays(tooth);
        assert!(said(open(3), open(30)).ends_with("The verdicts stay whatever it is."));
        assert!(said(open(3), turns(19, fault, false)).ends_with("stay up to 1.9\u{a0}mm."));
        assert!(said(turns(11, fault, false), open(30)).ends_with("stay from 1.1\u{a0}mm up."));
        assert!(
            said(turns(11, fault, false), turns(11, fault, false))
                .ends_with("at this value alone.")
        );
        assert!(said(open(3), open(30)).starts_with("Facial gum: 1.1\u{a0}mm."));
    }

    #[test]
    fn what_happens_past_an_end_is_told_of_its_rule() {
        let tooth = Tooth::new(11).unwrap();
        let past = |end: &End| holds(end.clone(), end.clone()).past(end, "Keep clear.", tooth);
        let broken = past(&turns(19, [None, Some(Zone::Unsafe)], true));
        assert_eq!(
            broken,
            "At 2.0\u{a0}mm the verdict on \u{201c}Keep clear\u{201d} becomes unsafe. Farther out the verdicts are as they were once more."
        );
        assert!(
            past(&turns(19, [Some(Zone::Unsafe), None], false)).contains("is no longer broken.")
        );
        assert_eq!(past(&End::Open { last: 3 }), "");
    }
}
