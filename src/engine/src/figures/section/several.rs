//! Several roots in the cut. One that the plane of the cut meets is cut as the trunk is; of one that
//! lies mesial or distal of it the outline is seen along x, as that of a canal that is not met.

use super::below::{Below, Named};
use crate::anatomy::RootName;
use crate::figures::cut;
use crate::figures::scene::Scene;
use crate::figures::sheet::Margin;
use crate::geometry::convex::Convex;
use crate::geometry::order;
use crate::geometry::{Interval, P2, P3, Stack, V3, polygon};

/// Directions in which an outline is felt.
const AROUND: u32 = 120;
/// How far coronal of its apex a cut root may end without its outline being drawn beside it, mm.
const NEARLY_WHOLE: f64 = 1.0;
/// A cut that begins so close below the furcation begins there, mm.
const CLOSE: f64 = 0.02;

/// A root's cut with the plane of the section, as (z, from oral to facial).
type Rows = Vec<(f64, Interval)>;

/// What lies apical of the trunk.
pub(super) fn below(scene: &Scene<'_>) -> Below {
    let bodies = &scene.ground.solid.socket;
    let (Some(furcation), Some((_, last))) =
        (bodies.furcation(), cut::root_rows(&scene.ground.solid, 0.0).pop())
    else {
        return Below::of_one(scene);
    };
    let mut below = Below {
        deepest: bodies.deepest().unwrap_or(furcation),
        heart: bodies.roots().first().map(Stack::apex),
        ..Below::default()
    };
    let mut met = Vec::new();
    let (mut cuts, mut beside) = (Vec::new(), Vec::new());
    for (root, name) in bodies.roots().iter().zip(scene.site().socket.names()) {
        let rows = cut::body_rows(root, furcation);
        let end = rows.last().map_or(f64::MIN, |(z, _)| *z);
        if end < root.apex().z - NEARLY_WHOLE {
            let outline = seen_along(root, furcation);
            below.names.push(passing(scene, *name, root, &outline));
            below.passing.push(outline);
            let lies = if beside.is_empty() { "lies " } else { "" };
            beside.push(format!("the {} root {lies}{} of it", name.key(), way(root)));
        } else {
            below.names.push(named(scene, *name, &rows));
            cuts.push(format!("the {} root", name.key()));
        }
        match rows.first() {
            Some((from, _)) if *from <= furcation + CLOSE => met.push(rows),
            Some(_) => below.islands.push(ring(&rows)),
            None => {}
        }
    }
    order::sort_short(&mut met, |a, b| a[0].1.from.total_cmp(&b[0].1.from));
    below.floor = floor(furcation, last, &met);
    below.says = said(&cuts, &beside);
    if !scene.tooth_is_out() {
        let at = P2::new(last.from + 0.8, 0.5 * furcation);
        below.names.push(Named { side: Margin::Left, at, words: "trunk".to_owned() });
    }
    below.names.extend(septum(scene, (furcation, last), &met));
    below
}

/// Which way of the cut a root lies, half-way down.
fn way(root: &Stack) -> &'static str {
    let middle = root.frame.point(V3::new(0.0, 0.0, 0.5 * root.last_level()));
    if middle.x < 0.0 { "mesial" } else { "distal" }
}

/// A root, or once the tooth is out its socket.
fn part(scene: &Scene<'_>, name: RootName) -> String {
    let what = if scene.tooth_is_out() { "socket" } else { "root" };
    format!("{} {what}", name.key())
}

/// A root that is cut, named on its own side.
fn named(scene: &Scene<'_>, name: RootName, rows: &Rows) -> Named {
    let (z, row) = rows[rows.len() / 2];
    let facial = matches!(name, RootName::Facial);
    let (side, y) =
        if facial { (Margin::Right, row.to - 0.6) } else { (Margin::Left, row.from + 0.6) };
    Named { side, at: P2::new(y, z), words: part(scene, name) }
}

