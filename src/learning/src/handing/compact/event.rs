//! Events in a kept state. One description writes and reads: a writer is given the event and builds it
//! again from what it wrote, a reader is given nothing.

use super::alphabet::Alphabet;
use super::coder::{Bits, Numbers};
use super::subject as about;
use engine::anatomy::Wall;
use engine::chart::{Answers, Finding, Noted};
use engine::geometry::Outline;
use engine::plan::{Kind, Step, Value};
use engine::session::{Event, Exposure, LONGEST_REASON, SURENESS, Spot};
use std::collections::BTreeMap;

/// What cannot be written, or was never written.
pub type Garbled = &'static str;

/// No rule's id is longer.
const LONGEST_ID: usize = 80;
/// Seven kinds of events.
const KINDS: u32 = 3;

/// What the events before say about the next.
#[derive(Debug, Default)]
pub struct Before {
    kind: u16,
    decision: usize,
    outlines: BTreeMap<usize, Vec<[i32; 2]>>,
    rule: Vec<u8>,
}

/// One event.
pub fn event<B: Bits>(
    numbers: &mut Numbers<B>,
    alphabet: &Alphabet,
    before: &mut Before,
    given: Option<&Event>,
) -> Result<Event, Garbled> {
    let kind = match given {
        None | Some(Event::Choose(..)) => 0,
        Some(Event::CarryOut(_)) => 1,
        Some(Event::Expose(_)) => 2,
        Some(Event::Sound(_)) => 3,
        Some(Event::Note(..)) => 4,
        Some(Event::Dispute(..)) => 5,
        Some(Event::Sure(..)) => 6,
    };
    let kind = numbers.tree(about::KIND + before.kind, KINDS, kind);
    before.kind = u16::try_from(kind).unwrap_or(0);
    match kind {
        0 => chosen(numbers, alphabet, before, given),
        1 => {
            let Some(Event::CarryOut(given)) = given else {
                return step(numbers, None).map(Event::CarryOut);
            };
            step(numbers, Some(*given)).map(Event::CarryOut)
        }
        2 => exposed(numbers, given),
        3 => sounded(numbers, given),
        4 => noted(numbers, given),
        5 => disputed(numbers, before, given),
        6 => sure(numbers, given),
        _ => Err("an event of no kind"),
    }
}

fn step<B: Bits>(numbers: &mut Numbers<B>, given: Option<Step>) -> Result<Step, Garbled> {
    let place = given.and_then(|given| Step::ALL.iter().position(|step| *step == given));
    let place = numbers.place(about::STEP, Step::ALL.len(), place.unwrap_or(0));
    Step::ALL.get(place).copied().ok_or("a step that does not exist")
}

fn chosen<B: Bits>(
    numbers: &mut Numbers<B>,
    alphabet: &Alphabet,
    before: &mut Before,
    given: Option<&Event>,
) -> Result<Event, Garbled> {
    let (decision, value) = match given {
        Some(Event::Choose(decision, value)) => (Some(*decision), value.as_ref()),
        _ => (None, None),
    };
    let unknown = "a decision that this form does not know";
    let place = match decision {
        Some(decision) => alphabet.place(decision).ok_or(unknown)?,
        None => 0,
    };
    let count = alphabet.count();
    // Decisions are mostly answered in their order: what is written is how far on the next one stands.
    let subject = about::ONWARD + u16::try_from(before.decision).unwrap_or(0);
    let onward = (place + count).saturating_sub(before.decision) % count.max(1);
    let onward = numbers.place(subject, count, onward);
    let place = (before.decision + onward) % count.max(1);
    before.decision = place;
    let (entry, options) = alphabet.at(place).ok_or(unknown)?;
    if onward >= count {
        return Err(unknown);
    }
    let taken_back = given.is_some() && value.is_none();
    if numbers.flag(about::TAKEN_BACK, taken_back) {
        return Ok(Event::Choose(entry.decision, None));
    }
    let subject = about::ANSWER + u16::try_from(place).unwrap_or(0);
    let value = match entry.kind {
        Kind::Outline => Value::Outline(outline(numbers, before, place, value)?),
        kind => answer(numbers, subject, kind, options, value)?,
    };
    Ok(Event::Choose(entry.decision, Some(value)))
}

