//! Access, graft, membrane and closure for a socket or a placed implant.

use super::Workshop;
use super::base::{Book, collagen_is_welcome};
use crate::anatomy::{DefectKind, Map, Wall};
use crate::chart::Case;
use crate::geometry::Outline;
use crate::plan::choices::{self as c, Course};
use crate::plan::{Decision, Draft, Plan, Value};

/// How far a membrane is made to reach past what it covers, mm: the middle of the ideal band.
const GROWN: f64 = 3.5;

/// How far the oral margin can be raised, mm.
const ORALLY: f64 = 8.0;

/// A way to cover.
#[derive(Clone, Copy)]
enum Way {
    /// No flap.
    Flapless,
    /// An envelope over whole walls.
    Enveloped,
    /// A flap of this design, this much wider than it has to be.
    Regenerated(c::FlapDesign, f64),
}

const WHOLE: &[Way] = &[Way::Flapless, Way::Enveloped];

const HARMED: &[Way] = {
    use c::FlapDesign::{Envelope, Trapezoidal, Triangular};
    &[
        Way::Regenerated(Envelope, 0.0),
        Way::Regenerated(Envelope, 1.5),
        Way::Regenerated(Envelope, 3.0),
        Way::Regenerated(Triangular, 0.0),
        Way::Regenerated(Triangular, 1.5),
        Way::Regenerated(Triangular, 3.0),
        Way::Regenerated(Trapezoidal, 0.0),
        Way::Regenerated(Trapezoidal, 1.5),
        Way::Regenerated(Trapezoidal, 3.0),
    ]
};

/// Ways to cover what this draft leaves open, the least first, worked out as they are asked for.
pub(super) fn covered<'a>(
    site: &'a Workshop<'a>,
    base: &'a Draft,
) -> impl Iterator<Item = Draft> + 'a {
    let ways = if site.case.site.defects.is_empty() { WHOLE } else { HARMED };
    ways.iter().map(move |way| {
        let draft = match *way {
            Way::Flapless => flapless(site, base),
            Way::Enveloped => enveloped(site, base),
            Way::Regenerated(design, more) => regenerated(site, base, design, more),
        };
        filled(site, &draft)
    })
}

/// Walls whole: no flap, gap or socket filled, sealed by part or plug.
fn flapless(site: &Workshop<'_>, base: &Draft) -> Draft {
    let mut book = Book(base.clone());
    book.one(Decision::FlapDesign, c::FlapDesign::NoFlap);
    book.number(Decision::OralElevation, 0);
    book.one(Decision::Membrane, c::MembraneKind::NoMembrane);
    component(site, &mut book, false);
    book.0
}

/// The same with an envelope, where something asks to see the bone.
fn enveloped(site: &Workshop<'_>, base: &Draft) -> Draft {
    let case = site.case;
    let mut book = Book(flapless(site, base));
    book.one(Decision::FlapDesign, c::FlapDesign::Envelope);
    let half = case.site.coronal().half_md.get() + 6.0;
    if let Some(outline) = rectangle(-half, half, 0.0, 8.0) {
        book.put(Decision::FlapOutline, Value::Outline(outline));
    }
    book.one(Decision::Papillae, c::Papillae::Left);
    book.one(Decision::PeriostealRelease, c::YesNo::Yes);
    book.number(Decision::ContourLayer, 0);
    book.number(Decision::OralElevation, 30);
    book.one(Decision::Closure, c::ClosureKind::Primary);
    component(site, &mut book, true);
    book.0
}

/// A wall is missing: flap beyond membrane beyond hole.
fn regenerated(site: &Workshop<'_>, base: &Draft, design: c::FlapDesign, more: f64) -> Draft {
    let case = site.case;
    let mut book = Book(base.clone());
    let map = Map::of(&case.site.ridge);
    let hole = hole(case, &map);
    let (kind, lost) = barrier(case);
    book.one(Decision::Membrane, kind);
    let folded = hole.open;
    let top = if folded {
        // The oral margin is raised by 8 mm at most, and past the membrane.
        let room = ORALLY - 0.5 + map.across() + hole.top;
        hole.top - GROWN.min(room.max(2.1))
    } else {
        hole.top - GROWN.min(hole.top - 0.3)
    };
    let (from, to) = (hole.from - GROWN, hole.to + GROWN);
    let bottom = hole.bottom + GROWN;
    if let Some(outline) = rounded(from, to, top, bottom) {
        book.put(Decision::MembraneOutline, Value::Outline(outline));
    }
    book.one(Decision::Fold, if folded { c::Fold::OverOrifice } else { c::Fold::FacialOnly });
    book.one(Decision::Fixation, c::Fixation::Sutured);
    let orally = folded || case.site.defects_of(Wall::Oral).next().is_some();
    // The oral margin is raised past the membrane's oral edge.
    let oral = if orally { (-map.across() - top).max(0.0) + 2.0 } else { 0.0 };
    book.number(Decision::OralElevation, tenths(oral.min(ORALLY)));
    flap_beyond(&mut book, [from, to, bottom], design, more);
    let facial = case.site.defects_of(Wall::Facial).next().is_some();
    book.number(Decision::ContourLayer, if facial { 20 } else { 0 });
    book.one(Decision::SocketSeal, c::SocketSeal::ByMembrane);
    let placed = crate::plan::course(base) == Some(Course::PlaceToday);
    let closed = placed || lost || !folded || kind == c::MembraneKind::ReinforcedPtfe;
    book.one(
        Decision::Closure,
        if closed { c::ClosureKind::Primary } else { c::ClosureKind::LeftOpen },
    );
    if closed {
        book.number(Decision::MembraneOut, 180);
    }
    book.number(Decision::SuturesOut, 12);
    component(site, &mut book, true);
    book.0
}

