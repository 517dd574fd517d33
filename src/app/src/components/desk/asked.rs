//! What the cases to be drawn must have.

use crate::components::fields::{one_of, share};
use crate::components::hold::Held;
use engine::cases::{Archetype, Constraints, Spread, Within};
use yew::prelude::*;

const YES_NO: [(&str, &str); 3] = [("", "either"), ("yes", "yes"), ("no", "no")];

/// What is asked for, as the fields have it.
#[derive(Debug, Clone, PartialEq)]
pub struct Asked {
    /// How they are spread.
    pub spread: Spread,
    /// What decides something in them.
    pub archetype: Option<Archetype>,
    /// In the upper jaw or the lower.
    pub upper: Option<bool>,
    /// With a margin that shows or without.
    pub aesthetic: Option<bool>,
    /// How hard, from and to, percent.
    pub hard: [u8; 2],
}

impl Asked {
    /// Anything.
    pub const ANY: Self = Self {
        spread: Spread::Teaching,
        archetype: None,
        upper: None,
        aesthetic: None,
        hard: [0, 100],
    };

    /// The same as the generator takes it. A range that leaves nothing out is none: it would cost a
    /// weighing of each case.
    pub fn constraints(&self) -> Constraints {
        let [from, to] = self.hard.map(|share| f64::from(share) / 100.0);
        let difficulty =
            (self.hard != Self::ANY.hard).then(|| Within::new(from, to).ok()).flatten();
        let Self { archetype, upper, aesthetic, .. } = *self;
        Constraints { archetype, tooth: None, upper, aesthetic, difficulty }
    }
}

/// The fields.
pub fn fields(asked: &Held<Asked>) -> Vec<Html> {
    let told = |change: fn(&mut Asked, &str)| {
        let asked = asked.clone();
        Callback::from(move |text: String| {
            let mut now = (*asked).clone();
            change(&mut now, &text);
            asked.set(now);
        })
    };
    let said = |truth: Option<bool>| truth.map_or("", |yes| if yes { "yes" } else { "no" });
    let mut kinds = vec![("", "anything")];
    kinds.extend(Archetype::ALL.iter().map(|one| (one.key(), one.words())));
    let spreads = [
        (Spread::Teaching.key(), "teaching cases of one root"),
        (Spread::Population.key(), "as teeth occur, one root"),
        (Spread::WholeMouth.key(), "teaching cases of the whole mouth"),
    ];
    let spread = told(|asked, key| {
        asked.spread = Spread::ALL.into_iter().find(|one| one.key() == key).unwrap_or_default();
    });
    let kind = told(|asked, key| {
        asked.archetype = Archetype::ALL.iter().copied().find(|one| one.key() == key);
    });
    let upper = told(|asked, key| asked.upper = (!key.is_empty()).then_some(key == "yes"));
    let shows = told(|asked, key| asked.aesthetic = (!key.is_empty()).then_some(key == "yes"));
    let chosen = asked.archetype.map_or("", Archetype::key);
    let [from, to] = asked.hard;
    vec![
        one_of("desk-spread", "Drawn", &spreads, asked.spread.key(), spread),
        one_of("desk-kind", "What decides them", &kinds, chosen, kind),
        one_of("desk-upper", "In the upper jaw", &YES_NO, said(asked.upper), upper),
        one_of("desk-shows", "With a margin that shows", &YES_NO, said(asked.aesthetic), shows),
        share("desk-from", "Difficulty from", from, end(asked, 0)),
        share("desk-to", "Difficulty to", to, end(asked, 1)),
    ]
}

/// One end of the range; the other gives way, so that there always is one.
fn end(asked: &Held<Asked>, place: usize) -> Callback<u8> {
    let asked = asked.clone();
    Callback::from(move |share: u8| {
        let mut now = (*asked).clone();
        let [from, to] = now.hard;
        now.hard = if place == 0 { [share, to.max(share)] } else { [from.min(share), share] };
        asked.set(now);
    })
}
