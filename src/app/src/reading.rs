//! Reads what was handed in, file after file and attempt after attempt, and lets the page answer in
//! between.

use crate::components::hold::Held;
use crate::effects::Breath;
use crate::files::{bytes_of, inflate, path_of};
use learning::class::{Aside, Class, Drawer, Handed, Taken, told};
use learning::file::{self, LONGEST_FILE};
use learning::handing::unzip::{Bytes, LONGEST_ARCHIVE, unzip};
use learning::record::Record;
use serde::de::IgnoredAny;
use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::{Rc, Weak};
use web_sys::File;

/// The page is told how far it has come no more often than this, milliseconds: a reader of screens says
/// each.
const BETWEEN: f64 = 700.0;
/// What a line says of a file that was set aside has no more letters than this.
const LONGEST_LINE: usize = 300;

/// A class as it is read, one for the page.
#[derive(Default)]
pub struct Reading {
    /// Everything that was handed in.
    pub class: Rc<RefCell<Class>>,
    /// One line for each thing that was set aside.
    pub aside: RefCell<Vec<String>>,
    line: RefCell<VecDeque<File>>,
    drawer: RefCell<Drawer>,
    /// Files that were read, and files that there are.
    files: Cell<[usize; 2]>,
    busy: Cell<bool>,
    stop: Cell<bool>,
}

/// What the page shows of it.
#[derive(Clone, Default)]
pub struct Shown {
    /// How far it has come, in words.
    pub says: String,
    /// Whether files are being read.
    pub busy: bool,
    /// How often it has come to an end: what was read so far is shown then.
    pub ended: u32,
}

impl Reading {
    /// Puts files in line, and has them read.
    pub fn take(self: &Rc<Self>, files: Vec<File>, shown: &Held<Shown>) {
        self.more(files.len());
        self.line.borrow_mut().extend(files);
        if !self.busy.replace(true) {
            self.stop.set(false);
            wasm_bindgen_futures::spawn_local(self.clone().work(shown.clone()));
        }
    }

    fn more(&self, files: usize) {
        let [done, all] = self.files.get();
        self.files.set([done, all + files]);
    }

    fn one_done(&self) {
        let [done, all] = self.files.get();
        self.files.set([done + 1, all]);
    }

    /// Leaves what is still in line.
    pub fn stop(&self) {
        self.stop.set(true);
    }

    async fn work(self: Rc<Self>, shown: Held<Shown>) {
        let page = Rc::downgrade(&self);
        let mut pace = Pace { breath: Breath::now(), told: 0.0, page };
        while let Some(file) = self.next() {
            self.breathe(&mut pace, &shown).await;
            self.file(&file, &mut pace, &shown).await;
            self.one_done();
        }
        self.busy.set(false);
        let ended = shown.ended + 1;
        shown.set(Shown { says: self.says(), busy: false, ended });
    }

    /// The file that comes next; none once it is told to stop, and the rest is left then.
    fn next(&self) -> Option<File> {
        let mut line = self.line.borrow_mut();
        if self.stop.get() {
            let [done, _] = self.files.get();
            self.files.set([done, done]);
            line.clear();
        }
        line.pop_front()
    }

    fn says(&self) -> String {
        let [done, all] = self.files.get();
        let attempts = told::counted(self.class.borrow().attempts(), "attempt");
        let files = match (self.busy.get(), self.stop.get()) {
            (true, _) => format!("Reading: {done} of {all} files"),
            (false, true) => format!("Stopped after {}", told::counted(done, "file")),
            (false, false) => told::counted(done, "file") + " read",
        };
        let aside = match self.aside.borrow().len() {
            0 => String::new(),
            count => format!(", {} set aside", told::counted(count, "thing")),
        };
        format!("{files}, {attempts}{aside}.")
    }

    /// Gives the page its turn where it is due, and says how far it has come.
    async fn breathe(&self, pace: &mut Pace, shown: &Held<Shown>) {
        let now = js_sys::Date::now();
        if now - pace.told > BETWEEN {
            pace.told = now;
            shown.set(Shown { says: self.says(), busy: true, ended: shown.ended });
        }
        pace.breath.glance().await;
        // Whoever has left the page wants no report.
        if pace.page.strong_count() < 2 {
            self.stop();
        }
    }

    /// Whether nothing was read, and nothing set aside.
    pub fn is_empty(&self) -> bool {
        self.class.borrow().attempts() == 0 && self.aside.borrow().is_empty()
    }

