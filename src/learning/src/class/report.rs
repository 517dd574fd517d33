//! What an instructor is told of a class. Everything in it follows from choices: no mark is read.

use super::alternatives::{Chosen, chosen};
use super::changed::Changed;
use super::firsts::Firsts;
use super::gathered::{CaseSeen, Class, Row};
use super::missed::{OfRule, rules, skills};
use super::{
    Agreement, Answer, Answers, Components, Footing, Item, Items, MOST_RULES, Reliability,
    SetAside, Share, order,
};
use crate::parameters::DEPENDABLE;
use engine::debrief::{PlanWord, counted};
use engine::rules::{Rule, Skill, all};
use std::collections::BTreeMap;

/// A case belongs to the table of items when this many learners reached its end (ours).
const SHARED_FROM: u32 = 2;
/// A table of more cells than this is not laid out: its coefficients would take longer than they are
/// worth (ours).
const MOST_CELLS: usize = 20_000_000;

/// The report.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// How many attempts there are, and how many of them count: of several at one case the first.
    pub attempts: [usize; 2],
    /// How many of those that count did not come to their end.
    pub unfinished: usize,
    /// How many were shown or begun for the learner, and count for nothing.
    pub helped: usize,
    /// How many came more than once.
    pub again: u32,
    /// Attempts that today's rules judge otherwise than the rule set that they were sat under, by that.
    pub otherwise: BTreeMap<String, u32>,
    /// What changed in those that count: the learner's code, the case, what was and what is.
    pub changed: Vec<(String, CaseSeen, Changed)>,
    /// Learners in the order of their codes.
    pub learners: Vec<OfLearner>,
    /// Cases, the hardest first.
    pub cases: Vec<OfCase>,
    /// Rules, the most missed first.
    pub rules: Vec<OfRule>,
    /// Skills, the most lacked first.
    pub skills: Vec<(Skill, Share)>,
    /// Every act that can hurt somebody, one by one.
    pub grave: Vec<Grave>,
    /// What was held against verdicts.
    pub objections: Vec<Objection>,
    /// What the outcomes of cases together can carry.
    pub together: Together,
    /// Verdicts that count for nobody in this class; what is *adjusted* goes without them.
    pub aside: Vec<SetAside>,
}

/// A learner.
#[derive(Debug, Clone, PartialEq)]
pub struct OfLearner {
    /// The code.
    pub code: String,
    /// Cases that went well, and that did not.
    pub cases: Share,
    /// The same without what was set aside; until something is, nothing.
    pub adjusted: Share,
    /// Of each rule of the register, what became of it.
    pub rules: Vec<Answer>,
    /// Rules that were missed in two cases or more, with how many.
    pub recurring: Vec<(&'static Rule, u32)>,
    /// How many acts can hurt somebody.
    pub grave: u32,
    /// Cases that were begun and not ended.
    pub unfinished: u32,
    /// Cases that had been opened in the same browser before.
    pub opened_before: u32,
    /// Cases that were gone on with after the time was over.
    pub late: u32,
}

/// A case.
#[derive(Debug, Clone, PartialEq)]
pub struct OfCase {
    /// Which.
    pub case: CaseSeen,
    /// How many plans are sound, workable, compromised and unsafe.
    pub words: [u32; 4],
    /// The same without what was set aside; until something is, nothing.
    pub adjusted: [u32; 4],
    /// How many did not come to the end.
    pub unfinished: u32,
    /// How many learners held something against a verdict.
    pub objectors: u32,
    /// Its numbers as an item; nothing where it is not shared.
    pub item: Option<Item>,
    /// What was chosen, decision by decision in the order of care.
    pub chosen: Vec<Chosen>,
    /// Why somebody should look at it.
    pub odd: Vec<Odd>,
}

impl OfCase {
    /// Whose plan came to its end, and is sound or workable or is not.
    #[must_use]
    pub const fn passed(&self) -> Share {
        let [sound, workable, compromised, grave] = self.words;
        Share { right: sound + workable, wrong: compromised + grave }
    }
}

/// Why a case misbehaves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Odd {
    /// Those who do well elsewhere do worse here.
    Backwards,
    /// Nobody passed.
    NobodyPassed,
    /// Everybody passed.
    EverybodyPassed,
    /// A third or more of those who sat it hold something against a verdict (ours).
    Disputed,
    /// Half or more did not come to its end (ours).
    GivenUp,
}

