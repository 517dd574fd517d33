//! Taking hold of a handle: by pointer, each frame a preview and the end a choice; by keys, each
//! press a choice.

use crate::amount::directed;
use crate::store::{Action, Said};
use engine::anatomy::Tooth;
use engine::figures::Handle;
use engine::geometry::{Outline, OutlineFault};
use engine::plan::{Decision, Draft, Kind, NumberKind, Value};
use engine::session::Event;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{DomRect, Element, PointerEvent};
use yew::Callback;

/// A drag under way.
#[derive(Debug)]
pub struct Drag;

/// Told how far the pointer has gone, millimetres to the right and down, and whether it was let go.
pub type Going = Rc<dyn Fn(f64, f64, bool)>;
type Listener = Closure<dyn FnMut(PointerEvent)>;
/// The choices that come of moving something, or the sentence that says why it cannot be moved so.
pub type Moved = Result<Vec<Event>, Said>;

impl Drag {
    /// Follows the pointer until it is let go; `window` is the figure's width and height in millimetres.
    pub fn begin(event: &PointerEvent, window: [f64; 2], going: Going) {
        // The drawing takes the pointer: it stays, while a handle may go as corners come.
        let Some(target) = drawing_of(event) else { return };
        let pixels = pixels_per_mm(&target.get_bounding_client_rect(), window);
        if pixels <= 0.0 || target.set_pointer_capture(event.pointer_id()).is_err() {
            return;
        }
        let from = (f64::from(event.client_x()), f64::from(event.client_y()));
        let tell = move |event: &PointerEvent, over: bool| {
            let right = (f64::from(event.client_x()) - from.0) / pixels;
            let down = (f64::from(event.client_y()) - from.1) / pixels;
            going(right, down, over);
        };
        let tell = Rc::new(tell);
        let over = Rc::new(Cell::new(false));
        let listeners: Rc<RefCell<Vec<Listener>>> = Rc::default();
        let moving = {
            let (tell, over) = (tell.clone(), over.clone());
            Closure::new(move |event: PointerEvent| {
                if !over.get() {
                    tell(&event, false);
                }
            })
        };
        let ending = {
            let (listeners, target) = (listeners.clone(), target.clone());
            Closure::new(move |event: PointerEvent| {
                if over.replace(true) {
                    return;
                }
                tell(&event, true);
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

/// Tries what a drag makes of a handle's choices, and chooses it once it is let go.
pub fn going(handle: Handle, draft: Draft, act: Callback<Action>) -> Going {
    Rc::new(move |right, down, over| {
        let moved = moved_by_mm(&handle, &draft, right, down);
        if over {
            settle(moved, &act);
        } else {
            act.emit(match moved {
                Ok(events) => Action::Try(events),
                Err(said) => Action::Say(said),
            });
        }
    })
}

/// Chooses what came of a movement, or says why nothing did; whether anything was chosen.
pub fn settle(moved: Moved, act: &Callback<Action>) -> bool {
    match moved {
        Ok(events) => {
            let any = !events.is_empty();
            events.into_iter().for_each(|event| act.emit(Action::Do(event)));
            any
        }
        Err(said) => {
            act.emit(Action::Say(said));
            false
        }
    }
}

/// The drawing that a pointer went down on. Yew hears events at the root of the page, so the event's
/// own current target is that root.
fn drawing_of(event: &PointerEvent) -> Option<Element> {
    let hit = event.target()?.dyn_into::<Element>().ok()?;
    hit.closest("svg").ok()?
}

thread_local! {
    /// When and where a corner was last pressed.
    static PRESSED: Cell<(f64, i32, i32)> = const { Cell::new(NEVER) };
}
const NEVER: (f64, i32, i32) = (f64::NEG_INFINITY, 0, 0);

/// Whether a corner is pressed for the second time in a row. The browser's own double press would be
/// told to the drawing, which has taken the pointer.
pub fn is_second_press(handle: &Handle, event: &PointerEvent) -> bool {
    if handle.makes || handle.vertex.is_none() {
        PRESSED.set(NEVER);
        return false;
    }
    let now = (event.time_stamp(), event.client_x(), event.client_y());
    let (before, x, y) = PRESSED.replace(now);
    let second = now.0 - before < 400.0 && (now.1 - x).abs() + (now.2 - y).abs() < 12;
    if second {
        PRESSED.set(NEVER);
    }
    second
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
///
/// # Errors
/// A sentence when an outline cannot be so.
pub fn moved_by_steps(handle: &Handle, draft: &Draft, (right, down): (i32, i32)) -> Moved {
    if let Some(vertex) = handle.vertex {
        let ways = (way(handle.across), way(handle.down));
        return vertex_moved(handle, vertex, draft, right * ways.0, down * ways.1);
    }
    let axis = |axis: Option<(Decision, f64)>, steps: i32| {
        let (decision, counts) = axis?;
        let kind = number(decision)?;
        let by = steps * kind.by * if counts < 0.0 { -1 } else { 1 };
        (steps != 0).then(|| counted(decision, &kind, draft, by))?
    };
    Ok([axis(handle.across, right), axis(handle.down, down)].into_iter().flatten().collect())
}

/// The choices that move a handle by millimetres of its figure.
///
/// # Errors
/// A sentence when an outline cannot be so.
pub fn moved_by_mm(handle: &Handle, draft: &Draft, right: f64, down: f64) -> Moved {
    #[expect(clippy::cast_possible_truncation, reason = "a screen is a few thousand tenths wide")]
    let whole = |value: f64| value.clamp(-1e4, 1e4).round() as i32;
    if let Some(vertex) = handle.vertex {
        let (s, t) =
            (whole(right * 10.0) * way(handle.across), whole(down * 10.0) * way(handle.down));
        return vertex_moved(handle, vertex, draft, s, t);
    }
    let axis = |axis: Option<(Decision, f64)>, mm: f64| {
        let (decision, counts) = axis?;
        let kind = number(decision)?;
        let by = whole(mm * counts / f64::from(kind.by)) * kind.by;
        counted(decision, &kind, draft, by)
    };
    Ok([axis(handle.across, right), axis(handle.down, down)].into_iter().flatten().collect())
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

/// A vertex moved, or made on its edge and then moved.
fn vertex_moved(
    handle: &Handle,
    (decision, place): (Decision, usize),
    draft: &Draft,
    s: i32,
    t: i32,
) -> Moved {
    changed(handle, draft, |outline| {
        let made = if handle.makes { outline.with_corner(place)? } else { outline.clone() };
        let mut vertices = made.tenths().to_vec();
        let place = if handle.makes { place + 1 } else { place };
        let Some(vertex) = vertices.get_mut(place) else { return Ok(made) };
        *vertex = [vertex[0] + s, vertex[1] + t];
        Outline::new(vertices)
    })
    .map(|event| event.filter(|event| *event != chosen(decision, draft)).into_iter().collect())
}

fn chosen(decision: Decision, draft: &Draft) -> Event {
    Event::Choose(decision, draft.outline(decision).cloned().map(Value::Outline))
}

/// The choice of an outline that has been changed, or the sentence that says why it cannot be.
fn changed(
    handle: &Handle,
    draft: &Draft,
    change: impl FnOnce(&Outline) -> Result<Outline, OutlineFault>,
) -> Result<Option<Event>, Said> {
    let Some((decision, _)) = handle.vertex else { return Ok(None) };
    let Some(outline) = draft.outline(decision) else { return Ok(None) };
    match change(outline) {
        Ok(outline) => Ok(Some(Event::Choose(decision, Some(Value::Outline(outline))))),
        Err(fault) => {
            let words = format!("{}: {fault}.", handle.label);
            Err(Said { about: decision, wrong: true, words })
        }
    }
}

/// The choice of one corner more after that of the handle, or of one less.
///
/// # Errors
/// A sentence when the outline cannot be so.
pub fn corner_changed(handle: &Handle, draft: &Draft, more: bool) -> Moved {
    let place = handle.vertex.map_or(0, |(_, place)| place);
    let change = |outline: &Outline| {
        if more { outline.with_corner(place) } else { outline.without_corner(place) }
    };
    changed(handle, draft, change).map(|event| event.into_iter().collect())
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
            makes: false,
        }
    }

    /// A handle on a corner of the membrane, or on the edge that begins there, and its draft.
    fn on_patch(place: usize, makes: bool) -> (Handle, Draft) {
        let decision = Decision::MembraneOutline;
        let mut draft = Draft::empty();
        draft.choose(decision, Value::Outline(Outline::patch())).unwrap();
        let ways = (Some((decision, -10.0)), Some((decision, 10.0)));
        let vertex = Some((decision, place));
        (Handle { across: ways.0, down: ways.1, vertex, makes, ..platform() }, draft)
    }

    fn corners(moved: Moved) -> Vec<[i32; 2]> {
        match &moved.unwrap()[..] {
            [Event::Choose(Decision::MembraneOutline, Some(Value::Outline(outline)))] => {
                outline.tenths().to_vec()
            }
            other => panic!("{other:?}"),
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
        let by_drag = moved_by_mm(&platform(), &a_draft(), 0.3, 0.0).unwrap();
        let by_keys = moved_by_steps(&platform(), &a_draft(), (3, 0)).unwrap();
        assert_eq!(by_drag, by_keys);
        assert_eq!(by_drag, [Event::Choose(Decision::OffsetFacial, Some(Value::Number(-7)))]);
    }

    #[test]
    fn a_drag_beyond_the_range_stops_at_its_end() {
        let far = moved_by_mm(&platform(), &a_draft(), 500.0, 0.0).unwrap();
        assert_eq!(far, [Event::Choose(Decision::OffsetFacial, Some(Value::Number(60)))]);
    }

    #[test]
    fn taking_hold_of_an_edge_makes_a_corner_that_goes_where_it_is_pulled() {
        let (edge, draft) = on_patch(1, true);
        // Distal lies to the left here.
        let pulled = corners(moved_by_mm(&edge, &draft, -1.0, 0.5));
        assert_eq!(pulled, [[-20, -10], [20, -10], [30, 15], [20, 30], [-20, 30]]);
        // Let go at once, the corner lies on the edge.
        assert_eq!(corners(moved_by_mm(&edge, &draft, 0.0, 0.0))[2], [20, 10]);
        let (corner, draft) = on_patch(1, false);
        assert_eq!(moved_by_mm(&corner, &draft, 0.0, 0.0), Ok(vec![]));
    }

    #[test]
    fn keys_add_the_corner_that_a_press_on_the_edge_adds_and_take_one_away() {
        let (edge, draft) = on_patch(3, true);
        let (corner, _) = on_patch(3, false);
        let by_keys = corner_changed(&corner, &draft, true);
        assert_eq!(by_keys, moved_by_mm(&edge, &draft, 0.0, 0.0));
        assert_eq!(corners(corner_changed(&corner, &draft, false)).len(), 3);
    }

    #[test]
    fn a_corner_that_would_cross_the_outline_is_refused_by_its_name() {
        let (corner, draft) = on_patch(1, false);
        let why = moved_by_mm(&corner, &draft, 6.0, 2.0).unwrap_err();
        assert_eq!((why.about, why.wrong), (Decision::MembraneOutline, true));
        assert!(
            why.words
                .starts_with("platform: the edge from corner 2 crosses the edge from corner 4"),
            "{why:?}"
        );
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
        let events = moved_by_mm(&mirrored, &a_draft(), 0.3, 0.0).unwrap();
        assert_eq!(events, [Event::Choose(Decision::OffsetFacial, Some(Value::Number(-13)))]);
    }
}
