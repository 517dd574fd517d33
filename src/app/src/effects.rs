//! What touches the browser: the address, storage, fetching, chance, printing.

use core::pin::Pin;
use learning::file::is_name;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, HtmlAnchorElement, Response, ScrollIntoViewOptions, ScrollLogicalPosition, Url, window,
};

/// Where this browser keeps that the briefing was read. What is done on the bench is kept elsewhere
/// (`keep`).
const BRIEFED: &str = "wallwise-briefed";
/// Where it keeps that there are attempts in its database.
const KEEPS: &str = "wallwise-keeps";

/// Where it keeps the code that an instructor gave.
const CODE: &str = "wallwise-code";

/// The fragment of the address.
#[must_use]
pub fn fragment() -> String {
    window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}

/// What the entry says under this name: a package says there which set it is, and how it is sat.
#[must_use]
pub fn entry(name: &str) -> Option<String> {
    let page = window().and_then(|window| window.document());
    page.and_then(|page| page.document_element())?.get_attribute(name)
}

/// How wide the page is, CSS pixels.
#[must_use]
pub fn page_width() -> f64 {
    let width =
        window().and_then(|window| window.inner_width().ok()).and_then(|width| width.as_f64());
    width.unwrap_or(1200.0)
}

/// Leads elsewhere; the change of address is what moves the room.
pub fn go(fragment: &str) {
    if let Some(window) = window() {
        // Refused only for a malformed fragment, and ours are made by `Route::fragment`.
        let _ = window.location().set_hash(fragment);
    }
}

/// The whole address of a fragment, to hand on.
#[must_use]
pub fn address_of(fragment: &str) -> String {
    let here = window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    format!("{}{fragment}", here.split('#').next().unwrap_or_default())
}

/// Whether the briefing has been read in this browser; no where storage is forbidden.
#[must_use]
pub fn was_briefed() -> bool {
    has(BRIEFED)
}

/// Remembers that the briefing was read; where storage is forbidden it is shown again next time.
pub fn remember_briefing() {
    remember(BRIEFED);
}

/// Whether attempts were kept in this browser before. The database itself is opened later, by what comes
/// with the judge.
#[must_use]
pub fn has_kept() -> bool {
    has(KEEPS)
}

/// Remembers that attempts are kept, and lets the message about a newer version say so.
pub fn remember_keeping() {
    remember(KEEPS);
}

/// Lets the message about a newer version of the room promise that what was done is kept.
pub fn promise_keeping(kept: bool) {
    let page =
        window().and_then(|window| window.document()).and_then(|page| page.document_element());
    if let Some(page) = page {
        let _ = page.toggle_attribute_with_force("data-kept", kept);
    }
}

/// Forgets that attempts were kept.
pub fn forget_keeping() {
    forget_text(KEEPS);
}

/// The code that an instructor gave the learner, where one was entered.
#[must_use]
pub fn code() -> String {
    kept_text(CODE).unwrap_or_default()
}

/// Remembers that code, or forgets it where it cannot be one; where storage is forbidden it is gone with
/// the page.
pub fn remember_code(code: &str) {
    let code = code.trim();
    match is_name(code) {
        true => keep_text(CODE, code),
        false => forget_text(CODE),
    }
}

fn has(name: &str) -> bool {
    kept_text(name).is_some()
}

fn remember(name: &str) {
    keep_text(name, "1");
}

/// A text that this browser keeps under a name.
#[must_use]
pub fn kept_text(name: &str) -> Option<String> {
    texts()?.get_item(name).ok().flatten()
}

/// Keeps a text under a name; where storage is forbidden or full it lasts as long as the page.
pub fn keep_text(name: &str, text: &str) {
    if let Some(storage) = texts() {
        let _ = storage.set_item(name, text);
    }
}

/// Forgets the text under a name.
pub fn forget_text(name: &str) {
    if let Some(storage) = texts() {
        let _ = storage.remove_item(name);
    }
}

/// Where the browser keeps texts for this page; nothing where that is forbidden.
fn texts() -> Option<web_sys::Storage> {
    window()?.local_storage().ok().flatten()
}

/// Minutes that this place's clock is ahead of universal time.
#[must_use]
pub fn minutes_east() -> i32 {
    #[expect(clippy::cast_possible_truncation, reason = "a day has 1440 minutes")]
    let west = js_sys::Date::new_0().get_timezone_offset() as i32;
    -west
}

/// A seed for a fresh case, short enough to read out.
#[must_use]
pub fn fresh_seed() -> u64 {
    // Chance enters the room here and nowhere else; the seed then stands in the address.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 999999")]
    let seed = (js_sys::Math::random() * 1_000_000.0) as u64;
    seed
}

/// A number that no other tab draws.
#[must_use]
pub fn chance() -> u32 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "below 2^32")]
    let chance = (js_sys::Math::random() * 4_294_967_296.0) as u32;
    chance
}

/// Milliseconds since 1970, universal time.
#[must_use]
pub fn now() -> u64 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a date")]
    let now = js_sys::Date::now() as u64;
    now
}

