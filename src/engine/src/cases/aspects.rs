//! One thing about a case read as a number of steps, and changed: nothing else is drawn again.
//!
//! The truth moves, and what examinations would read of it moves with it by the very errors that were
//! drawn; the same chances decide its events.

use super::draw::Draws;
use super::shape::{deepest, root_at, socket_at};
use super::{defects, holds_together, patients, readings};
use crate::anatomy::{Defect, DefectKind, Lesion, Map, Neighbour, Side, Site, Wall};
use crate::chart::{Aspect, Case, Change};
use crate::events;
use crate::geometry::Outline;
use crate::measure::Measurements;
use crate::plan::Plan;
use crate::units::Mm;

/// A defect is at least this deep, tenths of a millimetre; what is shallower is none (ours).
const LEAST_LOSS: i32 = 10;

/// What an aspect is in a case, in steps; none where the case has no such thing.
#[must_use]
pub fn value(case: &Case, aspect: Aspect) -> Option<i32> {
    let site = &case.site;
    let tenths = |length: Mm| steps(length.get());
    match aspect {
        Aspect::FacialLoss => Some(deepest_of(site, Wall::Facial).map_or(0, |(_, depth)| depth)),
        Aspect::OralLoss => Some(deepest_of(site, Wall::Oral).map_or(0, |(_, depth)| depth)),
        Aspect::FacialLossWidth => deepest_of(site, Wall::Facial).map(|(place, _)| {
            let [least, most] = across(&site.defects[place]);
            most - least
        }),
        Aspect::FacialPlate => whole_wall(site, Wall::Facial)
            .then(|| Measurements::of(case, &Plan::default()).facial_plate())?
            .map(tenths),
        Aspect::OralPlate => whole_wall(site, Wall::Oral)
            .then(|| Measurements::of(case, &Plan::default()).oral_plate())?
            .map(tenths),
        Aspect::BoneToFloor => {
            site.vital.floor.as_ref().map(|floor| tenths(floor.z) - steps(deepest(site)))
        }
        Aspect::BoneToCanal => site.vital.canal.as_ref().map(|canal| {
            let roof = canal.from.z.min(canal.to.z) - canal.radius.get();
            steps(roof) - steps(deepest(site))
        }),
        Aspect::MesialRoom => room(site, Side::Mesial).map(steps),
        Aspect::DistalRoom => room(site, Side::Distal).map(steps),
        Aspect::Density => Some(libm::round(site.density.hu) as i32),
        Aspect::Lesion => across_lesion(&site.lesion).map(|diameter| tenths(*diameter)),
        Aspect::Gum => Some(tenths(site.soft.thickness)),
        Aspect::Keratinised => Some(tenths(site.soft.keratinised)),
        Aspect::Recession => Some(tenths(site.soft.margin_below_twin)),
        _ => patients::value(&case.patient, aspect),
    }
}

/// The case with one thing changed; the same case where it is that already.
///
/// # Errors
/// Why there is no such case: it has no such thing, or could not hold together with it.
pub fn changed(case: &Case, change: Change) -> Result<Case, &'static str> {
    let Change { aspect, to } = change;
    let [least, most] = aspect.scaled().range;
    let now = value(case, aspect).ok_or("this case has nothing of the kind")?;
    if !(least..=most).contains(&to) {
        return Err("that is beyond what is met in practice");
    }
    let mut other = case.clone();
    if to == now {
        return Ok(other);
    }
    set(&mut other, aspect, now, to)?;
    holds_together(&other.site)?;
    other.chance = Some(events::chance_of(case));
    if let Some(address) = case.address {
        other.readings = readings::draw(&Draws::of(address), &other);
        // What was changed twice has no address.
        other.address = address
            .changed
            .is_none()
            .then_some(super::Address { changed: Some(change), ..address });
    }
    Ok(other)
}

