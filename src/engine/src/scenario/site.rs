//! A site written out in full.

use super::read::Table;
use super::roots::{self, root};
use crate::anatomy::{
    Crest, Defect, DefectKind, Density, DensityClass, Floor, FloorKind, Implanted, Lesion, LipLine,
    Neighbour, Neighbours, PlannedCrown, Profile, Ridge, Site, SoftTissue, Tooth, Tube, Vital,
    Wall,
};
use crate::units::Mm;

pub(super) const WALLS: &[(&str, Wall)] = &[("facial", Wall::Facial), ("oral", Wall::Oral)];
pub(super) const DEFECTS: &[(&str, DefectKind)] = &[
    ("dehiscence-v", DefectKind::DehiscenceV),
    ("dehiscence-u", DefectKind::DehiscenceU),
    ("fenestration", DefectKind::Fenestration),
    ("lost-wall", DefectKind::LostWall),
];
pub(super) const DENSITIES: &[(&str, DensityClass)] = &[
    ("d1", DensityClass::D1),
    ("d2", DensityClass::D2),
    ("d3", DensityClass::D3),
    ("d4", DensityClass::D4),
];
pub(super) const FLOORS: &[(&str, FloorKind)] =
    &[("sinus", FloorKind::Sinus), ("nose", FloorKind::Nose)];
pub(super) const LIPS: &[(&str, LipLine)] =
    &[("high", LipLine::High), ("middle", LipLine::Middle), ("low", LipLine::Low)];

/// What stands on a side, or what disease an apex has, before its own fields are read.
#[derive(Clone, Copy)]
enum BesideKind {
    Root,
    Implant,
    Absent,
}

#[derive(Clone, Copy)]
enum LesionKind {
    None,
    Chronic,
    Abscess,
    Spreading,
}

pub(super) fn read(mut table: Table<'_>) -> Option<Site> {
    let tooth = tooth(&mut table);
    let hu = table.number("density-hu", 50.0..=2000.0);
    let class = table.one("density-class", DENSITIES);
    let socket = roots::read(&mut table, tooth);
    let ridge = table.table("ridge").and_then(ridge);
    let defects = defects(&mut table);
    let mesial = table.table("mesial").and_then(|side| beside(side, -1.0));
    let distal = table.table("distal").and_then(|side| beside(side, 1.0));
    let vital = table.maybe_table("vital").map_or(Some(Vital::default()), vital);
    let lesion = table.table("lesion").and_then(lesion);
    let soft = table.table("soft").and_then(soft);
    let crown = table.table("crown").and_then(crown);
    let notes = (table.notes, table.place, table.path.clone());
    table.finish();
    let site = Site {
        tooth: tooth?,
        socket: socket?,
        ridge: ridge?,
        defects: defects?,
        neighbours: Neighbours { mesial: mesial?, distal: distal? },
        vital: vital?,
        density: Density { hu: hu?, class: class? },
        lesion: lesion?,
        soft: soft?,
        crown: crown?,
    };
    // What no field alone can show: whether the parts fit together.
    if let Err(why) = crate::cases::holds_together(&site) {
        notes.0.add(
            notes.1,
            &notes.2,
            format!("{why}: change the root, the profiles or what stands beside them"),
        );
        return None;
    }
    Some(site)
}

pub(super) fn tooth(table: &mut Table<'_>) -> Option<Tooth> {
    let node = table.maybe("tooth");
    let iso = table.whole("tooth", 11..=48)?;
    let tooth = u8::try_from(iso).ok().and_then(|iso| Tooth::new(iso).ok());
    let tooth = tooth.filter(|tooth| tooth.position() <= 7);
    if tooth.is_none() {
        let place = node.map_or(table.place, |node| node.place);
        table.fault("tooth", place, format!("found {iso}, expected a tooth in two digits: quadrant 1 to 4, then 1 to 7 from the midline"));
    }
    tooth
}

fn ridge(mut table: Table<'_>) -> Option<Ridge> {
    let facial = table.polyline("facial-mm");
    let oral = table.polyline("oral-mm");
    let knots = table.polyline("crest-mm");
    let unharmed = table.polyline("crest-before-loss-mm");
    let oral_offset = table.mm("oral-crest-deeper-mm", -3.0..=3.0);
    table.finish();
    let crest = Crest { knots: knots?, unharmed: unharmed?, oral_offset: oral_offset? };
    Some(Ridge { facial: Profile { knots: facial? }, oral: Profile { knots: oral? }, crest })
}

fn defects(table: &mut Table<'_>) -> Option<Vec<Defect>> {
    let tables = table.tables("defect", 8);
    let read = tables.into_iter().map(|mut table| {
        let wall = table.one("wall", WALLS);
        let kind = table.one("kind", DEFECTS);
        let node = table.need("outline-mm");
        let outline = node.and_then(|node| table.outline_of("outline-mm", node));
        table.finish();
        Some(Defect { wall: wall?, kind: kind?, outline: outline? })
    });
    let read: Vec<Option<Defect>> = read.collect();
    read.into_iter().collect()
}