/// The membrane that holds here, and whether the walls hold no soft barrier by themselves: a wall
/// gone to the neighbours, or walls gone on both sides.
fn barrier(case: &Case) -> (c::MembraneKind, bool) {
    let both = [Wall::Facial, Wall::Oral].map(|wall| case.site.defects_of(wall).next().is_some());
    let lost = both == [true, true]
        || case.site.defects.iter().any(|defect| defect.kind == DefectKind::LostWall);
    let kind = match (collagen_is_welcome(&case.patient), lost) {
        (true, false) => c::MembraneKind::NativeCollagen,
        (true, true) => c::MembraneKind::CrossLinked,
        (false, false) => c::MembraneKind::DensePtfe,
        (false, true) => c::MembraneKind::ReinforcedPtfe,
    };
    (kind, lost)
}

/// A flap that reaches past a membrane with these mesial, distal and apical edges.
fn flap_beyond(book: &mut Book, [from, to, bottom]: [f64; 3], design: c::FlapDesign, more: f64) {
    book.one(Decision::FlapDesign, design);
    book.one(Decision::ReleaseSide, c::ReleaseSide::Distal);
    book.one(Decision::Papillae, c::Papillae::Left);
    book.one(Decision::PeriostealRelease, c::YesNo::Yes);
    let aside = 2.5 + more;
    let spread = if design == c::FlapDesign::Envelope { 0.0 } else { 1.5 };
    let flap_bottom = bottom.max(3.0) + 2.5;
    let corners = [
        (from - aside, 0.0),
        (to + aside, 0.0),
        (to + aside + spread, flap_bottom),
        (from - aside - spread, flap_bottom),
    ];
    if let Some(outline) = outline(&corners) {
        book.put(Decision::FlapOutline, Value::Outline(outline));
    }
}

/// The part that the torque allows; a cover screw under a closed flap.
fn component(site: &Workshop<'_>, book: &mut Book, closed: bool) {
    let torque = torque(site, &book.0);
    let part = match torque {
        Some(torque) if torque > 20.0 && !closed => c::Component::HealingAbutment,
        _ => c::Component::CoverScrew,
    };
    book.one(Decision::Component, part);
}

fn torque(site: &Workshop<'_>, draft: &Draft) -> Option<f64> {
    let plan = so_far(site.case, draft);
    Some(site.measured(&plan).seating_torque()?.get())
}

/// As much of the draft as can be carried out.
fn so_far(case: &Case, draft: &Draft) -> Plan {
    let mut plan = Plan::default();
    for step in crate::plan::steps(draft) {
        if plan.carry_out(step, draft, case).is_err() {
            break;
        }
    }
    plan
}

/// With as much graft as the gap, the wall and the layer need after packing.
fn filled(site: &Workshop<'_>, draft: &Draft) -> Draft {
    let mut book = Book(draft.clone());
    // Any amount lets the step be carried out; the volume does not depend on it.
    book.number(Decision::GraftAmount, 50);
    let plan = so_far(site.case, &book.0);
    let needed = site.measured(&plan).volume_to_graft();
    if let Some(volume) = needed {
        // Packing takes a fifth; opened in steps of 0.05 cc.
        let steps = libm::ceil(volume.cc() / 0.8 * 20.0 + 1e-9);
        book.number(Decision::GraftAmount, (5 * tenths(steps / 10.0)).clamp(5, 300));
    }
    book.0
}

/// What a membrane has to cover on the map.
struct Hole {
    from: f64,
    to: f64,
    top: f64,
    bottom: f64,
    /// Whether it reaches the crest, so that the orifice belongs to it.
    open: bool,
}

fn hole(case: &Case, map: &Map) -> Hole {
    let mut hole = Hole {
        from: f64::INFINITY,
        to: f64::NEG_INFINITY,
        top: f64::INFINITY,
        bottom: f64::NEG_INFINITY,
        open: false,
    };
    for defect in &case.site.defects {
        hole.open |= defect.kind != DefectKind::Fenestration;
        for at in defect.outline.points() {
            hole.from = hole.from.min(at.x);
            hole.to = hole.to.max(at.x);
            hole.top = hole.top.min(at.y);
            hole.bottom = hole.bottom.max(at.y);
        }
    }
    if hole.open {
        let half = case.site.coronal().half_md.get();
        hole.from = hole.from.min(-half);
        hole.to = hole.to.max(half);
        hole.top = hole.top.min(-map.across());
        hole.bottom = hole.bottom.max(0.0);
    }
    hole
}

/// Steps of a tenth, rounded.
#[expect(clippy::cast_possible_truncation, reason = "lengths of a map, far inside i32")]
fn tenths(value: f64) -> i32 {
    libm::round(value * 10.0) as i32
}

fn outline(corners: &[(f64, f64)]) -> Option<Outline> {
    let most = f64::from(Outline::FARTHEST) / 10.0;
    let grid = |value: f64| tenths(value.clamp(-most, most));
    Outline::new(corners.iter().map(|&(s, t)| [grid(s), grid(t)]).collect()).ok()
}

fn rectangle(from: f64, to: f64, top: f64, bottom: f64) -> Option<Outline> {
    outline(&[(from, top), (to, top), (to, bottom), (from, bottom)])
}

/// A rectangle whose corners are cut, wide enough that they keep their distance.
fn rounded(from: f64, to: f64, top: f64, bottom: f64) -> Option<Outline> {
    let cut = 0.8;
    outline(&[
        (from + cut, top),
        (to - cut, top),
        (to, top + cut),
        (to, bottom - cut),
        (to - cut, bottom),
        (from + cut, bottom),
        (from, bottom - cut),
        (from, top + cut),
    ])
}
