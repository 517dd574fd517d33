//! Placements in the septum of a molar, in the order in which they are tried.

use super::place::{aims, degrees, depths, middle, tenths};
use crate::cases::shape::{apices, deepest};
use crate::chart::Case;
use crate::plan::Placement;
use crate::units::Deg;

/// Diameters of molar implants, the usual first.
const DIAMETERS: [i32; 4] = [45, 50, 40, 60];
/// Lengths: most molar sites have a floor or a canal under them.
const LENGTHS: [i32; 4] = [100, 80, 110, 120];
/// From the middle of the septum, facially and distally, tenths.
const ASIDE: [(i32, i32); 7] = [(0, 0), (-8, 0), (8, 0), (0, -8), (0, 8), (-15, 0), (15, 0)];

/// Each aims from the middle of the septum to the middle of the bone under it, or stands upright.
pub(super) fn grid(case: &Case) -> impl Iterator<Item = Placement> + '_ {
    let site = &case.site;
    let furcation = site.socket.furcation().map_or(0.0, crate::units::Mm::get);
    let level = furcation + 2.0;
    let (facial, distal) = centre(case, level);
    let end = middle(case, deepest(site));
    let tip = degrees(Deg::from_radians(libm::atan2(end - distal, deepest(site))).get(), 25);
    let mut levels = depths(case);
    levels.truncate(2);
    let shallow = tenths(furcation).clamp(0, 20);
    if !levels.contains(&shallow) {
        levels.push(shallow);
    }
    DIAMETERS.into_iter().flat_map(move |diameter| {
        let levels = levels.clone();
        levels.into_iter().flat_map(move |depth| {
            LENGTHS.into_iter().flat_map(move |length| {
                ASIDE.into_iter().flat_map(move |(out, back)| {
                    let at = (tenths(facial) + out).clamp(-60, 60);
                    let [aim, ..] = aims(case, depth, at, length);
                    let crown = degrees(site.crown.tilt.get(), 35);
                    [(aim, tip), (crown, tip), (halfway(aim, crown), 0)].map(|(tilt, tip)| {
                        Placement {
                            diameter,
                            length,
                            facial: at,
                            distal: (tenths(distal) + back).clamp(-40, 40),
                            depth,
                            tilt,
                            tip,
                        }
                    })
                })
            })
        })
    })
}

const fn halfway(a: i32, b: i32) -> i32 {
    (a + b) / 2
}

/// The middle of the roots' axes at a level: facially, distally.
fn centre(case: &Case, level: f64) -> (f64, f64) {
    let tips = apices(&case.site);
    let begins = case.site.socket.roots();
    let (mut facial, mut distal, mut count) = (0.0, 0.0, 0.0);
    for (tip, (from, root)) in tips.iter().zip(&begins) {
        let share = (level - from) / (tip.z - from).max(0.1);
        facial += root.y.get() + (tip.y - root.y.get()) * share;
        distal += root.x.get() + (tip.x - root.x.get()) * share;
        count += 1.0;
    }
    let count = f64::max(count, 1.0);
    (facial / count, distal / count)
}