/// A root that passes the cut by, named on its outline: mesial ones orally, others facially, further
/// down, so that two that lie one behind the other are told apart.
fn passing(scene: &Scene<'_>, name: RootName, root: &Stack, outline: &[P2]) -> Named {
    let mesial = way(root) == "mesial";
    let level = |share: f64| {
        let apex = root.apex().z;
        let from = apex - root.last_level() * root.frame.along.z;
        from + share * (apex - from)
    };
    let z = level(if mesial { 0.6 } else { 0.75 });
    let at = polygon::line_within(outline, P2::new(0.0, z), P2::new(1.0, 0.0));
    let ends = at.as_slice().first().zip(at.last()).map_or((0.0, 0.0), |(a, b)| (a.from, b.to));
    let (side, y) = if mesial { (Margin::Left, ends.0) } else { (Margin::Right, ends.1) };
    let words = format!("{}, {} of the cut", part(scene, name), way(root));
    Named { side, at: P2::new(y, z), words }
}

/// The bone between the roots in the cut, once the ridge has been seen.
fn septum(scene: &Scene<'_>, (furcation, trunk): (f64, Interval), met: &[Rows]) -> Option<Named> {
    let bodies = &scene.ground.solid.socket;
    let shallowest = bodies.roots().iter().map(|root| root.apex().z).reduce(f64::min)?;
    let z = furcation + 0.4 * (shallowest - furcation);
    let at = |rows: &Rows| rows.iter().find(|(level, _)| *level >= z).map(|(_, row)| *row);
    let y = match met {
        [oral, facial] => f64::midpoint(at(oral)?.to, at(facial)?.from),
        [one] => f64::midpoint(at(one)?.to, trunk.to),
        // Orally, where no implant stands over it.
        _ => trunk.from + 0.15 * (trunk.to - trunk.from),
    };
    let bone = scene.ground.solid.is_bone(P3::new(0.0, y, z));
    (scene.believed.ridge.is_seen() && bone).then(|| {
        let words = "septum".to_owned();
        Named { side: Margin::Left, at: P2::new(y, z), words }
    })
}

/// From the trunk's oral edge to its facial one, round the roots that leave it in the cut.
fn floor(furcation: f64, trunk: Interval, met: &[Rows]) -> Vec<P2> {
    let mut line = vec![P2::new(trunk.from, furcation)];
    for rows in met {
        line.extend(ring(rows));
    }
    line.push(P2::new(trunk.to, furcation));
    line
}

/// Down the oral side of a cut and up the facial one.
fn ring(rows: &Rows) -> Vec<P2> {
    let oral = rows.iter().map(|(z, row)| P2::new(row.from, *z));
    oral.chain(rows.iter().rev().map(|(z, row)| P2::new(row.to, *z))).collect()
}

/// The outline of a root apical of the furcation, as it is seen along x: it is convex.
fn seen_along(root: &Stack, furcation: f64) -> Vec<P2> {
    let felt = (0..AROUND).flat_map(|turn| {
        let (sin, cos) = libm::sincos(core::f64::consts::TAU * f64::from(turn) / f64::from(AROUND));
        let towards = V3::new(0.0, cos, sin);
        [root.frusta().support(towards), root.cap().support(towards)]
    });
    let hull = polygon::hull(felt.map(|at| P2::new(at.y, at.z)).collect());
    let mut line = polygon::clipped(&hull, |at| at.y - furcation);
    line.dedup_by(|a, b| libm::hypot(a.x - b.x, a.y - b.y) < 1e-9);
    // The line begins and ends at the furcation: the trunk covers what lies between.
    let ends = line.iter().enumerate().filter(|(_, at)| at.y < furcation + 1e-9);
    if let Some((place, _)) = ends.max_by(|(_, a), (_, b)| a.x.total_cmp(&b.x)) {
        line.rotate_left(place);
    }
    line
}

fn said(cuts: &[String], beside: &[String]) -> String {
    let met = match cuts {
        [] => "The cut passes between the roots".to_owned(),
        some => format!("The cut meets {}", some.join(" and ")),
    };
    match beside {
        [] => format!("{met}."),
        some => format!("{met}; {}.", some.join(", ")),
    }
}
