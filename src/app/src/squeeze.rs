//! Texts made small enough for an address, by the browser's own compressor: deflate in the zlib format
//! (RFC 1950), spelt in letters that an address keeps (RFC 4648, section 5).

use crate::files::{inflate, through};
use crate::seal::{seal, unseal};
use js_sys::Uint8Array;
use learning::handing::compact::letters;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

/// The longest link that is opened, in letters, and the longest text that may come of letters, bytes: two
/// hundred cases with their titles take some twenty kilobytes.
pub const LONGEST: usize = 12_000;
const LONGEST_TEXT: usize = 1 << 20;
/// What the browser calls deflate in the zlib format.
const FORMAT: &str = "deflate";

/// A text in letters; where there is a code it only opens with that.
///
/// # Errors
/// A sentence, where this browser has no compressor, or seals nothing.
pub async fn squeeze(text: &str, code: &str) -> Result<String, String> {
    let bytes = squeezed(text).await.map_err(|_| {
        "this browser has no compressor, expected one of the last three years: hand the set out as a file"
    })?;
    if code.is_empty() {
        return Ok(letters::spell(&bytes));
    }
    let sealed = seal(&bytes, code).await.ok_or(
        "this browser seals nothing on a page that came without encryption: open the room over https, or leave out the code",
    )?;
    Ok(letters::spell(&sealed))
}

async fn squeezed(text: &str) -> Result<Vec<u8>, JsValue> {
    let plain = Response::new_with_opt_str(Some(text))?.body().ok_or(JsValue::UNDEFINED)?;
    let small = through("CompressionStream", FORMAT, &plain)?;
    let small = Response::new_with_opt_readable_stream(Some(&small))?;
    let bytes = JsFuture::from(small.array_buffer()?).await?;
    Ok(Uint8Array::new(&bytes).to_vec())
}

/// The text of letters, which open with this code if with any.
///
/// # Errors
/// A sentence: other letters, cut off, not ours, or another code.
pub async fn unsqueeze(spelt: &str, code: &str) -> Result<String, String> {
    let mut bytes = letters::read(spelt.as_bytes()).ok_or(CUT_OFF)?;
    if !code.is_empty() {
        bytes = unseal(&bytes, code).await.ok_or(
            "that code does not open it: ask your instructor, and open the room over https",
        )?;
    }
    let text = inflate(FORMAT, &bytes, LONGEST_TEXT).await.ok_or(CUT_OFF)?;
    String::from_utf8(text).map_err(|_| CUT_OFF.to_owned())
}

const CUT_OFF: &str =
    "the link is cut off or changed: expected one that was copied whole, ask for it again";