fn set(case: &mut Case, aspect: Aspect, now: i32, to: i32) -> Result<(), &'static str> {
    let by = Mm::from_tenths(to - now);
    let site = &mut case.site;
    match aspect {
        Aspect::FacialLoss => deepen(site, Wall::Facial, to)?,
        Aspect::OralLoss => deepen(site, Wall::Oral, to)?,
        Aspect::FacialLossWidth => widen(site, f64::from(to) / f64::from(now))?,
        Aspect::FacialPlate => thicken(site, Wall::Facial, by.get())?,
        Aspect::OralPlate => thicken(site, Wall::Oral, by.get())?,
        Aspect::BoneToFloor => {
            if let Some(floor) = &mut site.vital.floor {
                floor.z = floor.z + by;
            }
        }
        Aspect::BoneToCanal => lower_canal(site, by.get()),
        Aspect::MesialRoom => stand_off(&mut site.neighbours.mesial, -by.get()),
        Aspect::DistalRoom => stand_off(&mut site.neighbours.distal, by.get()),
        Aspect::Density => {
            site.density.hu = f64::from(to);
            site.density.class = super::class_of(site.density.hu);
        }
        Aspect::Lesion => match &mut site.lesion {
            Lesion::None => {}
            Lesion::Chronic { diameter }
            | Lesion::Abscess { diameter }
            | Lesion::Spreading { diameter } => *diameter = Mm::from_tenths(to),
        },
        Aspect::Gum => site.soft.thickness = Mm::from_tenths(to),
        Aspect::Keratinised => site.soft.keratinised = Mm::from_tenths(to),
        Aspect::Recession => {
            site.soft.margin_below_twin = site.soft.margin_below_twin + by;
            site.soft.margin_z = site.soft.margin_z + by;
        }
        _ => patients::set(&mut case.patient, aspect, to),
    }
    Ok(())
}

/// Millimetres as tenths.
fn steps(mm: f64) -> i32 {
    libm::round(mm * 10.0) as i32
}

/// Only a wall without a defect is as thick here as there.
fn whole_wall(site: &Site, wall: Wall) -> bool {
    site.defects_of(wall).next().is_none()
}

/// The place of the deepest defect of a wall and how deep it reaches below the crest, tenths.
fn deepest_of(site: &Site, wall: Wall) -> Option<(usize, i32)> {
    let crest = crest_of(site, wall);
    let of_wall = site.defects.iter().enumerate().filter(|(_, defect)| defect.wall == wall);
    let depths = of_wall.map(|(place, defect)| {
        let depth = defect.outline.tenths().iter().map(|at| depth_of(wall, crest, at[1])).max();
        (place, depth.unwrap_or(0))
    });
    depths.max_by_key(|(_, depth)| *depth)
}

/// The defect of a wall that its aspects read and change: the deepest.
pub(crate) fn defect_of(site: &Site, wall: Wall) -> Option<&Defect> {
    deepest_of(site, wall).and_then(|(place, _)| site.defects.get(place))
}

/// Where the crest of a wall lies on the map, tenths.
fn crest_of(site: &Site, wall: Wall) -> i32 {
    match wall {
        Wall::Facial => 0,
        Wall::Oral => -steps(Map::of(&site.ridge).across()),
    }
}

/// How far below its crest a place of a wall lies; and back, as it is its own inverse orally.
const fn depth_of(wall: Wall, crest: i32, t: i32) -> i32 {
    match wall {
        Wall::Facial => t,
        Wall::Oral => crest - t,
    }
}

fn across(defect: &Defect) -> [i32; 2] {
    let tenths = defect.outline.tenths().iter().map(|at| at[0]);
    [tenths.clone().min().unwrap_or(0), tenths.max().unwrap_or(0)]
}

const SHRUNK: &str = "nothing would be left of the defect";

/// Stretches the deepest defect of a wall to a depth; takes it away, or makes one.
fn deepen(site: &mut Site, wall: Wall, to: i32) -> Result<(), &'static str> {
    if to > 0 && to < LEAST_LOSS {
        return Err("a defect shallower than 1 mm is none");
    }
    let crest = crest_of(site, wall);
    let Some((place, depth)) = deepest_of(site, wall) else {
        site.defects.push(fresh(site, wall, f64::from(to) / 10.0)?);
        return Ok(());
    };
    if to == 0 {
        site.defects.remove(place);
        return Ok(());
    }
    let share = f64::from(to) / f64::from(depth.max(1));
    let outline = &mut site.defects[place].outline;
    let stretched = |&[s, t]: &[i32; 2]| {
        let below = depth_of(wall, crest, t);
        let below = if below > 0 { libm::round(f64::from(below) * share) as i32 } else { below };
        [s, depth_of(wall, crest, below)]
    };
    *outline =
        Outline::new(outline.tenths().iter().map(stretched).collect()).map_err(|_| SHRUNK)?;
    Ok(())
}

