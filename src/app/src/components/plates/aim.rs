//! Aiming the film once more.

use super::dial::{Dial, dial};
use super::receptors::receptors;
use super::{PlateProps, same_attempt};
use crate::components::figure::still;
use crate::components::hold::use_held;
use crate::components::plain::{folded, line, press};
use crate::components::view::keyed;
use crate::store::{Action, Bench};
use engine::anatomy::Site;
use engine::figures::{self, Figure};
use engine::imaging::Aim;
use engine::session::{Event, Exposure, Moment};
use std::rc::Rc;
use yew::prelude::{Callback, Html, MouseEvent, Properties, component};

/// What aiming needs.
#[derive(Properties)]
pub struct AimingProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// How the film before was aimed.
    pub before: Exposure,
    /// When it would be taken.
    pub moment: Moment,
    /// Told when it is taken.
    pub act: Callback<Action>,
}

impl PartialEq for AimingProps {
    fn eq(&self, other: &Self) -> bool {
        same_attempt(&self.bench, &other.bench)
            && self.before == other.before
            && self.moment == other.moment
    }
}

/// Another of these each time that so many films have been taken.
pub fn aiming(films: usize, plate: &PlateProps, before: Exposure, moment: Moment) -> Html {
    let PlateProps { bench, act } = plate;
    let props = AimingProps { bench: bench.clone(), before, moment, act: act.clone() };
    keyed::<Aiming>(&films.to_string(), props)
}

/// Tube and receptor to be turned, drawn as they stand, and the exposure.
#[component]
pub fn Aiming(props: &AimingProps) -> Html {
    let before = props.before;
    let aim = use_held(move || before);
    let turn = |set: fn(&mut Exposure, f64)| {
        let aim = aim.clone();
        Callback::from(move |value: f64| {
            let mut turned = *aim;
            set(&mut turned, value);
            aim.set(turned);
        })
    };
    let most = f64::from(Exposure::MOST);
    let angle = |name, value: i8, ways: [&str; 2], set: fn(&mut Exposure, f64)| Dial {
        name,
        unit: "degrees",
        range: [-most, most, 1.0],
        value: f64::from(value),
        words: figures::tube_words(f64::from(value), ways),
        on_turn: turn(set),
    };
    let lean = Dial {
        name: "Receptor leans",
        unit: "degrees",
        range: [0.0, most, 1.0],
        value: f64::from(aim.lean),
        words: if aim.lean == 0 { "parallel to the tooth" } else { "its apical end further in" }
            .to_owned(),
        on_turn: turn(|aim, value| aim.lean = whole(value).unsigned_abs()),
    };
    let expose = {
        let (act, aim) = (props.act.clone(), *aim);
        Callback::from(move |_: MouseEvent| act.emit(Action::Do(Event::Expose(aim))))
    };
    let site = &props.bench.session.case().site;
    let figure = drawn(site, *aim);
    let [up_and_down, to_and_fro] = [figures::UP_AND_DOWN, figures::TO_AND_FRO];
    let vertical = angle("Tube, up and down", aim.vertical, up_and_down, |aim, value| {
        aim.vertical = whole(value);
    });
    let horizontal = angle("Tube, to and fro", aim.horizontal, to_and_fro, |aim, value| {
        aim.horizontal = whole(value);
    });
    let summary = match props.moment {
        Moment::FollowedUp => "Take a film at follow-up",
        _ => "Take it again, aimed otherwise",
    };
    let parts = vec![
        still(figure, Some("tube".into())),
        dial(&vertical),
        dial(&horizontal),
        dial(&lean),
        receptors(&aim),
        line("p", "ask", "Each film is a dose: repeats are counted, and cost no marks."),
        press(&[], "Expose".to_owned(), expose),
    ];
    folded("aiming", summary.to_owned(), parts)
}

/// A dial's whole degrees.
fn whole(value: f64) -> i8 {
    #[expect(clippy::cast_possible_truncation, reason = "a dial's range is within 40")]
    let degrees = value.round() as i8;
    degrees
}

/// Tube and receptor as they stand, about as wide as it will be drawn: letters are sized for it.
fn drawn(site: &Site, aim: Exposure) -> Figure {
    let px = super::drawing_width();
    figures::tube(site, &aim.aim(Aim::usual(site)), px)
}
