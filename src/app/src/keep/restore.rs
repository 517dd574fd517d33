//! A kept attempt as texts, and the attempt again.

use crate::bench::Restored;
use crate::route::{CaseRoute, Route};
use engine::cases;
use learning::past::replay;
use learning::record::{Done, Head, RECORD_FORMAT};
use serde::Deserialize;
use serde::de::DeserializeOwned;

/// What every head says, of whatever version.
#[derive(Deserialize)]
struct Version {
    format: u32,
}

/// Reads a head.
///
/// # Errors
/// A sentence, for one of a newer version or one that is no head.
pub fn head(text: &str) -> Result<Head, String> {
    let Version { format } = read(text)?;
    if format > RECORD_FORMAT {
        return Err(format!(
            "it was written by a newer version of this room (found format {format}, expected at most {RECORD_FORMAT})"
        ));
    }
    read(text)
}

/// Reads what was done.
///
/// # Errors
/// A sentence that names the place.
pub fn events(texts: &[String]) -> Result<Vec<Done>, String> {
    let one = |(place, text): (usize, &String)| {
        read(text).map_err(|why| format!("event {}: {why}", place + 1))
    };
    texts.iter().enumerate().map(one).collect()
}

fn read<T: DeserializeOwned>(text: &str) -> Result<T, String> {
    serde_json::from_str(text).map_err(|why| why.to_string())
}

/// The attempt as it stands.
///
/// # Errors
/// A sentence that says what cannot be read or replayed.
pub fn restore(head_text: &str, texts: &[String]) -> Result<Restored, String> {
    let head = head(head_text)?;
    let address = head.address.ok_or("its case has no address")?;
    let case = cases::at(address).map_err(|why| why.to_string())?;
    let session = replay(&head, &events(texts)?, case).map_err(|why| why.to_string())?;
    let asked = match Route::read(&head.at) {
        Route::Case(asked) => asked,
        _ => CaseRoute::study(crate::route::From::Address(address)),
    };
    Ok(Restored { head, asked, session })
}
