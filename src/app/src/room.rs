//! The room as a whole: head, place, foot.

use crate::components::changed::use_changed;
use crate::components::plain::{button, el, line, link, refused, said, text, with};
use crate::components::view::view;
use crate::effects;
use crate::handout::with_given;
use crate::judging::judging;
use crate::keep::Kept;
use crate::keep::told::Told;
use crate::library::Library;
use crate::pages::bench::{BenchPage, BenchProps};
use crate::pages::briefing::briefing;
use crate::pages::home::home;
use crate::prose::{Prose, use_prose};
use crate::results::{Part, is_packaged};
use crate::route::Route;
use crate::store::{Action, Notation, Room as State};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The parts of the room.
const PARTS: [(&str, &str); 5] = [
    ("#/today", "Today"),
    ("#/review", "Review"),
    ("#/protocol", "Protocol"),
    ("#/limits", "Limits"),
    ("#/briefing", "Briefing"),
];
/// What stands over a page that is not there.
const NOWHERE: &str = "This leads nowhere";
/// What stands under everything.
pub const FOOT: &str =
    "Synthetic cases, for teaching. Never clinical advice. Nothing leaves this browser.";

/// The room.
#[component]
pub fn Room() -> Html {
    let room = use_reducer(|| {
        // What the host of a package keeps is waited for as if it were kept here.
        let kept_before = effects::has_kept() || is_packaged();
        State::open(Route::read(&effects::fragment()), effects::was_briefed(), kept_before)
    });
    use_address(&room);
    use_library(&room);
    use_keeping(&room);
    // Rules and their long texts come once a case is on the bench or a rule is read: the first case
    // never waits, unless who draws it comes with them.
    let of_rules =
        !matches!(room.route, Route::Home | Route::Briefing | Route::Nowhere(_) | Route::Case(_));
    let on_bench = room.bench.is_some() || room.fetching.is_some();
    use_judge(&room, on_bench || of_rules || room.kept_before || room.waits_for_the_judge());
    let prose = use_prose(on_bench || of_rules, room.judging);
    let name = {
        let room = room.clone();
        let next = match room.notation {
            Notation::TwoDigits => Notation::OneToThirtyTwo,
            Notation::OneToThirtyTwo => Notation::TwoDigits,
        };
        Callback::from(move |_: MouseEvent| room.dispatch(Action::Name(next)))
    };
    let notation = match room.notation {
        Notation::TwoDigits => "Teeth: two digits",
        Notation::OneToThirtyTwo => "Teeth: 1 to 32",
    };
    html! {
        <ContextProvider<Prose> context={prose.clone()}>
            { room.judging.map(|judging| (judging.hatchings)()) }
            { skip() }
            { head(button(notation, name)) }
            { not_kept(&room) }
            { shown(&room, Part::Above) }
            <main id="room-place" tabindex="-1">{ place(&room, &prose) }</main>
            { el("footer", "room-foot", vec![shown(&room, Part::Foot).unwrap_or_else(|| line("p", "", FOOT))]) }
        </ContextProvider<Prose>>
    }
}

/// What the results put into a part of the room; nothing where the room hands in nowhere, or not yet.
fn shown(room: &UseReducerHandle<State>, part: Part) -> Option<Html> {
    let judging = room.judging.filter(|_| is_packaged())?;
    Some((judging.results)(part, room.clone()))
}

/// The way past the head of the room, for who goes by keys.
fn skip() -> Html {
    let past = Callback::from(|event: MouseEvent| {
        event.prevent_default();
        effects::focus("room-place");
    });
    html! { <a class="skip" href="#room-place" onclick={past}>{ "Skip to the case" }</a> }
}

/// The room's name, and the ways to its parts.
fn head(notation: Html) -> Html {
    let part =
        |(href, words): (&'static str, &'static str)| link(href.to_owned(), words.to_owned());
    // What is due and the review are about more than one set.
    let places = PARTS.into_iter().skip(if is_packaged() { 2 } else { 0 });
    let mut parts: Vec<Html> = places.map(part).collect();
    parts.push(notation);
    let name = [("class", "name"), ("href", "#/")];
    let name = with("a", &name, vec![text("Wallwise".to_owned())]);
    el("header", "room-head", vec![name, with("nav", &[("aria-label", "Room")], parts)])
}