impl Odd {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Backwards => "those who do well elsewhere do worse here",
            Self::NobodyPassed => "nobody passed it",
            Self::EverybodyPassed => "everybody passed it: it tells nobody apart",
            Self::Disputed => "a third or more hold something against a verdict",
            Self::GivenUp => "half or more did not come to its end",
        }
    }
}

/// An act that can hurt somebody. No mark makes up for it.
#[derive(Debug, Clone, PartialEq)]
pub struct Grave {
    /// Whose.
    pub code: String,
    /// At which case.
    pub case: CaseSeen,
    /// The rule.
    pub rule: &'static Rule,
}

/// Something held against a verdict.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Objection {
    /// Whose.
    pub code: String,
    /// At which case.
    pub case: CaseSeen,
    /// Id of the rule.
    pub rule: String,
    /// The reason.
    pub reason: String,
}

/// What outcomes of cases together can carry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Together {
    /// How many learners reached two shared cases or more, and how many shared cases there are.
    pub size: [usize; 2],
    /// What so many can carry.
    pub footing: Footing,
    /// How far a total would come out the same again; only from 30 learners on.
    pub reliability: Option<Reliability>,
    /// Whether two cases of one learner come out the same.
    pub agreement: Option<Agreement>,
    /// Where differences come from.
    pub components: Option<Components>,
    /// How many cases a decision needs that can be depended on in a class, and where much hangs on it.
    pub needed: [Option<u32>; 2],
}

impl Report {
    /// Of a class.
    #[must_use]
    pub fn of(class: &Class) -> Self {
        let firsts = class.firsts();
        let shared = shared(class, &firsts);
        let answers = answers(class, &firsts, &shared);
        let items = Items::of(&answers);
        let together = together(&answers);
        let code =
            |row: &Row| class.learners.get(row.learner as usize).cloned().unwrap_or_default();
        let case = |row: &Row| class.cases.get(row.case as usize).cloned();
        let rules_of: Vec<&'static Rule> = all().take(MOST_RULES).collect();
        let mut grave = Vec::new();
        let (mut objections, mut changed) = (Vec::new(), Vec::new());
        for row in firsts.values() {
            let (Some(case), code) = (case(row), code(row)) else { continue };
            let acts = row.marks.grave().filter_map(|place| rules_of.get(place));
            grave.extend(acts.map(|rule| Grave { code: code.clone(), case: case.clone(), rule }));
            changed.extend(
                row.otherwise.as_deref().map(|one| (code.clone(), case.clone(), one.clone())),
            );
            objections.extend(row.objections.iter().map(|(rule, reason)| Objection {
                code: code.clone(),
                case: case.clone(),
                rule: rule.clone(),
                reason: reason.clone(),
            }));
        }
        let own = class.rows.iter().filter(|row| row.own).count();
        let mut otherwise = BTreeMap::new();
        for (set, count) in class.otherwise.iter().filter(|(_, count)| **count > 0) {
            otherwise.insert(set.clone(), *count);
        }
        Self {
            attempts: [class.rows.len(), firsts.len()],
            unfinished: firsts.values().filter(|row| !row.over).count(),
            helped: class.rows.len() - own,
            again: class.again,
            otherwise,
            changed,
            learners: learners(class, &firsts, &rules_of),
            cases: cases(class, &firsts, &shared, &items),
            rules: rules(&firsts),
            skills: skills(&firsts),
            grave,
            objections,
            together,
            aside: Vec::new(),
        }
    }
}

