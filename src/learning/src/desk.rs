//! What an instructor sees of a set that is being written: what each case is about, how hard it is, which
//! rules it tests, and how the set is spread.

pub mod key;

use engine::cases::{self, Archetype};
use engine::chart::{Address, Case};
use engine::measure::Measurements;
use engine::plan::Plan;
use engine::rules::{Rule, Skill, all};
use engine::units::Mm;

/// A case as its instructor sees it.
#[derive(Debug, Clone, PartialEq)]
pub struct Tested {
    /// Where it comes from.
    pub address: Address,
    /// Its title, which learners see.
    pub title: String,
    /// What decides something in it; nothing where it was not drawn for that.
    pub about: Option<Archetype>,
    /// Whether it is in the upper jaw.
    pub upper: bool,
    /// Whether its margin shows at full smile.
    pub aesthetic: bool,
    /// Whether a wall has a defect.
    pub defect: bool,
    /// The facial plate at the crest; nothing where it is lost there.
    pub plate: Option<Mm>,
    /// The facial gap beside the implant of its sound plan; nothing where that places none today.
    pub gap: Option<Mm>,
    /// How hard it is, 0 to 1; nothing where no sound plan is known.
    pub hard: Option<f64>,
    /// Rules that one answer off its sound plan breaks, in the order of the register.
    pub rules: Vec<&'static Rule>,
}

impl Tested {
    /// The case of an address.
    ///
    /// # Errors
    /// Why it gives none.
    pub fn at(address: Address) -> Result<Self, cases::NoCase> {
        cases::at(address).map(|case| Self::of(address, &case))
    }

    /// What decides it, in words.
    #[must_use]
    pub fn about_words(&self) -> &'static str {
        self.about.map_or("drawn as teeth occur", Archetype::words)
    }

    /// How hard it is, in words.
    #[must_use]
    pub fn hard_words(&self) -> String {
        self.hard.map_or_else(|| "no sound plan".to_owned(), |hard| format!("{hard:.2}"))
    }

    /// Of a case with its address.
    #[must_use]
    pub fn of(address: Address, case: &Case) -> Self {
        let sound = cases::proof(case);
        let placed = sound.as_ref().and_then(|sound| Plan::from_draft(&sound.draft, case).ok());
        let gap = placed.and_then(|plan| Measurements::of(case, &plan).facial_gap());
        let hard = sound.and_then(|sound| cases::difficulty(case, &sound.draft));
        let nothing = Plan::default();
        let measured = Measurements::of(case, &nothing);
        Self {
            address,
            title: case.title.clone(),
            about: (address.generator != cases::POPULATION).then(|| cases::archetype_at(address)),
            upper: case.site.tooth.jaw() == engine::anatomy::Jaw::Maxilla,
            aesthetic: case.site.is_aesthetic(),
            defect: !case.site.defects.is_empty(),
            plate: measured.facial_plate().filter(|plate| plate.get() > 0.0),
            gap: gap.map(|gap| gap.width),
            hard: hard.as_ref().map(cases::Difficulty::value),
            rules: hard.map(|hard| hard.rules).unwrap_or_default(),
        }
    }
}

