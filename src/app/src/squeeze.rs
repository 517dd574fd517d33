//! Texts made small enough for an address, by the browser's own compressor: deflate in the zlib format
//! (RFC 1950), spelt in letters that an address keeps (RFC 4648, section 5).

use js_sys::{Array, Function, Reflect, Uint8Array};
use learning::handing::compact::letters;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{ReadableWritablePair, Response};

/// The longest text in letters that is opened: some kilobytes hold two hundred cases, and a text that
/// deflates a thousandfold stays small.
pub const LONGEST: usize = 12_000;

/// A text in letters.
///
/// # Errors
/// A sentence, where this browser has no compressor.
pub async fn squeeze(text: &str) -> Result<String, String> {
    let plain = Response::new_with_opt_str(Some(text)).map_err(no_compressor)?;
    let small = through("CompressionStream", &plain).map_err(no_compressor)?;
    let bytes = small.array_buffer().map_err(no_compressor)?;
    let bytes = JsFuture::from(bytes).await.map_err(no_compressor)?;
    Ok(letters::spell(&Uint8Array::new(&bytes).to_vec()))
}

/// The text of letters.
///
/// # Errors
/// A sentence: too long, other letters, cut off, or not ours.
pub async fn unsqueeze(spelt: &str) -> Result<String, String> {
    if spelt.len() > LONGEST {
        return Err(format!(
            "found a link of {} characters, expected at most {LONGEST}",
            spelt.len()
        ));
    }
    let cut_off = |_: JsValue| CUT_OFF.to_owned();
    let bytes = letters::read(spelt.as_bytes()).ok_or(CUT_OFF)?;
    let bytes = Uint8Array::from(bytes.as_slice());
    let small = Response::new_with_opt_buffer_source(Some(&bytes)).map_err(no_compressor)?;
    let plain = through("DecompressionStream", &small).map_err(no_compressor)?;
    let text = JsFuture::from(plain.text().map_err(cut_off)?).await.map_err(cut_off)?;
    text.as_string().ok_or_else(|| CUT_OFF.to_owned())
}

const CUT_OFF: &str =
    "the link is cut off or changed: expected one that was copied whole, ask for it again";

fn no_compressor(_: JsValue) -> String {
    "this browser has no compressor, expected one of the last three years: hand the set out as a file"
        .to_owned()
}

/// A body sent through one of the browser's streams.
fn through(stream: &str, body: &Response) -> Result<Response, JsValue> {
    let stream = Reflect::get(&js_sys::global(), &stream.into())?.dyn_into::<Function>()?;
    let stream = Reflect::construct(&stream, &Array::of1(&"deflate".into()))?;
    let body = body.body().ok_or(JsValue::UNDEFINED)?;
    // A pair of two ends is all that is asked for, and the stream is one.
    let out = body.pipe_through(stream.unchecked_ref::<ReadableWritablePair>());
    Response::new_with_opt_readable_stream(Some(&out))
}
