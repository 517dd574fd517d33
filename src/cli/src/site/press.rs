//! Each file once more, compressed, so that serving costs nothing.

use brotli::enc::BrotliEncoderParams;

use super::Cache;
use super::asset::Asset;
use crate::{Fault, Why};

/// Kinds of file that are compressed by nature.
const DENSE: &[&str] = &["png", "woff2", "zip"];

/// A file as it is, and as it is sent to whoever accepts brotli.
#[derive(Debug)]
pub struct Pressed {
    pub asset: Asset,
    /// Nothing where compressing does not make it smaller.
    pub brotli: Option<Vec<u8>>,
}

/// Compresses every file that gains by it.
pub fn press(assets: Vec<Asset>, cache: &mut Cache) -> Result<Vec<Pressed>, Fault> {
    let mut pressed = Vec::with_capacity(assets.len());
    for asset in assets {
        let brotli = if DENSE.contains(&asset.extension()) {
            None
        } else {
            let smaller = cache.get("brotli 11", &asset.bytes, compress)?;
            (smaller.len() < asset.bytes.len()).then_some(smaller)
        };
        pressed.push(Pressed { asset, brotli });
    }
    Ok(pressed)
}

/// Every file as it is.
pub fn plain(assets: Vec<Asset>) -> Vec<Pressed> {
    assets.into_iter().map(|asset| Pressed { asset, brotli: None }).collect()
}

fn compress(mut bytes: &[u8]) -> Result<Vec<u8>, Fault> {
    let parameters = BrotliEncoderParams {
        quality: 11,
        size_hint: bytes.len(),
        ..BrotliEncoderParams::default()
    };
    let mut compressed = Vec::new();
    brotli::BrotliCompress(&mut bytes, &mut compressed, &parameters)
        .why(|| "cannot compress a file of the page".to_owned())?;
    Ok(compressed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_compressed_comes_back_whole() {
        let text = "the walls decide ".repeat(500);
        let compressed = compress(text.as_bytes()).unwrap();
        assert!(compressed.len() < text.len() / 10);
        let mut back = Vec::new();
        brotli::BrotliDecompress(&mut compressed.as_slice(), &mut back).unwrap();
        assert_eq!(back, text.as_bytes());
    }
}