    /// A line for what is no part of the report. It may repeat what a file says, which may be long.
    fn put_aside(&self, name: &str, why: &str) {
        let why: String = why.chars().take(LONGEST_LINE).collect();
        self.aside.borrow_mut().push(format!("{name}: {why}"));
    }

    async fn file(&self, file: &File, pace: &mut Pace, shown: &Held<Shown>) {
        let (name, path) = (told::plain(&file.name()), path_of(file));
        let ending = name.rsplit('.').next().unwrap_or_default().to_ascii_lowercase();
        let longest = match ending.as_str() {
            "json" => LONGEST_FILE,
            "zip" => LONGEST_ARCHIVE,
            _ => {
                return self.put_aside(&name, "found another kind of file, expected .json or .zip");
            }
        };
        match bytes_of(file, longest).await {
            Ok(bytes) if ending == "zip" => self.archive(&name, &bytes, pace, shown).await,
            Ok(bytes) => self.attempts((&name, &path), bytes, pace, shown).await,
            Err(why) => self.put_aside(&name, &why),
        }
    }

    async fn archive(&self, archive: &str, bytes: &[u8], pace: &mut Pace, shown: &Held<Shown>) {
        let files = match unzip(bytes) {
            Ok(files) => files,
            Err(why) => return self.put_aside(archive, &why.to_string()),
        };
        // What is in it is told like files by themselves.
        self.more(files.len().saturating_sub(1));
        for (place, file) in files.into_iter().enumerate() {
            if self.stop.get() {
                return;
            }
            if place > 0 {
                self.one_done();
            }
            self.breathe(pace, shown).await;
            let name = format!("{} in {archive}", told::plain(&file.name));
            if !file.name.to_ascii_lowercase().ends_with(".json") {
                self.put_aside(&name, "found another kind of file, expected .json");
                continue;
            }
            match file.packed.map_err(|why| why.to_string()) {
                Ok(packed) => match unpacked(&packed).await {
                    Ok(text) => self.attempts((&name, &file.name), text, pace, shown).await,
                    Err(why) => self.put_aside(&name, &why),
                },
                Err(why) => self.put_aside(&name, &why),
            }
        }
    }

    /// Reads a file of attempts and does each again.
    async fn attempts(
        &self,
        (name, called): (&str, &str),
        bytes: Vec<u8>,
        pace: &mut Pace,
        shown: &Held<Shown>,
    ) {
        let Ok(text) = String::from_utf8(bytes) else {
            return self.put_aside(name, "found no text, expected a file of attempts");
        };
        let mut opened = match file::open(&text) {
            Ok(opened) => opened,
            Err(why) => return self.put_aside(name, &why.to_string()),
        };
        let code = opened.learner.take().unwrap_or_else(|| told::code_of(called));
        while let Some(next) = opened.following::<IgnoredAny>() {
            self.breathe(pace, shown).await;
            if self.stop.get() {
                return;
            }
            let record = match next {
                Ok(record) => record,
                Err(faults) => {
                    faults.iter().for_each(|fault| self.put_aside(name, &fault.to_string()));
                    continue;
                }
            };
            let id = record.head.id.clone();
            let order = (record.head.begun.unwrap_or(u64::MAX), record.head.number);
            let handed = again(record, &mut self.drawer.borrow_mut());
            match handed {
                Ok(handed) => self.hand_in(name, &code, handed, order),
                Err(why) => self.put_aside(name, &format!("{id}: {why}")),
            }
        }
    }

    fn hand_in(&self, name: &str, code: &str, handed: Handed, order: (u64, u32)) {
        let id = handed.id.clone();
        if let Taken::Of(other) = self.class.borrow_mut().take(code, handed, order) {
            self.put_aside(name, &told::of_another(&id, &other));
        }
    }
}

/// When the page last had its turn, and when it was last told.
struct Pace {
    breath: Breath,
    told: f64,
    /// By this it is known whether anybody but the reading itself still holds it.
    page: Weak<Reading>,
}

/// An attempt, done again; only its address tells this page what its case is.
fn again(record: Record<IgnoredAny>, drawer: &mut Drawer) -> Result<Handed, Aside> {
    Handed::of(record, &mut |address| drawer.draw(address), &|_| Err(Aside::Elsewhere))
}

async fn unpacked(packed: &Bytes<'_>) -> Result<Vec<u8>, String> {
    let bytes = match packed.deflated {
        true => inflate("deflate-raw", packed.packed, packed.size).await,
        false => Some(packed.packed.to_vec()),
    };
    let bytes = bytes.ok_or("cannot be unpacked: it is not what the zip file says it is")?;
    packed.check(&bytes).map_err(|why| why.to_string())?;
    Ok(bytes)
}
