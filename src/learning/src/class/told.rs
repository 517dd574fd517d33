//! A report in sentences, the same for the tool and for the page.

use super::{Angoff, Borderline, Footing, Notion, OfCase, OfLearner, Report, Share, Together};
pub use engine::debrief::counted;
use engine::debrief::plain as shortly;

/// Of no more attempts is it told how their verdicts changed; all are counted.
const MOST_CHANGED: usize = 50;

/// How much there is.
#[must_use]
pub fn size(report: &Report) -> String {
    let counts = [
        (report.learners.len(), "learner"),
        (report.cases.len(), "case"),
        (report.attempts[0], "attempt"),
    ];
    counts.map(|(count, what)| counted(count, what)).join(", ")
}

/// What else is to be known of the attempts, a sentence each; nothing where there is nothing.
#[must_use]
pub fn besides(report: &Report) -> Vec<String> {
    let [all, first] = report.attempts;
    let once_more = all.saturating_sub(first).saturating_sub(report.helped);
    let lines = [
        (once_more, "at a case that the same learner had sat before: the first counts"),
        (report.helped, "shown or begun for the learner: they count for nothing"),
        (report.unfinished, "not brought to the end: what was not reached is missing, not wrong"),
        (report.again as usize, "came more than once"),
    ];
    let said = |(count, words): (usize, &str)| (count > 0).then(|| format!("{count} {words}"));
    let mut told: Vec<String> = lines.into_iter().filter_map(said).collect();
    for (set, count) in &report.otherwise {
        told.push(format!("{count} judged otherwise when sat, under rule set {set}"));
    }
    let changed = report.changed.iter().take(MOST_CHANGED);
    told.extend(
        changed.map(|(code, case, one)| format!("{code} at case {}: {}", case.name, one.words())),
    );
    told.extend(by_learner(report, "in a browser that had opened the case before", |one| {
        one.opened_before
    }));
    told.extend(by_learner(report, "gone on with after the time was over", |one| one.late));
    told
}

/// In how many cases something is to be known of a learner, and whose; nothing where there is none.
fn by_learner(report: &Report, what: &str, of: fn(&OfLearner) -> u32) -> Option<String> {
    let whose = report.learners.iter().filter(|one| of(one) > 0);
    let whose: Vec<String> = whose.map(|one| format!("{} {}", one.code, of(one))).collect();
    let all: u32 = report.learners.iter().map(of).sum();
    (all > 0).then(|| format!("{all} {what} ({})", whose.join(", ")))
}

/// How many learners miss something, and where that share may lie in truth.
#[must_use]
pub fn learners(share: Share) -> String {
    format!("{} of {} learners{}", share.wrong, share.all(), within(share))
}

/// In how many attempts something is missed, likewise.
#[must_use]
pub fn attempts(share: Share) -> String {
    format!("missed in {} of {} attempts{}", share.wrong, share.all(), within(share))
}

fn within(share: Share) -> String {
    missing(share).map_or_else(String::new, |[from, to]| format!(" ({from:.0} to {to:.0} %)"))
}

/// Where the share that misses something may lie in truth, percent; nothing where nobody reached it.
#[must_use]
pub fn missing(share: Share) -> Option<[f64; 2]> {
    share.band().map(|[from, to]| [100.0 * (1.0 - to), 100.0 * (1.0 - from)])
}

/// How many cases a learner passed, and where that share may lie in truth.
#[must_use]
pub fn passed(share: Share) -> String {
    let band = share.band().map(|[from, to]| [100.0 * from, 100.0 * to]);
    let band = band.map_or_else(String::new, |[from, to]| format!(" ({from:.0} to {to:.0} %)"));
    format!("{} of {}{band}", share.right, share.all())
}

/// The pass line of acts that can hurt somebody, which no mark makes up for: none.
#[must_use]
pub fn pass_line(report: &Report) -> String {
    let clear = report.learners.iter().filter(|one| one.grave == 0).count();
    format!(
        "The pass line here is none at all: {clear} of {} reach it",
        counted(report.learners.len(), "learner")
    )
}

/// What sets those who missed a rule apart.
#[must_use]
pub fn notion(notion: &Notion) -> String {
    let (asks, chose) = notion.words();
    let ([missed, of], [kept, others]) = (notion.missed, notion.kept);
    let did = if notion.left_out { "left out" } else { "chose" };
    format!(
        "{missed} of {of} that missed it {did} *{chose}* ({asks}), {kept} of {others} of the others"
    )
}

/// How the plans at a case came out.
#[must_use]
pub fn words(one: &OfCase) -> String {
    let [sound, workable, compromised, grave] = one.words;
    let unfinished = match one.unfinished {
        0 => String::new(),
        count => format!(", {count} unfinished"),
    };
    format!(
        "{sound} sound, {workable} workable, {compromised} compromised, {grave} unsafe{unfinished}"
    )
}

/// A case's numbers as an item, where so many learners can carry them.
#[must_use]
pub fn item(one: &OfCase, together: &Together) -> String {
    let Some(item) = one.item.filter(|_| together.footing != Footing::TooFew) else {
        return String::new();
    };
    let number =
        |value: Option<f64>| value.map_or_else(|| "none".to_owned(), |value| format!("{value:.2}"));
    format!(
        "; corrected point-biserial {}, upper-lower {}",
        number(item.corrected),
        number(item.upper_lower)
    )
}