impl Report {
    /// Puts numbers in the place of codes: *Learner 1* is the first by code, whatever was handed in with
    /// the others.
    pub fn hide_codes(&mut self) {
        // Learners stand in the order of their codes.
        let codes: Vec<String> = self.learners.iter().map(|one| one.code.clone()).collect();
        let hide = |code: &mut String| {
            if let Ok(place) = codes.binary_search(code) {
                *code = format!("Learner {}", place + 1);
            }
        };
        self.learners.iter_mut().for_each(|one| hide(&mut one.code));
        self.grave.iter_mut().for_each(|one| hide(&mut one.code));
        self.objections.iter_mut().for_each(|one| hide(&mut one.code));
        self.changed.iter_mut().for_each(|one| hide(&mut one.0));
    }

    /// Learners who need a word, each with the reasons: an act that can hurt somebody, the same rule
    /// missed again, fewer cases passed than chance explains in this class, nothing brought to its end.
    #[must_use]
    pub fn needing_a_word(&self) -> Vec<(&OfLearner, Vec<String>)> {
        let mut whole = Share::default();
        for one in &self.learners {
            whole.right = whole.right.saturating_add(one.cases.right);
            whole.wrong = whole.wrong.saturating_add(one.cases.wrong);
        }
        let reasons = |one: &OfLearner| {
            let mut why = Vec::new();
            if one.grave > 0 {
                why.push(format!("{} that can hurt somebody", counted(one.grave as usize, "act")));
            }
            for (rule, times) in one.recurring.iter().take(3) {
                why.push(format!("{} missed in {}", rule.id, counted(*times as usize, "case")));
            }
            let below = one.cases.band().zip(whole.value()).is_some_and(|(band, of)| band[1] < of);
            if below {
                why.push(format!("{} of {} cases passed", one.cases.right, one.cases.all()));
            }
            if one.cases.all() == 0 {
                why.push("no case brought to its end".to_owned());
            }
            why
        };
        let all = self.learners.iter().map(|one| (one, reasons(one)));
        all.filter(|(_, why)| !why.is_empty()).collect()
    }
}

/// The cases that more than one learner saw through, in the order of the table.
fn shared(class: &Class, firsts: &Firsts<'_>) -> Vec<u32> {
    let mut ends = vec![0_u32; class.cases.len()];
    for row in firsts.values().filter(|row| row.over) {
        if let Some(count) = ends.get_mut(row.case as usize) {
            *count += 1;
        }
    }
    let ended = (0_u32..).zip(ends).filter(|(_, count)| *count >= SHARED_FROM);
    let shared: Vec<u32> = ended.map(|(case, _)| case).collect();
    let cells = shared.len().saturating_mul(class.learners.len());
    if cells > MOST_CELLS { Vec::new() } else { shared }
}

/// Learners against shared cases: right is passed.
fn answers(class: &Class, firsts: &Firsts<'_>, shared: &[u32]) -> Answers {
    let mut cells = vec![Answer::NotReached; class.learners.len() * shared.len()];
    for ((learner, case), row) in firsts {
        let place =
            shared.binary_search(case).ok().map(|place| *learner as usize * shared.len() + place);
        if let (Some(cell), true) = (place.and_then(|place| cells.get_mut(place)), row.over) {
            *cell = if passed(row.word) { Answer::Right } else { Answer::Wrong };
        }
    }
    Answers::of(class.learners.len(), shared.len(), &|person, item| {
        cells.get(person * shared.len() + item).copied().unwrap_or(Answer::NotReached)
    })
}

pub(super) const fn passed(word: PlanWord) -> bool {
    matches!(word, PlanWord::Sound | PlanWord::Workable)
}

/// The place of a word among the counts of words.
pub(super) const fn place_of(word: PlanWord) -> usize {
    match word {
        PlanWord::Sound => 0,
        PlanWord::Workable => 1,
        PlanWord::Compromised => 2,
        PlanWord::Unsafe => 3,
    }
}

fn together(answers: &Answers) -> Together {
    let reached = |person: usize| {
        answers.row(person).iter().filter(|one| **one != Answer::NotReached).count() > 1
    };
    let persons = (0..answers.persons()).filter(|person| reached(*person)).count();
    let footing = Footing::of(persons);
    let components = Components::of(answers);
    let complete = answers.complete();
    let enough = Footing::of(complete.persons()) != Footing::TooFew;
    Together {
        size: [persons, answers.items()],
        footing,
        reliability: Reliability::of(&complete).filter(|_| enough),
        agreement: Agreement::of(answers),
        components,
        needed: DEPENDABLE.map(|phi| components.and_then(|found| found.needed(phi))),
    }
}