/// Asks the browser to keep what it stores for this page even when space runs short. It may refuse, and
/// says nothing of it here: the page of what is kept does.
pub fn ask_to_persist() {
    wasm_bindgen_futures::spawn_local(async {
        let _ = persisted(true).await;
    });
}

/// Whether the browser keeps what it stores for this page even when space runs short; it may be asked
/// to first.
pub async fn persisted(ask: bool) -> bool {
    let Some(storage) = storage() else { return false };
    let answer = if ask { storage.persist() } else { storage.persisted() };
    match answer {
        Ok(promise) => JsFuture::from(promise).await.is_ok_and(|answer| answer.is_truthy()),
        Err(_) => false,
    }
}

/// The browser's storage manager; there is none outside a secure context.
fn storage() -> Option<web_sys::StorageManager> {
    let navigator: wasm_bindgen::JsValue = window()?.navigator().into();
    let found = js_sys::Reflect::get(&navigator, &"storage".into()).ok()?;
    found.dyn_into().ok()
}

/// How much space what is kept takes, and whether it is safe from being cleared, in a sentence.
pub async fn space() -> String {
    let estimate = match storage().and_then(|storage| storage.estimate().ok()) {
        Some(promise) => JsFuture::from(promise).await.ok(),
        None => None,
    };
    let part = |name: &str| {
        let found = js_sys::Reflect::get(estimate.as_ref()?, &name.into()).ok()?;
        Some(found.as_f64()? / 1e6)
    };
    let (Some(used), Some(quota)) = (part("usage"), part("quota")) else {
        return "This browser does not say.".to_owned();
    };
    let safe = if persisted(false).await {
        "It has agreed not to clear it when space runs short."
    } else {
        "It may clear it when space runs short."
    };
    format!(
        "{used:.1} MB of the {quota:.0} MB that this browser allows, the room itself included. {safe}"
    )
}

/// The text of the file that was chosen in a field.
///
/// # Errors
/// A sentence.
pub async fn text_of(field: &web_sys::HtmlInputElement) -> Result<String, String> {
    let file = field.files().and_then(|files| files.get(0)).ok_or("No file was chosen.")?;
    #[expect(clippy::cast_precision_loss, reason = "a length in bytes")]
    let longest = learning::file::LONGEST_FILE as f64;
    if file.size() > longest {
        return Err(format!(
            "Found a file of {:.0} MB, expected at most {:.0} MB.",
            file.size() / 1e6,
            longest / 1e6
        ));
    }
    let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
    // So that the same file can be chosen again.
    field.set_value("");
    text.ok_or_else(|| "The file is no text.".to_owned())
}

/// Fetches a text that belongs to the room, by its name in the page's own list of hashed names.
///
/// # Errors
/// A sentence that says what could not be fetched and what to do.
pub fn fetch_text(name: &'static str) -> Fetching {
    // Boxed, so that whoever waits for it does not carry it in the first visit once more.
    Box::pin(fetched(name))
}

/// A text on its way.
pub type Fetching = Pin<Box<dyn Future<Output = Result<String, String>>>>;

async fn fetched(name: &'static str) -> Result<String, String> {
    let failed =
        |_| format!("{name} could not be fetched: check the connection and load the page again");
    let window = window().ok_or("there is no window")?;
    let address = entry(&format!("data-{name}")).unwrap_or_else(|| format!("./{name}.json"));
    let answer = JsFuture::from(window.fetch_with_str(&address)).await.map_err(failed)?;
    let answer: Response = answer.dyn_into().map_err(failed)?;
    if !answer.ok() {
        return Err(format!(
            "{name} could not be fetched: the server answered {}",
            answer.status()
        ));
    }
    let text = JsFuture::from(answer.text().map_err(failed)?).await.map_err(failed)?;
    text.as_string().ok_or_else(|| format!("{name} is no text"))
}

/// Opens the browser's print dialogue.
pub fn print() {
    if let Some(window) = window() {
        let _ = window.print();
    }
}

/// Puts a text on the clipboard where the browser allows it.
pub fn copy(text: &str) {
    if let Some(window) = window() {
        let promise = window.navigator().clipboard().write_text(text);
        wasm_bindgen_futures::spawn_local(async move {
            // Refused: the address stands beside the button to be copied by hand.
            let _ = JsFuture::from(promise).await;
        });
    }
}

/// Hands a text to the browser to be kept as a file of this name.
pub fn save(name: &str, text: &str) {
    let parts = js_sys::Array::of1(&text.into());
    let document = window().and_then(|window| window.document());
    let link = document.and_then(|document| document.create_element("a").ok());
    let link = link.and_then(|link| link.dyn_into::<HtmlAnchorElement>().ok());
    let (Ok(blob), Some(link)) = (Blob::new_with_str_sequence(&parts), link) else { return };
    if let Ok(address) = Url::create_object_url_with_blob(&blob) {
        link.set_href(&address);
        link.set_download(name);
        link.click();
        // The browser has taken it over by then; if not, the page's end lets go of it.
        let _ = Url::revoke_object_url(&address);
    }
}

