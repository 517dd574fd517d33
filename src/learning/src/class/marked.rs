//! Marks of a class at one case, worked out of the choices: what examiners' ratings are set against.

use super::gathered::Class;
use super::order;
use engine::cases;
use engine::chart::Address;
use engine::debrief::debrief;
use engine::plan::Plan;

impl Class {
    /// The mark of everybody who saw the case of this name through, 0 to 100, with the learner's code, in
    /// the order of codes. The case is drawn once, and so is the sound plan whose rules a full mark is of;
    /// nothing where either is missing, and nothing of an attempt that leaves nothing to mark.
    #[must_use]
    pub fn marks_at(&self, case: &str) -> Vec<(String, f64)> {
        let drawn = case.parse::<Address>().ok().and_then(|address| cases::at(address).ok());
        let sound = drawn.as_ref().and_then(|case| {
            let proof = cases::proof(case)?;
            Plan::from_draft(&proof.draft, case).ok()
        });
        let (Some(drawn), Some(sound)) = (drawn, sound) else { return Vec::new() };
        let mark = |brought: &super::Brought| {
            let case = drawn.clone().under(brought.local.clone());
            debrief(&case, &brought.plan, Some(&sound)).mark.percent()
        };
        let mut marks: Vec<(String, f64)> = self
            .at(case)
            .into_iter()
            .filter_map(|(row, brought)| {
                let code = self.learners.get(row.learner as usize)?;
                Some((code.clone(), mark(brought)?))
            })
            .collect();
        order::by(&mut marks, &|one, other| one.0.cmp(&other.0));
        marks
    }
}

#[cfg(test)]
mod tests {
    use super::super::trial::handed;
    use super::*;
    use engine::plan::{Decision, Value};

    /// A class of two at a case: one has its sound plan, the other sends the patient home without a word.
    fn class(name: &str) -> Class {
        let case = cases::at(name.parse().unwrap()).unwrap();
        let sound = cases::proof(&case).unwrap().draft;
        let mut silent = sound.clone();
        silent.choose(Decision::Instructions, Value::Many(0)).unwrap();
        let mut class = Class::default();
        for (place, (code, draft)) in (0_u64..).zip([("b", &sound), ("a", &silent)]) {
            let mut one = handed(code, &[]);
            one.case = name.to_owned();
            one.brought.plan = Plan::from_draft(draft, &case).unwrap();
            class.take(code, one, (place, 1));
        }
        class
    }

    #[test]
    fn a_sound_plan_is_marked_in_full_and_one_that_tells_the_patient_nothing_is_not() {
        let marks = class("1.1.7.0").marks_at("1.1.7.0");
        assert_eq!(marks.iter().map(|one| one.0.as_str()).collect::<Vec<_>>(), ["a", "b"]);
        assert!(marks[0].1 < marks[1].1, "{marks:?}");
        assert!(marks[1].1 <= 100.0 && marks[1].1 > 95.0, "{marks:?}");
    }

    #[test]
    fn what_cannot_be_drawn_and_what_nobody_sat_has_no_marks() {
        let class = class("1.1.7.0");
        assert_eq!(class.marks_at("written out 0011"), []);
        assert_eq!(class.marks_at("1.1.7.1"), []);
    }
}