fn learners(class: &Class, firsts: &Firsts<'_>, rules: &[&'static Rule]) -> Vec<OfLearner> {
    let mut found: Vec<OfLearner> = class
        .learners
        .iter()
        .map(|code| OfLearner {
            code: code.clone(),
            cases: Share::default(),
            adjusted: Share::default(),
            rules: Vec::new(),
            recurring: Vec::new(),
            grave: 0,
            unfinished: 0,
            opened_before: 0,
            late: 0,
        })
        .collect();
    let mut marks = vec![(super::Marks::default(), vec![0_u32; rules.len()]); found.len()];
    for ((learner, _), row) in firsts {
        let at = *learner as usize;
        let (Some(one), Some((all, missed))) = (found.get_mut(at), marks.get_mut(at)) else {
            continue;
        };
        *all = all.with(row.marks);
        for place in row.marks.wrong() {
            if let Some(times) = missed.get_mut(place) {
                *times += 1;
            }
        }
        one.grave = one.grave.saturating_add(u32::try_from(row.marks.grave().count()).unwrap_or(0));
        one.opened_before += u32::from(row.opened_before);
        one.late += u32::from(row.late);
        if row.over {
            one.cases.count(if passed(row.word) { Answer::Right } else { Answer::Wrong });
        } else {
            one.unfinished += 1;
        }
    }
    for (one, (all, missed)) in found.iter_mut().zip(marks) {
        one.rules = (0..rules.len()).map(|place| all.answer(place)).collect();
        one.recurring = rules.iter().copied().zip(missed).filter(|one| one.1 > 1).collect();
        order::by(&mut one.recurring, &|one, other| other.1.cmp(&one.1));
    }
    order::by(&mut found, &|one, other| one.code.cmp(&other.code));
    found
}

fn cases(class: &Class, firsts: &Firsts<'_>, shared: &[u32], items: &Items) -> Vec<OfCase> {
    let chosen = chosen(firsts, class.cases.len());
    let mut found: Vec<OfCase> = class
        .cases
        .iter()
        .zip(0_u32..)
        .zip(chosen)
        .map(|((case, place), chosen)| OfCase {
            case: case.clone(),
            words: [0; 4],
            adjusted: [0; 4],
            unfinished: 0,
            objectors: 0,
            item: shared.binary_search(&place).ok().and_then(|item| items.each.get(item)).copied(),
            chosen,
            odd: Vec::new(),
        })
        .collect();
    for row in firsts.values() {
        let Some(one) = found.get_mut(row.case as usize) else { continue };
        one.objectors += u32::from(!row.objections.is_empty());
        if row.over {
            one.words[place_of(row.word)] += 1;
        } else {
            one.unfinished += 1;
        }
    }
    for one in &mut found {
        one.odd = odd(one, items.footing);
    }
    let hard = |one: &OfCase| one.passed().value().unwrap_or_default();
    order::by(&mut found, &|one, other| hard(one).total_cmp(&hard(other)));
    found
}

fn odd(one: &OfCase, footing: Footing) -> Vec<Odd> {
    let Share { right: passed, .. } = one.passed();
    let ended = one.passed().all();
    let sat = ended + one.unfinished;
    if sat < SHARED_FROM {
        return Vec::new();
    }
    let corrected = one.item.and_then(|item| item.corrected);
    let backwards = footing != Footing::TooFew && corrected.is_some_and(|value| value < 0.0);
    [
        (backwards, Odd::Backwards),
        (ended >= SHARED_FROM && passed == 0, Odd::NobodyPassed),
        (ended >= SHARED_FROM && passed == ended, Odd::EverybodyPassed),
        (3 * one.objectors >= sat, Odd::Disputed),
        (2 * one.unfinished >= sat, Odd::GivenUp),
    ]
    .into_iter()
    .filter_map(|(is, odd)| is.then_some(odd))
    .collect()
}
