//! A change of plan in words.

use super::cost::Change;
use super::nearest::Nearest;
use crate::anatomy::Tooth;
use crate::casing::small;
use crate::debrief::with_unit;
use crate::plan::{Decision, Kind, Value};

impl Change {
    /// As one line, to the learner whose plan it changes: *Diameter: 3.5 mm in place of 4.5 mm*.
    #[must_use]
    pub fn words(&self, tooth: Tooth) -> String {
        let label = tooth.named(self.decision.entry().label);
        let lists = match (&self.from, &self.to) {
            (Some(Value::Many(from)), Value::Many(to)) => Some((*from, *to)),
            _ => None,
        };
        if let Some((from, to)) = lists {
            return format!("{label}: {}", turned(self.decision, from, to));
        }
        let to = answer(self.decision, &self.to, tooth);
        match &self.from {
            Some(Value::Outline(_)) => {
                format!("{label}: {to}, its edge moved by up to {} mm", self.steps)
            }
            Some(from) => {
                format!("{label}: {to}, in place of {}", answer(self.decision, from, tooth))
            }
            None => format!("{label}: {to}"),
        }
    }
}

impl Nearest {
    /// What it is, in a sentence or two.
    #[must_use]
    pub fn words(&self) -> String {
        let count = match self.changes.len() {
            0 => return "Your plan is sound as it is.".to_owned(),
            1 => "One change makes your plan sound".to_owned(),
            count => format!("{} changes make your plan sound", counted(count)),
        };
        let nearer = if self.proven { "; fewer do not, as far as was searched." } else { "." };
        if self.forced_by.is_empty() {
            return format!("{count}{nearer}");
        }
        format!(
            "No plan was found that is sound within the course you ended with. The nearest is to {}: {}{nearer}",
            self.course.label(),
            small(&count)
        )
    }
}

/// A small count as a word that begins a sentence.
fn counted(count: usize) -> String {
    const WORDS: [&str; 8] = ["Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine"];
    let word = count.checked_sub(2).and_then(|place| WORDS.get(place));
    word.map_or_else(|| count.to_string(), |word| (*word).to_owned())
}

/// Which boxes of a list are turned on and off.
fn turned(decision: Decision, from: u32, to: u32) -> String {
    let (added, left) = (named(decision, to & !from), named(decision, from & !to));
    match (added.is_empty(), left.is_empty()) {
        (false, true) => format!("also {added}"),
        (true, false) => format!("without {left}"),
        _ => format!("also {added}; without {left}"),
    }
}

fn named(decision: Decision, bits: u32) -> String {
    let Kind::Many(options) = decision.entry().kind else { return String::new() };
    let chosen = options.iter().enumerate().filter(|(place, _)| bits & (1 << place) != 0);
    chosen.map(|(_, option)| option.label).collect::<Vec<_>>().join(", ")
}

/// An answer in words.
#[must_use]
pub fn answer(decision: Decision, value: &Value, tooth: Tooth) -> String {
    match (decision.entry().kind, value) {
        (Kind::One(options), Value::One(place)) => {
            let label = options.get(usize::from(*place)).map_or("", |option| option.label);
            tooth.named(label).into_owned()
        }
        (Kind::Many(_), Value::Many(0)) => "none of these".to_owned(),
        (Kind::Many(_), Value::Many(bits)) => named(decision, *bits),
        (Kind::Number(kind), Value::Number(count)) => {
            let [less, more] = kind.ways_at(tooth);
            let way = if *count < 0 { less } else { more };
            let size = if way.is_empty() { *count } else { count.abs() };
            let way = if *count == 0 { String::new() } else { way };
            format!("{} {way}", with_unit(&kind.words(size), kind.unit)).trim_end().to_owned()
        }
        (_, Value::Outline(outline)) => {
            let span = |axis: usize| {
                let all = outline.tenths().iter().map(|at| at[axis]);
                let (least, most) = all
                    .fold((i32::MAX, i32::MIN), |(least, most), at| (least.min(at), most.max(at)));
                f64::from(most - least) / 10.0
            };
            format!("{:.1} by {:.1} mm", span(0), span(1))
        }
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn change(decision: Decision, from: Option<Value>, to: Value) -> String {
        let tooth = Tooth::new(11).unwrap();
        Change { decision, from, to, steps: 2 }.words(tooth)
    }

    #[test]
    fn a_change_is_told_with_what_stood_there_before() {
        let told = change(Decision::Diameter, Some(Value::Number(45)), Value::Number(35));
        assert_eq!(told, "Diameter: 3.5 mm, in place of 4.5 mm");
        let told = change(Decision::OffsetFacial, Some(Value::Number(4)), Value::Number(-11));
        assert_eq!(
            told,
            "Facial or palatal: 1.1 mm to the palate, in place of 0.4 mm to the facial side"
        );
    }

    #[test]
    fn of_a_list_only_what_is_turned_is_told() {
        let told =
            change(Decision::Examinations, Some(Value::Many(0b1)), Value::Many(0b1_0000_0001));
        assert_eq!(told, "Examinations: also cone-beam sections");
    }
}
