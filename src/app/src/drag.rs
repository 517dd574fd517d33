//! Taking hold of a handle: by pointer, each frame a preview and the end a choice; by keys, each
//! press a choice.

use crate::amount::directed;
use engine::anatomy::Tooth;
use engine::figures::Handle;
use engine::geometry::Outline;
use engine::plan::{Decision, Draft, Kind, NumberKind, Value};
use engine::session::Event;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{DomRect, Element, PointerEvent, SvgElement};
use yew::Callback;

/// A drag under way.
#[derive(Debug)]
pub struct Drag;

type Listener = Closure<dyn FnMut(PointerEvent)>;

impl Drag {
    /// Follows the pointer until it is let go; `window` is the figure's width and height in millimetres.
    pub fn begin(
        event: &PointerEvent,
        window: [f64; 2],
        handle: Handle,
        draft: Draft,
        on_try: Callback<Vec<Event>>,
        on_do: Callback<Event>,
    ) {
        let Some(target) = handle_of(event) else { return };
        let Some(drawing) = target.dyn_ref::<SvgElement>().and_then(SvgElement::owner_svg_element)
        else {
            return;
        };
        let pixels = pixels_per_mm(&drawing.get_bounding_client_rect(), window);
        if pixels <= 0.0 || target.set_pointer_capture(event.pointer_id()).is_err() {
            return;
        }
        let from = (f64::from(event.client_x()), f64::from(event.client_y()));
        let shift = move |event: &PointerEvent| {
            (
                (f64::from(event.client_x()) - from.0) / pixels,
                (f64::from(event.client_y()) - from.1) / pixels,
            )
        };
        let over = Rc::new(Cell::new(false));
        let listeners: Rc<RefCell<Vec<Listener>>> = Rc::default();
        let moving = {
            let (handle, draft, over) = (handle.clone(), draft.clone(), over.clone());
            Closure::new(move |event: PointerEvent| {
                if !over.get() {
                    let (right, down) = shift(&event);
                    on_try.emit(moved_by_mm(&handle, &draft, right, down));
                }
            })
        };
        let ending = {
            let (listeners, target) = (listeners.clone(), target.clone());
            Closure::new(move |event: PointerEvent| {
                if over.replace(true) {
                    return;
                }
                let (right, down) = shift(&event);
                for event in moved_by_mm(&handle, &draft, right, down) {
                    on_do.emit(event);
                }
                let_go(listeners.clone(), target.clone());
            })
        };
        let mut list = listeners.borrow_mut();
        list.extend([moving, ending]);
        for (name, place) in EVENTS {
            let listener = list[place].as_ref().unchecked_ref();
            let _ = target.add_event_listener_with_callback(name, listener);
        }
    }
}

/// The handle that a pointer went down on. Yew hears events at the root of the page, so the event's
/// own current target is that root.
fn handle_of(event: &PointerEvent) -> Option<Element> {
    let hit = event.target()?.dyn_into::<Element>().ok()?;
    hit.closest(".handle").ok()?
}

/// A drawing keeps its shape: where the box that it fills is too wide or too tall for it, it is
/// scaled by the narrower way.
fn pixels_per_mm(filled: &DomRect, [wide, tall]: [f64; 2]) -> f64 {
    (filled.width() / wide).min(filled.height() / tall)
}

/// Dropping a closure while it runs is undefined; the list goes once it has returned.
fn let_go(listeners: Rc<RefCell<Vec<Listener>>>, target: Element) {
    wasm_bindgen_futures::spawn_local(async move {
        let list = std::mem::take(&mut *listeners.borrow_mut());
        for (name, place) in EVENTS {
            let listener = list[place].as_ref().unchecked_ref();
            let _ = target.remove_event_listener_with_callback(name, listener);
        }
    });
}

/// What a drag hears, and which of its two listeners hears it. A pointer that is cancelled ends in
/// `lostpointercapture` alone, which a pointer that is let go may send late.
const EVENTS: [(&str, usize); 3] =
    [("pointermove", 0), ("pointerup", 1), ("lostpointercapture", 1)];

/// How many steps to the right and down a key moves; a shifted key moves ten.
#[must_use]
pub fn steps_of_key(key: &str, shifted: bool) -> Option<(i32, i32)> {
    let by = if shifted { 10 } else { 1 };
    match key {
        "ArrowLeft" => Some((-by, 0)),
        "ArrowRight" => Some((by, 0)),
        "ArrowUp" => Some((0, -by)),
        "ArrowDown" => Some((0, by)),
        "PageUp" => Some((0, -10)),
        "PageDown" => Some((0, 10)),
        _ => None,
    }
}

/// The choices that move a handle by steps of its decisions.
#[must_use]
pub fn moved_by_steps(handle: &Handle, draft: &Draft, (right, down): (i32, i32)) -> Vec<Event> {
    if let Some((decision, place)) = handle.vertex {
        let ways = (way(handle.across), way(handle.down));
        return vertex_moved(decision, place, draft, right * ways.0, down * ways.1)
            .into_iter()
            .collect();
    }
    let axis = |axis: Option<(Decision, f64)>, steps: i32| {
        let (decision, counts) = axis?;
        let kind = number(decision)?;
        let by = steps * kind.by * if counts < 0.0 { -1 } else { 1 };
        (steps != 0).then(|| counted(decision, &kind, draft, by))?
    };
    [axis(handle.across, right), axis(handle.down, down)].into_iter().flatten().collect()
}

