//! The sink of a package: writes what is new, commits it after every carried-out step, and finishes
//! when the page goes.

use super::host::Host;
use core::cell::{Cell, RefCell};
use learning::handing::outcome::Outcome;
use learning::handing::scorm::{Edition, Write, news, writes};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// A host that is told.
pub struct Package {
    host: Host,
    /// What it has taken.
    taken: RefCell<Vec<Write>>,
    /// What it was told last.
    last: RefCell<Option<Outcome>>,
    /// When that was.
    at: Cell<u64>,
    /// Whether it was told that this is the end: it is begun with anew if the page comes back.
    is_finished: Cell<bool>,
}

impl Package {
    /// Tells this host, which has begun.
    pub fn new(host: Host) -> Rc<Self> {
        let package = Rc::new(Self {
            host,
            taken: RefCell::default(),
            last: RefCell::default(),
            at: Cell::default(),
            is_finished: Cell::default(),
        });
        let leaving = {
            let package = package.clone();
            Closure::<dyn FnMut()>::new(move || package.finish())
        };
        if let Some(window) = web_sys::window() {
            let _ = window
                .add_event_listener_with_callback("pagehide", leaving.as_ref().unchecked_ref());
        }
        // It is told for as long as the page stands.
        leaving.forget();
        package
    }

    /// The host's edition.
    pub const fn edition(&self) -> Edition {
        self.host.edition()
    }

    /// Tells what is new and has it kept.
    ///
    /// # Errors
    /// A sentence with the first thing that is refused; it is told again the next time.
    pub fn tell(&self, outcome: Outcome) -> Result<(), String> {
        if self.is_finished.get() {
            self.host.begin()?;
            self.is_finished.set(false);
            self.taken.borrow_mut().clear();
        }
        let now = writes(&outcome, self.edition()).map_err(|why| refused(&why.to_string()));
        self.at.set(crate::effects::now());
        self.last.replace(Some(outcome));
        let set = self.set(&now?);
        // What was taken before a refusal is kept all the same.
        let kept = self.host.commit();
        set.and(kept).map_err(|why| refused(&why))
    }

    fn set(&self, now: &[Write]) -> Result<(), String> {
        let mut taken = self.taken.borrow_mut();
        for write in news(&taken, now) {
            self.host.set(&write.0, &write.1)?;
            taken.retain(|(name, _)| *name != write.0);
            taken.push(write);
        }
        Ok(())
    }

    /// The page goes: the time until now, and the end.
    fn finish(&self) {
        if self.is_finished.replace(true) {
            return;
        }
        if let Some(mut outcome) = self.last.borrow_mut().take() {
            outcome.session += crate::effects::now().saturating_sub(self.at.get());
            if let Ok(now) = writes(&outcome, self.edition()) {
                let _ = self.set(&now);
            }
        }
        // To finish is to commit, in the one way that a page that goes is still allowed.
        self.host.finish();
    }
}

fn refused(why: &str) -> String {
    format!(
        "The host of this package refused what was handed in ({why}). Practice goes on, and the next step hands it in again."
    )
}