fn beside(mut table: Table<'_>, side: f64) -> Option<Neighbour> {
    let kinds = [
        ("root", BesideKind::Root),
        ("implant", BesideKind::Implant),
        ("absent", BesideKind::Absent),
    ];
    match table.one("stands", &kinds)? {
        BesideKind::Root => {
            let place = table.place;
            let notes = (table.notes, table.path.clone());
            let root = root(table)?;
            if root.x.get() * side <= 0.0 {
                let way = if side < 0.0 { "negative (mesial)" } else { "positive (distal)" };
                let says = format!("found {} mm, expected a {way} x-mm", root.x.get());
                notes.0.add(place, &format!("{}.x-mm", notes.1), says);
                return None;
            }
            Some(Neighbour::Root(root))
        }
        BesideKind::Implant => {
            let platform = table.point("platform-mm");
            let diameter = table.mm("diameter-mm", 2.5..=7.0);
            let length = table.mm("length-mm", 5.0..=18.0);
            let (tilt, tip) =
                (table.degrees("tilt-degrees", 30.0), table.degrees("tip-degrees", 30.0));
            table.finish();
            Some(Neighbour::Implant(Implanted {
                platform: platform?,
                diameter: diameter?,
                length: length?,
                tilt: tilt?,
                tip: tip?,
            }))
        }
        BesideKind::Absent => {
            table.finish();
            Some(Neighbour::Absent)
        }
    }
}

fn vital(mut table: Table<'_>) -> Option<Vital> {
    let floor = table.maybe_table("floor").map(|mut table| {
        let kind = table.one("kind", FLOORS);
        let z = table.mm("z-mm", -5.0..=60.0);
        let rise = table.number("rise", -2.0..=2.0);
        table.finish();
        Some(Floor { kind: kind?, z: z?, rise: rise? })
    });
    let canal = table.maybe_table("canal").map(tube);
    let run = table.maybe_table("loop").map(tube);
    let nasopalatine = table.maybe_table("nasopalatine").map(tube);
    let foramen = table.maybe_point("foramen-mm");
    table.finish();
    // A part that is there must have been read.
    let whole = |part: Option<Option<Tube>>| part.map_or(Some(None), |tube| Some(Some(tube?)));
    Some(Vital {
        floor: floor.map_or(Some(None), |floor| Some(Some(floor?)))?,
        canal: whole(canal)?,
        loop_: whole(run)?,
        foramen,
        nasopalatine: whole(nasopalatine)?,
    })
}

fn tube(mut table: Table<'_>) -> Option<Tube> {
    let (from, to) = (table.point("from-mm"), table.point("to-mm"));
    let radius = table.mm("radius-mm", 0.2..=4.0);
    table.finish();
    Some(Tube { from: from?, to: to?, radius: radius? })
}

fn lesion(mut table: Table<'_>) -> Option<Lesion> {
    let kinds = [
        ("none", LesionKind::None),
        ("chronic", LesionKind::Chronic),
        ("abscess", LesionKind::Abscess),
        ("spreading", LesionKind::Spreading),
    ];
    let kind = table.one("kind", &kinds)?;
    let diameter = match kind {
        LesionKind::None => Some(Mm::ZERO),
        _ => table.mm("diameter-mm", 0.5..=20.0),
    };
    table.finish();
    let diameter = diameter?;
    Some(match kind {
        LesionKind::None => Lesion::None,
        LesionKind::Chronic => Lesion::Chronic { diameter },
        LesionKind::Abscess => Lesion::Abscess { diameter },
        LesionKind::Spreading => Lesion::Spreading { diameter },
    })
}

fn soft(mut table: Table<'_>) -> Option<SoftTissue> {
    let thickness = table.mm("thickness-mm", 0.1..=6.0);
    let keratinised = table.mm("keratinised-mm", 0.0..=15.0);
    let margin_z = table.mm("margin-z-mm", -8.0..=6.0);
    let margin_below_twin = table.mm("margin-below-twin-mm", -3.0..=8.0);
    let contact_to_crest = table.lengths::<2>("contact-to-crest-mm", 1.0..=15.0);
    let lip = table.one("lip", LIPS);
    table.finish();
    Some(SoftTissue {
        thickness: thickness?,
        keratinised: keratinised?,
        margin_z: margin_z?,
        margin_below_twin: margin_below_twin?,
        contact_to_crest: contact_to_crest?,
        lip: lip?,
    })
}

fn crown(mut table: Table<'_>) -> Option<PlannedCrown> {
    let margin_z = table.mm("margin-z-mm", -8.0..=6.0);
    let edge = table.point("edge-mm");
    let (tilt, tip) = (table.degrees("tilt-degrees", 40.0), table.degrees("tip-degrees", 30.0));
    let width = table.mm("width-mm", 2.0..=14.0);
    table.finish();
    Some(PlannedCrown { margin_z: margin_z?, edge: edge?, tilt: tilt?, tip: tip?, width: width? })
}
