//! Why the browser keeps nothing, in plain words.

use core::fmt;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::DomException;

/// What went wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Trouble {
    /// The browser lets this page keep nothing.
    Forbidden,
    /// There is no room left.
    Full,
    /// A newer version of the room has changed the database.
    Newer,
    /// Another tab has written there.
    Taken,
    /// What keeps things could not be fetched.
    NotFetched,
    /// The browser does not answer.
    Silent,
    /// Something else, by the name that the browser gives it.
    Other(String),
}

impl Trouble {
    /// From what the database's crate says.
    pub fn of(error: idb::Error) -> Self {
        use idb::Error::{
            AddFailed, ClearFailed, DeleteFailed, DomException, IndexedDbNotFound,
            IndexedDbOpenFailed, ObjectStoreNotFound, TransactionOpenFailed, UpdateFailed,
        };
        match error {
            DomException(error) => Self::from_js(error.into()),
            AddFailed(why)
            | ClearFailed(why)
            | DeleteFailed(why)
            | IndexedDbOpenFailed(why)
            | ObjectStoreNotFound(why)
            | UpdateFailed(why)
            | TransactionOpenFailed(why) => Self::from_js(why),
            IndexedDbNotFound(_) => Self::Forbidden,
            _ => Self::Other("it does not say why".to_owned()),
        }
    }

    /// From what the browser says.
    pub fn from_js(why: JsValue) -> Self {
        let name = why.dyn_ref::<DomException>().map(DomException::name);
        match name.as_deref() {
            Some("QuotaExceededError") => Self::Full,
            Some("ConstraintError") => Self::Taken,
            Some("VersionError") => Self::Newer,
            // A database that another tab has closed for a newer version cannot be asked any more.
            Some("InvalidStateError") => Self::Newer,
            Some("SecurityError") => Self::Forbidden,
            Some(name) => Self::Other(name.to_owned()),
            None => Self::Other("it does not say why".to_owned()),
        }
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Forbidden => f.write_str("This browser lets the room keep nothing."),
            Self::Full => f.write_str("This browser has no space left for what you do here."),
            Self::Newer => f.write_str(
                "A newer version of the room keeps your attempts in this browser, and this one leaves them as they are: load the page again.",
            ),
            Self::NotFetched => f.write_str("What keeps your attempts in this browser could not be fetched."),
            Self::Silent => f.write_str("This browser does not say whether it keeps what you do here."),
            Self::Taken => f.write_str("Another tab was first."),
            Self::Other(name) => write!(f, "This browser refused to keep what you do here ({name})."),
        }
    }
}
