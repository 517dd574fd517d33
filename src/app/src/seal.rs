//! Bytes that only open with a code: AES-GCM (NIST SP 800-38D) under a key that PBKDF2 with SHA-256
//! (RFC 8018) makes of the code, both by the browser itself. In letters of the link: sixteen bytes of
//! salt, twelve of the nonce, then what was sealed with its tag.
//!
//! It keeps a set from who is curious before the sitting. A short code that is tried out at leisure is
//! found: it is no place for secrets, and there are none in a set.

use js_sys::{Array, Object, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{CryptoKey, SubtleCrypto};

const SALT: usize = 16;
const NONCE: usize = 12;
/// Rounds of PBKDF2 (ours): about a quarter of a second on a phone.
const ROUNDS: u32 = 300_000;

/// Seals bytes; nothing where this browser does not, as on a page that came without encryption.
pub async fn seal(bytes: &[u8], code: &str) -> Option<Vec<u8>> {
    let mut head = [0; SALT + NONCE];
    web_sys::window()?.crypto().ok()?.get_random_values_with_u8_array(&mut head).ok()?;
    let sealed = done(&head, code, bytes, true).await.ok()?;
    Some([head.as_slice(), &sealed].concat())
}

/// Opens what was sealed; nothing where the code is another, the bytes were changed, or this browser
/// does not.
pub async fn unseal(bytes: &[u8], code: &str) -> Option<Vec<u8>> {
    let (head, sealed) = bytes.split_at_checked(SALT + NONCE)?;
    done(head, code, sealed, false).await.ok()
}

/// Seals or opens, under the salt and the nonce of the head.
async fn done(head: &[u8], code: &str, bytes: &[u8], seals: bool) -> Result<Vec<u8>, JsValue> {
    let subtle = web_sys::window().ok_or(JsValue::UNDEFINED)?.crypto()?.subtle();
    let (salt, nonce) = head.split_at(SALT);
    let key = key(&subtle, code, salt).await?;
    let how = named("AES-GCM", &[("iv", Uint8Array::from(nonce).into())])?;
    let done = match seals {
        true => subtle.encrypt_with_object_and_u8_array(&how, &key, bytes)?,
        false => subtle.decrypt_with_object_and_u8_array(&how, &key, bytes)?,
    };
    Ok(Uint8Array::new(&JsFuture::from(done).await?).to_vec())
}

/// The key that a code and a salt make; small letters or capitals, spaces about it or none.
async fn key(subtle: &SubtleCrypto, code: &str, salt: &[u8]) -> Result<CryptoKey, JsValue> {
    let code = code.trim().to_ascii_lowercase();
    let code = Uint8Array::from(code.as_bytes());
    let uses = Array::of1(&"deriveKey".into());
    let base = subtle.import_key_with_str("raw", &code, "PBKDF2", false, &uses)?;
    let base: CryptoKey = JsFuture::from(base).await?.unchecked_into();
    let salt = Uint8Array::from(salt).into();
    let parts = [("hash", "SHA-256".into()), ("salt", salt), ("iterations", ROUNDS.into())];
    let how = named("PBKDF2", &parts)?;
    let kind = named("AES-GCM", &[("length", 256.into())])?;
    let uses = Array::of2(&"encrypt".into(), &"decrypt".into());
    let key = subtle.derive_key_with_object_and_object(&how, &base, &kind, false, &uses)?;
    Ok(JsFuture::from(key).await?.unchecked_into())
}

/// A way of doing it as the browser names it, with what goes with it.
fn named(name: &str, parts: &[(&str, JsValue)]) -> Result<Object, JsValue> {
    let object = Object::new();
    Reflect::set(&object, &"name".into(), &name.into())?;
    for (part, value) in parts {
        Reflect::set(&object, &(*part).into(), value)?;
    }
    Ok(object)
}
