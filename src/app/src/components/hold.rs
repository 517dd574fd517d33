//! A state of a view, compiled once: the framework's own is compiled anew for each type that it is
//! given, a kilobyte or more every time.

use std::any::Any;
use std::fmt;
use std::ops::Deref;
use std::rc::Rc;
use yew::prelude::*;

/// Something of any type.
pub type Thing = Rc<dyn Any>;

/// A state of a view.
pub struct Held<T> {
    state: UseStateHandle<Thing>,
    value: Rc<T>,
}

impl<T: 'static> Held<T> {
    /// Has the view drawn again with this.
    pub fn set(&self, value: T) {
        self.state.set(Rc::new(value));
    }
}

impl<T> Clone for Held<T> {
    fn clone(&self) -> Self {
        Self { state: self.state.clone(), value: self.value.clone() }
    }
}

impl<T> Deref for Held<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.value
    }
}

impl<T: PartialEq> PartialEq for Held<T> {
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value
    }
}

impl<T: fmt::Debug> fmt::Debug for Held<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.value.fmt(f)
    }
}

#[hook]
fn use_thing(first: Box<dyn FnOnce() -> Thing>) -> UseStateHandle<Thing> {
    use_state(first)
}

/// A state that is this at first.
#[hook]
pub fn use_held<T: 'static>(first: impl FnOnce() -> T + 'static) -> Held<T> {
    let state = use_thing(Box::new(move || Rc::new(first())));
    let value = typed(&state);
    Held { state, value }
}

/// A hook keeps one type, as the framework's own do: nothing that is read or typed in changes it.
pub fn typed<T: 'static>(thing: &Thing) -> Rc<T> {
    wasm_bindgen::UnwrapThrowExt::unwrap_throw(thing.clone().downcast())
}