/// Of each skill, which rules the cases test and which they leave out, in the order of the register.
#[must_use]
pub fn blueprint(cases: &[Tested]) -> Vec<(Skill, [Vec<&'static Rule>; 2])> {
    let tested =
        |rule: &Rule| cases.iter().any(|case| case.rules.iter().any(|one| one.id == rule.id));
    let of = |skill: Skill| {
        let (yes, no) = all().filter(|rule| rule.skill == skill).partition(|rule| tested(rule));
        (skill, [yes, no])
    };
    Skill::ALL.iter().copied().map(of).collect()
}

/// How many cases of a set have what instructors look for when they spread one: a line each, in words.
#[must_use]
pub fn spread(cases: &[Tested]) -> Vec<(&'static str, usize)> {
    let count = |has: fn(&Tested) -> bool| cases.iter().filter(|case| has(case)).count();
    let hard = |case: &Tested, from: f64, to: f64| {
        case.hard.is_some_and(|hard| (from..to).contains(&hard))
    };
    let gap = |least: f64, most: f64| {
        let is = |case: &&Tested| case.gap.is_some_and(|gap| (least..most).contains(&gap.get()));
        cases.iter().filter(is).count()
    };
    vec![
        ("in the upper jaw", count(|case| case.upper)),
        ("in the lower jaw", count(|case| !case.upper)),
        ("with a margin that shows", count(|case| case.aesthetic)),
        ("with a defect in a wall", count(|case| case.defect)),
        // Thin and thick as the rules have it: a millimetre.
        ("with a facial plate thinner than 1 mm", count(|case| thin(case) == Some(true))),
        ("with a facial plate of 1 mm or more", count(|case| thin(case) == Some(false))),
        // The rules want 2 mm and accept 1.5.
        ("whose sound plan places an implant today, with a facial gap below 2 mm", gap(0.0, 2.0)),
        ("the same with a gap of 2 to 3 mm", gap(2.0, 3.0)),
        ("the same with a gap of 3 mm or more", gap(3.0, f64::INFINITY)),
        ("whose sound plan places none today", count(|case| case.gap.is_none())),
        ("easier (below 0.5)", cases.iter().filter(|case| hard(case, 0.0, 0.5)).count()),
        ("in between", cases.iter().filter(|case| hard(case, 0.5, 0.7)).count()),
        ("harder (0.7 and more)", cases.iter().filter(|case| hard(case, 0.7, 1.1)).count()),
    ]
}

fn thin(case: &Tested) -> Option<bool> {
    case.plate.map(|plate| plate.get() < 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tested(text: &str) -> Tested {
        Tested::at(text.parse().unwrap()).unwrap()
    }

    #[test]
    fn a_case_tells_its_instructor_what_the_tool_tells() {
        let one = tested("1.1.2024.2591");
        let case = cases::at(one.address).unwrap();
        let sound = cases::proof(&case).unwrap();
        let hard = cases::difficulty(&case, &sound.draft).unwrap();
        assert_eq!((one.title.as_str(), one.hard), (case.title.as_str(), Some(hard.value())));
        assert_eq!(one.rules.len(), hard.rules.len());
        assert_eq!(one.about, Some(cases::archetype_at(one.address)));
    }

    #[test]
    fn every_rule_is_tested_or_left_out_and_under_its_own_skill() {
        let cases = ["1.1.2024.2591", "1.1.2024.1397"].map(tested);
        let found = blueprint(&cases);
        let count = |which: usize| found.iter().map(|(_, rules)| rules[which].len()).sum::<usize>();
        assert_eq!(count(0) + count(1), all().count());
        let mut in_play: Vec<&str> =
            cases.iter().flat_map(|case| &case.rules).map(|rule| rule.id).collect();
        in_play.sort_unstable();
        in_play.dedup();
        assert_eq!(count(0), in_play.len());
        assert!(
            found.iter().all(|(skill, rules)| rules.iter().flatten().all(|r| r.skill == *skill))
        );
        assert!(blueprint(&[]).iter().all(|(_, [tested, _])| tested.is_empty()));
    }

    #[test]
    fn each_case_is_in_one_jaw_and_as_hard_as_one_line_says() {
        let cases = ["1.1.2024.2591", "1.1.2024.1857", "1.1.2024.1397", "1.1.2024.2"].map(tested);
        let spread = spread(&cases);
        let of = |places: &[usize]| places.iter().map(|place| spread[*place].1).sum::<usize>();
        assert_eq!((of(&[0, 1]), of(&[10, 11, 12])), (cases.len(), cases.len()));
        assert_eq!(of(&[6, 7, 8, 9]), cases.len(), "each gap in one line");
        assert_eq!(of(&[4, 5]), cases.iter().filter(|case| case.plate.is_some()).count());
    }
}