fn answer<B: Bits>(
    numbers: &mut Numbers<B>,
    subject: u16,
    kind: Kind,
    options: &[usize],
    given: Option<&Value>,
) -> Result<Value, Garbled> {
    let wrong = "an answer that its decision does not allow";
    match kind {
        Kind::Number(kind) => {
            let count = if let Some(Value::Number(count)) = given { *count } else { kind.least };
            let by = kind.by.max(1);
            let last = usize::try_from((kind.most - kind.least) / by).map_err(|_| wrong)?;
            let place = usize::try_from((count - kind.least) / by).map_err(|_| wrong)?;
            let place = numbers.place(subject, last + 1, place);
            let place = i32::try_from(place).map_err(|_| wrong)?;
            let count = kind.least + by * place;
            if kind.allows(count) { Ok(Value::Number(count)) } else { Err(wrong) }
        }
        Kind::Many(_) => {
            let bits = if let Some(Value::Many(bits)) = given { *bits } else { 0 };
            let mut found = 0;
            for (place, option) in options.iter().enumerate() {
                let node = subject + u16::try_from(place << 8).unwrap_or(0);
                if numbers.flag(node, (bits >> option) & 1 == 1) {
                    found |= 1 << option;
                }
            }
            Ok(Value::Many(found))
        }
        Kind::One(_) => {
            let option =
                if let Some(Value::One(option)) = given { usize::from(*option) } else { 0 };
            let place = options.iter().position(|one| *one == option).unwrap_or(0);
            let place = numbers.place(subject, options.len(), place);
            let option = options.get(place).ok_or(wrong)?;
            u8::try_from(*option).map(Value::One).map_err(|_| wrong)
        }
        Kind::Outline => Err(wrong),
    }
}

/// Corners after those that the same outline had before: most of a drawing is moving one of them.
fn outline<B: Bits>(
    numbers: &mut Numbers<B>,
    before: &mut Before,
    place: usize,
    given: Option<&Value>,
) -> Result<Outline, Garbled> {
    let given = if let Some(Value::Outline(outline)) = given { outline.tenths() } else { &[] };
    let known = before.outlines.entry(place).or_default();
    let count = numbers.place(about::CORNERS, Outline::MOST_VERTICES + 1, given.len());
    if count > Outline::MOST_VERTICES {
        return Err("an outline of too many corners");
    }
    let mut corners: Vec<[i32; 2]> = Vec::with_capacity(count);
    let alike = known.len() == count;
    for at in 0..count {
        let corner = given.get(at).copied().unwrap_or_default();
        let was = known.get(at).copied().filter(|_| alike);
        let from = was.or_else(|| corners.last().copied()).unwrap_or_default();
        if alike && numbers.flag(about::STAYS, corner == from) {
            corners.push(from);
            continue;
        }
        let mut moved = [0; 2];
        for (axis, part) in moved.iter_mut().enumerate() {
            let by = i64::from(corner[axis]) - i64::from(from[axis]);
            let by = numbers.signed(about::CORNER, by).clamp(-10_000, 10_000);
            *part = from[axis].saturating_add(i32::try_from(by).unwrap_or(0));
        }
        corners.push(moved);
    }
    let outline = Outline::new(corners.clone()).map_err(|_| "corners that are no outline")?;
    // An outline is kept in one direction: another one was never written.
    if outline.tenths() != corners {
        return Err("an outline that goes the wrong way about");
    }
    *known = corners;
    Ok(outline)
}

