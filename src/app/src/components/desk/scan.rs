//! The link as a picture for the whole room to scan: a QR code (ISO/IEC 18004), as large as the window.

use crate::components::hold::use_held;
use crate::components::plain::{button, el, heading, press, said, status, with};
use crate::effects;
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use yew::prelude::*;

/// The finest code that is shown, and how many bytes it holds with the least correction (ISO/IEC 18004, from
/// memory); the finest that there is, version 40, holds 2,953. A camera that sees 65 degrees on 1,920 pixels has 1,500
/// of them for a metre at one metre, a decoder wants about three for a module (ours, not from a source),
/// so modules of 1 cm are read from 5 m. Version 25 with its quiet zone is 125 modules wide: on a picture
/// one metre high it is read from 4 m, and a screen of 768 lines still gives each module 5.
const FINEST: u8 = 25;
const HELD: usize = 1273;
/// Modules of quiet zone all round, as the standard asks.
const QUIET: i32 = 4;
const DIALOG: &str = "desk-scan";
const TITLE: &str = "desk-scan-title";

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct ScanProps {
    /// The title of the set.
    pub title: String,
    /// The whole link.
    pub address: String,
}

/// The button, and the page that it opens; to be keyed by the link, so that no code outlives it.
#[component]
pub fn Scan(props: &ScanProps) -> Html {
    let made = use_held(|| None::<Result<Html, String>>);
    let show = {
        let (made, address) = (made.clone(), props.address.clone());
        Callback::from(move |_: MouseEvent| {
            let code = code(&address);
            let is_there = code.is_ok();
            made.set(Some(code.map(|code| drawn(&code))));
            if is_there {
                effects::open_dialog(DIALOG);
            }
        })
    };
    let (code, why) = match &*made {
        Some(Ok(code)) => (code.clone(), String::new()),
        Some(Err(why)) => (Html::default(), why.clone()),
        None => Default::default(),
    };
    let place = props.address.split('#').next().unwrap_or_default();
    let inside = vec![
        code,
        heading("h2", TITLE, props.title.clone()),
        said("p", "from", place.to_owned()),
        button("Close", Callback::from(|_| effects::close_dialog(DIALOG))),
    ];
    let attributes = [("id", DIALOG), ("class", "scan"), ("aria-labelledby", TITLE)];
    let show = press(&[], "Show as a picture to scan".to_owned(), show);
    el(
        "div",
        "",
        vec![el("p", "row", vec![show]), status(why), with("dialog", &attributes, inside)],
    )
}

/// The code of a link: as coarse as the link allows, and at that size as sure as it can be.
fn code(link: &str) -> Result<QrCode, String> {
    let parts = [QrSegment::make_bytes(link.as_bytes())];
    let [from, to] = [1, FINEST].map(Version::new);
    let code = QrCode::encode_segments_advanced(&parts, QrCodeEcc::Low, from, to, None, true);
    code.map_err(|_| {
        format!(
            "{} characters: a QR code of more than {HELD} is too fine to be scanned across a room. Hand out the link or the file, or a smaller set.",
            link.len()
        )
    })
}

fn drawn(code: &QrCode) -> Html {
    let side = code.size() + 2 * QUIET;
    let view = format!("-{QUIET} -{QUIET} {side} {side}");
    let path = with("path", &[("d", &path(code))], Vec::new());
    let attributes =
        [("viewBox", view.as_str()), ("role", "img"), ("aria-label", "QR code of the link")];
    with("svg", &attributes, vec![path])
}

/// Every run of dark modules in a line, as a rectangle.
fn path(code: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let from = x;
            // Beyond the edge everything is light.
            while code.get_module(x, y) {
                x += 1;
            }
            if x > from {
                path.push_str(&format!("M{from} {y}H{x}v1H{from}z"));
            }
            x += 1;
        }
    }
    path
}