/// The choices that move a handle by millimetres of its figure.
#[must_use]
pub fn moved_by_mm(handle: &Handle, draft: &Draft, right: f64, down: f64) -> Vec<Event> {
    #[expect(clippy::cast_possible_truncation, reason = "a screen is a few thousand tenths wide")]
    let whole = |value: f64| value.clamp(-1e4, 1e4).round() as i32;
    if let Some((decision, place)) = handle.vertex {
        let (s, t) =
            (whole(right * 10.0) * way(handle.across), whole(down * 10.0) * way(handle.down));
        return vertex_moved(decision, place, draft, s, t).into_iter().collect();
    }
    let axis = |axis: Option<(Decision, f64)>, mm: f64| {
        let (decision, counts) = axis?;
        let kind = number(decision)?;
        let by = whole(mm * counts / f64::from(kind.by)) * kind.by;
        counted(decision, &kind, draft, by)
    };
    [axis(handle.across, right), axis(handle.down, down)].into_iter().flatten().collect()
}

fn way(axis: Option<(Decision, f64)>) -> i32 {
    if axis.is_some_and(|(_, counts)| counts < 0.0) { -1 } else { 1 }
}

fn number(decision: Decision) -> Option<NumberKind> {
    match decision.entry().kind {
        Kind::Number(kind) => Some(kind),
        _ => None,
    }
}

fn counted(decision: Decision, kind: &NumberKind, draft: &Draft, by: i32) -> Option<Event> {
    let count = (draft.number(decision)? + by).clamp(kind.least, kind.most);
    (Some(count) != draft.number(decision))
        .then_some(Event::Choose(decision, Some(Value::Number(count))))
}

/// A vertex that would make the outline cross itself stays where it was.
fn vertex_moved(decision: Decision, place: usize, draft: &Draft, s: i32, t: i32) -> Option<Event> {
    let mut vertices = draft.outline(decision)?.tenths().to_vec();
    let vertex = vertices.get_mut(place)?;
    *vertex = [vertex[0] + s, vertex[1] + t];
    let outline = Outline::new(vertices).ok()?;
    (draft.outline(decision) != Some(&outline))
        .then_some(Event::Choose(decision, Some(Value::Outline(outline))))
}

/// A handle's value in words.
#[must_use]
pub fn value_in_words(handle: &Handle, draft: &Draft, tooth: Tooth) -> String {
    if let Some((decision, place)) = handle.vertex {
        let at = draft.outline(decision).and_then(|outline| outline.tenths().get(place).copied());
        return at.map_or_else(String::new, |[s, t]| {
            format!(
                "{}, {}",
                placed(s, ["mesially", "distally"]),
                placed(t, [&tooth.named("orally"), "apically"])
            )
        });
    }
    let axis = |axis: Option<(Decision, f64)>| {
        let (decision, _) = axis?;
        Some(directed(&number(decision)?, draft.number(decision)?, tooth))
    };
    let parts: Vec<String> =
        [axis(handle.across), axis(handle.down)].into_iter().flatten().collect();
    parts.join(", ")
}

/// A place on the map in words, from tenths of a millimetre.
fn placed(tenths: i32, [less, more]: [&str; 2]) -> String {
    let way = if tenths < 0 { less } else { more };
    format!("{:.1} mm {way}", f64::from(tenths.abs()) / 10.0)
}

/// A handle's value as a number, for the slider role.
#[must_use]
pub fn value_now(handle: &Handle, draft: &Draft) -> f64 {
    if let Some((decision, place)) = handle.vertex {
        let at = draft.outline(decision).and_then(|outline| outline.tenths().get(place).copied());
        return at.map_or(0.0, |[_, t]| f64::from(t) / 10.0);
    }
    let first = handle.across.or(handle.down);
    first
        .and_then(|(decision, _)| {
            Some(f64::from(draft.number(decision)?) / f64::from(number(decision)?.per_unit))
        })
        .unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::geometry::P2;

    fn platform() -> Handle {
        Handle {
            at: P2::new(0.0, 0.0),
            label: "platform".to_owned(),
            across: Some((Decision::OffsetFacial, 10.0)),
            down: Some((Decision::Depth, 10.0)),
            vertex: None,
        }
    }

    fn a_draft() -> Draft {
        let mut draft = Draft::empty();
        draft.choose(Decision::OffsetFacial, Value::Number(-10)).unwrap();
        draft.choose(Decision::Depth, Value::Number(10)).unwrap();
        draft
    }

    #[test]
    fn a_drag_and_as_many_keys_choose_the_same() {
        let by_drag = moved_by_mm(&platform(), &a_draft(), 0.3, 0.0);
        let by_keys = moved_by_steps(&platform(), &a_draft(), (3, 0));
        assert_eq!(by_drag, by_keys);
        assert_eq!(by_drag, [Event::Choose(Decision::OffsetFacial, Some(Value::Number(-7)))]);
    }

    #[test]
    fn a_drag_beyond_the_range_stops_at_its_end() {
        let far = moved_by_mm(&platform(), &a_draft(), 500.0, 0.0);
        assert_eq!(far, [Event::Choose(Decision::OffsetFacial, Some(Value::Number(60)))]);
    }

    #[test]
    fn a_corner_is_placed_in_words_and_never_with_a_bare_sign() {
        assert_eq!(placed(-55, ["mesially", "distally"]), "5.5 mm mesially");
        assert_eq!(placed(0, ["orally", "apically"]), "0.0 mm apically");
        assert_eq!(placed(140, ["orally", "apically"]), "14.0 mm apically");
    }

    #[test]
    fn a_mirrored_handle_moves_the_other_way() {
        let mirrored = Handle { across: Some((Decision::OffsetFacial, -10.0)), ..platform() };
        let events = moved_by_mm(&mirrored, &a_draft(), 0.3, 0.0);
        assert_eq!(events, [Event::Choose(Decision::OffsetFacial, Some(Value::Number(-13)))]);
    }
}