fn exposed<B: Bits>(numbers: &mut Numbers<B>, given: Option<&Event>) -> Result<Event, Garbled> {
    let given = if let Some(Event::Expose(given)) = given { *given } else { Exposure::PARALLEL };
    let wrong = "a film that cannot be taken so";
    let mut small =
        |part: i8| i8::try_from(numbers.signed(about::AIM, i64::from(part))).map_err(|_| wrong);
    let (vertical, horizontal) = (small(given.vertical)?, small(given.horizontal)?);
    let mut whole =
        |part: u8| u8::try_from(numbers.size(about::AIM, u64::from(part))).map_err(|_| wrong);
    let (lean, size) = (whole(given.lean)?, whole(given.size)?);
    let found = Exposure { vertical, horizontal, lean, size };
    if found.is_possible() { Ok(Event::Expose(found)) } else { Err(wrong) }
}

fn sounded<B: Bits>(numbers: &mut Numbers<B>, given: Option<&Event>) -> Result<Event, Garbled> {
    let given = if let Some(Event::Sound(given)) = given {
        *given
    } else {
        Spot { wall: Wall::Facial, tenths: 0 }
    };
    let oral = numbers.flag(about::WALL, given.wall == Wall::Oral);
    let tenths = numbers.signed(about::ALONG, i64::from(given.tenths));
    let tenths = i8::try_from(tenths).map_err(|_| "a place that no probe reaches")?;
    Ok(Event::Sound(Spot { wall: if oral { Wall::Oral } else { Wall::Facial }, tenths }))
}

fn noted<B: Bits>(numbers: &mut Numbers<B>, given: Option<&Event>) -> Result<Event, Garbled> {
    let (finding, read) = match given {
        Some(Event::Note(finding, read)) => (Some(*finding), *read),
        _ => (None, None),
    };
    let place = Finding::ALL.iter().position(|one| Some(*one) == finding).unwrap_or(0);
    let place = numbers.place(about::FINDING, Finding::ALL.len(), place);
    let finding = *Finding::ALL.get(place).ok_or("a finding that does not exist")?;
    if numbers.flag(about::TAKEN_BACK, given.is_some() && read.is_none()) {
        return Ok(Event::Note(finding, None));
    }
    let count = match finding.answers() {
        Answers::OneOf(list) => list.len(),
        Answers::UpTo(most) => usize::from(most) + 1,
    };
    let subject = about::READ + u16::try_from(place).unwrap_or(0);
    let read = numbers.place(subject, count, usize::from(read.unwrap_or(0)));
    let read = Noted::try_from(read).ok().filter(|read| finding.allows(*read));
    read.map(|read| Event::Note(finding, Some(read))).ok_or("a reading that is not asked for")
}

fn disputed<B: Bits>(
    numbers: &mut Numbers<B>,
    before: &mut Before,
    given: Option<&Event>,
) -> Result<Event, Garbled> {
    let (rule, reason) = match given {
        Some(Event::Dispute(rule, reason)) => (rule.as_bytes(), reason.as_bytes()),
        _ => (&[][..], &[][..]),
    };
    before.rule = numbers.bytes(about::RULE, &before.rule, rule, LONGEST_ID);
    // Four bytes at most to a character.
    let reason = numbers.bytes(about::REASON, &[], reason, 4 * LONGEST_REASON);
    Ok(Event::Dispute(text(before.rule.clone())?, text(reason)?))
}

fn sure<B: Bits>(numbers: &mut Numbers<B>, given: Option<&Event>) -> Result<Event, Garbled> {
    let (given, percent) = match given {
        Some(Event::Sure(step, percent)) => (Some(*step), *percent),
        _ => (None, None),
    };
    let step = step(numbers, given)?;
    // Past the five answers stands none.
    let place = SURENESS.iter().position(|one| Some(*one) == percent).unwrap_or(SURENESS.len());
    let place = numbers.place(about::SURE, SURENESS.len() + 1, place);
    match SURENESS.get(place) {
        None if place > SURENESS.len() => Err("an answer that is none of the five"),
        percent => Ok(Event::Sure(step, percent.copied())),
    }
}

/// Bytes as text.
pub fn text(bytes: Vec<u8>) -> Result<String, Garbled> {
    String::from_utf8(bytes).map_err(|_| "a text that is none")
}
