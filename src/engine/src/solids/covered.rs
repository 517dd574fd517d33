//! Outlines on the map, and the measurements of what covers what there.

use super::contour::base;
use super::recipe::{Entry, MapOutline};
use crate::anatomy::Wall;
use crate::geometry::{P2, polygon};
use crate::measure::{Margins, Measurements};
use crate::plan::choices::{Fold, ReleaseSide, SocketSeal};
use crate::plan::{FlapRaised, Membrane, Releases};
use crate::units::Mm;

/// Outlines on the map that expressions name.
pub(super) fn outlines(m: &Measurements<'_>) -> Vec<MapOutline> {
    let written = |name: String, points: &[P2]| MapOutline {
        name,
        points: points.iter().map(|p| [p.x, p.y]).collect(),
    };
    let mut outlines: Vec<MapOutline> = Vec::new();
    for (i, defect) in m.case.site.defects.iter().enumerate() {
        outlines.push(written(format!("defect_{}", i + 1), &defect.outline.points()));
    }
    for (i, outline) in base(&m.case.site).iter().enumerate() {
        outlines.push(written(format!("contour_base_{}", i + 1), outline));
    }
    outlines.push(written("orifice".to_owned(), m.ground().orifice()));
    for (side, name) in SIDES.iter().enumerate() {
        for (i, outline) in m.ground().root_beside(side).iter().enumerate() {
            outlines.push(written(format!("root_{name}_{}", i + 1), outline));
        }
    }
    if let Some(membrane) = m.plan.membrane() {
        outlines.push(written("membrane".to_owned(), &membrane.outline.points()));
    }
    if let Some(raised) = m.plan.raised() {
        outlines.push(written("flap".to_owned(), &raised.outline.points()));
    }
    outlines
}

/// The sides on which neighbours stand.
const SIDES: [&str; 2] = ["mesial", "distal"];

/// A hole's edge that leaves less bone than this beside a root is asked for no margin, mm.
const ROOM_FOR_MARGIN: f64 = 3.0;

/// Writes what covers what.
pub(super) fn write(m: &Measurements<'_>, entries: &mut Vec<Entry>) {
    if let Some(membrane) = m.plan.membrane() {
        if let Some(margins) = m.membrane_margin() {
            of_membrane(m, membrane, &margins, entries);
        }
        if let Some(margins) = m.flap_beyond_membrane() {
            of_flap(m, membrane, &margins, entries);
        }
        let roots = [roots_beside(m, 0), roots_beside(m, 1)].concat().concat();
        put(entries, "membrane-to-root", m.membrane_to_root(), format!("map_gap(membrane{roots})"));
    }
    incisions(m, entries);
}

fn put(entries: &mut Vec<Entry>, name: &'static str, value: Option<Mm>, expression: String) {
    if value.is_some() {
        margin(entries, name, value, expression);
    }
}

/// A margin is written also where it is not asked.
fn margin(entries: &mut Vec<Entry>, name: &'static str, value: Option<Mm>, expression: String) {
    entries.push(Entry { name, expression, value: value.map(Mm::get), unit: Mm::UNIT });
}

/// Names of a neighbouring root's outlines, each after a comma.
fn roots_beside(m: &Measurements<'_>, side: usize) -> Vec<String> {
    let count = m.ground().root_beside(side).len();
    (1..=count).map(|i| format!(", root_{}_{i}", SIDES[side])).collect()
}

fn goes_over(m: &Measurements<'_>, membrane: &Membrane) -> bool {
    let seal = m.plan.graft.as_ref().and_then(|graft| graft.seal);
    membrane.fold != Fold::FacialOnly || seal == Some(SocketSeal::ByMembrane)
}

