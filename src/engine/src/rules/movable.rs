//! How far a set may move a limit, and why not farther: from a rule's own figures.

use super::bands::{Bands, Cut, Zone};
use super::local::{Debated, Held, Local, Moved, Worth};
use super::rule::{Rule, Scale, Situation};
use crate::debrief::{plain, with_unit};
use crate::units::comparable;
use core::fmt;

/// A limit and how far it may be moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Movable {
    /// The limit, as it stands.
    pub cut: Cut,
    /// Least and greatest figure that sources give: for the limit itself, or, where one side of it is
    /// debated, as far as the debate goes.
    pub spread: [f64; 2],
    /// Between what a set may put it: of a rule that can say *unsafe* on the stricter side only.
    pub allowed: [f64; 2],
}

impl Movable {
    /// Whether there is anywhere to move it.
    #[must_use]
    pub const fn moves(&self) -> bool {
        self.allowed[0] < self.allowed[1]
    }
}

/// Every limit of a rule, from the lowest, with how far it may be moved; none of a rule of situations.
#[must_use]
pub fn movable(rule: &Rule) -> Vec<Movable> {
    match &rule.scale {
        Scale::Bands(bands) => {
            let keeps_safe = rule.cost() == Zone::Unsafe;
            (0..bands.cuts.len()).map(|place| limit(bands, place, keeps_safe)).collect()
        }
        Scale::Situations(_) => Vec::new(),
    }
}

fn limit(bands: &Bands<'_>, place: usize, keeps_safe: bool) -> Movable {
    let cut = bands.cuts[place];
    let below = place.checked_sub(1).and_then(|before| bands.cuts.get(before));
    let zone_below = below.map_or(bands.lowest, |before| before.then);
    let [mut least, mut most] = cut.published;
    // A debate that ends on both sides is a spread of published figures; one that goes on for ever
    // gives none.
    if let (Zone::Debated, Some(before)) = (zone_below, below) {
        least = least.min(before.at);
    }
    if let (Zone::Debated, Some(next)) = (cut.then, bands.cuts.get(place + 1)) {
        most = most.max(next.at);
    }
    let spread = [least, most];
    let allowed = match (keeps_safe, zone_below > cut.then) {
        (false, _) => spread,
        // What lies below is worse: the stricter limit is the higher.
        (true, true) => [cut.at, most],
        (true, false) => [least, cut.at],
    };
    Movable { cut, spread, allowed }
}

/// Which of a rule's limits a set means, of several at one value the first that may be moved there.
fn meant(rule: &Rule, moved: &Moved) -> Option<usize> {
    let all = movable(rule);
    let at_it = |one: &Movable| comparable(moved.from) == one.cut.at;
    let fits = |one: &Movable| one.allowed[0] <= moved.to && moved.to <= one.allowed[1];
    let fitting = all.iter().position(|one| at_it(one) && fits(one));
    fitting
        .or_else(|| all.iter().position(|one| at_it(one) && one.moves()))
        .or_else(|| all.iter().position(at_it))
}

/// The cuts of a scale as a set has them, and those that it moved as they stand in the rule. A move that
/// may not be is left out.
pub(super) fn bands_moved(
    rule: &Rule,
    bands: &Bands<'_>,
    moved: &[&Moved],
) -> (Vec<Cut>, Vec<(Cut, f64)>) {
    let mut cuts = bands.cuts.to_vec();
    let mut moves = Vec::new();
    for one in moved.iter().filter(|one| check_move(rule, one).is_ok()) {
        if let Some(place) = meant(rule, one) {
            cuts[place].at = comparable(one.to);
            moves.push((bands.cuts[place], comparable(one.to)));
        }
    }
    // Limits that would pass each other say nothing: all stay.
    if cuts.windows(2).all(|pair| pair[0].at <= pair[1].at) {
        (cuts, moves)
    } else {
        (bands.cuts.to_vec(), Vec::new())
    }
}

