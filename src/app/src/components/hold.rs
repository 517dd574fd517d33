//! A state of a view, compiled once: the framework's own is compiled anew for each type that it is
//! given, a kilobyte or more every time.

use super::changed::same;
use std::any::Any;
use std::fmt;
use std::marker::PhantomData;
use std::ops::Deref;
use std::rc::Rc;
use wasm_bindgen::UnwrapThrowExt;
use yew::prelude::*;

/// Something of any type.
pub type Thing = Rc<dyn Any>;

/// A state of a view.
pub struct Held<T> {
    state: UseStateHandle<Thing>,
    /// What it was when the view was drawn: by this it differs from what an earlier view was given.
    drawn: Thing,
    of: PhantomData<T>,
}

impl<T: 'static> Held<T> {
    /// Has the view drawn again with this.
    pub fn set(&self, value: T) {
        self.state.set(Rc::new(value));
    }
}

impl<T> Clone for Held<T> {
    fn clone(&self) -> Self {
        Self { state: self.state.clone(), drawn: self.drawn.clone(), of: PhantomData }
    }
}

impl<T: 'static> Deref for Held<T> {
    type Target = T;

    /// What was set last, drawn or not: two answers may come before the view is drawn again.
    fn deref(&self) -> &T {
        self.state.downcast_ref().unwrap_throw()
    }
}

impl<T: PartialEq + 'static> PartialEq for Held<T> {
    fn eq(&self, other: &Self) -> bool {
        same::<T>(&*self.drawn, &*other.drawn)
    }
}

impl<T: fmt::Debug + 'static> fmt::Debug for Held<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        (**self).fmt(f)
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
    let drawn = Thing::clone(&state);
    Held { state, drawn, of: PhantomData }
}

/// A hook keeps one type, as the framework's own do: nothing that is read or typed in changes it.
pub fn typed<T: 'static>(thing: &Thing) -> Rc<T> {
    thing.clone().downcast().unwrap_throw()
}
