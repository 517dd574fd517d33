//! What is done again whenever something has changed, compiled once and not for each type.

use super::hold::{Thing, typed};
use std::any::Any;
use std::cell::RefCell;
use std::fmt;
use std::rc::Rc;
use yew::prelude::*;

/// What something hangs on, to be compared with what it was before.
#[derive(Clone)]
pub struct On {
    /// The thing itself.
    pub thing: Thing,
    same: fn(&dyn Any, &dyn Any) -> bool,
}

impl PartialEq for On {
    fn eq(&self, other: &Self) -> bool {
        (self.same)(&*self.thing, &*other.thing)
    }
}

impl fmt::Debug for On {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("On")
    }
}

/// Hangs on this.
pub fn on<T: PartialEq + 'static>(thing: T) -> On {
    On { thing: Rc::new(thing), same: same::<T> }
}

/// Whether two things of one type are equal.
pub fn same<T: PartialEq + 'static>(one: &dyn Any, other: &dyn Any) -> bool {
    one.downcast_ref::<T>()
        .zip(other.downcast_ref())
        .is_some_and(|(one, other): (&T, &T)| one == other)
}

type Act = Box<dyn FnOnce(&dyn Any)>;

#[hook]
fn use_change(on: On, act: Act) {
    use_effect_with(on, move |on: &On| act(&*on.thing));
}

/// Acts once the view stands on the page, and again whenever this has changed.
#[hook]
pub fn use_changed<T: PartialEq + 'static>(thing: T, act: impl FnOnce(&T) + 'static) {
    let act = move |thing: &dyn Any| {
        if let Some(thing) = thing.downcast_ref() {
            act(thing);
        }
    };
    use_change(on(thing), Box::new(act));
}

type Store = Rc<RefCell<Option<(On, Thing)>>>;

#[hook]
fn use_store() -> Store {
    use_mut_ref(|| None)
}

/// What is worked out of something, and again whenever that has changed.
#[hook]
pub fn use_worked<T: 'static, D: PartialEq + 'static>(of: D, work: impl FnOnce(&D) -> T) -> Rc<T> {
    let store = use_store();
    let of = on(of);
    if let Some(kept) = kept(&store, &of) {
        return typed(&kept);
    }
    let of_thing = typed(&of.thing);
    let made = Rc::new(work(&of_thing));
    keep(&store, of, made.clone());
    made
}

fn kept(store: &Store, of: &On) -> Option<Thing> {
    let store = store.borrow();
    store.as_ref().filter(|(on, _)| on == of).map(|(_, made)| made.clone())
}

fn keep(store: &Store, of: On, made: Thing) {
    *store.borrow_mut() = Some((of, made));
}
