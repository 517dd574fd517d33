//! The host of a package: its interface, found and called as the two editions of SCORM have it. A host
//! is somebody else's program: whatever it throws or answers, the room goes on.

use crate::effects;
use js_sys::{Array, Function, Object, Reflect};
use learning::handing::scorm::Edition;
use wasm_bindgen::{JsCast, JsValue};

/// No walk from frame to frame is longer.
const MOST_FRAMES: usize = 50;

/// A host.
pub struct Host {
    interface: JsValue,
    edition: Edition,
}

impl Host {
    /// The host, where one answers. The package's own edition is looked for first: a host that speaks
    /// both expects that one.
    pub fn find() -> Option<Self> {
        let both = match effects::entry("data-edition").as_deref() {
            Some("1.2") => [Edition::Older, Edition::Newer],
            _ => [Edition::Newer, Edition::Older],
        };
        let window = JsValue::from(web_sys::window()?);
        let opener = |of: &JsValue| part(of, "opener");
        let top = part(&window, "top").and_then(|top| opener(&top));
        let starts = [Some(window.clone()), opener(&window), top];
        both.into_iter().find_map(|edition| {
            let found = starts.iter().flatten().find_map(|start| walk(start, edition));
            found.map(|interface| Self { interface, edition })
        })
    }

    /// Its edition.
    pub const fn edition(&self) -> Edition {
        self.edition
    }

    /// Begins.
    ///
    /// # Errors
    /// A sentence.
    pub fn begin(&self) -> Result<(), String> {
        self.ask("Initialize", &[""]).map_err(|why| {
            format!("The host of this package did not begin ({why}): nothing is handed in, and practice goes on.")
        })
    }

    /// What the host says of the learner and the attempt, by the part of the data model that both
    /// editions have; empty where it says nothing.
    pub fn get(&self, what: &str) -> String {
        let name = match (self.edition, what) {
            (_, "suspend_data") => "cmi.suspend_data",
            (Edition::Older, "id") => "cmi.core.student_id",
            (Edition::Older, "name") => "cmi.core.student_name",
            (Edition::Older, _) => "cmi.core.lesson_mode",
            (Edition::Newer, "id") => "cmi.learner_id",
            (Edition::Newer, "name") => "cmi.learner_name",
            (Edition::Newer, _) => "cmi.mode",
        };
        self.call("GetValue", &[name]).and_then(|said| said.as_string()).unwrap_or_default()
    }

    /// Sets a value.
    ///
    /// # Errors
    /// What is wrong, as the host says it.
    pub fn set(&self, name: &str, value: &str) -> Result<(), String> {
        self.ask("SetValue", &[name, value]).map_err(|why| format!("{name}: {why}"))
    }

    /// Has what was set kept.
    ///
    /// # Errors
    /// What is wrong, as the host says it.
    pub fn commit(&self) -> Result<(), String> {
        self.ask("Commit", &[""])
    }

    /// Ends.
    pub fn finish(&self) {
        let name = if self.edition == Edition::Older { "Finish" } else { "Terminate" };
        let _ = self.call(name, &[""]);
    }

    /// Calls what answers whether it was done.
    fn ask(&self, name: &str, with: &[&str]) -> Result<(), String> {
        let answer = self.call(name, with);
        // Some hosts answer with a truth, not with its name.
        let yes =
            |said: &JsValue| *said == JsValue::TRUE || said.as_string().as_deref() == Some("true");
        if answer.as_ref().is_some_and(yes) {
            return Ok(());
        }
        let code = self
            .call("GetLastError", &[])
            .map(|code| String::from(code.unchecked_into::<js_sys::JsString>()));
        Err(format!(
            "error {}",
            code.filter(|code| !code.is_empty()).as_deref().unwrap_or("unknown")
        ))
    }

    /// Calls; nothing where the host throws or has no such call.
    fn call(&self, name: &str, with: &[&str]) -> Option<JsValue> {
        let call: Function =
            part_of(&self.interface, &called(self.edition, name))?.dyn_into().ok()?;
        let with: Array = with.iter().map(|one| JsValue::from(*one)).collect();
        call.apply(&self.interface, &with).ok()
    }
}

/// The name of a call in an edition.
fn called(edition: Edition, name: &str) -> String {
    if edition == Edition::Older { format!("LMS{name}") } else { name.to_owned() }
}

/// The interface in a window or in one that it stands in.
fn walk(start: &JsValue, edition: Edition) -> Option<JsValue> {
    let name = if edition == Edition::Older { "API" } else { "API_1484_11" };
    let mut at = start.clone();
    for _ in 0..MOST_FRAMES {
        // An element or a frame may bear that name by chance.
        let found = part(&at, name).filter(|found| {
            part_of(found, &called(edition, "Initialize")).is_some_and(|call| call.is_function())
        });
        if found.is_some() {
            return found;
        }
        let parent = part(&at, "parent")?;
        if Object::is(&parent, &at) {
            return None;
        }
        at = parent;
    }
    None
}

/// An object that another holds; a window of another origin holds none that we may see.
fn part(of: &JsValue, name: &str) -> Option<JsValue> {
    part_of(of, name).filter(JsValue::is_object)
}

fn part_of(of: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(of, &name.into()).ok()
}