/// Scrolls what a key has just given the focus to wholly into view, also sideways in a row of
/// figures, where a browser is content with an edge of it.
pub fn bring_into_view(event: &web_sys::FocusEvent) {
    let hit = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    // A pointer points at what is in view, and would miss it if it moved.
    let by_key = |element: &web_sys::Element| element.matches(":focus-visible").unwrap_or(false);
    if let Some(element) = hit.filter(by_key) {
        let options = ScrollIntoViewOptions::new();
        options.set_block(ScrollLogicalPosition::Nearest);
        options.set_inline(ScrollLogicalPosition::Nearest);
        element.scroll_into_view_with_scroll_into_view_options(&options);
    }
}

/// Moves the focus to an element that is about to appear.
pub fn focus_soon(id: String) {
    // What appears is drawn before anything that is begun now.
    wasm_bindgen_futures::spawn_local(async move { focus(&id) });
}

/// Moves the focus from what a key was pressed on to the element before it in the drawing.
pub fn focus_before(event: &web_sys::KeyboardEvent) {
    let hit = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    let before = hit.and_then(|hit| hit.previous_element_sibling());
    if let Some(before) = before.and_then(|before| before.dyn_into::<web_sys::SvgElement>().ok()) {
        let _ = before.focus();
    }
}

/// What stands in the field of this id; empty where there is none.
#[must_use]
pub fn written(id: &str) -> String {
    let field =
        window().and_then(|window| window.document()).and_then(|page| page.get_element_by_id(id));
    let field = field.and_then(|field| field.dyn_into::<web_sys::HtmlTextAreaElement>().ok());
    field.map(|field| field.value()).unwrap_or_default()
}

/// Opens a dialogue over everything else: the browser keeps the focus in it, and closes it on Escape.
pub fn open_dialog(id: &str) {
    if let Some(dialog) = dialog(id) {
        // Refused only where it is open already.
        let _ = dialog.show_modal();
    }
}

/// Closes it; the focus goes back to where it was.
pub fn close_dialog(id: &str) {
    if let Some(dialog) = dialog(id) {
        dialog.close();
    }
}

fn dialog(id: &str) -> Option<web_sys::HtmlDialogElement> {
    window()?.document()?.get_element_by_id(id)?.dyn_into().ok()
}

/// Moves the focus to an element, so that keyboard and screen reader follow what changed.
pub fn focus(id: &str) {
    let element =
        window().and_then(|window| window.document()).and_then(|page| page.get_element_by_id(id));
    if let Some(element) =
        element.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok())
    {
        let _ = element.focus();
    }
}

/// Unfolds an element and whatever it is folded into, and moves the focus there.
pub fn unfold(id: &str) {
    let page = window().and_then(|window| window.document());
    let Some(element) = page.and_then(|page| page.get_element_by_id(id)) else { return };
    let mut around = Some(element.clone());
    while let Some(one) = around {
        if one.tag_name() == "DETAILS" {
            let _ = one.set_attribute("open", "");
        }
        around = one.parent_element();
    }
    element.scroll_into_view();
    let summary = element.query_selector("summary").ok().flatten();
    if let Some(summary) = summary.and_then(|it| it.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = summary.focus();
    }
}

/// Goes on once the page has been painted as it stands: what takes a while begins after that.
pub async fn after_painting() {
    after(30).await;
}

/// Goes on after so many milliseconds.
pub async fn after(milliseconds: i32) {
    let wait = js_sys::Promise::new(&mut |resolve, _| {
        let later = window().and_then(|window| {
            window
                .set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, milliseconds)
                .ok()
        });
        if later.is_none() {
            // Nothing to wait for.
            let _ = resolve.call0(&wasm_bindgen::JsValue::UNDEFINED);
        }
    });
    let _ = JsFuture::from(wait).await;
}

/// Lets the page answer whenever something has gone on for a while.
#[derive(Debug)]
pub struct Breath {
    /// When the page last had its turn, milliseconds.
    since: f64,
}

impl Breath {
    /// The page has just had its turn.
    pub fn now() -> Self {
        Self { since: js_sys::Date::now() }
    }

    /// Gives the page its turn where it is due.
    pub async fn take(&mut self) {
        const LONG: f64 = 40.0;
        if js_sys::Date::now() - self.since > LONG {
            self.take_now().await;
        }
    }

    /// Gives the page its turn where it is due, for no longer than that takes: what goes on for seconds
    /// would else wait more than it works.
    pub async fn glance(&mut self) {
        const LONG: f64 = 30.0;
        if js_sys::Date::now() - self.since > LONG {
            after(0).await;
            *self = Self::now();
        }
    }

    /// Gives the page its turn before something that takes a while by itself.
    pub async fn take_now(&mut self) {
        after_painting().await;
        *self = Self::now();
    }
}
