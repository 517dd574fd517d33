//! Everything that was handed in, read and done again on all cores, in an order that depends on nothing
//! but the names.

use super::sources::{self, Source};
use crate::{Fault, Streams};
use learning::class::{Class, Drawer, Handed, Taken, told, written_out};
use learning::file;
use learning::record::Record;
use serde_json::value::RawValue;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// So many files are read before the next are: memory does not grow with their number.
const AT_ONCE: usize = 512;
/// What takes longer than this is told of, and again each time.
const PATIENCE: Duration = Duration::from_secs(1);

/// A class, and what is not part of it.
#[derive(Debug, Default)]
pub struct Reading {
    pub class: Class,
    /// One line for each thing that was set aside.
    pub aside: Vec<String>,
}

/// What one file came to.
#[derive(Default)]
struct OfFile {
    code: String,
    attempts: Vec<(Handed, (u64, u32))>,
    aside: Vec<String>,
}

impl Reading {
    /// Of everything below the paths, taken into this class.
    pub fn into(class: Class, paths: &[PathBuf], streams: &mut Streams<'_>) -> Result<Self, Fault> {
        let mut read = Self { class, aside: Vec::new() };
        let sources = sources::all(paths, &mut read.aside)?;
        let mut told = Instant::now();
        for (batch, some) in sources.chunks(AT_ONCE).enumerate() {
            for (of_file, source) in all_of(some).into_iter().zip(some) {
                read.take(of_file, source);
            }
            if told.elapsed() > PATIENCE {
                told = Instant::now();
                let done = (batch * AT_ONCE + some.len()).min(sources.len());
                streams.say(&bar(done, sources.len(), read.class.attempts()));
            }
        }
        Ok(read)
    }

    fn take(&mut self, of_file: OfFile, source: &Source) {
        let OfFile { code, attempts, aside } = of_file;
        self.aside.extend(aside.into_iter().map(|why| format!("{}: {why}", source.name())));
        for (handed, order) in attempts {
            let id = handed.id.clone();
            if let Taken::Of(other) = self.class.take(&code, handed, order) {
                let why = told::of_another(&id, &other);
                self.aside.push(format!("{}: {why}", source.name()));
            }
        }
    }
}

/// How far it has come.
fn bar(done: usize, all: usize, attempts: usize) -> String {
    let filled = 20 * done / all.max(1);
    format!(
        "[{}{}] {done} of {all} files, {attempts} attempts",
        "#".repeat(filled),
        "-".repeat(20 - filled)
    )
}

/// What each of some files comes to, on all cores.
fn all_of(sources: &[Source]) -> Vec<OfFile> {
    let done: Vec<Mutex<OfFile>> = sources.iter().map(|_| Mutex::default()).collect();
    let next = AtomicUsize::new(0);
    let workers = thread::available_parallelism().map_or(1, usize::from).min(sources.len());
    thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                let mut drawer = Drawer::default();
                loop {
                    let place = next.fetch_add(1, Ordering::Relaxed);
                    let (Some(source), Some(slot)) = (sources.get(place), done.get(place)) else {
                        return;
                    };
                    let of_file = one(source, &mut drawer);
                    // Nobody panics while holding it.
                    if let Ok(mut slot) = slot.lock() {
                        *slot = of_file;
                    }
                }
            });
        }
    });
    done.into_iter().map(|slot| slot.into_inner().unwrap_or_default()).collect()
}

fn one(source: &Source, drawer: &mut Drawer) -> OfFile {
    let mut of_file = OfFile { code: source.code(), ..OfFile::default() };
    let text = match source.text() {
        Ok(text) => text,
        Err(why) => {
            of_file.aside.push(why);
            return of_file;
        }
    };
    let read = file::read::<Box<RawValue>>(&text);
    of_file.code = read.learner.unwrap_or(of_file.code);
    of_file.aside.extend(read.faults.iter().map(ToString::to_string));
    for record in read.records {
        let id = record.head.id.clone();
        let order = (record.head.begun.unwrap_or(u64::MAX), record.head.number);
        match again(record, drawer) {
            Ok(handed) => of_file.attempts.push((handed, order)),
            Err(why) => of_file.aside.push(format!("{id}: {why}")),
        }
    }
    of_file
}

/// An attempt, done again. A case that somebody wrote may be like none that was ever tried.
fn again(record: Record<Box<RawValue>>, drawer: &mut Drawer) -> Result<Handed, String> {
    let mut draw = |address| drawer.draw(address);
    catch_unwind(AssertUnwindSafe(|| Handed::of(record, &mut draw, &written_out)))
        .map_err(|_| {
            "cannot be done again: its case is like none that this version knows".to_owned()
        })?
        .map_err(|why| why.to_string())
}