/// Why a set may not decide this otherwise.
#[derive(Debug, Clone, PartialEq)]
pub enum Unfit {
    /// There is no such rule.
    NoRule(String),
    /// The rule tells situations apart and has no limit to move.
    NoLimits,
    /// It has none at this value; those that it has.
    NoLimit { from: f64, has: Vec<f64>, unit: &'static str },
    /// All sources agree on this one.
    Agreed { at: f64, unit: &'static str },
    /// Outside what is published.
    Outside { to: f64, spread: [f64; 2], unit: &'static str },
    /// A safety limit, to the laxer side.
    Laxer { to: f64, at: f64, allowed: [f64; 2], unit: &'static str },
    /// It would pass another limit of the rule.
    Passes { to: f64, unit: &'static str },
    /// The rule is there twice.
    Twice,
    /// Nothing about the rule is debated.
    NotDebated,
    /// A scale has one debated stretch and no situations.
    NoSituations,
    /// No such situation, or none that is debated; those that are.
    NoSituation { key: String, debated: Vec<&'static str> },
    /// What may be unsafe beyond the debate is not made acceptable within it.
    SafetyMadeLax,
}

impl fmt::Display for Unfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let with = |at: f64, unit: &str| with_unit(&plain(at), unit);
        let run = |[least, most]: &[f64; 2], unit: &str| {
            format!("from {} to {}", plain(*least), with(*most, unit))
        };
        match self {
            Self::NoRule(id) => write!(f, "found the rule \"{id}\", which does not exist"),
            Self::NoLimits => f.write_str(
                "the rule tells situations apart and has no limit to move; take a [[protocol.position]] on it where it is debated",
            ),
            Self::NoLimit { from, has, unit } => {
                let has: Vec<String> = has.iter().map(|at| with(*at, unit)).collect();
                write!(f, "found {}, expected a limit of this rule: {}", with(*from, unit), has.join(", "))
            }
            Self::Agreed { at, unit } => write!(
                f,
                "published figures agree on {}: this limit stays where it is",
                with(*at, unit)
            ),
            Self::Outside { to, spread, unit } => write!(
                f,
                "found {}; published figures run {}: choose one of these",
                with(*to, unit),
                run(spread, unit)
            ),
            Self::Laxer { to, at, allowed, unit } if allowed[0] == allowed[1] => write!(
                f,
                "found {}, which is laxer: this rule keeps patients safe, and {} is the strictest figure published: it stays",
                with(*to, unit),
                with(*at, unit)
            ),
            Self::Laxer { to, allowed, unit, .. } => write!(
                f,
                "found {}, which is laxer: this rule keeps patients safe, so its limit moves to the stricter side only, {}",
                with(*to, unit),
                run(allowed, unit)
            ),
            Self::Passes { to, unit } => write!(
                f,
                "found {}, which passes another limit of this rule: move that one too, or less far",
                with(*to, unit)
            ),
            Self::Twice => f.write_str("this is decided twice: keep one of them"),
            Self::NotDebated => f.write_str(
                "sources agree about this rule: nothing of it is debated, so there is no side to take",
            ),
            Self::NoSituations => f.write_str(
                "the rule measures a number and has no situations: say debated = \"acceptable\" or \"outside-suboptimal\"",
            ),
            Self::NoSituation { key, debated } => write!(
                f,
                "found \"{key}\", expected a debated situation of this rule: {}",
                debated.join(", ")
            ),
            Self::SafetyMadeLax => f.write_str(
                "this rule keeps patients safe: what is debated of it may become \"outside-suboptimal\", not \"acceptable\"",
            ),
        }
    }
}

impl core::error::Error for Unfit {}

/// Whether a set may move this limit of this rule.
///
/// # Errors
/// [`Unfit`] with the reason.
pub fn check_move(rule: &Rule, moved: &Moved) -> Result<(), Unfit> {
    let Scale::Bands(bands) = &rule.scale else { return Err(Unfit::NoLimits) };
    let (from, to, unit) = (comparable(moved.from), comparable(moved.to), bands.unit);
    let Some(place) = meant(rule, moved) else {
        let mut has: Vec<f64> = bands.cuts.iter().map(|cut| cut.at).collect();
        has.dedup();
        return Err(Unfit::NoLimit { from, has, unit });
    };
    let limit = movable(rule)[place];
    let [least, most] = limit.spread;
    let [low, high] = limit.allowed;
    match () {
        () if least == most => Err(Unfit::Agreed { at: limit.cut.at, unit }),
        // Not a number either.
        () if !(least <= to && to <= most) => {
            Err(Unfit::Outside { to, spread: limit.spread, unit })
        }
        () if to < low || high < to => {
            Err(Unfit::Laxer { to, at: limit.cut.at, allowed: limit.allowed, unit })
        }
        () => Ok(()),
    }
}

/// Whether these limits of one rule, each of which may be moved, keep their order.
///
/// # Errors
/// [`Unfit::Passes`] with the place of the first that passes another, or [`Unfit::Twice`].
pub fn check_order(rule: &Rule, moved: &[&Moved]) -> Result<(), (usize, Unfit)> {
    let Scale::Bands(bands) = &rule.scale else { return Ok(()) };
    let mut to: Vec<(f64, Option<usize>)> = bands.cuts.iter().map(|cut| (cut.at, None)).collect();
    for (number, one) in moved.iter().enumerate() {
        let Some(place) = meant(rule, one) else { continue };
        if to[place].1.is_some() {
            return Err((number, Unfit::Twice));
        }
        to[place] = (comparable(one.to), Some(number));
    }
    let passes = to.windows(2).find(|pair| pair[1].0 < pair[0].0);
    match passes {
        Some(pair) => {
            let (at, number) = if pair[0].1.is_some() { pair[0] } else { pair[1] };
            Err((number.unwrap_or(0), Unfit::Passes { to: at, unit: bands.unit }))
        }
        None => Ok(()),
    }
}

/// Whether a set may take this side on this rule.
///
/// # Errors
/// [`Unfit`] with the reason.
pub fn check_side(rule: &Rule, held: &Held) -> Result<(), Unfit> {
    let keeps_safe = rule.cost() == Zone::Unsafe;
    let lax = |worth: &Worth| keeps_safe && *worth == Worth::Acceptable;
    let debated = |one: &&Situation| one.zone == Zone::Debated;
    let (situations, has_debate) = match &rule.scale {
        Scale::Bands(bands) => (None, bands.zones().any(|(.., zone)| zone == Zone::Debated)),
        Scale::Situations(all) => (Some(*all), all.iter().any(|one| debated(&one))),
    };
    if rule.positions.is_none() || !has_debate {
        return Err(Unfit::NotDebated);
    }
    match (&held.debated, situations) {
        (Debated::All(worth), _) if lax(worth) => Err(Unfit::SafetyMadeLax),
        (Debated::All(_), _) => Ok(()),
        (Debated::Each(_), None) => Err(Unfit::NoSituations),
        (Debated::Each(each), Some(all)) => {
            let known: Vec<&'static str> = all.iter().filter(debated).map(|one| one.key).collect();
            if let Some((key, _)) = each.iter().find(|one| !known.contains(&one.0.as_str())) {
                return Err(Unfit::NoSituation { key: key.clone(), debated: known });
            }
            if each.iter().any(|(_, worth)| lax(worth)) {
                Err(Unfit::SafetyMadeLax)
            } else {
                Ok(())
            }
        }
    }
}

impl Local {
    /// Whether every rule may be judged so: for what comes from outside and was not read as a set's file.
    ///
    /// # Errors
    /// The id of the first rule that may not, and why.
    pub fn check(&self) -> Result<(), (String, Unfit)> {
        let found =
            |id: &str| super::find(id).ok_or_else(|| (id.to_owned(), Unfit::NoRule(id.to_owned())));
        for moved in &self.protocol.bands {
            let rule = found(&moved.rule)?;
            check_move(rule, moved).map_err(|why| (rule.id.to_owned(), why))?;
            let all: Vec<&Moved> =
                self.protocol.bands.iter().filter(|one| one.rule == rule.id).collect();
            check_order(rule, &all).map_err(|(_, why)| (rule.id.to_owned(), why))?;
        }
        for (place, held) in self.protocol.positions.iter().enumerate() {
            let rule = found(&held.rule)?;
            check_side(rule, held).map_err(|why| (rule.id.to_owned(), why))?;
            if self.protocol.positions[..place].iter().any(|one| one.rule == rule.id) {
                return Err((rule.id.to_owned(), Unfit::Twice));
            }
        }
        Ok(())
    }
}