fn of_membrane(
    m: &Measurements<'_>,
    membrane: &Membrane,
    margins: &Margins,
    entries: &mut Vec<Entry>,
) {
    let crest = -m.ground().solid.map.across();
    let mut holes: Vec<(String, &str)> = Vec::new();
    for (i, defect) in m.case.site.defects.iter().enumerate() {
        holes.push(match defect.wall {
            Wall::Facial => (format!("apical_of(defect_{}, 0.0)", i + 1), "apical"),
            Wall::Oral => (format!("oral_of(defect_{}, {crest:?})", i + 1), "coronal"),
        });
    }
    let over = goes_over(m, membrane);
    if over {
        holes.push(("orifice".to_owned(), "apical"));
    }
    for (side, (name, value)) in
        [("membrane-margin-mesial", margins.mesial), ("membrane-margin-distal", margins.distal)]
            .into_iter()
            .enumerate()
    {
        let roots = roots_beside(m, side).concat();
        let asked = |(hole, _): &(String, &str)| {
            format!(
                "margin_unless_at({}, {hole}, membrane, {ROOM_FOR_MARGIN:?}{roots})",
                SIDES[side]
            )
        };
        let asked: Vec<String> = holes.iter().map(asked).collect();
        margin(entries, name, value, format!("least({})", asked.join(", ")));
    }
    let apical = holes.iter().map(|(hole, side)| format!("margin({side}, {hole}, membrane)"));
    let apical: Vec<String> = apical.collect();
    let apical = format!("least({})", apical.join(", "));
    margin(entries, "membrane-margin-apical", margins.apical, apical);
    if over && let Some(reach) = polygon::extent(m.ground().orifice(), |p| p.x) {
        let (from, to) = (reach.from, reach.to);
        let line = format!("margin_of_line(coronal, {from:?}, {to:?}, {crest:?}, membrane)");
        margin(entries, "membrane-margin-oral", margins.oral, line);
    }
}

fn of_flap(m: &Measurements<'_>, membrane: &Membrane, margins: &Margins, entries: &mut Vec<Entry>) {
    if m.plan.raised().is_some() {
        for (name, side, value) in [
            ("flap-beyond-membrane-mesial", "mesial", margins.mesial),
            ("flap-beyond-membrane-distal", "distal", margins.distal),
            ("flap-beyond-membrane-apical", "apical", margins.apical),
        ] {
            let beyond = format!("margin({side}, apical_of(membrane, 0.0), flap)");
            margin(entries, name, value, beyond);
        }
    }
    if goes_over(m, membrane) {
        let raised = m.plan.flap.as_ref().map_or(0.0, |flap| flap.oral.get());
        let to = m.ground().solid.map.across() + raised;
        let oral = format!("lowest(membrane) + {to:?}");
        margin(entries, "flap-beyond-membrane-oral", margins.oral, oral);
    }
}

/// The sides with a vertical release, as expressions name them.
pub(super) const fn sides_released(raised: &FlapRaised) -> Option<&'static str> {
    match raised.releases {
        Releases::None => None,
        Releases::One(ReleaseSide::Mesial) => Some("mesial"),
        Releases::One(ReleaseSide::Distal) => Some("distal"),
        Releases::Two => Some("mesial_distal"),
    }
}

fn incisions(m: &Measurements<'_>, entries: &mut Vec<Entry>) {
    let Some(sides) = m.plan.raised().and_then(sides_released) else { return };
    let defects = m.case.site.defects.iter().enumerate();
    let facial = defects.filter(|(_, defect)| defect.wall == Wall::Facial);
    let mut edges: Vec<String> = facial.map(|(i, _)| format!("defect_{}", i + 1)).collect();
    if edges.is_empty() {
        edges.push("orifice".to_owned());
    }
    let to_defect = format!("edges_gap(flap, {sides}, {})", edges.join(", "));
    put(entries, "incision-to-defect", m.incision_to_defect(), to_defect);
    if let Some(foramen) = m.case.site.vital.foramen {
        let at = m.ground().solid.map.facially(foramen);
        let to_foramen = format!("edges_gap(flap, {sides}, {:?}, {:?})", at.x, at.y);
        put(entries, "release-to-foramen", m.release_to_foramen(), to_foramen);
    }
}
