//! What tabs of the room tell each other.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{BroadcastChannel, MessageEvent};

/// What is told when everything was taken away.
const ERASED: &str = "erased";
/// What is told when there are other attempts than before.
const OTHERS: &str = "others";

/// Something that another tab did.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Word {
    /// It wrote in the attempt of this name.
    Wrote(String),
    /// It erased everything.
    Erased,
    /// It began or ended an attempt, or brought some in: what is kept is to be listed anew.
    Others,
}

/// One end of the channel; nothing where the browser has none.
#[derive(Debug)]
pub struct Channel {
    channel: Option<BroadcastChannel>,
    /// Kept for as long as it may be called.
    _hear: Closure<dyn FnMut(MessageEvent)>,
}

impl Channel {
    /// Opens the one of this name and passes on what the others tell.
    pub fn open(name: &str, hear: impl Fn(Word) + 'static) -> Self {
        let channel = BroadcastChannel::new(name).ok();
        let hear = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            if let Some(text) = event.data().as_string() {
                hear(match text.as_str() {
                    ERASED => Word::Erased,
                    OTHERS => Word::Others,
                    _ => Word::Wrote(text),
                });
            }
        });
        if let Some(channel) = &channel {
            channel.set_onmessage(Some(hear.as_ref().unchecked_ref()));
        }
        Self { channel, _hear: hear }
    }

    /// Tells the other tabs; where there is no channel they find out when they write.
    pub fn tell(&self, word: &Word) {
        let text = match word {
            Word::Wrote(id) => id.as_str(),
            Word::Erased => ERASED,
            Word::Others => OTHERS,
        };
        if let Some(channel) = &self.channel {
            let _ = channel.post_message(&text.into());
        }
    }
}