fn place(room: &UseReducerHandle<State>, prose: &Prose) -> Html {
    let read = {
        let room = room.clone();
        Callback::from(move |()| {
            effects::remember_briefing();
            if room.route == Route::Briefing {
                effects::go("#/");
            }
            room.dispatch(Action::Briefed);
        })
    };
    if !room.briefed || room.route == Route::Briefing {
        return briefing(read);
    }
    match &room.route {
        Route::Home | Route::Briefing if is_packaged() => {
            shown(room, Part::Home).unwrap_or_else(|| waiting(room, "The set is on its way."))
        }
        Route::Home | Route::Briefing => home(&room.library, room.kept_before),
        Route::Protocol => match room.judging {
            Some(judging) => (judging.protocol)(prose),
            None => waiting(room, "The rules are on their way."),
        },
        Route::Rule(id) => match room.judging {
            Some(judging) => (judging.rule)(id.clone()),
            None => waiting(room, "The rules are on their way."),
        },
        Route::Pair(address, set) => match room.judging {
            Some(judging) => (judging.pair)(*address, set.as_deref(), &room.library),
            None => waiting(room, "The two cases are on their way."),
        },
        Route::Limits => match room.judging {
            Some(judging) => (judging.limits)(),
            None => waiting(room, "The limits are on their way."),
        },
        Route::Guide | Route::Desk | Route::Given(_) | Route::Class => match room.judging {
            Some(judging) => (judging.teach)(room.clone()),
            None => waiting(room, "The page is on its way."),
        },
        Route::Nowhere(why) => refused(NOWHERE, why),
        Route::Today | Route::Sitting(_) | Route::Review | Route::Portfolio | Route::Keeping => {
            match room.judging {
                Some(judging) => (judging.own)(room.clone()),
                None => waiting(room, "What you have done here is on its way."),
            }
        }
        Route::Case(_) | Route::Attempt(..) => match &room.bench {
            Some(bench) => {
                view::<BenchPage>(BenchProps { bench: bench.clone(), room: room.clone() })
            }
            None => waiting(room, "The case is on its way."),
        },
    }
}

/// What stands where something is still to come, or did not.
fn waiting(room: &State, says: &'static str) -> Html {
    match &room.trouble {
        Some(why) => refused(NOWHERE, why),
        None => line("p", "page", says),
    }
}

/// Said for as long as nothing is kept.
fn not_kept(room: &UseReducerHandle<State>) -> Html {
    let Kept::Without(why) = &room.kept else { return Html::default() };
    let again = {
        let room = room.clone();
        Callback::from(move |_: MouseEvent| room.dispatch(Action::Keep(Told::AskAgain)))
    };
    let says = format!(
        "{why} You can go on, but what you do will be gone with this tab unless you save it as a file."
    );
    let save = link("#/keeping".to_owned(), "Save it as a file".to_owned());
    let ways = el("p", "row", vec![save, button("Try again", again)]);
    let attributes = [("class", "not-kept"), ("role", "status")];
    with("div", &attributes, vec![said("p", "", says), ways])
}

/// Keeps what is done, and fetches what is wanted of it.
#[hook]
fn use_keeping(room: &UseReducerHandle<State>) {
    let (tell, kept) = (room.dispatcher(), room.kept.clone());
    {
        let tell = tell.clone();
        use_changed((room.judging, room.asked_to_keep), move |(judging, _)| {
            if let Some(judging) = judging {
                (judging.open)(tell);
            }
        });
    }
    use_changed(matches!(kept, Kept::Here(_)), |kept| effects::promise_keeping(*kept));
    let changed = (room.judging, room.bench.clone(), room.fetching.clone(), kept);
    use_changed(changed, move |(judging, bench, fetching, kept)| {
        let Some(judging) = judging else { return };
        match (bench, fetching) {
            (Some(bench), _) => (judging.follow)(bench, kept, &tell),
            (None, Some(key)) => (judging.fetch)(key.clone(), tell),
            (None, None) => {}
        }
    });
}

/// Follows the address.
#[hook]
fn use_address(room: &UseReducerHandle<State>) {
    let room = room.clone();
    use_changed((), move |()| {
        let listener = Closure::<dyn FnMut()>::new(move || {
            room.dispatch(Action::Go(Route::read(&effects::fragment())))
        });
        if let Some(window) = web_sys::window() {
            let _ = window
                .add_event_listener_with_callback("hashchange", listener.as_ref().unchecked_ref());
        }
        // The room stays for as long as the page, and so does what listens for it.
        listener.forget();
    });
}

/// Fetches the judge once it is wanted.
#[hook]
fn use_judge(room: &UseReducerHandle<State>, wanted: bool) {
    let room = room.clone();
    use_changed((wanted, room.retries), move |(wanted, _)| {
        if *wanted && room.judging.is_none() {
            spawn_local(async move {
                let judging = judging().await.map(Box::new).map_err(|fault| fault.to_string());
                room.dispatch(Action::Judge(judging));
            });
        }
    });
}

/// Fetches the shipped sets once.
#[hook]
fn use_library(room: &UseReducerHandle<State>) {
    let room = room.clone();
    use_changed((), move |()| {
        spawn_local(async move {
            let read = effects::fetch_text("sets").await.and_then(|text| {
                serde_json::from_str(&text)
                    .map_err(|fault| format!("the sets cannot be read: {fault}"))
            });
            room.dispatch(Action::Library(match read {
                Ok(sets) => with_given(sets),
                Err(why) => Library::Trouble(why),
            }));
        });
    });
}
