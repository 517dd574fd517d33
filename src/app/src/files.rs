//! Files that somebody hands to the page: their bytes, and what is packed in them.

use js_sys::{Array, Function, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, DragEvent, File, FileList, HtmlInputElement, ReadableStream, ReadableStreamDefaultReader,
};
use yew::prelude::Event;

/// The files that were chosen in a field, which can then be chosen again.
#[must_use]
pub fn chosen(event: &Event) -> Vec<File> {
    let field = event.target().and_then(|field| field.dyn_into::<HtmlInputElement>().ok());
    let Some(field) = field else { return Vec::new() };
    let files = field.files().map(all).unwrap_or_default();
    field.set_value("");
    files
}

/// The files that were dropped.
#[must_use]
pub fn dropped(event: &DragEvent) -> Vec<File> {
    event.data_transfer().and_then(|carried| carried.files()).map(all).unwrap_or_default()
}

fn all(list: FileList) -> Vec<File> {
    (0..list.length()).filter_map(|place| list.get(place)).collect()
}

/// Where a file lies in the folder that was chosen, or what it is called.
#[must_use]
pub fn path_of(file: &File) -> String {
    let path = Reflect::get(file, &"webkitRelativePath".into()).ok();
    let path = path.and_then(|path| path.as_string()).unwrap_or_default();
    if path.is_empty() { file.name() } else { path }
}

/// All of a file, if it is no longer than this.
///
/// # Errors
/// What was found, and what was expected.
pub async fn bytes_of(file: &File, longest: usize) -> Result<Vec<u8>, String> {
    #[expect(clippy::cast_precision_loss, reason = "a length in bytes")]
    let longest = longest as f64;
    if file.size() > longest {
        return Err(format!(
            "found {:.0} MB, expected at most {:.0} MB",
            file.size() / 1e6,
            longest / 1e6
        ));
    }
    match JsFuture::from(file.array_buffer()).await {
        Ok(bytes) => Ok(Uint8Array::new(&bytes).to_vec()),
        Err(_) => {
            Err("cannot be read: it is a folder, which is chosen below, or no longer where it was"
                .to_owned())
        }
    }
}

/// What comes out of one of the browser's own streams, `CompressionStream` or `DecompressionStream`.
///
/// # Errors
/// Where the browser has none.
pub fn through(name: &str, format: &str, into: &ReadableStream) -> Result<ReadableStream, JsValue> {
    let made_by = Reflect::get(&js_sys::global(), &name.into())?.dyn_into::<Function>()?;
    let stream = Reflect::construct(&made_by, &Array::of1(&format.into()))?;
    // A pair of two ends is all that is asked for, and the stream is one.
    Ok(into.pipe_through(stream.unchecked_ref()))
}

/// Inflates bytes of one of the browser's formats, and stops at this many: what would be longer is not what
/// it says. Nothing where they cannot be inflated.
pub async fn inflate(format: &str, packed: &[u8], most: usize) -> Option<Vec<u8>> {
    let parts = Array::of1(&Uint8Array::from(packed));
    let blob = Blob::new_with_u8_array_sequence(&parts).ok()?;
    // A browser without it is told like a file that cannot be inflated.
    let stream = through("DecompressionStream", format, &blob.stream()).ok()?;
    let reader: ReadableStreamDefaultReader = stream.get_reader().unchecked_into();
    let mut unpacked = Vec::new();
    loop {
        let next = JsFuture::from(reader.read()).await.ok()?;
        let part = |name: &str| Reflect::get(&next, &JsValue::from_str(name)).ok();
        if part("done")?.is_truthy() {
            return Some(unpacked);
        }
        let chunk: Uint8Array = part("value")?.dyn_into().ok()?;
        if unpacked.len() + chunk.length() as usize > most {
            // Told to stop, it has nothing more to say.
            let _ = JsFuture::from(reader.cancel()).await;
            return None;
        }
        unpacked.extend(chunk.to_vec());
    }
}
