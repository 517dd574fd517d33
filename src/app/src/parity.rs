//! One number for a range of cases and debriefs, the same natively, on the page and in the worker.

use engine::cases;
use engine::debrief::{explain, hash_of};
use engine::figures::{self, Item, Show};
use engine::geometry::P2;
use engine::hash::Fnv;
use engine::rules::Known;
use engine::session::{Session, all_reports, history_lines, wander};

/// The digest of the cases with seeds `first .. first + count`, each with the debrief of a plan that
/// chance decided, as 16 hexadecimal digits. Whatever differs between targets shows in it.
#[must_use]
pub fn digest(first: u32, count: u32) -> String {
    let mut hash = Fnv::new();
    for number in 0..count {
        one(first.wrapping_add(number), &mut hash);
    }
    format!("{:016x}", hash.value())
}

/// Writes one case and its debrief: what the chart and every examination say, the section's drawing
/// with every coordinate to the bit, each verdict with its reading to the bit, and the mark.
fn one(seed: u32, into: &mut Fnv) {
    let case = match cases::generate(u64::from(seed)) {
        Ok(case) => case,
        Err(fault) => return into.text(&fault.to_string()),
    };
    for line in history_lines(&case) {
        into.text(&line);
    }
    for report in all_reports(&case) {
        for line in &report.lines {
            into.text(line);
        }
    }
    let tooth = case.site.tooth;
    let session = wander(case, u64::from(seed));
    drawing(&session, into);
    let Some(debrief) = session.debrief(None) else {
        return into.text("no debrief");
    };
    number(hash_of(&debrief.verdicts), into);
    into.text(debrief.word.word());
    number(debrief.mark.percent().map_or(u64::MAX, f64::to_bits), into);
    for verdict in &debrief.verdicts {
        let words = explain(verdict, tooth);
        into.text(&words.measured);
        into.text(&words.distance);
    }
}

fn drawing(session: &Session, into: &mut Fnv) {
    let (case, plan) = (session.case(), session.plan());
    let known = Known::of(case, plan);
    let show = Show {
        case,
        plan,
        draft: session.draft(),
        known: &known,
        reveal: true,
        lit: None,
        px: 400.0,
    };
    for item in figures::section(&show).items {
        match item {
            Item::Path { rings, .. } => rings.iter().flatten().for_each(|at| at_point(*at, into)),
            Item::Circle { middle, .. } => at_point(middle, into),
            Item::Words { text, .. } => into.text(&text),
        }
    }
}

fn number(number: u64, into: &mut Fnv) {
    into.bytes(&number.to_le_bytes());
}

fn at_point(at: P2, into: &mut Fnv) {
    number(at.x.to_bits(), into);
    number(at.y.to_bits(), into);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_digest_depends_on_where_the_range_starts_and_how_long_it_is() {
        assert_eq!(digest(0, 3), digest(0, 3));
        assert_ne!(digest(0, 3), digest(1, 3));
        assert_ne!(digest(0, 3), digest(0, 4));
    }

    #[test]
    fn the_digest_of_nothing_is_the_hash_s_published_start() {
        assert_eq!(digest(7, 0), "cbf29ce484222325");
    }
}