/// A defect where there was none: open to the crest, over the middle half of the root.
fn fresh(site: &Site, wall: Wall, depth: f64) -> Result<Defect, &'static str> {
    let neck = socket_at(site, 0.0).into_iter().next().ok_or("there is no root to lose it over")?;
    let form = defects::u_form(neck.x, 0.75 * neck.half_md, depth);
    let crest = Map::of(&site.ridge).across();
    let outline = defects::on_map(&form, |depth| match wall {
        Wall::Facial => depth,
        Wall::Oral => -crest - depth,
    });
    Ok(Defect { wall, kind: DefectKind::DehiscenceU, outline: outline.ok_or(SHRUNK)? })
}

/// Widens the deepest facial defect about its own middle.
fn widen(site: &mut Site, share: f64) -> Result<(), &'static str> {
    let Some((place, _)) = deepest_of(site, Wall::Facial) else { return Err(SHRUNK) };
    let [least, most] = across(&site.defects[place]);
    let middle = f64::from(least + most) / 2.0;
    let outline = &mut site.defects[place].outline;
    let aside = |s: i32| libm::round(middle + (f64::from(s) - middle) * share) as i32;
    let widened = outline.tenths().iter().map(|&[s, t]| [aside(s), t]).collect();
    *outline = Outline::new(widened).map_err(|_| SHRUNK)?;
    Ok(())
}

/// Moves a face of the ridge outward. The way across the crest grows with it, and oral defects stay
/// where they are on their wall.
fn thicken(site: &mut Site, wall: Wall, by: f64) -> Result<(), &'static str> {
    let before = crest_of(site, Wall::Oral);
    let (face, outward) = match wall {
        Wall::Facial => (&mut site.ridge.facial, by),
        Wall::Oral => (&mut site.ridge.oral, -by),
    };
    for knot in &mut face.knots {
        knot.y += outward;
    }
    let farther = crest_of(site, Wall::Oral) - before;
    for defect in site.defects.iter_mut().filter(|defect| defect.wall == Wall::Oral) {
        let moved = defect.outline.tenths().iter().map(|&[s, t]| [s, t + farther]).collect();
        defect.outline = Outline::new(moved).map_err(|_| SHRUNK)?;
    }
    Ok(())
}

/// The canal, its loop and its foramen are one nerve.
fn lower_canal(site: &mut Site, by: f64) {
    let vital = &mut site.vital;
    for tube in [&mut vital.canal, &mut vital.loop_].into_iter().flatten() {
        tube.from.z += by;
        tube.to.z += by;
    }
    if let Some(foramen) = &mut vital.foramen {
        foramen.z += by;
    }
}

/// Millimetres of bone between the socket and the neighbour at the crest.
fn room(site: &Site, side: Side) -> Option<f64> {
    let own = socket_at(site, 0.0);
    let (neighbour, sign) = match side {
        Side::Mesial => (&site.neighbours.mesial, -1.0),
        Side::Distal => (&site.neighbours.distal, 1.0),
    };
    let (middle, half) = match neighbour {
        Neighbour::Root(root) => {
            let at = root_at(root, 0.0);
            (at.x, at.half_md)
        }
        Neighbour::Implant(implant) => (implant.platform.x, implant.diameter.get() / 2.0),
        Neighbour::Absent => return None,
    };
    let edge = own.iter().map(|root| sign * root.x + root.half_md).fold(f64::MIN, f64::max);
    Some(sign * middle - half - edge)
}

fn stand_off(neighbour: &mut Neighbour, by: f64) {
    match neighbour {
        Neighbour::Root(root) => root.x = root.x + Mm::new(by),
        Neighbour::Implant(implant) => implant.platform.x += by,
        Neighbour::Absent => {}
    }
}

