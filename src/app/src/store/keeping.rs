//! What the room makes of what keeps things tells it.

use super::Room;
use crate::bench::{Bench, Restored};
use crate::keep::Kept;
use crate::keep::key::Key;
use crate::keep::told::Told;
use crate::keep::trouble::Trouble;
use crate::route::Route;
use std::rc::Rc;

impl Room {
    /// The room after that was told.
    pub(super) fn told(&self, told: Told) -> Self {
        match told {
            Told::Known(kept) => self.keeping(kept),
            Told::NoAnswer if self.kept == Kept::Opening => {
                self.keeping(Kept::Without(Trouble::Silent))
            }
            Told::NoAnswer => self.clone(),
            Told::AskAgain => {
                Self { kept: Kept::Opening, asked_to_keep: self.asked_to_keep + 1, ..self.clone() }
            }
            Told::Begun(serial, head) => {
                self.with_that_bench(serial, |bench| bench.head = Some(head))
            }
            Told::Stored(serial, count) => self.with_that_bench(serial, |bench| bench.keep(count)),
            Told::NotStored(trouble) => self.keeping(Kept::Without(trouble)),
            Told::Fetched(key, fetched) => {
                let mut room = self.clone();
                room.fetched(&key, fetched);
                room
            }
            Told::Elsewhere { serial, there, kept } => {
                self.with_that_bench(serial, |bench| bench.follow(&there.session, kept))
            }
            Told::Erased { here } => {
                let mut room = self.with_bench(|bench| {
                    bench.kept = 0;
                    bench.told = Some("Another tab erased everything that was kept. This attempt goes on, and is kept again with the next thing you do.".to_owned());
                });
                room.bench = room.bench.filter(|_| !here);
                Self { kept: Kept::Here(Rc::default()), ..room }
            }
        }
    }

    /// The room once it is known whether anything is kept.
    pub(super) fn keeping(&self, kept: Kept) -> Self {
        let mut room = self.clone();
        if matches!(kept, Kept::Without(_)) && room.bench.is_some() {
            room = room.with_bench(Bench::move_on);
        }
        room.kept = kept;
        // A case that nothing was done in yet goes on where it was left, wherever that was.
        let untouched = room.bench.as_ref().filter(|bench| bench.latest().events().is_empty());
        if let Some(asked) = untouched
            .filter(|bench| bench.head.is_none() && !bench.anew)
            .map(|bench| bench.asked.clone())
            && let Some(key) = room.kept.latest_at(&Route::Case(asked).fragment())
        {
            (room.bench, room.fetching) = (None, Some(key));
        }
        room.once_more()
    }

    /// A kept attempt comes to the bench as it was left.
    fn put_back(&mut self, restored: &Restored) {
        let asked = match &self.route {
            Route::Case(asked) => asked.clone(),
            _ => restored.asked.clone(),
        };
        let bench = self.put(asked, restored.session.clone());
        bench.kept = bench.session.events().len();
        bench.head = Some(Rc::new(restored.head.clone()));
        bench.told = bench.session.due().filter(|_| bench.kept > 0).map(|due| {
            format!("You had begun this case. It goes on where you left it: at {}.", due.label())
        });
    }

    /// What was fetched, where it is still wanted.
    fn fetched(&mut self, key: &Key, fetched: Result<Rc<Restored>, String>) {
        if self.fetching.as_ref() != Some(key) {
            return;
        }
        self.fetching = None;
        match (fetched, self.route.clone()) {
            (Ok(restored), _) => self.put_back(&restored),
            // What cannot be read stays as it is; the case can be done all the same.
            (Err(why), Route::Case(asked)) => {
                self.bring_anew(asked);
                if let Some(bench) = &mut self.bench {
                    Rc::make_mut(bench).told = Some(format!(
                        "An attempt at this case is kept and cannot be opened: {why}. It stays as it is; this is a new one."
                    ));
                }
            }
            (Err(why), _) => {
                self.trouble = Some(format!(
                    "This attempt is kept and cannot be opened: {why}. It stays as it is."
                ))
            }
        }
    }

    /// The room with a change to that case, if it is still on the bench.
    fn with_that_bench(&self, serial: u32, change: impl FnOnce(&mut Bench)) -> Self {
        if self.bench.as_ref().is_some_and(|bench| bench.serial == serial) {
            self.with_bench(change)
        } else {
            self.clone()
        }
    }
}