/// What the outcomes of cases together can carry.
#[must_use]
pub fn together(report: &Report) -> Vec<String> {
    let found = &report.together;
    let [learners, cases] = found.size;
    let mut lines = vec![match found.footing {
        Footing::TooFew => format!(
            "{learners} learners ended two of {cases} shared cases or more: too few for coefficients of items"
        ),
        Footing::Shaky => format!("{learners} learners: below 100 coefficients of items are shaky"),
        Footing::Firm => format!("{learners} learners"),
    }];
    if let Some(found) = found.reliability {
        lines.push(format!(
            "KR-20 {:.2} over {} and {}; standard error of a total {:.2} cases",
            found.alpha,
            counted(found.persons, "learner"),
            counted(found.items, "case"),
            found.error
        ));
    }
    if let Some(found) = found.agreement {
        lines.push(format!(
            "Two cases of one learner come out the same in {:.0} % of pairs; by chance {:.0} %",
            100.0 * found.found,
            100.0 * found.by_chance
        ));
    }
    if let Some(components) = found.components {
        let [class, high] = found.needed.map(needed);
        lines.push(format!("A decision that can be depended on needs {class} in a class, {high} where much hangs on it"));
        if components.persons.is_set_to_zero() {
            lines.push(
                "Learners do not differ beyond chance in these answers (the estimate was below 0)"
                    .to_owned(),
            );
        }
    }
    lines
}

/// What stands under every pass mark.
pub const BESIDE: &str = "An unsafe act has a pass line of its own: no mark makes up for one.";

/// The pass mark that judges expect, and what is to be known of it, a sentence each.
#[must_use]
pub fn judged(angoff: &Angoff) -> [String; 3] {
    let scatter = match angoff.error() {
        None => "; of one judge nobody can say how far it would scatter".to_owned(),
        Some(error) => {
            format!(", standard error {error:.2} cases, as it would scatter with other judges")
        }
    };
    [
        format!(
            "Pass mark: {:.1} of {}{scatter}.",
            angoff.cut(),
            counted(angoff.items(), "case")
        ),
        BESIDE.to_owned(),
        "Those who begin to judge drift to about one half, and judges agree little with what a class did (BMC Medical Education 2020, confirmed): talk about the cases where the numbers lie far apart."
            .to_owned(),
    ]
}

/// The pass mark that ratings of whole performances set at the rating of a borderline one, and what is to
/// be known of it, a sentence each.
#[must_use]
pub fn rated(line: &Borderline, borderline: f64) -> Vec<String> {
    let explained =
        line.explained.map_or_else(|| "none".to_owned(), |share| format!("{:.0} %", 100.0 * share));
    let mut told = vec![
        format!(
            "{} marks to a step of the rating, {explained} of their variance explained, scatter {:.1}.",
            tenth(line.slope),
            line.scatter
        ),
        format!(
            "Pass mark: {:.1} of 100, at the rating {} (standard error {:.1}).",
            line.cut,
            shortly(borderline),
            line.error
        ),
    ];
    if line.slope <= 0.0 {
        told.push(
            "Marks and ratings contradict each other: this pass mark means nothing.".to_owned(),
        );
    }
    if line.is_drawn_out {
        told.push(
            "Nobody was rated on one side of the borderline: the line is drawn out to it."
                .to_owned(),
        );
    }
    told.push(BESIDE.to_owned());
    told
}

/// A number to a tenth; nothing is never less than nothing.
fn tenth(number: f64) -> String {
    let text = format!("{number:.1}");
    if text == "-0.0" { "0.0".to_owned() } else { text }
}

/// Why an attempt is set aside that somebody else handed in too.
#[must_use]
pub fn of_another(id: &str, other: &str) -> String {
    format!("the attempt {id} was handed in by {other} too: only one of them can have done it")
}

/// A name that came from outside, as it may stand in a report: no control characters, not too long.
#[must_use]
pub fn plain(name: &str) -> String {
    name.chars().filter(|letter| !letter.is_control()).take(80).collect()
}

/// What the room calls every file of attempts that it saves, of one or of several.
const SAVED: &str = "wallwise-attempt";

/// The learner's code where a file names none: what the file is called, without its ending. What every
/// learner's file is called tells nobody apart; the folder in which it lies may.
#[must_use]
pub fn code_of(path: &str) -> String {
    let mut names = path.rsplit(['/', '\\']);
    let file = names.next().unwrap_or_default();
    let stem = file.rsplit_once('.').map_or(file, |(stem, _)| stem);
    let folder = names.next().filter(|_| stem.starts_with(SAVED)).unwrap_or_default();
    match folder {
        "" | "." | ".." => plain(stem),
        folder => plain(&format!("{folder}/{stem}")),
    }
}

fn needed(cases: Option<u32>) -> String {
    match cases {
        None => "more cases than there could be".to_owned(),
        Some(1) => "one case".to_owned(),
        Some(cases) => format!("about {cases} cases"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_that_is_missed_is_told_with_its_interval() {
        // Wilson's 90 % of 2 of 10, from the closed form by hand: 0.069 to 0.459.
        let share = Share { right: 8, wrong: 2 };
        assert_eq!(learners(share), "2 of 10 learners (7 to 46 %)");
        assert_eq!(attempts(Share::default()), "missed in 0 of 0 attempts");
        assert_eq!(passed(share), "8 of 10 (54 to 93 %)");
    }

    #[test]
    fn a_file_that_names_no_learner_is_called_by_its_name_alone() {
        let names = ["a/b/k-07.json", "..\\k-07.json", "k-07", "\u{7}k-07.json"];
        assert_eq!(names.map(code_of), ["k-07"; 4].map(str::to_owned));
        assert_eq!(code_of(&"x".repeat(200)).len(), 80);
        let saved = ["k-07/wallwise-attempts.json", "./wallwise-attempts (1).json"];
        assert_eq!(saved.map(code_of), ["k-07/wallwise-attempts", "wallwise-attempts (1)"]);
    }

    #[test]
    fn one_is_told_as_one() {
        assert_eq!([counted(1, "case"), counted(2, "case")], ["1 case", "2 cases"]);
    }
}