const fn across_lesion(lesion: &Lesion) -> Option<&Mm> {
    match lesion {
        Lesion::None => None,
        Lesion::Chronic { diameter }
        | Lesion::Abscess { diameter }
        | Lesion::Spreading { diameter } => Some(diameter),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{Spread, at, generate_as};

    fn cases() -> impl Iterator<Item = Case> {
        let spread =
            |seed: u64| if seed.is_multiple_of(3) { Spread::WholeMouth } else { Spread::Teaching };
        (1..=48).filter_map(move |seed| generate_as(spread(seed), seed, &Default::default()).ok())
    }

    /// What may read otherwise because a wall ends elsewhere: a plate is read below its present crest,
    /// and a defect that is new has a width.
    fn follows(changed: Aspect, other: Aspect) -> bool {
        use Aspect::{FacialLoss, FacialLossWidth, FacialPlate, OralLoss, OralPlate};
        match changed {
            FacialLoss | FacialLossWidth | FacialPlate => {
                matches!(other, FacialLoss | FacialLossWidth | FacialPlate)
            }
            OralLoss | OralPlate => matches!(other, OralLoss | OralPlate),
            _ => false,
        }
    }

    #[test]
    fn what_is_changed_reads_as_it_was_asked_and_nothing_else_moves() {
        let mut changed_so_often = [0; Aspect::ALL.len()];
        for case in cases() {
            for (place, aspect) in Aspect::ALL.into_iter().enumerate() {
                let Some(now) = value(&case, aspect) else { continue };
                for by in [-9, 4, 13] {
                    let change = Change { aspect, to: now + by };
                    let Ok(other) = changed(&case, change) else { continue };
                    changed_so_often[place] += 1;
                    let reads = value(&other, aspect).unwrap();
                    assert!(reads.abs_diff(now + by) <= 1, "{:?} {change} {reads}", case.address);
                    for beside in Aspect::ALL {
                        let same = value(&case, beside) == value(&other, beside);
                        assert!(
                            same || beside == aspect || follows(aspect, beside),
                            "{:?} {change} {beside:?}",
                            case.address
                        );
                    }
                }
            }
        }
        // What few patients have is tested with the patient.
        assert!(changed_so_often[..18].iter().all(|count| *count > 2), "{changed_so_often:?}");
    }

    #[test]
    fn a_change_back_gives_the_same_site() {
        let mut count = 0;
        for mut case in cases() {
            case.address = None;
            for aspect in [Aspect::BoneToFloor, Aspect::MesialRoom, Aspect::Gum, Aspect::Cigarettes]
            {
                let Some(now) = value(&case, aspect) else { continue };
                let Ok(other) = changed(&case, Change { aspect, to: now + 3 }) else { continue };
                let back = changed(&other, Change { aspect, to: now }).unwrap();
                assert_eq!(value(&back, aspect), Some(now));
                let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
                let floor = |case: &Case| case.site.vital.floor.as_ref().map_or(0.0, |f| f.z.get());
                assert!(near(floor(&back), floor(&case)));
                assert_eq!(back.patient, case.patient);
                count += 1;
            }
        }
        assert!(count > 100, "{count}");
    }

    #[test]
    fn the_address_of_a_changed_case_draws_it_again() {
        let mut count = 0;
        for case in cases().take(20) {
            for aspect in [Aspect::FacialLoss, Aspect::FacialPlate, Aspect::Age] {
                let Some(now) = value(&case, aspect) else { continue };
                let Ok(other) = changed(&case, Change { aspect, to: now + 12 }) else { continue };
                let address = other.address.unwrap();
                assert_eq!(at(address).unwrap(), other);
                assert_eq!(address.to_string().parse(), Ok(address));
                assert_eq!(events::chance_of(&other), events::chance_of(&case));
                assert_eq!(other.patient.name, case.patient.name);
                count += 1;
            }
        }
        assert!(count > 30, "{count}");
    }

    #[test]
    fn what_a_case_has_not_or_cannot_hold_is_refused() {
        let case = cases().find(|case| case.site.vital.canal.is_none()).unwrap();
        let refused = |aspect, to| changed(&case, Change { aspect, to }).unwrap_err();
        assert!(refused(Aspect::BoneToCanal, 20).contains("nothing of the kind"));
        assert!(refused(Aspect::Gum, 4000).contains("met in practice"));
        let whole = changed(&case, Change { aspect: Aspect::FacialLoss, to: 0 }).unwrap();
        assert_eq!(value(&whole, Aspect::FacialLoss), Some(0));
        let shallow = changed(&whole, Change { aspect: Aspect::FacialLoss, to: 4 });
        assert!(shallow.unwrap_err().contains("is none"));
    }
}
