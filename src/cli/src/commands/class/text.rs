//! The report for a person.

use engine::debrief::{CAUTION, RULE_SET};
use learning::class::{Footing, OfCase, OfRule, Report, Share};

/// So many lines of a list are printed; the rest is counted.
const MOST: usize = 20;

/// All of it.
pub fn of(report: &Report, aside: &[String]) -> String {
    let mut text = head(report);
    section(&mut text, "What the class misses", &rules(report));
    section(&mut text, "Skills, the most lacked first", &skills(report));
    section(&mut text, "Acts that can hurt somebody: no mark makes up for one", &grave(report));
    section(&mut text, "Learners who need a word", &words(report));
    section(&mut text, "Cases, the hardest first", &lines(&report.cases, |one| case(one, report)));
    section(&mut text, "What the outcomes together can carry", &together(report));
    section(
        &mut text,
        "Held against verdicts",
        &lines(&report.objections, |one| {
            format!("{}, {}, {}: {}", one.code, one.case.name, one.rule, one.reason)
        }),
    );
    section(&mut text, "Set aside", aside);
    text
}

fn head(report: &Report) -> String {
    let [all, counted] = report.attempts;
    let mut text = format!(
        "{} learners, {} cases, {all} attempts\n{CAUTION}\nEverything follows from choices, judged by rule set {RULE_SET}; \
         that these are the learner's own choices no file can prove.\n",
        report.learners.len(),
        report.cases.len()
    );
    let mut also = |count: usize, words: &str| {
        if count > 0 {
            text.push_str(&format!("{count} {words}\n"));
        }
    };
    also(
        all - counted - report.helped,
        "at a case that the same learner had sat before: the first counts",
    );
    also(report.helped, "shown or begun for the learner: they count for nothing");
    also(report.unfinished, "not brought to the end: what was not reached is missing, not wrong");
    also(report.again as usize, "came more than once");
    for (set, count) in &report.otherwise {
        text.push_str(&format!("{count} judged otherwise when sat, under rule set {set}\n"));
    }
    text
}

fn section(text: &mut String, title: &str, lines: &[String]) {
    if !lines.is_empty() {
        text.push_str(&format!("\n{title}\n"));
        for line in lines {
            text.push_str(&format!("  {line}\n"));
        }
    }
}

fn lines<T>(all: &[T], line: impl Fn(&T) -> String) -> Vec<String> {
    let mut lines: Vec<String> = all.iter().take(MOST).map(line).collect();
    if all.len() > MOST {
        lines.push(format!("and {} more (--json or --csv has all)", all.len() - MOST));
    }
    lines
}

fn rules(report: &Report) -> Vec<String> {
    let missed: Vec<&OfRule> = report.rules.iter().filter(|one| one.learners.wrong > 0).collect();
    lines(&missed, |one| {
        let notion = one.notion.map_or_else(String::new, |notion| {
            let (asks, chose) = notion.words();
            let ([missed, of], [kept, others]) = (notion.missed, notion.kept);
            let did = if notion.left_out { "left out" } else { "chose" };
            format!("\n      {missed} of {of} that missed it {did} *{chose}* ({asks}), {kept} of {others} of the others")
        });
        format!(
            "{} of {} learners{}: {}\n      {}{notion}",
            one.learners.wrong,
            one.learners.all(),
            missing(one.learners),
            one.rule.id,
            one.rule.statement
        )
    })
}

/// Where the share that misses something may lie in truth.
fn missing(share: Share) -> String {
    share.band().map_or_else(String::new, |[from, to]| {
        format!(" ({:.0} to {:.0} %)", 100.0 * (1.0 - to), 100.0 * (1.0 - from))
    })
}

fn skills(report: &Report) -> Vec<String> {
    let lacked: Vec<_> = report.skills.iter().filter(|(_, share)| share.wrong > 0).collect();
    lines(&lacked, |(skill, share)| {
        format!(
            "{}: missed in {} of {} attempts{}",
            skill.words(),
            share.wrong,
            share.all(),
            missing(*share)
        )
    })
}

fn grave(report: &Report) -> Vec<String> {
    lines(&report.grave, |one| format!("{}, {}: {}", one.code, one.case.name, one.rule.statement))
}

fn words(report: &Report) -> Vec<String> {
    lines(&report.needing_a_word(), |(one, why)| format!("{}: {}", one.code, why.join("; ")))
}

fn case(one: &OfCase, report: &Report) -> String {
    let [sound, workable, compromised, grave] = one.words;
    let item = one.item.filter(|_| report.together.footing != Footing::TooFew);
    let item = item.map_or_else(String::new, |item| {
        let number = |value: Option<f64>| {
            value.map_or_else(|| "none".to_owned(), |value| format!("{value:.2}"))
        };
        format!(
            "; corrected point-biserial {}, upper-lower {}",
            number(item.corrected),
            number(item.upper_lower)
        )
    });
    let odd: String =
        one.odd.iter().map(|odd| format!("\n      Look at it: {}.", odd.words())).collect();
    let unfinished =
        if one.unfinished > 0 { format!(", {} unfinished", one.unfinished) } else { String::new() };
    format!(
        "{}, tooth {}: {sound} sound, {workable} workable, {compromised} compromised, {grave} unsafe{unfinished}{item}{odd}",
        one.case.name, one.case.tooth
    )
}

fn together(report: &Report) -> Vec<String> {
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
            "KR-20 {:.2} over {} learners and {} cases; standard error of a total {:.2} cases",
            found.alpha, found.persons, found.items, found.error
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
        let [class, high] = found.needed.map(|cases| {
            cases.map_or_else(
                || "no number of cases".to_owned(),
                |cases| match cases {
                    1 => "one case".to_owned(),
                    cases => format!("about {cases} cases"),
                },
            )
        });
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
